#!/usr/bin/env python3
"""Prints the rooms of src/ as floors: a room stands on the floor above the highest room
it uses. Made from src/CMakeLists.txt. With --check, compares the print with the one in
DEVELOPERS.md, says what to do where they differ, and looks for every file the page names."""
import re
import sys

sys.dont_write_bytecode = True  # nothing is left in the source tree
import arrows  # noqa: E402

BEGIN, END = "<!-- house -->\n```\n", "```\n<!-- end of house -->\n"


def picture():
    uses = {room: [u for u in used if u in found] for found in [arrows.rooms()] for room, used in found.items()}
    floor = {}
    for room, used in uses.items():  # a room comes after those it uses
        floor[room] = max((floor[u] + 1 for u in used), default=0)
    wide = max(map(len, uses))
    lines = []
    for level in range(max(floor.values()), -1, -1):
        for room in (r for r in uses if floor[r] == level):
            used = "uses " + ", ".join(uses[room]) if uses[room] else "uses none"
            lines.append(f"floor {level}   {room:<{wide}}   {used}\n")
    return "".join(lines)


def missing_files(page):
    """Paths in backticks that lead nowhere; my_... is what a reader is to write."""
    named = re.findall(r"`((?:src|tests|params|templates)/[\w./]+)`", page)
    return sorted({n for n in named if "my_" not in n and not (arrows.top / n).exists()})


def main() -> int:
    if sys.argv[1:] != ["--check"]:
        print(picture(), end="")
        return 0
    page = (arrows.top / "DEVELOPERS.md").read_text()
    missing = missing_files(page)
    for name in missing:
        print(f"DEVELOPERS.md names {name}, which is not there")
    if page.count(BEGIN + picture() + END) == 1:
        return 1 if missing else 0
    print("DEVELOPERS.md shows another house than src/CMakeLists.txt builds; put the print of")
    print("tests/structure/house.py between its two house marks:")
    print(picture(), end="")
    return 1


if __name__ == "__main__":
    sys.exit(main())
