#!/usr/bin/env python3
"""Runs the commands that README.md shows and compares what they print with what stands there.

    run_readme.py NIGHTSOW README

A block fenced as ```console holds `$ nightsow …` lines, each followed by its output. A line "…" stands for
any number of lines. The commands run in one scratch folder, as a reader would run them. Each block begins with fresh
copies of the example gardens, so that one may write into them; what `$ cp -r …` makes stays for the blocks behind it.
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


def run_block(nightsow, folder, block):
    """How many of the block's commands were run, and how many print something else; each is shown."""
    environment = {**os.environ, "NO_COLOR": "1", "TZ": "UTC", "LC_ALL": "C.UTF-8"}
    count, failures = 0, 0
    for command, expected in block:
        words = shlex.split(command)
        if words[:2] == ["cp", "-r"]:
            subprocess.run(words, cwd=folder, check=True)
        if words[0] != "nightsow":
            continue
        count += 1
        run = subprocess.run([nightsow, *words[1:]], cwd=folder, env=environment,
                             stdout=subprocess.PIPE, stderr=subprocess.PIPE, encoding="utf-8")
        if not matches(expected, run.stdout.splitlines()):
            failures += 1
            print(f"README shows another output for: {command}\n{run.stdout}{run.stderr}")
    return count, failures


def main(nightsow, readme):
    readme = pathlib.Path(readme).resolve()
    count, failures = 0, 0
    with tempfile.TemporaryDirectory() as scratch:
        examples = pathlib.Path(scratch) / "examples"
        for block in blocks(readme.read_text(encoding="utf-8")):
            shutil.rmtree(examples, ignore_errors=True)
            shutil.copytree(readme.parent / "examples", examples)
            ran, failed = run_block(os.path.abspath(nightsow), scratch, block)
            count += ran
            failures += failed
    if count == 0:
        print("no command found in the README")
    return 1 if failures or count == 0 else 0


sys.exit(main(*sys.argv[1:]))
