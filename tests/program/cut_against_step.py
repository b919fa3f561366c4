#!/usr/bin/env python3
"""Cut files against the model, by readers that know nothing of this program.

    cut_against_step.py PROGRAM STEP_READ WORK ORDER

Draws ORDER into WORK, then for every cut file: ezdxf, GDAL and, where it can be
had, the npm package dxf-parser must agree on the number of loops, all closed;
and outline less holes, times the plate's thickness from the cut list, must equal
the volume of that part's solid in bed.step, read by a process of its own, within
1e-6. Exits 1 with what failed.
"""

import csv
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys

here = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(here.parent / "readers"))
sys.dont_write_bytecode = True

import math  # noqa: E402

import ezdxf  # noqa: E402
from areas import Failures, loop_area  # noqa: E402

CUT = ("OUTER_CUT", "INNER_CUT")


def with_ezdxf(path, failures):
    document = ezdxf.readfile(path)
    audit = document.audit()
    failures.check(not audit.errors and not audit.fixes, f"{path}: audit {audit.errors} {audit.fixes}")
    loops = []
    for e in document.modelspace():
        if e.dxf.layer not in CUT:
            continue
        if e.dxftype() == "CIRCLE":
            loops.append((e.dxf.layer, math.pi * e.dxf.radius**2))
        else:
            failures.check(e.dxftype() == "POLYLINE" and e.is_closed, f"{path}: {e.dxftype()} not a closed polyline")
            loops.append((e.dxf.layer, abs(loop_area(
                [(v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0)) for v in e.vertices]))))
    return loops


def with_gdal(path, failures):
    """Arcs come as chords of 0.05 degrees, short of the arc's area by 1.3e-7."""
    run = subprocess.run(
        ["ogr2ogr", "-f", "GeoJSON", "-lco", "COORDINATE_PRECISION=12", "/vsistdout/", path],
        capture_output=True, check=True, text=True,
        env={**os.environ, "OGR_ARC_STEPSIZE": "0.05", "DXF_MERGE_BLOCK_GEOMETRIES": "FALSE"})
    loops = []
    for feature in json.loads(run.stdout)["features"]:
        layer, geometry = feature["properties"]["Layer"], feature["geometry"]
        if layer not in CUT:
            continue
        points = geometry["coordinates"]
        points = points[0] if geometry["type"] == "Polygon" else points
        failures.check(math.dist(points[0][:2], points[-1][:2]) < 1e-6, f"{path}: GDAL finds an open loop")
        loops.append((layer, abs(loop_area([(p[0], p[1], 0) for p in points[:-1]]))))
    return loops


def with_dxf_parser(path, modules, failures):
    run = subprocess.run(["node", str(modules / "loops_dxf_parser.mjs"), path], capture_output=True, check=True, text=True)
    loops = []
    for loop in json.loads(run.stdout):
        if loop["layer"] not in CUT:
            continue
        failures.check(loop["closed"], f"{path}: dxf-parser finds an open loop")
        area = math.pi * loop["radius"] ** 2 if "radius" in loop else abs(loop_area(
            [(v["x"], v["y"], v.get("bulge", 0)) for v in loop["vertices"]]))
        loops.append((loop["layer"], area))
    return loops


def dxf_parser_modules(work):
    """The folder with dxf-parser installed, or None where npm cannot be had."""
    modules = work.parent / "dxf-parser-modules"
    modules.mkdir(exist_ok=True)
    shutil.copy(here.parent / "readers" / "package.json", modules)
    shutil.copy(here / "loops_dxf_parser.mjs", modules)
    if not (modules / "node_modules" / "dxf-parser").is_dir():
        run = subprocess.run(["npm", "install", "--no-audit", "--no-fund", "--ignore-scripts"], cwd=modules, capture_output=True, text=True)
        if run.returncode:
            print("without dxf-parser: npm install failed:", run.stderr.strip().splitlines()[-1:])
            return None
    return modules


def length_mm(text):
    """'3/8 in', '1-1/4 in', '10 mm'."""
    number, unit = text.rsplit(" ", 1)
    total = 0.0
    for piece in number.split("-"):
        top, _, bottom = piece.partition("/")
        total += float(top) / float(bottom or 1)
    return total * {"in": 25.4, "mm": 1.0}[unit]


def thicknesses(folder):
    with open(folder / "lists" / "cut_list.csv", newline="", encoding="utf-8") as f:
        return {row["part"]: length_mm(row["stock"].removeprefix("plate "))
                for row in csv.DictReader(f) if row["kind"] == "plate"}


def main():
    program, step_read, work, order = sys.argv[1], sys.argv[2], pathlib.Path(sys.argv[3]), sys.argv[4]
    shutil.rmtree(work, ignore_errors=True)
    work.mkdir(parents=True)
    subprocess.run([program, "draw", order, "--out", str(work)], check=True, stdout=subprocess.DEVNULL)
    order_folder, = (p for p in work.iterdir() if p.is_dir() and not p.name.startswith("."))
    folder = order_folder / "A"
    model = json.loads(subprocess.run([step_read, str(folder / "bed.step")], check=True, capture_output=True, text=True).stdout)
    volumes = {part["name"]: part["volume"] for part in model["parts"]}
    plates = thicknesses(folder)
    modules = dxf_parser_modules(work)
    failures = Failures()
    files = sorted((folder / "cut").glob("*.dxf"))
    failures.check(len(files) == len(plates), f"{len(files)} cut files for {len(plates)} plates")
    for path in files:
        part = path.stem.replace("_", " ")
        unit = 25.4 if re.search(r"UNITS: inches", path.read_text()) else 1.0
        readers = {"ezdxf": with_ezdxf(path, failures), "GDAL": with_gdal(path, failures)}
        if modules:
            readers["dxf-parser"] = with_dxf_parser(path, modules, failures)
        failures.check(len({len(loops) for loops in readers.values()}) == 1, f"{path}: loops { {k: len(v) for k, v in readers.items()} }")
        for reader, loops in readers.items():
            area = sum(a if layer == "OUTER_CUT" else -a for layer, a in loops) * unit**2
            failures.near(area * plates[part], volumes[part], 1e-6, f"{path} by {reader}: volume of {part}")
    failures.finish(len(files))


main()
