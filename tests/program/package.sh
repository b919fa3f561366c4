#!/usr/bin/env bash
# The Debian package: built, unpacked, and its program run from where it was unpacked.
# It must read its own share folder, write below the current folder, and write what the
# program in the build folder writes, byte for byte. Without the font nothing is written.
#   package.sh BUILD SOURCE
set -euo pipefail
build=$1 source=$2
unset BEDWRIGHT_HOME
folder=$(mktemp -d /tmp/bedwright-test-XXXXXX)
trap 'rm -rf "$folder"' EXIT
fail() {
  echo "FAILED: $*"
  exit 1
}

(cd "$folder" && cpack -G DEB --config "$build/CPackConfig.cmake" -B "$folder/deb") >"$folder/cpack.log" 2>&1 ||
  { cat "$folder/cpack.log"; fail "no package"; }
deb=$(echo "$folder"/deb/*.deb)
depends=$(dpkg-deb -f "$deb" Depends)
for library in fonts-osifont libcairo2 libqrencode4 libfontconfig1 libyaml-cpp libocct-modeling-algorithms libssl; do
  [[ ", $depends" == *", $library"* ]] || fail "$library is not among what it depends on: $depends"
done
dpkg-deb -x "$deb" "$folder/root"
usr=$folder/root/usr
[ "$(cd "$usr" && find . -maxdepth 2 -mindepth 2 | sort | tr '\n' ' ')" = \
  "./bin/bedwright ./share/bedwright ./share/doc ./share/man " ] || fail "other folders: $(find "$usr" -maxdepth 2)"
cmp "$usr/share/doc/bedwright/README.md" "$source/README.md"
cmp "$usr/share/doc/bedwright/copyright" "$source/LICENSE"

# The page has every command, renders without a complaint, and shows what the help says.
page=$usr/share/man/man1/bedwright.1
complaints=$(MANWIDTH=1000 LC_ALL=C.UTF-8 man --warnings -l "$page" 2>&1 >"$folder/page.txt")
[ -z "$complaints" ] || fail "$complaints"
for command in draw check offer compare schema explain new; do
  "$usr/bin/bedwright" "$command" --help >"$folder/help.txt"
  while read -r line; do
    grep -qF -- "$line" "$folder/page.txt" || fail "the page lacks of $command: $line"
  done < <(grep . "$folder/help.txt" | sed 's/^ *//')
done

mkdir "$folder/desk" "$folder/tree"
cd "$folder/desk"
order=$usr/share/bedwright/params/orders/base.yaml
"$usr/bin/bedwright" draw "$order" >/dev/null
"$build/src/bedwright" draw "$source/params/orders/base.yaml" --out "$folder/tree" >/dev/null
[ "$(find out -type f | wc -l)" -gt 50 ] || fail "few files: $(find out)"
diff -r out/QB-1041 "$folder/tree/QB-1041" || fail "other bytes than from the source tree"
grep -q "\"build\": \"$("$usr/bin/bedwright" --version | sed 's/^bedwright \([^,]*\)\(, build \)\?\(.*\)/\3/')\"" \
  out/QB-1041/A/manifest.json || fail "the manifest names another build than --version"

# Words changed in the share folder must show: they are what is read.
sed -i '$a Installed words' "$usr/share/bedwright/templates/assembly/letterhead.txt"
"$usr/bin/bedwright" draw "$order" --out "$folder/changed" >/dev/null
changed=$(diff -rq out/QB-1041 "$folder/changed/QB-1041" || true)
[[ $changed == *assembly* ]] || fail "its own templates are not read: $changed"

# A new order names the share folder by its whole path, so that the order can be moved.
said=$("$usr/bin/bedwright" new mine.yaml)
[[ "$said" == *$'\n  bedwright check mine.yaml\n'* ]] || fail "$said"
mkdir elsewhere && mv mine.yaml elsewhere
"$usr/bin/bedwright" check elsewhere/mine.yaml >/dev/null || fail "a new order that was moved is not read"

# No font, nothing written; another font on the machine is no help.
echo "<fontconfig><dir>/usr/share/fonts/truetype/dejavu</dir><cachedir>$folder/cache</cachedir></fontconfig>" \
  >"$folder/fonts.conf"
export FONTCONFIG_FILE=$folder/fonts.conf
for command in "draw $order" "offer $order --vary track.rail_length=80in,81in"; do
  code=0
  # shellcheck disable=SC2086
  said=$("$usr/bin/bedwright" $command --out "$folder/none" 2>&1) || code=$?
  [ $code -eq 2 ] || fail "without the font $command exits $code: $said"
  [[ "$said" == "bedwright: the font osifont is not installed"* && $(wc -l <<<"$said") -eq 1 ]] || fail "$said"
done
[ ! -e "$folder/none" ] || fail "something was written without the font"
"$usr/bin/bedwright" check "$order" >/dev/null || fail "a check sets no letters and needs no font"
echo "the package's program writes what the build's program writes"
