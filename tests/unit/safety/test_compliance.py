"""The compliance table against the checks: what they stop for is never met, and every number is rounded to the safe side."""

import json
from dataclasses import asdict, replace
from functools import cache
from pathlib import Path

import pytest

from sequencer.checks import suite
from sequencer.facts.profiles import Rule, kind_of, profile, profile_names
from sequencer.facts.rule_book import RuleBook, rule_book
from sequencer.facts.rule_kinds import RULE_KINDS
from sequencer.facts.sources import Source
from sequencer.findings import Finding, Report
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.safety import compliance as table
from sequencer.safety.compliance import CONFIRM_WARNED, compliance, tally
from sequencer.safety.measures import Measured
from sequencer.safety.rules import house_rules
from sequencer.safety.safety_plan import safety_plan
from sequencer.safety.site_ground.landings import landing_plan
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.in_flight.flown_show import flown_show
from sequencer.staging.moves_danced import move_words
from sequencer.staging.timeline import staged
from sequencer.units import rounded_up
from tests.songs import even_song
from tests.unit.checks.fire.test_rules_kept import ALWAYS, BREAKS, book_of, naming, show

SHOWS = Path(__file__).resolve().parents[3] / "shows"
ONE_EACH = {  # a rule on every subject: the default's where it has one
    rule.kind.name: (name, index)
    for name in reversed(profile_names())
    for index, rule in enumerate(profile(name).rules)
}
# What the plan's own number tells, whatever the checks say.
BY_NUMBER = {name for name, kind in RULE_KINDS.items() if kind.sort in {"least", "most", "count"}} - {
    "soak-seconds", "spin-off-seconds", "ceiling-height", "response-time",
}  # fmt: skip


def row_of(rule, book, rows):
    return rows[book.rules.index(rule)]


def ruled_by(kind, monkeypatch):
    """One rule on a subject, and a book that has it."""
    name, index = ONE_EACH[kind]
    own = profile(name)
    rule = own.rules[index]
    book = rule_book() if name == "default" else book_of(own, rule)
    monkeypatch.setattr(house_rules, "rule_book", lambda *_own, **_known: book)
    return rule, book


@cache
def sound_rows(_of):
    """Of the sound show; once for all rules of the default."""
    sound = show()
    return compliance(sound, suite.checked(sound), sound)


@pytest.mark.parametrize("kind", sorted(set(BREAKS) & set(ONE_EACH)))
def test_a_rule_that_is_broken_is_not_met_and_one_that_is_kept_is(kind, monkeypatch):
    """The shows of `test_rules_kept`, in which each rule is broken once and its check speaks up."""
    rule, book = ruled_by(kind, monkeypatch)
    name, _ = ONE_EACH[kind]
    kept = row_of(rule, book, sound_rows(kind if name != "default" else ""))
    broken = show(tuple(BREAKS[kind](rule, show().dancers[0].reach)))
    report = suite.checked(broken)
    row = row_of(rule, book, compliance(broken, report, broken))

    assert naming(rule, report.findings)
    assert kept.verdict in {"met", "confirm"}, kept
    assert kept.why == ""
    wrong = {"not met", "not stated"} | ({"confirm"} if kind in CONFIRM_WARNED else set())
    assert row.verdict in wrong, row
    if kind in BY_NUMBER:
        alone = row_of(rule, book, compliance(broken, replace(report, findings=()), broken))
        assert alone.verdict == "not met", alone
        assert alone.margin.startswith(("−", "+0")) or not alone.margin
        assert kept.margin.startswith("+") or not kept.margin


@pytest.mark.parametrize("kind", sorted(set(ALWAYS) & set(ONE_EACH)))
def test_what_only_a_person_can_tell_is_to_be_confirmed(kind, monkeypatch):
    rule, book = ruled_by(kind, monkeypatch)
    row = row_of(rule, book, sound_rows(kind if ONE_EACH[kind][0] != "default" else ""))

    assert row.verdict == ("not met" if kind == "fire-ban" else "confirm")


FAULTS = (  # each in the demo, all at once: nothing of the dance is touched
    ('rating: "2-A:10-B:C"', 'rating: "1-A"'),
    ("wind: 2 m/s", "wind: 9 m/s"),
    ("wind_from: stage left", "wind_from: stage right"),
    ("duty: perimeter", "duty: lead"),
    ("post: [0, -0.5]", "post: [0, -6.5]"),
    ("line: [[-14, -8], [14, -8]]", "line: [[-14, -5], [14, -5]]"),
    ("fuel_station: [11.5, 13]", "fuel_station: [6, 12]"),
    ("fuel_on_site: 3 L", "fuel_on_site: 9 L"),
    ("birth_year: 1997", "birth_year: 2012"),
    ("measured: true}", "measured: false}"),
)  # fmt: skip


def test_on_the_demo_with_faults_planted_no_rule_that_a_stop_cites_is_met():
    text = (SHOWS / "lantern_round.yaml").read_text(encoding="utf-8")
    for old, new in FAULTS:
        assert old in text
        text = text.replace(old, new)
    dance = slice(text.index("\nphrases:"), text.index("\nfire:"))
    text = text.replace(text[dance], "")  # what is danced costs time and is not asked about here
    song = even_song(320, tempo=100.0, sha256=text.partition("sha256: ")[2][:64])
    demo = staged(show_from_document(parse_document(text, "s.yaml")), song)
    report = suite.checked(demo)
    rows = compliance(demo, report, demo)
    cited = {
        rule.kind.name: row
        for rule, row in zip(safety_plan(demo).book.rules, rows, strict=False)
        for finding in report.findings
        if finding.severity == "stop" and rule.citation in finding.source
    }

    assert {
        "audience-distance", "extinguishers", "fuel-on-site", "fuel-point-distance", "fuel-upwind",
        "perimeter-guards", "performer-age",
    } <= set(cited)  # fmt: skip
    assert (
        next(row for row in rows if row.subject == "wind-stop").verdict == "not met"
    )  # the show's own limit
    assert {row.verdict for row in cited.values()} <= {"not met", "not stated"}
    assert all(row.why for row in cited.values())
    assert sum(tally(rows).values()) == len(safety_plan(demo).book.rules)
    json.dumps([asdict(row) for row in rows])  # plain values


# --- rounding: which side of each number is safe ---


SAFE_SIDES = [  # subject, what the plan has, the limit; printed: has, asked, margin
    ("audience-distance", 7.6219, 7.62, "7.62 m", "at least 7.62 m", "+0.00 m"),  # kept clear: down
    ("audience-distance", 7.619, 7.62, "7.61 m", "at least 7.62 m", "−0.01 m"),
    ("combustible-distance", 6.096, 6.096, "6.09 m", "at least 6.10 m", "+0.00 m"),  # 20 ft is asked as 6.10
    ("response-distance", 7.431, 7.5, "7.44 m", "at most 7.50 m", "+0.06 m"),  # a walk: up
    ("response-time", 7.01, 8.0, "8 s", "at most 8 s", "+0 s"),
    ("extinguisher-travel", 9.1401, 9.144, "9.15 m", "at most 9.14 m", "+0.00 m"),
    ("fuel-on-site", 0.0030001, 0.003785, "3.01 L", "at most 3.78 L", "+0.78 L"),
    ("flame-height", 0.3001, 0.3048, "0.31 m", "at most 0.30 m", "+0.00 m"),
    ("wind-stop", 5.91, 6.7056, "6.0 m/s", "under 6.7 m/s", "+0.7 m/s"),
    ("burn-share", 0.785, 0.8, "79 %", "at most 80 %", "+1 %"),
    ("audience-flux", 21.0, 1420.0, "0.03 kW/m²", "at most 1.42 kW/m²", "+1.39 kW/m²"),
    ("performer-age", 17.0, 18.0, "17 years", "at least 18 years", "−1 years"),
    ("fire-watch", 1800.0, 1800.0, "30 min", "at least 30 min", "+0 s"),
]  # fmt: skip


@pytest.mark.parametrize(("kind", "value", "limit", "has", "asked", "margin"), SAFE_SIDES)
def test_each_number_is_rounded_to_its_safe_side(kind, value, limit, has, asked, margin):
    rule = own_rule(kind, limit)

    assert table._has(rule.kind, Measured(value=value)) == has
    assert table._asked(rule, limit) == asked
    assert table._margin(rule.kind, value, limit) == margin


def test_every_subject_with_a_number_has_its_safe_side_stated():
    """A larger value of a "least" and a smaller value of a "most" is safer: for each the table above has a case."""
    sides = {(kind_of(case[0]).sort, kind_of(case[0]).default_unit) for case in SAFE_SIDES}
    numeric = {
        (kind.sort, kind.default_unit)
        for kind in RULE_KINDS.values()
        if kind.sort in {"least", "most"}
    }

    assert numeric <= sides


def own_rule(kind, value):
    origin = Source(key="own", title="house", date="", where="here", mark="as entered")
    return Rule(
        kind=kind_of(kind), value=value, printed=str(value), profile="house", source=origin, mark="as entered"
    )  # fmt: skip


# --- verdicts ---


def found(code, severity, source):
    return Finding(
        code=code, severity=severity, who=(), start=None, end=None, position=None, message="it is so", source=source
    )  # fmt: skip


@pytest.mark.parametrize(
    ("kind", "own", "code", "severity", "verdict"),
    [
        (
            "fuel-keepers",
            "met",
            "keeper-away",
            "stop",
            "not met",
        ),  # the head-count passes, the place does not
        ("wind-stop", "met", "not-recorded", "stop", "not stated"),
        (
            "audience-distance",
            "met",
            "audience-downwind",
            "warn",
            "met",
        ),  # cites the distance, is not about it
        ("opposing-sides", "met", "extinguishers-one-side", "warn", "not met"),
        ("fuel-warned", "met", "fuel-class", "warn", "confirm"),
        ("permit", "not stated", "no-permit", "warn", "not stated"),
        ("wind-stop", "not met", "wind-near", "note", "not met"),
    ],
)
def test_a_verdict_is_no_better_than_what_the_checks_found(kind, own, code, severity, verdict):
    rule = own_rule(kind, 1.0)
    against = [found(code, severity, f"see {rule.citation} and more")]

    counted = rule.kind.sort in {"least", "most", "count"}
    given = {"blanks": {"not-recorded"}, "counted": counted}
    told, why = table._by_checks(rule.kind, own, against, **given)
    assert told == verdict
    assert why == ("it is so" if severity != "note" and verdict != "met" else "")
    assert table._by_checks(rule.kind, own, [], **given) == (own, "")


def test_of_two_rules_on_one_subject_the_stricter_decides(monkeypatch):
    rules = tuple(
        own_rule(kind, value)
        for kind, value in (
            ("fuel-on-site", 0.002), ("fuel-on-site", 0.001), ("fuel-on-site", 0.003),
            ("combustible-distance", 3.0), ("combustible-distance", 5.0), ("combustible-distance", 5.0),
        )
    )  # fmt: skip
    book = RuleBook(profiles=(profile("default"),), rules=(*profile("default").rules, *rules))
    monkeypatch.setattr(house_rules, "rule_book", lambda *_own, **_known: book)
    rows = compliance(show(), Report(show="s"), show())[-len(rules) - 5 : -5]

    assert [row.decides for row in rows] == [False, True, False, False, False, False]


def test_a_limit_of_the_show_counts_where_it_is_stricter(monkeypatch):
    edits = (
        ("rules:\n", "weather: {gusts: 3 m/s}\nrules:\n  audience: 11 m\n"),
        ("flame: 0.3 m", "flame: 0.3 m\n  reserve: 0.7"),
    )
    own = show(edits)
    rows = {row.subject: row for row in compliance(own, suite.checked(own), own) if row.decides}

    assert rows["wind-stop"].asked == "under 3.0 m/s, the show’s own"
    assert rows["burn-share"].asked == "at most 70 %, the show’s own"
    assert rows["audience-distance"].asked == "at least 11.00 m, the show’s own"


def test_what_no_rule_asks_for_is_told():
    sound = show()
    rows = {
        row.subject: row
        for row in compliance(sound, suite.checked(sound), sound)
        if row.verdict == "told"
    }

    assert set(rows) == {"flame", "reach", "post-flux", "let-go", "landing-audience"}
    assert all(row.asked == "" and row.source for row in rows.values())
    assert "mean" in rows["flame"].has
    assert "peak" in rows["flame"].has
    assert "kW/m²" in rows["post-flux"].has


def test_a_soak_that_nobody_weighed_leaves_flame_and_heat_not_stated():
    unweighed = show((("fuel_mass: 8 g", "head_mass: 150 g"),))
    rows = {row.subject: row for row in compliance(unweighed, suite.checked(unweighed), unweighed)}

    for subject in ("flame", "post-flux", "audience-flux", "fuel-per-performer"):
        assert rows[subject].verdict == "not stated", rows[subject]
        assert rows[subject].has.startswith("not stated")
        assert rows[subject].margin == ""


def test_a_show_in_which_nothing_is_lit_has_no_table():
    dark = show((("    - {who: all, from: 1.1, until: 81.1}\n", ""), ("  lit:\n", "")))

    assert compliance(dark, Report(show="dark"), dark) == ()


def test_flights_let_go_are_those_of_the_motion_that_the_sheets_show():
    """As flown a link whips its head: the table, the finding and the sheet say the same figure, and name the move."""
    sound = show()
    flown = flown_show(sound).staged
    rows = {row.subject: row for row in compliance(sound, Report(show="s"), flown)}
    who, best = landing_plan(flown).farthest
    assert rows["let-go"].has.startswith(f"{rounded_up(best.flight, 1):.1f} m ({who}, ")
    assert move_words(flown, who, best.beat) in rows["let-go"].has
    drawn = {row.subject: row for row in compliance(sound, Report(show="s"), sound)}
    assert drawn["let-go"].has != rows["let-go"].has
    edition = Edition(staged=sound, report=Report(show="s"), flown=True)
    assert {row.subject: row for row in edition.compliance}["let-go"] == rows["let-go"]
