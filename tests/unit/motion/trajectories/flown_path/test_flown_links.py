"""Links as one hand can fly them: limits at every instant, the states at both ends, and the law of motion itself.

Links of a beat from a static spin into a weave, and from and to rest, at 100 beats a minute.
"""

from dataclasses import replace
from functools import cache, partial

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.integrate import solve_ivp
from scipy.interpolate import make_interp_spline

from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import Posture
from sequencer.motion.flown import flown_motion
from sequencer.motion.flown.apart import LEAST_BESIDE, gaps_between
from sequencer.motion.flown.body_space import CLEARANCE
from sequencer.motion.flown.flown_motion import LEAST_PULL, OUT_OF_REACH, FlownLimits, Flying
from sequencer.motion.flown.period_search import flown_period
from sequencer.motion.flown.tether import drag_of
from sequencer.motion.patterns.library import law_for
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.flown_path import flown_links
from sequencer.motion.trajectories.flown_path.flown_links import (
    Beside,
    GripLimits,
    _fits,
    flown_link,
    surely_flies,
)
from sequencer.motion.trajectories.one_link.head_states import (
    HeadState,
    hanging,
    motion_of,
    state_in,
)
from sequencer.motion.trajectories.rests import rest
from tests.nothing_kept import nothing_kept

BODY = Body(stature=1.7)
POI = Prop(length=0.45, mass=0.2, wick_radius=0.05)
FLYING = Flying(prop=POI, body=BODY, side="right", tempo=100.0)
GRAVITY = 9.80665  # [m/s²] standard gravity
MIRROR = np.array([-1.0, 1.0, 1.0])  # polar vectors in x = 0; axial ones change the other signs


@cache
def motion(name):
    beats = {"static-spin": 1.0, "two-beat-weave": 2.0}[name]
    law = law_for(name, {}, side="right", body=BODY, beats=beats, tether=POI.length)
    return law, flown_period(law, FLYING)


def states(name):
    law, period = motion(name)

    def at(beat):
        own = beat % law.period
        return state_in(period, law.at(np.array([own])).plane[0], own)

    return at


def still(_beat):
    return hanging(rest("right", BODY, POI), POI.length)


ENDS = {
    "between": (states("static-spin"), states("two-beat-weave")),
    "from rest": (still, states("static-spin")),
    "to rest": (states("static-spin"), still),
}


@cache
def link(which, beats=1.0):
    return flown_link(*ENDS[which], beats, FLYING)


def sampled(flown, many=6001):
    """Times [s] and the flight, densely, inside the bridge."""
    beats = np.linspace(flown.head.start, flown.head.end, many)
    return beats * FLYING.beat, flown.flight(beats)


@pytest.mark.parametrize("which", ENDS)
def test_limits_hold_at_every_instant_and_so_do_the_bounds(which):
    """What a link that flies promises, looked at densely; figures bound what is seen, and pull is the head's weight."""
    flown, limits = link(which), FLYING.limits
    assert flown.broken == ()
    _, seen = sampled(flown)
    pull = np.linalg.norm(seen.force, axis=-1) / GRAVITY
    speed = np.linalg.norm(seen.hand_rate, axis=-1)
    push = np.linalg.norm(seen.hand_acceleration, axis=-1)
    room = FLYING.space(CLEARANCE)

    assert pull.min() >= flown.least_pull - 1e-9
    assert flown.least_pull >= LEAST_PULL
    # the published hand is a spline through the hand of the law, to millimetres: its rates are near, not the same
    assert speed.max() <= 1.01 * flown.hand_speed <= 1.01 * limits.hand_speed
    assert push.max() <= 1.05 * flown.hand_acceleration <= 1.05 * limits.hand_acceleration
    assert room.spare_reach(seen.hand).min() >= -OUT_OF_REACH - 1e-4
    assert np.linalg.norm(seen.tether, axis=-1) == pytest.approx(1.0)


@pytest.mark.parametrize("which", ENDS)
def test_both_ends_are_the_states_given_to_the_fourth_derivative(which):
    """So the hand is smooth to its acceleration: it follows from four derivatives of the head."""
    flown = link(which)
    before, after = ENDS[which]
    low, high = before(flown.head.start), after(flown.head.end - flown.beats)
    for state, beat in ((low, flown.head.start), (high, flown.head.end)):
        for order in range(5):
            got = flown.head.at(np.array([beat]), order)[0]
            size = max(np.abs(state.path[order]).max(), 1.0)
            assert_allclose(got / size, state.path[order] / size, atol=1e-9)


@pytest.mark.parametrize("which", ENDS)
def test_the_head_goes_there_if_the_hand_does(which):
    """Newton's second law on a tether: the head integrated forward with the exact hand, to a millimetre."""
    flown = link(which)
    times, seen = sampled(flown, 1201)
    hand = make_interp_spline(times, seen.hand, k=5)
    moved, pushed = hand.derivative(1), hand.derivative(2)
    drag, length, down = drag_of(POI), POI.length, np.array([0.0, 0.0, -GRAVITY])

    def slope(time, state):
        d, turn = state[:3], state[3:]
        rate = moved(time) + length * turn
        drive = down - drag * np.sqrt(rate @ rate) * rate - pushed(time)
        return np.concatenate((turn, (drive - (drive @ d) * d) / length - (turn @ turn) * d))

    turn = (seen.head_rate[0] - seen.hand_rate[0]) / length
    first, some = np.concatenate((seen.tether[0], turn)), times[::100]
    got = solve_ivp(slope, times[[0, -1]], first, t_eval=some, rtol=1e-7, atol=1e-9)
    head = seen.hand[::100] + length * got.y[:3].T
    assert np.linalg.norm(head - seen.head[::100], axis=-1).max() < 1e-3


def test_a_hanging_prop_hangs():
    """At rest the tether is plumb and pulls with the head's weight; nothing moves."""
    state = still(0.0)
    seen = motion_of(state, FLYING)
    assert_allclose(seen.tether, [0.0, 0.0, -1.0], atol=1e-12)
    assert_allclose(seen.hand - state.path[0], [0.0, 0.0, POI.length], atol=1e-12)
    assert not np.any(state.path[1:])
    assert not np.any(np.abs(seen.hand_rate) + np.abs(seen.tether_rate))


def test_the_mirror_image_flies_as_the_mirror_image():
    """A body has two sides alike: the other hand's link is the same in the mirror."""

    def flipped(states):
        def at(beat):
            own = states(beat)
            return HeadState(own.path * MIRROR, own.plane * -MIRROR)

        return at

    before, after = ENDS["between"]
    other = flown_link(flipped(before), flipped(after), 1.0, replace(FLYING, side="left"))
    own = link("between")
    assert other.broken == own.broken == ()
    assert_allclose(other.head.coefficients, own.head.coefficients * MIRROR, atol=2e-3)


def test_what_cannot_be_flown_says_which_limits():
    """A hand that may not accelerate at 8 m/s², less than gravity, turns no spin into a weave in a beat."""
    weak = replace(FLYING, limits=FlownLimits(hand_acceleration=8.0))
    flown = flown_link(*ENDS["between"], 1.0, weak)
    assert "acceleration" in flown.broken
    assert flown.missed()["acceleration"] > 0.0
    assert flown.hand_acceleration > 8.0


@pytest.mark.parametrize("beats", [0.0, -1.0, np.nan, np.inf])
def test_beats_must_be_positive(beats):
    with pytest.raises(ValueError, match="beats must be positive"):
        flown_link(*ENDS["between"], beats, FLYING)


def test_a_rigid_prop_is_turned_by_the_hand():
    staff = Prop(kind="staff", length=0.7, behind=0.7, mass=0.8, wick_radius=0.04)
    with pytest.raises(ValueError, match="a staff is turned by the hand"):
        flown_link(*ENDS["between"], 2.0, replace(FLYING, prop=staff))


def test_bridges_begin_and_end_on_half_beats(monkeypatch):
    """In a link of 2.5 beats a bridge of a beat or two may begin after each half beat, and end as long before the end."""
    asked = {}

    def searched(firsts, lasts, _beats, _flying, _other):
        asked.update(firsts=dict(firsts), lasts=dict(lasts))
        return link("between")

    monkeypatch.setattr("sequencer.motion.trajectories.flown_path.flown_links._searched", searched)
    before, after = ENDS["between"]
    flown_link(lambda beat: before(beat + 0.125), after, 2.5, FLYING)
    assert list(asked["firsts"]) == [0.0, 0.5, 1.0, 1.5]
    assert list(asked["lasts"]) == [2.5, 2.0, 1.5, 1.0]
    spans = {
        (start, end)
        for start in asked["firsts"]
        for end in asked["lasts"]
        if _fits(start, end, 2.5)
    }
    assert {end - start for start, end in spans} == {1.0, 1.5, 2.0}
    assert len(spans) == 9  # four of a beat, three of one and a half, two of two
    for start, state in asked["firsts"].items():
        assert np.array_equal(state.path, before(start + 0.125).path)
    for end, state in asked["lasts"].items():
        assert np.array_equal(state.path, after(end - 2.5).path)


def test_a_link_is_kept_by_the_states_at_its_ends(monkeypatch):
    """The same states again are answered without a search, whoever gives them; other states are not."""
    link("between")
    searched = []
    module = "sequencer.motion.trajectories.flown_path.flown_links._searched"
    monkeypatch.setattr(module, lambda *asked: searched.append(asked) or link("from rest"))
    before, after = ENDS["between"]
    again = flown_link(lambda beat: before(beat + 1.0), after, 1.0, FLYING)  # one turn later
    assert searched == []
    assert_allclose(again.head.coefficients, link("between").head.coefficients, rtol=0, atol=0)
    flown_link(before, lambda beat: after(beat + 0.25), 1.0, FLYING)
    assert len(searched) == 1


def test_a_kept_link_is_the_found_one():
    """To the last digit, from JSON and back."""
    from json import dumps, loads

    from sequencer.motion.trajectories.flown_path.flown_links import _link_from, _record_of

    own = link("between")
    again = _link_from(loads(dumps(_record_of(own))), own.beats, FLYING)
    assert np.array_equal(again.head.coefficients, own.head.coefficients)
    assert (again.head.start, again.head.step) == (own.head.start, own.head.step)
    assert (again.beats, again.residual, again.broken) == (own.beats, own.residual, own.broken)
    beats = np.linspace(0.0, own.drawn.beats, 9)
    assert np.array_equal(again.drawn.at(beats).hand, own.drawn.at(beats).hand)
    assert np.array_equal(again.drawn.at(beats).tether, own.drawn.at(beats).tether)


def danced(which, length=1.0):
    """Head and hand of what comes before a link, danced on, and of what comes after it, begun."""

    def places(states, shift):
        def at(beats):
            path = [motion_of(states(beat - shift), FLYING) for beat in beats.tolist()]
            hand = np.stack([each.hand for each in path])
            return hand + POI.length * np.stack([each.tether for each in path]), hand

        return at

    return places(ENDS[which][0], 0.0), places(ENDS[which][1], length)


def test_a_link_keeps_clear_of_the_other_prop():
    """A prop that hangs where the free link's head passes half way: the link flies, past it."""
    free = link("between")
    middle = free.flight(np.array([0.5])).head[0]
    looks = np.linspace(0.0, 1.0, 3001)

    def there(beats):
        head = middle + np.stack([0.05 * np.sin(beats), 0.0 * beats, 0.0 * beats], axis=-1)
        return head, head + np.array([0.0, 0.0, POI.length])

    beside = Beside(POI, there, *danced("between"))

    def gaps(own):
        seen = [own.flight(looks).head, own.flight(looks).hand]
        inside = (looks >= own.head.start) & (looks <= own.head.end)
        return gaps_between(POI, *seen, beside.capsules(looks))[inside]

    assert gaps(free).min() < 0.0
    assert free.beside_gap == np.inf
    past = flown_link(*ENDS["between"], 1.0, FLYING, beside)
    assert past.broken == ()
    assert gaps(past).min() >= LEAST_BESIDE - 1e-3  # between the looks
    assert past.beside_gap == pytest.approx(gaps(past).min(), abs=3e-3)


def test_a_link_that_cannot_keep_clear_says_so():
    """A prop that rides on the static spin itself: what is danced on beside it meets it."""
    there, _ = danced("between")
    assert (
        "other prop"
        in flown_link(*ENDS["between"], 1.0, FLYING, Beside(POI, there, *danced("between"))).broken
    )


def test_the_way_that_is_likeliest_bends_round_the_other_prop(monkeypatch):
    """No other way is tried: the bridge itself is sought with the prop in its way."""
    monkeypatch.setattr(flown_links, "MOST_TRIED_BESIDE", 1)
    monkeypatch.setattr(flown_links, "_near", lambda ways, *_: np.zeros(len(ways.tether)))
    middle = link("between").flight(np.array([0.5])).head[0]

    def there(beats):
        head = np.broadcast_to(middle + np.array([0.0, 0.0, 0.07]), (len(beats), 3))
        return head, head + np.array([0.0, 0.0, POI.length])

    own = flown_link(*ENDS["between"], 1.0, FLYING, Beside(POI, there, *danced("between")))
    assert own.beside_gap >= LEAST_BESIDE


def test_what_is_danced_beside_a_bridge_counts_as_well():
    """All is far away but the motion that goes on, at the start, or the one that has begun, at the end."""
    free, beats = link("between"), np.linspace(0.0, 1.0, 97)
    far = np.full((97, 2, 7), 50.0)
    for place, name in ((0, "going_on"), (-1, "beginning")):
        gaps = {each: np.full(97, 9.0) for each in ("going_on", "beginning")}
        gaps[name][place] = -0.2
        other = flown_links._Other(None, beats, far, **gaps)
        assert flown_links._gap(free, other) == -0.2
        gaps[name][[place, 48]] = 9.0, -0.2  # while the bridge is danced
        assert flown_links._gap(free, other) > 8.0


@pytest.mark.parametrize("which", ENDS)
def test_the_other_hand_flies_the_mirror_image_without_a_search(which, monkeypatch):
    """Source: body, gravity and limits have that symmetry; places are mirrored in x = 0, planes are axial."""
    link(which)
    monkeypatch.delattr(flown_links, "_searched")

    def mirrored(state):
        return lambda beat: HeadState(state(beat).path * MIRROR, state(beat).plane * -MIRROR)

    other = flown_link(*map(mirrored, ENDS[which]), 1.0, replace(FLYING, side="left"))
    beats = np.linspace(0.0, 1.0, 41)
    own, seen = link(which), other.flight(beats)
    for name in ("head", "hand", "force", "hand_acceleration"):
        assert_allclose(getattr(seen, name), getattr(own.flight(beats), name) * MIRROR, atol=1e-9)
    drawn, there = own.drawn.at(beats), other.drawn.at(beats)
    for name in ("hand", "hand_rate", "tether", "tether_rate", "tether_acceleration"):
        assert_allclose(getattr(there, name), getattr(drawn, name) * MIRROR, atol=1e-9)
    assert_allclose(there.plane, drawn.plane * -MIRROR, atol=1e-9)
    assert (other.broken, other.flying.side) == (own.broken, "left")


def test_a_left_hand_keeps_clear_of_what_is_beside_it():
    """The mirror image of the prop beside is kept clear of by the mirror image of the hand."""
    middle = link("between").flight(np.array([0.5])).head[0]

    def there(beats):
        head = np.broadcast_to(middle + np.array([0.0, 0.0, 0.07]), (len(beats), 3))
        return head, head + np.array([0.0, 0.0, POI.length])

    def flipped(places):
        return lambda beats: tuple(own * MIRROR for own in places(beats))

    def mirrored(state):
        return lambda beat: HeadState(state(beat).path * MIRROR, state(beat).plane * -MIRROR)

    own = Beside(POI, there, *danced("between"))
    mates = Beside(POI, *map(flipped, (own.at, own.before, own.after)))
    right = flown_link(*ENDS["between"], 1.0, FLYING, own)
    left = flown_link(*map(mirrored, ENDS["between"]), 1.0, replace(FLYING, side="left"), mates)
    assert left.beside_gap == right.beside_gap
    assert_allclose(left.head.coefficients, right.head.coefficients * MIRROR, atol=1e-12)


def test_a_quick_look_finds_a_way_only_where_the_whole_search_does():
    """What a draft relies on: yes is never said of a link that breaks a limit when it is sought whole."""
    seen = {}
    for which, (before, after) in ENDS.items():
        for beats in (0.25, 1.0, 2.0):
            seen[which, beats] = surely_flies(before, after, beats, FLYING)
            if seen[which, beats]:
                assert not flown_link(before, after, beats, FLYING).broken
    assert seen["between", 2.0]
    assert not any(seen[which, 0.25] for which in ENDS)


def test_a_quick_look_at_the_other_hand_is_that_at_the_mirror_image():
    left = replace(FLYING, side="left")
    before, after = (flown_links._mirrored_state(each) for each in ENDS["between"])
    for beats in (0.25, 2.0):
        assert surely_flies(before, after, beats, left) == surely_flies(
            *ENDS["between"], beats, FLYING
        )


@pytest.mark.parametrize(
    ("missed", "broken"),
    [
        ({"acceleration": 0.009, "speed": 0.009}, ()),
        ({"acceleration": 0.011}, ("acceleration",)),
        ({"pull": 0.001}, ("pull",)),
    ],
)
def test_what_takes_over_at_a_limit_may_pass_it_by_a_hundredth_but_never_pulls_less(
    monkeypatch, missed, broken
):
    own = replace(link("between"))
    monkeypatch.setattr(type(own), "missed", lambda _link: missed)
    assert own.broken == broken


def test_a_quick_look_leaves_what_misses_a_limit_by_a_third_as_the_whole_search_leads_nowhere(
    monkeypatch,
):
    """Ways that are first 30 % over a limit are sought no further; sought on, none of them flew, and each came out worse."""
    real, looks = flown_links.held_to_limits, []

    def held(problem, start, motion_of, **more):
        looks.append([])

        def motion(found):
            own = motion_of(found)
            looks[-1].append(max(own.missed().values(), default=0.0))
            return own

        return real(problem, start, motion, **more)

    monkeypatch.setattr(flown_links, "held_to_limits", held)
    with nothing_kept():
        assert not surely_flies(*ENDS["between"], 0.75, FLYING)
        quick = [tuple(each) for each in looks]
        looks.clear()
        assert flown_link(*ENDS["between"], 0.75, FLYING).broken
    assert len(quick) == 4
    assert all(len(each) == 1 and each[0] > 0.3 for each in quick)
    longer = [tuple(each) for each in looks if each[0] < 1.0]
    assert len(longer) >= 3
    assert all(len(each) == 2 and each[1] > each[0] for each in longer)
    looks.clear()
    with nothing_kept():
        assert surely_flies(*ENDS["between"], 1.0, replace(FLYING, tempo=110.0))
    assert looks[-1][0] > 0.05  # a twentieth over a limit is sought on, and held
    assert looks[-1][-1] == 0.0


def test_what_a_quick_look_flew_is_what_the_whole_search_flies():
    with nothing_kept():
        alone = flown_link(*ENDS["between"], 1.0, FLYING)
        assert not flown_links._FLEW
    with nothing_kept():
        assert surely_flies(*ENDS["between"], 1.0, FLYING)
        assert len(flown_links._FLEW) == 1
        assert not surely_flies(*ENDS["between"], 0.75, FLYING)  # left early, so not the same
        assert len(flown_links._FLEW) == 1
        after = flown_link(*ENDS["between"], 1.0, FLYING)
    assert after.head.coefficients.tobytes() == alone.head.coefficients.tobytes()


def test_a_link_that_asks_too_much_of_the_grip_or_is_too_fast_is_no_link():
    own = link("between")
    pull, speed = own.pull[1], own.head_speed
    ask = partial(surely_flies, *ENDS["between"], 1.0, FLYING)
    assert ask(GripLimits(pull=1.001 * pull, head_speed=1.001 * speed))
    assert not ask(GripLimits(pull=0.5 * pull))
    assert not ask(GripLimits(head_speed=0.5 * speed))


def test_what_would_linger_by_the_body_is_flown_farther_from_it(monkeypatch):
    """Nearer than 5 cm a slow flame would hurt; what passes quickly is left 3 cm away, as it is. Any speed counts as slow here."""
    with nothing_kept():
        near = flown_link(*ENDS["to rest"], 1.0, FLYING)
    assert near.body_gap == pytest.approx(0.03, abs=0.003)
    monkeypatch.setattr(flown_motion, "SLOW_PASS", 100.0)
    assert replace(near).lingers
    with nothing_kept():
        far = flown_link(*ENDS["to rest"], 1.0, FLYING)
    assert far.body_gap > 0.05
    assert not far.broken
    assert not far.lingers


STATE = HeadState(np.arange(15.0).reshape(5, 3), np.array([0.0, 0.0, 1.0]))
BRIDGE = flown_links._Bridge(0.1, 0.0, 1.0, lambda: None, STATE, STATE, np.ones((2, 3)))


@pytest.mark.parametrize(
    "other",
    [
        {"start": 0.5},
        {"end": 1.5},
        {"first": STATE._replace(path=STATE.path + 1e-12)},
        {"first": STATE._replace(plane=-STATE.plane)},
        {"last": STATE._replace(path=STATE.path + 1e-12)},
        {"last": STATE._replace(plane=-STATE.plane)},
        {"middle": BRIDGE.middle * [1.0, 1.0, -1.0]},
    ],
)
def test_what_was_flown_is_known_by_its_bridge(other):
    """Another way of the tether between the same ends is another link."""
    known = flown_links._content(BRIDGE, 1.0, FLYING)
    assert flown_links._content(BRIDGE._replace(unlikely=0.2), 1.0, FLYING) == known
    assert flown_links._content(BRIDGE._replace(**other), 1.0, FLYING) != known


@pytest.mark.parametrize(
    "other",
    [
        {"prop": replace(POI, mass=0.21)},
        {"prop": replace(POI, wick_radius=0.06)},
        {"body": Body(stature=1.71)},
        {"side": "left"},
        {"tempo": 101.0},
        {"posture": Posture(lean=0.1)},
        {"limits": FlownLimits(hand_acceleration=69.0)},
    ],
)
def test_what_was_flown_is_known_by_who_flies_with_what(other):
    """A link of another body, prop or limit is another link."""
    known = flown_links._content(BRIDGE, 1.0, FLYING)
    assert flown_links._content(BRIDGE, 1.0, replace(FLYING)) == known
    assert flown_links._content(BRIDGE, 2.0, FLYING) != known
    assert flown_links._content(BRIDGE, 1.0, replace(FLYING, **other)) != known
