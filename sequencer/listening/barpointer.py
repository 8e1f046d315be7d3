"""Bar-pointer hidden Markov model, decoded exactly.

A state is a place in the bar, a tempo and how far the beat has gone; the pointer moves on evenly within a
beat and may change its tempo only at a beat: a little, or at a price to any other, as where a phrase ends
slower and the next is in time again. A bar may be cut short at a price, as songs put in a bar of two. Since
nothing is chosen within a beat, the Viterbi search runs over beats alone: the best score of a beat at frame t,
place m, with interval k until the next. Because every interval is at least `SHORTEST_BEAT` frames, that many frames
depend only on earlier ones and are searched at once. A path may begin and end anywhere, and may break off and,
a block of that many frames later or more, begin again at a price, so stretches without a beat get none.

Source: F. Krebs, S. Böck, G. Widmer, An efficient state-space model for joint tempo and meter tracking,
ISMIR 2015 (state space, tempo changes at beats with exp(−λ|ratio − 1|)); leaps and short bars are ours. The
observation is the log odds of a beat or downbeat against none, which differs from theirs by a constant of the
track.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from sequencer.arrays import Floats, Ints

FPS = 100  # frames a second of the search
SHORTEST_BEAT, SLOWEST = 24, 150  # [frames] intervals: 250 … 40 beats a minute
_STEP = 1.02  # ratio of neighbouring intervals where frames allow
_REACH = 5  # neighbouring intervals one beat may move
_LEAP, _START, _RESTART = 253, 254, 255  # in place of a step between intervals


@dataclass(frozen=True, slots=True, kw_only=True)
class BarPointerModel:
    """Parameters of the model."""

    steadiness: float = 20.0  # λ: price of a tempo change of 100 % from beat to beat [nats]
    leap: float = 6.0  # price of any other tempo at once [nats]
    short: float = 14.0  # price of a bar cut short, to two beats or more [nats]
    continuity_reward: float = (
        2.0  # for each second that the count goes on, whatever the tempo [nats/s]
    )
    restart: float = 100.0  # price of breaking off and beginning again [nats]
    trust: float = 0.6  # in the odds: frames err together, so each says less than it seems to
    beat_bias: float = 1.0  # towards a beat: music goes on where little is heard of it [nats]
    min_log_odds: float = -2.5  # lowest log odds one frame may have: forgives a silent beat


@dataclass(frozen=True, slots=True, eq=False)
class Path:
    """The best sequence of beats for one metre.

    Parameters
    ----------
    frames : ndarray, shape (n,) [1/100 s]
    places : ndarray, shape (n,) [1]
        Place of each beat in its bar, 0 … metre − 1; a bar cut short lacks its last ones.
    breaks : ndarray, shape (n,) [1]
        True at beats that begin the count anew.
    score : float
        Log odds of this path against no beats at all, without what it earned by going on [nats].
    metre : int

    Notes
    -----
    Source: module docstring. Exact maximum for the intervals on the grid.
    """

    frames: Ints
    places: Ints
    breaks: NDArray[np.bool_]
    score: float
    metre: int


def intervals() -> Ints:
    """Intervals between beats that are searched, shape (k,) [1/100 s], rising."""
    found = [SHORTEST_BEAT]
    while found[-1] < SLOWEST:
        found.append(max(found[-1] + 1, round(found[-1] * _STEP)))
    return np.array(found, dtype=np.int64)


def log_odds(
    beat: Floats, downbeat: Floats, *, model: BarPointerModel
) -> tuple[NDArray[np.float32], NDArray[np.float32]]:
    """Log odds of "a beat, but no downbeat" and of "a downbeat" against "neither".

    Parameters
    ----------
    beat : ndarray, shape (n,) [1]
        Probability of a beat, downbeats among them.
    downbeat : ndarray, shape (n,) [1]
        Probability of a downbeat.
    model : BarPointerModel
        Its `trust`, `lean` and `least` shape the result.

    Returns
    -------
    plain, first : ndarray, shape (n,) [nats]

    Notes
    -----
    Source: definition of the odds. Exact within 1e-4 … 1 − 1e-4.
    """
    first = np.clip(downbeat, 1e-4, 1 - 1e-4)
    beat = np.clip(np.maximum(beat, first), 1e-4, 1 - 1e-4)
    none = np.log1p(-beat)
    plain = np.log(np.clip(beat - first, 1e-4, None)) - none
    shaped = [
        np.maximum(model.trust * odds + model.beat_bias, model.min_log_odds).astype(np.float32)
        for odds in (plain, np.log(first) - none)
    ]
    return shaped[0], shaped[1]


def decode(
    beat: Floats,
    downbeat: Floats,
    *,
    metre: int,
    pointer: BarPointerModel | None = None,
    taus: Ints | None = None,
) -> Path:
    """The likeliest beats and bars of one metre.

    Parameters
    ----------
    beat : ndarray, shape (n,) [1]
        Probability of a beat at each frame of 1/100 s.
    downbeat : ndarray, shape (n,) [1]
        Probability of a downbeat.
    metre : int
        Beats a bar, at least 1.
    pointer : BarPointerModel, optional
    taus : ndarray, shape (k,) [1/100 s]
        Those of `intervals` that may occur, in turn; all if not given.

    Returns
    -------
    path : Path
        Empty, with score 0, where nothing is likelier than no beats.

    Raises
    ------
    ValueError
        If metre is less than 1 or the lengths differ.

    Notes
    -----
    Source: module docstring. Exact.
    """
    if metre < 1 or len(beat) != len(downbeat):
        raise ValueError("metre must be at least 1, beat and downbeat equally long")
    model = pointer or BarPointerModel()
    plain, first = log_odds(beat, downbeat, model=model)
    observed = np.repeat(plain[:, None], metre, axis=1)
    observed[:, 0] = first
    search = _Search(observed, model, intervals() if taus is None else taus)
    search.run()
    return search.path()


class _Search:
    """Forward pass and way back of one decoding."""

    def __init__(self, observed: NDArray[np.float32], model: BarPointerModel, taus: Ints) -> None:
        self.observed = observed
        self.total, self.metre = observed.shape
        self.taus = taus
        n = len(self.taus)
        self.model = model
        self.prior = (model.continuity_reward / FPS * taus).astype(np.float32)
        # price[j, k]: of coming to interval k from interval k + j - _REACH
        self.price = np.full((2 * _REACH + 1, n), -np.inf, np.float32)
        for j in range(2 * _REACH + 1):
            here = np.arange(n)
            come = here + j - _REACH
            fits = (come >= 0) & (come < n)
            ratio = self.taus[here[fits]] / self.taus[come[fits]]
            self.price[j, fits] = -model.steadiness * np.abs(ratio - 1)
        self.back = np.zeros((self.total, self.metre, n), np.uint8)
        self.leapt = np.zeros((self.total, self.metre), np.uint8)  # interval that a leap comes from
        # place that a first beat comes from
        self.before = np.full((self.total, n), self.metre - 1, np.uint8)
        self.best_score = np.full(self.total, -np.inf, np.float32)  # of paths ended by frame t
        self.best_state = np.zeros((self.total, 3), np.int32)  # their last beat: frame, place, k
        self.held = np.full((SLOWEST + 2 * SHORTEST_BEAT, self.metre, n), -np.inf, np.float32)

    def run(self) -> None:
        """Fill scores and back pointers, block by block."""
        rows = len(self.held)
        places, ks = np.arange(self.metre)[None, :, None], np.arange(len(self.taus))
        padding = np.full((SHORTEST_BEAT, self.metre, _REACH), -np.inf, np.float32)
        for start in range(0, self.total, SHORTEST_BEAT):
            times = np.arange(start, min(start + SHORTEST_BEAT, self.total))
            before = (times[:, None] - self.taus) % rows
            left = self.held[before[:, None, :], places, ks]
            left = np.roll(left, 1, axis=1)  # the place before comes to this one
            self._cut_short(times, left)
            pad = padding[: len(times)]
            wide = np.concatenate([pad, left, pad], axis=2)
            score, back = self._begin_or_leap(times, left)
            for j in range(2 * _REACH + 1):
                candidate = wide[:, :, j : j + len(ks)] + self.price[j]
                better = candidate > score
                np.copyto(score, candidate, where=better)
                np.copyto(back, np.uint8(j), where=better)
            score += self.observed[times, :, None] + self.prior
            self.back[times] = back
            self.held[times % rows] = score
            self._note_best(times, score)

    def _cut_short(self, times: Ints, left: NDArray[np.float32]) -> None:
        """Let every place but the first come to a first beat where that is worth its price; into `left`."""
        if self.metre > 2:
            best = left[:, 2:].argmax(axis=1) + 2  # the next beat's place, had the bar gone on
            cut = np.take_along_axis(left, best[:, None], axis=1)[:, 0] - self.model.short
            worth = cut > left[:, 0]
            np.copyto(left[:, 0], cut, where=worth)
            self.before[times] = np.where(worth, best - 1, self.metre - 1)

    def _begin_or_leap(
        self, times: Ints, left: NDArray[np.float32]
    ) -> tuple[NDArray[np.float32], NDArray[np.uint8]]:
        """Scores of paths that begin at these frames, for the first time or anew, or change to any tempo."""
        last = times[0] - SHORTEST_BEAT
        anew = self.best_score[last] - self.model.restart if last >= 0 else -np.inf
        code = _RESTART if anew > 0 else _START
        begun = np.float32(max(anew, 0.0))
        self.leapt[times] = left.argmax(axis=2)
        leap = left.max(axis=2) - np.float32(self.model.leap)
        score = np.broadcast_to(np.maximum(leap, begun)[:, :, None], left.shape).copy()
        back = np.where(leap > begun, np.uint8(_LEAP), np.uint8(code))
        return score, np.broadcast_to(back[:, :, None], left.shape).copy()

    def _note_best(self, times: Ints, score: NDArray[np.float32]) -> None:
        ended = score - self.prior  # no beat ends the interval after a last one
        flat = ended.reshape(len(times), -1)
        top = flat.argmax(axis=1)
        value = flat[np.arange(len(times)), top]
        place, k = np.divmod(top, len(self.taus))
        best = self.best_score[times[0] - 1] if times[0] else np.float32(-np.inf)
        state = self.best_state[times[0] - 1] if times[0] else self.best_state[0]
        for i, t in enumerate(times):
            if value[i] > best:
                best, state = value[i], np.array([t, place[i], k[i]], np.int32)
            self.best_score[t], self.best_state[t] = best, state

    def path(self) -> Path:
        """The way back from the best end."""
        frames, places, breaks = [], [], []
        score = max(float(self.best_score[-1]), 0.0) if self.total else 0.0
        if score > 0:
            t, m, k = (int(x) for x in self.best_state[-1])
            while True:
                code = int(self.back[t, m, k])
                frames.append(t)
                places.append(m)
                breaks.append(code in {_START, _RESTART})
                if code == _START:
                    break
                if code == _RESTART:
                    begun = t // SHORTEST_BEAT * SHORTEST_BEAT - SHORTEST_BEAT
                    t, m, k = (int(x) for x in self.best_state[begun])
                    continue
                k = int(self.leapt[t, m]) if code == _LEAP else k + code - _REACH
                m = (m - 1) if m else int(self.before[t, k])
                t -= int(self.taus[k])
            steps = np.diff(frames[::-1])[~np.array(breaks[::-1], np.bool_)[1:]]
            score -= self.model.continuity_reward / FPS * float(np.sum(steps))
        return Path(
            np.array(frames[::-1], np.int64),
            np.array(places[::-1], np.int64),
            np.array(breaks[::-1], np.bool_),
            score,
            self.metre,
        )
