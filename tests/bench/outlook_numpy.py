#!/usr/bin/env python3
"""The sums of climate/outlook.cpp once more, in numpy, on what outlook_speed left in a folder: compares
the members and prints how the two times, each the best of several repeats in one run, relate. Nothing
is printed where there is no numpy; members that differ by over 0.01 K end it with an error.

Everything runs over whole arrays; no step loops over members or days. What the C++ program works out
and this one is given: the smooth year (as there), when seasons begin, and the weights by days ahead.
"""
import json
import pathlib
import sys
import time

try:
    import numpy as np
except ImportError:
    sys.exit(0)

REPEATS = 30
TOLERANCE_K = 0.01
SHIFTS = np.array([-14, -7, 0, 7, 14])
DAYS_A_YEAR = 365.2425
DAY_2000 = 10957  # 2000-01-01 in days since 1970


def smooth_c(curve, days):
    years = (days - DAY_2000) / DAYS_A_YEAR
    angle = 2 * np.pi * years
    return (
        curve["constant_c"]
        + curve["carried_trend_c_per_year"] * (years - curve["centre_year"])
        + curve["cosine_c"][0] * np.cos(angle)
        + curve["sine_c"][0] * np.sin(angle)
        + curve["cosine_c"][1] * np.cos(2 * angle)
        + curve["sine_c"][1] * np.sin(2 * angle)
    )


def usable_seasons(given, hottest, night_c):
    begins = hottest - given["first_day"]
    searched = night_c[begins[:, None] + np.arange(given["nights_searched"])]
    missing = np.isnan(searched).sum(axis=1)
    good = (missing <= given["most_missing"] * given["nights_searched"]) & (hottest < given["season"]["hottest"])
    return np.flatnonzero(good)[-given["most_seasons"]:]


def departures_at(row, places):
    """NaN outside of the row."""
    inside = (places >= 0) & (places < len(row))
    return np.where(inside, row[np.clip(places, 0, len(row) - 1)], np.float32(np.nan))


def mean_of(row, last, count):
    """Of the days that end on `last`, NaN where fewer than half of them are there."""
    part = departures_at(row, last[:, None] - np.arange(count))
    there = ~np.isnan(part)
    number = there.sum(axis=1)
    with np.errstate(invalid="ignore", divide="ignore"):
        mean = np.where(there, part, 0).sum(axis=1, dtype=np.float64) / number
    return np.where(2 * number >= count, mean, np.nan)


def last_days(night_k, day_k, own, last_night, last_day):
    """A row for each course: last night, last day, means of 30 and 90 of the element itself."""
    row, last = (night_k, last_night) if own == "night" else (day_k, last_day)
    return np.stack(
        [
            departures_at(night_k, last_night),
            departures_at(day_k, last_day),
            mean_of(row, last, 30),
            mean_of(row, last, 90),
        ],
        axis=1,
    )


def members(given, night_c, day_c):
    hottest, name = np.array(given["hottest"]), np.array(given["name"])
    first, days = given["season"]["hottest"], given["days"]
    of_series = np.arange(len(night_c)) + given["first_day"]
    night_k = (night_c - smooth_c(given["night"], of_series)).astype(np.float32)
    day_k = (day_c - smooth_c(given["day"], of_series)).astype(np.float32)

    chosen = usable_seasons(given, hottest, night_c)
    back = np.rint((given["season"]["name"] - name[chosen]) * DAYS_A_YEAR).astype(int)
    starts = (first - back[:, None] + SHIFTS).ravel() - given["first_day"]

    last_night = given["last_night"]
    maxima = np.flatnonzero(~np.isnan(day_c[: last_night - given["first_day"] + 1]))
    last_day = maxima[-1] + given["first_day"]
    if last_night - last_day >= 7:
        last_day = last_night
    observed = max(0, min(last_night - first + 1, days))

    # The course that is known and those of the members at the same time of the year, in one.
    season_starts = np.append(first - given["first_day"], starts)
    nights, lasts = season_starts + (last_night - first), season_starts + (last_day - first)
    of_season = np.arange(days) + first
    ahead = np.arange(observed, days) - (last_night - first) - 1
    results = []
    for own, row, air_c in (("night", night_k, night_c), ("day", day_k, day_c)):
        course = np.nan_to_num(departures_at(row, starts[:, None] + np.arange(days)))
        course += smooth_c(given[own], of_season)
        known = last_days(night_k, day_k, own, nights, lasts)
        differs = np.nan_to_num(known[0] - known[1:])
        tail = course[:, observed:]
        tail += differs @ np.array(given[own + "_weights"])[ahead].T
        mean = np.nanmean(tail, axis=0)
        tail[:] = mean + np.array(given["stray_factor"])[ahead] * (tail - mean)
        begin = first - given["first_day"]
        read = air_c[begin : begin + observed]
        course[:, :observed] = np.where(np.isnan(read), course[:, :observed], read)
        results.append(course.astype(np.float32))
    return results


def main(folder):
    folder = pathlib.Path(folder)
    given = json.loads((folder / "outlook.json").read_text())
    night_c, day_c = (np.fromfile(folder / f"series_{own}.f32", np.float32) for own in ("night", "day"))
    # As arrays, so that lists are not turned into them while the clock runs.
    given = {key: np.array(value) if isinstance(value, list) else value for key, value in given.items()}
    times = []
    for _ in range(REPEATS):
        start = time.perf_counter()
        ours = members(given, night_c, day_c)
        times.append(time.perf_counter() - start)
    for own, here in zip(("night", "day"), ours):
        there = np.fromfile(folder / f"members_{own}.f32", np.float32)
        if there.size != here.size:
            sys.exit(f"outlook_numpy.py: {here.size} values of members ({own}), outlook_speed has {there.size}")
        there = there.reshape(here.shape)
        if not np.array_equal(np.isnan(here), np.isnan(there)):
            sys.exit(f"outlook_numpy.py: members ({own}) miss other values than those of outlook_speed")
        largest = float(np.nanmax(np.abs(here - there)))
        if largest > TOLERANCE_K:
            sys.exit(f"outlook_numpy.py: members ({own}) differ by up to {largest:.3f} K")
    best_ms = min(times) * 1000
    print(f"  {best_ms / given['best_ms']:.1f} times as fast as numpy ({best_ms:.2f} ms), the same members")


main(*sys.argv[1:])
