"""Writes made-up pieces as tracker modules and plays them with libopenmpt.

Format: FastTracker 2 "XM" 1.04 as published with that program; every note, sample and pattern is ours.
"""
# ruff: noqa: C901, PLR0912, PLR0915, RUF046  # one pass writes one file format

import ctypes
import struct
from typing import NamedTuple

import numpy as np
from compose import Piece, swung

RATE = 22050
Rng = np.random.Generator


class Sample(NamedTuple):
    """A sound at a rate, of a pitch, with a loop (start, length) in samples, or none."""

    data: np.ndarray
    rate: float
    pitch: float
    loop: tuple[int, int] | None = None
    bounce: bool = False


# ---------------------------------------------------------------- sounds
def wave(rng: Rng) -> Sample:
    """One period or so of a chip-like tone, looped."""
    n = int(rng.choice([16, 32, 64]))
    t = np.arange(n) / n
    kind = int(rng.integers(0, 6))
    if kind == 0:
        y = np.where(t < rng.choice([0.5, 0.25, 0.125]), 1.0, -1.0)
    elif kind == 1:
        y = 2 * t - 1
    elif kind == 2:
        y = 4 * np.abs(t - 0.5) - 1
    elif kind == 3:
        y = np.sin(2 * np.pi * t)
    else:
        y = sum(
            rng.normal() / k * np.sin(2 * np.pi * k * t + rng.uniform(0, 6))
            for k in range(1, n // 3)
        )
    y = np.asarray(y) - np.mean(y)
    y = y / (np.abs(y).max() + 1e-9) * 0.8
    return Sample(y, n * 261.6256, 60.0, (0, n))


def tone(rng: Rng, role: str) -> Sample:
    """A longer synthetic tone: plucked, frequency-modulated, detuned or filtered."""
    rate, f = 16000.0, 130.8128 if role == "bass" else 261.6256
    seconds = 0.9 if role in {"bass", "arp", "lead"} else 2.2
    t = np.arange(int(seconds * rate)) / rate
    kind = int(rng.integers(0, 4))
    if kind == 0:  # plucked string
        period = int(rate / f)
        y = np.zeros(len(t))
        y[:period] = rng.uniform(-1, 1, period)
        soft = rng.uniform(0.4, 0.6)
        for i in range(1, len(t) // period):
            a = y[(i - 1) * period : i * period]
            y[i * period : (i + 1) * period] = 0.994 * (soft * a + (1 - soft) * np.roll(a, 1))
        f = rate / period
    elif kind == 1:
        depth = rng.uniform(0.5, 5) * np.exp(-t * rng.uniform(1, 8))
        y = np.sin(
            2 * np.pi * f * t + depth * np.sin(2 * np.pi * f * rng.choice([1, 2, 3, 0.5, 3.5]) * t)
        )
        y *= np.exp(-t * rng.uniform(0.3, 5))
    elif kind == 2:
        y = sum(2 * ((f * (1 + c) * t + rng.random()) % 1) - 1 for c in rng.normal(0, 0.004, 3))
        dark = np.exp(-np.arange(64) / rng.uniform(1, 12))
        y = np.convolve(y, dark / dark.sum(), mode="same") * np.exp(-t * rng.uniform(0.1, 4))
    else:
        y = sum(
            np.sin(2 * np.pi * f * k * t)
            / k ** rng.uniform(0.6, 2)
            * np.exp(-t * k * rng.uniform(0.2, 1.5))
            for k in range(1, 12)
        )
    if role == "pad":
        y = y * np.minimum(1, t / rng.uniform(0.02, 0.3))
    y = y / (np.abs(y).max() + 1e-9) * 0.85
    if role == "pad" or rng.random() < 0.25:
        half = len(y) // 2
        return Sample(y, rate, 12 * np.log2(f / 261.6256) + 60, (half, len(y) - half), bounce=True)
    y[-400:] *= np.linspace(1, 0, 400)
    return Sample(y, rate, 12 * np.log2(f / 261.6256) + 60)


def drum(rng: Rng, key: int) -> Sample:
    """A synthetic stroke of a General MIDI drum key."""
    rate = 22050.0
    noise = rng.normal(0, 1, 22050)
    t = np.arange(22050) / rate
    if key in {35, 36}:
        bend = rng.uniform(40, 60) + rng.uniform(60, 300) * np.exp(-t * rng.uniform(20, 60))
        y = np.sin(2 * np.pi * np.cumsum(bend) / rate) * np.exp(-t * rng.uniform(7, 25))
        y += rng.uniform(0, 0.3) * noise * np.exp(-t * 200)
    elif key in {38, 40, 39, 37}:
        y = noise * np.exp(-t * rng.uniform(10, 35)) * rng.uniform(0.4, 1)
        y += (
            np.sin(2 * np.pi * rng.uniform(150, 260) * t)
            * np.exp(-t * rng.uniform(15, 40))
            * rng.uniform(0, 1)
        )
        if key == 37:
            y = np.sin(2 * np.pi * rng.uniform(400, 1800) * t) * np.exp(
                -t * 90
            ) + 0.2 * noise * np.exp(-t * 200)
    elif key in {41, 43, 45, 47, 48, 50, 63, 64}:
        f = 70 * 2 ** ((key - 41) / 9) * rng.uniform(0.9, 1.4)
        y = np.sin(2 * np.pi * np.cumsum(f * (1 + 0.5 * np.exp(-t * 20))) / rate) * np.exp(
            -t * rng.uniform(6, 18)
        )
    else:
        slow = {46: 8, 49: 3, 51: 5, 70: 60, 54: 25}.get(key, 45)
        y = np.diff(noise, n=2, prepend=[0, 0]) * np.exp(-t * slow * rng.uniform(0.6, 1.6))
        if key in {56, 75}:
            y = np.sign(np.sin(2 * np.pi * rng.uniform(500, 2400) * t)) * np.exp(-t * 40)
    y = y[: int(rate * (0.9 if key == 49 else 0.4))]
    y = y / (np.abs(y).max() + 1e-9) * 0.9
    y[-200:] *= np.linspace(1, 0, 200)
    return Sample(y, rate, 60.0)


# ---------------------------------------------------------------- the file
def _instrument(sample: Sample, volume: int) -> bytes:
    sixteen = np.clip(sample.data * 32767, -32768, 32767).astype(np.int16)
    delta = np.diff(sixteen, prepend=np.int16(0)).astype("<i2").tobytes()
    shift = 12 * np.log2(sample.rate / 8363.0) + 60 - sample.pitch
    relative = round(float(shift))
    fine = int(np.clip(round((shift - relative) * 128), -128, 127))
    relative = int(np.clip(relative, -96, 95))
    start, length = sample.loop or (0, 0)
    kind = 0x10 | ((2 if sample.bounce else 1) if sample.loop else 0)
    head = struct.pack("<I22sBH", 263, b"", 0, 1)
    head += (
        struct.pack("<I96s48s48s", 40, bytes(96), bytes(48), bytes(48))
        + bytes(14)
        + struct.pack("<H", 0)
        + bytes(22)
    )
    head = head[:263].ljust(263, b"\0")
    header = struct.pack(
        "<IIIBbBBbB22s",
        len(delta),
        start * 2,
        length * 2,
        volume,
        fine,
        kind,
        128,
        relative,
        0,
        b"",
    )
    return head + header + delta


class Module:
    """Patterns of cells (note, instrument, volume, effect, parameter) and instruments."""

    def __init__(self, channels: int, speed: int, tempo: int) -> None:
        self.channels, self.speed, self.tempo = channels, speed, tempo
        self.patterns: list[np.ndarray] = []
        self.instruments: list[bytes] = []

    def add(self, sample: Sample, volume: int) -> int:
        """Number of a new instrument."""
        self.instruments.append(_instrument(sample, volume))
        return len(self.instruments)

    def content(self) -> bytes:
        """The file."""
        n = len(self.patterns)
        order = bytes(range(n)).ljust(256, b"\0")
        out = b"Extended Module: " + bytes(20) + b"\x1a" + bytes(20) + struct.pack("<H", 0x0104)
        out += struct.pack(
            "<IHHHHHHHH",
            276,
            n,
            0,
            self.channels,
            n,
            len(self.instruments),
            1,
            self.speed,
            self.tempo,
        )
        out += order
        for cells in self.patterns:
            data = cells.astype(np.uint8).tobytes()
            out += struct.pack("<IBHH", 9, 0, len(cells), len(data)) + data
        return out + b"".join(self.instruments)


def module_of(piece: Piece, rng: Rng, bank: dict) -> tuple[bytes, np.ndarray]:
    """The piece as a module, and the seconds of each beat from bar 1 on.

    `bank` holds sampled instruments by role and drum key; half of the sounds are synthetic.
    """
    per_beat = (
        (8 if rng.random() < 0.22 else 4) if piece.division == 2 else int(rng.choice([3, 6, 12]))
    )
    row = 60.0 / piece.bpm / per_beat
    speeds = [s for s in range(2, 13) if 60 <= round(s * 2.5 / row) <= 250]
    weights = [np.exp(-abs(np.log(round(s * 2.5 / row) / 125)) * 3) for s in speeds]
    speed = int(rng.choice(speeds, p=np.array(weights) / sum(weights)))
    tempo = int(round(speed * 2.5 / row))
    swing = piece.swing > 0 and speed >= 3
    span = (
        per_beat // 4 if rng.random() < 0.5 and per_beat >= 4 else per_beat // 2
    )  # rows that are long, then short
    span = max(span, 1)
    longer = speed + 1
    shorter = speed - 1

    total = piece.beats * per_beat
    rows_speed = np.full(total, speed)
    if swing and piece.division == 2:
        rows_speed = np.where((np.arange(total) // span) % 2 == 0, longer, shorter)
    tick = (RATE * 5 // (tempo * 2)) / RATE  # the player's ticks are whole samples
    starts = np.concatenate([[0], np.cumsum(rows_speed * tick)])
    times = starts[:-1:per_beat]

    lines: dict[str, int] = {}
    roles = sorted({n.role for n in piece.notes})
    keys = sorted({h.key for h in piece.hits})
    poly = {"chord": int(rng.integers(1, 4)), "pad": 3}
    column = 1  # channel 0 carries speeds
    for role in roles:
        lines[role] = column
        column += poly.get(role, 1)
    echo = {
        r: column + i
        for i, r in enumerate(x for x in roles if x in {"lead", "arp"} and rng.random() < 0.3)
    }
    column += len(echo)
    groups: dict[int, int] = {}
    share = rng.random() < 0.3  # few channels: strokes cut each other
    for i, key in enumerate(keys):
        groups[key] = column + (i % 2 if share else i)
    column += min(2, len(keys)) if share else len(keys)
    module = Module(column + column % 2, speed, tempo)
    chip = rng.random() < 0.3
    number, strokes = {}, {}
    for role in roles:
        kind = rng.random()
        sample = (
            wave(rng)
            if chip or kind < 0.12
            else tone(rng, role)
            if kind < 0.5
            else bank.get(role, bank["lead"])[int(rng.integers(len(bank.get(role, bank["lead"]))))]
        )
        loud = {"bass": 46, "lead": 40, "chord": 28, "arp": 30, "pad": 24}.get(
            role, 30
        ) * rng.uniform(0.55, 1.3)
        number[role] = module.add(sample, int(np.clip(loud * (0.6 if chip else 1), 6, 64)))
    for key in keys:
        sample = (
            drum(rng, key)
            if chip or rng.random() < 0.5 or key not in bank["drums"]
            else bank["drums"][key]
        )
        strokes[key] = module.add(
            sample, int(np.clip((56 if key < 41 else 34) * rng.uniform(0.5, 1.2), 6, 64))
        )

    grid = np.zeros((total + 1, module.channels, 5), np.uint8)
    ornament = rng.random() < 0.4
    broken = bool(rng.random() < 0.5)  # chords as rapid arpeggios on one channel
    used: dict[tuple[int, str], int] = {}
    for note in sorted(piece.notes, key=lambda n: (n.start, n.pitch)):
        r = round(note.start * per_beat)
        if not 0 <= r < total:
            continue
        voice = used.get((r, note.role), 0)
        used[r, note.role] = voice + 1
        width = poly.get(note.role, 1)
        if voice >= width:
            if broken and note.role == "chord" and width == 1:
                cell = grid[r, lines[note.role]]
                root = int(cell[0]) + 11
                step = (note.pitch - root) & 15
                cell[3], cell[4] = 0, (step << 4) if voice == 1 else (int(cell[4]) & 0xF0) | step
            continue
        pitch = int(np.clip(note.pitch - 11, 1, 96))
        volume = 0x10 + int(np.clip(note.velocity / 127 * 64, 4, 64))
        effect, parameter = 0, 0
        if ornament and note.role == "lead" and note.length > 0.7:
            effect, parameter = 4, int(rng.choice([0x43, 0x35, 0x52]))
        elif ornament and note.role in {"bass", "lead"} and rng.random() < 0.05:
            effect, parameter = 0x0E, 0x90 | int(rng.integers(2, 4))
        line = lines[note.role] + voice
        grid[r, line] = (pitch, number[note.role], volume, effect, parameter)
        end = round((note.start + note.length) * per_beat)
        if r < end < total and grid[end, line, 0] == 0:
            grid[end, line, 0] = 97
        if note.role in echo and r + 3 < total:
            grid[r + 3, echo[note.role]] = (
                pitch,
                number[note.role],
                0x10 + (volume - 0x10) // 3,
                0,
                0,
            )
    for hit in piece.hits:
        r = round(hit.start * per_beat)
        if 0 <= r < total:
            grid[r, groups[hit.key]] = (
                49,
                strokes[hit.key],
                0x10 + int(np.clip(hit.velocity / 127 * 64, 2, 64)),
                0,
                0,
            )
    if swing and piece.division == 2:
        for r in range(0, total, span):
            grid[r, 0, 3:] = (0x0F, int(rows_speed[r]))
    bar = piece.metre * per_beat
    length = bar * max(1, min(4, 128 // bar))
    while length > 256:
        length //= 2
    module.patterns = [grid[a : min(a + length, total)] for a in range(0, total, length)][:250]
    return module.content(), times


class Player:
    """libopenmpt, by its C interface."""

    def __init__(self, library: str = "libopenmpt.so.0") -> None:
        self.lib = lib = ctypes.CDLL(library)
        lib.openmpt_module_create_from_memory2.restype = ctypes.c_void_p
        lib.openmpt_module_read_float_mono.restype = ctypes.c_size_t
        lib.openmpt_module_read_float_mono.argtypes = [
            ctypes.c_void_p,
            ctypes.c_int32,
            ctypes.c_size_t,
            ctypes.c_void_p,
        ]
        lib.openmpt_module_set_render_param.argtypes = [
            ctypes.c_void_p,
            ctypes.c_int,
            ctypes.c_int32,
        ]
        lib.openmpt_module_destroy.argtypes = [ctypes.c_void_p]
        self.silent = ctypes.CFUNCTYPE(None, ctypes.c_char_p, ctypes.c_void_p)(
            lambda _text, _user: None
        )

    def render(self, content: bytes, seconds: float, taps: int) -> np.ndarray:
        """Mono samples at `RATE`; `taps` is the length of the interpolation filter."""
        mod = self.lib.openmpt_module_create_from_memory2(
            content, ctypes.c_size_t(len(content)), self.silent, None, None, None, None, None, None
        )
        if not mod:
            raise ValueError("module not understood")
        handle = ctypes.c_void_p(mod)
        self.lib.openmpt_module_set_render_param(handle, 3, taps)
        out = np.zeros(int(seconds * RATE), np.float32)
        got = self.lib.openmpt_module_read_float_mono(
            handle, RATE, len(out), out.ctypes.data_as(ctypes.c_void_p)
        )
        self.lib.openmpt_module_destroy(handle)
        return out[:got]


__all__ = ["Module", "Player", "Sample", "drum", "module_of", "swung", "tone", "wave"]
