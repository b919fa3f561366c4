#!/usr/bin/env -S /usr/bin/python3 -B
"""Every system call of a draw fails once, in turn.

    failing_calls.py PROGRAM FOLDER [--every N] [--least M] [--calls write,mmap] [--draws letter,replace,trial]

--every 4 takes every fourth call of a name, but no fewer than M of each. Of those the system's
loader makes before the program's first line it takes one in sixteen.

Revision A lies in out/; a run draws B, or draws A anew with --replace, or a trial, while one
call of it fails, as strace(1) makes it fail: the Kth of its name with ENOSPC, EIO, EACCES or
ENOMEM. Then
  - the run ends with 2 or 3 and a message, or it did without that call: 0, and wrote byte for
    byte what it writes undisturbed. A call that fails before the program's first line, in the
    system's loader or a library, may end it anyhow: nothing was touched then;
  - A is as it was, or withdrawn beside what replaced it; whatever else lies there is whole;
  - the same run again, undisturbed, ends well and leaves nothing beside.
Ends with 77 where strace cannot trace. The way of testing is SQLite's ("How SQLite is
tested", I/O error testing): fail the Nth call, for every N."""
import argparse
import collections
import os
import pathlib
import re
import shutil
import sys

import shop

ERRORS = {  # of each call those that it may well give; see its manual page
    "write": ["ENOSPC", "EIO"],
    "fsync": ["EIO", "ENOSPC"],
    "rename": ["EIO", "ENOSPC", "EACCES"],
    "openat": ["EACCES", "EIO", "ENOMEM", "ENOSPC"],
    "mkdir": ["ENOSPC", "EACCES", "EIO"],
    "mmap": ["ENOMEM"],
    "brk": ["ENOMEM"],
    "read": ["EIO"],
    "close": ["EIO"],
    "chmod": ["EACCES"],
    "flock": ["EIO"],
    "getdents64": ["EIO"],
    "newfstatat": ["EIO", "EACCES"],
    "unlinkat": ["EIO"],
}
NAMES = {"rename": "rename,renameat,renameat2", "unlinkat": "unlink,unlinkat,rmdir", "chmod": "chmod,fchmod",
         "mkdir": "mkdir,mkdirat"}
# Two threads of a draw work side by side, so the Kth call need not be the same one twice.
arguments = argparse.ArgumentParser()
arguments.add_argument("program")
arguments.add_argument("folder", type=pathlib.Path)
arguments.add_argument("--every", type=int, default=1)
arguments.add_argument("--least", type=int, default=20)
arguments.add_argument("--calls", default="write,fsync,rename,openat,mkdir,mmap")
arguments.add_argument("--draws", default="letter,replace,trial")
given = arguments.parse_args()

folder = given.folder.resolve()
if folder.exists():
    shutil.rmtree(folder)
folder.mkdir(parents=True)
orders = shop.copy_params(folder)
pads = ("position: 137 in", "position: 138 in")
draws = {
    "letter": [shop.write_order(orders, "b", "QB-1041", "B", ["axle 1 in rearward"], [pads])],
    "replace": [shop.write_order(orders, "r", "QB-1041", values=[pads]), "--replace", "the axle was too far forward"],
    "trial": [orders / "base.yaml", "--set", "axle.position=138 in"],
}
start, out, trace = folder / "start", folder / "out", folder / "trace"
first = shop.run(given.program, "draw", orders / "base.yaml", "--out", start)
if first.returncode != 0:
    sys.exit(f"the base order is not released: {first.stderr}")
A, untouched = shop.tree(start / "QB-1041/A"), shop.tree(start)


def fresh():
    if out.exists():
        shutil.rmtree(out)
    shutil.copytree(start, out)


def without_date(there):
    """The note of what was withdrawn has the day in it."""
    return {path: digest for path, digest in there.items() if not path.endswith(".json") or "/" in path}


def draw(words, traced, fault=None):
    before = ["strace", "-f", "-qq", "--seccomp-bpf", "-o", trace, "-e", f"trace={traced}"]
    if fault:
        before += ["-e", f"inject={traced}:{fault}"]
    # A draw that a person waits for is done within a second; the lock may be waited for a minute.
    return shop.run(given.program, "draw", *words, "--out", out, before=map(str, before))


if shop.run("true", before=["strace", "-f", "-qq", "--seccomp-bpf", "-o", os.devnull]).returncode != 0:
    print("skipped: strace cannot trace here")
    sys.exit(77)

faults, ends, failed_calls = [], collections.Counter(), 0
for name, words in ((n, draws[n]) for n in given.draws.split(",")):
    fresh()
    draw(words, "all")
    undisturbed = without_date(shop.tree(out / "QB-1041"))
    for call in given.calls.split(","):
        traced = NAMES.get(call, call)
        fresh()
        draw(words, traced + ",fcntl")
        lines = trace.read_text(errors="replace").split("\n")
        # main() begins by looking at its three streams.
        main = next(i for i, l in enumerate(lines) if "fcntl(0, F_GETFD" in l)
        before_main = sum("fcntl(" not in l for l in lines[:main])
        lines = [l for l in lines if "fcntl(" not in l]
        count = max(collections.Counter(l.split()[0] for l in lines if re.match(r"\d+ +\w+\(", l)).values(), default=0)
        step = max(1, min(given.every, (count - before_main) // max(1, given.least)))
        ks = [*range(1, before_main + 1, 16 * step), *range(before_main + 1, count + 1, step)]
        for place, k in enumerate(ks):
            # A sample takes one error of each call, another each time.
            errors = ERRORS[call] if given.every == 1 else [ERRORS[call][place % len(ERRORS[call])]]
            for error in errors:
                fresh()
                ran = draw(words, traced, f"error={error}:when={k}")
                injected = [l for l in trace.read_text(errors="replace").split("\n") if "(INJECTED)" in l]
                if not injected:
                    continue
                failed_calls += 1
                which = f"{name}: {call} {k} {error}: {injected[0][:150]}"
                told = ran.stderr.strip()
                bad = shop.faults_in_out(out)
                there = shop.tree(out / "QB-1041")
                # Where a run wrote its own message into the failing call, it cannot have been heard.
                unheard = any(re.match(r"\d+ +write\(2,", l) for l in injected)
                early = k <= before_main and ran.returncode != 0
                if early:
                    if shop.tree(out) != untouched:
                        bad.append("ended before its first line, and something was touched")
                elif ran.returncode == 0:
                    if without_date(there) != undisturbed:
                        bad.append("ended well and wrote something else")
                elif ran.returncode not in (2, 3) or not (told or unheard):
                    bad.append(f"ended with {ran.returncode} and {told[-200:]!r}")
                is_there = {p[2:]: d for p, d in there.items() if p.startswith("A/")}
                aside = {p[14:]: d for p, d in there.items() if p.startswith("A.withdrawn-1/")}
                if A not in ((is_there, aside) if name == "replace" else (is_there,)):
                    bad.append("revision A is not as it was")
                ends["before main" if early else ran.returncode] += 1
                # Where nothing is left of it, another run begins as the undisturbed one began.
                if ran.returncode != 0 and shop.tree(out) != untouched:
                    again = shop.run(given.program, "draw", *words, "--out", out)
                    if again.returncode != 0:
                        bad.append(f"the same run again ends with {again.returncode}: {again.stderr[-300:]}")
                    if shop.leftovers(out):
                        bad.append(f"left beside: {shop.leftovers(out)}")
                    bad += shop.faults_in_out(out)
                    if name != "replace" and without_date(shop.tree(out / "QB-1041")) != undisturbed:
                        bad.append("the same run again wrote something else")
                for b in bad:
                    faults.append(f"{which}\n    {b}")
                    print(faults[-1], flush=True)
        print(f"{name} {call}: {len(ks)} of up to {count} calls in a thread; {failed_calls} failed so far, ended "
              f"with {dict(ends)}", flush=True)
print(f"{failed_calls} failing calls, ended with {dict(ends)}: {len(faults)} faults")
if failed_calls == 0:
    sys.exit("no call was made to fail")
sys.exit(1 if faults else 0)
