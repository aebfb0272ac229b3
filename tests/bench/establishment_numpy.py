#!/usr/bin/env python3
"""The sums of planner/model/establishment.cpp once more, in numpy, over whole arrays of courses and days,
on what establishment_speed left in a folder: fails when plants differ by over a millionth, and prints how
much slower it is. Debian's python3-numpy is meant, run by Debian's own Python; nothing without it."""
import json
import math
import pathlib
import statistics
import sys
import time

try:
    import numpy as np
except ImportError:
    sys.exit(0)

TOLERANCE = 1e-6
CLASSES, ROOT_SAFE_DAYS, ROOT_OUT, LEAST_SHARE, DRYING_WORTH_IT = 5, 14, 0.5, 5e-4, 1e-3
WATERING_POINT_MM, KEPT_THROUGH_REST, HARDENED, DAMPING_AT_BEST = 2.0, 0.85, 91, 0.005
GRIT_FACTOR, SURFACE_LIMIT_MM = 0.4, 4.0
SCORES = [statistics.NormalDist().inv_cdf((i + 0.5) / CLASSES) for i in range(CLASSES)]
erf_of = np.frompyfunc(math.erfc, 1, 1)


def normal_share(z):
    """math.erfc one by one would be unfair; so only where it is neither 0 nor 1."""
    share = np.where(z > 0, 1.0, 0.0)
    middle = np.abs(z) < 8.3
    share[middle] = 0.5 * erf_of(-z[middle] / math.sqrt(2)).astype(float)
    return share


def hazard(loss):
    with np.errstate(divide="ignore"):
        return np.minimum(30.0, -np.log1p(-np.minimum(loss, 1.0)))


def between(sums, first, last):
    """Rows of sums up to and with each day; nothing where last < first."""
    padded = np.concatenate([np.zeros((len(sums), 1)), sums], axis=1)
    rows = np.arange(len(sums))[:, None]
    return np.where(last < first, 0.0, padded[rows, last + 1] - padded[rows, np.minimum(first, last + 1)])


def fungus(c):
    low, best, high = 3.0, 28.0, 38.0
    above = (c - high) * (c - low) ** 2
    below = (best - low) * ((best - low) * (c - best) - (best - high) * (best + low - 2 * c))
    return np.where((c <= low) | (c >= high), 0.0, above / below)


def since_water(mm, factor):
    since, gone = np.empty_like(mm), np.zeros(len(mm))
    for day in range(mm.shape[1]):
        gone = gone + mm[:, day] * factor
        since[:, day] = gone
        gone = np.where(gone > WATERING_POINT_MM, 0.0, gone)
    return since


class Largest:
    """The first of the largest days of any stretch, by stretches of powers of two."""

    def __init__(self, values):
        self.values, self.rows = values, np.arange(len(values))[:, None]
        level = np.broadcast_to(np.arange(values.shape[1]), values.shape)
        self.levels, half = [level], 1
        while 2 * half <= values.shape[1]:
            level = self.better(level[:, : level.shape[1] - half], level[:, half:])
            self.levels.append(np.pad(level, ((0, 0), (0, values.shape[1] - level.shape[1]))))
            half *= 2

    def better(self, first, other):
        return np.where(self.values[self.rows, other] > self.values[self.rows, first], other, first)

    def of(self, first, last):
        last = np.maximum(first, last)
        level = np.floor(np.log2(last - first + 1)).astype(int)
        levels = np.stack(self.levels)
        return self.better(levels[level, self.rows, first], levels[level, self.rows, last + 1 - 2**level])


def rest_days(given, rows, p, season):
    _, _, coldest, ends = season
    hottest = season[0]
    ends = min(ends, given["days"])
    if p["summer"][0]:
        cool = rows["seven_day_mean_c"][:, max(0, hottest) : ends] <= 13.0
        first = max(0, hottest)
    else:
        cool = np.cumsum(rows["rest_rate"][:, max(0, coldest) : ends], axis=1) >= p["rest_sum"][:, None]
        first = max(0, coldest)
    return np.where(cool.any(axis=1), first + cool.argmax(axis=1), ends)


def fates_of_plants(rows, p, rest, damping, limb):
    """Share of seedlings that become plants, by day of emergence."""
    courses, days = damping.shape
    emerged = np.broadcast_to(np.arange(days), damping.shape)
    own_rest = np.broadcast_to(rest[:, None], damping.shape).copy()
    if p["cool"][0] and p["winter"][0]:
        early = np.minimum(limb, rest)[:, None]
        sums = np.concatenate([np.zeros((courses, 1)), np.cumsum(rows["rest_rate"], axis=1)], axis=1)
        for course in range(courses):
            reached = np.searchsorted(sums[course, 1:], sums[course, :-1] + p["rest_sum"][course] - 1e-12)
            own_rest[course] = np.where(reached < early[course], np.minimum(reached, rest[course]), rest[course])
    relief = np.maximum(0.1, np.exp(-np.arange(days) / 10.0))
    coldest, hottest = rows["coldest_c"], rows["hottest_c"]
    log_alive = np.zeros(damping.shape)
    worst_frost, worst_heat = np.full(damping.shape, -1e9), np.full(damping.shape, -1e9)
    row = np.arange(courses)[:, None]
    limits = p["frost_c"][:, None], p["older_frost_c"][:, None]
    for age in range(1, int((own_rest - emerged).max())):
        day = emerged + age
        lives = day < own_rest
        if not lives.any():
            break
        at = np.minimum(day, days - 1)
        hard = 0.0 if age < 30 else 3.0 if age <= 90 else 6.0
        log_alive -= np.where(lives, damping[row, at] * relief[min(age, HARDENED) - 1], 0.0)
        frost = (limits[int(age >= 60)] - coldest[row, at]) / 1.2
        heat = (hottest[row, at] - hard - p["heat_c"][:, None]) / 2.5
        worst_frost = np.where(lives, np.maximum(worst_frost, frost), worst_frost)
        worst_heat = np.where(lives, np.maximum(worst_heat, heat), worst_heat)
    log_alive -= hazard(normal_share(worst_frost)) + hazard(normal_share(worst_heat))
    grown = between(np.cumsum(rows["summer_growth" if p["summer"][0] else "winter_growth"], axis=1), emerged + 1, own_rest - 1)
    with np.errstate(divide="ignore"):
        large = normal_share(np.log(np.maximum(grown, 0.0) / p["growth_days"][:, None]) / 0.4)
    return np.where(emerged < own_rest, np.exp(log_alive) * np.where(grown > 0, large, 0.0) * KEPT_THROUGH_REST, 0.0)


def plants_of_released(given, rows, p, rest, damping_sums, heat_sums, fates):
    """Share of seed released on each day that becomes plants."""
    courses, days = given["courses"], given["days"]
    hours = rows["hour_c"]
    base, best, top = (p[key][:, None, None] for key in ("base_c", "optimum_c", "ceiling_c"))
    rate = np.where(hours <= best, np.maximum(0, hours - base), (best - base) * np.maximum(0, (top - hours) / (top - best)))
    felt = 1 / (1 + np.exp(-(rows["swing_k"] - 6.0) / 1.5))
    progress = np.cumsum(rate.mean(axis=2) * (p["swing_needed"][:, None] + (1 - p["swing_needed"][:, None]) * felt), axis=1)
    driest = Largest(since_water(rows["evaporation_mm"], GRIT_FACTOR))
    with np.errstate(divide="ignore"):
        dry = normal_share(np.log(driest.values / SURFACE_LIMIT_MM) / 0.4)
    last, row = (rest - 1)[:, None], np.arange(courses)[:, None]
    released = np.minimum(np.broadcast_to(np.arange(days), (courses, days)), last)

    def emerges(needed):
        found = np.empty((courses, days), int)
        for course in range(courses):
            sums = progress[course, : rest[course]]
            found[course] = np.searchsorted(sums, progress[course, released[course]] + needed[course])
        return np.maximum(found, released + 1)  # rest or later: not up

    def passage(needed, undone):
        up = emerges(needed[:, None] + undone)
        comes = up <= last
        to = np.where(comes, up, last)
        root = np.minimum(emerges(ROOT_OUT * needed[:, None] + undone), to)
        dried = dry[row, driest.of(root, np.minimum(to + ROOT_SAFE_DAYS, last))]
        all_hazards = between(damping_sums, released + 1, to) + between(heat_sums, released + 1, to)
        all_hazards += hazard(p["dry_loss"][:, None] * dried)
        return np.where(comes, np.exp(-all_hazards) * fates[row, to], 0.0)

    plants, nothing = np.zeros((courses, days)), np.zeros((courses, days))
    for score in SCORES:
        needed = p["thermal_time"] * np.exp(p["thermal_spread"] * score)
        root = np.minimum(emerges(ROOT_OUT * needed[:, None] + nothing), last)
        pause = driest.of(released, root - 1)
        part = np.where(released < root, dry[row, pause], 0.0)
        part = np.where(part > DRYING_WORTH_IT, part, 0.0)
        undone = np.where(part > 0, 0.5 * between(progress, released + 1, pause), 0.0)
        plants += (part * passage(needed, undone) + (1 - part) * passage(needed, nothing)) / CLASSES
    return plants


def plants(given, rows, p):
    """By course and day of first water."""
    courses, days = given["courses"], given["days"]
    rest = rest_days(given, rows, p, given["season"])
    at_best = (p["rot"] * DAMPING_AT_BEST)[:, None]
    damping_sums = np.cumsum(hazard(at_best * fungus(rows["mean_c"])), axis=1)
    heat_sums = np.cumsum(math.log(2) * rows["heat_half_lives"], axis=1)
    waiting = hazard(p["wet_loss"][:, None] * np.exp2((rows["mean_c"] - 20.0) / 10.0))
    waiting_sums = np.cumsum(waiting, axis=1) + heat_sums
    before = np.concatenate([np.zeros((courses, 1)), waiting_sums[:, :-1]], axis=1)
    damping = hazard(at_best * fungus(rows["seedling_mean_c"]))
    fates = fates_of_plants(rows, p, rest, damping, given["season"][1])
    outcome = plants_of_released(given, rows, p, rest, damping_sums, heat_sums, fates)
    first_day = np.exp(-(waiting_sums - before))
    water = np.arange(days)
    wet = water < rest[:, None]
    if "limit_c" not in p:
        return np.where(wet, (1 - p["deferral"][:, None]) * first_day * outcome, 0.0)
    sign = -1.0 if p["hot"][0] else 1.0
    cool = sign * rows["night_c"]
    nights, of = p["nights"], int(p["of"][0])
    limit, spread, indifferent = (p[key][:, None] for key in ("limit_c", "spread_k", "indifferent"))

    def share_released(coolness):
        with np.errstate(divide="ignore", invalid="ignore"):
            z = (sign * limit - coolness) / spread
        z = np.where(spread > 0, z, np.where(sign * limit - coolness >= -0.005, 99.0, -99.0))
        return indifferent + (1 - indifferent) * normal_share(z)

    # Shares released by windows of so many nights; the longest is the rule's own.
    windows = {}
    for length in range(3, of + 1):
        rank = nights if length == of else (nights * length + of - 1) // of
        ordered = np.sort(np.lib.stride_tricks.sliding_window_view(cool, length, axis=1), axis=2)
        share = share_released(ordered[np.arange(courses), :, rank - 1])
        windows[length] = np.pad(share, ((0, 0), (length - 1, 0)))
    so_far = np.broadcast_to(indifferent, (courses, days)).copy()
    result = np.where(wet, indifferent * first_day * outcome, 0.0)
    for day in range(2, int(rest.max())):
        length = np.minimum(day - water[: day - 1] + 1, of)
        by_length = np.stack([windows[n][:, day] for n in range(3, of + 1)], axis=1)
        share = by_length[:, length - 3]
        new = (share - so_far[:, : day - 1] > LEAST_SHARE) & (day < rest)[:, None]
        course, first = np.nonzero(new)
        step = share[course, first] - so_far[course, first]
        lived = np.exp(-(waiting_sums[course, day] - before[course, first]))
        result[course, first] += step * lived * outcome[course, day]
        so_far[course, first] = share[course, first]
    return (1 - p["deferral"][:, None]) * result


def main(folder):
    folder = pathlib.Path(folder)
    given = json.loads((folder / "establishment.json").read_text())
    courses, days = given["courses"], given["days"]
    rows = {file.stem: np.fromfile(file).reshape(courses, days) for file in folder.glob("*.f64") if file.stem != "plants"}
    rows["hour_c"] = np.fromfile(folder / "hour_c.f32", np.float32).reshape(courses, days, 24).astype(float)
    there = np.fromfile(folder / "plants.f64").reshape(-1, courses, days)
    kinds = [{key: np.array([one[key] for one in seeds]) for key in seeds[0]} for seeds in given["kinds"]]
    start = time.process_time()
    here = np.stack([plants(given, rows, kind) for kind in kinds])
    seconds = (time.process_time() - start) / len(kinds)
    largest = float(np.abs(here - there).max())
    print(
        f"  {seconds / given['seconds_a_kind']:.0f} times as fast as numpy ({seconds:.2f} s a kind),"
        f" plants differ by {largest:.1e} at most"
    )
    if largest > TOLERANCE:
        sys.exit(f"establishment_numpy.py: plants differ by up to {largest:.2e}")


main(*sys.argv[1:])
