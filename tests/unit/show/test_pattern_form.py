"""A form about a pattern of one's own offers what the reader of patterns takes, and nothing else."""

import pytest

from sequencer.motion.patterns import library
from sequencer.motion.patterns.law_kinds import law_kinds
from sequencer.motion.patterns.library import patterns, patterns_from
from sequencer.show.pattern_form import pattern_form

FORM = pattern_form()
CUBE = [
    {"hand": 90 * k, "bend": bend, "phase": 180 * (k + 1)} for k, bend in enumerate((90, 0, 90, 180, 90))
]  # fmt: skip
MADE_BY = {
    "law": {"law": "orbit"},
    "hands": {"left": {"law": "orbit"}, "right": {"law": "orbit", "set": {"ratio": -3}}},
    "stations": {"stations": CUBE},
}
SAID = {
    "summary": "a move", "difficulty": 2, "why": "it is fast", "cycle": "2", "needs": ["extension"], "props": ["poi", "fan"],
    "notes": "stand wide", "room": {"across": ["-5 cm", 0.3]}, "family": "flower", "source": "a friend",
    "set": {"ratio": -3}, "defaults": {"plane": "wheel"},
}  # fmt: skip


def test_together_the_ways_offer_every_key_that_is_read():
    offered = [set(way["properties"]) for way in FORM["ways"].values()]
    assert set().union(*offered) == library._KEYS


@pytest.mark.parametrize("way", FORM["ways"])
def test_each_key_that_a_way_offers_is_taken_beside_what_makes_it_one(way):
    own = FORM["ways"][way]
    assert set(own["required"]) <= set(MADE_BY[way])
    assert "one" in patterns_from({"one": MADE_BY[way]}, patterns())
    for key in own["properties"].keys() - MADE_BY[way].keys():
        said = {"hand_radius": "20 cm"} if (way, key) == ("stations", "set") else SAID[key]
        assert "one" in patterns_from({"one": {**MADE_BY[way], key: said}}, patterns())
    for key in own["required"]:
        less = {name: value for name, value in MADE_BY[way].items() if name != key}
        with pytest.raises(ValueError, match=r"give (either|both)"):
            patterns_from({"one": less}, patterns())


@pytest.mark.parametrize("law", FORM["laws"])
def test_each_value_of_a_law_can_be_fixed_and_what_stands_in_the_field_is_what_holds(law):
    told = FORM["laws"][law]["properties"]
    assert list(told) == [each.name for each in law_kinds()[law].parameters]
    for name, value in told.items():
        known = next(each for each in law_kinds()[law].parameters if each.name == name)
        for one in value.get("enum", value.get("examples", ())):
            if known.default is None and one == "as the prop":
                continue
            made = patterns_from({"one": {"law": law, "set": {name: str(one)}}})["one"]
            assert made.right.fixed == {name: one if known.kind == "choice" else known.default}


def test_the_values_of_stations_stay_open_or_are_fixed():
    for name in FORM["stations"]["properties"]:
        value = "floor" if name == "plane" else "anticlockwise" if name == "turn" else "0.2"
        left_open = patterns_from({"one": {"stations": CUBE, "defaults": {name: value}}})["one"]
        assert name in {each.name for each in left_open.parameters}
        fixed = patterns_from({"one": {"stations": CUBE, "set": {name: value}}})["one"]
        assert name not in {each.name for each in fixed.parameters}
        assert list(fixed.right.fixed) == [name]
