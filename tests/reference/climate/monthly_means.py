#!/usr/bin/python3
"""Monthly means of three archive series, worked out without our code; prints the table that stands in
monthly_means_test.cpp.

    monthly_means.py FOLDER     the folder weather/ that lies beside the project in its workshop

Recorded with Python 3.11.2, pandas 1.5.3, numpy 1.24.2.
"""

import pathlib
import sys

import pandas


def plain(file):
    """date,tmin_c,tmax_c"""
    return pandas.read_csv(file).rename(columns={"tmin_c": "night", "tmax_c": "day"})


def archive(file):
    """A day a row, tenths of a degree, the quality flag second among the attributes."""
    table = pandas.read_csv(file, dtype=str)
    result = pandas.DataFrame({"date": table["DATE"]})
    for name, element in (("night", "TMIN"), ("day", "TMAX")):
        flags = table[element + "_ATTRIBUTES"].fillna(",,,").str.split(",").str[1]
        result[name] = (pandas.to_numeric(table[element]) / 10.0).where(flags.fillna("") == "")
    return result


def main():
    folder = pathlib.Path(sys.argv[1])
    print("pandas", pandas.__version__, file=sys.stderr)
    for name, table in (
        ("raw/ghcnd-JA000047759.csv", archive(folder / "raw/ghcnd-JA000047759.csv")),
        ("series/knmi-260.csv", plain(folder / "series/knmi-260.csv")),
        ("series/acorn-023090.csv", plain(folder / "series/acorn-023090.csv")),
    ):
        crossed = table["night"] > table["day"]
        table.loc[crossed, ["night", "day"]] = None
        months = table.groupby(pandas.to_datetime(table["date"]).dt.month)
        night, day = months["night"], months["day"]
        print(f'    {{"{name}",')
        print("     {{" + ", ".join(f"{mean:.4f}" for mean in night.mean()) + "}},")
        print("     {{" + ", ".join(f"{mean:.4f}" for mean in day.mean()) + "}},")
        print("     {{" + ", ".join(str(count) for count in night.count()) + "}}},")


if __name__ == "__main__":
    main()
