"""The compliance table on paper: what comes first, what a verdict looks like, and that nothing is left out."""

from io import BytesIO

import pypdf
import pytest
from reportlab.pdfgen.canvas import Canvas

from sequencer.outputs.sheets.page.marking import lines_of
from sequencer.outputs.sheets.page.paper import Page
from sequencer.outputs.sheets.parts.compliance_table import (
    ESSENCE,
    FIRST_ROWS,
    MOST_UNMET,
    VerdictMark,
    compliance_block,
    confirm_block,
    rules_block,
)
from sequencer.safety.compliance import ComplianceRow

ROOM = Page.of("a4").inner


def row(subject, verdict="met", *, decides=True, profile="default", has="7.74 m (Wren)", why=""):
    return ComplianceRow(
        subject=subject, what=f"the {subject}", asked="at least 7.62 m", has=has, verdict=verdict, margin="+0.12 m",
        why=why, text=f"text of {subject}", note="read once", profile=profile, source="A5; read", decides=decides,
    )  # fmt: skip


class Told:
    """An edition as far as the table asks."""

    def __init__(self, *rows):
        self.compliance = rows


def words(story):
    return [line.replace("\u00a0", " ") for line in lines_of(story)]


def test_what_is_not_met_comes_first_then_what_is_not_stated_then_what_an_officer_asks_for():
    rows = [row(name) for name in reversed(list(ESSENCE))]
    rows += [
        row("buckets", "not stated"),
        row("towels", "not met", why="1 of 4 damp towels"),
        row("blankets"),
    ]
    lines = [
        line for line in words(compliance_block(Told(*rows), ROOM)) if "at least 7.62 m" in line
    ]

    assert "the towels" in lines[0]
    assert "1 of 4 damp towels" in lines[0]
    assert lines[0].startswith("NOT MET")
    assert "the buckets" in lines[1]
    assert lines[1].startswith("NOT STATED")
    assert [next(name for name in ESSENCE.values() if name in line) for line in lines[2:5]] == list(
        ESSENCE.values()
    )[:3]
    assert len(lines) == FIRST_ROWS
    assert not any("blankets" in line for line in lines)  # met, and no officer's first question


def test_a_rule_that_another_one_on_its_subject_outdoes_is_not_on_page_one():
    lines = words(
        compliance_block(Told(row("wind-stop", "not met", decides=False), row("permit")), ROOM)
    )

    assert not any("gusts" in line for line in lines)


def test_many_unmet_rules_leave_room_for_the_essence():
    rows = [row(f"own-{k}", "not met") for k in range(40)] + [row(name) for name in ESSENCE]
    lines = [
        line for line in words(compliance_block(Told(*rows), ROOM)) if "at least 7.62 m" in line
    ]

    assert len([line for line in lines if line.startswith("NOT MET")]) == MOST_UNMET
    assert len(lines) == MOST_UNMET + 8


def test_the_count_covers_every_rule():
    rows = [
        row("permit"),
        row("towels", "not met"),
        row("fire-watch", "confirm"),
        row("reach", "told", profile=""),
    ]
    text = " ".join(words(compliance_block(Told(*rows), ROOM)))

    assert (
        "3 rules in force: 1 not met, 0 not stated, 1 to be confirmed by a person, 1 met." in text
    )


def test_the_whole_list_has_asked_plan_margin_text_note_and_source_of_every_rule():
    rows = [
        row("permit"),
        row("towels", "not met", decides=False, why="too few"),
        row("let-go", "told", profile=""),
    ]
    lines = words(rules_block(Told(*rows), ROOM))
    (towels,) = [line for line in lines if "the towels" in line]

    for part in (
        "NOT MET",
        "at least 7.62 m",
        "7.74 m (Wren)",
        "+0.12 m",
        "too few",
        "text of towels",
        "read once",
        "A5; read",
    ):
        assert part in towels
    assert any("the let-go" in line and "no rule asks for it" in line for line in lines)
    assert any("the permit" in line and "default" in line for line in lines)


def test_what_a_person_confirms_has_a_box():
    lines = words(confirm_block(Told(row("fire-watch", "confirm", has=""), row("permit")), ROOM))

    assert any(line.startswith("CONFIRM · text of fire-watch") for line in lines)
    assert not any("permit" in line for line in lines)
    assert confirm_block(Told(row("permit")), ROOM) == []


def test_without_rows_nothing_is_printed():
    assert compliance_block(Told(), ROOM) == rules_block(Told(), ROOM) == []


@pytest.mark.parametrize(
    ("verdict", "text", "shapes"),
    [
        ("met", "MET", " l"),
        ("not met", "NOT MET", " f"),
        ("not stated", "NOT STATED", " d"),
        ("confirm", "CONFIRM", " re"),
        ("told", "", ""),
    ],
)
def test_each_verdict_has_a_word_and_a_shape_of_its_own(verdict, text, shapes):
    """Drawn by PDF operators: lines (l), a filled field (f), dashes (d), a rectangle (re)."""
    drawn = BytesIO()
    canvas = Canvas(drawn, pageCompression=0)
    mark = VerdictMark(verdict)
    mark.wrap(100, 100)
    mark.canv = canvas
    mark.draw()
    canvas.save()

    assert mark.words == text
    body = drawn.getvalue().partition(b"stream")[2].decode("latin-1")
    assert shapes in body


def test_page_one_of_packet_and_safety_sheet_begins_with_it(rounds, tmp_path_factory):
    _, files = rounds.printed(tmp_path_factory)
    for name in ("plan-packet", "safety"):
        first = next(pypdf.PdfReader(path).pages[0] for path in files if path.stem.endswith(name))
        text = " ".join(first.extract_text().split())
        assert text.index("What is asked, and what this plan has") < text.index("rules in force")
        assert "What the checks found" not in text.partition("rules in force")[0]
