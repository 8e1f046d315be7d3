"""A show that is being changed: its answers, their order, and how a change stops them.

Reference: the whole report of `checked_with_mends` on the same show.
"""

import threading
from dataclasses import replace

import pytest

from sequencer.checks import registry, suite
from sequencer.checks.check import Check
from sequencer.checks.dance.as_flown import CHECK as FLIGHTS
from sequencer.checks.outcome import Outcome
from sequencer.errors import InputError
from sequencer.planning import offers, open_show
from sequencer.planning.offers import checked_with_mends
from sequencer.planning.open_show import OpenShow
from sequencer.progress import Stopped, stop_if_unwanted
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: Two
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 9 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: {tether: 0.45}}
  - {name: Birch, stature: 1.6, prop: {tether: 0.5}}
formations:
  near: {spots: {Ash: {at: [-0.6, 4]}, Birch: {at: [0.6, 4]}}}
staging:
  - {formation: near, from: 1.1}
timeline:
  - {who: all, from: 2.1, pattern: two-beat-weave, beats: 4}
  - {who: Birch, from: 3.1, pattern: pro-bend-4, beats: 8}
"""
SPOT = (("formations", "near", "spots", "Ash", "at"), [-3, 4])


@pytest.fixture
def show():
    return staged(show_from_document(parse_document(SHOW, "s.yaml")), even_song(24))


class _Words(dict):
    """A mend of any conflict."""

    def get(self, key, _default=None):
        return (f"mend {key}",)


def test_the_answers_together_are_the_report(show, monkeypatch):
    monkeypatch.setattr(
        offers, "words_for", lambda _show: _Words()
    )  # sought in test_space_mends.py
    answers = list(OpenShow(show).answers(flown=False))
    report = checked_with_mends(show)

    *each, mends = answers
    assert mends.check == open_show.MENDS
    mended = {(one.code, one.who, one.position): one for one in mends.outcome.findings}
    found = [one for answer in each for one in answer.outcome.findings]
    said = [mended.pop((one.code, one.who, one.position), one) for one in found]
    assert not mended
    assert any(one.code == "too-close" and one.remedies for one in said)
    assert sorted(said, key=repr) == sorted(report.findings, key=repr)
    assert [answer.left for answer in answers] == [
        tuple(later.check for later in answers[k + 1 :]) for k in range(len(answers))
    ]
    assert mends.report == report
    assert OpenShow(show).report(flown=False) == report


def test_as_flown_the_drawing_answers_first_and_the_last_is_the_report_as_flown(show):
    answers = list(OpenShow(show).answers())
    anew = staged(show_from_document(parse_document(SHOW, "s.yaml")), even_song(24))
    report = checked_with_mends(anew, flown=True)

    *each, mends = answers
    assert mends.report == report
    assert OpenShow(anew).report() == report
    assert {one.code for one in report.findings} & {"cannot-be-flown", "link-cannot-be-flown"}
    of_motion = [(one.check, one.flown) for one in each if one.check in suite.AS_FLOWN]
    assert sorted(of_motion) == sorted((name, flown) for name in suite.AS_FLOWN for flown in (0, 1))
    for k, answer in enumerate(answers):
        last = {one.check: place for place, one in enumerate(answers)}
        assert set(answer.left) == {name for name, place in last.items() if place > k}


def test_a_mend_comes_with_what_it_changes_and_clears_its_finding(show):
    *_, answer = OpenShow(show).answers()
    told = {words for one in answer.report.findings for words in one.remedies}
    assert answer.offered
    for mend in answer.offered:
        assert any(mend.words in words for words in told)
        planned = OpenShow(show)
        for step in mend.steps:
            planned.change(list(step.changes), list(step.insertions))
        left = {(one.code, one.who, one.position) for one in planned.report().findings}
        assert (mend.finding.code, mend.finding.who, mend.finding.position) not in left


def test_another_staging_ends_the_answers_about_the_one_before(show):
    planned = OpenShow(show)
    answers = planned.answers()
    next(answers)
    planned.take(staged(show_from_document(parse_document(SHOW, "s.yaml")), even_song(24)))

    with pytest.raises(Stopped):
        next(answers)
    assert planned.revision == 1
    assert planned.show is not show


def test_without_mends_the_checks_are_all(show):
    answers = list(OpenShow(show).answers(flown=False, mends=False))
    assert {each.check for each in answers} == {
        c.name for c in registry.checks() if not c.on_request
    }
    assert answers[-1].left == ()


def test_what_is_known_comes_first_then_what_can_stop_a_show_quick_before_slow(show, monkeypatch):
    def check(name, severity, share=0.0, after=()):
        codes = {f"{name}-code": severity}
        return Check(name=name, run=lambda _: Outcome(), codes=codes, share=share, after=after)

    made = (
        check("slow", ("note", "stop"), 0.4),
        check("noted", ("note",)),
        check("warned", ("warn",)),
        check("quick", ("stop",), 0.1),
        check("builds", ("stop",), after=("warned",)),
        check("known", ("note",), 0.9),
        replace(check("on-request", ("stop",)), on_request=True),
    )
    monkeypatch.setattr(suite, "checks", lambda: made)
    made[5].outcome(show)

    order = [each.name for each in suite.by_urgency(show)]
    assert order == ["known", "quick", "slow", "warned", "builds", "noted"]


def test_joins_and_distances_come_before_all_that_is_not_known_yet(show, monkeypatch):
    known = next(each for each in registry.checks() if each.name == "burning-time")
    monkeypatch.setattr(suite, "_gravest", lambda check: 0 if check.name == "feasible" else 1)
    known.outcome(show)
    each = list(OpenShow(show).answers(mends=False))
    assert [one.check for one in each[:3]] == ["burning-time", "joins", "distances"]
    flown = [one.check for one in each if one.flown]
    assert flown == ["distances", "feasible", "let-go", FLIGHTS.name]


def test_whoever_flies_a_show_for_it_does_so_after_all_of_the_drawing(show):
    flown = []
    planned = OpenShow(show, fly=lambda own, say: flown.append(own) or say("flying", 0.5))
    told = []
    before = [
        (one.check, one.flown)
        for one in planned.answers(mends=False, progress=lambda *each: told.append(each))
        if not flown
    ]
    assert flown == [show]
    assert ("flying", 0.25) in told
    assert {name for name, _ in before} == {
        each.name for each in registry.checks() if not each.on_request
    } - {FLIGHTS.name}
    assert not any(as_flown for _, as_flown in before)


def test_a_change_stops_the_answers_about_the_show_before(show):
    planned = OpenShow(show)
    answers = planned.answers()
    next(answers)
    after = planned.change([SPOT])

    with pytest.raises(Stopped):
        next(answers)
    assert (planned.show, planned.revision) == (after, 1)
    assert "too-close" not in {one.code for one in planned.report().findings}


def test_a_change_stops_a_check_that_is_under_way(show, monkeypatch):
    planned = OpenShow(show)
    begun, changed = threading.Event(), threading.Event()

    def run(_show):
        begun.set()
        assert changed.wait(60)
        stop_if_unwanted()
        raise AssertionError("it went on")

    slow = Check(name="slow", run=run, codes={"slow-code": ("stop",)})
    monkeypatch.setattr(open_show, "by_urgency", lambda _show: (slow,))
    stopped = []

    def ask():
        with pytest.raises(Stopped):
            list(planned.answers())
        stopped.append(True)

    asking = threading.Thread(target=ask)
    asking.start()
    assert begun.wait(60)
    planned.change([SPOT])
    changed.set()
    asking.join(60)
    assert stopped == [True]


def test_a_change_that_does_not_fit_leaves_everything_as_it_was(show):
    planned = OpenShow(show)
    answers = planned.answers(flown=False, mends=False)
    first = next(answers)
    with pytest.raises(InputError, match="blocks-overlap"):
        planned.change([(("timeline", 0, "beats"), 12)])

    assert (planned.show, planned.revision) == (show, 0)
    assert len(list(answers)) == len(first.left)


def test_a_value_that_its_owner_changes_and_gives_again_is_read_again(show):
    planned = OpenShow(show)
    entry = {"who": "all", "from": "2.1", "pattern": "two-beat-weave", "beats": 4, "note": "one"}
    planned.change([(("timeline", 0), entry)])
    entry["note"] = "two"
    assert planned.change([(("timeline", 0), entry)]).show.timeline[0].note == "two"
    entry["patern"] = "nope"
    with pytest.raises(InputError, match="unknown key 'patern'"):
        planned.change([(("timeline", 0), entry)])
    del entry["patern"]
    planned.change([], [(("timeline",), 2, entry | {"from": "6.1"})])
    assert [each.note for each in planned.show.show.timeline] == ["two", "", "two"]
