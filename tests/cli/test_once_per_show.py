"""What follows from a show is worked out once for everybody who asks: checks, mends, sheets and pictures."""

from collections import Counter

import pytest
from click.testing import CliRunner

from sequencer.checks.check import Check
from sequencer.checks.distances import rule_distances
from sequencer.checks.fire import records
from sequencer.checks.registry import checks
from sequencer.cli import main
from sequencer.safety import safety_plan
from sequencer.safety.rules import house_rules

LIT = """\
fire:
  fuel: lamp-oil
  lit: [{who: all, from: 3.1, until: 7.1}]
crew:
  - {name: Gale, post: [-6, 5], duty: spotter, equipment: [2 damp towels]}
"""
TWO = """\
  - {name: Birch, stature: 1.7, birth_year: 1990, prop: {tether: 0.55}}
formations:
  pair: {spots: {Ash: {at: [-2, 4]}, Birch: {at: [2, 4]}}}
staging:
  - {formation: pair, from: 1.1}
"""


@pytest.fixture
def counted(monkeypatch):
    """How often each piece of work was done."""
    done = Counter()

    def count(module, name):
        work = getattr(module, name)

        def counting(*given, **known):
            done[name] += 1
            return work(*given, **known)

        monkeypatch.setattr(module, name, counting)

    count(house_rules, "rule_book")  # rules_of
    count(safety_plan, "planned_burns")  # safety_plan
    count(safety_plan, "watch_plan")
    count(rule_distances, "distances_by")  # required_distances
    count(records, "Night")  # the records of the fire checks
    held = Check._as_declared

    def counting(check, outcome):
        done[check.name] += 1
        return held(check, outcome)

    monkeypatch.setattr(Check, "_as_declared", counting)
    return done


def test_a_whole_run_of_sheets_works_everything_out_once(stage_folder, tmp_path, counted):
    show = _written(stage_folder, tmp_path, LIT)
    result = CliRunner().invoke(
        main,
        ["sheet", str(show), "--out", str(tmp_path), "--allow", str(stage_folder)],
        catch_exceptions=False,
    )

    assert result.exit_code == 1  # too small a crew stands against it, and is printed
    assert list((tmp_path / "small").glob("*.pdf"))
    names = ["rule_book", "planned_burns", "watch_plan", "distances_by", "Night"]
    names += [check.name for check in checks() if not check.on_request]
    names[names.index("feasible")] = "feasible-as-flown"
    # the show as flown is a show of its own, and reads the rules as well
    assert counted == dict.fromkeys((*names, "as-flown"), 1) | {"rule_book": 2}


def test_pictures_take_the_distances_once(stage_folder, tmp_path, counted):
    show = _written(stage_folder, tmp_path, TWO)
    result = CliRunner().invoke(
        main,
        ["draw", str(show), "--out", str(tmp_path), "--allow", str(stage_folder)],
        catch_exceptions=False,
    )

    assert result.exit_code == 0
    # the ways out that are drawn depend on where the flames are
    once = ("rule_book", "distances_by", "planned_burns", "watch_plan")
    assert counted == dict.fromkeys(once, 1)


def _written(folder, out, more):
    """The small show with more in it, beside its pages."""
    text = (folder / "show.yaml").read_text(encoding="utf-8")
    show = out / "small.yaml"
    track = f"file: {(folder / 'song.wav').as_posix()}"
    text = text.replace("file: song.wav", track).replace("timeline:", more + "timeline:")
    show.write_text(text, encoding="utf-8")
    return show
