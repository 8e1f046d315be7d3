"""The examples of the page on fire and crew are read by the code that they explain."""

import re
from pathlib import Path

import pytest

from sequencer.facts.burn_log import estimate, parse_burn_log
from sequencer.facts.rule_book import rule_book
from sequencer.safety.rules.house_rules import house_rules_from
from sequencer.safety.rules.permits import permit_gaps
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document

PAGE = (Path(__file__).parents[2] / "docs" / "fire-and-crew.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"```(\w+)\n(.*?)```", PAGE, re.DOTALL)
REST = """\
title: T
track: {file: t.ogg}
"""
PLACE = """\
venue:
  stage: {shape: rectangle, width: 12 m, depth: 8 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
"""


def test_the_show_example_is_a_show():
    text = next(text for kind, text in BLOCKS if kind == "yaml" and text.startswith("night:"))
    show = show_from_document(parse_document(REST + text.replace("venue:\n", PLACE), "s.yaml")).show

    assert show.fire.burns == "burns.csv"
    assert show.cast[0].held("left").fuel_mass == pytest.approx(0.045)
    assert [post.duty for post in show.crew] == [
        "lead",
        "lighter",
        "spotter",
        "perimeter",
        "fuel keeper",
    ]
    assert permit_gaps(show) == ()


def test_the_log_example_is_a_log_with_an_interval():
    text = next(text for kind, text in BLOCKS if kind == "csv")
    found = estimate(parse_burn_log(text, "burns.csv"))

    assert found.count == 3
    assert found.lower < found.shortest == 238.0


def test_the_rules_example_loosens_only_what_it_overrides():
    text = next(text for kind, text in BLOCKS if kind == "yaml" and text.startswith("name:"))
    book = rule_book(None, house_rules_from(parse_document(text, "our-rules.yaml")))

    assert book.strictest("wind-stop").number == 8.0
    assert {each.reference for each in book.loosened} == {"L-7"}
    assert book.audience_distance(1)[0] == pytest.approx(25 * 0.3048)
    assert book.needed("spotters", 3)[0] == 3
