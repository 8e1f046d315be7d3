"""What other packages add, and what is said where one of them is broken.

Source of the layout of an installed package: PyPA specifications "Recording installed projects" and "Entry
points".
"""

import sys
from types import SimpleNamespace

import pytest

from sequencer import plugins as _plugins
from sequencer.errors import InputError
from sequencer.facts import profiles
from sequencer.motion.fitting import kept_fits
from sequencer.motion.patterns import law_kinds, library
from sequencer.outputs.sheets.added_sheets import added_sheets
from sequencer.plugins import plugins

CACHES = (
    law_kinds.law_kinds, library.patterns, profiles.profile, profiles.profile_names,
    profiles._entries, kept_fits.formulas, _plugins._found_on,
)  # fmt: skip
LAW = """\
from sequencer.motion.patterns.law_kinds import LawKind, one_turn, law_kinds
from sequencer.motion.patterns.planar import orbit
KIND = LawKind(
    name="{name}", family="other", parameters=(), build=lambda _values, _wanted: None,
    cycle=lambda _values: 3.0, turns=one_turn, opposite="mirror",
)
"""
PROFILE = """\
{'harbour': dict(title='Harbour', place='nowhere', edition='1', rules=[%s],
                 sources=[dict(key='HB-1', title='Harbour rules', date='', where='', mark='read')])}"""
RULE = "dict(kind='audience-distance', value=7.0, printed='7 m', source='HB-1')"


@pytest.fixture
def install(tmp_path, monkeypatch):
    """Put a package with one module and its entry points on the path, as an installer does."""

    def forget():
        for cached in CACHES:
            cached.cache_clear()

    def install(group, code, *, value="KIND", package="starfish-fire", name="own"):
        module = package.replace("-", "_")
        (tmp_path / f"{module}.py").write_text(code, encoding="utf-8")
        info = tmp_path / f"{module}-0.2.dist-info"
        info.mkdir()
        (info / "METADATA").write_text(
            f"Metadata-Version: 2.1\nName: {package}\nVersion: 0.2\n", encoding="utf-8"
        )
        (info / "entry_points.txt").write_text(
            f"[{group}]\n{name} = {module}:{value}\n", encoding="utf-8"
        )
        monkeypatch.delitem(sys.modules, module, raising=False)
        forget()

    monkeypatch.syspath_prepend(tmp_path)
    yield install
    monkeypatch.undo()
    forget()


def refused(call):
    with pytest.raises(InputError) as caught:
        call()
    line = str(caught.value)
    assert "\n" not in line
    assert line.startswith("starfish-fire 0.2: this package's entry point 'own' of sequencer.")
    assert line.endswith("or uninstall the package [broken-plugin]")
    return line


def test_a_law_is_added_and_counts_among_the_formulas(install, tmp_path):
    before = kept_fits.formulas()
    install("sequencer.laws", LAW.format(name="starfish"))

    kinds = law_kinds.law_kinds()
    assert list(kinds)[-1] == "starfish"
    assert kinds["starfish"].cycle({}) == 3.0
    one = kept_fits.formulas()
    assert one != before
    kept_fits.formulas.cache_clear()
    (tmp_path / "starfish_fire.py").write_text("KIND = 3\n", encoding="utf-8")
    assert kept_fits.formulas() not in {one, before}


def test_plugins_come_by_name_then_by_package(install):
    for package, name in (("zeta", "b"), ("gamma", "b"), ("beta", "c"), ("alpha", "d")):
        install("sequencer.laws", "", package=package, name=name)

    assert [(p.name, p.package) for p in plugins("sequencer.laws")] == [
        ("b", "gamma 0.2"), ("b", "zeta 0.2"), ("c", "beta 0.2"), ("d", "alpha 0.2"),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("code", "says"),
    [
        ("KIND = 3\n", "expected a LawKind, got int"),
        (LAW.format(name="orbit"), "'orbit' already exists; choose another name"),
        ("import no_such_module\n", "ModuleNotFoundError: No module named 'no_such_module'"),
        ("KIND = 1 / 0\n", "ZeroDivisionError"),
        ("KIND = (\n", "SyntaxError"),
        ("OTHER = 3\n", "AttributeError"),
    ],
)
def test_a_broken_law_is_refused_by_the_name_of_its_package(install, code, says):
    install("sequencer.laws", code)

    assert says in refused(law_kinds.law_kinds)


@pytest.mark.parametrize("form", ["RECORDS = {}", "def RECORDS():\n    return {}"])
def test_patterns_are_added_as_data_or_by_a_function(install, form):
    record = (
        "{'harbour wheel': {'law': 'orbit', 'set': {'hand_radius': '20 cm'}, 'needs': ['orbit']}}"
    )
    install("sequencer.patterns", form.replace("{}", record) + "\n", value="RECORDS")

    book = library.patterns()
    assert list(book)[-1] == "harbour wheel"
    assert book["harbour wheel"].values({})["hand_radius"] == 0.2


@pytest.mark.parametrize(
    ("records", "says"),
    [
        ("{'orbit': {'law': 'orbit'}}", "pattern 'orbit' already exists"),
        ("{'own': {'law': 'orbitt'}}", "law 'orbitt' is not known; did you mean orbit"),
        ("{'own': {'law': 'orbit', 'set': 3}}", "set must be a record"),
        ("['own']", "expected a mapping of names to records, got list"),
        ("{3: {}}", "a name must be text, got 3"),
        ("lambda: 1 / 0", "ZeroDivisionError"),
    ],
)
def test_broken_patterns_are_refused_by_the_name_of_their_package(install, records, says):
    install("sequencer.patterns", f"RECORDS = {records}\n", value="RECORDS")

    assert says in refused(library.patterns)


def test_a_profile_is_added_with_its_own_source(install):
    install("sequencer.profiles", f"RULES = {PROFILE % RULE}\n", value="RULES")

    assert "harbour" in profiles.profile_names()
    assert profiles.profile_names()[0] == "default"
    own = profiles.profile("harbour")
    assert (own.name, own.authority) == ("harbour", False)
    assert own.rules[0].number == 7.0
    assert own.rules[0].citation == "Harbour, audience-distance: 7 m. Harbour rules [HB-1; read]"
    assert profiles.profile("default").rules


@pytest.mark.parametrize(
    ("records", "says"),
    [
        (PROFILE.replace("'harbour'", "'default'") % RULE, "'default' already exists"),
        (PROFILE.replace("'HB-1'", "'A4'") % RULE, "source 'A4' already exists"),
        (PROFILE % RULE.replace("'HB-1'", "'none'"), "'none' is not a source in this package"),
        (PROFILE % RULE.replace("audience-distance", "audience"), "is not a subject of a rule"),
        (PROFILE % RULE.replace("7.0", "-7.0"), "must be finite and not negative"),
        (PROFILE % RULE.replace("printed='7 m', ", ""), "profile 'harbour' lacks 'printed'"),
        (PROFILE.replace("mark='read'", "mark='heard'") % RULE, "mark must be one of"),
        ("{'harbour': 3}", "profile 'harbour' must be a record"),
    ],
)
def test_broken_profiles_are_refused_by_the_name_of_their_package(install, records, says):
    install("sequencer.profiles", f"RULES = {records}\n", value="RULES")

    assert says in refused(profiles.profile_names)


SHEET = """\
from sequencer.outputs.sheets.parts.furniture import Sheet
def sheet(name):
    return Sheet(name=name, title="T", story=lambda page: [])
"""


@pytest.mark.parametrize(
    ("make", "names"),
    [
        ("lambda edition: sheet('tide')", ["tide"]),
        ("lambda edition: None", []),
        ("lambda edition: [sheet('tide'), sheet('moon')]", ["tide", "moon"]),
        ("lambda edition: (sheet(w) for w in edition.words)", ["wind", "rain"]),
    ],
)
def test_sheets_are_added_as_a_show_needs_them(install, make, names):
    install("sequencer.sheets", f"{SHEET}MAKE = {make}\n", value="MAKE")
    edition = SimpleNamespace(is_lit=False, words=("wind", "rain"))

    made = added_sheets(edition, ["packet"])
    assert [sheet.name for sheet in made] == names
    assert all(sheet.story(None) == [] for sheet in made)


@pytest.mark.parametrize(
    ("make", "says"),
    [
        ("3", "expected a function of an edition, got int"),
        ("lambda edition: 3", "TypeError"),
        ("lambda edition: ['tide']", "expected a Sheet, got str"),
        ("lambda edition: sheet('packet')", "a sheet 'packet' is there already"),
        ("lambda edition: [sheet('tide'), sheet('tide')]", "a sheet 'tide' is there already"),
        ("lambda edition: sheet('Low tide')", "write 'low-tide' for 'Low tide'"),
        ("lambda edition: edition.tide", "AttributeError"),
    ],
)
def test_broken_sheets_are_refused_by_the_name_of_their_package(install, make, says):
    install("sequencer.sheets", f"{SHEET}MAKE = {make}\n", value="MAKE")

    assert says in refused(lambda: added_sheets(SimpleNamespace(is_lit=False), ["packet"]))


@pytest.mark.parametrize(
    ("story", "is_lit", "says"),
    [("1 / 0", False, "ZeroDivisionError"), ("[]", True, "leaves out the cautions of a lit show")],
)
def test_a_sheet_that_fails_while_it_is_laid_out_is_refused_too(install, story, is_lit, says):
    code = SHEET.replace("[]", story)
    install("sequencer.sheets", f"{code}MAKE = lambda edition: sheet('tide')\n", value="MAKE")
    made = added_sheets(SimpleNamespace(is_lit=is_lit), [])

    assert says in refused(lambda: made[0].story(None))


def test_a_package_on_a_path_that_came_later_is_found(tmp_path, monkeypatch):
    """The entry points of a path are looked up once, those of another path again."""
    assert not plugins("sequencer.sheets")
    info = tmp_path / "later-1.0.dist-info"
    info.mkdir()
    (info / "METADATA").write_text("Metadata-Version: 2.1\nName: later\nVersion: 1.0\n", "utf-8")
    (info / "entry_points.txt").write_text("[sequencer.sheets]\nown = later:KIND\n", "utf-8")
    monkeypatch.setattr(sys, "path", [*sys.path, str(tmp_path)])
    assert [each.package for each in plugins("sequencer.sheets")] == ["later 1.0"]
    assert not plugins("sequencer.checks")
