#!/usr/bin/env python3
"""Holds the tree to its own rules: which room may include which, where kernel
headers may stand, and that no file is too long to read in one sitting."""
import pathlib
import re
import sys

top = pathlib.Path(__file__).resolve().parents[2]
src = top / "src"

# Room -> rooms it may include. A room may always include itself.
MAY = {
    "units": set(),
    "yaml": {"units"},
    "bed/outline": {"units"},
    "catalog": {"units", "yaml", "bed/outline"},
    "params": {"units", "yaml", "catalog"},
    "bed": {"units", "bed/outline", "catalog"},
    "layout": {"units", "yaml", "catalog", "params", "bed", "bed/outline"},
    "loads": {"units", "catalog", "params", "bed", "bed/outline"},
    "loads/rules": {"units", "catalog", "params", "bed", "bed/outline", "loads", "checks"},
    "checks": {"units", "yaml", "catalog", "params", "bed", "bed/outline", "drawing"},
    "examine": {"units", "yaml", "params", "bed", "layout", "checks", "loads", "loads/rules"},
    "advice": {"units", "yaml", "catalog", "params", "checks", "examine"},
    "drawing": {"units", "yaml", "catalog", "params", "bed", "bed/outline", "loads"},
    "solids": {"units", "catalog", "bed", "bed/outline", "checks"},
    "export": {"units", "yaml", "catalog", "params", "bed", "bed/outline", "checks", "drawing", "loads", "loads/rules", "solids", "examine"},
    "sheets": {"units", "params", "catalog", "bed", "bed/outline", "drawing", "loads", "checks", "export", "examine"},
    "offer": {"units", "yaml", "params", "bed", "bed/outline", "layout", "checks", "loads", "loads/rules", "advice", "drawing", "export", "examine"},
    "compare": {"units", "yaml", "params", "bed", "bed/outline", "checks"},
    "commands": None,  # puts everything together
    "main.cpp": {"commands"},
}
# The narrow places that may see the geometry kernel.
KERNEL = ("solids/", "drawing/views", "export/step.cpp")
SOLIDS_TOO = ("drawing/views", "export/step.cpp")
LONGEST = 500


def room(path: str) -> str:
    if path in ("bed/outline.h", "bed/outline.cpp", "bed/geometry.h"):
        return "bed/outline"
    if path.startswith("loads/rules/"):
        return "loads/rules"
    return path.split("/")[0]


def faults():
    for file in sorted(src.rglob("*")):
        if file.suffix not in (".h", ".cpp"):
            continue
        name = file.relative_to(src).as_posix()
        lines = file.read_text().splitlines()
        if len(lines) > LONGEST:
            yield f"{name}: {len(lines)} lines, over {LONGEST}"
        for number, line in enumerate(lines, 1):
            if re.match(r"#include <[A-Za-z0-9_]+\.hxx>", line) and not name.startswith(KERNEL):
                yield f"{name}:{number}: kernel header outside the rooms that may see it"
            found = re.match(r'#include "([^"]+)"', line)
            if not found:
                continue
            mine, theirs = room(name), room(found.group(1))
            if mine not in MAY:
                yield f"{name}: a room the table does not know"
                break
            allowed = MAY[mine]
            if theirs == mine or allowed is None or theirs in allowed:
                continue
            if theirs == "solids" and name.startswith(SOLIDS_TOO):
                continue
            yield f"{name}:{number}: {mine} may not include {found.group(1)}"


def main() -> int:
    found = list(faults())
    for fault in found:
        print(fault)
    print(f"{len(found)} faults")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
