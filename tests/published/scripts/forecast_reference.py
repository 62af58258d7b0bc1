"""Reference numbers for the forecast of the next change of pads, made with SciPy and NumPy alone (Debian's python3-scipy).

Run: /usr/bin/python3 tests/published/scripts/forecast_reference.py
What it prints stands in tests/unit/field/forecast_test.cpp. It shares no code with Holdback:
- the line by scipy.stats.linregress;
- the remaining use by Fieller's theorem (E. C. Fieller, J. R. Stat. Soc. B 16 (1954) 175), solved in closed form, with the
  variance pooled from the residuals and the assumed scatter of two readings;
- the day by integrating: the remaining use has the distribution function P(R < r) = P(t_nu < (k r - d)/se(r)), the time to do
  it is inverse Gaussian (scipy.stats.invgauss), the mean rate normal, its variance scaled inverse chi squared;
- a rate with a prior by a grid over rate and variance.
"""
import numpy as np
from scipy import stats

USE = np.array([0.0, 100, 210, 290, 405, 500])  # GJ
DEPTH = np.array([12.0, 11.1, 9.8, 9.1, 7.9, 7.0])  # mm
NOW = 520.0
RESOLUTION = 0.1
PERIODS = [(31, 80.0), (28, 66.0), (31, 95.0), (30, 71.0), (31, 88.0), (30, 120.0)]  # days, GJ

fit = stats.linregress(USE, DEPTH)
n = len(USE)
rate = -fit.slope
residual = np.sum((DEPTH - fit.intercept - fit.slope * USE) ** 2)
spread = np.sum((USE - USE.mean()) ** 2)
print(f"line: rate {rate:.12g} mm/GJ, mean depth {DEPTH.mean():.12g}, spread {spread:.12g}, residual {residual:.12g}")

freedom = 2 + n - 2
variance = (2 * RESOLUTION**2 + residual) / freedom


def fieller(share):
    """Use at which the line is through, at a share of its distribution: (depth_mean/rate) + use_mean - now."""
    t = stats.t.ppf(share, freedom)
    g = t * t * variance / spread / rate**2
    ratio = DEPTH.mean() / rate
    root = np.sqrt(variance / n * (1 - g) + variance / spread * ratio**2)
    return (ratio + t / rate * root) / (1 - g) + USE.mean() - NOW


print("remaining use, GJ, at 5, 50, 95 %:", *(f"{fieller(share):.6g}" for share in (0.05, 0.5, 0.95)))

# The day: an independent Monte Carlo of four million draws, in which only the densities are taken from SciPy.
rng = np.random.default_rng(7)
size = 4_000_000
sigma2 = (2 * RESOLUTION**2 + residual) / rng.chisquare(freedom, size)
rates = rate + rng.standard_normal(size) * np.sqrt(sigma2 / spread)
depth = DEPTH.mean() + rng.standard_normal(size) * np.sqrt(sigma2 / n) - rates * (NOW - USE.mean())
left = depth / rates
days = np.array([d for d, _ in PERIODS], float)
work = np.array([w for _, w in PERIODS])
mean = work.sum() / days.sum()
squares = np.sum((work - mean * days) ** 2 / days) + 3 * (0.3 * mean) ** 2 * 30
tau2 = squares / rng.chisquare(len(PERIODS) - 1 + 3, size)
per_day = mean + rng.standard_normal(size) * np.sqrt(tau2 / days.sum())
shape = left**2 / tau2
goes_on = (per_day > 0) & (left > 0)  # the rest, a few in a million, is never
time = np.full(size, np.inf)
shape = shape[goes_on]
time[goes_on] = stats.invgauss.rvs(left[goes_on] / per_day[goes_on] / shape, scale=shape, random_state=rng)
print(f"work: {mean:.12g} GJ a day")
print("days at 5, 50, 95 %:", *(f"{q:.5g}" for q in np.quantile(time, (0.05, 0.5, 0.95))))

# With a prior on the rate, 0.012 +- 0.002 mm/GJ, and three points only: a grid over rate and log variance, the middle of the
# line integrated out by hand (it is normal and independent of both).
use, wear = USE[:3], DEPTH[:3]
line = stats.linregress(use, wear)
s = np.sum((use - use.mean()) ** 2)
r = np.sum((wear - line.intercept - line.slope * use) ** 2)
k = np.linspace(0.002, 0.02, 3001)[:, None]
v = np.exp(np.linspace(np.log(1e-5), np.log(3.0), 3001))[None, :]
nu, square = 2 + 3 - 2, 2 * RESOLUTION**2 + r
log = -(nu / 2) * np.log(v) - square / (2 * v)  # scaled inverse chi squared on a log grid
log = log - 0.5 * np.log(v) - s * (k + line.slope) ** 2 / (2 * v)  # the data
log = log - 0.5 * ((k - 0.012) / 0.002) ** 2  # the prior
weight = np.exp(log - log.max()).sum(axis=1)
weight /= weight.sum()
mean_rate = np.sum(weight * k[:, 0])
print(f"with a prior: rate {mean_rate:.6g} +- {np.sqrt(np.sum(weight * (k[:, 0] - mean_rate) ** 2)):.4g} mm/GJ")

# A drift of fitted friction: slope and 90 % interval by linregress and Student's t.
years = np.array([0, 90, 200, 310, 420]) / 365.25
value = np.array([0.38, 0.37, 0.36, 0.345, 0.34])
drift = stats.linregress(years, value)
reach = stats.t.ppf(0.95, 3) * drift.stderr
print(f"drift: {drift.slope:.10g} a year, 90 % {drift.slope - reach:.10g} to {drift.slope + reach:.10g}")
