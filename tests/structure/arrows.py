#!/usr/bin/env python3
"""Holds the tree to its own rules: which room includes which comes from what each is
linked with (src/CMakeLists.txt, where a wrong include does not compile); here it is
held that those arrows make no cycle, that kernel headers stand in one room, that no
printed name is compared, that one place asks for inches or metric, that every file
says at its head what it is for, and that none is too long to read in one sitting."""
import pathlib
import re
import sys

top = pathlib.Path(__file__).resolve().parents[2]
src = top / "src"
LONGEST = 500

# The one place where names are made. Reading a user's text is no comparison of names.
NAMES = ("bed/names.cpp", "bed/names.h")
# name(...) == "...", name(x).starts_with(...), s.name == ... of a finding's subject.
COMPARED = re.compile(
    r"""\b(?:name|mark|word|words_of|letter)\([^()]*(?:\([^()]*\)[^()]*)*\)\s*(?:==|!=|<|>)\s*[^=]
      | \b(?:name|mark|word|words_of|letter)\([^()]*(?:\([^()]*\)[^()]*)*\)\s*\.\s*(?:starts_with|ends_with|find|substr|compare|contains|rfind)\b
      | (?:==|!=)\s*(?:bedwright::)?(?:name|mark|words_of)\(
      | \bsubjects?(?:\[\w+\]|\.front\(\)|\.back\(\)|\.at\(\w+\))?\.name\s*(?:==|!=|\.\s*(?:starts_with|ends_with|find|substr|compare)\b)
    """,
    re.VERBOSE,
)

# Inches or metric is asked where figures are printed (units/figures.h) and where files are
# read; a cut file's own units are no order's printing. Anywhere else it is a fault.
UNITS_ASKED = ("units/", "params/", "sheets/cut/cut.h", "sheets/cut/cut.cpp")
ASKS_UNITS = re.compile(r"\bPrinting::|\bprinting\s*(?:==|!=)|(?:==|!=)\s*[\w.]*\bprinting\b")


def rooms():
    """Room -> rooms named under USES."""
    text = (src / "CMakeLists.txt").read_text()
    found = {}
    for name, rest in re.findall(r"^\s*room\((\w+)([^)]*)\)", text, re.MULTILINE):
        found[name] = [w for w in rest.replace("USES", "").split() if w in found or re.fullmatch(r"[a-z]+", w)]
    return found


def includes(file):
    for number, line in enumerate(file.read_text().splitlines(), 1):
        found = re.match(r'#include "([^"]+)"', line)
        if found:
            yield number, found.group(1)


def faults():
    uses = rooms()
    order = list(uses)
    for room, others in uses.items():
        for other in others:
            if other not in uses:
                continue  # a library
            if order.index(other) >= order.index(room):
                yield f"src/CMakeLists.txt: {room} uses {other}, which comes after it"
    folders = {p.name for p in src.iterdir() if p.is_dir()} - {"browser"}  # the page's module, no room
    for missing in sorted(folders ^ set(uses)):
        yield f"src/CMakeLists.txt: {missing} is a folder or a room, but not both"
    for file in sorted(src.rglob("*")):
        if file.suffix not in (".h", ".cpp"):
            continue
        name = file.relative_to(src).as_posix()
        lines = file.read_text().splitlines()
        if not lines or not re.match(r"// \w", lines[0]):
            yield f"{name}: does not say in a comment on its first line what it is for"
        if len(lines) > LONGEST:
            yield f"{name}: {len(lines)} lines, over {LONGEST}"
        room = name.split("/")[0]
        for number, other in includes(file):
            theirs = other.split("/")[0]
            if room in order and theirs in order and order.index(theirs) > order.index(room):
                yield f"{name}:{number}: {room} may not include {other}"
        for number, line in enumerate(lines, 1):
            if re.match(r"#include <[A-Za-z0-9_]+\.hxx>", line) and room != "kernel":
                yield f"{name}:{number}: kernel header outside the kernel's room"
            if name not in NAMES and COMPARED.search(line.split("//")[0]):
                yield f"{name}:{number}: a printed name is compared: {line.strip()}"
            if not name.startswith(UNITS_ASKED) and ASKS_UNITS.search(line.split("//")[0]):
                yield f"{name}:{number}: inches or metric asked outside the one printer: {line.strip()}"


def main() -> int:
    found = list(faults())
    for fault in found:
        print(fault)
    print(f"{len(found)} faults")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
