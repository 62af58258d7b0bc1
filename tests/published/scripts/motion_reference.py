#!/usr/bin/python3
"""States of two unwind stands by SciPy, for tests/published/motion_test.cpp.

Its own transcription of the equations at the top of src/holdback/dynamics/motion.hpp: web in a span is kept as its
strain here, not as its unstretched length, and energy is not kept at all; events are found by SciPy.

    python3 motion_reference.py > ../motion/states.txt
"""
import math
import sys

import numpy as np
import scipy
from scipy.integrate import solve_ivp

TIGHT = dict(rtol=1e-12, atol=1e-13)


def inertia(c, core, fixed, radius):
    return fixed + c * (radius**4 - core**4)


# ---- one span: a roll out of round that is braked to rest, throws slack, sticks, and is pulled loose --------------------

CORE, FIXED, C, CALIPER = 0.08, 0.5, math.pi / 2 * 800, 2e-4
RUNOUT, LENGTH, EA, WOUND = 5e-4, 3.0, 2e5, 30.0
K, P0, RATIO, DRAG, LAG = 1e-3, 1e4, 1.3, 1.5, 0.1


def tension(strain):
    return EA * max(strain, 0.0)


def span_rate(strain, grown, growth, entering, line):
    """d(strain)/dt from d/dt[L/(1 + e)] = entering − v/(1 + max(e, 0)), L = LENGTH + grown."""
    length = LENGTH + grown
    leaving = line / (1 + max(strain, 0.0))
    return (1 + strain) / length * (growth - (1 + strain) * (entering - leaving))


def one_span(t, y, line_speed, pressure_set, held):
    omega, theta, radius, pressure, strain = y
    turning = 0.0 if held else omega
    h = radius + RUNOUT * math.cos(theta)
    slope = -RUNOUT * math.sin(theta)
    bend = -RUNOUT * math.cos(theta)
    brake = K * max(pressure - P0, 0.0) + DRAG
    acceleration = 0.0 if held else (tension(strain) * h - brake) / inertia(C, CORE, FIXED, radius)
    entering = turning * (h + bend) / (1 + WOUND / EA)
    return [acceleration, turning, -CALIPER * turning / (2 * math.pi), (pressure_set - pressure) / LAG,
            span_rate(strain, slope, bend * turning, entering, line_speed(t))]


def run_one_span(out):
    v, t0 = 4.0, 0.0
    strain = 120 / EA
    radius = 0.35
    # steady start at theta = 0: h = R + e
    omega = v / (1 + strain) * (1 + WOUND / EA) / radius
    pressure = P0 + (120 * (radius + RUNOUT) - DRAG) / K
    y = np.array([omega, 0.0, radius, pressure, strain])
    held = False
    # (until, speed at its beginning, acceleration, set pressure)
    legs = [(2.0, 4.0, 0.0, pressure), (6.0, 4.0, -1.0, pressure), (8.0, 0.0, 0.0, pressure),
            (14.0, 0.0, 0.3, pressure)]
    for until, speed, acceleration, set_pressure in legs:
        begin = t0
        line = lambda t: speed + acceleration * (t - begin)
        while t0 < until - 1e-13:
            rest = lambda t, y, *_: y[0]
            rest.terminal, rest.direction = True, -1
            loose = lambda t, y, *_: tension(y[4]) * (y[2] + RUNOUT * math.cos(y[1])) - (
                RATIO * K * max(y[3] - P0, 0.0) + DRAG)
            loose.terminal, loose.direction = True, 1
            corner = lambda t, y, *_: y[4]
            corner.terminal, corner.direction = True, 0
            events = [loose if held else rest, corner]
            marks = [k / 2 for k in range(1, 29) if t0 + 1e-12 < k / 2 <= until]
            s = solve_ivp(one_span, (t0, until), y, "DOP853", args=(line, set_pressure, held), events=events,
                          t_eval=None, dense_output=True, max_step=0.02, **TIGHT)
            for mark in marks:
                if mark <= s.t[-1] + 1e-13:
                    out("one_span", mark, s.sol(mark), held)
            t0, y = s.t[-1], s.y[:, -1].copy()
            if s.status == 1:
                if len(s.t_events[0]):
                    out("one_span_" + ("loose" if held else "rest"), t0, y, held)
                    if held:
                        held = False
                    else:
                        y[0] = 0.0
                        held = tension(y[4]) * (y[2] + RUNOUT * math.cos(y[1])) <= RATIO * K * max(y[3] - P0, 0) + DRAG
                else:
                    out("one_span_" + ("taut" if one_span(t0, y, line, set_pressure, held)[4] > 0 else "slack"), t0, y,
                        held)
                    # over the corner: an event that was just found must not be found again
                    small = 1e-9
                    f = one_span(t0, y, line, set_pressure, held)
                    y = y + small * np.array(f)
                    t0 += small


# ---- a chain: four light idlers on short spans of a stiff web ---------------------------------------------------------

CHAIN_EA = 1e6
SPANS = [0.6, 0.4, 0.5, 0.4, 0.6]
R_IDLER, J_IDLER, DRAG_IDLER = 0.04, 4e-4, 0.04


def chain(t, y, line, set_pressure):
    omega, radius, pressure = y[0], y[1], y[2]
    strain, idlers = y[3:8], y[8:12]
    pull = [CHAIN_EA * max(e, 0.0) for e in strain]
    rate = np.zeros(12)
    rate[0] = (pull[0] * radius - K * max(pressure - P0, 0.0) - DRAG) / inertia(C, CORE, FIXED, radius)
    rate[1] = -CALIPER * omega / (2 * math.pi)
    rate[2] = (set_pressure - pressure) / LAG
    flow_in = omega * radius / (1 + WOUND / CHAIN_EA)
    for i in range(5):
        surface = line(t) if i == 4 else idlers[i] * R_IDLER
        leaving = surface / (1 + max(strain[i], 0.0))
        rate[3 + i] = -(1 + strain[i])**2 / SPANS[i] * (flow_in - leaving)
        flow_in = leaving
    for i in range(4):
        creep = 0.005 / R_IDLER
        drag = DRAG_IDLER * idlers[i] / math.hypot(idlers[i], creep)
        rate[8 + i] = ((pull[i + 1] - pull[i]) * R_IDLER - drag) / J_IDLER
    return rate


def run_chain(out):
    v, radius, first = 4.0, 0.35, 120.0
    strain = [(first + i * DRAG_IDLER / R_IDLER) / CHAIN_EA for i in range(5)]
    flow = v / (1 + strain[4])
    y = np.array([flow * (1 + WOUND / CHAIN_EA) / radius, radius, P0 + (first * radius - DRAG) / K] + strain +
                 [flow * (1 + strain[i]) / R_IDLER for i in range(4)])
    t0 = 0.0
    for until, speed, acceleration, set_pressure in [(0.5, 4.0, 0.0, y[2] + 5e3), (1.5, 4.0, -0.5, y[2] + 5e3),
                                                     (3.0, 3.5, 0.0, y[2])]:
        begin = t0
        line = lambda t: speed + acceleration * (t - begin)
        s = solve_ivp(chain, (t0, until), y, "Radau" if len(sys.argv) > 1 else "DOP853", args=(line, set_pressure),
                      dense_output=True, rtol=1e-12, atol=1e-14)
        for mark in [k / 4 for k in range(1, 13) if t0 + 1e-12 < k / 4 <= until]:
            w = s.sol(mark)
            print("chain", repr(mark), *(f"{x:.15g}" for x in (w[0], w[1], w[2], CHAIN_EA * w[3], CHAIN_EA * w[7],
                                                             w[8], w[11])))
        t0, y = until, s.y[:, -1].copy()


def show(name, t, y, held):
    slack = 0.0 if y[4] >= 0 else (LENGTH - RUNOUT * math.sin(y[1])) * (1 / (1 + y[4]) - 1)
    print(name, f"{t:.13g}", *(f"{x:.15g}" for x in (y[0], y[1], y[2], y[3], tension(y[4]), slack)), int(held))


print(f"# motion_reference.py, SciPy {scipy.__version__}, NumPy {np.__version__}, rtol 1e-12")
print("# one_span*: t [s], speed [rad/s], angle [rad], radius [m], pressure [Pa], tension [N], slack [m], held")
print("# chain: t [s], speed [rad/s], radius [m], pressure [Pa], first and last tension [N], first and last idler [rad/s]")
run_one_span(show)
run_chain(None)
