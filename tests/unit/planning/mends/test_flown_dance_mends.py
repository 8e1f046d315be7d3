"""Mends of what cannot be flown: each is made in the file, and the file is checked as flown from its text."""

import re
from dataclasses import replace

import pytest

from sequencer.checks.dance.flown_faults import FlownFault
from sequencer.checks.fault_kinds import MEETS, STRAINS, TOO_SLOW, UNFLOWN_LINK
from sequencer.checks.suite import AS_FLOWN, checked
from sequencer.findings import Figure, Finding
from sequencer.planning import offers
from sequencer.planning.mending import mended_dance
from sequencer.planning.mends import flown_dance_mends
from sequencer.planning.mends.dance_mends import Cause, FoundMends
from sequencer.planning.mends.flown_dance_mends import MendSearch, causes_as_flown, causes_to_mend
from sequencer.planning.offers import LATER, checked_with_mends, dance_words
from sequencer.planning.trying import flown_trials
from sequencer.planning.trying.fault_places import home_of, place_of
from sequencer.planning.trying.flown_trials import FlownTrials
from sequencer.planning.trying.trials import DanceEdit, FaultTrials
from sequencer.show.editing import edited_in_turn
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

HEAD = """\
title: Flown
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 12 m, depth: 9 m}
  audience: [{line: [[-9, -9], [9, -9]]}]
cast:
  - {name: Isa, stature: 1.7 m, right: {tether: 0.45 m}}
"""
WALK = """\
formations:
  near: {spots: {Isa: {at: [-3, 4]}}}
  far: {spots: {Isa: {at: [-3, 7]}}}
staging:
  - {formation: near, from: 1.1}
  - {formation: far, from: 3.1, beats: 3}
"""
LINK = """\
timeline:
  - {from: 2.1, pattern: iso-bend-2, beats: 7}
  - {link: true, beats: 1}
  - {pattern: cat-eye, beats: 8}
"""
STARTED = LINK.replace("{link", "{from: 3.4, link").replace("{pattern", "{from: 4.1, pattern")
STUCK = "timeline:\n  - {from: 2.1, pattern: anti-bend-4, cycle: 5, beats: 8}\n"
SLOW = "timeline:\n  - {from: 2.1, pattern: static-spin, cycle: 6, beats: 12}\n"
SPIN = "timeline:\n  - {from: 2.1, pattern: static-spin, beats: 12}\n"


def stage(text, tempo=150.0):
    song = even_song(48, tempo=tempo)
    return staged(show_from_document(parse_document(HEAD + text, "s.yaml")), song)


def faults(report):
    return {each.code for each in report.findings if each.severity != "note"}


def proven(show, mend, code, tempo=150.0):
    """The show with a mend, from its text: the fault is gone and nothing else is found."""
    text = edited_in_turn(HEAD + show, [(own.changes, own.insertions) for own in mend.steps])
    after = checked(stage(text.removeprefix(HEAD), tempo), flown=True)
    before = checked(stage(show, tempo), flown=True)
    assert code in faults(before)
    assert code not in faults(after)
    assert faults(after) <= faults(before)


@pytest.mark.parametrize("timeline", [LINK, STARTED], ids=["one after the other", "by its start"])
def test_a_link_is_given_the_beats_in_which_it_flies(timeline):
    """As drawn one beat is enough; both ends of the range that is told are written, and checked as flown."""
    show = stage(timeline)
    assert faults(checked(show)) == set()
    report = checked_with_mends(show, flown=True)
    (told,) = [each for each in report.findings if each.code == UNFLOWN_LINK]
    least, most = re.match(
        r"give the link ([\d.]+) to ([\d.]+) beats \(now 1\)", told.remedies[0]
    ).groups()
    assert 1.0 < float(least) < float(most)
    (cause,) = causes_to_mend(show)
    mend = MendSearch(show, flown=True).of(cause).mends[0]
    assert mend.words == told.remedies[0]
    for step in (mend.span[0], mend.span[-1]):
        proven(timeline, replace(mend, steps=(step,)), UNFLOWN_LINK)
    # half a beat less than the least that is told is not enough
    trials = FlownTrials(show=show)
    assert not trials.of(cause.faults, _link(show, cause, float(least) - 0.5)).clear
    assert (trials.spent, trials.looked) in {(0, 1), (1, 0)}


def _link(show, cause, beats):
    ladders = flown_dance_mends.flown_ladders(FaultTrials(show=show), cause)
    rungs = next(each for each in ladders if each.name == "the link's length").rungs
    if beats == 1.0:  # as it stands
        return DanceEdit(words="", changes=())
    return next(each for each in rungs if each.value == beats)


def test_a_pattern_is_given_the_cycle_in_which_it_flies():
    show = stage(STUCK, 100.0)
    (cause,) = [each for each in causes_to_mend(show) if each.code == "cannot-be-flown"]
    first, second = MendSearch(show, flown=True).of(cause).mends
    assert re.match(r"a cycle of [\d.]+ to [\d.]+ beats, in half beats \(now 5\)", first.words)
    assert "leave cycle out" in second.words
    for mend in (first, second):
        proven(STUCK, mend, "cannot-be-flown", 100.0)


def test_what_is_far_too_slow_is_given_a_cycle_that_flies():
    """The next longer one does not: as drawn it is slack."""
    show = stage(SLOW, 100.0)
    (cause,) = [each for each in causes_to_mend(show) if each.code == TOO_SLOW]
    (mend, *_) = MendSearch(show, flown=True).of(cause).mends
    proven(SLOW, mend, TOO_SLOW, 100.0)
    last = mend.span[-1] if mend.span else mend.steps[0]
    longer = DanceEdit(words="", changes=((("timeline", 0, "cycle"), last.value + 0.5),))
    assert not FlownTrials(show=show).of(cause.faults, longer).clear


def test_a_look_only_leaves_out_what_a_trial_finds_too():
    show = stage(LINK)
    (cause,) = causes_to_mend(show)
    looked = 0
    for ladder in list(flown_dance_mends.flown_ladders(FaultTrials(show=show), cause))[:2]:
        for rung in ladder.rungs[:4]:
            trials = FlownTrials(show=show)
            seen = trials.of(cause.faults, rung)
            if trials.spent or seen is None:
                continue
            looked += 1
            whole = FaultTrials.tried(trials, cause.faults, [rung])
            assert not whole.clear
    assert looked > 1


def test_what_cannot_be_flown_with_a_change_is_harm_though_it_can_be_drawn():
    """A link of 2 beats that flies, made 1: as drawn nothing is wrong with it."""
    show = stage(LINK.replace("beats: 7", "beats: 6").replace("beats: 1}", "beats: 2}"))
    trials = FlownTrials(show=show)
    assert dict(trials.before) == {}
    edit = DanceEdit(
        words="",
        changes=((("timeline", 0, "beats"), 7), (("timeline", 1, "beats"), 1)),
    )
    (fault,) = [
        each for each in checked(stage(SLOW, 100.0)).findings if each.code == "tether-slack"
    ]
    assert [each.code for each in trials.of([fault], edit).harm] == [UNFLOWN_LINK]
    assert FaultTrials(show=show, fly=True).of([fault], edit).clear
    after = trials.of([fault], edit).after
    assert [each.code for each in trials.harm(after)] == [UNFLOWN_LINK]
    assert trials.harm(show) == ()


def test_props_that_meet_as_flown_with_a_change_are_harm(monkeypatch):
    show = stage(LINK)
    (cause,) = causes_to_mend(show)

    def touch(seen):
        long = seen.blocks[1].end - seen.blocks[1].start > 1.5
        return (FlownFault(made_up(seen, MEETS, 20.0), (MEETS, 0)),) if long else ()

    monkeypatch.setattr(flown_trials, "touches_told", touch)
    trial = FlownTrials(show=show).of(cause.faults, _link(show, cause, 2.0))
    assert trial.cleared
    assert [each.code for each in trial.harm] == [MEETS]


def test_a_mend_of_the_drawing_must_fly_as_well():
    """Where a link is needed, as drawn a short one does; as flown one is offered that flies."""
    timeline = LINK.replace("  - {link: true, beats: 1}\n", "")
    show = stage(timeline)
    found = [each for each in checked(show, flown=True).findings if each.code == "needs-a-link"]
    (drawn,) = dance_words(show, found).values()
    (flown,) = dance_words(show, found, flown=True).values()
    assert drawn != flown
    (cause,) = [each for each in causes_to_mend(show) if each.code == "needs-a-link"]
    for mend in MendSearch(show, flown=True).of(cause).mends:
        proven(timeline, mend, "needs-a-link")
    (first, *_) = MendSearch(show, flown=False).of(cause).mends
    assert UNFLOWN_LINK in faults(checked(first.after, flown=True))


def test_places_of_one_finding_are_mended_place_by_place():
    """Two links of one cause: the first has its mends, the second its own, with where it is."""
    again = (
        LINK + "  - {link: true, beats: 4}\n" + LINK.split("\n", 1)[1].replace("from: 2.1, ", "")
    )
    show = stage(again)
    report = checked(show, flown=True)
    (finding,) = [each for each in report.findings if each.code == UNFLOWN_LINK]
    assert "(2 places)" in finding.message
    found = causes_as_flown(show, report.findings)
    assert [told for told, _ in found] == [finding, finding]
    assert [cause.place.passage.link.path for _, cause in found] == [
        ("timeline", 1),
        ("timeline", 5),
    ]
    words = dance_words(show, report.findings, flown=True)[finding]
    own = [MendSearch(show, flown=True).of(cause).mends for _, cause in found]
    assert words == (*(mend.words for mend in own[0]), f"at 8.4: {own[1][0].words}")


def test_findings_that_begin_together_are_told_apart_by_what_they_are_about(monkeypatch):
    show = stage(LINK)
    report = checked(show, flown=True)
    (finding,) = [each for each in report.findings if each.code == UNFLOWN_LINK]
    ((fault,),) = flown_dance_mends.told_together(show)
    other = replace(finding, message=finding.message.replace("cat-eye", "extension"))
    alike = replace(fault, message=fault.message.replace("cat-eye", "extension"))
    monkeypatch.setattr(flown_dance_mends, "told_together", lambda _show: [(alike,), (fault,)])
    found = causes_as_flown(show, (finding, other))
    assert [(told, cause.faults) for told, cause in found] == [
        (finding, (fault,)), (other, (alike,)),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("timeline", "tempo", "first"),
    [(LINK, 150.0, None), (STUCK, 100.0, "for the pattern by itself, whatever is beside it: ")],
)
def test_where_no_change_helps_what_flies_by_itself_is_said(monkeypatch, timeline, tempo, first):
    show = stage(timeline, tempo)
    (finding,) = [each for each in checked(show, flown=True).findings if each.severity != "note"]
    none = FoundMends(mends=(), tried=("another shift",), trials=3)
    monkeypatch.setattr(MendSearch, "of", lambda _self, _cause: none)
    words = dance_words(show, [finding], flown=True)[finding]
    assert "tried: another shift (3 trials)" in words[0]
    # a link's length was tried in its place, and did harm: it is not offered bare
    told = finding.remedies if first is not None else ()
    assert words[1:] == tuple(f"{first}{way}" for way in told)
    assert finding.remedies


def test_what_is_not_sought_waits(monkeypatch):
    monkeypatch.setattr(offers, "MOST_FLIGHTS_CAUSES", 0)
    show = stage(LINK)
    report = checked_with_mends(show, flown=True)
    assert [each.remedies for each in report.findings if each.code == UNFLOWN_LINK] == [(LATER,)]


def test_the_file_is_mended_as_flown_and_only_then():
    song = even_song(48, tempo=150.0)
    flown = mended_dance(HEAD + LINK, "s.yaml", song, flown=True)
    assert len(flown.done) == 1
    assert flown.left == ()
    assert faults(checked(stage(flown.text.removeprefix(HEAD)), flown=True)) == set()
    assert mended_dance(HEAD + LINK, "s.yaml", song).done == ()


def made_up(show, code, beat, *, figures=(), message="made up", hands=("right",)):
    at = show.seconds(beat)
    return Finding(
        code=code, severity="warn", who=("Isa",), start=at, end=at, position=show.position(beat),
        message=message, figures=figures, hands=hands,
    )  # fmt: skip


def test_props_that_meet_as_flown_are_mended_by_the_hands(monkeypatch):
    """A touch that is made up, as long as the hands go together."""
    text = HEAD.replace("right:", "prop:")
    song = even_song(48, tempo=100.0)
    timeline = SPIN.replace("beats", "timing: together, beats")
    show = staged(show_from_document(parse_document(text + timeline, "s.yaml")), song)

    def touch(seen):
        gap = Figure(quantity="gap between props", value=-0.02, limit=0.0, unit="m", least=True)
        together = seen.blocks[0].timing == "together"
        told = made_up(seen, MEETS, 8.0, figures=(gap,), hands=("left", "right"))
        return (FlownFault(told, (MEETS, 0)),) if together else ()

    monkeypatch.setattr(flown_trials, "touches_told", touch)
    (fault,) = [each.finding for each in touch(show)]
    cause = Cause(code=MEETS, faults=(fault,), place=place_of(show, fault))
    assert [block.title for block in cause.place.blocks] == ["static-spin"]
    (mend, *_) = MendSearch(show, flown=True).of(cause).mends
    assert mend.words.startswith(("dance it split time, ", "dance it quarter time, "))
    assert "same time" not in mend.words


def test_a_walk_that_strains_a_hand_is_given_more_beats(monkeypatch):
    """A strain that is made up, as long as the walk takes fewer than six beats."""
    show = stage(WALK + SPIN, 100.0)

    def strain(seen):
        pushed = Figure(quantity="hand acceleration", value=99.0, limit=80.0, unit="m/s²")
        walk = seen.standings[1]
        short = walk.start - walk.walk < 6.0
        return (
            (FlownFault(made_up(seen, STRAINS, 9.0, figures=(pushed,)), (STRAINS, 0)),)
            if short
            else ()
        )

    monkeypatch.setattr(flown_trials, "strains_told", strain)
    monkeypatch.setattr(
        flown_trials, "strained", lambda own: [told.finding for told in strain(own)]
    )
    (fault,) = [each.finding for each in strain(show)]
    cause = Cause(code=STRAINS, faults=(fault,), place=place_of(show, fault))
    (mend, *_) = MendSearch(show, flown=True).of(cause).mends
    assert mend.words.startswith("give the walk 6 to ")
    far = replace(fault, start=show.seconds(15.0), end=show.seconds(16.0))
    names = {
        each.name
        for each in flown_dance_mends.flown_ladders(
            FaultTrials(show=show), replace(cause, faults=(far,))
        )
    }
    assert "more beats for the walk" not in names


@pytest.mark.parametrize(
    ("change", "code", "flies"),
    [
        ((("staging", 1, "beats"), 0.5), "walks-too-fast", False),
        ((("timeline", 1, "beats"), 0.25), "link-too-hard", True),
    ],
)
def test_what_harms_the_drawing_is_not_flown_unless_a_passage_may_be_mended(
    monkeypatch, change, code, flies
):
    """With another change of the passage a link may do, so it is told then whether the fault itself is gone."""
    show = stage(WALK + LINK)
    (cause,) = [each for each in causes_to_mend(show) if each.code == UNFLOWN_LINK]
    trials = FlownTrials(show=show)
    assert (UNFLOWN_LINK, ("Isa",)) in trials.before
    flown = []
    monkeypatch.setattr(flown_trials, "unflown", lambda seen: flown.append(seen) or ())
    monkeypatch.setattr(FlownTrials, "_seen", lambda *_: False)
    trial = trials.of(cause.faults, DanceEdit(words="", changes=(change,)))
    assert code in {each.code for each in trial.harm}
    assert not trial.clear
    assert trial.cleared is flies
    assert bool(flown) is flies


def test_a_worse_limit_is_harm_and_an_equal_one_is_not():
    """Figures decide, not sentences: the same strain again is the one that was there, a harder push is new."""
    show = stage(SPIN, 100.0)
    trials = FlownTrials(show=show)
    push = Figure(quantity="hand acceleration", value=99.0, limit=80.0, unit="m/s²")
    old = made_up(show, STRAINS, 9.0, figures=(push,), message="old")
    trials = FlownTrials(show=show, _before={**trials.before, (STRAINS, ("Isa",)): [old]})
    for value, harm in ((99.2, False), (99.8, True)):
        now = replace(old, message="new", figures=(replace(push, value=value),))
        assert bool(trials._new_or_worse([now], show)) is harm


@pytest.mark.parametrize(("beat", "home"), [(6.0, 0.0), (11.02, 0.5), (12.5, 1.0)])
def test_where_props_touch_decides_which_block_or_passage_it_is_of(beat, home):
    """The link of one beat begins at 11, where a block ends: just after that it is of the passage."""
    show = stage(LINK)
    touch = made_up(show, MEETS, beat)
    assert home_of(show, touch) == {home}
    place = place_of(show, touch)
    assert place.at_the_passage is (home == 0.5)
    assert [block.path for block in place.blocks] == {
        0.0: [("timeline", 0)], 0.5: [], 1.0: [("timeline", 2)],
    }[home]  # fmt: skip


def test_the_checks_of_the_motion_are_those_that_check_runs_so():
    assert ("feasible", *flown_trials.OF_THE_MOTION) == AS_FLOWN  # feasibility: `flight_faults`
