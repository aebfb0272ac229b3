#!/usr/bin/env python3
"""Validates what the program answers in JSON against the published schemas (JSON Schema 2020-12).

    validate_json.py PROGRAM

Uses Debian's python3-jsonschema, so that the schemas are read by others than ourselves. A change that
must make an answer invalid is tried too: a validator that lets everything pass would tell nothing.
"""

import json
import pathlib
import subprocess
import sys

import jsonschema

TOP = pathlib.Path(__file__).resolve().parent.parent.parent
TODAYS = {"south": ["2026-02-20", "2026-05-20", "2025-11-20"],
          "north": ["2026-09-10", "2026-01-10", "2026-06-10"]}
COMMANDS = {"plan": ["plan", "--json"], "nights": ["nights", "--json"], "backtest": ["backtest", "--json"]}
ONE_DAY_IS_ENOUGH = {"backtest"}  # it looks at past years, and takes its time


def answer(program, half, today, words):
    done = subprocess.run([program, "--garden", TOP / "examples" / f"garden-{half}", "--today", today,
                           *words], capture_output=True, text=True, encoding="utf-8", check=True)
    return json.loads(done.stdout)


def main(program):
    faults = 0
    for command, words in COMMANDS.items():
        schema = json.loads((TOP / "planner" / f"{command}.schema.json").read_text(encoding="utf-8"))
        jsonschema.Draft202012Validator.check_schema(schema)
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
