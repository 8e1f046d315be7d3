"""Every rule of every profile, broken once by a show: the finding names the rule and its profile.

The show below meets every rule in turn. A rule without an entry in BREAKS fails the test, so that no rule
is carried along that nothing looks at.
"""

from dataclasses import replace
from functools import cache

import pytest

from sequencer.checks import suite
from sequencer.facts.profiles import profile, profile_names
from sequencer.facts.rule_book import rule_book
from sequencer.safety.rules import house_rules as safety_rules
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: Two lanterns
date: 2026-11-25
night: 2026-12-05
track: {file: song.ogg}
venue:
  name: Yard
  setting: outdoors
  stage: {shape: rectangle, width: 14 m, depth: 10 m}
  audience: [{name: front, line: [[-12, AUDIENCE], [12, AUDIENCE]]}]
  scenery: [SCENERY]
  ceiling: open
  sprinklers: true
  exits: [{name: gate, at: [20, -12], width: 9 m}]
  audience_size: 100
  extinguishers:
    - {at: [-5, 4], rating: "3-A:10-B:C", kind: foam}
    - {at: [5, 4], rating: "3-A:10-B:C", kind: foam}
    - {at: [-5, 5], rating: "2-A", kind: water}
    - {at: [5, 5], rating: "2-A", kind: water}
    - {at: [11, 12.5], rating: "3-A:10-B:C", kind: foam}
  fuel_station: [11, 13]
  spin_off: [[10, 14], [12.5, 14], [12.5, 16], [10, 16]]
  wind: 2 m/s
  wind_from: stage left
cast:
  - {name: Wren, stature: 1.7 m, prop: {tether: 55 cm, wick: 4 cm, fuel_mass: 8 g}, birth_year: 1990}
  - {name: Moss, stature: 1.7 m, prop: {tether: 55 cm, wick: 4 cm, fuel_mass: 8 g}, birth_year: 1990}
formations:
  pair: {spots: {Wren: {at: [-2, 4]}, Moss: {at: [2, 4]}}}
staging: [{formation: pair, from: 1.1}]
fire:
  fuel: lamp oil
  flame: 0.3 m
  burn: {time: 4 min, measured: true}
  fuel_on_site: 1 L
  handling: {light: 1 s, put_out: 1 s, cool: 1 s}
  lit:
    - {who: all, from: 1.1, until: 81.1}
crew:
  - {name: Flint, post: [-2, 8], duty: spotter, equipment: [2 damp towels, fire blanket, bucket of water]}
  - {name: Brook, post: [2, 8], duty: spotter, equipment: [damp towel, fire blanket, bucket of water]}
  - {name: Hazel, post: [0, -4], duty: perimeter}
  - {name: Tarn, post: [12, 12], duty: fuel keeper}
rules:
  permit: {number: P-2026-7, issued_by: fire office, from: 2026-12-01, until: 2026-12-31, place: Yard}
"""
INDOORS = [("setting: outdoors", "setting: indoors"), ("ceiling: open", "ceiling: 9 m")]
UNPERMITTED = [("number: P-2026-7, ", "")]
FAR = [(f"at: [{x}, {y}]", f"at: [{x * 40}, {y}]") for x, y in ((-5, 4), (5, 4), (-5, 5), (5, 5))]
WET = [
    ("2 damp towels, fire blanket, bucket of water", "radio"),
    ("damp towel, fire blanket, bucket of water", "radio"),
]


def until(seconds):
    """The bar at 120 beats a minute."""
    return f"{int(seconds // 2) + 1}.{int(seconds % 2 // 0.5) + 1}"


def audience(gap):
    return [("AUDIENCE", f"{4 - gap:.4f}")]


def thing(gap):
    return [
        (
            "SCENERY",
            f"{{name: hay, height: 9 m, outline: [[-2, {4 + gap:.4f}], [2, {4 + gap:.4f}], [0, 30]]}}",
        )
    ]


# what is edited to break a rule; `reach` is that of arm, prop and flame from the body's axis [m]
BREAKS = {
    "audience-distance": lambda rule, reach: audience(reach + rule.number - 0.05),
    "several-performers-extra": lambda rule, reach: audience(reach + base_of(rule) + rule.number - 0.05),
    "combustible-distance": lambda rule, _reach: thing(rule.number),
    "ceiling-height": lambda rule, _reach: [INDOORS[0], ("ceiling: open", f"ceiling: {rule.number - 0.01} m")],
    "ceiling-margin": lambda rule, reach: [INDOORS[0], ("ceiling: open", f"ceiling: {1.2 + reach + rule.number - 0.05} m")],
    "indoor-forbidden": lambda _rule, _reach: INDOORS,
    "indoor-agreed": lambda _rule, _reach: INDOORS + UNPERMITTED,
    "sprinklers": lambda _rule, _reach: [*INDOORS, ("sprinklers: true", "sprinklers: false")],
    "spotters": lambda _rule, _reach: [("duty: spotter", "duty: lead")],
    "perimeter-guards": lambda _rule, _reach: [("duty: perimeter", "duty: lead")],
    "fuel-keepers": lambda _rule, _reach: [("duty: fuel keeper", "duty: lead")],
    "stewards": lambda rule, _reach: [("audience_size: 100", "audience_size: 2001")]
    if rule.count.of
    else [("  - {name: Hazel, post: [0, -4], duty: perimeter}\n", "")],
    "roles-apart": lambda _rule, _reach: [("name: Brook", "name: Moss")],
    "response-distance": lambda _rule, _reach: [("post: [-2, 8]", "post: [-2, 28]"), ("post: [2, 8]", "post: [2, 28]")],
    "extinguishers": lambda _rule, _reach: [('rating: "3-A:10-B:C"', 'rating: "1-A"'), ('rating: "2-A"', 'rating: "1-A"')],
    "opposing-sides": lambda _rule, _reach: [("at: [-5,", "at: [5,")],
    "extinguisher-travel": lambda _rule, _reach: FAR,
    "extinguisher-near": lambda _rule, _reach: FAR,
    "towels": lambda _rule, _reach: WET,
    "blankets": lambda _rule, _reach: WET,
    "blanket-or-towels": lambda _rule, _reach: WET,
    "buckets": lambda _rule, _reach: WET,
    "fuel-point-distance": lambda rule, reach: [("fuel_station: [11, 13]", f"fuel_station: [2, {4 + reach + rule.number - 0.05}]")],
    "fuel-point-audience": lambda rule, _reach: [("fuel_station: [11, 13]", f"fuel_station: [11, {-14 + rule.number - 0.05}]")],
    "fuel-upwind": lambda _rule, _reach: [("wind_from: stage left", "wind_from: stage right")],
    "fuel-per-performer": lambda _rule, _reach: [("fuel_mass: 8 g", "fuel_mass: 1.5 kg")],
    "fuel-on-site": lambda rule, _reach: [("fuel_on_site: 1 L", f"fuel_on_site: {1000 * rule.number + 0.001} L")],
    "fuel-permit-volume": lambda rule, _reach: [("fuel_on_site: 1 L", f"fuel_on_site: {1000 * rule.value['combustible'] + 0.001} L")],
    "fuel-refused": lambda rule, _reach: [("fuel: lamp oil", "fuel: petrol" if "gasoline" in rule.value else "fuel: white gas")],
    "fuel-warned": lambda _rule, _reach: [("fuel: lamp oil", "fuel: white gas")],
    "flame-height": lambda rule, _reach: [("flame: 0.3 m", f"flame: {rule.number + 0.001} m")],
    "wind-warn": lambda rule, _reach: [("wind: 2 m/s", f"wind: {rule.number} m/s")],
    "wind-stop": lambda rule, _reach: [("wind: 2 m/s", f"wind: {rule.number} m/s")],
    "performer-age": lambda rule, _reach: [("birth_year: 1990", f"birth_year: {2026 - int(rule.number)}")],
    "burn-share": lambda rule, _reach: [("until: 81.1", f"until: {until(240 * rule.number + 2)}")],
    "audience-flux": lambda _rule, _reach: [*audience(0.3), ("fuel_mass: 8 g", "fuel_mass: 300 g")],
    "permit": lambda _rule, _reach: UNPERMITTED,
    "spin-off-zone": lambda _rule, _reach: [("  spin_off: [[10, 14], [12.5, 14], [12.5, 16], [10, 16]]\n", "")],
    "soak-seconds": lambda rule, _reach: relit(rule.number + 14),
    "spin-off-seconds": lambda rule, _reach: relit(rule.number + 9),
}  # fmt: skip
ALWAYS = {  # nothing in a show can meet these: a note asks a person, or the rule ends the night
    "ask", "fire-ban", "fire-breathing-forbidden", "fire-watch", "no-smoking", "official-watch", "operator-age",
    "overhang-distance", "stop-word",
}  # fmt: skip
RULES = [
    (name, index, rule.kind.name)
    for name in profile_names()
    for index, rule in enumerate(profile(name).rules)
]


def relit(gap):
    """Two burns of 100 s with a gap too short to soak and spin off: together longer than one wick holds."""
    return [("from: 1.1, until: 81.1}", f"from: 1.1, until: 51.1}}\n    - {{who: all, from: {until(100 + gap - 0.5)}, until: {until(200 + gap)}}}")]  # fmt: skip


def base_of(rule):
    """The distance that an extra is added to: that of its own profile."""
    return next(
        own.number
        for name in profile_names()
        for own in profile(name).rules
        if own.kind.name == "audience-distance" and own.profile == rule.profile
    )


def show(edits=()):
    """A copy, so that nothing is kept of what another rule book found."""
    return replace(_staged(edits))


@cache
def _staged(edits):
    text = SHOW
    for old, new in edits:
        assert old in text, old
        text = text.replace(old, new)
    text = text.replace("AUDIENCE", "-14").replace("SCENERY", "")
    return staged(show_from_document(parse_document(text, "s.yaml")), even_song(800))


def book_of(own, rule):
    """The default with one rule in the place of its own on that subject, so that nothing is stricter."""
    base = rule_book()
    kinds = {rule.kind.name}
    rules = [rule]
    if rule.kind.name in {"audience-distance", "several-performers-extra"}:
        kinds = {"audience-distance", "several-performers-extra"}
        rules = [other for other in own.rules if other.kind.name in kinds]
    kept = tuple(other for other in base.rules if other.kind.name not in kinds)
    return replace(base, profiles=(replace(own, rules=(rule,)),), rules=(*kept, *rules))


def naming(rule, findings):
    return [
        found
        for found in findings
        if rule.citation in found.source
        or (
            found.code == "to-confirm"
            and rule.printed in found.message
            and rule.profile in found.message
        )
    ]


@pytest.mark.parametrize(
    ("name", "index", "kind"), RULES, ids=[f"{n}-{k}-{i}" for n, i, k in RULES]
)
def test_a_rule_that_is_broken_is_named(name, index, kind, monkeypatch):
    own = profile(name)
    rule = own.rules[index]
    book = book_of(own, rule)
    monkeypatch.setattr(safety_rules, "rule_book", lambda *_own, **_known: book)
    if kind in ALWAYS:
        assert naming(rule, suite.checked(show()).findings)
        return
    sound = show()
    reach = sound.dancers[0].reach
    grave = [
        each for each in naming(rule, suite.checked(sound).findings) if each.severity != "note"
    ]
    found = naming(rule, suite.checked(show(tuple(BREAKS[kind](rule, reach)))).findings)

    assert [each.message for each in grave] == []
    assert found


def test_every_subject_that_a_profile_names_is_broken_here():
    named = {kind for _, _, kind in RULES}

    assert named <= set(BREAKS) | ALWAYS
    assert not set(BREAKS) & ALWAYS
