"""The mixing desk: notes onto buses, ducking, reverb, compression, limiting.

Buses hold float32 samples of shape (n, 2) at `instruments.RATE`; gains are linear.
"""

from dataclasses import dataclass

import numpy as np
from instruments import RATE, Sound, filtered, noise
from numpy.typing import NDArray
from scipy import ndimage, signal

Bus = NDArray[np.float32]


@dataclass(frozen=True, slots=True, kw_only=True)
class Channel:
    """Settings of one bus."""

    gain: float
    reverb: float  # share sent to the room
    duck: float = 0.0  # how far a kick pushes it down, 0 to 1
    low_cut: float = 30.0  # [Hz]


def add(bus: Bus, sound: Sound, start: int, gain: float, pan: float) -> None:
    """Lay a sound on a bus from a sample on; pan -1 is left, 1 is right, equal power."""
    stop = min(len(bus), start + len(sound))
    if stop <= start:
        return
    angle = (pan + 1) * np.pi / 4
    sides = gain * np.sqrt(2) * np.array([np.cos(angle), np.sin(angle)])
    part = sound[: stop - start]
    bus[start:stop] += (part[:, None] if part.ndim == 1 else part) * sides


def ducking(kicks: list[int], count: int, depth: float) -> Sound:
    """Gain that dips at every kick and is back within a fifth of a second."""
    dip = np.zeros(count)
    shape = np.exp(-np.arange(round(0.3 * RATE)) / (0.085 * RATE))
    for start in kicks:
        stop = min(count, start + len(shape))
        dip[start:stop] = np.maximum(dip[start:stop], shape[: stop - start])
    return np.asarray(1.0 - depth * dip)


def room(seconds: float = 1.5) -> Sound:
    """Impulse response of a middling hall, shape (n, 2): early echoes, then a darkening tail."""
    count = round(seconds * RATE)
    t = np.arange(count) / RATE
    sides = np.stack([noise("room left", 0, count), noise("room right", 0, count)], axis=1)
    tail = filtered(sides, "bandpass", (220, 5200)) * np.exp(-t / (seconds / 5.5))[:, None]
    tail *= np.clip(t / 0.02, 0, 1)[:, None]
    for number, delay in enumerate((0.011, 0.017, 0.023, 0.031, 0.041)):
        tail[round(delay * RATE), number % 2] += 3.0 * 0.8**number
    return np.asarray(tail / np.sqrt((tail**2).sum(axis=0)))


def mixed(buses: dict[str, Bus], channels: dict[str, Channel], kicks: list[int]) -> Sound:
    """All buses through their channels and the room, summed."""
    count = len(next(iter(buses.values())))
    dry = np.zeros((count, 2))
    sent = np.zeros((count, 2))
    for name, channel in channels.items():
        part = channel.gain * filtered(buses[name].astype(np.float64), "highpass", channel.low_cut)
        if channel.duck > 0:
            part *= ducking(kicks, count, channel.duck)[:, None]
        dry += part
        sent += channel.reverb * part
    wet = signal.oaconvolve(sent, room(), axes=0)[:count]
    return filtered(
        dry + wet, "lowpass", 14_000, 4
    )  # what lies above costs bits, and is missed by few


def compressed(mix: Sound, threshold: float = 0.2, ratio: float = 2.2) -> Sound:
    """The mix with loud passages pulled down, one gain for both sides."""
    block = RATE // 200
    padded = np.pad(mix, ((0, -len(mix) % block), (0, 0)))
    power = (padded**2).reshape(-1, block * 2).mean(axis=1)
    level = 0.0
    levels = np.empty(len(power))
    for index, now in enumerate(np.sqrt(power)):
        share = 0.30 if now > level else 0.035  # about 15 ms up, 140 ms down
        level += share * (now - level)
        levels[index] = level
    gains = np.minimum(1.0, (np.maximum(levels, 1e-9) / threshold) ** (1 / ratio - 1))
    centres = (np.arange(len(gains)) + 0.5) * block
    return np.asarray(mix * np.interp(np.arange(len(mix)), centres, gains)[:, None])


def limited(mix: Sound, ceiling: float, drive: float) -> Sound:
    """The mix raised by `drive` with no sample beyond `ceiling`.

    The gain is the least that any sample within the window asks for, smoothed over half the
    window: a mean of numbers none of which exceeds what the middle sample needs.
    """
    driven = drive * mix
    needed = ceiling / np.maximum(np.abs(driven).max(axis=1), ceiling)
    window = round(0.004 * RATE)
    least = ndimage.minimum_filter1d(needed, 2 * window + 1, mode="nearest")
    smooth = ndimage.uniform_filter1d(least, window, mode="nearest")
    return np.asarray(driven * smooth[:, None])
