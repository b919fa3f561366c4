#!/usr/bin/env bash
# Examines random orders in node with the module a page loads, and holds every finding
# and every problem to the host's. Exits 77 with the reason where there is no emscripten.
# BEDWRIGHT_SAME_ORDERS says how many (default 150); BEDWRIGHT_BRUTE_SEED where to start.
#   tests/browser/same_findings.sh FINDINGS FOLDER
set -euo pipefail
here=$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")
top=$here/../.. findings=$1 folder=$2
command -v emcmake >/dev/null || {
  echo "skipped: emscripten is not installed (Debian: emscripten)"
  exit 77
}
"$here/build.sh" "$folder" module
"$findings" write "$top" "${BEDWRIGHT_SAME_ORDERS:-150}" "${BEDWRIGHT_BRUTE_SEED:-1}" "$folder/orders.json"
node "$here/examine.js" "$folder/src" "$folder/orders.json" "$folder/found.json"
"$findings" compare "$top" "$folder/orders.json" "$folder/found.json"
