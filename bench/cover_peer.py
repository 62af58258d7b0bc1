"""The large mix judged with NumPy, vectorised over jobs and radii, beside our own times for it in the same run.

usage: /usr/bin/python3 bench/cover_peer.py build/release/bench/holdback_cover_peer
Prints both times, their ratio, and how far the answers lie apart. One thread, as NumPy's element-wise work is."""

import json
import os
import subprocess
import sys
import time

for name in ("OPENBLAS_CORETYPE", "OPENBLAS_L2_SIZE"):  # settings of other programs that slow NumPy down or break it
    os.environ.pop(name, None)
import numpy as np

CAP = 100.0


def at_most(value, bound):
    with np.errstate(divide="ignore", invalid="ignore"):
        return np.where(value <= 0, CAP, np.clip(bound / value, 0, CAP))


def at_least(value, bound):
    return np.where(bound <= 0, CAP, np.clip(value / np.maximum(bound, 1e-300), 0, CAP))


class Jobs:
    """What every fit meets: one row a job, one column a radius. Laid out once, as ours is."""

    def __init__(self, mix):
        jobs, n = mix["jobs"], mix["radii"]
        for key in ("speed", "tension", "low", "high", "strength", "tolerance", "stop", "emergency_stop", "ramp", "core",
                    "full", "core_mass", "basis_weight", "width", "caliper"):
            setattr(self, key, np.array([job[key] for job in jobs]))
        column = lambda a: a[:, None]
        self.radius = column(self.core) + column(self.full - self.core) * np.arange(n) / (n - 1)
        self.omega = column(self.speed) / self.radius
        self.root_omega = np.sqrt(self.omega)
        area = self.radius**2 - column(self.core) ** 2
        mass = column(self.basis_weight * self.width) * np.pi * area / column(self.caliper)
        self.web_inertia = mass / 2 * (self.radius**2 + column(self.core) ** 2)
        self.inertia = self.web_inertia + column(mix["shaft_inertia"] + self.core_mass * self.core**2)
        self.thinning = column(self.caliper * self.speed**2) / (2 * np.pi * self.radius**2) / self.radius
        self.ramping = column(self.speed / self.ramp) / self.radius + self.thinning
        self.stop_rate = column(self.speed / self.stop) / self.radius
        self.emergency_rate = column(self.speed / self.emergency_stop) / self.radius
        weight = self.radius.copy()
        weight[:, [0, -1]] /= 2
        self.share = weight / weight.sum(axis=1, keepdims=True)
        self.bounds = [np.array([job["bounds"].get(key, 0.0) for job in jobs]) for key in ("traction", "sag", "balance")]
        self.cinching = np.array([job["cinching"] for job in jobs]).T


def steady_temperature(ambient, power, convection, radiation):
    cold = convection + 4 * radiation * ambient**3
    rise = np.minimum(power / cold, np.sqrt(np.sqrt(ambient**4 + power / (radiation + 1e-300))) - ambient)
    for _ in range(2):
        hot = ambient + rise
        excess = rise * (convection + radiation * (hot + ambient) * (hot * hot + ambient**2)) - power
        slope = convection + 4 * radiation * hot * hot * hot
        rise = rise - 2 * excess * slope / (2 * slope * slope - excess * (12 * radiation * hot * hot))
    return ambient + rise


def judge(mix, jobs, fit, cache):
    """Margins and pairs of every job on one fit."""
    brakes, ambient = fit["brakes"], mix["ambient"]
    drag = mix["drag"] + brakes * fit["drag"]
    tension = jobs.tension[:, None]
    inertia = jobs.inertia + brakes * fit["inertia"]
    run = tension * jobs.radius - drag - inertia * jobs.thinning
    stop = mix["stop_share"] * tension * jobs.radius - drag + inertia * jobs.stop_rate
    emergency = mix["emergency_stop_share"] * tension * jobs.radius - drag + inertia * jobs.emergency_rate
    hold = mix["hold_share"] * tension * jobs.radius
    released = ((inertia * jobs.ramping + drag) / jobs.radius).max(axis=1)
    power = np.maximum(run, 0) * jobs.omega
    key = tuple(fit["convection"])
    if key not in cache:  # fits of one brake share what its disc sheds, as ours do
        cache[key] = (np.interp(jobs.root_omega, fit["root_speed"], fit["convection"]),
                      np.interp(jobs.root_omega, fit["root_speed"], fit["radiation"]))
    convection, radiation = cache[key]
    temperature = steady_temperature(ambient, power / brakes, convection, radiation)
    hot = ambient + fit["rise"]
    shed = fit["rise"] * (convection + radiation * (hot + ambient) * (hot**2 + ambient**2))
    stopping = np.maximum(emergency, 0) * jobs.omega
    bulk = (temperature + stopping * (jobs.emergency_stop / 2)[:, None] / (brakes * fit["heat"])).max(axis=1)
    surface = (temperature + stopping * np.array(fit["surface"])[:, None] / brakes).max(axis=1)
    left = np.maximum(0.1, 1 - fit["fade_rate"] * np.maximum(0, temperature - fit["fade_start"]))
    most = {name: (torque / left).max(axis=1)
            for name, torque in (("run", run), ("stop", stop), ("emergency", emergency), ("hold", hold))}
    hot_power = (power / left).max(axis=1)
    rate = fit["wear_rate"] * np.exp2(np.maximum(0, temperature - fit["wear_knee"]) / fit["wear_doubling"])
    worn = (jobs.share * rate * power).sum(axis=1)
    hottest = temperature.max(axis=1)
    fixed = [at_most(released, jobs.high),
             at_most(np.maximum.reduce([t.max(axis=1) for t in (run, stop, emergency, hold)]),
                     brakes * fit["torque_rating"]),
             at_most(jobs.omega[:, 0], fit["speed_rating"]),
             at_most((power / brakes / shed).max(axis=1), 1.0),
             at_most(hottest - ambient, fit["disc_rating"] - ambient),
             at_most(hottest - ambient, fit["pad_limit"] - ambient),
             at_most(bulk - ambient, min(fit["disc_rating"], fit["pad_limit"]) - ambient),
             at_most(surface - ambient, fit["pad_limit"] - ambient)]
    fixed += [np.where(jobs.strength > 0, at_most(jobs.high, jobs.strength), CAP)]
    fixed += [at_most(bound, jobs.low) for bound in jobs.bounds]
    arm, inertia_torque, wound = jobs.cinching
    fixed += [np.where(wound > 0, at_most(arm * jobs.high + inertia_torque, wound), CAP)]
    fixed = np.minimum.reduce(fixed)
    least = run.min(axis=1)
    best_margin = best_pairs = best_state = None
    for pairs in range(1, fit["pairs"] + 1):
        engaged = brakes * pairs
        weakest = fit["capacity"] * engaged * (1 - fit["band"])
        strongest = fit["highest"] * engaged * (1 + fit["band"])
        cold = weakest * max(0.0, fit["ceiling"] - fit["threshold"])
        floor_torque = strongest * max(0.0, fit["floor"] - fit["threshold"])
        margins = [fixed,
                   at_most((floor_torque + drag) / jobs.core, jobs.low),
                   at_most(strongest * mix["pressure_step"] / jobs.core, jobs.tolerance * jobs.tension),
                   at_most(fit["threshold"] + np.maximum(most["run"], 0) / weakest, fit["ceiling"]),
                   at_least(fit["threshold"] + np.maximum(least, 0) / strongest, fit["floor"]),
                   at_most(most["stop"], cold), at_most(most["emergency"], cold),
                   at_most(most["hold"], cold * fit["static_ratio"]),
                   at_least(np.clip(fit["usable"] / np.maximum(worn / (2 * engaged), 1e-300), 1, 1e12),
                            mix["least_life"])]
        if fit["pressure_speed"] > 0:
            margins.append(at_most(fit["contact"] / weakest * fit["friction_radius"] * hot_power,
                                   fit["pressure_speed"]))
        margin = np.minimum.reduce(margins)
        state = np.where(margin >= 1 + mix["reserve"], 0, np.where(margin >= 1, 1, 2))
        if best_margin is None:
            best_margin, best_pairs, best_state = margin, np.full(margin.shape, 1), state
            continue
        better = (best_state > 0) & ((state < best_state) | ((state == 2) & (best_state == 2) & (margin > best_margin)))
        best_margin = np.where(better, margin, best_margin)
        best_pairs = np.where(better, pairs, best_pairs)
        best_state = np.where(better, state, best_state)
    return best_pairs, best_margin


def main():
    mix = json.loads(subprocess.run([sys.argv[1]], capture_output=True, check=True, text=True).stdout)
    best = None
    for _ in range(3):
        begin = time.perf_counter()
        jobs, cache = Jobs(mix), {}
        answers = [judge(mix, jobs, fit, cache) for fit in mix["fits"]]
        spent = time.perf_counter() - begin
        best = spent if best is None else min(best, spent)
    worst, other_pairs = 0.0, 0
    for ours, (pairs, margin) in zip(mix["margins"], answers):
        own = np.array([m for _, m in ours])
        same = np.array([p for p, _ in ours]) == pairs
        other_pairs += int((~same).sum())
        worst = max(worst, float(np.max(np.abs(own - margin)[same] / np.maximum(own[same], 0.01))))
    one, two = mix["seconds"]
    cells = len(mix["jobs"]) * len(mix["fits"])
    print(f"{len(mix['jobs'])} jobs x {len(mix['fits'])} fits x {mix['radii']} radii")
    print(f"  NumPy {np.__version__}, one thread   {best * 1e3:8.1f} ms")
    print(f"  Holdback, one thread      {one * 1e3:8.1f} ms   {best / one:5.1f} times as fast   {one / cells * 1e9:.0f} ns a cell")
    print(f"  Holdback, two threads     {two * 1e3:8.1f} ms   {best / two:5.1f} times as fast")
    print(f"  least margins differ by {worst:.1e} at most; other pairs in {other_pairs} of {cells} cells")
    if worst > 1e-2 or other_pairs > cells / 1000:
        sys.exit("the two do not compute the same")


main()
