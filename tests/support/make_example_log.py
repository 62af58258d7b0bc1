"""Writes examples/06-film-in-motion-log.csv: what a recorder at the stand of example 04 would have written while a roll
that is out of round runs off, with the recorder switched off for most of the time. Invented; the program itself makes it.

usage: /usr/bin/python3 tests/support/make_example_log.py build/release/apps/cli/holdback > examples/06-film-in-motion-log.csv"""

import csv
import random
import subprocess
import sys
import tempfile
from pathlib import Path

PROJECT = Path(__file__).resolve().parents[2]
RUNOUT = "0.9 mm"
FIRST, LAST = 400, 50  # s recorded at the beginning and at the end


def trace(program, folder):
    stand = (PROJECT / "examples/04-film-in-motion.toml").read_text(encoding="utf-8")
    changed = Path(folder) / "stand.toml"
    changed.write_text(stand.replace('runout = "0.25 mm"', f'runout = "{RUNOUT}"'), encoding="utf-8")
    subprocess.run([program, "simulate", changed, "--job", "clear film", "--units", "si", "--traces", folder],
                   stdout=subprocess.DEVNULL)  # a run outside of its window ends with 1: it is meant to
    with open(next(Path(folder).glob("trace*.csv")), encoding="utf-8") as file:
        return list(csv.DictReader(file))


def main():
    random.seed(1)  # the noise of the load cell and of the gauge
    with tempfile.TemporaryDirectory() as folder:
        rows = trace(sys.argv[1], folder)
    end = float(rows[-1]["time [s]"])
    print("# Invented log of the stand of example 04 with a roll 0.9 mm out of round; made by tests/support/make_example_log.py.")
    print("# Try: holdback diagnose FILE --stand 04-film-in-motion.toml --job \"clear film\"")
    print("Time (s),Line speed (m/min),Web tension (N),Brake pressure (bar),Roll diameter (mm)")
    for row in rows:
        time = float(row["time [s]"])
        if FIRST < time < end - LAST or time == 0:  # the load cell has nothing to say yet
            continue
        print(f"{time:.1f},{float(row['line_speed [m/min]']):.1f},"
              f"{float(row['measured_tension [N]']) + random.gauss(0, 0.3):.1f},"
              f"{float(row['pressure [bar]']) + random.gauss(0, 0.002):.3f},{float(row['diameter [mm]']):.1f}")


main()
