"""GDAL: the same files through ogr2ogr, which turns arcs into chords.

OGR_ARC_STEPSIZE sets the chord's angle s. A chord polygon of a circle of radius r
holds sin(s) / s of each sector, so an area is short (a hole) or short (a bulge) by
at most s^2 / 6 of the arcs' sectors. At 0.05 degrees that is 1.3e-7 of them, and
no sector sum here is more than 4 times the part's area.
"""

import json
import os
import subprocess

from areas import Failures, expectations, loop_area

STEP = "0.05"
TOLERANCE = 1e-6


def features(path):
    run = subprocess.run(
        ["ogr2ogr", "-f", "GeoJSON", "-lco", "COORDINATE_PRECISION=10", "/vsistdout/", path],
        capture_output=True, check=True, text=True,
        env={**os.environ, "OGR_ARC_STEPSIZE": STEP, "DXF_MERGE_BLOCK_GEOMETRIES": "FALSE"})
    return json.loads(run.stdout)["features"], run.stderr


def ring(geometry):
    """Points of a closed loop, or None."""
    kind, c = geometry["type"], geometry["coordinates"]
    points = c[0] if kind == "Polygon" else c if kind == "LineString" else []
    if len(points) < 4 or max(abs(a - b) for a, b in zip(points[0][:2], points[-1][:2])) > 1e-6:
        return None
    return [(p[0], p[1], 0) for p in points[:-1]]


def main():
    failures = Failures()
    folder, expected = expectations()
    for want in expected["cut"]:
        path = os.path.join(folder, want["file"])
        found, complaints = features(path)
        failures.check(not complaints, f"{path}: {complaints}")
        loops, area = 0, 0.0
        for f in found:
            layer = f["properties"]["Layer"]
            if layer not in ("INNER_CUT", "OUTER_CUT"):
                continue
            points = ring(f["geometry"])
            failures.check(points is not None, f"{path}: an open loop on {layer}")
            loops += 1
            area += abs(loop_area(points or [])) * (1 if layer == "OUTER_CUT" else -1)
        failures.check(loops == want["loops"], f"{path}: {loops} loops")
        failures.near(area, want["area"], TOLERANCE, f"{path}: area")
    for want in expected["drill"]:
        holes = 0
        for file in want["files"]:
            found, complaints = features(os.path.join(folder, file))
            failures.check(not complaints, f"{file}: {complaints}")
            holes += sum(1 for f in found if f["properties"]["Layer"] == "HOLES")
        failures.check(holes == want["holes"], f"{want['files']}: {holes} holes")
    failures.finish(len(expected["cut"]) + len(expected["drill"]))


main()
