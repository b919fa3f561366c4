"""GEOS (through GDAL's Python module): cut files with a kerf against buffers of those without.

Each loop becomes a polygon of chords; GEOS widens the finished outline, and narrows
each hole, by half the kerf. What the two outlines do not share is an area; over the
loop's length it is a mean distance, which must be far under what a table resolves.
Chords stray: at 2000 an arc of at most 150 mm radius by 2e-4 mm, GEOS's corner arcs
of 0.75 mm at 256 a quarter by 4e-6 mm.
"""

import math
import os

import ezdxf
from osgeo import ogr

from areas import Failures, expectations

ogr.UseExceptions()
CHORDS = 2000
MEAN_DISTANCE = 1e-3  # mm


def chords(points):
    """[(x, y, bulge)] as points along the loop."""
    out = []
    for (x0, y0, bulge), (x1, y1, _) in zip(points, points[1:] + points[:1]):
        out.append((x0, y0))
        if not bulge:
            continue
        angle = 4 * math.atan(bulge)
        k = (1 - bulge * bulge) / (4 * bulge)
        cx, cy = (x0 + x1) / 2 - k * (y1 - y0), (y0 + y1) / 2 + k * (x1 - x0)
        for i in range(1, CHORDS):
            c, s = math.cos(angle * i / CHORDS), math.sin(angle * i / CHORDS)
            out.append((cx + c * (x0 - cx) - s * (y0 - cy), cy + s * (x0 - cx) + c * (y0 - cy)))
    return out


def polygon(points, shift):
    ring = ogr.Geometry(ogr.wkbLinearRing)
    for x, y in points + points[:1]:
        ring.AddPoint_2D(x + shift, y + shift)
    shape = ogr.Geometry(ogr.wkbPolygon)
    shape.AddGeometry(ring)
    return shape


def loops(path, shift):
    """{layer: polygons in file order}, moved by `shift` both ways."""
    found = {"OUTER_CUT": [], "INNER_CUT": []}
    for e in ezdxf.readfile(path).modelspace():
        if e.dxf.layer not in found:
            continue
        if e.dxftype() == "CIRCLE":
            (x, y, _), r = e.dxf.center, e.dxf.radius
            points = chords([(x + r, y, 1), (x - r, y, 1)])
        else:
            points = chords([(v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0)) for v in e.vertices])
        found[e.dxf.layer].append(polygon(points, shift))
    return found


def main():
    failures = Failures()
    folder, expected = expectations()
    for want in expected["kerf"]:
        half = want["kerf"] / 2
        finished_path = os.path.join(folder, want["finished"])
        finished = loops(finished_path, half)  # its corner is at 0, the path's is half a kerf further out
        path = loops(os.path.join(folder, want["file"]), 0)
        for layer, way in (("OUTER_CUT", 1), ("INNER_CUT", -1)):
            failures.check(len(finished[layer]) == len(path[layer]), f"{want['file']}: loops on {layer}")
            for a, b in zip(finished[layer], path[layer]):
                wanted = a.Buffer(way * half, 256)
                mean = wanted.SymmetricDifference(b).GetArea() / b.Boundary().Length()
                failures.check(mean < MEAN_DISTANCE, f"{finished_path}: area between {layer} path and GEOS's, mean distance {mean:.6f} mm")
    failures.finish(len(expected["kerf"]))


main()
