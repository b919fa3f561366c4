# What building needs, how it is asked for, and the build itself. Sourced by ./bedwright
# and, through tests/install.sh, by what runs the tests; they share one build folder.
# shellcheck shell=bash disable=SC2034
build_packages=(
  g++ cmake ninja-build ccache
  libocct-modeling-algorithms-dev libocct-ocaf-dev libocct-data-exchange-dev libtbb-dev
  libyaml-cpp-dev libfast-float-dev libcli11-dev libfmt-dev nlohmann-json3-dev libssl-dev libeigen3-dev
  pkgconf libcairo2-dev libfontconfig-dev libqrencode-dev fonts-osifont
)

# One sentence, and the exit code that says it is no fault of an order.
die() {
  echo "bedwright: $*" >&2
  exit 3
}

# install_packages YES PACKAGE...: installs those that are missing; asks first
# unless root or YES is "yes". On a machine without dpkg it says what is needed.
install_packages() {
  local yes=$1 package missing=()
  shift
  if ! command -v dpkg-query >/dev/null; then
    echo "bedwright: this is not a Debian machine; install the like of: $*" >&2
    return 0
  fi
  for package in "$@"; do
    # A command may come from elsewhere than its Debian package.
    case $package in
      g++ | cmake | npm) command -v "$package" >/dev/null && continue ;;
      nodejs) command -v node >/dev/null && continue ;;
      ninja-build) command -v ninja >/dev/null && continue ;;
    esac
    dpkg-query -W -f '${Status}' "$package" 2>/dev/null | grep -q 'ok installed' || missing+=("$package")
  done
  [ ${#missing[@]} -eq 0 ] && return 0
  local as_root=()
  if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null ||
      die "there is no sudo here; have root run  apt-get install ${missing[*]}"
    as_root=(sudo)
    if [ "$yes" != yes ]; then
      echo "bedwright needs these Debian packages: ${missing[*]}" >&2
      read -r -p "Install them with sudo apt-get? [y/N] " answer || answer=n
      case $answer in y | Y | yes) ;; *)
        die "nothing installed; run  sudo apt-get install ${missing[*]}"
        ;;
      esac
    fi
  fi
  echo "bedwright: installing ${missing[*]}" >&2
  "${as_root[@]}" apt-get update -q >&2 || die "the list of packages cannot be brought up to date; apt-get says why above"
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive \
    apt-get install -y -q --no-install-recommends "${missing[@]}" >&2 ||
    die "not every package could be installed; apt-get says why above"
}

# What everything is built from, and the moment of the last build that went well: its start,
# so that a source changed while it ran is newer.
sources=("$top/src" "$top/CMakeLists.txt")
build="$top/build/main"
built="$build/built"

is_built() {
  [ -x "$build/src/bedwright" ] && [ -e "$built" ] &&
    [ -z "$(find "${sources[@]}" -newer "$built" -print -quit)" ]
}

# lock_build: one build at a time; the lock is held until its descriptor is closed by
# unlock_build or the end of the process.
lock_build() {
  local why
  why=$(mkdir -p "$build" 2>&1) || die "cannot make the folder $build: ${why##*: }"
  why=$({ : >>"$build/lock"; } 2>&1) || die "cannot write $build/lock: ${why##*: }"
  exec {lock}>>"$build/lock"
  if ! flock -n "$lock"; then
    echo "bedwright: another build is at work in $build; waiting for it" >&2
    flock "$lock" || die "cannot lock $build/lock"
  fi
}

unlock_build() {
  exec {lock}>&-
}

# A source dated in the future is newer than any build, and the build tool would go on for
# ever or build at every call.
refuse_future_sources() {
  local ahead
  ahead=$(find "${sources[@]}" -newermt now -print -quit)
  [ -z "$ahead" ] ||
    die "$ahead is dated in the future; set the clock right, or say  find ${sources[*]} -newermt now -exec touch {} +"
}

# mark_built STARTED: the build begun when the file STARTED was made went well.
mark_built() {
  mv -f "$1" "$built"
}
