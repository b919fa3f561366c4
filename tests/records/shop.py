"""A shop's folder for the tests of records: orders, what is drawn of them, and what of that is whole.

What is whole is judged here, by the digests a manifest lists, without the program."""
import hashlib
import json
import os
import pathlib
import re
import shutil
import subprocess

top = pathlib.Path(__file__).resolve().parents[2]
ENTRY = "\nrevisions:\n  - {revision: A, date: 2026-10-05, what: First issue}\n"


def copy_params(folder):
    shutil.copytree(top / "params", folder / "params")
    return folder / "params/orders"


def write_order(orders, name, number, letter="A", what=(), values=()):
    """The base order under another number. `what`: what each letter after A changes; `values`:
    pairs of texts, as (was, is)."""
    text = (top / "params/orders/base.yaml").read_text()
    for was, now in [("number: QB-1041", f"number: {number}"), ("revision: A", f"revision: {letter}"), *values]:
        assert text.count(was) == 1, was
        text = text.replace(was, now)
    if what:
        text += ENTRY + "".join(f"  - {{revision: {chr(ord('B') + i)}, date: 2026-11-0{i + 2}, by: E.W., what: {w}}}\n"
                                for i, w in enumerate(what))
    file = orders / f"{name}.yaml"
    file.write_text(text)
    return file


def run(*words, before=(), timeout=120):
    return subprocess.run([*before, *map(str, words)], capture_output=True, text=True, timeout=timeout,
                          stdin=subprocess.DEVNULL, errors="replace")


def tree(folder):
    """Path to digest of every file below; a link is told by where it leads."""
    found = {}
    for above, _, names in os.walk(folder):
        for name in names:
            file = pathlib.Path(above, name)
            found[str(file.relative_to(folder))] = (
                "-> " + os.readlink(file) if file.is_symlink() else hashlib.sha256(file.read_bytes()).hexdigest())
    return found


def faults_of_packet(folder):
    """Why the folder is no whole packet; empty when it is one."""
    try:
        listed = {f["path"]: f["sha256"] for f in json.loads((folder / "manifest.json").read_text())["files"]}
    except (OSError, ValueError, KeyError) as why:
        return [f"{folder}: no manifest that reads: {why}"]
    there = tree(folder)
    there.pop("manifest.json", None)
    return [] if there == listed else [f"{folder}: not the files of its manifest: "
                                       f"{sorted(set(there.items()) ^ set(listed.items()))[:3]}"]


def faults_in_out(out):
    """Whatever lies in out/ that is neither whole nor the program's own."""
    faults = []
    for order in sorted(out.iterdir()) if out.exists() else []:
        if order.name == ".bedwright":
            faults += [f"{order} holds {e.name}" for e in order.iterdir()
                       if e.name != "lock" and not re.fullmatch(r"work-\w{6}", e.name)]
            continue
        for entry in sorted(order.iterdir()):
            if re.fullmatch(r".+\.withdrawn-\d+\.json", entry.name):
                json.loads(entry.read_text())
            elif entry.name.endswith(".built.yaml"):
                continue
            elif not entry.is_dir():
                faults.append(f"{entry} is no folder")
            elif entry.name != "extra":
                faults += faults_of_packet(entry)
    return faults


def leftovers(out):
    own = out / ".bedwright"
    return [e.name for e in own.iterdir() if e.name != "lock"] if own.exists() else []
