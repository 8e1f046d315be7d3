"""Type, lines and words of the sheets."""

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from sequencer.outputs.sheets.page import bidi, letters, wording
from sequencer.outputs.sheets.page.paper import INK, SOFT, Page
from sequencer.outputs.sheets.page.prose import Prose, TextSpan, broken

SCRIPTS = "Łódź ø ß é Ελλάδα Москва Ѓ שלום ֹ → ≤ ½ № ♭ ✓"


def drawn(text, room=200.0):
    return ["".join(run.text for run in line.runs) for line in broken((TextSpan(text),), room)]


@pytest.mark.parametrize("face", letters.FACES)
def test_type_covers_the_promised_scripts(face):
    letters.font_name(face)

    assert letters.uncovered([SCRIPTS]) == ()
    assert all(letters.width(letter, face) >= 0 for letter in SCRIPTS)


def test_other_letters_are_spelled_as_codes_not_left_empty():
    assert letters.printable("火花 Ł") == "‹U+706B U+82B1› Ł"
    assert letters.printable("火花炎焔") == "‹U+706B U+82B1 +2›"
    assert letters.uncovered(["火a花", "花"]) == ("火", "花")


def test_letters_that_are_composed_count_as_covered():
    assert letters.printable("e\u0301") == "é"
    assert letters.printable("a\u0000b\u200dc") == "a bc"


def test_hebrew_is_drawn_from_right_to_left():
    assert drawn("שלום") == ["םולש"]
    assert drawn("a שלום (12) b") == ["a (12) םולש b"]


def test_hebrew_paragraph_stands_at_the_right_and_breaks_by_line():
    lines = broken((TextSpan("שלום עולם טוב"),), 60.0)

    assert [line.rtl for line in lines] == [True] * len(lines)
    assert "".join(run.text for run in lines[0].runs).endswith("םולש")


def test_a_name_kept_apart_does_not_swallow_the_number_after_it():
    name = "Noa עברית"

    assert drawn(f"{name}, 3.9 m") == ["Noa 3.9 ,תירבע m"]  # what the standard order makes of it
    assert drawn(f"{bidi.apart(name)}, 3.9 m") == ["Noa תירבע, 3.9 m"]


def test_a_number_keeps_its_unit():
    assert drawn("about 2.0\u00a0m up", room=40.0) == ["about", "2.0\u00a0m", "up"]


def test_hyphened_words_may_break_after_the_hyphen():
    assert drawn("three-beat-weave", room=45.0) == ["three-", "beat-", "weave"]


@given(
    st.text(st.characters(codec="utf-8", exclude_categories=["Cs"]), max_size=120),
    st.floats(12.0, 300.0),
)
@example(" 0S", 12.0)  # a space first, then a word that fits only without it
def test_no_line_is_wider_than_its_room(text, room):
    widest = max(
        (run.size for line in broken((TextSpan(text),), room) for run in line.runs), default=0.0
    )
    for line in broken((TextSpan(text),), room):
        assert line.width <= max(room, 1.3 * widest) + 1e-6


@given(st.text("abc defghij-k é", min_size=1, max_size=200), st.floats(20.0, 200.0))
def test_breaking_loses_no_letter(text, room):
    kept = "".join(
        "".join(run.text for run in line.runs) for line in broken((TextSpan(text),), room)
    )

    assert kept.replace(" ", "") == text.replace(" ", "")


def test_split_prose_shares_its_lines():
    prose = Prose(
        [TextSpan("word " * 60, "Regular", 10.0, INK), TextSpan("end", "Bold", 12.0, SOFT)]
    )
    _, tall = prose.wrap(100.0, 1e9)
    first, second = prose.split(100.0, tall / 2)

    assert first.wrap(100.0, 1e9)[1] + second.wrap(100.0, 1e9)[1] == pytest.approx(tall)
    assert len(first.lines) + len(second.lines) == len(prose.lines)
    assert prose.split(100.0, 5.0) == []


@pytest.mark.parametrize(
    ("x", "y", "words"),
    [
        (0.0, 2.5, "on the centre line, 2.5\u00a0m\u00a0upstage"),
        (1.5, 0.0, "1.5\u00a0m to stage\u00a0left, at the front edge"),
        (-3.0, 4.0, "3.0\u00a0m to stage\u00a0right, 4.0\u00a0m\u00a0upstage"),
        (0.02, -1.0, "on the centre line, 1.0\u00a0m in front of the edge"),
    ],
)
def test_places_are_said_from_the_performers_own_left(x, y, words):
    assert wording.place_words(x, y) == words


@pytest.mark.parametrize(
    ("degrees", "words"),
    [
        (0, "the audience"),
        (360, "the audience"),
        (90, "stage left"),
        (-90, "stage right"),
        (180, "upstage, back to the audience"),
        (-180, "upstage, back to the audience"),
        (44, "front, half to stage left"),
        (315, "front, half to stage right"),
        (20, "20° to stage\u00a0left of the audience"),
        (-20, "20° to stage\u00a0right of the audience"),
    ],
)
def test_facings_are_said_as_eighths_or_degrees(degrees, words):
    assert wording.facing_words(degrees) == words


@pytest.mark.parametrize(
    ("value", "words"), [(4, "4"), (0.5, "½"), (2.75, "2¾"), (1 / 3, "⅓"), (2.6, "2.6")]
)
def test_counts_read_as_musicians_write_them(value, words):
    assert wording.number(value) == words


def test_a_cue_is_never_read_late():
    assert wording.clock(59.999) == "0:59"
    assert wording.clock(60.0) == "1:00"
    assert wording.span_seconds(119.4) == "119\u00a0s"
    assert wording.span_seconds(125.0) == "2\u00a0min 05\u00a0s"


@pytest.mark.parametrize(
    ("name", "part"),
    [
        ("Łucja Ø", "lucja-o"),
        ("Jean-Luc / B", "jean-luc-b"),
        ("CON", "con-"),
        ("...", "unnamed"),
        ("火花", "u706bu82b1"),
        ("é" * 100, "e" * 48),
        ("a:b*c?", "a-b-c"),
    ],
)
def test_file_names_fit_every_system(name, part):
    assert wording.slug(name) == part


def test_names_of_a_list_stay_short_and_in_order():
    assert wording.listed(["A", "B", "C"]) == "A, B and C"
    assert wording.listed(["A", "B", "C"], most=2) == "A, B and 1 more"
    assert wording.listed([]) == ""
    assert len(wording.brief("x" * 300)) == 44


def test_page_has_room_inside_its_margins():
    for paper in ("a4", "letter"):
        for wide in (False, True):
            page = Page.of(paper, wide=wide, banner=25.0)
            assert 0 < page.left < page.left + page.inner < page.width
            assert 0 < page.bottom < page.top < page.height
            assert page.tall > 400
    with pytest.raises(ValueError, match="paper must be one of a4, letter"):
        Page.of("a5")
