"""The user's own rules: read with their place in the file, refused without a source."""

from functools import partial

import pytest

from sequencer.errors import InputError, InputErrors
from sequencer.facts.profiles import profile
from sequencer.facts.rule_book import rule_book
from sequencer.safety.rules.house_rules import house_rules_from, read_house_rules
from sequencer.show.text.document import parse_document

GOOD = """\
name: our-park
title: Our park, events by-law
edition: "2026"
authority: true
rules:
  - {rule: audience-distance, value: 25 ft, source: "By-law 12, section 3, p. 4, 2026"}
  - {rule: spotters, value: {each: 1, least: 2}, source: "By-law 12, section 5"}
  - {rule: towels, value: 6, source: "By-law 12, section 6"}
  - {rule: permit, value: yes, source: "By-law 12, section 1"}
  - {rule: wind-stop, value: 20 km/h, source: "By-law 12, section 8"}
  - {rule: fuel-refused, value: [flammable], source: "By-law 12, section 9"}
  - {rule: fuel-permit-volume, value: {flammable: 1 gal}, source: "By-law 12, section 9"}
  - {rule: extinguishers, value: {least: 3, rating: 2A10BC}, source: "By-law 12, section 7"}
  - {rule: ask, value: "the gate stays open", source: "By-law 12, section 2"}
"""


def read(text):
    return house_rules_from(parse_document(text, "rules.yaml"))


def fault(text):
    with pytest.raises(InputError) as caught:
        read(text)
    return caught.value


def test_own_rules_are_read_in_si_and_cited_as_entered():
    own = read(GOOD)
    book = rule_book(None, own)

    assert own.rules[0].number == pytest.approx(7.62)
    assert own.rules[4].number == pytest.approx(20 / 3.6)
    assert own.rules[6].value == {"flammable": pytest.approx(3.785411784e-3)}
    assert book.audience_distance(1)[1][0].profile == "Our park, events by-law"
    assert book.needed("spotters", 1)[0] == 2
    assert book.needed("towels", 1)[0] == 6
    assert "By-law 12, section 3, p. 4, 2026 [own; as entered]" in own.rules[0].citation


@pytest.mark.parametrize(
    ("line", "code", "says"),
    [
        ("{rule: audience-distance, value: 9 m}", "rule-without-source", "names no source"),
        ("{rule: audience-distance, value: 9 m, source: ' '}", "rule-without-source", "names no"),
        ("{rule: audiense-distance, value: 9 m, source: x}", "unknown-rule", "audience-distance"),
        ("{rule: audience-distance, value: 9 miles, source: x}", "bad-value", "not known"),
        ("{rule: audience-distance, source: x}", "missing-key", "no value"),
        ("{value: 9 m, source: x}", "missing-key", "no rule"),
        ("{rule: permit, value: maybe, source: x}", "bad-value", "true or false"),
        ("{rule: spotters, value: {each: half}, source: x}", "bad-value", "whole number"),
        ("{rule: permit, value: true, source: x, sauce: y}", "unknown-key", "sauce"),
        ("just a word", "no-rule", "is not a rule"),
        (
            "{rule: audience-distance, value: 2 m, source: x, override: {by: Ada}}",
            "override-without-reference",
            "no reference, reason",
        ),
    ],
)
def test_faults_name_line_and_column(line, code, says):
    error = fault(f"title: T\nrules:\n  - {line}\n")

    assert error.code == code
    assert error.place.file == "rules.yaml"
    assert error.place.line == 3
    assert error.place.column >= 5
    assert says in str(error)


@pytest.mark.parametrize(
    ("sign", "says"), [("\\e]0;owned\\a", "control"), ("\\u202etxet", "reverse the direction")]
)
def test_no_text_of_them_steers_a_terminal(sign, says):
    """Each is told of by `check` and on the sheets."""
    keys = ("name", "title", "edition", "place")
    heads = "".join(f'{key}: "a{sign}"\n' for key in keys)
    texts = ("source", "note", "printed", "value")
    override = ", ".join(f'{key}: "a{sign}"' for key in ("reference", "by", "reason"))
    rule = ", ".join(f'{key}: "a{sign}"' for key in texts)
    error = fault(f"{heads}rules:\n  - {{rule: ask, {rule}, override: {{{override}}}}}\n")

    assert [str(each).split(": ")[1] for each in error.errors] == [
        *keys, *texts, "reference", "by", "reason"
    ]  # fmt: skip
    assert all(says in each.what and str(each).isprintable() for each in error.errors)
    assert [each.place.line for each in error.errors] == [1, 2, 3, 4, *[6] * 7]


def test_several_faults_are_named_in_order():
    error = fault(
        "colour: red\nrules:\n  - {rule: permit, value: true}\n  - {rule: x, value: 1, source: y}\n"
    )

    assert isinstance(error, InputErrors)
    assert [each.code for each in error.errors] == [
        "unknown-key",
        "rule-without-source",
        "unknown-rule",
    ]


@pytest.mark.parametrize("text", ["title: T\n", "rules: 3\n", "- 1\n"])
def test_a_file_without_rules_is_refused(text):
    assert fault(text).code == "no-rules"


@pytest.mark.parametrize("text", ["", "# nothing yet\n"])
def test_an_empty_file_is_told_how_rules_begin(tmp_path, text):
    (tmp_path / "rules.yaml").write_text(text, encoding="utf-8")
    with pytest.raises(InputError) as caught:
        read_house_rules(tmp_path / "rules.yaml")
    assert caught.value.code == "empty-file"
    assert caught.value.mend == "write rules: and one `- rule: …` line for each rule"


def test_an_override_loosens_and_is_remembered():
    loose = read(
        "title: T\nrules:\n  - {rule: audience-distance, value: 4 m, source: marshal's letter, "
        "override: {reference: L-7, by: Ada, reason: fenced}}\n"
    )
    plain = read("title: T\nrules:\n  - {rule: audience-distance, value: 4 m, source: letter}\n")

    assert rule_book(None, plain).audience_distance(1)[0] == pytest.approx(6.096)
    book = rule_book(None, loose)
    assert book.audience_distance(1)[0] == pytest.approx(4.0)
    assert {each.reference for each in book.loosened} == {"L-7"}


def test_no_file_is_said(tmp_path):
    with pytest.raises(InputError, match="file not found"):
        read_house_rules(tmp_path / "none.yaml")


def test_the_strictest_of_several_profiles_holds_and_a_permit_sets_none_of_them_aside():
    """Town 10 ft [A1] and region 5 m [A22]: with a permit the default's 20 ft go, the region's 5 m stay."""
    both = [profile("kansas-city"), profile("montreal")]

    assert rule_book(both).audience_distance(1)[0] == pytest.approx(6.096)
    agreed = partial(rule_book, permit="P-1", loosens=["audience-distance"])
    assert agreed(both).audience_distance(1)[0] == pytest.approx(5.0)
    assert agreed(both[::-1]).audience_distance(1)[0] == pytest.approx(5.0)
    assert {each.instead_of.profile for each in agreed(both).loosened} == {profile("default").title}
