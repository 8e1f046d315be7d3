"""How much is tried for mends: all of a show of ordinary size, and no more in all of one that is larger."""

from math import inf
from types import SimpleNamespace

import pytest

from sequencer.planning import offers
from sequencer.planning.edits.ladders import Ladder
from sequencer.planning.mends import dance_mends, space_mends
from sequencer.planning.mends.dance_mends import sought
from sequencer.planning.trying.fault_places import FaultPlace
from sequencer.planning.trying.trial_limits import (
    LEAST_TRIALS,
    ORDINARY_SHOW,
    ORDINARY_TRIALS,
    Allowance,
    allowance_for,
    conflicts_to_mend,
    show_size,
)
from sequencer.planning.trying.trials import DanceEdit, FaultTrials
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song


def show_of(performers, minutes):
    return SimpleNamespace(
        dancers=range(performers), span=(4.0, 4.0 + minutes), seconds=lambda beat: 7.0 + 60.0 * beat
    )


def test_a_show_is_as_large_as_its_performers_and_minutes_together():
    assert show_size(show_of(6, 2.5)) == pytest.approx(15.0)


@pytest.mark.parametrize(
    ("performers", "minutes", "left"),
    [
        (8, 4.0, inf),  # nothing is left out of a show of ordinary size
        (8, 8.0, 420),  # of twice the size half as many shows are staged
        (50, 18.0, 29),  # 840 · 32 / 900
        (500, 180.0, LEAST_TRIALS),
    ],
)
def test_the_larger_a_show_the_fewer_are_staged_for_trials(performers, minutes, left):
    assert allowance_for(show_of(performers, minutes)).left == left


def test_an_ordinary_show_is_allowed_what_its_causes_can_need():
    assert ORDINARY_TRIALS == offers.MOST_CAUSES * dance_mends.MOST_FOR_A_CAUSE
    assert ORDINARY_SHOW == 32.0


@pytest.mark.parametrize(
    ("performers", "minutes", "most"), [(50, 5.0, 6), (50, 5.1, 5), (50, 10.0, 3), (50, 18.0, 1), (500, 180.0, 1)]
)  # fmt: skip
def test_mends_are_sought_for_fewer_conflicts_of_a_large_show(performers, minutes, most):
    assert space_mends.MENDED == 6
    assert conflicts_to_mend(show_of(performers, minutes), 6) == most


def test_an_allowance_is_used_up_with_the_last_show():
    share = Allowance(left=2)
    share.take()
    assert not share.used_up
    share.take()
    assert share.used_up
    assert not Allowance().used_up


SHOW = """\
title: Slow
track: {file: song.ogg}
venue:
  stage: {shape: round, width: 9 m}
  audience: [{line: [[-9, -9], [9, -9]]}]
cast:
  - {name: Isa, stature: 1.7 m, prop: {tether: 0.45 m}}
timeline:
  - {from: 2.1, pattern: static-spin, timing: together, cycle: 6, beats: 8}
"""


def test_each_show_that_is_staged_takes_one_as_drawn_and_as_staged():
    show = staged(show_from_document(parse_document(SHOW, "s.yaml")), even_song(48))
    share = Allowance(left=100)
    trials = FaultTrials(show=show, allowance=share)
    (slack,) = trials.before["tether-slack", ("Isa",)]
    change = DanceEdit(words="1", changes=((("timeline", 0, "cycle"), 1),))
    assert share.left == 100
    trials.of([slack], change)
    trials.of([slack], change)
    assert share.left == 99
    trials._as_staged.of([slack], change)
    assert share.left == 98


def search(monkeypatch, left, *ladders):
    """Values that are tried for a cause with so many shows left, of ladders on which nothing helps, and what is found."""
    share, tried = Allowance(left=left), []
    trial = SimpleNamespace(after="after", cleared=False, harm=(), clear=False)

    def of(_faults, *steps):
        share.take()
        tried.append(steps[-1].value)
        return trial

    trials = SimpleNamespace(
        show=None,
        spent=0,
        looked=0,
        allowance=share,
        of=of,
        confirmed=of,
        hopeless=lambda *_which: False,
    )
    monkeypatch.setattr(dance_mends, "_ladders", lambda _trials, _cause: iter(ladders))
    found = sought(trials, SimpleNamespace(faults=(), place=FaultPlace(who="Isa")))
    return tried, found


def ladder(*values):
    return Ladder(name="x", rungs=[DanceEdit(words=f"{each}", value=each) for each in values])


def test_nothing_more_is_tried_once_the_allowance_is_used_up(monkeypatch):
    """Neither of the kind that is under way, nor of another."""
    both = ladder(1, 2, 3, 4), ladder(5, 6)
    assert search(monkeypatch, inf, *both)[0] == [1, 2, 3, 4, 5, 6]
    assert search(monkeypatch, 3, *both)[0] == [1, 2, 3]
    assert search(monkeypatch, 4, *both)[0] == [1, 2, 3, 4]


def test_a_range_ends_where_the_allowance_does(monkeypatch):
    share = Allowance(left=5)
    clear = SimpleNamespace(after="after", cleared=True, harm=(), clear=True)

    def of(_faults, *_steps):
        share.take()
        return clear

    trials = SimpleNamespace(
        show=None, spent=0, looked=0, allowance=share, of=of, confirmed=lambda *_which: clear, hopeless=lambda *_which: False
    )  # fmt: skip
    own = Ladder(
        name="x", rungs=[DanceEdit(words=f"{each}", value=each) for each in range(1, 20)], step=1.0, widest=19,
        range_words=lambda low, high: f"{low.value} to {high.value}",
    )  # fmt: skip
    monkeypatch.setattr(dance_mends, "_ladders", lambda _trials, _cause: iter([own]))
    (mend,) = sought(trials, SimpleNamespace(faults=(), place=FaultPlace(who="Isa"))).mends
    assert mend.words == "1 to 5"


def test_of_a_change_that_is_not_offered_no_results_are_held():
    """A show of ten thousand findings has as many in each trial: all trials together would be held as long as it is checked."""
    show = staged(show_from_document(parse_document(SHOW, "s.yaml")), even_song(48))
    trials = FaultTrials(show=show)
    (slack,) = trials.before["tether-slack", ("Isa",)]
    clear, still, harm = (
        trials.of([slack], DanceEdit(words="", changes=((("timeline", 0, "cycle"), cycle),)))
        for cycle in (1, 5, 0.25)
    )
    assert (clear.clear, still.cleared, bool(harm.harm)) == (True, False, True)
    assert [bool(each.after.results) for each in (clear, still, harm)] == [True, False, False]
    assert show.results
