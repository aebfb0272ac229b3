#!/usr/bin/env python3
"""Makes a garden of 100 years and 100 packets out of an invented example garden.

The years before the example's first are its own, moved back by whole 28-year cycles of the calendar, so
that leap days fall on leap days. 100 years is a long station record; 100 packets a large order.
"""
import csv
import datetime
import pathlib
import shutil
import sys

YEARS = 100
PACKETS = 100


def main(source, target):
    source, target = pathlib.Path(source), pathlib.Path(target)
    shutil.copytree(source, target)
    station = target / "readings" / "station.csv"
    header, *rows = station.read_text().splitlines()
    days = {datetime.date.fromisoformat(row[:10]): row[10:] for row in rows}
    last = max(days)
    first = last - datetime.timedelta(days=round(YEARS * 365.2425))
    earliest = min(days)
    lines = []
    day = first
    while day <= last:
        of = day
        while of < earliest:
            of = of.replace(year=of.year + 28)
        lines.append(day.isoformat() + days.get(of, ",,"))
        day += datetime.timedelta(days=1)
    station.write_text("\n".join([header, *lines]) + "\n")

    packets = target / "packets.csv"
    with packets.open(newline="") as file:
        reader = csv.DictReader(file)
        names, given = reader.fieldnames, list(reader)
    with packets.open("w", newline="") as file:
        writer = csv.DictWriter(file, names)
        writer.writeheader()
        for number in range(PACKETS):
            writer.writerow({**given[number % len(given)], "packet": f"P{number:03}"})


main(*sys.argv[1:])
