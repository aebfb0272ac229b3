#!/usr/bin/env python3
"""The rules of the house that no compiler knows.

    house_test.py [PROGRAM] [TEST...]

PROGRAM is the built nightsow; without it its --help is not looked at.
"""

import os
import pathlib
import re
import subprocess
import sys
import unittest

TOP = pathlib.Path(__file__).resolve().parent.parent.parent
FLOORS = ("climate", "species-rules", "planner")

HEADER_LINES = 170
SOURCE_LINES = 420
# file -> the sentence that says why it may be longer
LONGER = {
    "species-rules/rule.hpp": "every field of a rule stands there once, with its meaning",
}

TOP_FOLDERS = {".ci", ".git", ".github", ".cache", "build", "climate", "examples", "planner",
               "species-rules", "tests"}

HEAVY = re.compile(r"<(nlohmann/json\.hpp|SQLiteCpp/.*|sqlite3\.h|CLI/.*|Eigen/.*|date/tz\.h)>")

# What an answer's plain headers are: the values that renderers may see.
PLAIN_ANSWER = re.compile(r"planner/answers/(\w+_answer|reason|reason_value|spread|heads)\.hpp")
# An entry of the journal, its words and the packet's row that it keeps: renderers may see these too,
# but nothing of the file.
PLAIN_ENTRY = re.compile(r"planner/journal/(entry(_words)?|packet_copy)\.hpp")

MONTHS = re.compile(r"\b(January|February|March|April|May|June|July|August|September|October|"
                    r"November|December)\b")
HALVES = re.compile(r"hemisphere|southern|northern", re.IGNORECASE)
# (file, what stands there) -> why it is no rule about a month
MONTH_ALLOWED = {
    ("climate/base/date.cpp", "January"): "the first day of a calendar year, to count days from",
    ("climate/base/date.cpp", "February"): "29 February is no day of every year",
    ("climate/base/date.cpp", "March"): "where 29 February goes in a year that has none",
    ("climate/phases.cpp", "January"): "where one calendar year of the smooth curve begins and ends",
    ("climate/smooth_year.cpp", "January"): "the origin of the time axis",
}

# Spelled in two parts, so that this file keeps its own rule.
FORBIDDEN = re.compile("tran" "script|seed " "document", re.IGNORECASE)


def relative(file):
    return file.relative_to(TOP).as_posix()


def sources(*folders, endings=(".hpp", ".cpp")):
    return sorted(file for folder in folders for file in (TOP / folder).rglob("*")
                  if file.suffix in endings)


def text_of(file):
    return file.read_text(encoding="utf-8")


def includes(file):
    """Of our own headers, each as it is spelled."""
    return re.findall(r'^\s*#include "([^"]+)"', text_of(file), re.MULTILINE)


def code_of(file):
    """Without comments; literals stay."""
    pattern = re.compile(r'R"([^(\s]*)\(.*?\)\1"|"(?:\\.|[^"\\\n])*"|\'(?:\\[^\']+|[^\'\\\n])\'|'
                         r"(?P<comment>//[^\n]*|/\*.*?\*/)", re.DOTALL)
    return pattern.sub(lambda found: " " if found["comment"] else found[0], text_of(file))


def may_include(name, included):
    """Whether the file `name` may include our header `included`."""
    if PLAIN_ANSWER.fullmatch(name):
        return included.startswith("climate/base/") or bool(PLAIN_ANSWER.fullmatch(included))
    if name.startswith("climate/base/"):
        return included.startswith("climate/base/")
    if name.startswith("climate/"):
        return included.startswith("climate/")
    if name.startswith("species-rules/"):
        return included.startswith(("species-rules/", "climate/base/"))
    if name.startswith("planner/render/"):
        return (included.startswith(("climate/base/", "planner/render/"))
                or included == "planner/version.hpp" or bool(PLAIN_ANSWER.fullmatch(included))
                or bool(PLAIN_ENTRY.fullmatch(included)))
    above = {"garden": ("model", "statistics", "answers", "render", "cli"),
             "journal": ("model", "statistics", "answers", "render", "cli"),
             "statistics": ("garden", "journal", "answers", "render", "cli"),
             "model": ("journal", "answers", "render", "cli"),
             "answers": ("journal", "render", "cli")}
    for folder, closed in above.items():
        if name.startswith(f"planner/{folder}/"):
            return not included.startswith(tuple(f"planner/{other}/" for other in closed))
    return included.startswith(tuple(f"{floor}/" for floor in FLOORS))


def backticked(cell):
    return re.findall(r"`([^`]+)`", cell)


def pipeline_rows():
    """The rows of the table | stage | takes | gives | file | test | in DEVELOPERS.md."""
    lines = text_of(TOP / "DEVELOPERS.md").splitlines()
    heads = [i for i, line in enumerate(lines)
             if re.fullmatch(r"\|\s*stage\s*\|\s*takes\s*\|\s*gives\s*\|\s*file\s*\|\s*test\s*\|", line)]
    if not heads:
        return []
    rows = []
    for line in lines[heads[0] + 2:]:
        if not line.startswith("|"):
            break
        rows.append([cell.strip() for cell in line.strip().strip("|").split("|")])
    return rows


class House(unittest.TestCase):

    def expect_none(self, faults):
        faults = list(faults)
        self.assertEqual(faults, [], "\n" + "\n".join(faults))

    def test_includes_go_down_the_house_only(self):
        self.expect_none(f"{relative(file)} must not include {included}"
                         for file in sources(*FLOORS) for included in includes(file)
                         if not may_include(relative(file), included))

    def test_includes_are_spelled_from_the_top(self):
        self.expect_none(f"{relative(file)} includes {included}, which is not there"
                         for file in sources(*FLOORS, "tests") for included in includes(file)
                         if not (TOP / included).exists())

    def test_heavy_headers_stay_in_sources(self):
        self.expect_none(f"{relative(file)} includes {found[0]}; use it in a .cpp file"
                         for file in sources(*FLOORS, "tests", endings=(".hpp",))
                         for found in HEAVY.finditer(text_of(file)))

    def test_four_files_know_the_command_line_library(self):
        users = [relative(file) for file in sources(*FLOORS, "tests") if "<CLI/" in text_of(file)]
        self.assertEqual(users, [f"planner/cli/{name}.cpp" for name in (
            "command_options", "option_parts", "record_options", "typed_words")])

    def test_headers_are_read_once(self):
        self.expect_none(f"{relative(file)} has no #pragma once at its top"
                         for file in sources(*FLOORS, "tests", endings=(".hpp",))
                         if not code_of(file).lstrip().startswith("#pragma once"))

    def test_no_macros(self):
        self.expect_none(f"{relative(file)} defines a macro" for file in sources(*FLOORS)
                         if re.search(r"^\s*#\s*define\b", text_of(file), re.MULTILINE))

    def test_files_stay_short(self):
        def most(file):
            return HEADER_LINES if file.suffix == ".hpp" else SOURCE_LINES
        lengths = ((file, len(text_of(file).splitlines())) for file in sources(*FLOORS))
        self.expect_none(f"{relative(file)} has {lines} lines; {most(file)} is the most"
                         for file, lines in lengths
                         if lines > most(file) and relative(file) not in LONGER)

    def test_every_source_is_on_a_list(self):
        # A file that no CMakeLists.txt names is never compiled, or never runs.
        lists = {file: text_of(file) for file in TOP.rglob("CMakeLists.txt")
                 if not file.is_relative_to(TOP / "build")}
        def named(source):
            return any(re.search(r"(^|[\s(\"/])" + re.escape(
                           source.relative_to(file.parent).as_posix()) + r"($|[\s)\"])", text, re.M)
                       for file, text in lists.items() if source.is_relative_to(file.parent))
        self.expect_none(f"{relative(file)} stands in no CMakeLists.txt"
                         for file in sources(*FLOORS) + sources("tests", endings=(".cpp",))
                         if not named(file))

    def test_the_top_folder_holds_what_it_should(self):
        self.expect_none(f"{entry.name}/ is no folder of this house" for entry in TOP.iterdir()
                         if entry.is_dir() and entry.name not in TOP_FOLDERS)

    def test_no_rule_names_a_month(self):
        self.expect_none(f"{relative(file)} says {word}"
                         for file in sources("climate", "species-rules", "planner/model")
                         for word in MONTHS.findall(code_of(file))
                         if (relative(file), word) not in MONTH_ALLOWED)

    def test_no_rule_names_half_the_world(self):
        self.expect_none(f"{relative(file)} says {word}"
                         for file in sources("climate", "species-rules", "planner/model")
                         for word in HALVES.findall(code_of(file)))

    def test_words_that_belong_in_developers_md_only(self):
        def is_ours(file):
            folders = file.relative_to(TOP).parts[:-1]
            return file.is_file() and not set(folders) & {".git", "build", ".cache", "__pycache__"}
        def holds_one(file):
            return FORBIDDEN.search(file.read_bytes().decode("utf-8", "replace"))
        self.expect_none(f"{relative(file)} says {holds_one(file)[0]}"
                         for file in sorted(TOP.rglob("*"))
                         if is_ours(file) and file.name != "DEVELOPERS.md" and holds_one(file))

    def test_the_version_is_the_projects(self):
        project = re.search(r"project\(nightsow\s+VERSION (\S+)", text_of(TOP / "CMakeLists.txt"))[1]
        self.assertIn(f'version = "{project}"', text_of(TOP / "planner/version.hpp"))


class Help(unittest.TestCase):
    program = None

    def test_every_option_stands_in_the_readme(self):
        if not self.program:
            self.skipTest("no program was given")
        if not (TOP / "README.md").exists():
            self.skipTest("there is no README.md")
        def help_of(*words):
            return subprocess.run([self.program, *words, "--help"], check=True, capture_output=True,
                                  encoding="utf-8").stdout
        commands = re.findall(r"^  (\w+) ", help_of().split("Commands:")[1], re.MULTILINE)
        pages = [help_of()] + [help_of(command) for command in commands]
        options = {option for page in pages for option in re.findall(r"--[a-z][a-z-]+", page)}
        self.assertGreater(len(options), 15)
        readme = set(re.findall(r"--[a-z][a-z-]+", text_of(TOP / "README.md")))
        self.assertEqual(sorted(options - readme), [], "not in README.md")


@unittest.skipUnless((TOP / "DEVELOPERS.md").exists(), "there is no DEVELOPERS.md")
class Pipeline(unittest.TestCase):
    """The table in DEVELOPERS.md that a reader follows in one sitting."""

    def test_it_is_there(self):
        self.assertGreater(len(pipeline_rows()), 5)

    def test_its_rows_are_whole(self):
        for row in pipeline_rows():
            with self.subTest(row=row):
                self.assertEqual(len(row), 5)
                self.assertTrue(backticked(row[0]), "no function is named")
                self.assertTrue(backticked(row[3]), "no file is named")

    def test_its_files_exist(self):
        missing = [name for row in pipeline_rows() for cell in row[3:] for name in backticked(cell)
                   if not (TOP / name).exists()]
        self.assertEqual(missing, [])

    def test_its_functions_stand_in_their_files(self):
        for row in pipeline_rows():
            text = "".join(text_of(TOP / name) for name in backticked(row[3]) if (TOP / name).is_file())
            for function in backticked(row[0]):
                with self.subTest(function=function):
                    name = function.removesuffix("()").split("::")[-1]
                    self.assertRegex(text, rf"\b{re.escape(name)}\(")

    def test_its_types_exist(self):
        headers = "".join(text_of(file) for file in sources(*FLOORS, endings=(".hpp",)))
        for row in pipeline_rows():
            for name in re.findall(r"\b[A-Z]\w+", " ".join(backticked(row[1] + row[2]))):
                with self.subTest(type=name):
                    self.assertRegex(headers, rf"\b(struct|class|using) {name}\b")


if __name__ == "__main__":
    if len(sys.argv) > 1 and os.path.isfile(sys.argv[1]):
        Help.program = os.path.abspath(sys.argv.pop(1))
    unittest.main(verbosity=1)
