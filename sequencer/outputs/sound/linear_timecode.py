"""Linear time code: time code as a sound, which desks and players follow over an audio line.

Each frame is 80 bits, least significant first: frames, seconds, minutes and hours as decimal digits, sixteen bits that
mark its end, and user bits, which are 0 here. A bit is a cell of a constant length; the level turns at the end of every
cell, and in the middle of a cell that holds a one (biphase mark). A parity bit makes the turns of each frame even, so
that all frames begin alike.

Source: SMPTE ST 12-1 (layout, parity, rise time; read second-hand); the level of half of full scale is common practice.
"""

import wave
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

import numpy as np

from sequencer.arrays import Floats
from sequencer.files import replacing
from sequencer.timing.timecode import Rate, digits_of

TIMECODE_SAMPLING = 48_000  # [Hz]
BITS = 80  # of a frame
_SYNC = (0, 0, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 0, 1)  # bits 64 to 79
_DROP = 10  # the bit that says that numbers are dropped
_LEVEL = 0.5  # [1] of full scale
_TURN = 68e-6  # [s] of a whole turn: 40 µs from a tenth to nine tenths of it
_FIELDS = ((0, 4, "frames", 1), (8, 2, "frames", 10), (16, 4, "seconds", 1), (24, 3, "seconds", 10),
           (32, 4, "minutes", 1), (40, 3, "minutes", 10), (48, 4, "hours", 1), (56, 2, "hours", 10))  # fmt: skip
_AT_ONCE = 250  # frames


def frame_bits(frame: int, rate: Rate) -> tuple[int, ...]:
    """The 80 bits of a frame, in the order in which they sound.

    Raises
    ------
    ValueError
        If the frame is negative.
    """
    digits = digits_of(frame, rate)._asdict()
    bits = [0] * BITS
    for first, width, name, unit in _FIELDS:
        digit = digits[name] // unit % 10
        bits[first : first + width] = [digit >> k & 1 for k in range(width)]
    bits[64:] = _SYNC
    bits[_DROP] = int(rate.drop)
    bits[59 if rate.nominal == 25 else 27] = sum(bits) % 2
    return tuple(bits)


def timecode_sound(first: int, start: Fraction, end: Fraction, rate: Rate) -> Iterator[Floats]:
    """Samples of time code between two moments, in pieces.

    Parameters
    ----------
    first : int
        The frame that begins at moment 0.
    start, end : Fraction
        [s], 0 ≤ start ≤ end.
    rate : Rate

    Yields
    ------
    piece : ndarray, shape (n,) [1]
        At `TIMECODE_SAMPLING`; sample k of all is the sound at `start` + k / `TIMECODE_SAMPLING`.

    Notes
    -----
    Source: module docstring. Turns are where they belong to a fraction of a sample, so that no frame is off, however
    long the code.
    """
    samples = round((end - start) * TIMECODE_SAMPLING)
    most = max(1, int(_AT_ONCE / rate.exact * TIMECODE_SAMPLING))
    for low in range(0, samples, most):
        high = min(low + most, samples)
        moments = float(start) + np.arange(low, high) / TIMECODE_SAMPLING
        yield _levels(moments, first, rate)


def _levels(moments: Floats, first: int, rate: Rate) -> Floats:
    """The sound at moments [s], shape (n,)."""
    frames = range(int(moments[0] * rate.exact), int(moments[-1] * rate.exact) + 2)
    turns = np.concatenate([_turns(k, first, rate) for k in frames])
    last = np.maximum(np.searchsorted(turns, moments + _TURN / 2, side="right") - 1, 0)
    done = np.clip((moments - turns[last]) / _TURN + 0.5, 0.0, 1.0)
    up = 1.0 - 2.0 * (last % 2)  # every frame begins with a turn up
    return np.asarray(-_LEVEL * up * np.cos(np.pi * done))


def _turns(k: int, first: int, rate: Rate) -> Floats:
    """Moments [s] at which the level turns in the k-th frame."""
    bits = np.array(frame_bits(first + k, rate))
    halves = 2 * np.arange(BITS)
    inside = np.sort(np.concatenate([halves, halves[bits == 1] + 1]))
    return np.asarray((2 * BITS * k + inside) / (2 * BITS * float(rate.exact)))


def write_timecode_sound(
    path: Path, first: int, start: Fraction, end: Fraction, rate: Rate
) -> None:
    """Write time code between two moments as 16-bit WAV; see `timecode_sound`.

    Raises
    ------
    InputError
        If the file cannot be written.
    """
    with replacing(path) as scratch, wave.open(str(scratch), "wb") as out:
        out.setnchannels(1)
        out.setsampwidth(2)
        out.setframerate(TIMECODE_SAMPLING)
        for piece in timecode_sound(first, start, end, rate):
            out.writeframes(np.rint(32_767 * piece).astype("<i2").tobytes())
