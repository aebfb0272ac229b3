#!/usr/bin/env python3
"""Runs the program as people run it, and compares what comes back with what is wanted.

    run_cases.py PROGRAM [--update] [COMMAND[/CASE]...]

A case is a folder tests/cli/COMMAND/CASE with these files, of which only `arguments` must be there:

    arguments   the words behind `nightsow`, on one line, in a shell's quotes
    garden      what the working folder is a fresh copy of: south (when left out), north, or empty
    setup       lines for sh, run in the working folder first; they may use $EXAMPLES, the folder of
                the example gardens, and $NIGHTSOW, the program
    stdin       what the program is given on standard input; left out: nothing
    stdout_to   "full disk" or "nobody": where the answer goes instead of being compared
    times       how often to run it, each time with the same result; 1 when left out
    afterwards  lines for sh, run in the working folder last; what they print is compared too

and with what is wanted:

    exit        the exit code
    stdout      left out: empty
    stdout_of   COMMAND/CASE, instead of stdout: the same as there
    stderr      left out: empty
    afterwards.stdout

The working folder is written as {folder}. --update writes what is wanted from what comes back; read
the difference before you commit it, and run once more without. Whatever the case, an answer in JSON
must be JSON, a line of text is at most 100 columns wide, and there is no answer with an error.
"""

import difflib
import json
import os
import pathlib
import shlex
import shutil
import subprocess
import sys
import tempfile

HERE = pathlib.Path(__file__).resolve().parent
EXAMPLES = HERE.parent.parent / "examples"
TEXT_WIDTH = 100
SECONDS_AT_MOST = 120
ENVIRONMENT = {
    "PATH": os.environ.get("PATH", "/usr/bin:/bin"),
    "TZ": "UTC",
    "LC_ALL": "C",
    "NO_COLOR": "1",
    # A sanitizer's complaint is then a wrong exit code and a wrong stderr.
    **{name: os.environ[name] for name in ("ASAN_OPTIONS", "UBSAN_OPTIONS") if name in os.environ},
}


class Broken(Exception):
    """The case itself cannot be run."""


def text_of(file, otherwise=""):
    return file.read_text(encoding="utf-8") if file.exists() else otherwise


def run_lines(lines, folder, program):
    """Lines for sh; returns what they print."""
    done = subprocess.run(["sh", "-eu", "-c", lines], cwd=folder, capture_output=True, text=True,
                          encoding="utf-8", timeout=SECONDS_AT_MOST,
                          env={**ENVIRONMENT, "EXAMPLES": str(EXAMPLES), "NIGHTSOW": program})
    if done.returncode != 0:
        raise Broken(f"the lines for sh end with {done.returncode}: {done.stderr}{done.stdout}")
    return done.stdout


def run_program(program, words, folder, stdout_to, stdin=""):
    """Returns exit code, stdout and stderr."""
    if stdout_to == "full disk":
        with open("/dev/full", "wb") as out:
            done = subprocess.run([program, *words], cwd=folder, stdout=out, stderr=subprocess.PIPE,
                                  stdin=subprocess.DEVNULL, env=ENVIRONMENT, timeout=SECONDS_AT_MOST)
        return done.returncode, "", done.stderr.decode()
    if stdout_to == "nobody":
        reader, writer = os.pipe()
        os.close(reader)
        try:
            done = subprocess.run([program, *words], cwd=folder, stdout=writer,
                                  stderr=subprocess.PIPE, stdin=subprocess.DEVNULL, env=ENVIRONMENT,
                                  timeout=SECONDS_AT_MOST)
        finally:
            os.close(writer)
        return done.returncode, "", done.stderr.decode()
    done = subprocess.run([program, *words], cwd=folder, capture_output=True,
                          input=stdin.encode(), env=ENVIRONMENT, timeout=SECONDS_AT_MOST)
    return done.returncode, done.stdout.decode(), done.stderr.decode()


def fresh_folder(kind, scratch):
    folder = pathlib.Path(scratch) / "garden"
    if kind == "empty":
        folder.mkdir()
    elif kind in ("south", "north"):
        shutil.copytree(EXAMPLES / f"garden-{kind}", folder)
    else:
        raise Broken(f"no garden is called '{kind}'")
    return folder


def results(program, case):
    """What comes back: file name -> text."""
    words = shlex.split(text_of(case / "arguments"))
    with tempfile.TemporaryDirectory(prefix="nightsow-") as scratch:
        folder = fresh_folder(text_of(case / "garden", "south").strip(), scratch)
        run_lines(text_of(case / "setup"), folder, program)
        came = None
        for _ in range(int(text_of(case / "times", "1"))):
            code, out, err = run_program(program, words, folder, text_of(case / "stdout_to").strip(),
                                         text_of(case / "stdin"))
            again = {"exit": f"{code}\n", "stdout": out, "stderr": err}
            if came is not None and came != again:
                raise Broken("the same call gave two different results")
            came = again
        came["afterwards.stdout"] = run_lines(text_of(case / "afterwards"), folder, program)
        return {name: text.replace(str(folder), "{folder}") for name, text in came.items()}


def no_number(word):
    raise ValueError(f"{word} is no JSON")


def broken_promises(case, came):
    """What holds for every case."""
    code, out = int(came["exit"]), came["stdout"]
    # What a check finds is its answer.
    checks = text_of(case / "arguments").startswith("rules check")
    if code not in (0, 1) and out and not checks:
        yield "there is an answer with an error"
    if out and not out.endswith("\n"):
        yield "the last line of the answer does not end"
    if out and "--json" in shlex.split(text_of(case / "arguments")):
        try:
            if json.loads(out, parse_constant=no_number).get("schema") != 1:
                yield 'the answer lacks "schema": 1'
        except ValueError as error:
            yield f"the answer is no JSON: {error}"
        return
    if out.startswith("{"):
        return  # a file of rules
    for line in out.splitlines():
        if len(line) > TEXT_WIDTH:
            yield f"a line of {len(line)} columns: {line}"


def wanted_of(case, name):
    if name == "stdout" and (case / "stdout_of").exists():
        return text_of(HERE / text_of(case / "stdout_of").strip() / "stdout")
    return text_of(case / name)


def differences(case, came):
    for name, text in came.items():
        wanted = wanted_of(case, name)
        if text != wanted:
            yield "".join(difflib.unified_diff(
                wanted.splitlines(keepends=True), text.splitlines(keepends=True),
                f"wanted {name}", f"{name} that came"))


def update(case, came):
    for name, text in came.items():
        file = case / name
        if name == "stdout" and (case / "stdout_of").exists():
            continue
        if text:
            file.write_text(text, encoding="utf-8")
        elif file.exists():
            file.unlink()


def check(program, case, updating):
    """Returns what is wrong, as lines for people."""
    try:
        came = results(program, case)
    except (Broken, subprocess.TimeoutExpired, UnicodeDecodeError) as error:
        return [str(error)]
    wrong = list(broken_promises(case, came))
    if updating:
        update(case, came)
        return wrong
    if not (case / "exit").exists():
        wrong.append("nothing says yet what is wanted; see --update")
    return wrong + list(differences(case, came))


def cases(chosen):
    folders = [HERE / name for name in chosen] or [HERE]
    found = sorted(file.parent for folder in folders for file in folder.rglob("arguments"))
    if not found:
        sys.exit(f"run_cases: no case in {', '.join(map(str, folders))}")
    return found


def main(words):
    updating = "--update" in words
    names = [word for word in words if word != "--update"]
    if not names:
        sys.exit(__doc__)
    program = str(pathlib.Path(names[0]).resolve())
    failed, tried = 0, cases(names[1:])
    for case in tried:
        wrong = check(program, case, updating)
        if wrong:
            failed += 1
            print(f"FAILED {case.relative_to(HERE)}: nightsow {text_of(case / 'arguments').strip()}")
            print("\n".join(wrong))
    print(f"{len(tried)} cases, {failed} failed")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
