"""Names in the schema for editors: a misspelt pattern, person, phrase or quantity is marked while somebody types.

Outside source: JSON Schema draft 2020-12, as the library jsonschema checks it; YAML 1.2 by ruamel.yaml.
"""

import copy
from dataclasses import replace
from pathlib import Path

import jsonschema
import pytest
from ruamel.yaml import YAML

from sequencer.motion.patterns.library import patterns
from sequencer.show.schemas.schema import editor_schema, show_schema
from sequencer.show.schemas.schema_names import names_of
from sequencer.units import AREAS, DURATIONS, LENGTHS, MASSES, quantity

SHOW = YAML(typ="safe", pure=True).load(Path(__file__).parents[4] / "shows" / "lantern_round.yaml")
for _key in ("date", "night"):
    SHOW[_key] = str(SHOW[_key])  # an editor's reader gives a date


def faults(show, schema):
    """Where something is marked, as the path of the value."""
    found = list(jsonschema.Draft202012Validator(schema).iter_errors(show))
    for error in found:  # those inside an alternative too, as an editor shows them
        found += error.context or ()
    return [".".join(map(str, error.absolute_path)) for error in found]


def edited(change):
    show = copy.deepcopy(SHOW)
    change(show)
    return show


@pytest.fixture(scope="module")
def any_show():
    return show_schema()


@pytest.fixture(scope="module")
def own():
    return show_schema(names_of(SHOW, patterns()))


def test_a_show_without_faults_is_marked_nowhere(any_show, own):
    jsonschema.Draft202012Validator.check_schema(own)
    assert faults(SHOW, any_show) == []
    assert faults(SHOW, own) == []


BAD = {
    "a misspelt pattern": (
        lambda show: show["timeline"][2].update(pattern="fountian"), "timeline.2.pattern"
    ),
    "a misspelt pattern in a phrase": (
        lambda show: show["phrases"]["two-beat"][0].update(pattern="two-beat-weeve"),
        "phrases.two-beat.0.pattern",
    ),
    "a misspelt pattern of one hand": (
        lambda show: show["timeline"].append({"left": {"pattern": "fontain"}, "beats": 4}),
        f"timeline.{len(SHOW['timeline'])}.left.pattern",
    ),
}  # fmt: skip


@pytest.mark.parametrize("fault", BAD)
def test_any_schema_marks_a_misspelt_pattern(fault, any_show, own):
    change, path = BAD[fault]
    for schema in (any_show, own):
        assert path in faults(edited(change), schema)


NAMED = {
    "a phrase": (lambda show: show["timeline"][5].update(phrase="two-beet"), "timeline.5"),
    "who dances": (lambda show: show["timeline"][2].update(who="Wrenn"), "timeline.2.who"),
    "one of those who dance": (lambda show: show["timeline"][2].update(who=["Wren", "Mos"]), "timeline.2.who"),
    "who mirrors": (lambda show: show["timeline"][2].update(mirror=["Sabel"]), "timeline.2.mirror"),
    "a formation": (lambda show: show["staging"][1].update(formation="diamont"), "staging.1.formation"),
    "a spot": (lambda show: show["formations"]["line"]["spots"].update(Wern={"at": [0, 1]}), "formations.line.spots"),
    "a way": (lambda show: show["staging"][2]["via"].update(Wern=[[0, 1]]), "staging.2.via"),
    "who lights": (lambda show: show["fire"]["handling"].update(lit_by="Sorel"), "fire.handling.lit_by"),
    "who is watched": (lambda show: show["crew"][0].update(watches=["Jupiter"]), "crew.0.watches"),
}  # fmt: skip


@pytest.mark.parametrize("fault", NAMED)
def test_a_shows_own_schema_marks_names_that_it_does_not_have(fault, any_show, own):
    change, path = NAMED[fault]
    show = edited(change)
    assert faults(show, any_show) == []  # which knows nobody's names
    assert any(each.startswith(path) for each in faults(show, own))


def test_own_patterns_are_taken():
    """In any show's schema where the show brings some; in its own by name."""
    show = edited(lambda each: each.update(patterns={"slow cube": {"law": "orbit", "ratio": 1}}))
    show["timeline"][2]["pattern"] = "slow cube"
    assert faults(show, show_schema()) == []
    named = show_schema(names_of(show, [*patterns(), "slow cube"]))
    assert faults(show, named) == []
    show["timeline"][2]["pattern"] = "slow kube"
    assert set(faults(show, named)) == {"timeline.2.pattern"}


def test_the_names_are_enumerations_that_an_editor_can_offer(own):
    who = own["$defs"]["Entry"]["properties"]["who"]["anyOf"]
    assert who[0]["enum"] == ["all", "Wren", "Moss", "Juniper", "Sable"]
    assert set(own["$defs"]["Step"]["properties"]["pattern"]["anyOf"][0]["enum"]) == set(patterns())


QUANTITIES = {
    "stature": (LENGTHS, ["1.8 m", "6 ft", "5'11", "5 ft 11 in", "5'4\"", "1,8 m", "180cm", "1.8", "1 500 mm"],
                ["1.8 metres", "six feet", "1.8 kg", "m", ""]),
    "mass": (MASSES, ["200 g", "0.2 kg", "7 oz", "0,2"], ["200 m", "two hundred g", "200 gr"]),
    "area": (AREAS, ["250 m²", "2700 ft2"], ["250 m"]),
    "time": (DURATIONS, ["240 s", "4 min", "240"], ["4 minutes", "4 m"]),
}  # fmt: skip


@pytest.mark.parametrize("kind", QUANTITIES)
def test_quantities_are_marked_where_the_reader_refuses_their_unit(kind, any_show):
    """The reader itself is the measure: what it takes, the pattern takes; these slips both refuse."""
    field = {
        "stature": any_show["$defs"]["Performer"]["properties"]["stature"],
        "mass": any_show["$defs"]["PropRecord"]["properties"]["mass"],
        "area": any_show["$defs"]["VenueRecord"]["properties"]["audience_area"],
        "time": any_show["$defs"]["BurnRecord"]["properties"]["time"],
    }[kind]
    units, good, bad = QUANTITIES[kind]
    check = jsonschema.Draft202012Validator(field)
    for text in good:
        assert quantity(text, units, default=next(iter(units))) > 0
        assert check.is_valid(text), text
    for text in bad:
        with pytest.raises(ValueError, match=r"number|unit"):
            quantity(text, units, default=next(iter(units)))
        assert not check.is_valid(text), text


@pytest.mark.parametrize(
    ("text", "is_good"),
    [
        ("17.1", True), ("17.3+1/2", True), ("17.3+.173", True), ("1:02.5", True), ("verse 2", True),
        ("end of verse 2", True), ("2nd verse", True), ("-1.1", True), ("17", False), ("17.", False),
        ("1:2:3", False),
    ],
)  # fmt: skip
def test_moments_are_marked_where_they_are_none(text, is_good, any_show):
    """`17` alone is no moment: bar.beat has a beat."""
    field = any_show["$defs"]["Staging"]["properties"]["from"]
    assert jsonschema.Draft202012Validator(field).is_valid(text) is is_good


def test_names_come_from_a_file_that_is_no_show_yet():
    found = names_of(
        {"cast": [{"name": " Ada  B "}, {"nmae": "x"}, 3], "crew": None, "phrases": []}, ["a"]
    )
    assert (found.cast, found.crew, found.phrases, found.patterns) == (("Ada B",), (), (), ("a",))


def test_an_editor_is_given_words_for_names_and_values(own):
    """Each pattern's summary beside its name, and what to say of a name that is none."""
    (form, *_) = own["$defs"]["Step"]["properties"]["pattern"]["anyOf"]
    told = dict(zip(form["enum"], form["enumDescriptions"], strict=True))
    assert told["two-beat-weave"] == patterns()["two-beat-weave"].summary
    (form, *_) = own["$defs"]["Entry"]["properties"]["who"]["anyOf"]
    assert form["errorMessage"].endswith("this name: all, Wren, Moss, Juniper, Sable")
    canon = editor_schema()["$defs"]["Entry"]["properties"]["canon"]["anyOf"][0]
    assert canon["description"].startswith("each performer starts this many beats after")
    assert canon["patternErrorMessage"] == "a number of beats greater than 0: 8 or 1/2"


VALUES = {
    "misspelt": {"pattern": "pro-bend-4", "with": {"hand_raduis": "15 cm"}},
    "of another pattern": {"pattern": "windmill", "with": {"hand_radius": "15 cm"}},
    "fixed by the pattern": {"pattern": "pro-bend-4", "with": {"lobes": 5}},
    "no such choice": {"pattern": "pro-bend-4", "with": {"plane": "wal"}},
    "no length": {"pattern": "pro-bend-4", "with": {"hand_radius": "15 centimetres"}},
    "of one hand": {"left": {"pattern": "pro-bend-4", "with": {"begin": "inn"}}},
}


@pytest.mark.parametrize("fault", VALUES)
def test_values_that_a_pattern_does_not_have_are_marked(fault, any_show, own):
    for schema in (any_show, own):
        last = f"timeline.{len(SHOW['timeline'])}"
        told = faults(
            edited(lambda show: show["timeline"].append({"beats": 4, **VALUES[fault]})), schema
        )
        assert told
        assert all(each.startswith(last) for each in told)


def test_a_pattern_of_ones_own_may_have_any_values(any_show):
    show = edited(lambda each: each.update(patterns={"slow cube": {"law": "orbit"}}))
    show["timeline"].append({"pattern": "slow cube", "beats": 4, "with": {"sides": 6}})
    assert faults(show, any_show) == []


def test_values_are_marked_where_the_reader_refuses_them(any_show):
    """The reader itself is the measure, of every value of every pattern: limits, what lies beyond, choices, units, fractions."""
    steps = any_show["$defs"]["PatternValues"]["allOf"]
    of = {
        name: rule["then"]["properties"]["with"]
        for rule in steps
        for name in rule["if"]["properties"]["pattern"]["enum"]
    }
    assert set(of) == set(patterns())
    tried = set()
    for name, pattern in patterns().items():
        assert of[name]["propertyNames"]["enum"] == [each.name for each in pattern.parameters]
        for one in pattern.parameters:
            said = [
                *one.choices,
                *map(str, one.choices),
                one.low,
                one.high,
                one.low - 1,
                one.high + 1,
                "1/2",
                "half",
                "0.3",
                "0.2 kg",
            ]
            if (key := replace(one, default=None)) in tried:
                continue
            tried.add(key)
            check = jsonschema.Draft202012Validator(of[name]["properties"][one.name])
            for value in said:
                try:
                    is_read = one.read(value) is not None
                except ValueError:
                    is_read = False
                # the limits of a text are the reader's; 1.0 is 1 to a schema
                assert check.is_valid(value) or not is_read, (name, one.name, value)
                if isinstance(value, str) == (one.kind == "choice") or value in ("half", "0.2 kg"):
                    assert check.is_valid(value) == is_read, (name, one.name, value)
    assert len(tried) > 30


@pytest.mark.parametrize(
    ("text", "is_good"),
    [
        ("17.1", True), ("1:02.5", True), ("verse 2", True), ("start of verse 2", True), ("end of break", True), ("twenty", False),
        ("verse", False), ("verse 3", False), ("end of twenty", False),
    ],
)  # fmt: skip
def test_a_moment_of_a_section_that_the_show_does_not_name_is_marked(text, is_good, any_show, own):
    show = edited(lambda each: each["timeline"][2].update({"from": text}))
    assert faults(show, any_show) == []  # which knows no sections
    assert (faults(show, own) == []) == is_good
    unnamed = {**SHOW, "track": {**SHOW["track"], "corrections": {}}}
    assert names_of(unnamed, patterns()).sections == ()


@pytest.mark.parametrize(
    "one",
    dict.fromkeys(
        replace(each, default=None)
        for pattern in patterns().values()
        for each in pattern.parameters
        if each.kind != "choice"
    ),
    ids=lambda one: f"{one.name} {one.range_words}",
)
def test_an_example_of_a_value_can_be_written_as_it_stands(one, any_show):
    """With its unit, and within the range."""
    forms = [
        rule["then"]["properties"]["with"]["properties"].get(one.name)
        for rule in any_show["$defs"]["PatternValues"]["allOf"]
    ]
    alike = [
        form
        for form in forms
        if form and (form.get("minimum"), form.get("maximum")) == (one.low, one.high)
    ]
    assert alike
    for form in alike:
        (example,) = form["examples"]
        assert one.low <= one.read(example) <= one.high
        assert example.endswith({"length": " cm", "angle": "°"}.get(one.kind, ""))
        assert faults(example, form) == []
