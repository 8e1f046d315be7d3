"""The face of the library: a small set of names, paths as text or Path, short reprs, data frames, clear refusals."""

import doctest
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import numpy as np
import pandas as pd
import pytest

import sequencer
from sequencer import api, tasks
from sequencer.findings import Chance, Clearance, Danced, Finding, Report
from sequencer.motion.laws.transforms import Mirrored, Retimed

ROOT = Path(__file__).parents[2]
FACE = [name for name in sequencer.__all__ if name != "__version__"]
TRACK = ROOT / "audio_samples" / "cinder_ferry.ogg"
DUO = ROOT / "shows" / "salt_wind.yaml"
HEAVY = (
    "numpy",
    "pandas",
    "scipy",
    "pydantic",
    "matplotlib",
    "librosa",
    "numba",
    "ruamel",
    "click",
)


@pytest.fixture(scope="module")
def song():
    return sequencer.hear(str(TRACK))


@pytest.fixture(scope="module")
def duo():
    return sequencer.stage(DUO)


def in_python(code):
    done = subprocess.run(
        [sys.executable, "-W", "error", "-c", code], capture_output=True, text=True, check=True
    )
    return done.stdout.strip()


def test_a_few_names_each_documented():
    assert len(FACE) == 14
    assert {*FACE, "__version__"} == set(dir(sequencer))
    library = (ROOT / "docs" / "library.md").read_text(encoding="utf-8")
    for name in FACE:
        assert getattr(sequencer, name).__doc__
        assert f"`{name}" in library, name
    assert set(api.__all__) == set(FACE) - {"InputError"}
    with pytest.raises(AttributeError, match="has no attribute 'heer'"):
        sequencer.heer  # noqa: B018


def test_importing_loads_nothing_heavy():
    code = (
        f"import sys, sequencer; dir(sequencer); print([m for m in {HEAVY!r} if m in sys.modules])"
    )
    assert in_python(code) == "[]"


@pytest.mark.parametrize("name", ["InputError", "Report", "hear", "law"])  # one of each kind
def test_a_name_can_be_imported_first(name):
    assert in_python(f"from sequencer import {name}; print({name}.__name__)") == name


def test_the_examples_in_the_docstrings_run(monkeypatch):
    monkeypatch.chdir(ROOT)
    done = doctest.testmod(api)
    assert done.attempted >= 9
    assert done.failed == 0


def test_check_says_what_the_command_line_says(duo, tmp_path):
    report = sequencer.check(duo)
    assert report == tasks.check_show(DUO)
    assert tasks.report_text(report, as_json=True) == tasks.report_text(
        tasks.check_show(str(DUO)), as_json=True
    )


def test_a_song_that_was_heard_is_not_heard_again(song, duo, monkeypatch):
    monkeypatch.setattr("sequencer.listening.hearing.hear", None)
    read = sequencer.read_show(str(DUO))
    assert sequencer.stage(read, song=song).tempo.times.tolist() == duo.tempo.times.tolist()
    assert sequencer.stage(duo) is duo
    pinned = read.show.track.model_copy(update={"sha256": "0" * 64})
    other = replace(read, show=read.show.model_copy(update={"track": pinned}))
    with pytest.raises(sequencer.InputError, match="another-cut"):
        sequencer.stage(other, song=song)


@pytest.mark.parametrize(
    ("call", "error", "says"),
    [
        (lambda: sequencer.hear(3), TypeError, "track must be a path, str or Path, got int"),
        (lambda: sequencer.read_show(None), TypeError, "path must be a path"),
        (lambda: sequencer.stage(3), TypeError, "a show is a path, what read_show returns"),
        (lambda: sequencer.check({}), TypeError, "got dict"),
        (lambda: sequencer.check(DUO, danced=0), ValueError, "danced must be at least 1"),
        (lambda: sequencer.stage(DUO, song=3), TypeError, "song must be what hear returns"),
        (lambda: sequencer.law("pro-bent-4"), ValueError, "did you mean pro-bend-4"),
        (lambda: sequencer.law("orbit", ration=2), ValueError, "did you mean ratio"),
        (lambda: sequencer.law("orbit", hand_radius="1,500 mm"), ValueError, "can be read as"),
        (lambda: sequencer.law("orbit", side="rigth"), ValueError, "side must be"),
        (lambda: sequencer.law("orbit", body=1.7), TypeError, "must be a sequencer.Body"),
        (lambda: sequencer.law("orbit", beats=0), ValueError, "beats must be positive"),
        (lambda: sequencer.law("orbit", tether=np.nan), ValueError, "tether must be positive"),
        (lambda: sequencer.trace(3), TypeError, "trace takes a law or a show"),
        (lambda: sequencer.hear(TRACK, taps=3), TypeError, "taps must be a path, str or Path, got int"),
        (lambda: sequencer.check(DUO, danced=1.5), TypeError, "danced must be a whole number, got 1.5"),
        (lambda: sequencer.check(DUO, danced=True), TypeError, "danced must be a whole number, got True"),
        (lambda: sequencer.check(DUO, danced=2, seed=-1), ValueError, "seed must be at least 0, got -1"),
        (lambda: sequencer.law("orbit", beats="4"), TypeError, r"beats must be a number \[beats\], got '4'"),
        (lambda: sequencer.law("orbit", beats=True), TypeError, "beats must be a number .*, got True"),
        (lambda: sequencer.law("orbit", tether="1,500 mm"), ValueError, "tether: '1,500 mm' can be read as"),
        (lambda: sequencer.law("orbit", tether="-5 cm"), ValueError, "tether must be positive, got -0.05"),
        (lambda: sequencer.law("orbit", tether=[1]), TypeError, r"tether must be a number \[m\], got \[1\]"),
        (lambda: sequencer.trace(sequencer.law("orbit"), per_beat=0), ValueError, "per_beat must be at least 1"),
        (lambda: sequencer.trace(sequencer.law("orbit"), per_beat=1.5), TypeError, "per_beat must be a whole"),
        (lambda: sequencer.trace(sequencer.law("orbit"), beats=1e9), ValueError, "rows are more than"),
        (lambda: sequencer.trace(sequencer.law("orbit"), tempo="fast"), TypeError, "tempo must be a number"),
        (lambda: sequencer.trace(sequencer.law("orbit"), rate=-1), TypeError, "rate is for a show, this is a law"),
        (lambda: sequencer.trace(DUO, beats=4), TypeError, "beats is for a law, this is a show"),
        (lambda: sequencer.trace(DUO, per_beat=4), TypeError, "per_beat is for a law, this is a show"),
        (lambda: sequencer.trace(DUO, rate=np.inf), ValueError, "rate must be positive, got inf"),
        (lambda: sequencer.trace(sequencer.law("orbit"), tether=-1), ValueError, "must be positive"),
        (lambda: sequencer.Body(stature=17), ValueError, "stature must be"),
        (lambda: sequencer.Body(stature="1.62 m"), TypeError, r"stature must be a number \[m\], got '1.62 m'"),
        (lambda: sequencer.Body(arm="70 cm"), TypeError, r"arm must be a number \[m\], got '70 cm'"),
        (lambda: sequencer.Prop(length="51 cm", mass=1, wick_radius=1), TypeError,
         r"length must be a number \[m\], got '51 cm'"),
        (lambda: sequencer.Prop(length=1, mass=True, wick_radius=1), TypeError, r"mass must be .*\[kg\], got True"),
        (lambda: sequencer.Prop(kind="fan", length=1, mass=1, wick_radius=1, wicks=2.5), TypeError, "wicks must be a w"),
        (lambda: sequencer.Prop(length=0, mass=1, wick_radius=1), ValueError, "length must be"),
    ],
)  # fmt: skip
def test_a_caller_s_mistake_is_named(call, error, says):
    with pytest.raises(error, match=says):
        call()


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda folder: sequencer.hear(folder / "none.ogg"), "none.ogg"),
        (lambda folder: sequencer.read_show(str(folder / "none.yaml")), "none.yaml"),
        (sequencer.stage, "folder"),
        (lambda folder: sequencer.check(folder / "bad.yaml"), "bad.yaml:3"),
        (lambda folder: sequencer.pattern_book(folder / "bad.yaml"), "bad.yaml"),
    ],
)
def test_bad_input_is_one_line(tmp_path, call, says):
    (tmp_path / "bad.yaml").write_text(
        "title: x\ntrack: {file: x.ogg}\nvenu: {}\ncast: [{name: A, stature: 1.7}]\n",
        encoding="utf-8",
    )
    with pytest.raises(sequencer.InputError) as caught:
        call(tmp_path)
    said = str(caught.value).splitlines()
    assert len(said) == len(getattr(caught.value, "errors", [0]))
    assert says in said[0] or tmp_path.name in said[0]


def test_a_length_that_can_be_read_in_two_ways_is_refused_where_it_stands(tmp_path):
    text = DUO.read_text(encoding="utf-8").replace("stature: 1.80 m", "stature: '1,800 m'")
    path = tmp_path / "show.yaml"
    path.write_text(text, encoding="utf-8")
    line = next(k for k, row in enumerate(text.splitlines(), 1) if "1,800" in row)

    with pytest.raises(sequencer.InputError) as caught:
        sequencer.read_show(path)
    assert f"show.yaml:{line}:" in str(caught.value)
    assert "can be read as 1800 m or as 1.800 m; write one of these" in str(caught.value)


def test_a_law_is_that_of_the_pattern():
    """Source: a static spin is a circle of the tether's length about the hand (docs/motion.md, section 3)."""
    law = sequencer.law("static-spin", side="left", beats=2, tether=0.4)
    rows = sequencer.trace(law, beats=2, per_beat=48, tempo=120, tether=0.4)
    assert rows["seconds"].iloc[-1] == pytest.approx(1.0)
    assert np.ptp(rows[["hand_x", "hand_y", "hand_z"]].to_numpy(), axis=0).max() < 1e-12
    away = rows[["head_x", "head_y", "head_z"]].to_numpy() - rows[["hand_x", "hand_y", "hand_z"]]
    np.testing.assert_allclose(np.linalg.norm(away, axis=1), 0.4, atol=1e-12)
    turned = sequencer.law("orbit", from_=90, hand_radius="20 cm").at(np.array([0.0])).hand[0]
    usual = sequencer.law("orbit", hand_radius="20 cm").at(np.array([0.0])).hand[0]
    np.testing.assert_allclose(turned - usual, [0, 0, 0.4], atol=1e-12)


def test_a_tether_with_a_unit_is_that_length():
    """Source: an inch is 2.54 cm exactly (yard and pound agreement of 1959)."""
    given = sequencer.trace(sequencer.law("orbit", tether="20 in"), tether="20 in")
    metres = sequencer.trace(sequencer.law("orbit", tether=0.508), tether=np.float64(0.508))
    pd.testing.assert_frame_equal(given, metres)
    usual = sequencer.trace(sequencer.law("orbit"))
    assert np.abs(usual["head_x"] - given["head_x"]).max() > 1e-4


def test_a_show_s_trace_is_the_csv(duo):
    import io

    frame = sequencer.trace(duo, rate=2.0)
    read = pd.read_csv(io.StringIO(tasks.trace_show(duo, rate=2.0)), keep_default_na=True)
    assert list(frame.columns) == list(read.columns)
    pd.testing.assert_frame_equal(frame, read, check_dtype=False, atol=1e-6)


def test_distances_are_those_of_the_check(duo):
    near = sequencer.distances(duo)
    row = next(c for c in sequencer.check(duo).clearances if set(c.between) == {"Rook", "Wisp"})
    only = near.pairs[0]
    assert only.distance == pytest.approx(row.distance, abs=row.error + only.error)
    assert only.seconds == pytest.approx(duo.seconds(only.beats))
    part = sequencer.distances(duo, "9.1", "end of verse 1")
    assert (part.start, part.end) == (32.0, 96.0)
    assert part.pairs[0].distance >= only.distance - only.error
    far = sequencer.distances(duo, 0.0, 8.0, within=1e-3).pairs[0]
    assert far.bound
    assert far.distance <= sequencer.distances(duo, 0.0, 8.0).pairs[0].distance
    assert np.isnan(far.x)


def test_distances_are_no_more_than_a_fine_look_finds(duo):
    """Source: brute force, every part against every part at 4,000 instants."""
    from sequencer.motion.clearance.nearest import closest

    near = sequencer.distances(duo, 40.0, 60.0)
    looked = closest(*duo.dancers, np.linspace(40.0, 60.0, 4000)).distance.min()
    assert near.pairs[0].distance - near.pairs[0].error <= looked <= near.pairs[0].distance + 0.005


@pytest.mark.parametrize(
    ("start", "end", "says"),
    [
        ("nowhere", None, "no section 'nowhere'"),
        (8.0, 4.0, "must come after"),
        (np.nan, None, "start must be within the show, beats .*, got nan"),
        (-5, None, "start must be within the show, beats -0.827 … 321.932, got -5"),
        (0.0, 1e4, "end must be within the show"),
        ("1.9", None, "bar 1 has 4 beats"),
    ],
)
def test_moments_that_are_none_are_refused(duo, start, end, says):
    with pytest.raises(ValueError, match=says):
        sequencer.distances(duo, start, end)
    with pytest.raises(ValueError, match="within must be positive"):
        sequencer.distances(duo, within=0)
    with pytest.raises(TypeError, match=r"start must be a number \[beats\], got True"):
        sequencer.distances(duo, True)
    with pytest.raises(TypeError, match=r"within must be a number \[m\], got '1 m'"):
        sequencer.distances(duo, within="1 m")


def test_the_ends_of_a_show_as_printed_are_within_it(duo):
    first, last = duo.span
    near = sequencer.distances(duo, round(first, 3), round(last, 3))
    assert first <= near.start < near.end <= last


def test_nobody_is_close_to_a_soloist():
    solo = sequencer.distances(ROOT / "shows" / "night_ferry.yaml")
    assert solo.pairs == ()
    assert list(solo.to_frame().columns)[:3] == ["first", "second", "distance"]


def test_a_song_as_data_frames(song):
    bars, beats, sections = (song.to_frame(table) for table in ("bars", "beats", "sections"))
    assert bars["start"].tolist() == list(song.downbeats)
    assert (bars["end"].to_numpy()[:-1] == bars["start"].to_numpy()[1:]).all()
    # the last one may be cut off by the end of the song
    assert 0 <= bars["beats"].sum() - len(song.beats) < bars["beats"].iloc[-1]
    np.testing.assert_allclose(60 * bars["beats"] / (bars["end"] - bars["start"]), bars["tempo"])
    assert beats["seconds"].tolist() == list(song.beats)
    assert beats.iloc[4][["bar", "beat"]].tolist() == [2, 1]
    assert sections["section"].tolist() == list(song.section_names())
    assert set(bars["section"]) <= set(sections["section"])
    pickup = replace(song, downbeats=song.downbeats[1:], bar_confidence=())
    assert pickup.to_frame("beats").iloc[0][["bar", "beat"]].tolist() == [0, 1]
    assert pickup.to_frame("bars")["confidence"].isna().all()
    with pytest.raises(ValueError, match="table must be one of bars, beats, sections, got 'bar'"):
        song.to_frame("bar")


def test_a_report_as_data_frames():
    finding = Finding(
        code="too-close", severity="stop", who=("A", "B"), start=None, end=2.0, position=None,
        message="x", remedies=("y", "z"),
    )  # fmt: skip
    clearance = Clearance(
        between=("A", "B"), distance=0.2, required=0.3, at=1.5, error=0.005, where=(1.0, 2.0)
    )
    chance = Chance(
        between=("A", "B"), start=1.0, end=2.0, position="1.3", conflicts=1, runs=10, chance=0.1,
        low=0.0, high=0.4, worst=0.1,
    )  # fmt: skip
    danced = Danced(
        runs=10, seed=0, required=0.3, confidence=0.95, spread={}, chances=(chance,), pairs=1, clear=0,
        clear_high=1.0,
    )  # fmt: skip
    report = Report(show="x", findings=(finding,), clearances=(clearance,), danced=danced)

    row = report.to_frame().iloc[0]
    assert (row["code"], row["who"], row["remedies"]) == ("too-close", ("A", "B"), ("y", "z"))
    assert np.isnan(row["start"])
    assert np.isnan(row["x"])
    near = report.to_frame("clearances").iloc[0]
    assert (near["first"], near["second"], near["x"], near["y"]) == ("A", "B", 1.0, 2.0)
    assert report.to_frame("chances").iloc[0]["chance"] == 0.1
    empty = Report(show="x")
    for table in ("findings", "clearances", "chances"):
        assert list(empty.to_frame(table).columns) == list(report.to_frame(table).columns)
        assert empty.to_frame(table).empty
    with pytest.raises(ValueError, match="table must be one of findings, clearances, chances"):
        report.to_frame("all")


def test_what_is_shown_is_one_short_line(song, duo):
    law = sequencer.law("pro-bend-4")
    book = sequencer.pattern_book()
    trajectory = duo.dancers[1].trajectories["left"]
    shown = [
        song, duo, sequencer.check(duo), duo.show, duo.read, duo.tempo, *duo.dancers, duo.blocks[0],
        law, law.at(np.linspace(0, 4, 97)), Mirrored(law), Retimed(law, 1.0, 2.0),
        book["pro-bend-4"], book["pro-bend-4"].left.kind,
        book["pro-bend-4"].left, sequencer.distances(duo), trajectory,
        *(span.law for span in trajectory.spans[:4]),
    ]  # fmt: skip
    for each in shown:
        line = repr(each)
        assert "\n" not in line
        assert len(line) <= 200, line
        assert type(each).__name__ in line
    assert repr(law) == "<ComposedLaw of 4 phases, repeats every 4 beats>"
    assert repr(sequencer.law("orbit", beats=1)) == "<ComposedLaw of 2 phases, repeats every beat>"
    assert repr(law.at(np.zeros(1))) == "<Motion at 1 instant, body frame>"
    assert repr(sequencer.distances(duo)).startswith("<Distances of 1 pair, ")
    assert "staff right, 1 burn, reach" in repr(duo.dancers[0])
    assert repr(sequencer.check(duo)).startswith(f"<Report on {DUO}: 0 stop, ")
    assert "100.0 beats/min" in repr(song)


def test_tasks_take_paths_as_text(song, tmp_path):
    show = str(tmp_path / "mine.yaml")
    tasks.start_show(show, str(TRACK), draft=False)
    assert sequencer.read_show(show).show.title == "Mine"
    tasks.draw_song(song, str(tmp_path / "song.png"))
    assert (tmp_path / "song.png").stat().st_size > 1000
    assert tasks.song_text(song, str(TRACK), as_json=True)
    moves = tmp_path / "moves.yaml"
    moves.write_text("patterns: {small wheel: {law: orbit}}\n", encoding="utf-8")
    assert list(sequencer.pattern_book(str(moves)))[-1] == "small wheel"
    assert "small wheel" in tasks.vocabulary.list_text(file=str(moves))
    heard = tasks.hear_folder(str(TRACK.parent), jobs=1)
    assert str(TRACK) in {str(path) for path, _ in heard}


def test_a_new_show_overwrites_no_schema_and_writes_through_a_link(tmp_path):
    """The schema beside it may be somebody's own; a link to a show on a stick stays a link."""
    schema = tmp_path / "mine.schema.json"
    schema.write_text("mine", encoding="utf-8")
    with pytest.raises(sequencer.InputError, match=r"mine\.schema\.json.*already exists"):
        tasks.start_show(tmp_path / "mine.yaml", TRACK, draft=False)
    assert schema.read_text(encoding="utf-8") == "mine"
    assert not (tmp_path / "mine.yaml").exists()
    tasks.start_show(tmp_path / "mine.yaml", TRACK, draft=False, force=True)
    assert schema.read_text(encoding="utf-8").startswith("{")

    real = tmp_path / "stick" / "real.yaml"
    real.parent.mkdir()
    real.write_text("old", encoding="utf-8")
    link = tmp_path / "linked.yaml"
    link.symlink_to(real)
    tasks.start_show(link, TRACK, draft=False, force=True)
    assert link.is_symlink()
    assert sequencer.read_show(link).show.title == "Linked"
    assert real.read_text(encoding="utf-8").startswith("# yaml-language-server")
