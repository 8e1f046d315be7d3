"""The cache of fits: what an entry holds, when it is trusted, and which entries are deleted."""

import hashlib
import json
import os
from importlib.machinery import ModuleSpec
from math import inf
from pathlib import Path
from types import SimpleNamespace

import pytest

import sequencer
from sequencer.geometry.posture import Posture
from sequencer.motion.fitting import kept_fits
from sequencer.motion.fitting.fits import Fit, Margins

FIT = Fit(
    values={"right": {"up": 0.1, "from": 30}}, posture=Posture(turn=0.1, lean=-0.05, side=0.02, nod=0.03, tilt=-0.04),
    margins=Margins(0.04, inf, 0.2, -1.5),
)  # fmt: skip
RECORD = {
    "values": {"right": {"up": 0.1, "from": 30}},
    "posture": [0.1, -0.05, 0.02, 0.03, -0.04],
    "margins": [0.04, None, 0.2, -1.5],
}


@pytest.fixture
def room(monkeypatch, tmp_path):
    """The folder of entries."""
    own = tmp_path / "fits"
    monkeypatch.setattr(kept_fits, "folder", lambda: own)
    monkeypatch.setattr(kept_fits, "formulas", lambda: "formulas")
    return own


def test_a_record_by_hand():
    assert kept_fits._record(FIT) == RECORD
    assert kept_fits._from_record(RECORD) == FIT


def test_an_entry_has_question_checksum_and_fit(room):
    """The name: forty hexadecimal digits of a hash of formulas and question; the checksum: of all three."""
    kept_fits.store("which?", FIT)
    name = hashlib.sha256(b"formulas which?").hexdigest()[:40]
    entry = json.loads((room / f"{name}.json").read_text())
    text = json.dumps(["formulas", "which?", RECORD], sort_keys=True)
    assert entry == {
        "question": "which?",
        "checksum": hashlib.sha256(text.encode()).hexdigest(),
        "fit": RECORD,
    }
    assert kept_fits.load("which?") == FIT
    assert kept_fits.load("what?") is None


@pytest.mark.parametrize(
    "broken",
    [
        {"question": "what?"}, {"checksum": "0"}, {"fit": {**RECORD, "margins": [1, 2, 3, 4]}}, {"fit": None},
    ],
)  # fmt: skip
def test_an_entry_is_trusted_only_if_all_of_it_is_right(room, broken):
    kept_fits.store("which?", FIT)
    (entry,) = room.iterdir()
    entry.write_text(json.dumps(json.loads(entry.read_text()) | broken))
    assert kept_fits.load("which?") is None


@pytest.mark.parametrize(
    "record",
    [{}, {**RECORD, "posture": [1]}, {**RECORD, "values": 3}, [], {**RECORD, "posture": [9.0] * 5}],
)
def test_a_record_that_is_none_with_a_right_checksum_is_no_fit(room, record):
    kept_fits.store("which?", FIT)
    (entry,) = room.iterdir()
    right = kept_fits._checksum("which?", record)
    entry.write_text(json.dumps({"question": "which?", "checksum": right, "fit": record}))
    assert kept_fits.load("which?") is None


def test_a_checksum_does_not_hang_on_the_order_of_keys(room):
    turned = dict(reversed(RECORD.items()))
    assert kept_fits._checksum("which?", RECORD) == kept_fits._checksum("which?", turned)


@pytest.mark.parametrize(("count", "kept"), [(6, range(6)), (7, range(3, 7)), (10, range(5, 10))])
def test_beyond_the_most_the_oldest_half_goes(room, monkeypatch, count, kept):
    """Seven entries where six may be: three go, by the time they were written; other files stay."""
    monkeypatch.setattr(kept_fits, "MOST", 6)
    room.mkdir()
    (room / "notes.txt").write_text("")
    for k in range(count):
        entry = room / f"{(7 * k) % 11}.json"
        entry.write_text("")
        os.utime(entry, (1000 + k, 1000 + k))
    kept_fits._prune()
    names = {f"{(7 * k) % 11}.json" for k in kept} | {"notes.txt"}
    assert {each.name for each in room.iterdir()} == names


def test_four_thousand_are_kept():
    """Approved: a few megabytes."""
    assert (kept_fits.MOST, kept_fits.ROOMS) == (4000, ("geometry", "motion"))


def test_the_folder_is_in_the_users_cache(monkeypatch, tmp_path):
    monkeypatch.setattr("platformdirs.user_cache_path", lambda name: tmp_path / name)
    assert kept_fits.folder() == tmp_path / "sequencer" / "fits"


def test_formulas_are_all_code_and_data_of_geometry_and_motion_and_of_added_laws(
    monkeypatch, tmp_path
):
    """A hash of names and contents in order of their names; a module of one file counts, twice named only once."""
    alone = tmp_path / "alone.py"
    alone.write_text("law = 1\n")
    spec = ModuleSpec("alone", None, origin=str(alone))
    real = kept_fits.find_spec
    monkeypatch.setattr(
        kept_fits,
        "find_spec",
        lambda name: {"alone": spec, "gone": None}.get(name) if "." not in name else real(name),
    )
    tops = [SimpleNamespace(top=top) for top in ("alone", "gone", "alone")]
    monkeypatch.setattr(
        kept_fits, "plugins", lambda group: tops if group == "sequencer.laws" else []
    )
    total = hashlib.sha256()

    def walk(folder):
        for each in sorted(folder.iterdir(), key=lambda each: each.name):
            if each.is_dir():
                walk(each)
            elif each.suffix in (".py", ".json"):
                total.update(each.name.encode() + each.read_bytes())

    for name in ("geometry", "motion"):
        walk(Path(sequencer.__file__).parent / name)
    total.update(b"alone.py" + alone.read_bytes())
    assert kept_fits.formulas.__wrapped__() == total.hexdigest()


def test_what_is_built_in_has_no_code_to_read():
    assert list(kept_fits._code_of("no_such_package_at_all")) == []
    spec = ModuleSpec("bare", None)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(kept_fits, "find_spec", lambda _name: spec)
        assert list(kept_fits._code_of("bare")) == []


def test_an_entry_waits_for_no_disk(room, monkeypatch):
    """What a power cut tears has no checksum, and is searched again."""

    def refused(_handle):
        raise OSError

    monkeypatch.setattr("os.fsync", refused)
    fit = Fit(margins=Margins(0.2, 0.3, 0.1, 0.4))
    kept_fits.store("which?", fit)
    assert kept_fits.load("which?") == fit
