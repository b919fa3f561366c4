#!/usr/bin/env bash
# Loads orders in node, with no disk and no YAML, and holds the jobs and the words of
# every problem to the host's. Exits 77 with the reason where there is no emscripten.
#   tests/browser/same_as_host.sh HOLD FOLDER
set -euo pipefail
here=$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")
hold=$1 folder=$2
command -v emcmake >/dev/null || {
  echo "skipped: emscripten is not installed (Debian: emscripten)"
  exit 77
}
"$here/build.sh" "$folder" load
"$hold" write "$here/../../params" "$folder/cases.json"
node "$folder/tests/browser/load.js" "$folder/cases.json" "$folder/results.json"
"$hold" compare "$folder/cases.json" "$folder/results.json"
