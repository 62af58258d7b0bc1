"""Densities of signals with known spectra, by SciPy: what tests/unit/numerics/spectrum_test.cpp compares with. Run with
Debian's Python: /usr/bin/python3 tests/published/scripts/signal_reference.py > tests/published/signals/welch.txt

The signals follow from formulas alone; noise comes from the generator s = (1103515245 s + 12345) mod 2^31, seed 12345,
z = s/2^31 - 0.5, so that no file of samples is needed."""

import math
import sys

import numpy
import scipy
import scipy.signal

SEED = 12345


def noise(count):
    state, values = SEED, []
    for _ in range(count):
        state = (1103515245 * state + 12345) % 2**31
        values.append(state / 2**31 - 0.5)
    return numpy.array(values)


def chirp(count, rate):
    """From 5 to 40 Hz, evenly, with a drift under it."""
    t = numpy.arange(count) / rate
    end = count / rate
    return numpy.sin(2 * math.pi * (5 * t + (40 - 5) / (2 * end) * t**2)) + 0.7 * t / end


def coloured(count):
    """Noise through y_j = 0.9 y_(j-1) + z_j: density 1/12 * 2/|1 - 0.9 e^(-iw)|^2."""
    z, y = noise(count), numpy.zeros(count)
    last = 0.0
    for j in range(count):
        last = 0.9 * last + z[j]
        y[j] = last
    return y


def orders(count, rate):
    """A roll that speeds up: order 1 and order 4 of an angle that grows with the square of time."""
    t = numpy.arange(count) / rate
    angle = 2 * math.pi * (1.5 * t + 0.01 * t**2)
    return numpy.sin(angle) + 0.3 * numpy.sin(4 * angle)


def show(name, values, rate, segment, detrend):
    frequency, density = scipy.signal.welch(values, rate, "hann", segment, segment // 2, None, detrend)
    picks = sorted({1, 2, 3, segment // 16, segment // 8, segment // 5, segment // 4, segment // 2 - 1, segment // 2,
                    int(numpy.argmax(density[1:])) + 1})
    for k in picks:
        print(f"{name} {rate:g} {segment} {detrend} {k} {frequency[k]:.17g} {density[k]:.17g}")


print(f"# SciPy {scipy.__version__}, NumPy {numpy.__version__}, Python {sys.version.split()[0]}, seed {SEED}")
print("# signal rate segment detrend entry frequency density")
for detrend in ("constant", "linear"):
    show("noise", noise(4096), 1.0, 256, detrend)
    show("coloured", coloured(8192), 100.0, 512, detrend)
    show("chirp", chirp(5000, 250.0), 250.0, 500, detrend)
    show("orders", orders(6000, 100.0), 100.0, 1024, detrend)
