"""The example package of the documentation, installed as a person would, and used by the commands."""

import json
import os
import shutil
import subprocess
import sys
from importlib.metadata import PackageNotFoundError, version
from importlib.util import find_spec
from pathlib import Path

import pytest
from pypdf import PdfReader

ROOT = Path(__file__).parents[2]
EXAMPLE = ROOT / "docs" / "example_package"
LIT = """\
title: Harbour
track:
  file: song.wav
  corrections: {metre: 4, one: 0:00.5}
venue:
  stage: {shape: rectangle, width: 12 m, depth: 10 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
cast:
  - {name: Ash, stature: 1.7, birth_year: 1990, prop: {tether: 0.45}}
timeline:
  - {from: 3.1, pattern: harbour star, beats: 20}
fire:
  fuel: kerosene
  burn: {time: 4 min, measured: true}
  lit: [{who: Ash, from: 2.1, until: 10.1}]
rules: {profile: [default, harbour]}
"""


def can_build():
    """Whether a wheel can be built without a network: setuptools as the package asks for it, and pip."""
    try:
        return int(version("setuptools").split(".")[0]) >= 77 and find_spec("pip") is not None
    except PackageNotFoundError:
        return False


pytestmark = pytest.mark.skipif(
    not can_build(), reason="pip, or setuptools 77 of the test extra, is not installed"
)


@pytest.fixture(scope="module")
def installed(tmp_path_factory):
    """The package in a folder of its own, built from a copy so that the documentation stays clean."""
    folder = tmp_path_factory.mktemp("package")
    shutil.copytree(EXAMPLE, folder / "source")
    command = [sys.executable, "-m", "pip", "install", "--quiet", "--disable-pip-version-check"]
    command += ["--no-deps", "--no-index", "--no-build-isolation", "--target", str(folder / "site")]
    done = subprocess.run(
        [*command, str(folder / "source")], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return folder / "site"


@pytest.fixture(scope="module")
def sequencer(installed, stage_folder):
    """Run the command with the package on the path."""
    path = os.pathsep.join([str(installed), str(ROOT), os.environ.get("PYTHONPATH", "")])
    (stage_folder / "harbour.yaml").write_text(LIT, encoding="utf-8")

    def run(*arguments, status=0):
        done = subprocess.run(
            [sys.executable, "-W", "error", "-m", "sequencer", *arguments],
            cwd=stage_folder, capture_output=True, text=True, encoding="utf-8", check=False,
            env={**os.environ, "PYTHONPATH": path, "PYTHONIOENCODING": "utf-8",
                 "PYTHONDONTWRITEBYTECODE": "1"},
        )  # fmt: skip
        assert done.returncode == status, done.stderr
        return done

    return run


def test_its_pattern_and_law_are_in_the_vocabulary(sequencer):
    listed = json.loads(sequencer("patterns", "--json").stdout)
    assert listed[-1]["name"] == "harbour star"
    assert listed[-1]["family"] == "star"
    assert "starfish (star)\n  points" in sequencer("patterns", "--laws").stdout
    assert "keeps" in sequencer("patterns", "harbour star").stdout


def test_its_law_is_the_curve_it_states(sequencer):
    """Source: a hypotrochoid of n points is its radius from the centre at each of them."""
    said = sequencer(
        "trace", "--pattern", "harbour star", "--set", "hand_radius=0.2", "--beats", "5",
        "--per-beat", "1",
    ).stdout  # fmt: skip
    rows = [line.split(",") for line in said.splitlines()[1:]]
    hands = [(float(row[4]), float(row[6])) for row in rows]
    centre = [sum(values) / 5 for values in zip(*hands[:5], strict=True)]
    out = [((x - centre[0]) ** 2 + (z - centre[1]) ** 2) ** 0.5 for x, z in hands]
    assert out == pytest.approx([0.2] * 6, abs=1e-6)


@pytest.fixture(scope="module")
def report(sequencer):
    return json.loads(sequencer("check", "harbour.yaml", "--json", status=1).stdout)


def test_its_profile_and_pattern_are_checked(report):
    asked = [f for f in report["findings"] if "tide table" in f["message"]]
    assert [f["source"] for f in asked] == ["House rules of the harbour stage, 2026"]
    kept = [c["required"] for c in report["clearances"] if "audience" in " ".join(c["between"])]
    assert kept == [7.0]  # the package's rule is stricter than the default's 20 ft


def test_its_check_is_among_the_checks(report):
    own = [f for f in report["findings"] if f["code"] == "harbour-long-block"]
    assert [(f["severity"], f["who"], f["position"]) for f in own] == [("note", ["Ash"], "3.1")]
    assert own[0]["message"] == "harbour star goes on for 20 beats"


def test_its_sheet_is_printed_with_the_rest(sequencer, stage_folder):
    sequencer("sheet", "harbour.yaml", "--out", "prints", status=1)
    folder = stage_folder / "prints" / "harbour"
    text = PdfReader(folder / "harbour-stage-hands.pdf").pages[0].extract_text()
    assert "Lay out, unlit" in text
    assert "poi (left)" in text
    whole = PdfReader(folder / "all-sheets.pdf")
    assert "Stage hands" in [mark.title for mark in whole.outline if not isinstance(mark, list)]


@pytest.mark.parametrize(
    ("file", "old", "new", "command", "says"),
    [
        ("starfish.py", 'name="starfish"', 'name="orbit"', ["patterns"], "'orbit' already exists"),
        ("patterns.py", '"starfish"', '"starfisch"', ["patterns"], "law 'starfisch' is not known"),
        ("rules.py", "7.0", "-7.0", ["check", "harbour.yaml"], "must be finite and not negative"),
        ("long_block.py", 'name="harbour-long-block"', 'name="joins"', ["check", "harbour.yaml"],
         "'joins'"),
        ("long_block.py", 'severity="note"', 'severity="stop"', ["check", "harbour.yaml"],
         "does not declare under codes"),
        ("stage_hands.py", "        *cautions_block", "        # *cautions_block",
         ["sheet", "harbour.yaml", "--out", "none"], "leaves out the cautions of a lit show"),
        ("stage_hands.py", 'name="stage-hands"', 'name="operator"',
         ["sheet", "harbour.yaml", "--out", "none"], "a sheet 'operator' is there already"),
        ("__init__.py", '"""What', 'raise RuntimeError("of its own")\n"""What', ["patterns"],
         "RuntimeError: of its own"),
    ],
)  # fmt: skip
def test_one_that_is_broken_is_named_and_never_skipped(
    sequencer, installed, stage_folder, file, old, new, command, says
):
    path = installed / "harbour_moves" / file
    whole = path.read_text(encoding="utf-8")
    assert old in whole
    path.write_text(whole.replace(old, new), encoding="utf-8")
    try:
        done = sequencer(*command, status=2)
        if file in ("starfish.py", "__init__.py"):  # the first to be loaded, and all of it
            assert sequencer("--help").stdout.startswith("Usage: ")
    finally:
        path.write_text(whole, encoding="utf-8")
    assert done.stderr.splitlines()[-1].startswith(
        "error: harbour-moves 0.1.0: this package's entry point"
    )
    assert says in done.stderr
    assert "Traceback" not in done.stderr
    assert not (stage_folder / "none").exists()
