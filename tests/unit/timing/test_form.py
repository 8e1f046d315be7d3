"""Parts, groups of four eights and eights as one tree; how sure a border is, in words."""

from dataclasses import replace

import pytest

from sequencer.timing.form import heard_borders_of, section_mark, song_form, sure_word
from sequencer.timing.song import Section
from tests.songs import even_song, silent_song


def song(*sections, turns=(), bars=40):
    """Bars of two seconds from 0 s on."""
    whole = even_song(4 * bars)
    return replace(whole, sections=sections, turns=turns)


def test_a_part_has_fours_of_eights_and_what_is_left():
    """24 bars of four are twelve eights, three fours; then 16 bars less one: 7 eights and a bar."""
    form = song_form(
        song(Section(start=0, end=48, label="A"), Section(start=48, end=78, label="B"))
    )

    assert [part.bars for part in form] == [(1, 24), (25, 39)]
    assert [[len(g.phrases) for g in part.groups] for part in form] == [[4, 4, 4], [4, 4]]
    assert [p.counts for g in form[1].groups for p in g.phrases] == [8] * 7 + [4]
    assert form[0].groups[1].start == pytest.approx(16)
    assert form[0].groups[1].end == pytest.approx(32)


def test_a_group_ends_where_another_part_may_begin():
    """A likely border at bar 13, the seventh eight of 20 bars: 4, 2 and 4 eights."""
    (part,) = song_form(song(Section(start=0, end=40, label="A"), turns=((24.0, 0.34),), bars=20))

    assert part.turns == ((13, 0.34),)
    assert [(len(g.phrases), g.turn) for g in part.groups] == [(4, 0.0), (2, 0.0), (4, 0.34)]


def test_a_group_goes_on_where_another_part_hardly_begins():
    """Under one in three; where a group begins anyway it is told with it."""
    turns = ((16.0, 0.2), (24.0, 0.32))
    (part,) = song_form(song(Section(start=0, end=40, label="A"), turns=turns, bars=20))

    assert part.turns == ((9, 0.2), (13, 0.32))
    assert [(len(g.phrases), g.turn) for g in part.groups] == [(4, 0.0), (4, 0.2), (2, 0.0)]


def test_possible_borders_beside_real_ones_are_not_told():
    """As when somebody moved a border by hand to where another may lie."""
    sections = Section(start=0, end=32, label="A"), Section(start=32, end=80, label="B")

    form = song_form(song(*sections, turns=((31.0, 0.3), (32.5, 0.2), (48.0, 0.4))))

    assert [part.turns for part in form] == [(), ((25, 0.4),)]


def test_without_a_count_there_are_parts_without_bars():
    (part,) = song_form(silent_song())

    assert (part.name, part.bars, part.groups, part.turns) == ("A", None, (), ())


def test_words():
    assert [sure_word(c) for c in (0.0, 0.79, 0.8, 1.0)] == ["perhaps", "perhaps", "sure", "sure"]
    marks = [section_mark(Section(start=0, end=1, label="B", variant=k)) for k in range(3)]
    assert marks == ["B", "B'", "B''"]


def test_sections_given_by_hand_are_marked_as_they_were_heard():
    """The same moments under other names, one where a part was only possible, and one of one's own."""
    heard = even_song(128, sections={0.0: "A", 16.0: "B", 32.0: "A", 48.0: "B"})
    parts = [
        replace(s, variant=k > 2, confidence=0.4 + 0.2 * k) for k, s in enumerate(heard.sections)
    ]
    heard = replace(heard, sections=tuple(parts), turns=((24.0, 0.3),))
    names = {0.0: "in", 16.1: "verse", 24.0: "verse", 32.0: "in", 40.0: "own", 48.0: "verse"}
    song = replace(even_song(128, sections=names), turns=heard.turns)

    assert heard_borders_of(song, heard) == (
        ("in", None), ("verse", pytest.approx(0.6)), ("verse", 0.3), ("in", pytest.approx(0.8)),
        ("own", None), ("verse'", pytest.approx(1.0)),
    )  # fmt: skip
    short = replace(song, sections=(*song.sections[:-1], replace(song.sections[-1], end=60.0)))
    assert heard_borders_of(short, heard)[-1][0] == "verse"  # only a part of what varies
    assert [mark for mark, _ in heard_borders_of(heard, heard)] == ["A", "B", "A", "B'"]
