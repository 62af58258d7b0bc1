#!/usr/bin/python3
"""Mass of air that a strip carries when it swings as sin(k x) along its length, in free air: Galerkin solution of the
potential flow, SciPy. Written to standard output: k W, added mass per area over ρ W, and the formula of carried_air()
against it. Values stand in tests/unit/physics/measure_test.cpp.

The jump of the potential across the strip is g(y) = sum c_i sqrt(1 - y²) U_2i(y) on its half width; its transform is
pi p J_p(q)/q, p = 2i + 1. The normal velocity on the strip is -1/2 sqrt(q² + k²) g^(q), set to one in the mean against
the same functions. The mass is the integral of g.
"""
import sys

import numpy
import scipy
from scipy.integrate import quad
from scipy.special import jv


def carried(wave_width, terms=8):
    k = wave_width / 2  # in half widths
    matrix = numpy.zeros((terms, terms))
    for i in range(terms):
        for j in range(terms):
            p, r = 2 * i + 1, 2 * j + 1
            rest = lambda q: (numpy.hypot(q, k) - q) * jv(p, q) * jv(r, q) / q**2
            value = sum(quad(rest, a, a + 5, limit=200, epsabs=1e-13)[0] for a in numpy.arange(0, 200, 5.0))
            value += 1 / (2 * p) if i == j else 0  # the integral of J_p²/q, in closed form
            matrix[i, j] = numpy.pi / 2 * p * r * (-1) ** (i + j) * value
    right = numpy.zeros(terms)
    right[0] = numpy.pi / 2
    return numpy.linalg.solve(matrix, right)[0] * numpy.pi / 2 / 4


if __name__ == "__main__":
    print(f"# Python {sys.version.split()[0]}, NumPy {numpy.__version__}, SciPy {scipy.__version__}")
    print("# kW  m/(rho W)  formula/this - 1")
    for wave_width in [0.01, 0.1, 0.3, 1, 2, 3, 5, 10, 20, 40]:
        mass = carried(wave_width)
        formula = ((numpy.pi / 4) ** -1.5 + (2 / wave_width) ** -1.5) ** (-2 / 3)
        print(f"{wave_width:g} {mass:.6g} {formula / mass - 1:+.4f}")
