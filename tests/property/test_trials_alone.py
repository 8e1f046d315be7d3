"""A trial that one performer settles ends as it does where the whole show is staged and checked.

Reference: the same trials without a look at one performer, of drawn shows and of shows as flown.
"""

import random
from dataclasses import replace

import pytest

from sequencer.checks.dance.flown_faults import strains_told
from sequencer.checks.dance.flown_in_place import strained
from sequencer.checks.fault_kinds import OF_PASSAGES
from sequencer.checks.fire.each_burn.hanging_lit import HANGING
from sequencer.planning.trying import flown_trials as flown_module
from sequencer.planning.trying import trials as module
from sequencer.planning.trying.flown_trials import FlownTrials
from sequencer.planning.trying.trials import DanceEdit, FaultTrials
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.repeated import often
from tests.songs import even_song

SHOW = """\
title: Three
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 16 m, depth: 9 m}
  audience: [{line: [[-9, -12], [9, -12]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.45, fuel_mass: 40 g}}
  - {name: Birch, stature: 1.6, prop: {tether: 0.5, fuel_mass: 40 g}}
  - {name: Cedar, stature: 1.8, prop: {tether: 0.45, fuel_mass: 40 g}}
formations:
  wide: {spots: {Ash: {at: [-5, 4]}, Birch: {at: [0, 4]}, Cedar: {at: [5, 4]}}}
staging: [{formation: wide, from: 1.1}]
timeline:
  - {who: all, from: 2.1, pattern: two-beat-weave, beats: 8}
  - {who: all, from: 5.1, pattern: extension, beats: 8}
  - {who: [Ash, Cedar], from: 7.1, pattern: static-spin, cycle: 6, beats: 12}
  - {who: Birch, from: 7.1, pattern: extension, cycle: 2, beats: 12}
fire:
  fuel: kerosene
  flame: 0.3 m
  lit: [{who: all, from: 2.1, until: 9.3}]
crew:
  - {name: Ivy, post: [-7, 8], duty: spotter}
"""
VALUES = {"beats": (5, 6, 7, 8), "shift": (0, 0.5, 1, 1.5), "cycle": (1, 2, 3, 6), "pattern": ("extension", "static-spin")}  # fmt: skip


class _Whole(FaultTrials):
    def alone(self, *_given):
        return None


class _WholeAsFlown(FlownTrials):
    def alone(self, *_given):
        return None


def verdict(trial):
    """What whoever seeks mends makes of a trial."""
    if trial is None:
        return None
    broken = trial.cleared and bool(trial.harm)
    return trial.clear, broken and all(each.code in OF_PASSAGES for each in trial.harm)


@pytest.fixture(scope="module")
def show():
    return staged(show_from_document(parse_document(SHOW, "s.yaml")), even_song(56))


def causes(trials):
    """Faults of one kind together, and each by itself."""
    every = [each for own in trials.before.values() for each in own]
    kinds = {each.code for each in every if each.who and len(each.who) == 1}
    for code in sorted(kinds):
        own = [each for each in every if each.code == code and len(each.who) == 1]
        yield tuple(own)
        yield (own[-1],)


def edit(chance):
    at = chance.randrange(4)
    what = chance.choice(list(VALUES))
    return DanceEdit(words="", changes=((("timeline", at, what), chance.choice(VALUES[what])),))


@pytest.mark.parametrize("seed", often(1, 4, 5))
@pytest.mark.parametrize(("quick", "whole"), [(FaultTrials, _Whole), (FlownTrials, _WholeAsFlown)])
def test_a_trial_ends_as_with_the_whole_show(show, quick, whole, seed):
    chance, settled = random.Random(seed), 0  # noqa: S311  a game of dice, no secret
    own, reference = quick(show=show), whole(show=show)
    wanted = [
        each for each in causes(reference)
        if quick is FlownTrials or each[0].code in ("tether-slack", "needs-a-shift", "needs-a-link", "wrong-way-round")
    ]  # fmt: skip
    assert wanted
    for _ in range(14 if quick is FaultTrials else 8):
        steps = [edit(chance) for _ in range(chance.choice((1, 1, 2)))]
        faults = chance.choice(wanted)
        told = own.of(faults, *steps)
        assert verdict(told) == verdict(reference.of(faults, *steps)), (faults, steps)
        settled += told is not None and told.after is show
    assert settled, "one performer was never enough"
    assert (own.spent, own.allowance.left) == (reference.spent, reference.allowance.left)


def test_faults_by_code_are_those_of_all_checks(show):
    """Sought one after the other they are what every check finds at once."""
    for kind in (FaultTrials, FlownTrials):
        trials, every = kind(show=show), {}
        for found in trials.found(trials._plain):
            for each in found:
                every.setdefault((each.code, each.who), []).append(each)
        assert len(every) > 3
        assert {key: list(own) for key, own in trials.before.items()} == every
        assert trials.before.get(("no-such-code", ("Ash",)), ()) == ()
        assert len(trials.before) == len(every)


def test_a_prop_that_hangs_anew_in_one_hand_is_told_of_the_whole_show(show):
    trials, whole = FlownTrials(show=show), _WholeAsFlown(show=show)
    shorter = DanceEdit(words="", changes=((("timeline", 0, "beats"), 5),))
    (fault, *_) = (
        each for own in trials.before.values() for each in own
        if each.who == ("Ash",) and "fly" not in each.code and "flown" not in each.code
    )  # fmt: skip
    own, told = trials.of((fault,), shorter), whole.of((fault,), shorter)
    assert own.after is show
    assert {each.code for each in own.harm} == {HANGING} <= {each.code for each in told.harm}
    (first,) = own.harm
    assert any(
        (each.start, each.end) == (first.start, first.end) and set(first.who) <= set(each.who)
        for each in told.harm
    )


def test_a_prop_that_hung_before_settles_nothing(show):
    """Where the performer's props hang still in the show as it is, the whole show says whether it is worse."""
    hanging = show_from_document(parse_document(SHOW.replace("two-beat-weave, beats: 8", "two-beat-weave, beats: 5"), "s.yaml"))  # fmt: skip
    trials = FlownTrials(show=staged(hanging, even_song(56)))
    assert any("Ash" in each.who for each in trials.found_of(trials.show, HANGING))
    same = DanceEdit(words="", changes=((("timeline", 3, "shift"), 0.5),))
    alone = trials.alone(trials.found_of(trials.show, HANGING), [same])
    assert alone is not None
    assert trials._hanging(alone) == ()


@pytest.mark.parametrize(
    ("code", "settles"), [("needs-a-link", False), ("does-not-join", False), ("tether-slack", True)]
)
def test_a_join_that_breaks_anew_is_left_to_the_whole_show(show, monkeypatch, code, settles):
    """Another change of the passage may mend it: then it is tried with that, once it is known that nothing else is wrong."""
    trials = FaultTrials(show=show)
    (slack, *_) = (
        each for own in trials.before.values() for each in own
        if each.code == "tether-slack" and each.who == ("Ash",)
    )  # fmt: skip
    fault = replace(slack, code=code)
    elsewhere = replace(fault, start=0.0, end=0.0, message="another", position="1.1")
    monkeypatch.setattr(module, "faults_alone", lambda _check, _alone: [elsewhere])
    monkeypatch.setattr(module, "one_kind_alone", lambda *_: None)
    alone = trials.alone((fault,), [DanceEdit(words="", changes=((("timeline", 0, "beats"), 7),))])
    assert trials._settled_by(alone, (fault,)) == settles


def test_who_kept_a_fault_is_looked_at_first(show):
    trials = FaultTrials(show=show)
    wanted = [each for each in causes(trials) if each[0].code == "tether-slack"]
    both = next(each for each in wanted if len({one.who for one in each}) > 1)
    change = [DanceEdit(words="", changes=((("timeline", 2, "shift"), 0.5),))]
    assert trials.alone(both, change).dancers[0].name == both[0].who[0]
    assert trials.judged(both, _Whole(show=show).restaged(change)).cleared is False
    kept = trials._keeps[both]
    assert kept in {each.who[0] for each in both}
    trials._keeps[both] = both[-1].who[0]
    assert trials.alone(both, change).dancers[0].name == both[-1].who[0]


def test_strains_are_told_performer_by_performer_and_are_all_that_there_are(show):
    trials, every = FlownTrials(show=show), [each.finding for each in strains_told(show)]
    assert every
    told = list(trials._told(strains_told, show))
    assert len(told) == len(show.dancers)
    assert all(len({each.who for each in own}) <= 1 for own in told)
    assert sorted(map(repr, (each for own in told for each in own))) == sorted(map(repr, every))


def test_whoever_is_strained_first_is_the_only_one_who_is_flown(show, monkeypatch):
    """What is left of the show is not flown for a trial that ends there; it is, once nobody is strained."""
    flown = []
    monkeypatch.setattr(
        flown_module, "strained", lambda own: flown.append(own.dancers[0].name) or strained(own)
    )
    trials = FlownTrials(show=show)
    for found in trials._told(strains_told, show):
        if found:
            break
    first = flown[-1]
    assert len(flown) < len(show.dancers)
    flown.clear()
    next(trials._told(strains_told, show))
    assert flown == [first], "who was strained last"
    assert len(list(trials._told(strains_told, show))) == len(show.dancers)
