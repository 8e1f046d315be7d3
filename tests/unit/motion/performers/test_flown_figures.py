"""Figures of flown blocks: those of the period, kept to the last digit, at a tempo and in a posture that is shared."""

from dataclasses import astuple, replace
from json import dumps, loads

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import UPRIGHT, Posture
from sequencer.motion.flown.flown_motion import FlownLimits, Flying
from sequencer.motion.flown.period_search import flown_period
from sequencer.motion.laws.carriage import Carriage, carried
from sequencer.motion.patterns.library import law_for
from sequencer.motion.performers import flown_figures as module
from sequencer.motion.performers.flown_figures import FlyingHand, flying_hand
from sequencer.motion.props.prop import Prop
from sequencer.motion.props.tension import lowest_tempo
from sequencer.motion.trajectories.trajectory import Span
from sequencer.timing.tempo import TempoMap

BODY = Body(stature=1.7)
POI = Prop(length=0.45, mass=0.2, wick_radius=0.05, flame_reach=0.3)
LAW = law_for("static-spin", {}, side="right", body=BODY, beats=1.0, tether=POI.length)
LIMITS = FlownLimits(hand_speed=5.0, hand_acceleration=70.0)


def block(law=LAW, start=0.0, end=8.0):
    return Span(start=start, end=end, law=law, origin=start, kind="block", label="spin")


def hand(seconds=0.6, prop=POI, carriage=None):
    tempo = TempoMap(np.arange(40) * seconds) if np.isscalar(seconds) else TempoMap(seconds)
    return FlyingHand(
        side="right", prop=prop, carriage=carriage or Carriage(body=BODY), tempo=tempo, limits=LIMITS
    )  # fmt: skip


def test_a_hand_is_the_same_as_long_as_all_that_it_is_of_is():
    tempo, carriage = TempoMap(np.arange(40) * 0.6), Carriage(body=BODY)
    given = {"side": "right", "prop": POI, "carriage": carriage, "tempo": tempo, "limits": LIMITS}
    own = flying_hand(**given)
    assert flying_hand(**given) is own
    assert (own.side, own.prop, own.carriage, own.tempo, own.limits) == tuple(given.values())
    others = {
        "side": "left", "prop": replace(POI, length=0.5), "carriage": Carriage(body=BODY),
        "tempo": TempoMap(np.arange(40) * 0.6), "limits": replace(LIMITS, hand_speed=4.0),
    }  # fmt: skip
    for name, other in others.items():
        changed = flying_hand(**{**given, name: other})
        assert getattr(changed, name) is other


def test_figures_are_those_of_the_period():
    flying = Flying(
        prop=replace(POI, flame_reach=0.0), body=BODY, side="right", tempo=100.0, limits=LIMITS
    )
    own, figures = flown_period(LAW, flying), hand().figures(block())
    assert (figures.head_rms, figures.head_most) == own.head_off
    assert (figures.hand_rms, figures.hand_most) == own.hand_off
    assert figures.least_pull == own.least_pull
    assert (figures.hand_speed, figures.hand_acceleration) == (
        own.hand_speed,
        own.hand_acceleration,
    )
    assert (figures.spare_reach, figures.tether_off) == (own.spare_reach, own.tether_off)
    assert (figures.residual, figures.broken) == (own.residual, own.broken)
    assert figures.flies
    assert not figures.soft


def test_kept_figures_are_the_found_ones():
    own = hand().figures(block())
    assert module.restored_figures(loads(dumps(astuple(own)))) == own


def test_what_the_figures_mean():
    """15 cm RMS reads clean, more soft; a search that did not converge counts only where a limit is missed."""
    own = replace(hand().figures(block()), head_rms=0.15, head_most=0.301, hand_most=0.2)
    assert not own.soft
    assert replace(own, head_rms=0.151).soft
    assert not replace(own, head_rms=0.151, broken=("pull",)).soft
    assert own.margin == pytest.approx(0.33)
    assert replace(own, hand_most=0.5).margin == pytest.approx(0.52)
    assert not replace(own, residual=0.02).unsettled
    assert replace(own, residual=0.02, broken=("pull",)).unsettled
    assert not replace(own, residual=0.009, broken=("pull",)).unsettled


def test_the_fastest_tempo_to_a_whole_beat_a_minute_and_an_unlit_prop():
    """Beats of 0.6 s and of 0.59 s: 101.69 a minute is flown as 102, whatever its flame."""
    seconds = np.cumsum([0.0] + [0.6] * 4 + [0.59] * 20)
    flying = hand(seconds).flying(0.0, 8.0)
    assert flying.tempo == 102.0
    assert hand(seconds).flying(0.0, 4.0).tempo == 100.0
    assert flying.prop.flame_reach == 0.0
    assert replace(flying.prop, flame_reach=0.3) == POI
    assert (flying.body, flying.side, flying.limits) == (BODY, "right", LIMITS)


def test_it_is_flown_in_the_posture_that_is_held():
    turned = Posture(turn=0.3)
    own = carried(BODY, [(8.0, 16.0, turned)], lead=2.0)
    assert hand(carriage=own).flying(8.0, 16.0).posture == turned
    assert hand(carriage=own).flying(6.0, 8.0).posture == UPRIGHT  # on the way into it


def test_what_is_rigid_or_does_not_repeat_is_not_flown():
    staff = Prop(kind="staff", length=0.7, behind=0.7, mass=0.8, wick_radius=0.04)
    assert hand(prop=staff).figures(block()) is None
    assert not hand(prop=staff).worth_flying(block())


@pytest.mark.parametrize("share", [0.7, 0.45])
def test_what_is_too_slow_by_a_share_of_the_taut_tempo_is_not_worth_it(share):
    """The proven lowest tempo that keeps a tether taut, as outside check of the looks."""
    lowest = lowest_tempo(LAW, length=POI.length).lowest
    for tempo, worth in ((lowest * share + 1.0, True), (lowest * share - 1.0, False)):
        assert hand(60.0 / tempo).worth_flying(block(), share) == worth
    stall = law_for("stall", {}, side="right", body=BODY, tether=POI.length)
    assert not hand().worth_flying(block(stall), share)


def test_who_flies_what_is_that_of_the_beats_asked_for_each_time():
    """Twice as fast from beat 20 on; asked again, each passage has its own tempo still."""
    times = np.concatenate([np.arange(20) * 0.6, 12.0 + np.arange(20) * 0.3])
    own = hand(seconds=times)
    for _ in range(2):
        assert own.flying(2.0, 10.0).tempo == 100.0
        assert own.flying(24.0, 30.0).tempo == 200.0
        assert own.flying(2.0, 30.0).tempo == 200.0
    assert own.flying(2.0, 10.0).prop.flame_reach == 0.0


def test_what_only_hangs_is_never_too_slow():
    """A carry is taut at every tempo up to one at which the hand would overtake the head: below that it flies."""
    carry = law_for("carry", {}, side="right", body=BODY, beats=4.0, tether=POI.length)
    taut = lowest_tempo(carry, length=POI.length)
    assert taut.lowest == 0.0
    assert 150.0 < taut.highest < 150.0 / 0.45
    own = hand(0.4)
    assert own.worth_flying(block(carry), 0.45)
    assert own.figures(block(carry)).flies


@pytest.mark.parametrize(("turns", "worth"), [(9.9, True), (10.1, False)])
def test_what_turns_far_beyond_anyone_is_not_searched(turns, worth):
    """Ten turns a second are four times what the rules allow; a spin on the spot turns evenly, once in a cycle."""
    own = hand(1.0)
    whirl = law_for(
        "static-spin", {}, side="right", body=BODY, beats=1.0 / turns, tether=POI.length
    )
    assert own.worth_flying(block(whirl)) == worth
    assert own.whirls(block(whirl)) != worth
