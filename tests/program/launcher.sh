#!/usr/bin/env bash
# The launcher's own failures: each one sentence and exit code 3, and the program's exit
# codes passed on. Runs the real launcher in a small tree, with a build tool that copies
# a program ready made.
#   launcher.sh SOURCE
set -euo pipefail
source=$1
folder=$(mktemp -d /tmp/bedwright-test-XXXXXX)
trap 'rm -rf "$folder"' EXIT
fail() {
  echo "FAILED: $*"
  exit 1
}

tree=$folder/tree tools=$folder/tools
mkdir -p "$tools"
for tool in bash cat chmod cp date dirname env find flock grep id mkdir mv readlink rm sleep tail touch; do
  ln -s "$(command -v $tool)" "$tools/$tool"
done
# Says it is a machine that lacks what the file `lacking` names.
cat >"$tools/dpkg-query" <<'TOOL'
#!/usr/bin/env bash
grep -qxF "${@: -1}" "$LACKING" || echo 'install ok installed'
TOOL
cat >"$tools/cmake" <<'TOOL'
#!/usr/bin/env bash
[ "$1" = -S ] && { touch "$4/build.ninja"; exit; }
echo built >>"$BUILDS"
sleep "${SLOW:-0}"
[ -z "${BREAK:-}" ] || { echo "no such header"; exit 1; }
mkdir -p "$2/src"
printf '#!/usr/bin/env bash\necho "ran $* in $BEDWRIGHT_HOME"\nexit ${1:-0}\n' >"$2/src/bedwright"
chmod +x "$2/src/bedwright"
TOOL
printf '#!/usr/bin/env bash\necho 1000\n' >"$tools/id.user"
chmod +x "$tools"/{dpkg-query,cmake,id.user}
touch "$tools/g++" "$tools/ninja"
chmod +x "$tools"/{g++,ninja}
export LACKING=$folder/lacking BUILDS=$folder/builds
build=$tree/build/main

fresh() {  # a tree never built
  rm -rf "$tree" "$BUILDS" "$LACKING"
  mkdir -p "$tree/src"
  cp "$source/bedwright" "$tree/bedwright"
  cp "$source/src/packages.sh" "$tree/src/packages.sh"
  touch "$tree/CMakeLists.txt" "$tree/src/main.cpp" "$BUILDS" "$LACKING"
}
launch() {  # sets code and said
  code=0
  said=$(PATH=$tools "$tools/bash" "$tree/bedwright" "$@" 2>&1 </dev/null) || code=$?
}
refused() {  # refused PATTERN: code 3 and a last line that says so
  [ $code -eq 3 ] || fail "exit code $code, not 3, for $1: $said"
  local last=${said##*$'\n'}
  # shellcheck disable=SC2053
  [[ $last == bedwright:\ $1 ]] || fail "wanted '$1', got: $said"
}
builds() { [ "$(wc -l <"$BUILDS")" -eq "$1" ] || fail "$(wc -l <"$BUILDS") builds, not $1"; }

# Built once; the program's own codes come through; a changed source is built again.
fresh
launch 1 draw
[[ $code -eq 1 && $said == *"ran 1 draw in $tree" ]] || fail "$code $said"
launch 2
[[ $code -eq 2 && $said == "ran 2 in $tree" ]] || fail "$code $said"
builds 1
sleep 0.02 && touch "$tree/src/main.cpp"
launch 0
builds 2

# A source changed while a build runs is built again at the next call.
fresh
SLOW=1 launch 0 &
sleep 0.5 && touch "$tree/src/main.cpp"
wait
launch 0
builds 2

# Two at once: the second says that it waits, and does not build again.
fresh
(SLOW=2 launch 0) &
for _ in $(seq 50); do [ -s "$BUILDS" ] && break; sleep 0.1; done
launch 0
wait
[[ $code -eq 0 && $said == "bedwright: another build is at work in $build; waiting for it"$'\n'"ran 0"* ]] ||
  fail "$code $said"
builds 1

fresh
BREAK=yes launch 0
refused "the build failed; the whole log is in $build/build.log"
[[ $said == *"no such header"* ]] || fail "the log's end is not shown: $said"

# A log that takes nothing; a folder that cannot be made.
fresh
mkdir -p "$build" && ln -s /dev/full "$build/build.log"
launch 0
refused "cannot write the log $build/build.log: No space left on device"
rm "$build/build.log" && mkdir "$build/build.log"
launch 0
refused "cannot write the log $build/build.log: Is a directory"
fresh
touch "$tree/build"
launch 0
refused "cannot make the folder $build: *"

fresh
touch -d '+2 days' "$tree/src/main.cpp"
launch 0
refused "$tree/src/main.cpp is dated in the future; *"
builds 0

# Packages are lacking, and there is nobody to install them.
fresh
echo libfmt-dev >"$LACKING"
mv "$tools/id" "$tools/id.own" && cp "$tools/id.user" "$tools/id"
launch 0
refused "there is no sudo here; have root run  apt-get install libfmt-dev"
printf '#!/usr/bin/env bash\nexit 1\n' >"$tools/sudo" && chmod +x "$tools/sudo"
launch 0  # no answer is no
refused "nothing installed; run  sudo apt-get install libfmt-dev"
launch --yes 0  # a sudo that is refused
refused "the list of packages cannot be brought up to date; *"
builds 0
echo "every failure of the launcher is a sentence and exit code 3"
