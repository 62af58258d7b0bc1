#!/usr/bin/python3
"""Straight lines through pressure and torque, one of them with a bad point, by SciPy and statsmodels: the numbers of
cases/fit.txt that are marked as computed.

    /usr/bin/python3 fit_reference.py        # Debian: python3-scipy, python3-statsmodels
"""
import numpy as np
import scipy
import statsmodels
import statsmodels.api as sm
from scipy import stats

PRESSURE = np.array([0.5, 1.0, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0])  # bar
TORQUE = np.array([6.1, 16.8, 26.9, 37.3, 47.2, 80.0, 67.6, 78.1])  # N m, the sixth is bad
# Two and four pairs, with drag: torque = K n p - K p0 n + drag; the tenth is bad.
PAIRS = np.array([2, 2, 2, 2, 2, 4, 4, 4, 4, 4])
PRESSURES = np.array([0.5, 1.0, 2.0, 3.0, 4.0, 0.5, 1.0, 2.0, 3.0, 4.0])
TORQUES = np.array([10.4, 25.3, 56.8, 87.1, 118.2, 18.9, 50.4, 112.1, 173.0, 200.0])


def show(name, *values):
    print(name, *(f"{value:.12g}" for value in values))


def lines():
    fit = stats.linregress(PRESSURE, TORQUE)
    show("least squares: slope, intercept", fit.slope, fit.intercept)
    show("  errors, r2", fit.stderr, fit.intercept_stderr, fit.rvalue**2)
    t = stats.t.ppf(0.975, 6)
    show("  t(0.975, 6), slope from, to", t, fit.slope - t * fit.stderr, fit.slope + t * fit.stderr)
    sen = stats.theilslopes(TORQUE, PRESSURE, 0.95)
    show("Theil-Sen", sen[0], sen[1])
    siegel = stats.siegelslopes(TORQUE, PRESSURE)
    show("repeated medians (hierarchical)", siegel[0], siegel[1])
    huber("Huber", sm.add_constant(PRESSURE), TORQUE)


def huber(name, design, values):
    norm = sm.robust.norms.HuberT(1.345)
    fit = sm.RLM(values, design, M=norm).fit(maxiter=1000, tol=1e-14, conv="coefs")
    show(name + ": coefficients", *fit.params)
    show("  errors (H1), scale", *fit.bse, fit.scale)
    show("  weights", *fit.weights)


if __name__ == "__main__":
    print(f"NumPy {np.__version__}, SciPy {scipy.__version__}, statsmodels {statsmodels.__version__}")
    lines()
    huber("two and four pairs, Huber",
          np.column_stack([PAIRS * PRESSURES, -PAIRS, np.ones(10)]), TORQUES)
    plain = sm.OLS(TORQUES[:9], np.column_stack([PAIRS * PRESSURES, -PAIRS, np.ones(10)])[:9]).fit()
    show("two and four pairs, nine points, least squares", *plain.params)
    show("  errors, residual deviation", *plain.bse, np.sqrt(plain.scale))
    for p, freedom in ((0.975, 1), (0.975, 4), (0.95, 12), (0.995, 30)):
        show(f"t({p}, {freedom})", stats.t.ppf(p, freedom))
