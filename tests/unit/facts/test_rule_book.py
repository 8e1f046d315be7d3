"""What a text adds to its distance when several are lit: once, or for each more."""

from dataclasses import replace

import pytest

from sequencer.facts.profiles import profile
from sequencer.facts.rule_book import rule_book

FOOT = 0.3048


@pytest.mark.parametrize(("per", "feet"), [("once", 25.0), ("performer", 35.0)])
def test_four_lit_at_once(per, feet):
    """20 ft, and 5 ft more when several perform: Grants Pass OR, 2019 [A5; read], read as once."""
    text = profile("grants-pass")
    assert [rule.per for rule in text.rules if rule.kind.name == "several-performers-extra"] == [
        "once"
    ]
    rules = tuple(
        replace(rule, per=per) if rule.kind.name == "several-performers-extra" else rule
        for rule in text.rules
    )
    distance, used = rule_book(replace(text, rules=rules)).audience_distance(4)

    assert distance == pytest.approx(feet * FOOT)
    assert len(used) == 2
