#!/usr/bin/python3
"""Draws of the tension before a push, by NumPy: check T-2's first row with every input ± 0.5 %, rectangular, and the force
read as 6.30, 6.38, 6.46, 6.39, 6.37 N besides (a t-distribution of 4 degrees of freedom on their mean). 16 million
draws, seed 20240607. Mean, standard deviation, 2.5 % and 97.5 % stand in tests/unit/field/measure_test.cpp.
"""
import sys

import numpy

N = 16_000_000
rng = numpy.random.Generator(numpy.random.PCG64(20240607))


def within(value):
    return value * (1 + 0.005 * rng.uniform(-1, 1, N))


def main():
    force_readings = numpy.array([6.30, 6.38, 6.46, 6.39, 6.37])
    span, push, modulus, caliper, width = within(1.0), within(10e-3), within(4e9), within(24e-6), within(0.5)
    scale = force_readings.std(ddof=1) / numpy.sqrt(len(force_readings))
    force = force_readings.mean() + scale * rng.standard_t(4, N) + 0.005 * force_readings.mean() * rng.uniform(-1, 1, N)
    # The web between both ends is L0 long without tension; pushed, it is as long as two hypotenuses.
    pushed_length = numpy.sqrt(span**2 + 4 * push**2)
    pushed = force * pushed_length / (4 * push)
    stiffness = modulus * caliper * width
    slack_length = pushed_length / (1 + pushed / stiffness)
    before = stiffness * (span / slack_length - 1)
    low, high = numpy.quantile(before, [0.025, 0.975])
    print(f"# Python {sys.version.split()[0]}, NumPy {numpy.__version__}")
    print(f"mean {before.mean():.5f} deviation {before.std():.5f} low {low:.4f} high {high:.4f}")


if __name__ == "__main__":
    main()
