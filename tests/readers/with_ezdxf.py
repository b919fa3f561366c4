"""ezdxf: no audit error, no fix; loops, areas and sizes as the part has them."""

import math
import os

import ezdxf
from ezdxf import bbox, recover

from areas import Failures, expectations, loop_area

CUT_LAYERS = {"SCRIBE", "CENTRE_MARK", "INNER_CUT", "OUTER_CUT"}


def audited(path, failures):
    document = ezdxf.readfile(path)
    for audit in (document.audit(), recover.readfile(path)[1]):
        failures.check(not audit.errors, f"{path}: errors {[e.message for e in audit.errors]}")
        failures.check(not audit.fixes, f"{path}: fixes {[e.message for e in audit.fixes]}")
    failures.check(document.dxfversion == "AC1009", f"{path}: version {document.dxfversion}")
    return document


def cut_loops(model, failures, path):
    """[(layer, signed area)] and all the points of the outer loop."""
    loops, seen, outer = [], set(), []
    for e in model:
        layer = e.dxf.layer
        failures.check(layer in CUT_LAYERS, f"{path}: layer {layer}")
        if e.dxftype() == "CIRCLE":
            key = (layer, "C", *e.dxf.center, e.dxf.radius)
            loops.append((layer, math.pi * e.dxf.radius**2))
        elif e.dxftype() == "POLYLINE":
            points = [(v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0)) for v in e.vertices]
            key = (layer, "P", *points)
            ends = points[1:] + (points[:1] if e.is_closed else [])
            failures.check(all(math.dist(a[:2], b[:2]) > 1e-4 for a, b in zip(points, ends)), f"{path}: no length")
            if layer in ("INNER_CUT", "OUTER_CUT"):
                failures.check(e.is_closed, f"{path}: open polyline on {layer}")
                loops.append((layer, loop_area(points)))
            else:
                failures.check(layer == "SCRIBE" and not e.is_closed, f"{path}: polyline on {layer}")
            if layer == "OUTER_CUT":
                outer = points
        else:
            failures.check(e.dxftype() == "LINE" and layer == "CENTRE_MARK", f"{path}: {e.dxftype()} on {layer}")
            failures.check(e.dxf.start != e.dxf.end, f"{path}: a line of no length")
            key = (layer, "L", *e.dxf.start, *e.dxf.end)
        failures.check(key not in seen, f"{path}: {key} twice")
        seen.add(key)
    return loops, outer


def main():
    failures = Failures()
    folder, expected = expectations()
    for want in expected["cut"]:
        path = os.path.join(folder, want["file"])
        model = audited(path, failures).modelspace()
        loops, outer = cut_loops(model, failures, path)
        failures.check(len(loops) == want["loops"], f"{path}: {len(loops)} loops")
        failures.check(sum(1 for layer, _ in loops if layer == "OUTER_CUT") == 1, f"{path}: outer loops")
        area = sum(abs(a) if layer == "OUTER_CUT" else -abs(a) for layer, a in loops)
        failures.near(area, want["area"], 1e-6, f"{path}: area")
        failures.check(len(model.query("LINE[layer=='CENTRE_MARK']")) == 2 * want["marks"], f"{path}: marks")
        failures.check(bool(model.query("POLYLINE[layer=='SCRIBE']")) == want["lettered"], f"{path}: letters")
        box = bbox.extents(model.query("*[layer=='OUTER_CUT']"), flatten=1e-4)
        failures.check(abs(box.extmin.x) < 1e-3 and abs(box.extmin.y) < 1e-3, f"{path}: corner {box.extmin}")
        failures.near(box.size.x, want["width"], 1e-5, f"{path}: width")
        failures.near(box.size.y, want["height"], 1e-5, f"{path}: height")
    for want in expected["drill"]:
        paths = [os.path.join(folder, f) for f in want["files"]]
        holes = sum(len(audited(p, failures).modelspace().query("*[layer=='HOLES']")) for p in paths)
        failures.check(holes == want["holes"], f"{paths}: {holes} holes")
    failures.finish(len(expected["cut"]) + len(expected["drill"]))


main()
