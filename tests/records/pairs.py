#!/usr/bin/env -S /usr/bin/python3 -B
"""Two at once into one folder never harm each other.

    pairs.py PROGRAM FOLDER N

N pairs: one order twice; two that differ under one letter; orders of like names, X and
X.part-N; two that replace one release; a trial beside a release. What each run may end with is
said beside its kind; afterwards all that lies there is whole and nothing is left beside."""
import collections
import pathlib
import shutil
import subprocess
import sys

import shop

program, folder, count = sys.argv[1], pathlib.Path(sys.argv[2]).resolve(), int(sys.argv[3])
if folder.exists():
    shutil.rmtree(folder)
folder.mkdir(parents=True)
orders = shop.copy_params(folder)
FURTHER = ("position: 137 in", "position: 138 in")
FARTHEST = ("position: 137 in", "position: 139 in")
faults, ends = [], collections.Counter()


def at_once(*runs):
    started = [subprocess.Popen([program, "draw", *map(str, words)], stdout=subprocess.PIPE, stderr=subprocess.PIPE,
                                text=True) for words in runs]
    told = [(run, *run.communicate(timeout=180)) for run in started]
    return [(run.returncode, out, err) for run, out, err in told]


for i in range(count):
    kind = ["same", "differing", "like names", "two replace", "trial beside"][i % 5]
    out, number = folder / f"out{i}", f"P-{i}"
    order = shop.write_order(orders, "a", number)
    other = shop.write_order(orders, "b", number, values=[FURTHER])
    into, bad = ["--out", out], []
    if kind == "same":  # both well: one releases, the other says it is the same
        runs = at_once([order, *into], [order, *into])
        said = sorted("Already released, the same" in r[1] for r in runs)
        if [r[0] for r in runs] != [0, 0] or said != [False, True]:
            bad.append("not one that releases and one that finds it released")
        want = {f"{number}/A"}
    elif kind == "differing":  # one releases, the other is refused
        runs = at_once([order, *into], [other, *into])
        if sorted(r[0] for r in runs) != [0, 2]:
            bad.append("not one released and one refused")
        want = {f"{number}/A"}
    elif kind == "like names":  # both release
        like = shop.write_order(orders, "c", f"{number}.part-{i}")
        runs = at_once([order, *into], [like, *into])
        if [r[0] for r in runs] != [0, 0]:
            bad.append("not both released")
        want = {f"{number}/A", f"{number}.part-{i}/A"}
    elif kind == "two replace":  # each that says so has replaced, and nothing of what it replaced is lost
        shop.run(program, "draw", order, *into)
        last = shop.write_order(orders, "c", number, values=[FARTHEST])
        runs = at_once([other, *into, "--replace", "one"], [last, *into, "--replace", "two"])
        replaced = sum(r[0] == 0 for r in runs)
        if replaced == 0 or any(r[0] not in (0, 2) for r in runs):
            bad.append("none replaced, or one broke")
        want = {f"{number}/A"} | {f"{number}/A.withdrawn-{k + 1}" for k in range(replaced)}
        if replaced == 1 and not any("another run has changed" in r[2] for r in runs):
            bad.append("one was refused for another reason")
    else:
        runs = at_once([order, *into], [order, *into, "--set", "axle.position=138 in"])
        if [r[0] for r in runs] != [0, 0]:
            bad.append("not both drawn")
        want = {f"{number}/A", f"{number}/trial"}
    there = {str(m.parent.relative_to(out)) for m in out.glob("*/*/manifest.json")}
    if there != want:
        bad.append(f"there is {sorted(there)}, wanted {sorted(want)}")
    bad += shop.faults_in_out(out) + [f"left beside: {n}" for n in shop.leftovers(out)]
    ends[f"{kind}: {sorted(r[0] for r in runs)}"] += 1
    for b in bad:
        faults.append(f"{i} {kind}: {b}: {[(r[0], r[2][-200:]) for r in runs]}")
        print(faults[-1], flush=True)
    shutil.rmtree(out)
print(f"{count} pairs, {dict(ends)}; {len(faults)} faults")
sys.exit(1 if faults or count == 0 else 0)
