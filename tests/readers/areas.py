"""Closed loops as vertices with bulges: exact area, and the shared comparison."""

import json
import math
import os
import sys


def loop_area(points):
    """Signed area of [(x, y, bulge), ...], closed: shoelace plus a circular segment for each bulge.

    A bulge is tan(a / 4) of the arc's angle a; over a chord c its radius is
    c (1 + b^2) / (4 b) and the segment holds r^2 (a - sin a) / 2, signed as b.
    """
    total = 0.0
    for (x0, y0, bulge), (x1, y1, _) in zip(points, points[1:] + points[:1]):
        total += (x0 * y1 - x1 * y0) / 2
        if bulge:
            angle = 4 * math.atan(bulge)
            radius = math.hypot(x1 - x0, y1 - y0) * (1 + bulge * bulge) / (4 * bulge)
            total += radius * radius * (angle - math.sin(angle)) / 2
    return total


class Failures:
    def __init__(self):
        self.count = 0

    def check(self, ok, what):
        if not ok:
            self.count += 1
            print("FAIL", what)

    def near(self, found, wanted, relative, what):
        self.check(abs(found - wanted) <= relative * abs(wanted), f"{what}: {found!r}, expected {wanted!r}")

    def finish(self, files):
        print(f"{files} files, {self.count} failures")
        sys.exit(1 if self.count or not files else 0)


def expectations():
    folder = sys.argv[1]
    with open(os.path.join(folder, "expected.json"), encoding="utf-8") as f:
        return folder, json.load(f)
