#!/usr/bin/env python3
"""Times keeping a long record: a sheet of so many counts imported, imported again, listed, and one
count more; beside the same rows put into a plain SQLite table and `wc` of the sheet.

    journal_speed.py NIGHTSOW GARDEN [COUNTS...]
"""
import csv
import datetime
import pathlib
import shutil
import sqlite3
import subprocess
import sys
import tempfile
import time

SOWINGS_OF = 100  # counts a sowing


def seconds(work):
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def rows_of(counts):
    """A sowing and its counts, a day apart, again and again."""
    first = datetime.date(2020, 1, 1)
    number = 0
    for sowing in range(1, (counts + SOWINGS_OF - 1) // SOWINGS_OF + 1):
        key = f"s{sowing}"
        yield [key, "sowing", first.isoformat(), "", "Albuca spiralis", 50, ""]
        for i in range(min(SOWINGS_OF, counts - number)):
            day = first + datetime.timedelta(days=i + 1)
            yield ["", "count", day.isoformat(), key, "", "", i % 40]
            number += 1


def write_sheet(file, counts):
    with open(file, "w", newline="", encoding="utf-8") as out:
        writer = csv.writer(out)
        writer.writerow(["entry", "what", "day", "sowing", "taxon", "seeds", "seen"])
        writer.writerows(rows_of(counts))


def plain_sqlite(folder, sheet):
    """One table, one transaction, nothing checked."""
    plain = sqlite3.connect(folder / "plain.db")
    plain.execute("PRAGMA journal_mode = WAL")
    plain.execute("CREATE TABLE rows (entry, what, day, sowing, taxon, seeds, seen)")
    with open(sheet, newline="", encoding="utf-8") as rows, plain:
        reader = csv.reader(rows)
        next(reader)
        plain.executemany("INSERT INTO rows VALUES (?, ?, ?, ?, ?, ?, ?)", reader)
    plain.close()


def read_plain(folder):
    plain = sqlite3.connect(folder / "plain.db")
    for row in plain.execute("SELECT * FROM rows"):
        str(row)
    plain.close()


def measure(nightsow, example, counts):
    with tempfile.TemporaryDirectory(prefix="nightsow-") as scratch:
        folder = pathlib.Path(scratch)
        garden = folder / "garden"
        shutil.copytree(example, garden)
        (garden / "journal.db").unlink(missing_ok=True)
        sheet = folder / "sheet.csv"
        write_sheet(sheet, counts)

        def run(*words):
            subprocess.run([nightsow, "--garden", garden, "--today", "2026-02-20", *words],
                           check=True, stdout=subprocess.DEVNULL)
        wc = seconds(lambda: subprocess.run(["wc", sheet], check=True, stdout=subprocess.DEVNULL))
        write = seconds(lambda: plain_sqlite(folder, sheet))
        read = seconds(lambda: read_plain(folder))
        took = {
            "import": seconds(lambda: run("journal", "import", sheet)),
            "import again": seconds(lambda: run("journal", "import", sheet)),
            "export": seconds(lambda: run("journal", "export")),
            "list": seconds(lambda: run("journal", "list")),
            "one count": seconds(lambda: run("count", "1", "7", "--on", "2020-06-01")),
        }
        print(f"{counts} counts, plain SQLite writes in {write:.2f} s and reads in {read:.2f} s, "
              f"wc in {wc:.3f} s")
        for name, time_s in took.items():
            beside, base = ("plain writing", write) if name == "import" else ("plain reading", read)
            print(f"  {name}: {time_s:.2f} s, {time_s / base:.1f} times {beside}, "
                  f"{time_s / wc:.0f} times wc")


for number in map(int, sys.argv[3:] or ["1000", "100000"]):
    measure(sys.argv[1], sys.argv[2], number)
