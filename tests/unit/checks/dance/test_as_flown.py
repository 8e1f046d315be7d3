"""What can be flown, told once for each cause; searches that a test does not ask about are made up."""

from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest

from sequencer import kept
from sequencer.checks.dance import as_flown as module
from sequencer.checks.dance import flown_findings, flown_gaps
from sequencer.checks.dance.as_flown import as_flown
from sequencer.checks.dance.flown_blocks import flown_blocks, hands_of
from sequencer.checks.dance.flown_findings import hands_words, would_words
from sequencer.findings import Figure
from sequencer.motion.flown.flyable import WouldFly
from sequencer.motion.performers.flown_figures import FlownFigures, FlyingHand
from sequencer.motion.props.tension import lowest_tempo
from sequencer.staging.carrying import carry_results
from tests.unit.checks.dance import solo
from tests.unit.checks.dance.solo import stage

SPIN = "  - {from: 3.1, pattern: static-spin, cycle: 1, beats: 8, timing: together}\n"
FIGURES = FlownFigures(
    head_rms=0.05, head_most=0.07, hand_rms=0.05, hand_most=0.08, least_pull=0.5, hand_speed=3.0,
    hand_acceleration=50.0, spare_reach=0.1, tether_off=0.2, moved=0.0, residual=1e-7, broken=(),
)  # fmt: skip
TOO_HARD = replace(FIGURES, hand_acceleration=140.2, broken=("acceleration",))


def link(*, flies, acceleration=139.6, residual=1e-7):
    return SimpleNamespace(
        broken=() if flies else ("acceleration",), residual=residual, least_pull=0.5, hand_speed=3.0,
        hand_acceleration=acceleration, spare_reach=0.1, missed=lambda: {"acceleration": 0.75},
    )  # fmt: skip


@pytest.fixture(autouse=True)
def _nothing_remembered(monkeypatch):
    """What is made up is not taken for what was flown."""
    monkeypatch.setattr(kept, "_RECENT", {})


@pytest.fixture
def made_up(monkeypatch):
    """Figures of blocks, links by their beats, and what would fly, as a test says; all fly if it says nothing."""

    def say(figures=FIGURES, flown=lambda _beats: link(flies=True), would=None):
        monkeypatch.setattr(FlyingHand, "figures", lambda _hand, _span: figures)
        monkeypatch.setattr(flown_gaps, "_state_of", standing)
        monkeypatch.setattr(flown_gaps, "flown_link", lambda _b, _a, beats, _flying: flown(beats))
        monkeypatch.setattr(
            flown_findings, "would_fly", lambda _law, _flying, told: told(0.5) or would
        )
        monkeypatch.setattr(flown_findings, "_flies", lambda *_: True)
        monkeypatch.setattr(module, "strained", lambda _show, _told: ())
        monkeypatch.setattr(module, "touching", lambda _show: ())

    return say


def standing(_hand, span):
    """A state for each pattern: only borders of two different ones need a bridge."""
    return lambda _beat: SimpleNamespace(path=np.full((5, 3), float(len(span.label))))


def findings(show):
    return as_flown(show).findings


def test_what_flies_clean_is_not_told(made_up):
    made_up()
    outcome = as_flown(stage(SPIN))
    assert outcome.findings == ()
    assert len(outcome.not_checked) == 1
    assert "which way a wrist and an elbow bend" in outcome.not_checked[0]


def test_a_rigid_prop_has_nothing_to_tell():
    outcome = as_flown(stage(SPIN, held="{kind: staff, length: 1.2 m}"))
    assert (outcome.findings, outcome.not_checked) == ((), ())


def test_a_pattern_that_reads_soft_is_told_by_what_was_flown(monkeypatch):
    """Really flown: the figures are those of the period search, the hands' worst."""
    monkeypatch.setattr(module, "gaps_between", lambda *_: ([], False))
    monkeypatch.setattr(module, "strained", lambda _show, _told: ())
    monkeypatch.setattr(module, "touching", lambda _show: ())
    show = stage("  - {from: 3.1, pattern: anti-bend-4, timing: together, beats: 8}\n")
    (told,) = findings(show)
    own = [
        hand.flyer.figures(span)
        for hand in hands_of(show)
        for span in hand.spans
        if span.kind == "block"
    ]
    most, rms = (max(getattr(each, name) for each in own) for name in ("head_most", "head_rms"))
    assert rms > 0.15
    assert (told.code, told.severity, told.position) == ("reads-soft", "note", "3.1")
    assert told.message == (
        f"anti-bend-4, both hands: reads soft: as flown the head is up to {100 * most:.0f} cm, "
        f"typically {100 * rms:.0f} cm, off the drawn path"
    )


def test_one_that_cannot_be_flown_names_limit_tempo_and_tether(made_up):
    made_up(TOO_HARD, would=WouldFly(84.0, None, 0.36, None))
    (told,) = findings(stage(SPIN + SPIN.replace("from: 3.1, ", "")))  # twice: one cause
    assert (told.code, told.severity, told.who, told.position) == (
        "cannot-be-flown", "warn", ("Ash",), "3.1",
    )  # fmt: skip
    assert told.message == (
        "static-spin, both hands (2 places): cannot be flown at 100 beats a minute: the hand would have to "
        "accelerate at 140.2 m/s², the limit is 80; 84 beats a minute or a tether of 36 cm would do"
    ).replace("140.2", "140")
    assert told.hands == ("left", "right")
    assert told.figures == (
        Figure(quantity="hand acceleration", value=140.2, limit=80.0, unit="m/s²"),
    )
    # 100/84 = 1.1905: a cycle of as many beats, rounded up, is no faster than 84
    assert told.remedies == (
        "give the cycle 1.20 times its beats: as at 84 a minute", "use a tether of 36 cm",
    )  # fmt: skip


def test_links_beside_what_cannot_be_flown_are_not_looked_at(made_up):
    made_up(TOO_HARD, flown=lambda _: pytest.fail("flown"), would=WouldFly(None, None, None, None))
    outcome = as_flown(stage(SPIN))
    (told,) = outcome.findings
    assert told.message.endswith("; no tempo or tether near these would do")
    assert told.remedies
    assert any("links to and from a pattern that cannot be flown" in e for e in outcome.not_checked)


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"least_pull": -0.1, "broken": ("pull", "speed")}, "the tether would go slack;"),
        ({"least_pull": 0.12, "broken": ("pull",)}, "pull with only 0.12 of the head's weight, and needs 0.3;"),
        ({"hand_speed": 6.04, "broken": ("speed",)}, "the hand would have to move at 6.04 m/s, the limit is 6;"),
        ({"spare_reach": -0.021, "broken": ("reach",)}, "the hand would be 2 cm out of reach;"),
        ({"tether_off": 2.0, "broken": ("pattern",)}, "the tether would be 115° off its drawing"),
    ],
)  # fmt: skip
def test_every_limit_has_its_words_and_its_value(made_up, changes, words):
    made_up(replace(FIGURES, **changes), would=WouldFly(None, 120.0, None, None))
    (told,) = findings(stage(SPIN))
    assert words in told.message
    assert len(told.figures) == len(changes["broken"])
    assert told.figures[0].beyond > 0
    assert told.remedies == ("give the cycle 0.83 of its beats: as at 120 a minute",)


def test_a_search_that_does_not_converge_is_told_as_such(made_up):
    made_up(replace(TOO_HARD, residual=0.02))
    (told,) = findings(stage(SPIN))
    assert (told.code, told.severity) == ("flight-not-found", "note")
    assert (
        "is not known: the search did not converge; the drawn path with its margin" in told.message
    )


def test_between_two_tempi_that_fly_the_search_failed_and_not_the_hand(made_up):
    """99 and 101 a minute fly: that 100 does not is the search's fault; 96 and 104 prove nothing."""
    made_up(TOO_HARD, would=WouldFly(99.0, 101.0, None, None))
    (told,) = findings(stage(SPIN))
    assert told.code == "flight-not-found"
    assert "but at 99 and at 101 it flies" in told.message
    made_up(TOO_HARD, would=WouldFly(96.0, 104.0, None, None))
    (told,) = findings(stage(SPIN))
    assert told.code == "cannot-be-flown"
    assert "96 or 104 beats a minute would do" in told.message


def test_what_is_far_too_slow_is_told_without_a_search(monkeypatch):
    """Eight turns a minute; the tempo at which the drawn tether is taut is the one proven for it."""
    monkeypatch.setattr(FlyingHand, "figures", lambda *_: pytest.fail("searched"))
    show = stage("  - {from: 3.1, pattern: extension, cycle: 12, timing: together, beats: 24}\n")
    (told,) = findings(show)
    span = next(s for s in show.dancers[0].trajectories["right"].spans if s.kind == "block")
    taut = lowest_tempo(span.law, length=0.4).lowest
    assert told.code == "too-slow-to-fly"
    assert f"as drawn the tether is taut only from {taut:.0f} beats a minute on" in told.message
    assert "no way to fly it this slowly was sought" in told.message
    (figure,) = told.figures
    assert (figure.quantity, figure.value, figure.limit, figure.least) == (
        "tempo",
        100.0,
        taut,
        True,
    )
    assert taut > 100 / 0.45


def test_a_stall_is_not_flown_and_that_is_said(monkeypatch):
    monkeypatch.setattr(FlyingHand, "figures", lambda *_: pytest.fail("searched"))
    outcome = as_flown(stage("  - {from: 3.1, pattern: stall, beats: 8}\n"))
    assert outcome.findings == ()
    assert any("stalls were not looked at" in each for each in outcome.not_checked)


@pytest.mark.parametrize(
    ("enough", "words", "mend"),
    [
        (3.0, "2 beats (the hand would have to accelerate at 140 m/s², the limit is 80); 3 beats would do", "3 beats"),
        (4.0, "; 4 beats would do", "4 beats"),
        (9.0, "; nor in 1, 1.5, 3 or 4 beats", "change the shift"),
    ],
)  # fmt: skip
def test_a_link_that_cannot_be_flown_names_the_beats_that_would_do(made_up, enough, words, mend):
    made_up(flown=lambda beats: link(flies=beats >= enough))
    between = SPIN + "  - {link: true, beats: 2}\n" + SPIN.replace("from: 3.1, ", "")
    told = {each.message.split(",")[0]: each for each in findings(stage(between))}
    assert set(told) == {
        "from rest into static-spin", "static-spin into static-spin", "static-spin to rest",
    }  # fmt: skip
    for each in told.values():
        assert (each.code, each.severity, each.who) == ("link-cannot-be-flown", "warn", ("Ash",))
        assert [(own.quantity, own.value) for own in each.figures] == [("hand acceleration", 139.6)]
        assert each.hands == ("left", "right")
        assert f"both hands: cannot be flown in {words}" in each.message or words in each.message
        assert mend in each.remedies[0]
    assert told["static-spin into static-spin"].position == "5.1"  # 8 beats after 3.1


def test_a_link_that_cannot_be_flown_is_sought_once_for_a_dance(made_up):
    """Every trial of a mend asks for those of all hands again: only another dance is sought anew."""
    sought = []
    made_up(flown=lambda beats: sought.append(beats) or link(flies=False))
    show = stage(SPIN)
    failed = links_that_fail(show)
    assert len(failed) == 4  # in and out, of both hands
    assert all(each.link.broken for each in failed)
    sought.clear()
    again = links_that_fail(replace(show))
    assert [each.link for each in again] == [each.link for each in failed]
    assert sought == []
    links_that_fail(stage(SPIN.replace("beats: 8", "beats: 10")))
    assert sought


def links_that_fail(show):
    hands = list(hands_of(show))
    gaps, _ = flown_gaps.gaps_between(hands, flown_blocks(hands, None).flown)
    return flown_gaps.failed_gaps(gaps, None)


@pytest.mark.parametrize(("residual", "places"), [(1e-7, [(21.0, 23.0)]), (1.0, [])])
def test_only_beside_what_asks_for_a_mend_strains_may_follow_from_it(
    made_up, monkeypatch, residual, places
):
    """A link that fails is told by itself; of one whose search ended unsettled nothing but a note is."""
    made_up(flown=lambda beats: link(flies=beats != 2.0, residual=residual))
    told = []
    monkeypatch.setattr(module, "strained", lambda _show, own: told.extend(own) or ())
    show = stage(
        "  - {from: 3.1, pattern: static-spin, cycle: 1, beats: 13}\n"
        "  - {link: true, beats: 2}\n"
        "  - {pattern: extension, cycle: 1, beats: 8}\n"
    )
    as_flown(show)
    own = {(each.start, each.end) for each in told if each.hand.side == "left"}
    assert [each for each in places if each in own] == places
    assert bool(told) is bool(places)


def test_who_is_lit_and_when_decides_too(made_up, monkeypatch):
    """Passages in which props meet end where a performer is lit: another burn is another outcome."""
    made_up()
    before, same = stage(SPIN), stage(SPIN)
    module.CHECK.outcome(before)
    carry_results(before, same)
    assert module.CHECK in same.results
    monkeypatch.setattr(solo, "SHOW", solo.SHOW.replace("until: 20.1", "until: 4.1+1/2"))
    later = stage(SPIN)
    carry_results(before, later)
    assert module.CHECK not in later.results


def test_a_shorter_link_is_tried_once_no_longer_one_flies(made_up):
    made_up(flown=lambda beats: link(flies=beats < 2.0))
    told = [each.message for each in findings(stage(SPIN))]
    assert len(told) == 2
    assert all(each.endswith("; 1 beat would do") for each in told)


def test_a_border_without_a_link_is_bridged_by_half_a_beat_of_each(made_up):
    """Such a bridge takes a beat; where it cannot be flown, the link that would do is named."""
    asked = []

    def flown(beats):
        asked.append(beats)
        return link(flies=beats != 1.0)

    made_up(flown=flown)
    (told,) = findings(
        stage(
            SPIN
            + SPIN.replace("from: 3.1, ", "")
            .replace("static-spin", "two-beat-weave")
            .replace("cycle: 1", "cycle: 2")
        )
    )
    assert asked.count(1.0) >= 2  # one for each hand
    assert (
        "static-spin into two-beat-weave, both hands: cannot be flown without a link"
        in told.message
    )
    assert told.message.endswith("; a link of 1.5 beats would do")


def test_a_pattern_that_simply_goes_on_needs_no_bridge(monkeypatch):
    """Really flown: two blocks of one spin, the second where the first would be by then."""
    asked = []

    def flown(_before, _after, beats, _flying):
        asked.append(beats)
        return link(flies=True)

    monkeypatch.setattr(flown_gaps, "flown_link", flown)
    as_flown(stage(SPIN + SPIN.replace("from: 3.1, ", "")))
    assert asked == [2.0] * 4  # from and to rest, both hands


def test_a_link_whose_search_does_not_converge_is_told_as_such(made_up):
    made_up(flown=lambda _beats: link(flies=False, residual=0.02))
    assert {each.code for each in findings(stage(SPIN))} == {"flight-not-found"}


def test_progress_goes_from_nothing_to_all(made_up):
    made_up(TOO_HARD, would=WouldFly(84.0, None, None, None))
    told = []
    as_flown(stage(SPIN), progress=lambda *each: told.append(each))
    subjects = list(dict.fromkeys(subject for subject, _ in told))
    shares = [share for _, share in told]
    assert subjects == ["flying the patterns", "seeking what would fly instead of static-spin"]
    assert shares == sorted(shares)
    assert 0.0 <= shares[0] < shares[-1] < 1.0


@pytest.mark.parametrize(
    ("sides", "words"),
    [
        ({"Ash": ["left", "right"], "Birch": ["right", "left"]}, "both hands"),
        ({"Ash": ["left"], "Birch": ["left"]}, "left hand"),
        ({"Ash": ["left"], "Birch": ["left", "right"]}, "left hand of Ash, both hands of Birch"),
    ],
)
def test_hands_are_named_by_person_only_where_they_differ(sides, words):
    assert hands_words(sides) == words


@pytest.mark.parametrize(
    ("would", "words"),
    [
        (WouldFly(84.0, 118.0, 0.4, 0.52), "84 or 118 beats a minute or a tether of 40 or 52 cm would do"),
        (WouldFly(None, None, None, 0.52), "a tether of 52 cm would do"),
    ],
)  # fmt: skip
def test_what_would_do_is_said_in_one_breath(would, words):
    assert would_words(would) == words


def test_what_is_kept_of_a_performer_is_not_told_of_another_dance(made_up):
    """A longer block after which no link flies any more, and one that cannot be flown itself."""
    made_up()
    assert findings(stage(SPIN)) == ()
    made_up(flown=lambda _: link(flies=False))
    told = findings(stage(SPIN.replace("beats: 8", "beats: 10")))
    assert {each.code for each in told} == {"link-cannot-be-flown"}
    made_up(TOO_HARD, would=WouldFly(84.0, None, None, None))
    told = findings(stage(SPIN.replace("beats: 8", "beats: 12")))
    assert {each.code for each in told} == {"cannot-be-flown"}
    assert findings(stage(SPIN)) == ()


def test_what_hangs_below_the_hand_is_flown_and_not_too_slow():
    """Really flown: at twice the tempo the hand would overtake the head, which says nothing of this one."""
    show = stage("  - {from: 3.1, pattern: carry, beats: 8}\n", tempo=150.0)
    outcome = as_flown(show)
    assert "too-slow-to-fly" not in {each.code for each in outcome.findings}
    assert not any("not flown, were not looked at" in each for each in outcome.not_checked)
