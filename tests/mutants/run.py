#!/usr/bin/env python3
"""Faults put into the source one at a time, and the test that must notice each.

    tests/mutants/run.py FOLDER [words of the names of those to try]

Copies the tree to FOLDER, configures it there and, for each fault of mutants.txt, puts it
in, builds the one program, runs the one test and takes the fault out again. The tree
itself is never touched. Not part of ctest: it builds some program for each fault. It ends
with 1 where a fault was not noticed, or noticed otherwise than said.

mutants.txt: blank lines between faults, # before a remark, and of each

    name: what is wrong
    file: src/...
    - a line as it is, one or several, together once in the file
    + what stands there instead, any number of lines (and again - and + for another place)
    seen by: test_layout FrameFigures.*     (a program under tests/ and its gtest filter)

or `seen by: compiler test_layout`, where that program must not build, or
`seen by: arrows`, for tests/structure/arrows.py. Before the faults, every such test must
pass on the tree as it is and have run at least once: a filter that meets nothing notices
nothing."""
import pathlib
import re
import shutil
import subprocess
import sys

here = pathlib.Path(__file__).resolve().parent
top = here.parents[1]


def mutants():
    for block in re.split(r"\n\s*\n", (here / "mutants.txt").read_text()):
        lines = [l for l in block.split("\n") if l and not l.startswith("#")]
        if not lines:
            continue
        field = {k: v for k, v in (l.split(": ", 1) for l in lines if l[0] not in "+-")}
        places = []  # [text before, text after]
        for i, line in enumerate(lines):
            if line[0] == "-" and lines[i - 1][0] != "-":
                places.append(["", ""])
            if line[0] in "-+":
                places[-1]["-+".index(line[0])] += line[2:] + "\n"
        yield field["name"], field["file"], places, field["seen by"].split()


def copy_tree(to, but=()):
    """Only what differs, so that what was built there before stays built; these paths left as they are there."""
    names = subprocess.run(["git", "ls-files", "-co", "--exclude-standard"], cwd=top, check=True,
                           capture_output=True, text=True).stdout.split("\n")
    for name in filter(None, names):
        if name in but:
            continue
        mine, theirs = top / name, to / name
        if mine.is_file() and not (theirs.is_file() and theirs.read_bytes() == mine.read_bytes()):
            theirs.parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(mine, theirs)


def build(folder, target):
    return subprocess.run(["ninja", "-j2", "-C", folder / "build/tests", target], capture_output=True, text=True)


def verdict(folder, seen_by):
    """'passed', 'failed', 'not built' or what else came of it; and the first words of why."""
    if seen_by[0] == "arrows":
        ran = subprocess.run(["/usr/bin/python3", folder / "tests/structure/arrows.py"], capture_output=True, text=True)
        if ran.returncode not in (0, 1) or not re.search(r"^\d+ faults$", ran.stdout, re.MULTILINE):
            return "broke down", ran.stderr.strip()[-200:]
        return ("failed" if ran.returncode else "passed"), ran.stdout.split("\n")[0]
    by_compiler = seen_by[0] == "compiler"
    built = build(folder, seen_by[1] if by_compiler else seen_by[0])
    if built.returncode:
        error = re.search(r"error: .*", built.stdout)
        return "not built", error.group() if error else built.stdout[-300:]
    if by_compiler:
        return "passed", "it builds"
    ran = subprocess.run([folder / "build/tests/tests" / seen_by[0], "--gtest_filter=" + seen_by[1]],
                         capture_output=True, text=True)
    failed = re.findall(r"^\[  FAILED  \] (\S+\.\S+)", ran.stdout, re.MULTILINE)
    if ran.returncode == 0:
        count = re.search(r"\[  PASSED  \] (\d+) test", ran.stdout)
        return ("passed", count.group()) if count and int(count.group(1)) > 0 else ("ran nothing", "")
    if ran.returncode == 1 and failed:
        return "failed", ", ".join(dict.fromkeys(f.rstrip(",") for f in failed))
    return "broke down", f"code {ran.returncode}: {ran.stderr.strip()[-200:]}"


def main() -> int:
    if len(sys.argv) < 2:
        print(__doc__)
        return 2
    folder, words = pathlib.Path(sys.argv[1]).resolve(), sys.argv[2:]
    if folder == top:
        sys.exit("the folder must not be the tree itself")
    tried = [m for m in mutants() if all(w in m[0] for w in words)]
    copy_tree(folder)
    subprocess.run(["cmake", "-S", folder, "-B", folder / "build/tests", "-G", "Ninja", "-DCMAKE_BUILD_TYPE=Release"],
                   check=True, stdout=subprocess.DEVNULL)
    unseen = 0
    for seen_by in sorted({tuple(m[3]) for m in tried}):
        result, why = verdict(folder, list(seen_by))
        if result != "passed":
            sys.exit(f"without any fault: {' '.join(seen_by)}: {result} {why}")
    for name, path, places, seen_by in tried:
        file = folder / path
        text = faulty = file.read_text()
        if not places or any(text.count(before) != 1 for before, _ in places):
            print(f"{'NOT PUT IN':<12}{name}: its lines are not there just once")
            unseen += 1
            continue
        for before, after in places:
            faulty = faulty.replace(before, after)
        try:
            file.write_text(faulty)
            result, why = verdict(folder, seen_by)
        finally:
            file.write_text(text)
        seen = result == ("not built" if seen_by[0] == "compiler" else "failed")
        unseen += not seen
        print(f"{'seen' if seen else 'NOT SEEN':<12}{name}: {result}: {why}", flush=True)
    print(f"{len(tried)} faults, {unseen} not seen")
    return 1 if unseen or not tried else 0


if __name__ == "__main__":
    sys.exit(main())
