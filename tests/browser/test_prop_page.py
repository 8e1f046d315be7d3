"""Props of every shape on the rehearsal page: each wick where the laws put it."""

from math import radians

import numpy as np
import pytest

from sequencer.geometry.bodies import Body
from sequencer.motion.patterns.library import law_for
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.trajectory import Span, Trajectory

STAFF = Prop(kind="staff", length=0.8, behind=0.6, mass=0.8, wick_radius=0.04, flame_reach=0.3)
FAN = Prop(
    kind="fan",
    length=0.4,
    mass=0.5,
    wicks=5,
    spread=radians(120),
    wick_radius=0.03,
    flame_reach=0.2,
)
HOOP = Prop(kind="hoop", length=0.85, mass=0.6, wicks=4, wick_radius=0.03, flame_reach=0.2)
CLUB = Prop(kind="club", length=0.45, behind=0.1, mass=0.35, wick_radius=0.04, flame_reach=0.2)


def _dancer(name, x, props, pattern):
    body = Body(stature=1.7)
    trajectories = {
        side: Trajectory(
            (
                Span(
                    start=0.0, end=8.0, law=law_for(pattern, {}, side=side, body=body), origin=0.0,
                    kind="block", label=pattern,
                ),
            )
        )
        for side in props
    }  # fmt: skip
    floor = WalkPath((x, 3.0), 0.5, (Move(start=1.0, end=5.0, place=(x, 4.0), facing=-1.0),))
    return Dancer(
        name=name, body=body, props=props, trajectories=trajectories, floor=floor, lit=((0.0, 8.0),)
    )


@pytest.fixture(scope="module")
def shapes(tmp_path_factory):
    from sequencer.outputs.patterns.one_pattern import one_pattern
    from sequencer.outputs.rehearsal.page_data import cast_document
    from sequencer.outputs.rehearsal.page_file import page_from_document
    from sequencer.outputs.rehearsal.pattern import pattern_document
    from sequencer.outputs.rehearsal.song_audio import silent

    cast = (
        _dancer("Ada", -3.0, {"right": STAFF}, "anti-bend-4"),
        _dancer("Bo", 0.0, {"left": FAN, "right": FAN}, "two-beat-weave"),
        _dancer("Cy", 3.0, {"left": HOOP, "right": CLUB}, "pro-bend-4"),
    )
    document = pattern_document(one_pattern("extension", tempo=60.0))
    entries, keys, error = cast_document(cast, -8.0, 16.0)
    for entry in entries:
        entry["lit"] = [[0.0, 8.0]]
    document.update(cast=entries, keys=keys, kind="show")
    path = tmp_path_factory.mktemp("shapes") / "shapes.html"
    path.write_text(page_from_document(document, silent("")), encoding="utf-8")
    return cast, path, error


@pytest.mark.parametrize("kind", ["browser", "flat_browser"])
def test_every_wick_is_where_the_laws_put_it(request, shapes, opened, kind):
    """Within 2 mm, drawn in space or as a plan; no complaint of the page."""
    cast, path, error = shapes
    assert error < 2e-3
    worst, wicks = 0.0, 0
    with opened(request.getfixturevalue(kind), path, viewport=opened.SMALL) as there:
        for second in (0.3, 1.7, 2.9):
            beat = there.page.evaluate("t => rehearsal.tempo.beatAt(t)", second)
            shown = there.page.evaluate("t => rehearsal.positions(t)", second)
            for dancer, one in zip(cast, shown, strict=True):
                assert one["name"] == dancer.name
                for side, true in dancer.wick_places(beat).items():
                    drawn = np.array(one["heads"][side])
                    worst = max(worst, np.linalg.norm(drawn - true, axis=-1).max())
                    wicks += len(drawn)
        there.drawn()
        assert there.complaints == []
    assert wicks == 3 * (2 + 10 + 5)
    assert worst < 2e-3
