#!/usr/bin/env python3
"""Validates what the program answers in JSON against the published schemas (JSON Schema 2020-12).

    validate_json.py PROGRAM

Uses Debian's python3-jsonschema, so that the schemas are read by others than ourselves. A change that
must make an answer invalid is tried too: a validator that lets everything pass would tell nothing.
"""

import json
import pathlib
import shutil
import subprocess
import sys
import tempfile

import jsonschema

TOP = pathlib.Path(__file__).resolve().parent.parent.parent
TODAYS = {"south": ["2026-02-20", "2026-05-20", "2025-11-20"],
          "north": ["2026-09-10", "2026-01-10", "2026-06-10"]}
COMMANDS = {"plan": ["plan", "--json"], "nights": ["nights", "--json"], "backtest": ["backtest", "--json"]}
ONE_DAY_IS_ENOUGH = {"backtest"}  # it looks at past years, and takes its time


def read_once(pairs):
    """An object of which no key stands twice: of doubled ones readers take one, and say nothing."""
    keys = [key for key, _ in pairs]
    doubled = sorted({key for key in keys if keys.count(key) > 1})
    if doubled:
        raise ValueError(f"keys stand twice in one object: {', '.join(doubled)}")
    return dict(pairs)


def read_json(text):
    return json.loads(text, object_pairs_hook=read_once)


def schema_of(command):
    path = TOP / "planner" / f"{command}.schema.json"
    try:
        schema = read_json(path.read_text(encoding="utf-8"))
    except ValueError as error:
        raise SystemExit(f"{path}: {error}") from error
    jsonschema.Draft202012Validator.check_schema(schema)
    return schema


def answer(program, half, today, words):
    done = subprocess.run([program, "--garden", TOP / "examples" / f"garden-{half}", "--today", today,
                           *words], capture_output=True, text=True, encoding="utf-8", check=True)
    return read_json(done.stdout)


# An entry of every kind, for the journal's schema.
ENTRIES = """\
entry,what,day,sowing,packet,taxon,seeds,first_water,seen,dead,cause,firm,soft,sprouted,tried,at_c,\
water,move,to,used_for,text,photo,undoes,harvested,stored,potting,plants,closed
1,sowing,2026-01-02,,S11,Albuca spiralis,10,2026-01-03,,,,,,,,,,,,,,,,,,,,
2,sowing,2026-01-02,,,Bulbine annua,5,,,,,,,,,,,,,,,,,2025-11,shelf 22C to 2025-12-01; fridge,,,
3,count,2026-01-20,1,,,,,4,1,gnats,,,,,,,,,,,,,,,,,
4,count,2026-01-21,1,,,,,4,,,,,,,,,,,,,,,,,,,
5,press_test,2026-01-22,1,,,,,,,,3,2,,,,,,,,,,,,,,,
6,germination_test,2026-01-02,,S11,,,,,,,,,14,20,15.5,,,,,,,,,,,,
7,watering,2026-01-05,2,,,,,,,,,,,,,first water,,,,,,,,,,,
8,move,2026-01-06,2,,,,,,,,,,,,,,shade,0.4,,,,,,,,,
9,note,2026-01-07,,,,,,,,,,,,,,,,,,a cold night,photos/a.jpg,,,,,,
10,packet_use,2026-01-08,,S11,,3,,,,,,,,,,,,,given,,,,,,,,
11,undo,2026-01-22,,,,,,,,,,,,,,,,,,,,4,,,,,
12,potting,2026-02-10,1,,,,,,,,,,,,,,,,,,,,,,pricked_out,3,
13,closing,2026-02-11,1,,,,,,,,,,,,,,,,,,,,,,,,given_away
"""


def journal_answer(program):
    """What is exported of a journal into which an entry of every kind was imported."""
    with tempfile.TemporaryDirectory(prefix="nightsow-") as scratch:
        garden = pathlib.Path(scratch) / "garden"
        shutil.copytree(TOP / "examples" / "garden-south", garden)
        (garden / "journal.db").unlink(missing_ok=True)
        sheet = garden / "entries.csv"
        sheet.write_text(ENTRIES, encoding="utf-8")
        common = [program, "--garden", garden, "--today", "2026-02-20"]
        subprocess.run([*common, "journal", "import", sheet], capture_output=True, check=True)
        done = subprocess.run([*common, "--json", "journal", "export"], capture_output=True, text=True,
                              encoding="utf-8", check=True)
        return read_json(done.stdout)


def journal_faults(program):
    schema = schema_of("journal")
    validator = jsonschema.Draft202012Validator(schema)
    found = journal_answer(program)
    for error in validator.iter_errors(found):
        yield f"journal: {error.json_path}: {error.message}"
    if len(found["entries"]) != ENTRIES.count("\n") - 1:
        yield "journal: not every entry came back"
    for entry in found["entries"]:
        for key in entry:
            if validator.is_valid({**found, "entries": [{**entry, key: {"not": "so"}}]}):
                yield f"journal: anything passes as {key} of a {entry['kind']}"


def of_the_record(program):
    """What is said of the two invented seasons that come with the example gardens, and of sowings in
    every state: dry, too early, uncounted, growing, all up, without a rule, closed, undone ones left
    out."""
    with tempfile.TemporaryDirectory(prefix="nightsow-") as scratch:
        garden = pathlib.Path(scratch) / "garden"
        shutil.copytree(TOP / "examples" / "garden-south", garden)
        (garden / "journal.db").unlink(missing_ok=True)

        def run(today, *words):
            return subprocess.run([program, "--garden", garden, "--today", today, *words],
                                  capture_output=True, text=True, encoding="utf-8", check=True).stdout

        run("2026-02-20", "journal", "import", garden / "past-seasons-invented.csv")
        for words in (["sow", "S12", "14", "--dry"], ["sow", "S17", "20"], ["sow", "Zzyzx", "5"]):
            run("2026-02-20", *words)
        run("2026-02-20", "close", "6", "--why", "moved-on")
        for today in ("2025-06-20", "2026-02-20"):
            for command, more in OF_THE_RECORD:
                yield command, today, read_json(run(today, command, *more, "--json"))
            read_json(run(today, "today", "--json"))  # it has no schema, but no key stands twice


OF_THE_RECORD = [("account", []), ("account", ["--all"]), ("account", ["1"]), ("learn", []), ("review", []),
                 ("review", ["--season", "2024"]), ("plan", [])]


def record_faults(program):
    for command, today, found in of_the_record(program):
        schema = schema_of(command)
        validator = jsonschema.Draft202012Validator(schema)
        for error in validator.iter_errors(found):
            yield f"{command}, {today}: {error.json_path}: {error.message[-300:]}"
        for key in found:
            if validator.is_valid({**found, key: {"not": "so"}}) and key != "garden":
                yield f"{command}: anything passes as {key}"


def main(program):
    faults = 0
    for fault in record_faults(program):
        faults += 1
        print(fault)
    for fault in journal_faults(program):
        faults += 1
        print(fault)
    for command, words in COMMANDS.items():
        schema = schema_of(command)
        validator = jsonschema.Draft202012Validator(schema)
        for half, todays in TODAYS.items():
            for today in todays[:1] if command in ONE_DAY_IS_ENOUGH else todays:
                found = answer(program, half, today, words)
                for error in validator.iter_errors(found):
                    faults += 1
                    print(f"{command}, garden-{half}, {today}: {error.json_path}: {error.message}")
                for key in found:
                    if validator.is_valid({**found, key: {"not": "so"}}) and key not in ("garden",):
                        faults += 1
                        print(f"{command}: anything passes as {key}")
    print(f"{faults} faults")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
