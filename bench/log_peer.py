"""A long log read with pandas beside our own reader, in the same run; reading alone, into columns of numbers.

usage: /usr/bin/python3 bench/log_peer.py build/release/bench/holdback_log_peer [ROWS]
Needs Debian's python3-pandas. Prints MB/s of both and their ratio; ends with an error when the two read other numbers.
The log is written to the folder for temporary files and removed."""

import json
import os
import subprocess
import sys
import tempfile
import time

try:
    import pandas
except ImportError:
    sys.exit("python3-pandas is missing; apt-get install python3-pandas, then /usr/bin/python3")

BLOCK = 65536


def ours(program, log, threads):
    text = subprocess.run([program, "read", log, str(threads)], capture_output=True, check=True, text=True).stdout
    return json.loads(text)


def main():
    program = sys.argv[1]
    rows = int(sys.argv[2]) if len(sys.argv) > 2 else 3_000_000
    with tempfile.TemporaryDirectory() as folder:
        log = os.path.join(folder, "log.csv")
        subprocess.run([program, "make", str(rows), log], check=True)
        size = os.path.getsize(log)
        theirs, one, two = [], [], []
        for _ in range(3):  # in turn, so that a busy machine is busy for all
            begin = time.perf_counter()
            frame = pandas.read_csv(log, engine="c")
            theirs.append(time.perf_counter() - begin)
            one.append(ours(program, log, 1))
            two.append(ours(program, log, 2))
        tension = frame["tension [N]"].to_numpy()
        spots = sum(float(tension[begin:begin + BLOCK:1000].sum()) for begin in range(0, rows, BLOCK))
    pace = lambda seconds: size / seconds * 1e-6
    best = [min(theirs), min(each["seconds"] for each in one), min(each["seconds"] for each in two)]
    print(f"{rows} rows x 5 channels, {size * 1e-6:.0f} MB")
    print(f"  pandas {pandas.__version__}, C engine   {pace(best[0]):6.0f} MB/s")
    print(f"  Holdback, one thread     {pace(best[1]):6.0f} MB/s   {best[0] / best[1]:5.1f} times as fast")
    print(f"  Holdback, two threads    {pace(best[2]):6.0f} MB/s   {best[0] / best[2]:5.1f} times as fast")
    if one[0]["rows"] != rows or abs(one[0]["spots"] - spots) > 1e-9 * abs(spots):
        sys.exit("the two do not read the same numbers")


main()
