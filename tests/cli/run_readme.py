#!/usr/bin/env python3
"""Runs the commands that README.md shows and compares what they print with what stands there.

    run_readme.py NIGHTSOW README

A block fenced as ```console holds `$ nightsow …` lines, each followed by its output. A line "…" stands for
any number of lines. The commands run one after the other in a folder that looks like that of the README, as a reader
would run them; `$ cp -r …` is run, too, and writes nothing into the real one.
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
    """(command, expected lines) of every console block, in order."""
    for block in re.findall(r"^```console\n(.*?)^```", text, re.MULTILINE | re.DOTALL):
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


def main(nightsow, readme):
    with tempfile.TemporaryDirectory() as folder:
        return run_blocks(os.path.abspath(nightsow), pathlib.Path(readme), pathlib.Path(folder))


def run_blocks(nightsow, readme, folder):
    for entry in readme.resolve().parent.iterdir():
        (folder / entry.name).symlink_to(entry)
    environment = {**os.environ, "NO_COLOR": "1", "TZ": "UTC", "LC_ALL": "C.UTF-8"}
    count, failures = 0, 0
    for command, expected in blocks(readme.read_text(encoding="utf-8")):
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
    if count == 0:
        print("no command found in the README")
    return 1 if failures or count == 0 else 0


sys.exit(main(*sys.argv[1:]))
