#!/bin/sh
# read_samples.sh READER WRITE_SAMPLES FOLDER: writes the samples, has READER read
# them. Exit 77 means the reader cannot be had here, with the reason on stderr.
# A damaged file must then be noticed by the same script.
set -eu
export PYTHONDONTWRITEBYTECODE=1
reader=$1 writer=$2 folder=$3
here=$(cd "$(dirname "$0")" && pwd)
rm -rf "$folder"
"$writer" "$folder"
damage() { # every bulge of one file flattened: its areas are wrong
  sed -i '/^ 42\r$/{n;s/.*/0.0\r/}' "$folder/cut-mm-1.dxf"
}
twice() { # once as written, once damaged
  "$@"
  damage
  if "$@" >"$folder/damaged.log" 2>&1; then echo "FAIL the damaged file was not noticed"; exit 1; fi
  grep -q 'cut-mm-1.dxf: area' "$folder/damaged.log" || { cat "$folder/damaged.log"; exit 1; }
}
case $reader in
  ezdxf)
    /usr/bin/python3 -c 'import ezdxf' 2>/dev/null || { echo "skipped: no ezdxf for /usr/bin/python3" >&2; exit 77; }
    twice /usr/bin/python3 "$here/with_ezdxf.py" "$folder" ;;
  gdal)
    command -v ogr2ogr >/dev/null ||
      { echo "skipped: no ogr2ogr" >&2; exit 77; }
    twice /usr/bin/python3 "$here/with_gdal.py" "$folder" ;;
  geos)
    /usr/bin/python3 -c 'import ezdxf; from osgeo import ogr' 2>/dev/null ||
      { echo "skipped: no ezdxf or osgeo for /usr/bin/python3" >&2; exit 77; }
    twice /usr/bin/python3 "$here/with_geos.py" "$folder" ;;
  dxf_parser)
    command -v npm >/dev/null || { echo "skipped: no npm" >&2; exit 77; }
    # Installed once beside the samples' folder, never in the source tree.
    modules=$folder-modules
    mkdir -p "$modules"
    cp "$here/package.json" "$here/with_dxf_parser.mjs" "$modules/"
    [ -d "$modules/node_modules/dxf-parser" ] ||
      (cd "$modules" && npm install --no-audit --no-fund --ignore-scripts >npm.log 2>&1) ||
      { echo "skipped: npm install failed: $(tail -n 3 "$modules/npm.log")" >&2; exit 77; }
    twice node "$modules/with_dxf_parser.mjs" "$folder" ;;
  *) echo "no reader $reader" >&2; exit 2 ;;
esac
