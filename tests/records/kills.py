#!/usr/bin/env -S /usr/bin/python3 -B
"""Runs that are killed at any moment leave every release whole.

    kills.py PROGRAM FOLDER N

Runs are begun until N were killed at work (SIGKILL), half of them at a random time, half shortly
after they began to write: of new orders, of a --replace, of a trial, of a map of sizes. After each
  - all that lies in out/ is whole by its manifest, and every release that was there before is
    there, byte for byte, or beside as withdrawn;
  - a map's folder is whole by its list, or not there.
At the end every order that was killed is drawn undisturbed; nothing is left beside."""
import collections
import pathlib
import random
import shutil
import signal
import subprocess
import sys
import time

import shop

program, folder, count = sys.argv[1], pathlib.Path(sys.argv[2]).resolve(), int(sys.argv[3])
seed = int(sys.argv[4]) if len(sys.argv) > 4 else 12
if folder.exists():
    shutil.rmtree(folder)
folder.mkdir(parents=True)
orders, out, maps = shop.copy_params(folder), folder / "out", folder / "maps"
random.seed(seed)
began = time.monotonic()
if shop.run(program, "draw", orders / "base.yaml", "--out", out).returncode != 0:
    sys.exit("the base order is not released")
whole_run = time.monotonic() - began
kept = {"QB-1041": [shop.tree(out / "QB-1041/A")]}  # every release there ever was, by order


def position(i):
    """Between 136 and 139 in, where the bed goes together."""
    return ("position: 137 in", f"position: {136 + i // 8 % 3}-{1 + 2 * (i % 8)}/16 in")


def began_to_write(place):
    own = place / ".bedwright"
    try:
        return any(e.name != "lock" and any(e.iterdir()) for e in own.iterdir())
    except OSError:
        return False


def list_is_whole(of):
    lines = [l.split("  ", 1) for l in (of / "offer.sha256").read_text().split("\n") if l]
    there = shop.tree(of)
    there.pop("offer.sha256")
    return there == {name: digest for digest, name in lines}


faults, found, drawn = [], collections.Counter(), []
i = -1
while found["killed"] < count and i < 4 * count:
    i += 1
    what = ["new", "replace", "trial", "map"][i % 4]
    if what == "new":
        order = shop.write_order(orders, f"k{i}", f"K-{i}", values=[position(i)])
        words, place = ["draw", order, "--out", out], out
        drawn.append(words)
    elif what == "replace":
        order = shop.write_order(orders, f"r{i}", "QB-1041", values=[position(i)])
        words, place = ["draw", order, "--out", out, "--replace", f"for the {i}th time"], out
    elif what == "trial":
        words, place = ["draw", orders / "base.yaml", "--out", out, "--set", f"axle.position={136 + i % 64 / 32} in"], out
    else:
        words = ["offer", orders / "sizes.yaml", "--vary", f"track.rail_length=72in,{73 + i % 8}in", "--out", maps / "m"]
        place = maps
    run = subprocess.Popen([program, *map(str, words)], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    if i // 4 % 2:
        while run.poll() is None and not began_to_write(place):
            time.sleep(0.0005)
        time.sleep(random.random() * 0.01)
    else:
        time.sleep(random.random() * whole_run * 1.1)
    alive = run.poll() is None
    run.send_signal(signal.SIGKILL)
    run.wait()
    found["killed" if alive else "ended before"] += 1
    whole_run *= 1.01 if alive else 0.97  # a machine is not always as busy
    found["while writing"] += bool(shop.leftovers(place))
    bad = shop.faults_in_out(out)
    if (maps / "m").exists() and not list_is_whole(maps / "m"):
        bad.append("the map is not whole")
    now = collections.defaultdict(list)
    for entry in out.glob("*/*"):
        if entry.is_dir() and entry.name != "trial" and entry.parent.name != ".bedwright":
            now[entry.parent.name].append(shop.tree(entry))
    for number, releases in kept.items():
        bad += [f"a release of {number} is lost" for r in releases if r not in now[number]]
    kept = now
    faults += [f"{i} {what}: {b}" for b in bad]
    for b in bad:
        print(faults[-1], flush=True)
for words in drawn + [["draw", orders / "base.yaml", "--out", out, "--set", "axle.position=138 in"]]:
    ended = shop.run(program, *words)
    if ended.returncode != 0:
        faults.append(f"{words[1]} drawn at the end: {ended.stderr}")
        print(faults[-1])
faults += shop.faults_in_out(out) + [f"left beside: {n}" for n in shop.leftovers(out)]
verified = shop.run(program, "verify", out, timeout=600)
if verified.returncode != 0:
    faults.append(verified.stdout[-400:])
print(f"{i + 1} runs, {dict(found)}; {len(list(out.glob('*/*/manifest.json')))} packets, {len(faults)} faults")
if found["while writing"] == 0 or found["killed"] < count:
    sys.exit("too few were killed at work: this run shows nothing")
sys.exit(1 if faults else 0)
