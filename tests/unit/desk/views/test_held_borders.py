"""Sections keep their moment of the song while the count is put right: seconds before and after, by hand."""

import pytest

from sequencer.desk.views.held_borders import held_borders, held_text
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.entries.counted_song import as_counted
from tests.songs import even_song
from tests.unit.desk.views.test_count_view import SHOW

# Beats each half a second from 0.5 s: bar 5 begins at 8.5 s, 7.2 is at 13.0 s; the last is no beat.
HEARD = even_song(64, start=0.5, duration=33.0, sections={0.0: "A", 16.5: "B"})
ROWS = '[{from: 1.1, name: a}, {from: 5.1, name: b}, {from: 7.2, name: c}, {from: "0:20.2", name: d}]'  # fmt: skip
SECONDS = [0.0, 8.5, 13.0, 20.2]


def read_of(text):
    return show_from_document(parse_document(text, "s.yaml"))


def written(corrections, rows=ROWS):
    return SHOW.replace("corrections: {}", f"corrections: {{{corrections}, sections: {rows}}}")


def starts(text):
    song, _ = as_counted(read_of(text), HEARD)
    return [each.start for each in song.sections]


def held(corrections, shift=0.0, rows=ROWS, seconds=SECONDS):
    text = written(corrections, rows)
    moments = held_borders(read_of(text), HEARD, seconds, shift)
    return held_text(text, "s.yaml", moments) if moments else (text, None)


@pytest.mark.parametrize(
    ("corrections", "froms"),
    [
        ("tempo: half", ["1.1", "3.1", "0:13.000", "0:20.2"]),  # 13.0 s lies between two beats now
        ("tempo: double", ["1.1", "9.1", "13.3", "0:20.2"]),
        ("metre: 3", ["1.1", "6.2", "9.2", "0:20.2"]),
        ("one: 0:01.0", ["1.1", "4.4", "7.1", "0:20.2"]),
        ("steady: {tempo: 100, at: 0:00.4}", ["1.1", "0:08.500", "6.2", "0:20.2"]),
    ],
)
def test_a_border_begins_at_the_same_second_on_another_count(corrections, froms):
    text, sections = held(corrections)

    assert [start for start, _ in sections] == froms
    assert [name for _, name in sections] == ["a", "b", "c", "d"]
    assert starts(text) == pytest.approx(SECONDS, abs=0.03)
    assert starts(written("metre: 4")) == pytest.approx(SECONDS)


def test_without_it_borders_are_elsewhere_or_outside_the_song():
    assert starts(written("tempo: double"))[1] == pytest.approx(4.5)
    late = ROWS.replace("7.2", "9.2")
    with pytest.raises(Exception, match="outside the track"):
        starts(written("tempo: half", late))
    text, _ = held("tempo: half", rows=late, seconds=[0.0, 8.5, 17.0, 20.2])
    assert starts(text) == pytest.approx([0.0, 8.5, 17.0, 20.2])


def test_borders_on_beats_move_along_with_a_shift_of_all_beats():
    assert held("shift: 200 ms", 0.2)[1] is None
    assert starts(written("shift: 200 ms")) == pytest.approx([0.0, 8.7, 13.2, 20.2])


def test_the_first_section_is_written_anew_where_it_would_begin_after_the_second():
    """2.4 was at 4.0 s, before the second one at 4.5 s, and half as fast it would be at 7.5 s."""
    rows = "[{from: 2.4, name: a}, {from: 3.1, name: b}]"
    text, sections = held("tempo: half", seconds=[0.0, 4.5], rows=rows)

    assert sections == [["0:00.000", "a"], ["2.1", "b"]]
    assert starts(text) == pytest.approx([0.0, 4.5])


def test_sections_that_are_not_as_many_are_left_alone():
    assert held("tempo: half", seconds=[0.0, 8.5])[1] is None
