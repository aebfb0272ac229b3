#!/usr/bin/env python3
"""`nightsow fetch` against a server on this machine that misbehaves in each way.

    run_fetch.py NIGHTSOW [TEST...]
"""

import hashlib
import json
import os
import pathlib
import subprocess
import sys
import tempfile
import unittest

HERE = pathlib.Path(__file__).resolve().parent
sys.path.insert(0, str(HERE.parent / "support"))
from misbehaving_server import INVENTORY, MisbehavingServer, STATIONS, dly  # noqa: E402

STATION = "XX000000001"
DLY = dly(STATION, 2020, 2024)
STALE = "an older copy\n"
ANSWERED, WRONG_USE, BAD_INPUT, STORAGE_FAILED = 0, 2, 3, 4


class Fetch(unittest.TestCase):
    program = None

    def setUp(self):
        scratch = tempfile.TemporaryDirectory(prefix="nightsow-")
        self.addCleanup(scratch.cleanup)
        self.folder = pathlib.Path(scratch.name)
        self.garden = self.folder / "garden"
        self.garden.mkdir()
        self.garden_json = ('{"latitude": -33.004, "longitude": 19.006, "elevation_m": 220,\n'
                            ' "readings": [{"file": "readings/none.csv"}]}\n')
        (self.garden / "garden.json").write_text(self.garden_json)
        self.server = self.enterContext(MisbehavingServer())

    def enterContext(self, context):
        value = context.__enter__()
        self.addCleanup(context.__exit__, None, None, None)
        return value

    def run_fetch(self, way, *words, base=None):
        environment = {"PATH": os.environ.get("PATH", ""), "TZ": "UTC", "NO_PROXY": "*",
                       "XDG_CACHE_HOME": str(self.folder / "cache"),
                       **{name: os.environ[name] for name in ("ASAN_OPTIONS", "UBSAN_OPTIONS")
                          if name in os.environ}}
        return subprocess.run([self.program, "--garden", str(self.garden), "--today", "2026-03-01",
                               "fetch", "--base-url", base or f"{self.server.base}/{way}", *words],
                              capture_output=True, encoding="utf-8", env=environment, timeout=120)

    def fetch_station(self, way, *words):
        return self.run_fetch(way, "--station", STATION, *words)

    @property
    def readings(self):
        return self.garden / "readings"

    def file(self, name=f"ghcnd-{STATION}.dly"):
        return self.readings / name

    def sidecar(self, name=f"ghcnd-{STATION}.dly"):
        return json.loads((self.readings / (name + ".source.json")).read_text())

    def expect_arrived(self, done, times_asked=1):
        self.assertEqual(done.returncode, ANSWERED, done.stderr)
        self.assertEqual(self.file().read_text(), DLY)
        self.assertEqual(self.sidecar()["sha256"], hashlib.sha256(DLY.encode()).hexdigest())
        self.assertEqual(len(self.server.asked), times_asked)

    def expect_nothing(self, done, code, words):
        self.assertEqual(done.returncode, code, done.stderr)
        self.assertEqual(done.stdout, "")
        self.assertIn(words, done.stderr)
        self.assertEqual(list(self.readings.glob("*")) if self.readings.exists() else [], [])

    # What is asked for, and what is put in place

    def test_a_file_comes_with_its_sidecar(self):
        done = self.fetch_station("good")
        self.expect_arrived(done)
        side = self.sidecar()
        self.assertEqual(side["url"], f"{self.server.base}/good/all/{STATION}.dly")
        self.assertEqual((side["etag"], side["bytes"]), ('"one"', len(DLY)))
        self.assertIn("public domain", side["licence"])
        self.assertIn("2020-01-01 to 2024-12-28", done.stdout)
        self.assertIn('{"file": "readings/ghcnd-XX000000001.dly"}', done.stdout)

    def test_the_terms_are_said_and_the_garden_is_not_touched(self):
        done = self.fetch_station("good")
        self.assertIn("public domain", done.stderr)
        self.assertEqual((self.garden / "garden.json").read_text(), self.garden_json)

    def test_the_terms_are_said_even_when_nothing_comes(self):
        self.assertIn("CC BY 4.0", self.run_fetch("missing", "--archive").stderr)

    def test_only_the_rounded_place_is_sent(self):
        self.run_fetch("good", "--archive", "--from", "2020-05-01")
        self.assertEqual([asked[1] for asked in self.server.asked],
                         ["/v1/archive?latitude=-33.00&longitude=19.01&start_date=2020-05-01"
                          "&end_date=2026-02-23&daily=temperature_2m_max,temperature_2m_min"
                          "&timezone=auto"])

    def test_forecast_and_power_come_too(self):
        for option, name in (("--forecast", "forecast.json"), ("--power", "nasa-power.csv")):
            with self.subTest(option):
                done = self.run_fetch("good", option, "--json")
                self.assertEqual(done.returncode, ANSWERED, done.stderr)
                self.assertTrue(self.file(name).exists())
                answer = json.loads(done.stdout)
                self.assertEqual((answer["file"], answer["arrival"]), ("readings/" + name, "fetched"))
                self.assertEqual('"kind": "forecast"' in answer["garden_line"], option == "--forecast")

    def test_nothing_is_fetched_twice_that_has_not_changed(self):
        self.fetch_station("good")
        first = self.sidecar()
        done = self.fetch_station("good")
        self.expect_arrived(done, times_asked=2)
        self.assertIn("still the newest", done.stdout)
        self.assertEqual(self.server.asked[1][2]["If-None-Match"], '"one"')
        self.assertEqual(self.sidecar()["fetched_at"], first["fetched_at"])

    def test_packed_answers_are_unpacked(self):
        self.expect_arrived(self.fetch_station("packed"))

    # Stations

    def test_the_nearest_station_is_weighed_and_fetched(self):
        done = self.run_fetch("good", "--nearest", "--json")
        self.assertEqual(done.returncode, ANSWERED, done.stderr)
        answer = json.loads(done.stdout)
        self.assertEqual([line["id"] for line in answer["stations"]],
                         ["XX000000001", "XX000000002", "XX000000003"])
        self.assertEqual(answer["stations"][0]["years"], 65)
        self.assertEqual(answer["stations"][2]["name"], "KLOOF DES PRéS")
        self.assertIsNone(answer["stations"][2]["higher_m"])
        self.assertEqual(self.file().read_text(), DLY)
        self.assertIn("lines of the station list that could not be read: 1", done.stderr)

    def test_a_dry_run_fetches_no_readings(self):
        done = self.run_fetch("good", "--nearest", "--dry-run")
        self.assertEqual(done.returncode, ANSWERED, done.stderr)
        self.assertIn(f"{self.server.base}/good/all/{STATION}.dly", done.stdout)
        self.assertIn("INVENTED PEAK", done.stdout)
        self.assertFalse(self.readings.exists())
        self.assertEqual([asked[1] for asked in self.server.asked],
                         ["/ghcnd-stations.txt", "/ghcnd-inventory.txt"])

    def test_a_dry_run_by_place_asks_nobody(self):
        for option in (("--archive",), ("--forecast",), ("--power",), ("--station", STATION)):
            with self.subTest(option):
                self.assertEqual(self.run_fetch("good", *option, "--dry-run").returncode, ANSWERED)
        self.assertEqual(self.server.asked, [])

    def test_the_station_list_is_kept_for_the_next_time(self):
        self.run_fetch("good", "--dry-run")
        self.run_fetch("good", "--dry-run")
        self.assertEqual(len(self.server.asked), 2)
        kept = self.folder / "cache" / "nightsow"
        self.assertEqual((kept / "ghcnd-stations.txt").read_text(), STATIONS)
        self.assertEqual((kept / "ghcnd-inventory.txt").read_text(), INVENTORY)

    def test_a_spoilt_station_list_is_fetched_anew(self):
        self.run_fetch("good", "--dry-run")
        (self.folder / "cache" / "nightsow" / "ghcnd-stations.txt").write_text("spoilt\n")
        self.assertEqual(self.run_fetch("good", "--dry-run").returncode, ANSWERED)

    # The server's misdeeds

    def test_a_missing_file_is_said_at_once(self):
        self.expect_nothing(self.fetch_station("missing"), STORAGE_FAILED, "no such file (404)")
        self.assertEqual(len(self.server.asked), 1)

    def test_a_refusal_is_said_at_once(self):
        self.expect_nothing(self.fetch_station("forbidden"), STORAGE_FAILED, "status 403")
        self.assertEqual(len(self.server.asked), 1)

    def test_too_much_asked_is_asked_again_later(self):
        self.expect_arrived(self.fetch_station("busy"), times_asked=2)

    def test_a_wait_of_a_day_is_not_waited(self):
        done = self.fetch_station("busy-for-long")
        self.expect_nothing(done, STORAGE_FAILED, "asks us to wait 86400 seconds")
        self.assertEqual(len(self.server.asked), 1)

    def test_a_passing_fault_is_asked_again(self):
        self.expect_arrived(self.fetch_station("faulty-once"), times_asked=2)

    def test_a_lasting_fault_is_given_up(self):
        self.expect_nothing(self.fetch_station("faulty"), STORAGE_FAILED, "has a fault (503)")
        self.assertEqual(len(self.server.asked), 4)

    def test_slow_and_silent_servers_are_given_up(self):
        for way in ("slow", "silent"):
            with self.subTest(way):
                done = self.fetch_station(way, "--timeout", "1")
                self.expect_nothing(done, STORAGE_FAILED, "cannot be fetched")

    def test_what_is_cut_off_is_never_put_in_place(self):
        for way in ("cut-off", "too-long"):
            with self.subTest(way):
                self.expect_nothing(self.fetch_station(way), STORAGE_FAILED, "cannot be fetched")

    def test_what_was_cut_off_is_continued(self):
        self.expect_arrived(self.fetch_station("resumes"), times_asked=2)
        self.assertEqual(self.server.asked[1][2]["Range"], f"bytes={len(DLY) // 2}-")
        self.assertEqual(self.server.asked[1][2]["If-Range"], '"one"')

    def test_a_server_that_cannot_continue_begins_again(self):
        self.expect_arrived(self.fetch_station("ignores-range"), times_asked=2)

    def test_another_part_than_asked_for_is_not_used(self):
        self.expect_arrived(self.fetch_station("wrong-range"), times_asked=3)

    def test_a_length_given_too_short_is_noticed(self):
        self.expect_nothing(self.fetch_station("too-short"), BAD_INPUT, "middle of a line")

    def test_too_much_is_not_taken(self):
        for way in ("says-huge", "bomb"):
            with self.subTest(way):
                self.expect_nothing(self.fetch_station(way), STORAGE_FAILED, "is over 96 MiB")

    def test_a_redirect_is_followed(self):
        self.expect_arrived(self.fetch_station("moved"), times_asked=2)

    def test_a_redirect_in_a_ring_ends(self):
        self.expect_nothing(self.fetch_station("loop"), STORAGE_FAILED, "more than 5 times")
        self.assertEqual(len(self.server.asked), 6)

    def test_a_redirect_away_from_https_is_not_followed(self):
        for way in ("to-http", "to-file"):
            with self.subTest(way):
                self.expect_nothing(self.fetch_station(way), STORAGE_FAILED, "not fetched")

    def test_plain_http_is_for_this_machine_only(self):
        done = self.run_fetch("", "--station", STATION, base="http://archive.invalid")
        self.expect_nothing(done, STORAGE_FAILED, "not fetched")

    def test_something_else_in_place_of_data_is_refused(self):
        for way, words in (("html", "a web page"), ("empty", "is empty"), ("other", "TMIN")):
            with self.subTest(way):
                self.expect_nothing(self.fetch_station(way), BAD_INPUT, words)
        self.expect_nothing(self.run_fetch("other", "--archive"), BAD_INPUT, "lacks daily")

    def test_unchanged_without_a_copy_is_no_answer(self):
        self.expect_nothing(self.fetch_station("unasked-304"), STORAGE_FAILED, "304")

    # Without a network

    def test_offline_the_last_good_copy_stays_with_its_age(self):
        self.fetch_station("good")
        side = self.sidecar()
        side["checked_at"] = "2020-01-01T00:00:00Z"
        (self.readings / f"ghcnd-{STATION}.dly.source.json").write_text(json.dumps(side))
        self.server.close()
        done = self.fetch_station("good", "--json")
        self.assertEqual(done.returncode, ANSWERED, done.stderr)
        answer = json.loads(done.stdout)
        self.assertEqual(answer["arrival"], "kept")
        self.assertGreater(answer["age_days"], 2000)
        self.assertIn("cannot be fetched", answer["trouble"])
        self.assertEqual(self.file().read_text(), DLY)

    def test_offline_a_copy_for_another_day_stays_and_one_of_another_place_does_not(self):
        self.run_fetch("good", "--power")
        self.server.close()
        later = self.run_fetch("good", "--power", "--from", "2019-01-01")
        self.assertIn("stays as it was", later.stdout)
        elsewhere = self.run_fetch("good", "--power", "--latitude", "50", "--longitude", "5")
        self.assertEqual(elsewhere.returncode, STORAGE_FAILED)

    def test_offline_without_a_copy_there_is_nothing(self):
        self.server.close()
        self.expect_nothing(self.fetch_station("good"), STORAGE_FAILED, "check the network")

    def test_a_misbehaving_server_spoils_no_copy(self):
        self.fetch_station("good")
        for way in ("cut-off", "html", "bomb", "missing", "too-short"):
            with self.subTest(way):
                self.fetch_station(way)
                self.assertEqual(self.file().read_text(), DLY)
        self.assertEqual(sorted(file.name for file in self.readings.iterdir()),
                         [self.file().name, self.file().name + ".source.json"])

    # The grower's own files

    def test_a_file_of_the_growers_is_not_replaced(self):
        self.readings.mkdir()
        self.file().write_text(STALE)
        done = self.fetch_station("good")
        self.assertEqual(done.returncode, STORAGE_FAILED)
        self.assertIn("was not fetched", done.stderr)
        self.assertEqual(self.file().read_text(), STALE)
        self.assertEqual(self.server.asked, [])

    def test_a_fetched_file_that_was_changed_is_not_replaced(self):
        self.fetch_station("good")
        self.file().write_text(STALE)
        self.assertEqual(self.fetch_station("good").returncode, STORAGE_FAILED)
        self.assertEqual(self.file().read_text(), STALE)

    def test_without_a_garden_a_place_is_enough(self):
        (self.garden / "garden.json").unlink()
        self.expect_arrived(self.fetch_station("good", "--latitude", "-33", "--longitude", "19"))

    def test_wrong_use_is_said(self):
        for words in (("--station", "../../etc"), ("--archive", "--power"), ("--latitude", "5"),
                      ("--archive", "--from", "2026-03-01"), ("--timeout", "0")):
            with self.subTest(words):
                self.expect_nothing(self.run_fetch("good", *words), WRONG_USE, "error: ")
        self.assertEqual(self.server.asked, [])
        (self.garden / "garden.json").unlink()
        self.expect_nothing(self.fetch_station("good"), WRONG_USE, "no garden here")


if __name__ == "__main__":
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    Fetch.program = os.path.abspath(sys.argv.pop(1))
    unittest.main(verbosity=1)
