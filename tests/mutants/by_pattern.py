#!/usr/bin/env python3
"""Every stress, load, modulus, factor and arm of the loads halved and doubled, one at a time.

    tests/mutants/by_pattern.py FOLDER [words of the places to try]
    tests/mutants/by_pattern.py --list          # the places, nothing built

The places are drawn from the source by what they look like, so that a new formula is tried
as soon as it is written. In src/loads, src/bed/*weld* and src/rules/loads a place is

  - what a quantity is set to: a local, a member, a constant, a figure added to or scaled,
    where it is declared as a mass, force, stress, area, modulus, inertia or bare factor, or
    as a length with a word of an arm or a size in its name (`arm_words`);
  - what a function of such a type gives back;
  - a force or a mass written last in braces: {from, to, force}.

A figure set to nought is no place. The copy in FOLDER is built once, each place multiplied
by a number that the environment names: 1, or 2 or 1/2 for the one that is tried. Then the
tests against outside figures (`checks`) are run for each. A fault is killed when one fails.
A place where that cannot matter, or only to a search whose finds are tried again, stands in
same_either_way.txt with the reason; it is tried all the same, and one that is killed both ways
has no business there.

Part of the long test set, not of ctest. It ends with 1 where a fault lived."""
import pathlib
import re
import subprocess
import sys
from collections import Counter

from run import build, copy_tree, top

here = pathlib.Path(__file__).resolve().parent

drawn_from = ["src/loads/*.h", "src/loads/*.cpp", "src/bed/*weld*", "src/rules/loads/*.h", "src/rules/loads/*.cpp"]

# Tests whose figures come from outside the program, and the program of each.
checks = {"test_loads": "ByHand*.*:Body.*:Balance.TheBase*:Beam.*",
          "test_published": "PublishedBeams.*:PublishedStatics.*:PublishedMasses.*:Welds.*"}

quantity = r"Mpa|Newton|Kg|Mm2|Mm3|Mm4|double|std::vector<(?:Newton|double)>|Eigen::VectorXd|Eigen::MatrixXd"
arm_words = ("arm|far|off|above|across|apart|along|half|over|base|height|high|radius|length|line|leg|thick|throat|"
             "room|by|sag|lift|foot|depth|web|flange|edge|reach|lean|span")
in_braces = r"\b(?:mass|gravity|weight|force|bunk_load|\w*stress|weld|sag|ix|about_x|inertia|modulus|ksi|share)\b"
judged = {"over": (3, 4), "fill": (1, 2)}  # arguments of these: what is measured, and what it may be

word = r"(?:[\w:]+(?:<[\w:, <>]*>)?[*&]?)"
a_local = re.compile(rf"(?:^|[;{{(])\s*(?:static |inline |const |constexpr |mutable )*(?P<type>{word}) (?P<name>\w+)"
                     r"(?=\[?\w*\]?(?: =\s|;|,|\)|\{| : ))", re.M)
assigned = re.compile(r"(?P<lhs>(?:\w+(?:\[[^\]]*\])?(?:\.|->|\(\)\.))*(?P<name>\w+)(?:\[[^\]]*\]|\(\w+, [\w +]+\))?) "
                      r"(?P<op>[-+*/]?=)\s+")


class Place:
    def __init__(self, path, at, end, name):
        self.path, self.at, self.end, self.name = path, at, end, name


def blanked(text):
    """Comments and strings as blanks, so that places keep their columns."""
    blank = lambda m: re.sub(r"[^\n]", " ", m.group())
    return re.sub(r'//[^\n]*|"(?:\\.|[^"\\\n])*"|\'(?:\\.|[^\'\\\n])\'|#[^\n]*', blank, text)


def end_of(text, at):
    """Where the expression that begins here ends: a comma, a semicolon or a bracket of its surroundings."""
    depth = 0
    for i in range(at, len(text)):
        c = text[i]
        if c in "([{":
            depth += 1
        elif c in ")]}":
            if depth == 0:
                return i
            depth -= 1
        elif c in ",;" and depth == 0:
            return i
    raise ValueError("an expression without an end")


def elements(text, opened):
    """(from, to) of each expression of a list whose bracket is opened here; nothing for a block."""
    all, at = [], opened + 1
    while True:
        end = end_of(text, at)
        if text[end] == ";":
            return []
        all.append((at + len(text[at:end]) - len(text[at:end].lstrip()), end))
        if text[end] != ",":
            return all
        at = end + 1


def takes(kind, name):
    """Whether something of that type and name is a stress, a load, a modulus, a factor or an arm."""
    if kind in ("Mm", "std::optional<Mm>"):
        return any(re.fullmatch(arm_words, part) for part in name.split("_"))
    return re.fullmatch(quantity, kind) is not None


def is_nothing(expression):
    return re.fullmatch(r"\s*(-?0(\.0)?|\{\}|\S*infinity\(\)|\S*::Zero\(.*\)|true|false|)\s*", expression) is not None


def declarations(text):
    """(place, type, name) of what the text declares, in order."""
    all = []
    for m in a_local.finditer(text):
        if m["type"] in ("return", "else", "case", "using", "namespace", "struct", "class", "enum", "delete", "new"):
            continue
        all.append((m.start("name"), m["type"], m["name"]))
        at = m.end()
        while True:
            initial = re.compile(r" =\s+").match(text, at)
            end = end_of(text, initial.end()) if initial else at
            further = re.compile(r",\s+(\w+)(?= =\s|;|,)").match(text, end)
            if not further or text[m.start():m.start("type")].lstrip().startswith("("):
                break
            all.append((further.start(1), m["type"], further[1]))
            at = further.end()
    return all


def members(texts):
    """Names of struct members that are such a quantity in one struct at least."""
    return {name for text in texts for body in re.findall(r"^(?:  )?(?:struct|class) \w+ \{\n(.*?)^(?:  )?\}", text, re.M | re.S)
            for _, kind, name in declarations("\n" + body) if takes(kind, name)}


def functions(texts):
    """Names of functions that give back something else than a quantity."""
    return {name for text in texts for kind, name in
            re.findall(rf"^ *(?:static |inline |constexpr )*({word}) ((?!if|for|while|switch)\w+)\(", text, re.M)
            if kind != "return" and not re.fullmatch(quantity + "|Mm", kind)}


def places_of(path, text, known, others):
    seen = blanked(text)
    found = {}
    declared = declarations(seen)

    def take(at, end, name):
        said = seen[at:end]
        call = re.fullmatch(r"(\w+)\(.*\)", said, re.S)
        if is_nothing(said) or said[0] in "&{[" or said.startswith("static_cast<int>") or (call and call[1] in others):
            return
        found.setdefault(at, Place(path, at, end, name))

    for at, kind, name in declared:
        if takes(kind, name) and not kind.startswith("std::vector") and (m := re.compile(r"\w+ =\s+").match(seen, at)):
            take(m.end(), end_of(seen, m.end()), name)
    starts = {at for at, _, _ in declared}
    for m in assigned.finditer(seen):
        if m.start() in starts:
            continue
        name, lhs = m["name"], m["lhs"]
        own = [kind for at, kind, known_name in declared if known_name == name and at < m.start()]
        local = "." not in lhs and "->" not in lhs
        if local and own and own[-1].startswith("std::vector") and "[" not in lhs:
            continue
        if takes(own[-1], name) if local and own else name in known:
            take(m.end(), end_of(seen, m.end()), lhs)
    for m in re.finditer(r"\{", seen):
        if not re.search(r"(\(|return |= |\{|, |\w)$", seen[max(0, m.start() - 30):m.start()]):
            continue
        for at, end in elements(seen, m.start()):
            if re.search(in_braces, seen[at:end]) and not re.search(r"[{}]|\[&\]|&&|\|\|", seen[at:end]):
                take(at, end, "in braces")
    for m in re.finditer(r"\b(over|fill)\(", seen):
        listed = elements(seen, m.end() - 1)
        if not seen[:m.start()].endswith(("j.", " ")) or re.match(r"(Finding&|const char)", seen[m.end():]):
            continue
        for i in judged[m[1]]:
            take(*listed[i], "judged")
    for m in re.finditer(rf"^(?:static |inline |constexpr )*(?:{quantity}) ([\w:]+)\([^;]*?\)(?: const)? \{{", seen, re.M):
        one_line = "\n" not in seen[m.end():seen.index("}", m.end())]
        close = seen.index("}" if one_line else "\n}", m.end())
        for r in re.finditer(r"\breturn ", seen[m.end():close]):
            at = m.end() + r.end()
            line = seen[seen.rfind("\n", 0, at) + 1:at]
            if "{ return" in line and not one_line:
                continue  # a lambda's own
            take(at, end_of(seen, at), m[1] + "()")
    return [found[at] for at in sorted(found)]


def words_of(place, text):
    line = text.count("\n", 0, place.at) + 1
    said = " ".join(text[place.at:place.end].split())
    return f"{place.path}:{line} {place.name} = {said if len(said) < 70 else said[:67] + '...'}"


def with_factors(text, places, first):
    """The text with every place multiplied by its own factor."""
    out, at = [], 0
    opens = {p.at: first + i for i, p in enumerate(places)}
    ends = Counter(p.end for p in places)
    for i, c in enumerate(text):
        out.append(")" * ends[i])
        if i in opens:
            out.append(f"fault_factor({opens[i]}) * (")
        out.append(c)
    text = "".join(out)
    text = re.sub(r"\b(inline |static )?constexpr (?=(?:%s|Mm) \w+ = fault_factor)" % quantity, r"\1const ", text)
    return text


factor_header = """#pragma once
#include <cstdlib>
inline double fault_factor(int place) {
  static const char* const named = std::getenv("BEDWRIGHT_FAULT");
  static const int at = named ? std::atoi(named) : -1;
  static const double by = named && std::getenv("BEDWRIGHT_FAULT_BY") ? std::atof(std::getenv("BEDWRIGHT_FAULT_BY")) : 1;
  return place == at ? by : 1;
}
"""


def draw():
    files = sorted({p for pattern in drawn_from for p in top.glob(pattern)})
    texts = {f.relative_to(top).as_posix(): f.read_text() for f in files}
    finding = (top / "src/rules/finding.h").read_text()
    seen = [blanked(t) for t in [*texts.values(), finding]]
    known, others = members(seen), functions(seen)
    return texts, {path: places_of(path, text, known, others) for path, text in texts.items()}


recent = []  # tests that killed the faults before: the next one is often killed by one of them


def run_checks(folder, fault=None, by=1.0):
    """The first test that fails, or nothing."""
    for program, filter in [*recent, *checks.items()]:
        failed = run_tests(folder, program, filter, fault, by)
        if failed:
            pair = (program, failed)
            if "." in failed:
                recent[:] = [pair] + [p for p in recent if p != pair][:7]
            return failed
    return None


def run_tests(folder, program, filter, fault, by):
    environment = {"PATH": "/usr/bin:/bin"}
    if fault is not None:
        environment |= {"BEDWRIGHT_FAULT": str(fault), "BEDWRIGHT_FAULT_BY": str(by)}
    try:
        ran = subprocess.run([folder / "build/main/tests" / program, "--gtest_filter=" + filter, "--gtest_fail_fast"],
                             capture_output=True, text=True, env=environment, timeout=120)
    except subprocess.TimeoutExpired:
        return f"{program} came to no end"
    failed = re.findall(r"^\[  FAILED  \] (\S+\.\w+)", ran.stdout, re.M)
    if failed:
        return failed[0]
    if ran.returncode:
        return f"{program} broke down: {ran.returncode}"
    count = re.search(r"\[  PASSED  \] (\d+) test", ran.stdout)
    if not count or int(count[1]) == 0:
        sys.exit(f"{program} ran none of {filter}")
    return None


def same_either_way():
    """Places that cannot matter: 'path name | words of its expression | why'."""
    file = here / "same_either_way.txt"
    lines = [l for l in file.read_text().split("\n") if l and not l.startswith("#")] if file.is_file() else []
    return [tuple(part.strip() for part in l.split("|")) for l in lines]


def excused(words, reasons):
    for reason in reasons:
        path, name = reason[0].split(" ", 1)
        if words.startswith(path + ":") and f" {name} = " in words and reason[1] in words:
            return reason
    return None


def main() -> int:
    if len(sys.argv) < 2:
        print(__doc__)
        return 2
    texts, places = draw()
    told = [(p, words_of(p, texts[path])) for path, all in places.items() for p in all]
    if sys.argv[1] == "--list":
        for i, (_, words) in enumerate(told):
            print(i, words)
        return 0
    folder, wanted = pathlib.Path(sys.argv[1]).resolve(), sys.argv[2:]
    if folder == top:
        sys.exit("the folder must not be the tree itself")
    copy_tree(folder, {path for path in texts if places[path]})
    first = 0
    for path, text in texts.items():
        if places[path]:
            text, there = '#include "fault_factor.h"\n' + with_factors(text, places[path], first), folder / path
            if not there.is_file() or there.read_text() != text:
                there.parent.mkdir(parents=True, exist_ok=True)
                there.write_text(text)
            first += len(places[path])
    header = folder / "build/faults/fault_factor.h"
    if not header.is_file() or header.read_text() != factor_header:
        header.parent.mkdir(parents=True, exist_ok=True)
        header.write_text(factor_header)
    subprocess.run(["cmake", "-S", folder, "-B", folder / "build/main", "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Release",
                    "-DCMAKE_CXX_FLAGS=-I" + str(header.parent)], check=True, stdout=subprocess.DEVNULL)
    for program in checks:
        built = build(folder, program)
        if built.returncode:
            sys.exit(f"{program} does not build with factors in place:\n" + built.stdout[-4000:])
    if (failed := run_checks(folder)):
        sys.exit(f"without any fault: {failed}")
    reasons = same_either_way()
    score, lived, needed = Counter(), [], set()
    for i, (_, words) in enumerate(told):
        if not all(w in words for w in wanted):
            continue
        reason = excused(words, reasons)
        why = reason and reason[2]
        killers = [run_checks(folder, i, by) for by in (0.5, 2.0)]
        for by, killer in zip(("halved", "doubled"), killers):
            score["killed" if killer else "cannot matter" if why else "lived"] += 1
            print(f"{'killed' if killer else 'excused' if why else 'LIVED':<8}{by:<8} {words}: {killer or why or ''}", flush=True)
        if not all(killers) and not why:
            lived.append(words)
        if reason and not all(killers):
            needed.add(reason)
    print(f"{sum(score.values())} faults at {len(told)} places: " + ", ".join(f"{n} {k}" for k, n in score.items()))
    unneeded = [] if wanted else [r for r in reasons if r not in needed]
    for reason in unneeded:
        print(f"said not to matter, and it does, or is no longer there: {' | '.join(reason)}")
    return 1 if lived or unneeded or not score else 0


if __name__ == "__main__":
    sys.exit(main())
