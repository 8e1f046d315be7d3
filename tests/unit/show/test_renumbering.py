"""Bars and beats of a show file in another count: moments stay, comments and order too."""

from fractions import Fraction

import pytest

from sequencer.errors import InputError
from sequencer.show.drafted import is_drafted, mark_of
from sequencer.show.renumbering import Renumbering, beat_ratio, renumbered
from sequencer.show.show_text import ShowText
from sequencer.timing.position import Position
from sequencer.timing.tempo import TempoMap

PLAIN = TempoMap.steady(120, beats=256, start=0.5)
HALF = TempoMap.steady(60, beats=128, start=0.5)
STEP = {"pattern": "line", "beats": "14"}
SHOW = f"""\
# a song
track:
  file: a.ogg
  corrections:
    one: 3.1            # of the heard count: stays
    sections: [{{from: 1.1, name: A}}, {{from: 9.1, name: B}}, {{from: 1:02.5, name: C}}]
staging:
  - {{formation: a, from: 1.1}}
  - {{formation: b, from: 8.3, beats: 6}}     # a walk
entrances:
  - {{who: Ash, comes_on: 3.2, beats: 8, side: upstage}}
phrases:
  four:
    - {{pattern: line, beats: 14, drafted: {mark_of(STEP)}}}
    - {{rest: 3}}
    - {{accent: 5}}
timeline:
  - {{from: 17.2+1/2, until: 25.1, pattern: weave, cycle: 3, shift: 1.5}}   # here
  - {{from: B, phrase: four, canon: 4, repeat: 2}}
  - {{hold: true, until: 30.1}}
  - {{accent: 33.1}}
fire:
  lit: [{{who: Ash, from: 11.1, until: 31.1}}]
"""
HALVED = f"""\
# a song
track:
  file: a.ogg
  corrections:
    one: 3.1            # of the heard count: stays
    sections: [{{from: 1.1, name: A}}, {{from: 5.1, name: B}}, {{from: 1:02.5, name: C}}]
staging:
  - {{formation: a, from: 1.1}}
  - {{formation: b, from: 4.4, beats: 3}}     # a walk
entrances:
  - {{who: Ash, comes_on: 2.1+1/2, beats: 4, side: upstage}}
phrases:
  four:
    - {{pattern: line, beats: 7, drafted: {mark_of({**STEP, "beats": "7"})}}}
    - {{rest: 1.5}}
    - {{accent: 3}}
timeline:
  - {{from: 9.1+3/4, until: 13.1, pattern: weave, cycle: 1.5, shift: 0.75}}   # here
  - {{from: B, phrase: four, canon: 2, repeat: 2}}
  - {{hold: true, until: 15.3}}
  - {{accent: 17.1}}
fire:
  lit: [{{who: Ash, from: 6.1, until: 16.1}}]
"""


def half(text=SHOW):
    return renumbered(ShowText(text, "s.yaml"), Renumbering(PLAIN, HALF, Fraction(1, 2)))


def test_every_moment_and_length_is_of_the_new_count():
    assert half().text == HALVED
    assert is_drafted(half().value("phrases", "four", 0))


def test_line_ends_stay():
    assert half(SHOW.replace("\n", "\r\n")).text == HALVED.replace("\n", "\r\n")


def test_there_and_back_is_the_same_text():
    back = renumbered(half(), Renumbering(HALF, PLAIN, Fraction(2)))
    assert back.values == ShowText(SHOW, "s.yaml").values


def test_a_drafted_entry_that_was_changed_stays_somebody_s_own():
    own = half(SHOW.replace("beats: 14", "beats: 12"))
    assert not is_drafted(own.value("phrases", "four", 0))


def test_another_one_moves_bars_and_no_length():
    late = TempoMap(PLAIN.times, first=-1, bars=tuple(range(0, 253, 4)), metre=4)

    found = renumbered(ShowText(SHOW, "s.yaml"), Renumbering(PLAIN, late, Fraction(1)))

    assert found.value("timeline", 0, "from") == "17.1+1/2"
    assert found.value("track", "corrections", "sections", 1, "from") == "8.4"
    assert found.value("staging", 1, "beats") == "6"


@pytest.mark.parametrize(
    ("tempo", "ratio"), [(120, Fraction(1)), (60, Fraction(1, 2)), (240, Fraction(2)), (81, Fraction(2, 3))]
)  # fmt: skip
def test_the_ratio_of_beats_is_a_simple_one(tempo, ratio):
    assert beat_ratio(PLAIN, TempoMap.steady(tempo, beats=256)) == ratio


def test_a_ratio_that_is_none_is_refused():
    with pytest.raises(ValueError, match="no simple part"):
        beat_ratio(PLAIN, TempoMap.steady(101, beats=256))
    with pytest.raises(ValueError, match="in common"):
        beat_ratio(PLAIN, TempoMap.steady(120, beats=20, start=500.0))


def test_a_moment_between_beats_is_refused_at_its_line():
    """The new count lies 0.4 beats off from bar 10 on."""
    times = PLAIN.times.copy()
    times[36:] -= 0.2
    other = TempoMap(times, bars=PLAIN.bars, metre=4)
    change = Renumbering(PLAIN, other, Fraction(1))

    assert change.moment(Position(9)) == "9.1"
    with pytest.raises(InputError, match=r"25\.1, at 0:48\.50, falls between") as refused:
        renumbered(ShowText(SHOW, "s.yaml"), change)
    assert refused.value.place.line == 18


def test_a_moment_a_little_off_is_the_nearest_beat():
    times = PLAIN.times + 0.1
    change = Renumbering(PLAIN, TempoMap(times, bars=PLAIN.bars, metre=4), Fraction(1))
    assert change.moment(Position(9, Fraction(2))) == "9.2"


@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        ("accent: 5}", "accent: 5.25}", "between quarters"),
        ("cycle: 3", "cycle: 1/8", "eighth of a beat"),
        ("beats: 14", "beats: some", "not a number of beats"),
    ],
)
def test_what_cannot_be_written_is_refused(old, new, words):
    with pytest.raises(InputError, match=words):
        half(SHOW.replace(old, new))


def test_thirds_are_written_as_fractions():
    text = ShowText("timeline: [{pattern: line, beats: 4}]\n", "s.yaml")
    third = Renumbering(PLAIN, TempoMap.steady(40, beats=80), Fraction(1, 3))
    assert renumbered(text, third).value("timeline", 0, "beats") == "4/3"
