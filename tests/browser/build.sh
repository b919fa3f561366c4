#!/usr/bin/env bash
# Builds the rooms a browser can run, with Debian's emscripten.
#   tests/browser/build.sh FOLDER [TARGET...]
set -euo pipefail
top=$(dirname "$(dirname "$(dirname "$(readlink -f "${BASH_SOURCE[0]}")")")")
folder=$1
shift
# Its linker looks for acorn where Debian puts it; a node from elsewhere would not.
export NODE_PATH=/usr/share/nodejs
emcmake cmake -S "$top" -B "$folder" -G Ninja -DCMAKE_BUILD_TYPE=Release -DBEDWRIGHT_YAML=OFF >/dev/null
cmake --build "$folder" -j 2 --target "${@:-all}"
