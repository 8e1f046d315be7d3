"""Profiles refuse what has no source or does not fit its subject."""

from pathlib import Path

import pytest

from sequencer.facts.profiles import kind_of, profile, value_from
from sequencer.facts.rule_book import rule_book
from sequencer.facts.rule_kinds import RULE_KINDS
from sequencer.facts.sources import Range, mark_of, range_from, source


def test_unknown_profiles_and_subjects_name_the_nearest():
    with pytest.raises(ValueError, match="did you mean montreal"):
        profile("montral")
    with pytest.raises(ValueError, match="known profiles: default"):
        profile("zzzz")
    with pytest.raises(ValueError, match="did you mean audience-distance"):
        kind_of("audience-distanse")


@pytest.mark.parametrize(
    ("kind", "raw", "match"),
    [
        ("audience-distance", "far", "takes a number"),
        ("audience-distance", -1.0, "not negative"),
        ("audience-distance", float("nan"), "finite"),
        ("audience-distance", True, "takes a number"),
        ("burn-share", 1.5, "at most 1"),
        ("permit", "yes", "true or false"),
        ("spotters", {"each": 0, "least": 1}, "from 1"),
        ("spotters", {"least": 0}, "requires nothing"),
        ("spotters", {"least": 1.5}, "whole number"),
        ("spotters", {"some": 1}, "takes least and each"),
        ("extinguishers", {"least": 1}, "needs a rating"),
        ("extinguishers", {"least": 1, "rating": "big"}, "not an extinguisher rating"),
        ("extinguishers", 2, "takes least"),
        ("fuel-refused", "gasoline", "takes a list"),
        ("fuel-permit-volume", {"all": 1.0}, "flammable and combustible"),
        ("ask", "  ", "takes a text"),
    ],
)
def test_values_that_do_not_fit(kind, raw, match):
    with pytest.raises(ValueError, match=match):
        value_from(kind_of(kind), raw)


def test_a_rule_gives_only_what_it_holds():
    book = rule_book()
    with pytest.raises(ValueError, match="has no number"):
        _ = book.all("permit")[0].number
    with pytest.raises(ValueError, match="has no extinguishers"):
        _ = book.all("permit")[0].extinguishers
    with pytest.raises(ValueError, match="has no count"):
        _ = book.all("permit")[0].count
    with pytest.raises(ValueError, match="has no numbers"):
        book.strictest("permit")
    assert book.strictest("operator-age") is None
    assert book.required("fire-ban") is None
    assert book.needed("buckets", 3) is None
    with pytest.raises(ValueError, match="gives a distance"):
        rule_book(profile("bend"), with_default=False).audience_distance(1)


def test_a_number_without_a_source_is_refused():
    with pytest.raises(ValueError, match="not a source in this package"):
        source("A99")
    with pytest.raises(ValueError, match="not a source"):
        range_from({"low": 1.0, "high": 2.0})
    with pytest.raises(ValueError, match="mark must be one of"):
        mark_of({"mark": "rumour"}, source("A1"))
    with pytest.raises(ValueError, match="at least one value"):
        Range(low=None, high=None, source=source("A1"), mark="read")
    with pytest.raises(ValueError, match="must go from low to high"):
        Range(low=2.0, high=1.0, source=source("A1"), mark="read")
    assert Range(low=None, high=3.0, source=source("A1"), mark="read").lowest == 3.0
    assert Range(low=3.0, high=None, source=source("A1"), mark="read").highest == 3.0


def test_no_subject_of_a_rule_is_passed_over():
    """Every subject is read by name somewhere in the checks or the night, or a person confirms it."""
    root = Path(__file__).parents[3] / "sequencer"
    text = "".join(
        path.read_text(encoding="utf-8")
        for room in ("checks", "safety", "facts/rule_book.py")
        for path in ([root / room] if room.endswith(".py") else sorted((root / room).rglob("*.py")))
    )

    passed_over = [
        name for name, kind in RULE_KINDS.items() if not kind.by_hand and f'"{name}"' not in text
    ]
    assert passed_over == []
