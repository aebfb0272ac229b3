#!/usr/bin/env python3
"""Validates rule files against species-rules/rule.schema.json (JSON Schema 2020-12).

    validate_rules.py PROGRAM

The catalogue and rules as the program exports them must pass. Files spoilt one by one must fail, and
`rules check` must refuse the same; what only `rules check` sees is tried too, so that the schema's
description stays true. Debian's python3-jsonschema reads the schema, so that others than ourselves do.
"""

import copy
import json
import pathlib
import subprocess
import sys
import tempfile

import jsonschema

TOP = pathlib.Path(__file__).resolve().parent.parent.parent
EXPORTED = ["Moraea", "Bulbine annua", "Conophytum", "Sceletium", "Pachypodium namaquanum", "Haemanthus"]
LIMIT = {"value": 11, "low": 9.5, "high": 12.5, "evidence": "grower"}
MINE = {"schema": 1, "family": "Iridaceae",
        "genera": [{"genus": "Moraea", "rule": {"night_limit_c": LIMIT}}]}


def with_rule(**fields):
    """A file with these fields of Moraea."""
    mine = copy.deepcopy(MINE)
    mine["genera"][0]["rule"] = fields
    return mine


def with_entry(**members):
    """A file whose entry of Moraea has these members besides."""
    mine = copy.deepcopy(MINE)
    mine["genera"][0].update(members)
    return mine


def without(key, value):
    return {name: member for name, member in value.items() if name != key}


GOOD = {
    "one value": MINE,
    "a source of null": with_rule(night_limit_c={**LIMIT, "source": None}),
    "a family's rule and no genera": {"schema": 1, "family": "Iridaceae", "rule": {"night_limit_spread_k": {
        "value": 2, "low": 1, "high": 3, "evidence": "memory"}}},
    "a species with an old name": with_entry(species=[{"species": "uva-ursi", "synonyms": [
        "Moraea inventa", "Iris dichotoma subsp. inventa"]}]),
    "a letter with an accent": with_entry(species=[{"species": "rüeggii"}]),
    "a caution and a note": with_rule(
        cautions=[{"value": "spines", "evidence": "memory"}], notes=[{"value": "slow", "evidence": "grower"}]),
}
BAD = {
    "another schema": {**MINE, "schema": 2},
    "no schema": without("schema", MINE),
    "no family": without("family", MINE),
    "neither rule nor genera": without("genera", MINE),
    "an unknown key at the top": {**MINE, "famly": "Iridaceae"},
    "an unknown field": with_rule(night_limit=LIMIT),
    "an unknown key of a genus": with_entry(synonym=["Homeria"]),
    "an unknown key of a value": with_rule(night_limit_c={**LIMIT, "unit": "C"}),
    "a bare number": with_rule(night_limit_c=11),
    "null": with_rule(night_limit_c=None),
    "no low": with_rule(night_limit_c=without("low", LIMIT)),
    "no evidence": with_rule(night_limit_c=without("evidence", LIMIT)),
    "a number as text": with_rule(night_limit_c={**LIMIT, "value": "11"}),
    "degrees Fahrenheit": with_rule(night_limit_c={**LIMIT, "value": 52, "high": 54}),
    "a high out of bounds": with_rule(night_limit_c={**LIMIT, "high": 31}),
    "an unknown evidence": with_rule(night_limit_c={**LIMIT, "evidence": "gut"}),
    "an empty source": with_rule(night_limit_c={**LIMIT, "source": " "}),
    "an unknown word": with_rule(mat={"value": "maybe", "evidence": "memory"}),
    "a range for a word": with_rule(mat={"value": "useless", "low": "harmful", "evidence": "memory"}),
    "an unknown caution": with_rule(cautions=[{"value": "thorns", "evidence": "memory"}]),
    "an empty note": with_rule(notes=[{"value": "", "evidence": "memory"}]),
    "a note that is no list": with_rule(notes={"value": "slow", "evidence": "memory"}),
    "a genus without name": {**MINE, "genera": [{"rule": {}}]},
    "a genus in small letters": {**MINE, "genera": [{"genus": "moraea"}]},
    "a genus of two words": {**MINE, "genera": [{"genus": "Moraea ciliata"}]},
    "a species with a capital": with_entry(species=[{"species": "Ciliata"}]),
    "an old name without genus": with_entry(species=[{"species": "ciliata", "synonyms": ["ciliaris"]}]),
    "genera that are no list": {**MINE, "genera": {"Moraea": {}}},
}
ONLY_CHECKED = {
    "a value outside of its own range": with_rule(night_limit_c={**LIMIT, "value": 9}),
    "a source that nobody lists": with_rule(night_limit_c={**LIMIT, "source": "nowhere"}),
    "looks out of order": with_rule(first_look_days={"value": 900, "low": 900, "high": 900, "evidence": "memory"}),
    "a genus of another family": {**MINE, "family": "Aizoaceae"},
    "a genus twice": {**MINE, "genera": MINE["genera"] * 2},
}


def checked(program, rules):
    """Whether `rules check` passes a file with these rules."""
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder) / "mine.json"
        file.write_text(json.dumps(rules), encoding="utf-8")
        done = subprocess.run([program, "rules", "check", file], capture_output=True, check=False)
    if done.returncode not in (0, 3):
        raise SystemExit(f"rules check ended with {done.returncode}: {done.stderr}")
    return done.returncode == 0


def table_faults(program, grower):
    for good_by_schema, good_by_check, table in ((True, True, GOOD), (False, False, BAD),
                                                 (True, False, ONLY_CHECKED)):
        for name, rules in table.items():
            if grower.is_valid(rules) != good_by_schema:
                yield f"{name}: the schema should {'pass' if good_by_schema else 'refuse'} it"
            if checked(program, rules) != good_by_check:
                yield f"{name}: rules check should {'pass' if good_by_check else 'refuse'} it"


def catalogue_faults(catalogue):
    for file in sorted((TOP / "species-rules" / "catalogue").glob("*.json")):
        if file.name == "sources.json":
            continue
        family = json.loads(file.read_text(encoding="utf-8"))
        for error in catalogue.iter_errors(family):
            yield f"{file.name}: {error.json_path}: {error.message}"
        if catalogue.is_valid({**family, "rule": without("half_life_years", family["rule"])}):
            yield f"{file.name}: passes without a default that every family gives"
    unsourced = with_rule(night_limit_c=LIMIT)
    if catalogue.is_valid({**family, "genera": unsourced["genera"]}):
        yield "a grower's word without source passes as one of the catalogue"


def export_faults(program, grower):
    for taxon in EXPORTED:
        done = subprocess.run([program, "rules", "export", taxon], capture_output=True, text=True,
                              encoding="utf-8", check=True)
        for error in grower.iter_errors(json.loads(done.stdout)):
            yield f"export of {taxon}: {error.json_path}: {error.message}"


def main(program):
    schema = json.loads((TOP / "species-rules" / "rule.schema.json").read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    grower = jsonschema.Draft202012Validator(schema)
    catalogue = jsonschema.Draft202012Validator({**schema, "$ref": "#/$defs/catalogue_file"})
    faults = [*table_faults(program, grower), *catalogue_faults(catalogue), *export_faults(program, grower)]
    print("\n".join([*faults, f"{len(faults)} faults"]))
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
