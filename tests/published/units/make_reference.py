#!/usr/bin/env python3
"""Fills in the number columns of units.txt with GNU units (Debian: units) and UDUNITS-2 (Debian: udunits-bin).

Usage: tests/published/units/make_reference.py    rewrites units.txt beside this script; comments and order stay.
"""

import re
import subprocess
import sys
from pathlib import Path

TABLE = Path(__file__).with_name("units.txt")

# Coherent SI unit of each kind: spelled for GNU units, then for UDUNITS-2.
TARGETS = {
    "ratio": ("1", "1"),
    "short_length": ("m", "m"),
    "caliper": ("m", "m"),
    "web_length": ("m", "m"),
    "area": ("m^2", "m2"),
    "volume": ("m^3", "m3"),
    "speed": ("m/s", "m/s"),
    "acceleration": ("m/s^2", "m/s2"),
    "mass": ("kg", "kg"),
    "basis_weight": ("kg/m^2", "kg/m2"),
    "density": ("kg/m^3", "kg/m3"),
    "force": ("N", "N"),
    "tension_per_width": ("N/m", "N/m"),
    "stress": ("Pa", "Pa"),
    "modulus": ("Pa", "Pa"),
    "pressure": ("Pa", "Pa"),
    "torque": ("N m", "N.m"),
    "torque_per_pressure": ("N m/Pa", "N.m/Pa"),
    "inertia": ("kg m^2", "kg.m2"),
    "power": ("W", "W"),
    "energy": ("J", "J"),
    "temperature": ("K", "K"),
    "temperature_difference": ("K", "K"),
    "duration": ("s", "s"),
    "running_time": ("s", "s"),
    "calendar_time": ("s", "s"),
    "rotational_speed": ("radian/s", "rad/s"),
    "angle": ("radian", "rad"),
    "turns": ("radian", "rad"),
    "specific_heat": ("J/(kg K)", "J/(kg.K)"),
    "conductance": ("W/K", "W/K"),
    "thermal_conductivity": ("W/(m K)", "W/(m K)"),
    "fade": ("1/K", "1/K"),
    "wear_rate": ("m^3/J", "m3/J"),
    "pressure_speed": ("Pa m/s", "Pa.m/s"),
    "friction_slope": ("s/m", "s/m"),
    "damping": ("N s/m", "N.s/m"),
    "frequency": ("radian/s", "rad/s"),
}


def output(*command):
    done = subprocess.run(command, capture_output=True, text=True, stdin=subprocess.DEVNULL)
    return done.stdout.strip()


def gnu(expression, target):
    answer = output("units", "-t", "-o", "%.16g", expression, target)
    if not re.fullmatch(r"[-+.0-9e]+", answer):
        sys.exit(f"GNU units on {expression!r} in {target!r}: {answer}")
    return answer


def udunits(expression, target):
    if expression == "-":
        return "-"
    answer = output("udunits2", "-H", expression, "-W", target)
    # "    1 lbf/in = 175.127 N/m"; a multiple such as "32 degF" is repeated in brackets or as it stands
    found = re.search(r" = ([-+.0-9e]+) ", answer.splitlines()[0] if answer else "")
    if not found:
        sys.exit(f"UDUNITS-2 on {expression!r} in {target!r}: {answer}")
    return found.group(1)


def versions():
    packages = output("dpkg-query", "-W", "-f=${Package} ${Version}, ", "units", "udunits-bin").rstrip(", ")
    return f"# versions: {output('units', '--version').splitlines()[0]}; Debian packages {packages}"


def filled(line):
    if line.startswith("# versions:"):
        return versions()
    if not line or line.startswith("#"):
        return line
    text, kind, gnu_text, _, ud_text, _, mark = line.split(" | ")
    for_gnu, for_udunits = TARGETS[kind]
    return " | ".join([text, kind, gnu_text, gnu(gnu_text, for_gnu), ud_text, udunits(ud_text, for_udunits), mark])


if __name__ == "__main__":
    lines = TABLE.read_text(encoding="utf-8").splitlines()
    TABLE.write_text("\n".join(filled(line) for line in lines) + "\n", encoding="utf-8")
