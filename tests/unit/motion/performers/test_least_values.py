"""Smallest values of many hands: searched together or alone, moved in time, or settled by one cycle, they are the same."""

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer import kept
from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import Posture
from sequencer.motion.laws.carriage import Carriage, HeldPosture
from sequencer.motion.laws.transforms import Mirrored, Retimed
from sequencer.motion.patterns.library import law_for
from sequencer.motion.performers import least_values as module
from sequencer.motion.performers.batch import Needed, unwrapped
from sequencer.motion.performers.feasibility import (
    body_quantity,
    props_quantity,
    pull_quantity,
    reach_quantity,
)
from sequencer.motion.performers.least_values import Asked, Least, Quantity, least_values
from sequencer.motion.performers.whole_cycles import whole_cycle
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.assembly import assembled
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from tests.next_process import next_process
from tests.nothing_kept import nothing_kept
from tests.unit.motion.performers.drawn import Drawn

BODY = Body(stature=1.7)
POI = Prop(length=0.55, mass=0.2, wick_radius=0.05)


def given(value, slope, *, error=0.01, enough=0.0):
    """A quantity of time alone."""
    return Quantity(
        kind="given",
        fixed=(),
        value=lambda t, _state: value(t),
        slope=lambda cut: np.full(len(cut.start), slope),
        needed=Needed(hand=1, tether=0),
        error=error,
        enough=enough,
        always=lambda _, more: given(value, slope, error=error, enough=more),
    )


def least(quantity, *edges):
    own = Drawn(1)  # of no known content: nothing is kept
    ((*found,),) = least_values([Asked(quantity, (own,), list(pairwise(edges)))])
    return found


def test_the_least_of_each_stretch():
    """|t − ⅓| − ½ on the first of two stretches, and a line that stays above enough on the second."""

    def value(t):
        tent = np.abs(t - 1 / 3) - 0.5
        return np.where(t < 1, tent, 0.2 * t), np.where(t < 1, 7, 8)

    first, second = least(given(value, 1.0), 0.0, 1.0, 2.0)
    assert -0.5 <= first.value <= -0.49
    assert first.beat == pytest.approx(1 / 3, abs=0.01)
    assert first.label == 7
    assert second.value == pytest.approx(0.01)
    assert (np.isnan(second.beat), second.label) == (True, -1)
    assert isinstance(first, Least)


@pytest.mark.parametrize(
    ("enough", "told"), [(0.0, False), (0.3, True), (0.21, True), (0.18, False)]
)
def test_what_stays_above_enough_is_not_looked_up(enough, told):
    """A constant 0.2 with a tolerance of 0.01: known where enough and tolerance are above it."""

    def value(t):
        return np.full(t.shape, 0.2), np.zeros(t.shape, np.int64)

    (found,) = least(given(value, 0.0, enough=enough), 0.0, 1.0)
    assert (found.label == 0) == told


def test_nothing_asked():
    assert least_values([]) == []
    assert least_values([Asked(given(None, 0.0), (Drawn(1),), [])]) == [[]]


# --- many hands, other times, whole cycles ---


def course(side="right", names=("extension", "pro-bend-4"), beats=8.0, later=0.0, wrap=lambda x: x):
    """Blocks of some beats with gaps of two, from rest to rest."""
    spans = [
        Span(
            start=later + (beats + 2) * k, end=later + (beats + 2) * k + beats, kind="block",
            origin=later + (beats + 2) * k, label=name, law=wrap(law_for(name, {}, side=side, body=BODY)),
        )
        for k, name in enumerate(names)
    ]  # fmt: skip
    return assembled(spans, rest(side, BODY, POI))


def intervals(own):
    return [(span.start, span.end) for span in own.spans]


def tempos(later=0.0, step=0.001):
    """Two beats a second, a little faster with every beat."""
    return lambda t: 1.2 + step * np.floor(t - later)


def carriage(later=0.0):
    return Carriage(
        body=BODY,
        held=(
            HeldPosture(later - 2.0, later - 1.0, Posture()),
            HeldPosture(later, later + 8.0, Posture(lean=0.05)),
            HeldPosture(later + 10.0, later + 18.0, Posture(turn=0.2)),
        ),
    )


def questions(later=0.0, **more):
    """Every quantity, of two hands and of two bodies."""
    both = {side: course(side, later=later, **more) for side in ("left", "right")}
    own = both["right"]
    pull = pull_quantity(length=0.55, tempos=(tempos(later),))
    return {
        "reach": [
            Asked(reach_quantity(side=side, body=BODY, carriage=held), (both[side],), intervals(own))
            for side in both
            for held in (Carriage(body=BODY), carriage(later))
        ],
        "pull": [Asked(pull, (each,), intervals(each)) for each in both.values()],
        "body": [
            Asked(
                body_quantity(shape=POI.solids, body=BODY, carriage=held, enough=near), (each,),
                intervals(each),
            )
            for each in both.values()
            for held, near in ((Carriage(body=BODY), 0.05), (carriage(later), 0.3))
        ],
        "props": [
            Asked(
                props_quantity(shapes=(POI.solids, POI.solids), enough=near), tuple(both.values()),
                intervals(own),
            )
            for near in (0.0, 0.25)
        ],
    }  # fmt: skip


@pytest.fixture(scope="module")
def answers():
    """What is found of every quantity, all hands at once."""
    with nothing_kept():
        return {name: least_values(asked) for name, asked in questions().items()}


def found_something(results):
    return any(least.label >= 0 for each in results for least in each)


@pytest.mark.parametrize("name", ["reach", "pull", "body", "props"])
def test_a_stretch_does_not_depend_on_the_others(answers, name):
    """Hand by hand and stretch by stretch, to the last digit."""
    for asked, together in zip(questions()[name], answers[name], strict=True):
        with nothing_kept():
            alone = [
                least_values([asked._replace(intervals=[one])])[0][0] for one in asked.intervals
            ]
        assert repr(alone) == repr(together)  # nan is nan


@pytest.mark.parametrize("name", ["reach", "pull", "body", "props"])
@pytest.mark.parametrize("later", [16.0, 1.0, 0.25])
def test_later_it_is_the_same(answers, name, later):
    """To the last digit where times are exact: what is kept of a block holds wherever it is danced.

    Tempos change at whole beats, so that a pull holds a whole number of beats later only.
    """
    if name == "pull" and later % 1:
        return
    with nothing_kept():
        found = least_values(questions(later)[name])
    back = [[replace(one, beat=one.beat - later) for one in each] for each in found]
    assert repr(back) == repr(answers[name])


@pytest.mark.parametrize("name", ["reach", "pull", "body", "props"])
def test_stretches_of_one_block_are_told_apart(name):
    """They are made of the same objects, and differ in their beats alone: each answer is the one from nothing."""
    asked = questions()[name][0]
    asked = asked._replace(quantity=replace(asked.quantity, enough=999.0))  # every value is told
    (block, *_) = (each for each in asked.trajectories[0].spans if each.kind == "block")
    marks = np.linspace(block.start + 1.0, block.end - 1.0, 6).tolist()
    each = [asked._replace(intervals=[one]) for one in pairwise(marks)]
    with nothing_kept():
        said = [least_values([one]) for one in each]
        again = [least_values([one]) for one in each]
    anew = []
    for one in each:
        with nothing_kept():
            anew.append(least_values([one]))
    assert repr(said) == repr(again) == repr(anew)
    assert len(set(map(repr, anew))) == len(each)


def test_of_objects_that_are_known_nothing_is_looked_up(monkeypatch):
    """Only what an edit changed has its content fed to a key."""
    asked = [one for each in questions().values() for one in each]
    with nothing_kept():
        found = [least_values([one]) for one in asked]
        monkeypatch.setattr(module, "_by_content", lambda _each, _fixed: [])
        assert repr([least_values([one]) for one in asked]) == repr(found)


def test_later_nothing_is_searched_again(monkeypatch, answers):
    with nothing_kept():
        for asked in questions().values():
            least_values(asked)
        monkeypatch.setattr(module, "search", None)
        for name, asked in questions(24.0).items():
            back = [
                [replace(one, beat=one.beat - 24.0) for one in each] for each in least_values(asked)
            ]
            assert repr(back) == repr(answers[name])


@pytest.mark.parametrize(("beats", "same"), [(0.5, True), (1 / 3, False)])
def test_links_of_inexact_beats_are_not_shared(beats, same):
    """Its parts begin at sixteenths of its beats after its origin, which are rounded differently everywhere."""
    linked = next(span.law for span in course().spans if span.kind == "link")
    law = replace(linked, beats=beats)

    def content(origin):
        span = Span(start=origin, end=origin + 0.25, origin=origin, law=law, kind="link", label="")
        quantity = reach_quantity(side="right", body=BODY, carriage=Carriage(body=BODY))
        stretch = module._Stretch(quantity, (Trajectory((span,)),), origin, origin + 0.25)
        return module._content(stretch, b"")

    assert (content(1.0) == content(4.0)) == same


@pytest.mark.parametrize("later", [1 / 3, 8192.0])
def test_what_is_not_exact_is_not_shared(monkeypatch, later):
    """A third of a beat is no binary fraction, and beyond 8192 beats fewer digits are left."""
    with nothing_kept():
        for name, asked in questions().items():
            if name != "pull":
                least_values(asked)
        monkeypatch.setattr(module, "search", None)
        for asked in questions(later).values():
            with pytest.raises(TypeError):
                least_values(asked)


@pytest.mark.parametrize("name", ["reach", "pull", "body", "props"])
@pytest.mark.parametrize(
    "wrap",
    [lambda law: law, lambda law: Mirrored(Retimed(law, 0.3)), lambda law: Retimed(law, 0.2, 1.5)],
    ids=["plain", "mirrored", "quicker"],
)
def test_a_cycle_settles_only_what_stays_above(name, wrap):
    """With cycles looked at first and without: the same results to the last digit, by other samples."""
    names = ("extension", "three-beat-weave", "pro-bend-4")

    settled, found = answered(name, 1.5, names=names, wrap=wrap)
    anew, expected = answered(name, np.inf, names=names, wrap=wrap)
    assert repr(found) == repr(expected)
    assert settled != anew


def answered(name, cycles, **more):
    """How many instants are computed for an answer, and the answer, with cycles looked at from so many on."""
    looks, look = [], module.search

    def counted(evaluate, **given):
        def noted(rows, t, *rest):
            looks.append(len(t))
            return evaluate(rows, t, *rest)

        return look(noted, **given)

    with nothing_kept(), pytest.MonkeyPatch.context() as patch:
        patch.setattr(module, "search", counted)
        patch.setattr(module, "_ENOUGH_CYCLES", cycles)
        found = least_values(questions(**more)[name])
    return sum(looks), found


def test_a_long_block_takes_no_longer():
    """Of eight cycles that stay above all that matters one is searched."""
    few, _ = answered("pull", 1.5, names=("extension",), beats=32.0)
    many, _ = answered("pull", np.inf, names=("extension",), beats=32.0)
    assert few < many / 3


def test_a_pull_beyond_the_range_of_its_tempos_is_found():
    """One beat in eight at half the tempo: the cycle at that tempo is slack, and so is the block."""
    own = Trajectory((block(16.0),))
    quantity = pull_quantity(length=0.55, tempos=(lambda t: np.where(np.floor(t) == 5, 0.4, 2.0),))
    ((found,),) = least_values([Asked(quantity, (own,), [(0.0, 16.0)])])
    assert found.value < 0
    assert 5 <= found.beat <= 6


def block(beats, name="extension", side="right", origin=0.0, start=0.0):
    """One block of a law, which goes on for so many beats."""
    own = law_for(name, {}, side=side, body=BODY)
    return Span(start=start, end=start + beats, origin=origin, law=own, kind="block", label="")


def test_what_comes_within_the_tolerance_of_enough_is_told_as_without_cycles():
    """A dip each beat to 8 mm, of which the tolerance is 10: of three beats a look falls into one, of one beat none.

    So a cycle must be proven to stay above `enough` and the tolerance.
    """
    own = Trajectory((block(3.0),))

    def value(t):
        return 0.008 + np.abs(np.mod(t, 1.0) - 10 / 41), np.zeros(t.shape, np.int64)

    def dip(beats, cycles):
        with nothing_kept(), pytest.MonkeyPatch.context() as patch:
            patch.setattr(module, "_ENOUGH_CYCLES", cycles)
            asked = Asked(given(value, 1.0, error=0.01), (own,), [(0.0, beats)])
            return least_values([asked])[0][0]

    assert own.spans[0].law.period == 1.0
    assert dip(1.0, np.inf).label == -1
    assert 0.008 <= dip(3.0, np.inf).value < 0.01
    assert dip(3.0, 1.5) == dip(3.0, np.inf)


def test_two_hands_are_settled_only_while_they_keep_step():
    """From beat 16 on the left hand is half a cycle later: what was proven before does not hold then."""
    left = Trajectory((block(16.0, side="left"), block(16.0, side="left", origin=16.5, start=16.0)))
    right = Trajectory((block(32.0),))

    def gap(low, high, near):
        quantity = props_quantity(shapes=(POI.solids, POI.solids), enough=near)
        return least_values([Asked(quantity, (left, right), [(low, high)])])[0][0]

    in_step, out_of_step = gap(1.0, 15.0, 9.0).value, gap(17.0, 31.0, 9.0).value
    near = (in_step + out_of_step) / 2
    assert abs(in_step - out_of_step) > 0.05
    for low, high, least in ((1.0, 15.0, in_step), (17.0, 31.0, out_of_step)):
        assert (gap(low, high, near).label < 0) == (least > near)
    least = gap(0.0, 32.0, near)
    assert least.label >= 0
    assert least.value <= min(in_step, out_of_step) + 0.005


def test_what_is_kept_of_one_holds_for_no_other(tmp_path, monkeypatch):
    """One thing changed at a time, all in one memory: each answer is the one from nothing."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    monkeypatch.setenv("LOCALAPPDATA", str(tmp_path))
    own, other = course(beats=2.0), course(beats=2.0, names=("extension", "three-beat-weave"))
    bent, still = carriage(), Carriage(body=BODY)
    other_way = replace(
        bent,
        held=tuple(each._replace(posture=Posture(lean=-each.posture.lean)) for each in bent.held),
    )
    low, long = Body(stature=1.5), Prop(length=0.7, mass=0.2, wick_radius=0.05)

    def reach(side="right", body=BODY, held=still):
        return reach_quantity(side=side, body=body, carriage=replace(held, body=body), enough=9.0)

    def pull(length=0.55, tempo=tempos()):  # noqa: B008 - read only
        return pull_quantity(length=length, tempos=(tempo,), enough=999.0)

    def gap(prop=POI, body=BODY, held=still, near=9.0):
        return body_quantity(
            shape=prop.solids, body=body, carriage=replace(held, body=body), enough=near
        )

    between = [
        props_quantity(shapes=(a.solids, b.solids), enough=9.0)
        for a, b in ((POI, POI), (POI, long), (long, POI))
    ]
    every = [
        *((each, (own,)) for each in (reach(), reach("left"), reach(body=low), reach(held=bent), reach(held=other_way))),
        *((each, (own,)) for each in (pull(), pull(0.7), pull(tempo=tempos(step=0.01)), pull(tempo=tempos(1.0)))),
        *((each, (own,)) for each in (gap(), gap(long), gap(body=low), gap(held=bent), gap(near=0.2))),
        *((replace(each, whether=True), (own,)) for each in (reach(), pull(), gap())),
        *((each, (other,)) for each in (reach(), pull(), gap())),
        *((each, pair) for each in between for pair in ((own, other), (other, own))),
    ]  # fmt: skip
    asked = [[Asked(quantity, hands, intervals(own)[1:4])] for quantity, hands in every]
    asked.append([Asked(reach(), (own,), intervals(own)[2:5])])
    quicker = pull(tempo=tempos(step=0.3))
    for later in (0.25, 0.75):  # within the same beats, of which one begins sooner
        shifted = course(beats=2.0, later=later)
        asked.append([Asked(quicker, (shifted,), intervals(shifted)[1:4])])
    with nothing_kept():
        said = [least_values(each) for each in asked]
    anew = []
    for each in asked:
        with nothing_kept():
            anew.append(least_values(each))
    assert list(map(repr, said)) == list(map(repr, anew))
    for new in (True, False):  # the same in a process that lays them on the shelf, and in the next
        with monkeypatch.context() as patch, next_process(), kept.shelf("show"):
            if not new:
                patch.setattr(module, "_by_stretch", None)
            assert [repr(least_values(each)) for each in asked] == list(map(repr, anew))
    # each change shows, except that of two equal props each goes into the other hand
    assert len(set(map(repr, anew))) == len(anew) - 1


def test_of_a_cycle_only_whether_it_stays_above_is_asked():
    """A fall to −1 at beat ½: known from the first looks, where the lowest point takes many more."""
    looks = []

    def value(t):
        looks.append(len(t))
        return np.abs(t - 0.5) - 1.0 + 0.3 * np.cos(40 * t), np.zeros(t.shape, np.int64)

    plain = given(value, 13.0, error=1e-4)
    (exact,) = least(plain, 0.0, 1.0)
    many, looks[:] = sum(looks), []
    (below,) = least(replace(plain, whether=True), 0.0, 1.0)
    assert exact.value <= below.value < 0
    assert below.label == 0
    assert sum(looks) < many / 3
    above = given(lambda t: (value(t)[0] + 1.4, value(t)[1]), 13.0, error=1e-4)
    assert repr(least(replace(above, whether=True), 0.0, 1.0)) == repr(least(above, 0.0, 1.0))


def test_hands_with_different_cycles_are_settled_over_the_longer_one():
    """Periods of 1 and 3 beats meet every 3; of 2 and 3 they are looked at as they are danced."""
    own = law_for("extension", {}, side="right", body=BODY)
    one, three = Retimed(own, 0.0, own.period), Retimed(own, 0.0, own.period / 3)
    two = Retimed(own, 0.0, own.period / 2)
    cycle = whole_cycle([one, three], [1.0, 2.5], of_rates=False)
    assert (cycle.origins, cycle.period) == ((0.0, 1.5), 3.0)
    assert cycle.laws == (one, three)
    assert [each.spans[0].end for each in cycle.trajectories] == [3.0, 3.0]
    assert whole_cycle([two, three], [0.0, 0.0], of_rates=False) is None


def test_cycles_of_one_hand():
    """Neither where it begins nor, for places, how fast it is; for forces the pace counts."""
    own = law_for("extension", {}, side="right", body=BODY)
    wrapped = Retimed(Mirrored(Retimed(own, 0.5, 2.0)), 0.25, 1.5)
    plain = unwrapped(own)
    places = whole_cycle([wrapped], [3.0], of_rates=False)
    assert places.laws == (Mirrored(plain.law),)
    assert (places.origins, places.period) == ((0.0,), plain.law.period)
    forces = whole_cycle([wrapped], [3.0], of_rates=True)
    assert forces.laws == (Mirrored(Retimed(plain.law, 0.0, 3.0 * plain.pace)),)
    assert_allclose(forces.period, plain.law.period / (3.0 * plain.pace))
    assert whole_cycle([Drawn(1)], [0.0], of_rates=False) is None
    assert whole_cycle([replace(plain.law, period=np.inf)], [0.0], of_rates=False) is None


@pytest.mark.parametrize("pace", [1.0, 1.25])
def test_a_cycle_of_two_hands_is_the_same_after_a_shift_of_both(pace):
    """Only by how much one is ahead of the other counts; and the two are as far ahead as they are danced."""
    base = [law_for("extension", {}, side=side, body=BODY) for side in ("left", "right")]

    def cycle(first, second, origins=(4.0, 4.0)):
        laws = [Retimed(own, by, pace) for own, by in zip(base, (first, second), strict=True)]
        return laws, whole_cycle(laws, origins, of_rates=False)

    _, own = cycle(0.0, 0.25)
    assert cycle(0.4, 0.65)[1] == own
    assert cycle(0.0, 0.25 + own.laws[1].law.period, (4.0, 4.0))[1] == own
    assert (
        cycle(0.0, 0.25 - pace, (4.0, 3.0))[1] == own
    )  # one begins sooner, and so much less is it ahead
    assert cycle(0.0, 0.5)[1] != own
    laws, found = cycle(0.7, 0.3, (2.0, 2.5))
    beats = np.linspace(2.0, 9.0, 50)
    begun = beats + 0.7 / pace - 2.0  # where the first is that far into its cycle
    for law, origin, each in zip(laws, (2.0, 2.5), found.laws, strict=True):
        assert_allclose(each.at(begun).hand, law.at(beats - origin).hand, atol=1e-9)


def test_methods_of_one_object_are_told_apart():
    """A tempo map and the way it is asked, of which a stretch is known; a method is another object each time."""

    class Tempo:
        def slow(self, beats):
            return np.full(np.shape(beats), 1.0)

        def fast(self, beats):
            return np.full(np.shape(beats), 2.0)

    own, tempo = course(beats=2.0), Tempo()

    def pulls(per_second):
        quantity = pull_quantity(length=0.55, tempos=(per_second,), enough=999.0)
        return least_values([Asked(quantity, (own,), intervals(own)[1:4])])

    with nothing_kept():
        slow, fast = pulls(tempo.slow), pulls(tempo.fast)
        assert all(a.value < b.value for a, b in zip(slow[0], fast[0], strict=True))
        assert pulls(Tempo().slow) == slow
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(module, "_by_content", lambda _each, _fixed: [])
            assert (pulls(tempo.slow), pulls(tempo.fast)) == (slow, fast)


def test_the_same_postures_at_other_beats_are_told_apart():
    """The same objects all around, and the same beats: only when the body leans is another."""
    own, lean, upright = course(beats=2.0), Posture(lean=0.17), Posture()

    def reaches(begin):
        held = (
            HeldPosture(-9.0, -8.0, upright),
            HeldPosture(begin, begin + 0.5, lean),
            HeldPosture(20.0, 21.0, upright),
        )
        quantity = reach_quantity(
            side="right", body=BODY, carriage=Carriage(body=BODY, held=held), enough=9.0
        )
        return least_values([Asked(quantity, (own,), [(0.0, 8.0)])])

    with nothing_kept():
        early, late = reaches(0.5), reaches(6.5)
    with nothing_kept():
        assert reaches(6.5) == late
    assert early != late
