#!/usr/bin/env python3
"""Runs the commands that README.md shows and compares what they print with what stands there.

    run_readme.py NIGHTSOW README

A block fenced as ```console holds `$ nightsow …` lines, each followed by its output. A line "…" stands for
any number of lines. The commands of a block run in one fresh copy of the example gardens, in their order: what one
writes down the next may ask for.
"""
import os
import pathlib
import re
import shlex
import shutil
import subprocess
import sys
import tempfile

ANY_LINES = "…"


def blocks(text):
    """Every console block, in order: its (command, expected lines)."""
    for block in re.findall(r"^```console\n(.*?)^```", text, re.MULTILINE | re.DOTALL):
        yield list(commands(block))


def commands(block):
    command, expected = None, []
    for line in block.splitlines():
        if line.startswith("$ "):
            if command:
                yield command, expected
            command, expected = line[2:], []
        else:
            expected.append(line)
    if command:
        yield command, expected


def matches(expected, lines):
    """Whether the lines are the expected ones, where ANY_LINES stands for as many as it needs."""
    if not expected:
        return not lines
    if expected[0] == ANY_LINES:
        return any(matches(expected[1:], lines[skip:]) for skip in range(len(lines) + 1))
    return bool(lines) and lines[0] == expected[0] and matches(expected[1:], lines[1:])


def failures_of(nightsow, examples, block):
    """How many of the block's commands print something else; each is shown."""
    environment = {**os.environ, "NO_COLOR": "1", "TZ": "UTC", "LC_ALL": "C.UTF-8"}
    failures = 0
    with tempfile.TemporaryDirectory() as folder:
        shutil.copytree(examples, pathlib.Path(folder) / "examples")
        for command, expected in block:
            words = shlex.split(command)
            run = subprocess.run([nightsow, *words[1:]], cwd=folder, env=environment,
                                 stdout=subprocess.PIPE, stderr=subprocess.PIPE, encoding="utf-8")
            if not matches(expected, run.stdout.splitlines()):
                failures += 1
                print(f"README shows another output for: {command}\n{run.stdout}{run.stderr}")
    return failures


def main(nightsow, readme):
    readme = pathlib.Path(readme)
    count, failures = 0, 0
    for block in blocks(readme.read_text(encoding="utf-8")):
        ours = [(command, expected) for command, expected in block if command.startswith("nightsow ")]
        count += len(ours)
        failures += failures_of(os.path.abspath(nightsow), readme.parent / "examples", ours)
    if count == 0:
        print("no command found in the README")
    return 1 if failures or count == 0 else 0


sys.exit(main(*sys.argv[1:]))
