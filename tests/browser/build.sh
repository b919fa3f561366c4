#!/usr/bin/env bash
# Builds what a browser can run, with Debian's emscripten: every room up to `advice`
# where no TARGET is given. `module` is what a page loads, FOLDER/src/bedwright.js and
# bedwright.wasm; `load` loads orders for tests.
#   tests/browser/build.sh FOLDER [TARGET...]
set -euo pipefail
top=$(dirname "$(dirname "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")")")
folder=$1
shift
# Its linker looks for acorn where Debian puts it; a node from elsewhere would not.
export NODE_PATH=/usr/share/nodejs
emcmake cmake -S "$top" -B "$folder" -G Ninja -DCMAKE_BUILD_TYPE=Release -DBEDWRIGHT_YAML=OFF >/dev/null
cmake --build "$folder" -j 2 --target "${@:-all}"
