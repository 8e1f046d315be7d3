"""The sound of one note of each instrument, computed from nothing but numbers.

Every instrument answers with samples at `RATE`, full scale 1, mono of shape (n,) or stereo of
shape (n, 2). Pitches are MIDI note numbers, lengths seconds. Noise is drawn from generators
seeded by the instrument's name and the take, so that the same note always sounds the same.

Source of the laws: partials of an ideal plucked string fall as sin(k pi p) / k^2 for a pluck at
the fraction p, and the modes of an ideal circular membrane stand as 1 : 1.593 : 2.136 : 2.296
(N. H. Fletcher and T. D. Rossing, The Physics of Musical Instruments, 1998, sections 2.8 and
3.4; from memory).
"""

import zlib
from collections.abc import Callable
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray
from scipy import signal

RATE = 44_100  # [Hz]
SEED = 20_260
TAKES = 4  # takes of every note that differ by chance, used in turn
TABLE = 2048  # samples in one period of a wavetable

Sound = NDArray[np.float64]
Instrument = Callable[[int, float, int], Sound]  # pitch, seconds, take


def hertz_from_pitch(pitch: float) -> float:
    """Frequency of a MIDI note number in equal temperament, A4 = note 69 = 440 Hz (ISO 16)."""
    return float(440.0 * 2.0 ** ((pitch - 69.0) / 12.0))


def clock(seconds: float) -> Sound:
    """Times of the samples of a sound of this length."""
    return np.arange(max(1, round(seconds * RATE))) / RATE


def noise(name: str, take: int, count: int) -> Sound:
    """White noise of unit variance, the same on every call with the same name and take."""
    rng = np.random.default_rng((SEED, zlib.crc32(name.encode()), take))
    return rng.standard_normal(count)


def filtered(sound: Sound, kind: str, corner: float | tuple[float, float], order: int = 2) -> Sound:
    """Butterworth-filtered sound; corner in Hz."""
    sections = signal.butter(order, corner, kind, fs=RATE, output="sos")
    return np.asarray(signal.sosfilt(sections, sound, axis=0), dtype=np.float64)


def faded(sound: Sound, attack: float, release: float) -> Sound:
    """Sound with raised-cosine ends of these lengths [s], so that it neither starts nor stops with a click."""
    shaped = sound.copy()
    for seconds, backwards in ((attack, False), (release, True)):
        count = min(len(shaped), round(seconds * RATE))
        ramp = 0.5 - 0.5 * np.cos(np.pi * np.arange(count) / max(count, 1))
        part = shaped[::-1][:count] if backwards else shaped[:count]
        part *= ramp if shaped.ndim == 1 else ramp[:, None]
    return shaped


@lru_cache(maxsize=256)
def wavetable(hertz: float, tilt: float, even: float, top: float) -> Sound:
    """One period, band-limited to `top` Hz: partials fall as 1/k**tilt, the even ones scaled."""
    k = np.arange(1, max(2, int(top / hertz)) + 1)
    level = k**-tilt * np.where(k % 2 == 0, even, 1.0) * np.cos(0.5 * np.pi * k / (k[-1] + 1))
    angle = 2 * np.pi * np.outer(np.arange(TABLE + 1) / TABLE, k)
    table = np.asarray(np.sin(angle) @ level)
    return np.asarray(table / np.abs(table).max())


def oscillate(table: Sound, hertz: Sound, start: float = 0.0) -> Sound:
    """The wavetable played at a frequency that may change from sample to sample."""
    turns = start + np.cumsum(hertz) / RATE
    return np.interp((turns % 1.0) * TABLE, np.arange(TABLE + 1), table)


# Drums. Pitch and length are ignored except where a drum is tuned.


def kick(_pitch: int, _seconds: float, take: int) -> Sound:
    """A bass drum: a falling sine, pushed, with a soft beater."""
    t = clock(0.42)
    phase = 2 * np.pi * np.cumsum(47.0 + 125.0 * np.exp(-t / 0.026)) / RATE
    body = np.tanh(1.7 * np.sin(phase) * np.exp(-t / 0.15))
    beater = filtered(noise("kick", take, len(t)), "bandpass", (1500, 5000)) * np.exp(-t / 0.004)
    return faded(body + 0.35 * beater, 0.0008, 0.05)


def snare(_pitch: int, _seconds: float, take: int) -> Sound:
    """A snare drum: two shell modes under a rattle."""
    t = clock(0.34)
    shell = np.sin(2 * np.pi * 186 * t) + 0.6 * np.sin(2 * np.pi * 331 * t + 0.4)
    rattle = filtered(noise("snare", take, len(t)), "bandpass", (1400, 9500))
    return faded(
        0.6 * shell * np.exp(-t / 0.055) + 0.55 * rattle * np.exp(-t / 0.095), 0.0005, 0.06
    )


def clap(_pitch: int, _seconds: float, take: int) -> Sound:
    """Several hands, nearly together."""
    t = clock(0.26)
    rough = filtered(noise("clap", take, len(t)), "bandpass", (850, 3800))
    late = t[:, None] - np.array([0.0, 0.010, 0.021])
    hands = np.where(late >= 0, np.exp(-np.maximum(late, 0) / 0.006), 0).sum(axis=1)
    tail = np.where(t > 0.021, 0.6 * np.exp(-np.maximum(t - 0.021, 0) / 0.07), 0)
    return faded(rough * (hands + tail), 0.0005, 0.05)


def closed_hat(_pitch: int, _seconds: float, take: int) -> Sound:
    """A closed hi-hat."""
    t = clock(0.09)
    hiss = filtered(noise("closed hat", take, len(t)), "highpass", 7200, 3)
    return faded(hiss * np.exp(-t / 0.02), 0.0006, 0.02)


def open_hat(_pitch: int, _seconds: float, take: int) -> Sound:
    """An open hi-hat, choked before the next beat."""
    t = clock(0.26)
    hiss = filtered(noise("open hat", take, len(t)), "highpass", 6200, 3)
    return faded(hiss * np.exp(-t / 0.13), 0.0006, 0.07)


def shaker(_pitch: int, _seconds: float, take: int) -> Sound:
    """Seeds in a gourd: soft attack, short."""
    t = clock(0.11)
    seeds = filtered(noise("shaker", take, len(t)), "bandpass", (4200, 10500))
    return faded(seeds * np.exp(-(((t - 0.014) / 0.012) ** 2)), 0.002, 0.02)


def crash(_pitch: int, _seconds: float, take: int) -> Sound:
    """A crash cymbal, wide."""
    t = clock(2.6)
    spread = np.stack(
        [noise("crash left", take, len(t)), noise("crash right", take, len(t))], axis=1
    )
    bright = filtered(spread, "bandpass", (3200, 13500)) * np.exp(-t / 0.62)[:, None]
    return faded(0.6 * bright, 0.002, 0.5)


def swell(_pitch: int, seconds: float, take: int) -> Sound:
    """A cymbal played backwards, so that it leads into the next section."""
    t = clock(seconds)
    spread = np.stack(
        [noise("swell left", take, len(t)), noise("swell right", take, len(t))], axis=1
    )
    hiss = filtered(spread, "bandpass", (2600, 11000))
    return faded(0.6 * hiss * ((t / seconds) ** 3)[:, None], 0.01, 0.03)


def tom(pitch: int, _seconds: float, take: int) -> Sound:
    """A tuned tom: membrane modes whose pitch sags as the skin relaxes."""
    t = clock(0.5)
    sag = 1.0 + 0.35 * np.exp(-t / 0.03)
    phase = 2 * np.pi * np.cumsum(hertz_from_pitch(pitch) * sag) / RATE
    body = np.sin(phase) * np.exp(-t / 0.17) + 0.35 * np.sin(1.593 * phase) * np.exp(-t / 0.07)
    stick = filtered(noise("tom", take, len(t)), "bandpass", (700, 4000)) * np.exp(-t / 0.008)
    return faded(np.tanh(1.3 * body + 0.3 * stick), 0.0008, 0.08)


def frame_low(_pitch: int, _seconds: float, take: int) -> Sound:
    """The open stroke in the middle of a large frame drum."""
    t = clock(0.75)
    base = 2 * np.pi * np.cumsum(68.0 + 14.0 * np.exp(-t / 0.06)) / RATE
    modes = ((1.0, 1.0, 0.24), (1.593, 0.45, 0.13), (2.136, 0.25, 0.08), (2.296, 0.2, 0.06))
    skin = sum(level * np.sin(ratio * base) * np.exp(-t / decay) for ratio, level, decay in modes)
    hand = filtered(noise("frame low", take, len(t)), "lowpass", 1800) * np.exp(-t / 0.012)
    return faded(np.asarray(skin) + 0.8 * hand, 0.001, 0.1)


def frame_rim(_pitch: int, _seconds: float, take: int) -> Sound:
    """The snapped stroke at the rim of the frame drum."""
    t = clock(0.16)
    ring = sum(np.sin(2 * np.pi * hertz * t) for hertz in (412.0, 655.0, 1190.0))
    slap = filtered(noise("frame rim", take, len(t)), "bandpass", (900, 6500)) * np.exp(-t / 0.014)
    return faded(0.28 * np.asarray(ring) * np.exp(-t / 0.03) + 0.9 * slap, 0.0006, 0.04)


# Tuned instruments.


def pluck(pitch: int, seconds: float, take: int) -> Sound:
    """A pair of wire strings, struck near one end and slightly apart in pitch."""
    t = clock(min(seconds + 0.9, 2.8))
    base = hertz_from_pitch(pitch)
    k = np.arange(1, min(26, int(9500 / base)) + 1)
    level = np.sin(np.pi * k * (0.135 + 0.01 * take)) / k**1.55
    decay = 0.95 * (330.0 / base) ** 0.5 / (1.0 + 0.16 * k + 0.012 * k**2)
    stretched = base * k * np.sqrt(1 + 1.2e-4 * k**2)  # stiffness, as wire has
    pair = np.zeros((2, len(t)))
    for number, detune in enumerate((-1.6, 1.9)):
        tuned = 2 * np.pi * stretched * 2 ** (detune / 1200)
        for angular, loud, fall in zip(tuned, level, decay, strict=True):
            heard = t[: round(7 * fall * RATE)]  # beyond, the partial is 60 dB down
            ring = np.sin(angular * heard + 0.7 * take) * np.exp(-heard / fall)
            pair[number, : len(heard)] += loud * ring
    wide = np.stack([0.65 * pair[0] + 0.35 * pair[1], 0.35 * pair[0] + 0.65 * pair[1]], axis=1)
    hammer = filtered(noise("pluck", take, len(t)), "bandpass", (1800, 6000)) * np.exp(-t / 0.005)
    return faded(wide + 0.06 * hammer[:, None], 0.001, 0.25)


def bass(pitch: int, seconds: float, take: int) -> Sound:
    """A round electric bass: dark under a bright start that dies away."""
    t = clock(seconds)
    hertz = np.full(len(t), hertz_from_pitch(pitch))
    dark = oscillate(wavetable(float(hertz[0]), 1.9, 0.8, 900.0), hertz)
    bright = oscillate(wavetable(float(hertz[0]), 1.05, 0.9, 2600.0), hertz)
    tone = dark + 0.55 * bright * np.exp(-t / 0.11)
    grip = 0.97 + 0.01 * take
    return faded(np.tanh(1.25 * grip * tone * np.exp(-t / 1.6)), 0.004, min(0.06, seconds / 3))


def drone(pitch: int, seconds: float, _take: int) -> Sound:
    """A bowed low string that swells and breathes."""
    t = clock(seconds)
    sides = []
    for cents in (-5.0, 4.0):
        hertz = hertz_from_pitch(pitch + cents / 100) * (1 + 0.0012 * np.sin(2 * np.pi * 0.31 * t))
        sides.append(oscillate(wavetable(float(hertz[0]), 1.35, 0.75, 2200.0), hertz))
    breath = 0.85 + 0.15 * np.sin(2 * np.pi * 0.42 * t)
    return faded(
        np.stack(sides, axis=1) * breath[:, None], min(0.5, seconds / 3), min(0.5, seconds / 3)
    )


def pad(pitch: int, seconds: float, _take: int) -> Sound:
    """A soft ensemble of three detuned voices a side."""
    t = clock(seconds + 0.25)
    sides = []
    for side, spread in enumerate(((-8.0, 1.5, 6.0), (-6.5, -1.0, 8.5))):
        voices = np.zeros(len(t))
        for number, cents in enumerate(spread):
            hertz = np.full(len(t), hertz_from_pitch(pitch + cents / 100))
            table = wavetable(float(hertz[0]), 1.5, 0.8, 4200.0)
            voices += oscillate(table, hertz, start=0.17 * number + 0.41 * side)
        sides.append(voices / 3)
    slow = 1.0 + 0.12 * np.sin(2 * np.pi * 0.55 * t)
    return faded(np.stack(sides, axis=1) * slow[:, None], min(0.16, seconds / 3), 0.3)


def reed(pitch: int, seconds: float, take: int) -> Sound:
    """A free reed that sings: late vibrato, a little breath."""
    t = clock(seconds + 0.05)
    depth = 0.0058 * np.clip((t - 0.22) / 0.35, 0, 1)
    scoop = -0.012 * np.exp(-t / 0.03)
    hertz = hertz_from_pitch(pitch) * (1 + scoop + depth * np.sin(2 * np.pi * 5.3 * t + 0.5 * take))
    table = wavetable(hertz_from_pitch(pitch), 1.25, 0.55, 7500.0)
    detuned = oscillate(table, hertz * 2 ** (7 / 1200), start=0.3)
    tone = 0.62 * oscillate(table, hertz) + 0.38 * detuned
    breath = filtered(noise("reed", take, len(t)), "bandpass", (1800, 5200))
    shape = 0.8 + 0.2 * np.exp(-t / 0.25)
    return faded((tone + 0.02 * breath) * shape, 0.028, 0.09)


def horns(pitch: int, seconds: float, take: int) -> Sound:
    """Low horns in unison that open as they are blown."""
    t = clock(seconds + 0.04)
    vary = 1 + 0.0015 * np.sin(2 * np.pi * 4.4 * t + take)
    sides = []
    for cents in (-6.0, 6.0):
        hertz = hertz_from_pitch(pitch + cents / 100) * vary
        dark = oscillate(wavetable(float(hertz[0]), 2.0, 0.9, 2000.0), hertz)
        bright = oscillate(wavetable(float(hertz[0]), 0.85, 0.95, 5200.0), hertz)
        opened = np.clip(t / 0.05, 0, 1) * (0.3 + 0.7 * np.exp(-t / 0.2))
        sides.append(dark * (1 - 0.6 * opened) + 0.75 * bright * opened)
    return faded(np.stack(sides, axis=1), 0.012, 0.07)
