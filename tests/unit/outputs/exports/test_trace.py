import csv
import io
from types import SimpleNamespace

import numpy as np
import pandas as pd
import pytest
from numpy.testing import assert_allclose

from sequencer.errors import InputError
from sequencer.motion.patterns.planes import frame_of
from sequencer.outputs.exports import trace as module
from sequencer.outputs.exports.trace import FLOWN_COLUMNS, TRACE_COLUMNS, pattern_csv, trace_csv
from tests.unit.staging.in_flight.test_flown_show import flown, staged_show

AGREED = "seconds,beat,performer,side,hand_x,hand_y,hand_z,head_x,head_y,head_z,sense_x,sense_y,sense_z,lit"


@pytest.fixture(scope="module")
def traced(rounds, tmp_path_factory):
    show = rounds.show(tmp_path_factory.mktemp("trace"))
    return show, pd.read_csv(io.StringIO(trace_csv(show, rate=4.0)), keep_default_na=False)


def test_header_is_the_agreed_one(traced):
    assert ",".join(traced[1].columns) == AGREED == ",".join(TRACE_COLUMNS)


def test_every_hand_has_a_row_at_every_instant(traced):
    show, table = traced

    assert len(table) == 8 * (int(show.song.duration * 4) + 1)
    assert_allclose(table["seconds"].unique(), np.arange(0, show.song.duration + 0.01, 0.25))
    assert list(table["performer"][:8]) == [name for name in show.show.names for _ in range(2)]


def test_a_spreadsheet_runs_no_name(traced):
    show, _ = traced
    row = module.trace_frame(show, rate=0.01)[:1]
    said = module._csv(row.assign(performer="=1+1"))
    assert next(csv.DictReader(io.StringIO(said)))["performer"] == "'=1+1"


def test_positions_are_the_dancers_own(traced):
    show, table = traced
    dancer = show.dancers[1]
    rows = table[(table["performer"] == dancer.name) & (table["side"] == "right")]
    points, _ = dancer.stage_points(show.tempo.beats_from_seconds(rows["seconds"].to_numpy()))

    assert_allclose(rows[["hand_x", "hand_y", "hand_z"]], points[6], atol=1e-7)
    assert_allclose(rows[["head_x", "head_y", "head_z"]], points[7], atol=1e-7)


def test_sense_is_a_unit_vector_and_lit_follows_the_show(traced):
    show, table = traced
    sense = table[["sense_x", "sense_y", "sense_z"]].to_numpy()
    burning = table[(table["performer"] == "Noa עברית") & (table["lit"] == 1)]["beat"]
    (span,) = show.lit_of("Noa עברית")

    assert_allclose(np.linalg.norm(sense, axis=1), 1.0, atol=1e-6)
    assert set(table["lit"]) == {0, 1}
    assert span.start <= burning.min() < span.start + 0.5
    assert span.end - 0.5 < burning.max() <= span.end


def test_facing_the_audience_turns_wall_planes_round(traced):
    """Body y is −Y at facing 0: a wall plane anticlockwise (−y) has its sense at +Y."""
    _, table = traced
    row = (
        table[(table["performer"] == "Łucja") & (table["side"] == "right")]
        .set_index("beat")
        .loc[20.0]
    )

    assert_allclose(row[["sense_x", "sense_y", "sense_z"]].astype(float), [0, 1, 0], atol=1e-6)


@pytest.mark.usefixtures("unflown")
def test_pattern_rows_are_where_they_are_asked_for():
    table = pd.read_csv(
        io.StringIO(
            pattern_csv(
                "toroid",
                {"lobes": "4", "bend": "pro", "start": "-1"},
                beats=4,
                per_beat=96,
                tempo=100,
            )
        ),
        keep_default_na=False,
    )

    assert ",".join(table.columns) == ",".join((AGREED, *FLOWN_COLUMNS))
    assert_allclose(table["beat"], np.arange(4 * 96 + 1) / 96, atol=1e-7)
    assert_allclose(table["seconds"], table["beat"] * 0.6, atol=1e-7)
    assert set(table["side"]) == {"right"}


@pytest.mark.usefixtures("unflown")
def test_pattern_follows_the_station_table():
    """Planes of a pro-bend of four lobes at every half lobe.

    Source: docs/motion.md, section 3.5 (common practice), written down before this code.
    """
    table = pd.read_csv(
        io.StringIO(
            pattern_csv(
                "toroid",
                {"lobes": "4", "bend": "pro", "start": "-1"},
                beats=4,
                per_beat=2,
                tempo=100,
            )
        )
    )
    expected = [
        (-1, 0, 0), (0, -1, 0), (0, 0, 1), (0, -1, 0), (1, 0, 0), (0, -1, 0), (0, 0, -1), (0, -1, 0), (-1, 0, 0),
    ]  # fmt: skip

    assert_allclose(table[["sense_x", "sense_y", "sense_z"]], expected, atol=1e-6)


@pytest.mark.usefixtures("unflown")
def test_one_hand_cycle_where_no_beats_are_named():
    table = pd.read_csv(
        io.StringIO(
            pattern_csv(
                "static-spin", {"beats": 2, "plane": "wheel"}, beats=None, per_beat=8, tempo=60
            )
        )
    )
    heads = table[["head_x", "head_y", "head_z"]].to_numpy()

    assert table["beat"].iloc[-1] == 2.0
    assert_allclose(heads[0], heads[-1], atol=1e-6)
    axis = frame_of("wheel", "anticlockwise", 0.0).axis
    assert_allclose(np.abs(table[["sense_x", "sense_y", "sense_z"]] @ axis), 1.0, atol=1e-6)


@pytest.fixture
def unflown(monkeypatch):
    monkeypatch.setattr(module, "flown_period", lambda *_: SimpleNamespace(broken=("pull",)))


def flown_table(**more):
    given = {"beats": 1.0, "per_beat": 240, "tempo": 100.0} | more
    return pd.read_csv(io.StringIO(pattern_csv("static-spin", {}, **given)))


def test_flown_columns_obey_newton():
    """The head's acceleration and gravity together point at the hand, along a tether of its length.

    Source: Newton's second law, second differences of the head as printed; drag is under 1 % of the pull.
    """
    table = flown_table()
    hand, head = (
        table[[name for name in FLOWN_COLUMNS if what in name]].to_numpy()
        for what in ("hand", "head")
    )
    step = table["seconds"][1] - table["seconds"][0]
    felt = (head[2:] - 2 * head[1:-1] + head[:-2]) / step**2 + [0.0, 0.0, 9.80665]
    line = (hand - head)[1:-1]

    assert_allclose(np.linalg.norm(line, axis=-1), 0.51, atol=1e-6)
    along = felt / np.linalg.norm(felt, axis=-1, keepdims=True)
    assert np.min(np.sum(along * line, axis=-1) / 0.51) > np.cos(0.015)
    drawn = table[["head_x", "head_y", "head_z"]].to_numpy()
    assert 0.0 < np.linalg.norm(head - drawn, axis=-1).max() < 0.1
    assert all(name.endswith("_m_body") for name in FLOWN_COLUMNS)


@pytest.mark.usefixtures("unflown")
def test_flown_columns_are_empty_where_it_cannot_be_flown():
    table = flown_table(per_beat=4)

    assert table[list(FLOWN_COLUMNS)].isna().all(axis=None)
    assert not table[["head_x", "hand_x"]].isna().any(axis=None)


@pytest.mark.parametrize("given", ["0", "-1", "four", "nan"])
def test_bad_beats_are_refused(given):
    with pytest.raises(ValueError, match="beats"):
        pattern_csv("toroid", {"beats": given}, beats=None, per_beat=4, tempo=100)


def test_rate_must_be_positive(traced):
    with pytest.raises(ValueError, match="rate must be positive"):
        trace_csv(traced[0], rate=0.0)


def test_every_wick_of_a_prop_with_more_has_columns():
    """A staff's two heads lie on either side of its hand; whoever has fewer leaves them empty."""
    from dataclasses import replace

    from sequencer.geometry.bodies import Body
    from sequencer.motion.patterns.library import law_for
    from sequencer.motion.performers.dancer import Dancer
    from sequencer.motion.performers.walks import WalkPath
    from sequencer.motion.props.prop import Prop
    from sequencer.motion.trajectories.trajectory import Span, Trajectory
    from sequencer.timing.tempo import TempoMap

    body = Body(stature=1.7)
    law = law_for("extension", {}, side="right", body=body)
    span = Span(start=0.0, end=8.0, law=law, origin=0.0, kind="block", label="extension")
    staff = Prop(kind="staff", length=0.7, behind=0.6, mass=0.8, wick_radius=0.04)
    ada = Dancer(
        name="Ada", body=body, props={"right": staff}, trajectories={"right": Trajectory((span,))},
        floor=WalkPath((0.0, 3.0)),
    )  # fmt: skip
    poi = replace(ada, name="Bo", props={"right": Prop(length=0.5, mass=0.2, wick_radius=0.05)})
    show = SimpleNamespace(
        dancers=(ada, poi),
        song=SimpleNamespace(duration=2.0),
        tempo=TempoMap(np.arange(0.0, 20.0, 0.5)),
    )
    frame = pd.read_csv(io.StringIO(trace_csv(show, rate=4)))
    assert tuple(frame.columns) == (*TRACE_COLUMNS, "head2_x", "head2_y", "head2_z")
    hand, one, two = (
        frame[frame.performer == "Ada"][[f"{name}_{axis}" for axis in "xyz"]].to_numpy()
        for name in ("hand", "head", "head2")
    )
    np.testing.assert_allclose((one - hand) / 0.7, (hand - two) / 0.6, atol=1e-6)
    assert frame[frame.performer == "Bo"].head2_x.isna().all()
    alone = SimpleNamespace(dancers=(poi,), song=show.song, tempo=show.tempo)
    assert tuple(pd.read_csv(io.StringIO(trace_csv(alone, rate=4))).columns) == TRACE_COLUMNS


def test_a_flown_trace_holds_both_motions():
    """Source: `Dancer.stage_points` of the drawn and of the flown dancers; the usual columns are as without."""
    drawn, made = staged_show(), flown().staged
    plain = pd.read_csv(io.StringIO(trace_csv(drawn, rate=5.0)))
    table = pd.read_csv(io.StringIO(trace_csv(drawn, rate=5.0, flown=made)))
    more = [f"flown_{part}_{axis}" for part in ("hand", "head") for axis in "xyz"]
    assert list(table.columns) == [*TRACE_COLUMNS, *more]
    pd.testing.assert_frame_equal(table[list(TRACE_COLUMNS)], plain)
    for dancer in made.dancers:
        rows = table[table["performer"] == dancer.name]
        beats = drawn.tempo.beats_from_seconds(rows["seconds"].to_numpy())
        points = dancer.stage_points(beats)[0]
        assert_allclose(rows[more[:3]], points[6], atol=1e-7)
        assert_allclose(rows[more[3:]], points[7], atol=1e-7)


def test_a_flown_trace_of_a_rigid_prop_is_the_drawn_one():
    """A staff flies as drawn; of its two heads the first is told."""
    show = staged_show("kind: staff")
    table = pd.read_csv(io.StringIO(trace_csv(show, rate=2.0, flown=show)))
    for part in ("hand", "head"):
        own, other = ([f"{start}{part}_{axis}" for axis in "xyz"] for start in ("", "flown_"))
        assert_allclose(table[own], table[other], atol=0)
    assert list(table.columns[-3:]) == ["flown_head_x", "flown_head_y", "flown_head_z"]


def test_a_table_that_would_fill_the_memory_is_refused(traced):
    show, _ = traced
    with pytest.raises(InputError, match="rows, and 5,000,000 can be written"):
        trace_csv(show, rate=5_000_000 / show.song.duration / 7.9)  # of eight hands
