#!/usr/bin/env python3
"""Prints the median seconds that pandas takes to read a CSV with its dates parsed; nothing when there
is no pandas. Debian's python3-pandas is meant, run by Debian's own Python."""
import statistics
import sys
import time

REPEATS = 5

try:
    import pandas
except ImportError:
    sys.exit(0)

times = []
for _ in range(REPEATS):
    start = time.perf_counter()
    pandas.read_csv(sys.argv[1], parse_dates=[0])
    times.append(time.perf_counter() - start)
print(f"{statistics.median(times):.4f}")
