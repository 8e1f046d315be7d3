"""Search for fitting parameters: where the hands dance a pattern so that body, arms and both props stay clear.

A pattern leaves some parameters open, such as the centres and widths of the hand paths. Those that a
performer does not set are searched here for the given body, props and tempo:

1. the default position is kept if it is `GOOD` away from the performer's body and the other prop, within
reach and taut;
2. otherwise both centres are moved together (out, ahead, up) and apart (ahead, up) on a 6 cm grid, then on
finer grids about the best; moving a centre moves hand and prop as one, so the laws are sampled only once;
3. if that is not enough, narrower paths, then postures of the body.

The best choice has the largest margin, up to `GOOD`; beyond that the widest path, the smallest move and the
most upright body win, so that successive patterns stay in one position. The search uses samples; its result
is proven afterwards by the checks. Frame: body frame [m], beats.
Source: search; the order of preference is a design choice of this project.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import product
from math import inf

from sequencer.geometry.bodies import Side
from sequencer.kept import recent
from sequencer.motion.fitting import kept_fits
from sequencer.motion.fitting.fits import LEAST_MARGIN, Dance, Fit
from sequencer.motion.fitting.kept_places import best_place, leaning_places
from sequencer.motion.fitting.pacing import TAUT
from sequencer.motion.fitting.sampled_dance import PLACE_OFFSETS, SURE, SampledDance
from sequencer.motion.patterns.library import find
from sequencer.motion.patterns.parameters import ParameterValue

MOST_SHAPES = 32
RANKED = 0.001  # [m] of margin that each further choice must gain


Shape = dict[Side, dict[str, ParameterValue]]  # open parameters other than offsets


def fitted(dance: Dance) -> Fit:
    """The best values for the parameters that a dance leaves open; see the module docstring.

    Parameters
    ----------
    dance : Dance

    Returns
    -------
    fit : Fit
        Cached in the process and on disk.

    Raises
    ------
    ValueError
        If a pattern or a parameter is not known, or out of range.
    """
    key = dance.key
    return recent("fit", key, lambda: _fitted(dance), most=MOST_KEPT)


def _fitted(dance: Dance) -> Fit:
    # A cached result must not depend on which of two similar tempi came first.
    dance = dance.rounded
    question = dance.question
    if question not in _KEPT:
        if len(_KEPT) >= MOST_KEPT:
            _KEPT.clear()
        known = kept_fits.load(question)
        _KEPT[question] = known or searched(dance)
        if known is None:
            kept_fits.store(question, _KEPT[question])
    return _KEPT[question]


def fitted_together(dances: Sequence[Dance]) -> list[Fit]:
    """Fits for performers who dance one step together: individual positions, a common shape.

    Parameters
    ----------
    dances : sequence of Dance
        All of the same patterns, with the same parameters set.

    Returns
    -------
    fits : list of Fit
        In the same order. If the individual fits differ in more than position, the most common shape that
        fits all of them; if none does, the shape with the largest worst-case margin.

    Raises
    ------
    ValueError
        If a pattern or a parameter is not known, or out of range.
    """
    alone = [fitted(dance) for dance in dances]
    shapes = [_shape_of(fit) for fit in alone]
    different = [shape for k, shape in enumerate(shapes) if shape not in shapes[:k]]
    if len(different) < 2:
        return alone
    tried: list[tuple[tuple[bool, int, float], list[Fit]]] = []
    for shape in different:
        fits = [_in_shape(dance, shape) for dance in dances]
        tightest = min(fit.margins.least if fit.margins.pull > 0 else -inf for fit in fits)
        good = tightest >= LEAST_MARGIN
        tried.append(((good, shapes.count(shape) if good else 0, tightest), fits))
    return max(tried, key=lambda each: each[0])[1]


def _shape_of(fit: Fit) -> Shape:
    """The values of a fit other than position."""
    shape: Shape = {}
    for side, values in fit.values.items():
        own = {name: value for name, value in values.items() if name not in PLACE_OFFSETS}
        if own:
            shape[side] = own
    return shape


def _in_shape(dance: Dance, shape: Shape) -> Fit:
    """The best position for one shape; parameters of other shapes keep their defaults."""
    usual: Shape = {
        side: {name: p.default for name, p in dance.open(side).items() if p.default is not None}
        for side in dance.sides
    }
    set_: Shape = {
        side: {
            name: value
            for name, value in {**usual[side], **shape.get(side, {})}.items()
            if name not in PLACE_OFFSETS
        }
        for side in dance.sides
    }
    parts = {side: (name, {**given, **set_[side]}) for side, (name, given) in dance.parts.items()}
    fit = fitted(replace(dance, parts=parts))
    return replace(
        fit,
        values={side: {**shape.get(side, {}), **fit.values.get(side, {})} for side in dance.sides},
    )


_KEPT: dict[str, Fit] = {}
MOST_KEPT = 4096


def searched(dance: Dance) -> Fit:
    """The same by search, ignoring kept fits; where the hands are best may be known of another tempo."""
    found: list[tuple[float, Fit, SampledDance]] = []
    for rank, shape in enumerate(_shapes(dance)):
        try:
            sampled = SampledDance(dance, shape)
        except ValueError:
            if rank == 0:
                raise  # the performer's parameters are incompatible
            continue
        place = best_place(sampled)
        found.append((sampled.score(place) - RANKED * rank, sampled.fit(place), sampled))
        if place.margins.least >= SURE and sampled.pull >= TAUT and not sampled.heavy:
            break
    found.sort(key=lambda each: -each[0])
    best = found[0]
    if best[1].margins.least >= LEAST_MARGIN or best[1].margins.pull < 0:
        return best[1]
    leaning = [
        (sampled.score(place) - RANKED * (1 + rank), sampled.fit(place))
        for _, fit, sampled in found[:2]
        for rank, place in enumerate(leaning_places(sampled, fit))
    ]
    return max([(best[0], best[1]), *leaning], key=lambda each: each[0])[1]


def _shapes(dance: Dance) -> Iterator[Shape]:
    """Path shapes to try, the default first, then those most similar to it."""
    axes = [_trials(dance), _starts(dance)]
    ranked = sorted(product(*(range(len(axis)) for axis in axes)), key=lambda k: (sum(k), k))
    for chosen in ranked[:MOST_SHAPES]:
        parts = [axis[k] for axis, k in zip(axes, chosen, strict=True)]
        yield {
            side: {name: value for part in parts for name, value in part.get(side, {}).items()}
            for side in dance.sides
        }


def _trials(dance: Dance) -> list[Shape]:
    """Values that each law lists to try, the same for both hands; `_starts` turns a toroid's lobes."""
    shapes: list[Shape] = []
    lists = {
        side: find(name, dance.book).trials(given, dance.props[side].kind)
        for side, (name, given) in dance.parts.items()
    }
    if len(lists) == 2:
        # Both hands turn with the same body, so not each towards its own side.
        lists = {
            side: [trial for trial in trials if trial.get("towards") != "own"] or trials
            for side, trials in lists.items()
        }
    open_ = {side: dance.open(side) for side in dance.sides}
    for k in range(max(len(each) for each in lists.values())):
        shape: Shape = {}
        for side, trials in lists.items():
            own = {
                name: value
                for name, value in trials[min(k, len(trials) - 1)].items()
                if name in open_[side]
                and value != open_[side][name].default
                and not ("lobes" in dance.values(side) and name in ("begin", "from"))
            }
            if own:
                shape[side] = own
        if shape not in shapes:
            shapes.append(shape)
    return shapes


def _starts(dance: Dance) -> list[Shape]:
    """A toroid turned by half a lobe and by a whole lobe: different lobes then swing back past the body."""
    shapes: list[Shape] = [{}]
    for halves in (1, 2):
        shape: Shape = {}
        for side in dance.sides:
            values = dance.values(side)
            own = dance.open(side).get("from")
            if own is not None and "lobes" in values:
                turned = float(own.default or 0.0) + halves * 180.0 / int(values["lobes"])
                shape[side] = {"from": round(turned, 4)}
        if shape:
            shapes.append(shape)
    return shapes
