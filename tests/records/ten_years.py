#!/usr/bin/env -S /usr/bin/python3 -B
"""Ten years of a shop: a bed a week, each with three revisions.

    ten_years.py PROGRAM FOLDER ORDERS

ORDERS orders, every second with a number like its neighbour's, each released as A, B and C; a
trial of every fifth, a bed that is stopped every seventh, a replacement of every eleventh; the
oldest drawn again every twentieth. Kept here beside the program: every release as it was when it
was drawn. At the end nothing of that is lost or changed, what lies there is whole, verify finds
every digest right and draws the oldest again alike; and how long list and verify took."""
import json
import pathlib
import shutil
import sys
import time

import shop

program, folder, count = sys.argv[1], pathlib.Path(sys.argv[2]).resolve(), int(sys.argv[3])
if folder.exists():
    shutil.rmtree(folder)
folder.mkdir(parents=True)
orders, out = shop.copy_params(folder), folder / "out"
faults, kept, draws, seconds = [], {}, 0, 0.0


def draw(expected, *words):
    global draws, seconds
    began = time.monotonic()
    ran = shop.run(program, "draw", *words, "--out", out, timeout=600)
    seconds += time.monotonic() - began
    draws += 1
    if ran.returncode != expected:
        faults.append(f"{[str(w) for w in words]} ended with {ran.returncode}: {ran.stderr[-300:]}")
        print(faults[-1], flush=True)
    return ran


def axle(i, step):
    return ("position: 137 in", f"position: {136 + step}-{1 + 2 * (i % 8)}/16 in")


for i in range(count):
    year = 2017 + i * 10 // max(1, count)
    number = f"QB-{i // 2}" + (".part-1" if i % 2 else "")  # like its neighbour's
    customer = ("customer: Pinchbeck Farm", f"customer: Farm {i // 2}")
    dated = ("date: 2026-10-05", f"date: {year}-03-{1 + i % 28:02}")
    for step, letter in enumerate("ABC"):
        order = shop.write_order(orders, "o", number, letter, ["axle moved", "axle moved again"][:step],
                                 [customer, dated, axle(i, step)])
        draw(0, order)
        kept[f"{number}/{letter}"] = shop.tree(out / number / letter)
    if i % 5 == 0:
        draw(0, order, "--set", "axle.position=138 in")
    if i % 7 == 0:
        draw(1, order, "--set", "bolts.bunk=1-1/2 in")
    if i % 11 == 0:
        again = shop.write_order(orders, "r", number, "A", [], [customer, dated, axle(i + 1, 0)])
        draw(0, again, "--replace", "the axle was to stand further back")
        kept[f"{number}/A.withdrawn-1"] = kept[f"{number}/A"]
        kept[f"{number}/A"] = shop.tree(out / number / "A")
    if i % 20 == 19:
        oldest = draw(0, out / "QB-0/B/inputs/order.yaml")
        if "Already released, the same" not in oldest.stdout:
            faults.append(f"the oldest drawn again: {oldest.stdout[-200:]}")
            print(faults[-1], flush=True)

there = {f"{e.parent.name}/{e.name}" for e in out.glob("*/*") if e.is_dir() and e.parent.name != ".bedwright"}
faults += [f"{name} is lost or changed" for name, was in kept.items()
           if name not in there or shop.tree(out / name) != was]
faults += [f"{name} was never drawn" for name in there - set(kept) if not name.endswith("/trial")]
faults += shop.faults_in_out(out) + [f"left beside: {n}" for n in shop.leftovers(out)]


def timed(*words):
    began = time.monotonic()
    ran = shop.run(program, *words, timeout=3600)
    return ran, time.monotonic() - began


listed, listing = timed("orders", "--out", out, "--json")
found = {f"{pathlib.Path(o['folder']).parent.name}/{pathlib.Path(o['folder']).name}"
         for o in json.loads(listed.stdout)["orders"]}
if found != there:
    faults.append(f"the list differs from what lies there: {sorted(found ^ there)[:5]}")
checked, checking = timed("verify", out)
if checked.returncode != 0:
    faults.append(f"verify: {checked.stdout[-300:]}")
again, drawing = timed("verify", out / "QB-0", "--redraw")
if again.returncode != 0:
    faults.append(f"the oldest drawn again: {again.stdout[-300:]}")
size = sum(f.stat().st_size for f in out.rglob("*") if f.is_file())
print(f"{count} orders, {len(there)} packets, {size / 1e6:.0f} MB; {draws} draws, {seconds / max(1, draws):.2f} s each; "
      f"list {listing:.2f} s, verify {checking:.1f} s, oldest drawn again {drawing:.1f} s; {len(faults)} faults")
for fault in faults:
    print(fault)
sys.exit(1 if faults or count == 0 else 0)
