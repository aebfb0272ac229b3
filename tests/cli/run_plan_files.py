#!/usr/bin/env python3
"""The files that `nightsow plan` writes, read by others: the calendar by the icalendar library.

    run_plan_files.py NIGHTSOW [TEST...]
"""

import collections
import csv
import datetime
import html.parser
import json
import pathlib
import shutil
import subprocess
import sys
import tempfile
import unittest

import icalendar

HERE = pathlib.Path(__file__).resolve().parent
EXAMPLE = HERE.parent.parent / "examples" / "garden-south"
TODAY = datetime.date(2026, 2, 20)
MOST_ENTRIES = 150  # of a calendar for 200 packets
OCTETS_OF_A_LINE = 75  # RFC 5545, 3.1


class Texts(html.parser.HTMLParser):
    """What stands in the articles of a page, and the tags that are there."""

    def __init__(self):
        super().__init__()
        self.articles, self.tags, self.inside = [], set(), False

    def handle_starttag(self, tag, attrs):
        self.tags.add(tag)
        if tag == "article":
            self.articles.append("")
            self.inside = True

    def handle_endtag(self, tag):
        if tag == "article":
            self.inside = False

    def handle_data(self, data):
        if self.inside:
            self.articles[-1] += data


class PlanFiles(unittest.TestCase):
    program = None

    def setUp(self):
        scratch = tempfile.TemporaryDirectory(prefix="nightsow-")
        self.addCleanup(scratch.cleanup)
        self.folder = pathlib.Path(scratch.name)

    def garden(self, packets):
        garden = self.folder / "garden"
        shutil.rmtree(garden, ignore_errors=True)
        shutil.copytree(EXAMPLE, garden)
        names = list(packets[0])
        with (garden / "packets.csv").open("w", newline="") as file:
            writer = csv.DictWriter(file, names)
            writer.writeheader()
            writer.writerows(packets)
        return garden

    def written(self, option, garden=EXAMPLE, today=TODAY):
        file = self.folder / "file"
        subprocess.run([self.program, "--garden", garden, "--today", today.isoformat(), "plan",
                        "--quiet", option, file], check=True, capture_output=True)
        return file.read_bytes()

    def events(self, garden=EXAMPLE, today=TODAY):
        calendar = icalendar.Calendar.from_ical(self.written("--calendar", garden, today))
        return calendar, list(calendar.walk("VEVENT"))

    def two_hundred(self):
        listed = subprocess.run([self.program, "rules", "list", "--json"], check=True,
                                capture_output=True, text=True)
        kinds = [rule["rule"] for rule in json.loads(listed.stdout)["rules"]]
        benches = ["open bench", "cold frame"]
        return [{"packet": f"P{place:03}", "taxon": kinds[place % len(kinds)], "seeds": 20,
                 "harvested": "2025-11", "bench": benches[place % 2]} for place in range(200)]

    def test_another_library_reads_the_calendar(self):
        calendar, events = self.events()
        self.assertEqual(calendar["version"], "2.0")
        self.assertIn("nightsow", calendar["prodid"])
        self.assertGreater(len(events), 20)
        for event in events:
            self.assertIsInstance(event.decoded("dtstart"), datetime.date)
            self.assertNotIsInstance(event.decoded("dtstart"), datetime.datetime)
            self.assertEqual(event.decoded("dtstamp"),
                             datetime.datetime(2026, 2, 20, tzinfo=datetime.timezone.utc))
            self.assertGreaterEqual(event.decoded("dtstart"), TODAY)

    def test_ids_are_there_once_and_stay_from_plan_to_plan(self):
        ids = [str(event["uid"]) for event in self.events()[1]]
        self.assertEqual(len(ids), len(set(ids)))
        later = {str(event["uid"]) for event in self.events(today=TODAY + datetime.timedelta(1))[1]}
        self.assertGreater(len(later & set(ids)), 0.9 * len(ids))

    def test_a_calendar_of_two_hundred_packets_stays_readable(self):
        events = self.events(self.garden(self.two_hundred()))[1]
        self.assertGreater(len(events), 20)
        self.assertLess(len(events), MOST_ENTRIES)

    # RFC 5545, 3.1: lines end with CR LF and hold no more than 75 octets; 3.3.11: backslash,
    # semicolon, comma and line break are escaped in text.
    def test_lines_are_folded_and_text_is_escaped(self):
        odd = 'Aloë; "x", back\\slash ' + "é" * 80
        garden = self.garden([{"packet": "S1", "taxon": "Albuca spiralis", "seeds": 20},
                              {"packet": odd, "taxon": "Albuca spiralis", "seeds": 20}])
        text = self.written("--calendar", garden)
        for line in text.split(b"\r\n"):
            self.assertLessEqual(len(line), OCTETS_OF_A_LINE)
            self.assertNotIn(b"\n", line)
            line.decode()
        descriptions = [str(event["description"]) for event in
                        icalendar.Calendar.from_ical(text).walk("VEVENT")]
        self.assertTrue(any(odd in description for description in descriptions), descriptions[:1])

    def test_the_table_has_a_row_a_packet(self):
        rows = list(csv.DictReader(self.written("--csv").decode().splitlines()))
        with (EXAMPLE / "packets.csv").open(newline="") as file:
            packets = [row["packet"] for row in csv.DictReader(file)]
        self.assertEqual(sorted(row["packet"] for row in rows), sorted(packets))
        self.assertEqual(collections.Counter(len(row) for row in rows), {16: len(packets)})

    def test_the_sheet_fits_its_paper(self):
        for page in self.written("--sheet", self.garden(self.two_hundred())).decode().split("\f"):
            lines = page.splitlines()
            self.assertLessEqual(len(lines), 60)
            self.assertLessEqual(max(map(len, lines)), 80)

    def test_a_label_shows_odd_text_as_it_is_written(self):
        odd = '<script>alert("x")</script> & \'co'
        page = Texts()
        page.feed(self.written("--labels", self.garden(
            [{"packet": "S1", "taxon": "Albuca spiralis", "seeds": 20, "provenance": odd}])).decode())
        self.assertNotIn("script", page.tags)
        self.assertTrue(page.articles)
        for article in page.articles:
            self.assertIn(odd, article)
            self.assertIn("Albuca spiralis", article)
            self.assertIn("S1", article)


if __name__ == "__main__":
    PlanFiles.program = pathlib.Path(sys.argv.pop(1)).resolve()
    unittest.main()
