"""What many tests share: a hypothesis profile, and small casts made from the real laws."""

import importlib.util
import os

# As many workers as cores: threads within each would only stand in the others' way.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

from pathlib import Path
from types import SimpleNamespace

import numpy as np
import pytest
from hypothesis import settings

from sequencer.geometry.bodies import SIDES, Body
from sequencer.geometry.distances import segment_segment
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.parts import PARTS
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.motion.props.prop import Prop

settings.register_profile("ci", derandomize=True, deadline=None)
settings.load_profile("ci")


def course_of(name, parameters, *, side, body, beats=4.0, end=600.0, origin=0.0):
    from sequencer.motion.patterns.library import law_for
    from sequencer.motion.trajectories.trajectory import Span, Trajectory

    law = law_for(name, parameters, side=side, body=body, beats=beats)
    return Trajectory((Span(start=0.0, end=end, law=law, origin=origin, kind="block", label=name),))


def dancer(
    name="Ada",
    place=(0.0, 3.0),
    *,
    facing=0.0,
    moves=(),
    ratio=3.0,
    plane="wall",
    hand_radius=0.3,
    start=-90.0,
    beats=4.0,
    tether=0.6,
    flame=0.3,
    lit=((0.0, 64.0),),
    stature=1.7,
    sides=SIDES,
    end=600.0,
):
    """One performer whose two hands dance the same orbit."""
    body = Body(stature=stature)
    prop = Prop(length=tether, mass=0.2, wick_radius=0.05, flame_reach=flame)
    given = {"ratio": ratio, "hand_radius": hand_radius, "plane": plane, "from": start}
    return Dancer(
        name=name,
        body=body,
        props=dict.fromkeys(sides, prop),
        trajectories={
            side: course_of("orbit", given, side=side, body=body, beats=beats, end=end)
            for side in sides
        },
        floor=WalkPath(tuple(place), facing, tuple(moves)),
        lit=tuple(lit),
    )


def random_cast(n, *, seed=0, beats=64, spacing=3.0):
    """Performers on a square grid who wander and dance random orbits."""
    draw = np.random.default_rng(seed)
    side = int(np.ceil(np.sqrt(n)))
    cast = []
    for k in range(n):
        home = np.array([(k % side) * spacing, (k // side) * spacing + 2.0])
        facing, moves = 0.0, []
        for beat in range(0, beats - 8, 16):
            facing += draw.uniform(-1.0, 1.0)
            x, y = home + draw.uniform(-0.6, 0.6, 2)
            moves.append(Move(start=beat + 4.0, end=beat + 10.0, place=(x, y), facing=facing))
        cast.append(
            dancer(
                f"d{k}",
                tuple(home + draw.uniform(-0.2, 0.2, 2)),
                moves=moves,
                ratio=float(draw.choice([-3, -2, 1, 2, 3])),
                plane=str(draw.choice(["wall", "wheel", "floor"])),
                start=float(draw.uniform(0, 360)),
                lit=((8.0, float(beats) - 8.0),),
            )
        )
    return cast


def sampled_distance(first, second, beats):
    """Distance of two performers at instants, without any code of the search: the reference."""
    beats = np.asarray(beats)
    points = [each.stage_points(beats)[0] for each in (first, second)]
    radii = [each.shells(own, beats) for each, own in zip((first, second), points, strict=True)]
    out = np.full(len(beats), np.inf)
    for p, a in enumerate(PARTS):
        for q, b in enumerate(PARTS):
            gap = segment_segment(
                points[0][a.start], points[0][a.end], points[1][b.start], points[1][b.end]
            )[0]
            out = np.minimum(out, gap - radii[0][p] - radii[1][q])
    return out


@pytest.fixture(scope="session", autouse=True)
def own_cache(tmp_path_factory):
    """What is heard and searched here is not mixed with what the developer keeps; all workers share it."""
    mine = tmp_path_factory.getbasetemp()
    folder = (mine.parent if "PYTEST_XDIST_WORKER" in os.environ else mine) / "cache"
    folder.mkdir(exist_ok=True)
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(folder))
        yield folder


@pytest.fixture(scope="session")
def dance():
    """Makers of performers, and a reference for their distance."""
    return SimpleNamespace(
        course_of=course_of,
        dancer=dancer,
        random_cast=random_cast,
        sampled_distance=sampled_distance,
    )


@pytest.fixture(scope="session")
def rounds():
    """Shows and reports for tests of what is printed (tests/golden/rounds.py)."""
    return _module("golden/rounds.py")


@pytest.fixture(scope="session")
def pages():
    """Readers of printed pages (tests/golden/pages.py)."""
    return _module("golden/pages.py")


def _module(name):
    path = Path(__file__).parent / name
    spec = importlib.util.spec_from_file_location(f"tests_{path.stem}", path)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


_machine = _module("browser/machine.py")
playwright_driver, browser, flat_browser = (
    _machine.playwright_driver, _machine.browser, _machine.flat_browser,
)  # fmt: skip
quartet, opened = _machine.quartet, _machine.opened
