#!/usr/bin/env python3
"""Makes two large files out of one station's daily CSV (date,night,day): the same rows many times
over, as CSV and in the fixed columns of GHCN-Daily .dly. Dates repeat, which no reader of rows minds;
large, so that what is measured is reading and not starting.

    make_large_readings.py STATION.csv FOLDER
"""
import collections
import pathlib
import sys

TIMES = 40
SLOTS = 31


def as_tenths(text):
    return round(float(text) * 10) if text else -9999


def dly_lines(rows):
    months = collections.defaultdict(lambda: [[-9999] * SLOTS, [-9999] * SLOTS])
    for date, night, day in rows:
        for element, text in enumerate((night, day)):
            months[date[:4] + date[5:7]][element][int(date[8:]) - 1] = as_tenths(text)
    for month, elements in sorted(months.items()):
        for name, values in zip(("TMIN", "TMAX"), elements):
            yield "XX000000001" + month + name + "".join(f"{value:5}   " for value in values)


def main(station, folder):
    folder = pathlib.Path(folder)
    header, *lines = pathlib.Path(station).read_text().splitlines()
    rows = [line.split(",") for line in lines]
    (folder / "large.csv").write_text(header + "\n" + ("\n".join(lines) + "\n") * TIMES)
    (folder / "large.dly").write_text(("\n".join(dly_lines(rows)) + "\n") * TIMES)


main(*sys.argv[1:])
