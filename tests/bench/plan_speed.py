#!/usr/bin/env python3
"""Times the whole process `nightsow plan` beside `wc -l` of its readings, medians of one run."""
import resource
import statistics
import subprocess
import sys
import time

REPEATS = 15


def median_seconds(command):
    times = []
    for _ in range(REPEATS):
        start = time.perf_counter()
        subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=True)
        times.append(time.perf_counter() - start)
    return statistics.median(times)


nightsow, garden = sys.argv[1:]
plan = median_seconds([nightsow, "--garden", garden, "--today", "2026-02-20", "plan"])
count = median_seconds(["wc", "-l", f"{garden}/readings/station.csv"])
used = resource.getrusage(resource.RUSAGE_CHILDREN)
print(
    f"plan, 100 packets and 100 years, whole process: {plan:.3f} s, {plan / count:.0f} times wc -l,"
    f" {used.ru_maxrss / 1000:.0f} MB at most"
)
