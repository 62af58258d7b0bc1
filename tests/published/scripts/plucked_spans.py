#!/usr/bin/python3
"""Recordings of plucked spans whose frequency is known, for the tests of files/wav and field/pluck. NumPy, seed 20240607.
Writes the .wav files into the folder named, tests/support/sounds. Deterministic.

span-47.wav       16 bits, mono, 8000/s: partials 1, 2.01, 3.03 of 47.4152026132 Hz (check T-3), each dying away, noise
second-loud.wav   24 bits, stereo, 11025/s: 31.25 Hz, its second partial four times as loud, a web of 40 g/m², 0.5 m wide,
                  over 0.5 m with the air it carries, so that the partials are 1 : 2.46 : 4.22; 297.1 N/m
hum.wav           8 bits, mono, 4000/s: 50 Hz and 150 Hz for a second, as near a motor
float.wav         32-bit float, mono, 4000/s: 20.8333 Hz (check T-3), with a chunk of remarks before the sound
first-missing.wav 16 bits, mono, 8000/s: the same web, its second, third and fourth partial alone
ramp-*.wav        four samples each in every form that is read: 0, 1/2, -1/2, -1
"""
import struct
import sys
from pathlib import Path

import numpy

RNG = numpy.random.Generator(numpy.random.PCG64(20240607))


def chunk(name, body):
    return name + struct.pack("<I", len(body)) + body + (b"\0" if len(body) % 2 else b"")


def wav(path, rate, columns, form, before=b""):
    """columns: one array a channel, full scale 1. form: 8, 16, 24, 32 or "float32", "float64"."""
    frames = numpy.stack(columns, axis=1)
    if isinstance(form, int):
        code, bits = 1, form
        if form == 8:
            data = numpy.clip(numpy.round(frames * 128 + 128), 0, 255).astype("<u1").tobytes()
        else:
            top = 2 ** (form - 1)
            whole = numpy.clip(numpy.round(frames * top), -top, top - 1).astype("<i4")
            raw = whole.astype("<i4").tobytes()
            size = form // 8
            data = b"".join(raw[i : i + size] for i in range(0, len(raw), 4))
    else:
        code, bits = 3, int(form[5:])
        data = frames.astype("<f4" if bits == 32 else "<f8").tobytes()
    frame = len(columns) * bits // 8
    head = struct.pack("<HHIIHH", code, len(columns), rate, rate * frame, frame, bits)
    body = b"WAVE" + chunk(b"fmt ", head) + before + chunk(b"data", data)
    Path(path).write_bytes(b"RIFF" + struct.pack("<I", len(body)) + body)


def ringing(rate, seconds, tap, partials, noise):
    """Quiet, a tap, then partials (frequency, level, decay 1/s) that die away."""
    t = numpy.arange(int(rate * seconds)) / rate
    after = t >= tap
    sound = noise * RNG.standard_normal(t.size)
    sound[(t >= tap) & (t < tap + 0.01)] += 0.5 * RNG.standard_normal(int(numpy.sum((t >= tap) & (t < tap + 0.01))))
    for frequency, level, decay in partials:
        sound += after * level * numpy.exp(-decay * (t - tap)) * numpy.sin(2 * numpy.pi * frequency * (t - tap))
    return sound


# Air that a web as wide as its span carries, over density and width, for the first partials: carried(n pi) of
# carried_air.py.
CARRIED = {1: 0.440397, 2: 0.267703, 3: 0.189692, 4: 0.146490}


def partial(n, first):
    """Frequency of the n-th partial of 40 g/m² over 0.5 m, 0.5 m wide, in air of 1.2 kg/m³."""
    def mass(k):
        return 0.040 + 1.2 * 0.5 * CARRIED[k]
    return n * first * (mass(1) / mass(n)) ** 0.5


def main(folder):
    first = 47.4152026132
    wav(folder / "span-47.wav", 8000, [ringing(8000, 2.0, 0.2, [(first, 0.3, 1.5), (2.01 * first, 0.12, 3),
                                                                 (3.03 * first, 0.06, 5)], 0.002)], 16)
    loud = [(31.25, 0.06, 1), (partial(2, 31.25), 0.24, 2), (partial(3, 31.25), 0.03, 3)]
    both = [ringing(11025, 1.4, 0.1, loud, 0.001) for _ in range(2)]
    wav(folder / "second-loud.wav", 11025, both, 24)
    t = numpy.arange(4000) / 4000
    hum = 0.4 * numpy.sin(2 * numpy.pi * 50 * t) + 0.1 * numpy.sin(2 * numpy.pi * 150 * t)
    wav(folder / "hum.wav", 4000, [hum], 8)
    remark = chunk(b"LIST", b"INFOICMT" + struct.pack("<I", 8) + b"invented")
    wav(folder / "float.wav", 4000, [ringing(4000, 2.5, 0.1, [(125 / 6, 0.2, 1.0), (41.9, 0.1, 2)], 0.001)], "float32",
        remark)
    above = [(partial(n, 31.25), level, 1.5) for n, level in [(2, 0.2), (3, 0.1), (4, 0.08)]]
    wav(folder / "first-missing.wav", 8000, [ringing(8000, 1.5, 0.1, above, 0.001)], 16)
    ramp = numpy.array([0, 0.5, -0.5, -1.0])
    for form in (8, 16, 24, 32, "float32", "float64"):
        wav(folder / f"ramp-{form}.wav", 8000, [ramp], form)


if __name__ == "__main__":
    target = Path(sys.argv[1])
    target.mkdir(parents=True, exist_ok=True)
    main(target)
