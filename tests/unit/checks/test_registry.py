"""The registry: built-in checks, those of other packages, and what each may say."""

import copy
from dataclasses import replace
from types import SimpleNamespace

import pytest

from sequencer import plugins
from sequencer.checks import registry
from sequencer.checks.check import Check
from sequencer.checks.outcome import Outcome
from sequencer.errors import InputError
from sequencer.findings import Finding
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

SHOW = """\
title: Alone
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 10 m, depth: 8 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
cast:
  - {name: Wren, stature: 1.7 m, prop: {tether: 55 cm}}
"""


@pytest.fixture
def show():
    return staged(show_from_document(parse_document(SHOW, "s.yaml")), even_song(40))


def said(code="lamp-oil-cold", severity="note"):
    return Finding(
        code=code, severity=severity, who=(), start=None, end=None, position=None, message="cold"
    )


def check(name="lamp-oil", *, codes=None, found=(), **known):
    return Check(
        name=name,
        run=lambda _show: Outcome(findings=tuple(found)),
        codes=codes or {f"{name}-cold": ("note",)},
        **known,
    )


def entry(load, *, name="own", package="emberworks"):
    dist = SimpleNamespace(name=package, version="1.2")
    return SimpleNamespace(name=name, value=f"{package}:CHECK", dist=dist, load=load)


@pytest.fixture
def installed(monkeypatch):
    """Puts checks of other packages where the registry looks for them."""

    def put(*entries):
        registry.checks.cache_clear()
        monkeypatch.setattr(
            plugins, "entries", lambda group: entries if group == "sequencer.checks" else ()
        )

    yield put
    registry.checks.cache_clear()


def test_names_differ_and_a_code_means_the_same_in_every_check():
    names = [each.name for each in registry.BUILT_IN]
    assert len(set(names)) == len(names)
    severities, conditions = {}, {}
    for each in registry.BUILT_IN:
        assert all(other in names[: names.index(each.name)] for other in each.after)
        for code, own in each.codes.items():
            assert severities.setdefault(code, own) == own
            when = each.cautions.get(code)
            assert conditions.setdefault(code, when) == when


def test_shares_of_the_progress_leave_room_for_the_last_check():
    assert 0 < sum(each.share for each in registry.BUILT_IN) < 1


def test_checks_of_packages_follow_the_built_in_ones_by_entry_point(installed):
    late, early = check("wax"), check("ash")
    installed(entry(lambda: late, name="a"), entry(lambda: early, name="b"))

    assert registry.checks()[:-2] == registry.BUILT_IN
    assert [each.name for each in registry.checks()[-2:]] == ["wax", "ash"]
    assert registry.check_named("ash").codes == early.codes
    with pytest.raises(
        ValueError, match="no check 'soot'; there are who-is-there, in-the-wings, joins, "
    ):
        registry.check_named("soot")


def missing():
    raise ModuleNotFoundError("No module named 'embers'")


@pytest.mark.parametrize(
    ("load", "what"),
    [
        (missing, "ModuleNotFoundError: No module named 'embers'"),
        (lambda: 3, "expected a Check, got int"),
        (lambda: check("joins"), "its name 'joins' is already in use"),
        (
            lambda: check(codes={"too-close": ("stop",)}),
            "its code 'too-close' already belongs to the check 'distances'",
        ),
        (lambda: check(after=("soot",)), "uses 'soot', but no such check runs before it"),
        (lambda: check(codes={"Cold": ("note",)}), "'Cold' is not in kebab case"),
    ],
)
def test_a_broken_check_is_told_in_one_line_that_names_its_package(installed, load, what):
    installed(entry(load))

    with pytest.raises(InputError) as caught:
        registry.checks()
    text = str(caught.value)
    assert text.startswith(
        "emberworks 1.2: this package's entry point 'own' of sequencer.checks fails ("
    )
    assert what in text
    assert text.endswith("[broken-plugin]")
    assert "\n" not in text


def test_two_packages_with_one_code_are_told_apart(installed):
    one, other = check("ash"), check("wax", codes={"ash-cold": ("note",)})
    installed(entry(lambda: one), entry(lambda: other, package="waxworks"))

    with pytest.raises(InputError, match=r"^waxworks 1\.2: .* the check 'ash'"):
        registry.checks()


@pytest.mark.parametrize("found", [[said("something-else")], [3], None])
def test_a_package_s_check_that_fails_while_it_runs_is_named(installed, show, found):
    broken = replace(check(), run=lambda _show: Outcome(findings=tuple(found)))
    installed(entry(lambda: broken))

    with pytest.raises(InputError, match=r"^emberworks 1\.2: .*\[broken-plugin\]$"):
        registry.check_named("lamp-oil").outcome(show)


@pytest.mark.parametrize("given", [{"code": "something-else"}, {"severity": "stop"}])
def test_a_finding_that_is_not_declared_is_a_fault_of_its_check(show, given):
    broken = check(found=[said(**given)])

    with pytest.raises(ValueError, match=r"check 'lamp-oil' gives .*, which it does not declare"):
        broken.outcome(show)
    assert check(found=[said()]).outcome(show).findings == (said(),)


@pytest.mark.parametrize(
    ("given", "what"),
    [
        ({"name": "Lamp oil"}, "'Lamp oil' is not in kebab case"),
        ({"codes": {}}, "declares no finding code"),
        ({"codes": {"cold": ()}}, "severities of 'cold' are some of"),
        ({"codes": {"cold": ("grave",)}}, "severities of 'cold' are some of"),
        ({"cautions": {"warm": "wind"}}, "cautions and of_fuel are about codes"),
        ({"of_fuel": ("warm",)}, "cautions and of_fuel are about codes"),
        ({"cautions": {"lamp-oil-cold": "snow"}}, "conditions are some of"),
        ({"depends_on": ("song",)}, "depends on some of"),
    ],
)
def test_what_a_check_declares_is_held_to_what_there_is(given, what):
    with pytest.raises(ValueError, match=what):
        replace(check(), **given)


def test_a_check_may_read_what_an_earlier_one_found(installed, show):
    """The earlier one runs once, whoever asks for it first."""
    runs = []

    def first(_show):
        runs.append("ash")
        return Outcome(findings=(said("ash-cold"),))

    def second(show):
        many = len(registry.found_by("ash", show).findings)
        return Outcome(findings=(said("wax-cold"),) * many)

    ash = replace(check("ash"), run=first)
    wax = replace(check("wax"), run=second, after=("ash",))
    installed(entry(lambda: wax), entry(lambda: ash))

    from sequencer.checks.suite import checked

    codes = [each.code for each in checked(show).findings]
    assert codes == ["ash-cold", "wax-cold"]
    assert runs == ["ash"]


def test_the_suite_says_what_it_does_and_how_far_it_is(installed, show):
    from sequencer.checks.suite import checked

    installed(entry(lambda: check("wax")))
    heard = []
    checked(show, progress=lambda what, share: heard.append((what, share)))

    assert heard == [
        ("checking joins", 0.2),
        ("checking tethers and reach", 0.3),
        ("checking distances", 0.4),
        ("checking fire and crew", 0.8),
        ("checking wax", 0.8),
    ]


def test_the_check_that_dances_the_show_runs_only_where_it_is_asked_for(show):
    from sequencer.checks.distances.drift_runs import Trials
    from sequencer.checks.suite import examined

    assert [each.name for each in registry.checks() if each.on_request] == ["as-flown", "as-danced"]
    assert examined(show)[1] is None
    heard = []
    trials = Trials(runs=3)
    outcome, danced = examined(show, trials=trials, progress=lambda *told: heard.append(told))
    assert danced is outcome.danced
    assert danced.runs == 3
    assert outcome.not_checked[-1].startswith("As danced, only performers")


def test_the_check_that_flies_the_show_takes_the_place_of_what_it_says_better(monkeypatch, show):
    """Whoever asks what can be flown reads nothing about hand work besides."""
    from sequencer.checks import suite
    from sequencer.checks.dance import feasible

    def flown(_show, *, progress):
        progress("flying the patterns", 0.5)
        return Outcome(findings=(said("reads-soft"),))

    drawn = replace(feasible.CHECK, run=lambda _show: Outcome(findings=(said("flown-not-drawn"),)))
    heard = []
    monkeypatch.setattr(suite, "checks", lambda: (drawn,))
    monkeypatch.setattr(suite.as_flown, "as_flown", flown)

    assert [each.code for each in suite.examined(show)[0].findings] == ["flown-not-drawn"]
    outcome, _ = suite.examined(show, flown=True, progress=lambda *told: heard.append(told))
    assert [each.code for each in outcome.findings] == ["reads-soft"]
    assert heard[-1] == ("flying the patterns", pytest.approx(0.85))


def test_a_copy_of_a_checked_show_starts_without_its_results(show):
    """A changed show is checked anew."""
    from sequencer.checks.suite import checked

    before = checked(show)
    assert show.results
    copied = copy.deepcopy(show)
    changed = replace(show, file="other.yaml")

    assert copied.results == {}
    assert changed.results == {}
    assert checked(copied) == before
    assert checked(changed).show == "other.yaml"
