"""Motion as quantised key samples: the rehearsal page interpolates these instead of evaluating laws.

A track covers a span of beats in chunks of `CHUNK` beats. A chunk holds, channel by channel, samples
at equal steps with two more before its start and three more after its end, as 16-bit whole numbers;
values between them come from a polynomial of degree 5 through the six nearest samples. Each chunk has the
fewest samples that keep the error below `GOAL` at every instant checked. Samples are written as
second differences, zigzag-coded, low bytes before high bytes, and deflated; repeats
of a pattern come out as repeated bytes.

Frames: hands in the body frame [m], tether and plane as unit vectors, floor in the stage frame [m].
Source of the interpolation: Lagrange's formula, M. Abramowitz and I. A. Stegun, Handbook of
Mathematical Functions (1964), 25.2.
"""

import base64
import zlib
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from sequencer.arrays import Floats
from sequencer.geometry.bodies import Side
from sequencer.motion.performers.dancer import Dancer, PropTrajectory
from sequencer.motion.performers.walks import WalkPath

Shorts = NDArray[np.int16]

CHUNK = 8  # [beats]
_BEFORE, AFTER = 2, 3  # extra samples before and after a chunk
DENSITIES = (1, 4, 8, 16, 24, 32, 48, 64, 96, 128, 192, 256, 384, 512, 1024)  # intervals per chunk
GOAL = 6e-4  # [m] greatest error of a prop in the body frame, and of the place on the floor
LENGTH_STEP = 2.5e-4  # [m]
UNIT_STEP = 1 / 30_000  # [1] for tether and facing
PLANE_STEP = 1 / 64  # [1]
PLANE_GOAL = 0.05  # [1]
_LOOKS = 48  # instants per chunk, at least, at which the error is checked


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class KeySamples:
    """Key samples of one prop, or of one path over the floor."""

    start: float  # [beats]
    intervals: tuple[int, ...]  # per chunk
    steps: tuple[float, ...]  # of each channel: value = base + step · sample
    bases: tuple[float, ...]
    samples: Shorts  # (k,) chunk by chunk, channel by channel

    def at(self, beats: Floats) -> Floats:
        """Values at beats, as the page reads them.

        Parameters
        ----------
        beats : ndarray, shape (n,) [beats]

        Returns
        -------
        values : ndarray, shape (n, c) [as written]

        Notes
        -----
        Source: Lagrange's formula (module). Mirrors the page's interpolation.
        """
        channels = len(self.steps)
        counts = np.array(self.intervals)
        offsets = np.concatenate([[0], np.cumsum(channels * (counts + _BEFORE + AFTER + 1))])
        place = (beats - self.start) / CHUNK
        chunk = np.clip(np.floor(place).astype(np.int64), 0, len(counts) - 1)
        x = np.clip(place - chunk, 0.0, 1.0) * counts[chunk]
        index = np.minimum(np.floor(x).astype(np.int64), counts[chunk] - 1)
        weights = lagrange(x - index)
        width = counts[chunk] + _BEFORE + AFTER + 1
        first = offsets[chunk] + index
        out = np.empty((len(beats), channels))
        for c in range(channels):
            at = (first + c * width)[:, None] + np.arange(6)
            out[:, c] = self.bases[c] + self.steps[c] * np.sum(weights * self.samples[at], axis=1)
        return out


def lagrange(f: Floats) -> Floats:
    """Weights of six samples at −2 … 3 for a place between 0 and 1.

    Parameters
    ----------
    f : ndarray, shape (n,) [1]

    Returns
    -------
    weights : ndarray, shape (n, 6) [1]

    Notes
    -----
    Source: Abramowitz and Stegun, 25.2.19. Exact for polynomials of degree 5.
    """
    a, b, c, d, e, g = f + 2, f + 1, f, f - 1, f - 2, f - 3
    return np.stack(
        [
            -b * c * d * e * g / 120,
            a * c * d * e * g / 24,
            -a * b * d * e * g / 12,
            a * b * c * e * g / 12,
            -a * b * c * d * g / 24,
            a * b * c * d * e / 120,
        ],
        axis=-1,
    )


def prop_track(
    trajectory: PropTrajectory, length: float, start: float, end: float, *, aside: float = 0.0
) -> KeySamples:
    """Hand, tether and plane of one prop of `length` [m], `aside` [m] wide, between two beats."""

    def values(beats: Floats) -> Floats:
        motion = trajectory.at(beats)
        return np.concatenate([motion.hand, motion.tether, motion.plane], axis=-1)

    def fits(read: Floats, true: Floats) -> Floats:
        hand = read[..., :3] - true[..., :3]
        tether = read[..., 3:6] / np.linalg.norm(read[..., 3:6], axis=-1, keepdims=True)
        head = hand + length * (tether - true[..., 3:6])
        plane = np.linalg.norm(read[..., 6:] - true[..., 6:], axis=-1) * (GOAL / PLANE_GOAL)
        parts = [np.linalg.norm(hand, axis=-1), np.linalg.norm(head, axis=-1), plane]
        if aside:
            wide = _across(read[..., 6:], tether) - _across(true[..., 6:], true[..., 3:6])
            parts.append(
                np.linalg.norm(hand + head, axis=-1) + aside * np.linalg.norm(wide, axis=-1)
            )
        return np.maximum.reduce(parts)

    steps = (LENGTH_STEP,) * 3 + (UNIT_STEP,) * 3 + (UNIT_STEP if aside else PLANE_STEP,) * 3
    return _track(values, fits, start, end, steps, (0.0,) * 9)


def floor_track(floor: WalkPath, reach: float, start: float, end: float) -> KeySamples:
    """Place, and cosine and sine of the facing, between two beats; `reach` [m] is the arm of the error."""

    def values(beats: Floats) -> Floats:
        stand = floor.at(beats)
        facing = np.stack([np.cos(stand.facing), np.sin(stand.facing)], axis=-1)
        return np.concatenate([stand.place, facing], axis=-1)

    def fits(read: Floats, true: Floats) -> Floats:
        turn = np.linalg.norm(
            read[..., 2:] / np.linalg.norm(read[..., 2:], axis=-1, keepdims=True) - true[..., 2:],
            axis=-1,
        )
        return np.linalg.norm(read[..., :2] - true[..., :2], axis=-1) + reach * turn

    looked = np.asarray(np.linspace(start, end, 2 + 4 * int(end - start)), dtype=np.float64)
    places = values(looked)[:, :2]
    low, high = places.min(axis=0), places.max(axis=0)
    # A curved walk can swing out a little between the instants checked.
    step = max(LENGTH_STEP, float(np.max(high - low)) / 40_000)
    base = np.round((low + high) / 2, 3)
    return _track(
        values, fits, start, end, (step, step, UNIT_STEP, UNIT_STEP), (*map(float, base), 0.0, 0.0)
    )


def _track(
    values: Callable[[Floats], Floats],
    errors: Callable[[Floats, Floats], Floats],
    start: float,
    end: float,
    steps: tuple[float, ...],
    bases: tuple[float, ...],
) -> KeySamples:
    """The fewest samples per chunk that keep the error below `GOAL`; the densest if none does."""
    count = max(1, int(np.ceil((end - start) / CHUNK)))
    open_ = np.arange(count)
    chosen = np.zeros(count, dtype=np.int64)
    stored: list[Shorts] = [np.zeros(0, dtype=np.int16)] * count
    step, base = np.array(steps), np.array(bases)
    for n in DENSITIES:
        begin = start + CHUNK * open_[:, None]
        grid = values(begin + CHUNK / n * np.arange(-_BEFORE, n + AFTER + 1))
        whole = np.clip(np.round((grid - base) / step), -32_768, 32_767)
        per = max(3, -(-_LOOKS // n))
        inside = (np.arange(per) + 0.5) / per + 0.11 / per * np.sin(7.0 * np.arange(per) + n)
        at = (np.arange(n)[:, None] + inside).ravel()
        index = np.floor(at).astype(np.int64)
        weights = lagrange(at - index)
        read = np.zeros((len(open_), len(at), len(steps)))
        for k in range(6):
            read += weights[:, k, None] * whole[:, index + k]
        worst = np.max(errors(base + step * read, values(begin + CHUNK / n * at)), axis=1)
        good = (worst <= GOAL) | (n == DENSITIES[-1])
        for row in np.flatnonzero(good):
            stored[open_[row]] = whole[row].T.astype(np.int16).ravel()
            chosen[open_[row]] = n
        open_ = open_[~good]
        if len(open_) == 0:
            break
    return KeySamples(
        start=start,
        intervals=tuple(int(n) for n in chosen),
        steps=steps,
        bases=bases,
        samples=np.concatenate(stored),
    )


def recorded(track: KeySamples) -> dict[str, Any]:
    """A track as JSON values."""
    return {
        "start": track.start,
        "intervals": track.intervals,
        "steps": track.steps,
        "bases": track.bases,
        "samples": base64.b64encode(track.samples.astype("<i2").tobytes()).decode("ascii"),
    }


def restored(record: dict[str, Any]) -> KeySamples:
    """The inverse of `recorded`.

    Raises
    ------
    KeyError, TypeError, ValueError
        If the record is not a track.
    """
    samples = np.frombuffer(base64.b64decode(record["samples"]), dtype="<i2").astype(np.int16)
    return KeySamples(
        start=record["start"],
        intervals=tuple(record["intervals"]),
        steps=tuple(record["steps"]),
        bases=tuple(record["bases"]),
        samples=samples,
    )


def packed(tracks: list[KeySamples]) -> str:
    """Samples of all tracks, encoded, deflated and in base 64."""
    coded: list[NDArray[np.uint16]] = [np.zeros(0, dtype=np.uint16)]
    for track in tracks:
        at = 0
        for n in track.intervals:
            width = n + _BEFORE + AFTER + 1
            block = track.samples[at : at + width * len(track.steps)].reshape(-1, width)
            at += block.size
            coded.append(_differences(block))
    words = np.concatenate(coded)
    planes = np.concatenate([(words & 0xFF).astype(np.uint8), (words >> 8).astype(np.uint8)])
    deflate = zlib.compressobj(9, zlib.DEFLATED, -15)
    return base64.b64encode(deflate.compress(planes.tobytes()) + deflate.flush()).decode("ascii")


def _differences(block: Shorts) -> NDArray[np.uint16]:
    """Second differences of each row in 16-bit arithmetic, zigzag-coded; the first two stay as they are."""
    wide = block.astype(np.int64)
    second = wide.copy()
    second[:, 1:] -= wide[:, :-1]
    second[:, 2:] -= wide[:, 1:-1] - wide[:, :-2]
    short = second.astype(np.int16)  # wraps, and so does the sum
    zigzag = (short.astype(np.int64) << 1) ^ (short.astype(np.int64) >> 15)
    return (zigzag & 0xFFFF).astype(np.uint16).ravel()


def read_points(dancer: Dancer, tracks: dict[str, KeySamples], beats: Floats) -> dict[Side, Floats]:
    """Hands and heads in the stage frame, as the page will show them.

    Parameters
    ----------
    dancer : Dancer
    tracks : dict of KeySamples
        `floor`, and one for each side.
    beats : ndarray, shape (n,) [beats]

    Returns
    -------
    points : dict of ndarray, shape (n, 1 + k, 3) [m, stage frame]
        Hand and the k wicks, by side.

    Notes
    -----
    Source: the page's interpolation, repeated here so that its error can be stated.
    """
    floor = tracks["floor"].at(beats)
    size = np.hypot(floor[:, 2], floor[:, 3])
    cos, sin = -floor[:, 2] / size, -floor[:, 3] / size
    out: dict[Side, Floats] = {}
    for side, prop in dancer.props.items():
        read = tracks[side].at(beats)
        hand = read[:, :3]
        tether = read[:, 3:6] / np.linalg.norm(read[:, 3:6], axis=-1, keepdims=True)
        wide = _across(read[:, 6:], tether)
        body = np.stack(
            [hand, *(hand + spot.along * tether + spot.across * wide for spot in prop.heads)],
            axis=1,
        )
        out[side] = np.stack(
            [
                floor[:, 0, None] + cos[:, None] * body[..., 0] - sin[:, None] * body[..., 1],
                floor[:, 1, None] + sin[:, None] * body[..., 0] + cos[:, None] * body[..., 1],
                body[..., 2],
            ],
            axis=-1,
        )
    return out


def _across(plane: Floats, tether: Floats) -> Floats:
    """Unit direction across a prop in its plane, as the page works it out."""
    wide = np.cross(plane, tether)
    return np.asarray(wide / np.maximum(np.linalg.norm(wide, axis=-1, keepdims=True), 1e-9))


def measured_error(
    dancer: Dancer, tracks: dict[str, KeySamples], start: float, end: float
) -> float:
    """Largest distance between drawn and true hands and heads [m], at 24 instants per beat."""
    count = 2 + int(24 * (end - start))
    worst = 0.0
    for part in np.array_split(np.linspace(start, end, count), max(1, count // 20_000)):
        points, _ = dancer.stage_points(part)
        read = read_points(dancer, tracks, part)
        wicks = dancer.wick_places(part)
        for side, seen in read.items():
            true = np.stack([points[3 if side == "left" else 6], *wicks[side]], axis=1)
            worst = max(worst, float(np.max(np.linalg.norm(seen - true, axis=-1))))
    return worst
