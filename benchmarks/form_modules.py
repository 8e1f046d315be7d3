"""The form of tracker modules by their own notes, as truth for parts that is not pattern changes alone.

The rule, with bars of the module's own rows: a part begins where three sources together say so.

1. Arrangement: which instruments sound, and how loud (the player's meters), in the four bars before and after:
   Bray–Curtis distance, 0 … 1.
2. Harmony: pitch classes of all instruments that play more than two pitches, eight bars before and after: the
   same distance, at half weight.
3. Repetition: the lags at which the bars' own notes come again (Dice of row, instrument and pitch; four bars
   in order), four bars before and after: the same distance, at half weight.

The set of borders with the largest sum above THETA is taken, of parts of eight bars or more (four at the ends),
with a small cost where a part is no multiple of eight bars. Two parts are the same music if the notes
(row and pitch class, whatever the instrument) of bars in order agree by half or more.
"""

import ctypes
from dataclasses import dataclass
from functools import partial
from itertools import pairwise

import numpy as np

RATE = 44100
THETA = 0.5
_COMMANDS = (0, 1)  # note and instrument of a cell


@dataclass
class Played:
    """Sound (samples,), rows (s, order, row, pattern), cells (rows, channels, 2), meters (rows, channels)."""

    sound: np.ndarray
    rows: list[tuple[float, int, int, int]]
    cells: np.ndarray
    meters: np.ndarray


def played(data: bytes, longest: float) -> Played | None:
    """A module as libopenmpt plays it, up to so many seconds; None if it cannot be read."""
    lib = ctypes.CDLL("libopenmpt.so.0")
    lib.openmpt_module_create_from_memory2.restype = ctypes.c_void_p
    made = lib.openmpt_module_create_from_memory2(data, ctypes.c_size_t(len(data)), *[None] * 7)
    if not made:
        return None
    module = ctypes.c_void_p(made)
    order, row, pattern = (
        partial(lib["openmpt_module_get_current_" + x], module) for x in ("order", "row", "pattern")
    )
    cell = lib.openmpt_module_get_pattern_row_channel_command
    cell.restype = ctypes.c_uint8
    meter = lib.openmpt_module_get_current_channel_vu_mono
    meter.restype = ctypes.c_float
    channels = range(lib.openmpt_module_get_num_channels(module))
    read = partial(lib.openmpt_module_read_interleaved_float_stereo, module, RATE)
    block = np.zeros((64, 2), np.float32)
    at = block.ctypes.data_as(ctypes.c_void_p)
    sound, rows, cells, meters, n = [], [], [], [], 0
    while n < longest * RATE and (got := read(ctypes.c_size_t(len(block)), at)):
        if not rows or rows[-1][1:3] != (order(), row()):
            rows.append((n / RATE, order(), row(), pattern()))
            cells.append(
                [
                    [cell(module, rows[-1][3], rows[-1][2], c, k) for k in _COMMANDS]
                    for c in channels
                ]
            )
            meters.append(np.zeros(len(channels)))
        if n % 256 == 0:
            meters[-1] = np.maximum(meters[-1], [meter(module, c) for c in channels])
        sound.append(block[:got].mean(axis=1))
        n += got
    lib.openmpt_module_destroy(module)
    return Played(np.concatenate(sound), rows, np.array(cells, np.int64), np.array(meters))


def bars_of(rows: list[tuple[float, int, int, int]]) -> np.ndarray:
    """Seconds of the bars: four beats of 4 rows, or of 8, 16 … where that would be more than 180 a minute."""
    step = 4
    while np.median(np.diff([t for t, _, row, _ in rows if row % step == 0])) < 60 / 180:
        step *= 2
    return np.array([t for t, _, row, _ in rows if row % (4 * step) == 0])


def parts_of(piece: Played, bars: np.ndarray) -> tuple[list[float], list[str]]:
    """Where the parts of a module begin [s], and a label for each that repeats where the notes do."""
    voices, pitches, notes, tune = _material(piece, bars)
    alike = _dice(notes)
    gain = (
        _distance(voices, 4) + 0.5 * _distance(pitches, 8) + 0.5 * _distance(_lags(alike), 4, 1.0)
    )
    borders = _borders(gain)
    labels = _labels(borders, _dice(tune))
    return [0.0, *(float(bars[b]) for b in borders[1:-1])], [f"p{k}" for k in labels]


def _material(
    piece: Played, bars: np.ndarray
) -> tuple[np.ndarray, np.ndarray, list[set], list[set]]:
    """Loudness by instrument and by pitch class of each bar, its notes, and its notes without instruments."""
    note, instrument = np.zeros(piece.meters.shape, int), np.zeros(piece.meters.shape, int)
    struck = (piece.cells[..., 0] > 0) & (piece.cells[..., 0] <= 120)
    for i, cells in enumerate(
        piece.cells
    ):  # a channel keeps its note and instrument until the next
        note[i] = np.where(struck[i], cells[:, 0], note[i - 1] if i else 0)
        instrument[i] = np.where(cells[:, 1] > 0, cells[:, 1], instrument[i - 1] if i else 0)
    names = np.unique(instrument[struck]).tolist()
    drums = {k for k in names if len(np.unique(note[(instrument == k) & struck])) <= 2}
    place = {k: i for i, k in enumerate(names)}
    loud = np.sqrt(np.minimum(1, piece.meters / (np.percentile(piece.meters, 99) + 1e-9)))
    at = np.clip(np.searchsorted(bars, [r[0] + 0.01 for r in piece.rows]) - 1, 0, None)
    n = len(bars)
    voices, pitches = np.zeros((n, len(names))), np.zeros((n, 12))
    notes, tune = [set() for _ in range(n)], [set() for _ in range(n)]
    first = np.searchsorted(at, np.arange(n))
    for i, c in np.argwhere(np.isin(instrument, names) & ((loud > 0.2) | struck)):
        bar, kind, pitch = at[i], int(instrument[i, c]), int(note[i, c])
        if loud[i, c] > 0.2:
            voices[bar, place[kind]] += loud[i, c]
            if kind not in drums and pitch:
                pitches[bar, pitch % 12] += loud[i, c]
        if struck[i, c]:
            notes[bar].add((int(i - first[bar]), kind, pitch))
            if kind not in drums:
                tune[bar].add((int(i - first[bar]), pitch % 12))
    rows = np.maximum(np.bincount(at, minlength=n)[:n], 1)[:, None]
    return voices / rows, pitches / rows, notes, [t or s for t, s in zip(tune, notes, strict=True)]


def _dice(bars: list[set]) -> np.ndarray:
    """Share of notes that two bars have in common."""
    return np.array(
        [[2 * len(a & b) / (len(a) + len(b)) if a or b else 1.0 for b in bars] for a in bars]
    )


def _lags(alike: np.ndarray) -> np.ndarray:
    """For each bar, how well four bars about it come again at each lag."""
    n = len(alike)
    padded = np.pad(alike, 2, mode="edge")
    runs = np.maximum(0, sum(padded[k : k + n, k : k + n] for k in range(1, 5)) / 4 - 0.4) / 0.6
    found = np.zeros((n, 2 * n - 1))
    for i in range(n):
        found[i, n - 1 - i : 2 * n - 1 - i] = runs[i]
        found[i, n - 2 : n + 1] = 0
    return found


def _distance(rows: np.ndarray, reach: int, floor: float = 1e-9) -> np.ndarray:
    """Bray–Curtis distance of the means before and after each bar."""
    found = np.zeros(len(rows) + 1)
    for b in range(1, len(rows)):
        x, y = rows[max(0, b - reach) : b].mean(axis=0), rows[b : b + reach].mean(axis=0)
        found[b] = np.abs(x - y).sum() / (x.sum() + y.sum() + floor)
    return found


def _borders(gain: np.ndarray) -> list[int]:
    n = len(gain) - 1
    best, back = np.full(n + 1, -np.inf), np.zeros(n + 1, int)
    best[0] = 0.0
    for b in range(1, n + 1):
        for a in range(b):
            length, end = b - a, a == 0 or b == n
            if length < (min(4, n) if end else 8):
                continue
            cost = 0.0 if length % 8 == 0 or b == n else 0.04 if length % 4 == 0 else 0.12
            value = best[a] - cost + (gain[b] - THETA if b < n else 0.0)
            if value > best[b]:
                best[b], back[b] = value, a
    found = [n]
    while found[-1] > 0:
        found.append(int(back[found[-1]]))
    return found[::-1]


def _labels(borders: list[int], alike: np.ndarray) -> list[int]:
    labels: list[int] = []
    spans = list(pairwise(borders))
    for k, (a, b) in enumerate(spans):
        agreed = [
            max(
                line.mean()
                for s in range(a - b + 1, d - c)
                if len(line := np.diagonal(alike[a:b, c:d], s)) >= 0.75 * min(b - a, d - c)
            )
            for c, d in spans[:k]
        ]
        same = int(np.argmax(agreed)) if agreed else -1
        labels.append(
            labels[same] if same >= 0 and agreed[same] >= 0.5 else max(labels, default=-1) + 1
        )
    return labels
