"""What many tests share: a hypothesis profile, and small casts made from the real laws."""

import atexit
import contextlib
import gc
import importlib.util
import os
import shutil
import sys
import tempfile
from itertools import zip_longest

# As many workers as cores: threads within each would only stand in the others' way.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
# Tests start hundreds of processes: each would compile the whole package again where nothing compiled may be written.
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
# What librosa compiles is kept by each worker for itself: two that write it into one place at once can leave code that crashes.
# It begins with what .ci/run has compiled, if that is there.
if "PYTEST_XDIST_WORKER" in os.environ:
    os.environ["NUMBA_CACHE_DIR"] = tempfile.mkdtemp(prefix="compiled-")
    with contextlib.suppress(OSError):
        shutil.copytree(f"{sys.prefix}/compiled", os.environ["NUMBA_CACHE_DIR"], dirs_exist_ok=True)
    atexit.register(shutil.rmtree, os.environ["NUMBA_CACHE_DIR"], ignore_errors=True)

from pathlib import Path
from types import SimpleNamespace

import numpy as np
import pytest
from hypothesis import settings

from sequencer.geometry.bodies import SIDES, Body
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.motion.props.prop import Prop

settings.register_profile("ci", derandomize=True, deadline=None)
settings.load_profile("ci")
# Seldom: nearly all that the tests make is free without it.
gc.set_threshold(20_000, 10, 10)


def trajectory_of(name, parameters, *, side, body, beats=4.0, end=600.0, origin=0.0):
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
            side: trajectory_of("orbit", given, side=side, body=body, beats=beats, end=end)
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


# Mean lengths of ANSUR II in mm, over the mean stature of 1756.2 mm: half the breadth over the shoulders with
# hanging arms, half that between the shoulder joints, the arm to the grip; the upper arm's radius at the 95th
# percentile of its girth, over 1756 mm; head length over two. Typed here again, so that the reference does
# not take a size from what it judges.
STATURE, OUTSIDE, JOINT, ARM, LIMB, HEIGHT = 1756.2, 510.4 / 2, 415.7 / 2, 684.3, 65.0, 1440.7
LEAST_ELBOW = 0.08  # [m] an elbow is never taken to lie nearer to its arm: `Body.elbow_room`
# Half the thickness of a chain or a spoke, of a staff, a club and a hoop's rim [m]; common practice.
THICK = {"poi": 0.01, "fan": 0.01, "staff": 0.015, "club": 0.025, "hoop": 0.012}


def sampled_distance(first, second, beats):
    """Distance of two upright performers, at instants: the reference for the search.

    It shares nothing with the search but the laws of the hands and the way over the floor, which tests of
    their own hold: bodies from the survey, a rotation by complex numbers, and the nearest points of two
    segments by the corners, edges and inside of their square of parameters.
    """
    beats = np.asarray(beats, dtype=float)
    capsules = [_capsules(each, beats) for each in (first, second)]
    out = np.full(len(beats), np.inf)
    for a, b, one in capsules[0]:
        for c, d, other in capsules[1]:
            out = np.minimum(out, _apart(a, b, c, d) - one - other)
    return out


# A test waits for a browser or a server in the first, searches or reckons for seconds in the second.
WAITING = ("tests/browser/", "tests/cli/test_open", "tests/cli/test_share")
WORKING = (
    "tests/browser/",
    "tests/cli/",
    "tests/unit/planning/",
    "tests/property/",
    "tests/benchmarks/",
)


@pytest.hookimpl(optionalhook=True)  # without xdist there is no such hook
def pytest_xdist_auto_num_workers():
    """Half as many again as there are cores, since many tests wait for a browser or a server."""
    cores = os.cpu_count() or 1
    return cores + cores // 2


def pytest_collection_modifyitems(items):
    """The long files first, those that wait between those that work, so that no worker is left alone with one at the end."""
    files = list(dict.fromkeys(item.path for item in items))
    names = {path: path.relative_to(Path(__file__).parents[1]).as_posix() for path in files}
    waiting = [path for path in files if names[path].startswith(WAITING)]
    working = [path for path in files if path not in waiting and names[path].startswith(WORKING)]
    first = [path for pair in zip_longest(waiting, working) for path in pair if path]
    rank = {path: k for k, path in enumerate(dict.fromkeys([*first, *files]))}
    items.sort(key=lambda item: rank[item.path])


def pytest_collection_finish():
    """What was collected stays to the end: the garbage collector need not look through it again and again."""
    gc.collect()
    gc.freeze()


@pytest.fixture(scope="session", autouse=True)
def own_cache(tmp_path_factory):
    """What is heard and searched here is not mixed with what the developer keeps; all workers share it."""
    mine = tmp_path_factory.getbasetemp()
    folder = (mine.parent if "PYTEST_XDIST_WORKER" in os.environ else mine) / "cache"
    folder.mkdir(exist_ok=True)
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(folder))
        yield folder


def _capsules(dancer, beats):
    """Ends (n, 3) [m, stage frame] and radius (n,) [m] of body, arms, props and heads."""
    size = dancer.body.stature
    outside, joint, arm, limb = (x * size / STATURE for x in (OUTSIDE, JOINT, ARM, LIMB))
    limb *= 1.7562 / 1.756
    stand = dancer.floor.at(beats)
    middle, turn = stand.place @ [1, 1j], np.exp(1j * stand.facing)

    def staged(own):
        # Facing the audience, body x is −X and body y is −Y.
        plan = middle - (own[:, 0] + 1j * own[:, 1]) * turn
        return np.stack([plan.real, plan.imag, own[:, 2]], axis=1)

    axis = np.zeros((len(beats), 3))
    out = [
        (
            staged(axis),
            staged(axis + np.array([0, 0, size - outside])),
            np.full(len(beats), outside),
        )
    ]
    burning = np.zeros(len(beats))
    for start, end in dancer.lit:
        burning[(start <= beats) & (beats <= end)] = 1.0
    for side, prop in dancer.props.items():
        hangs = [joint if side == "right" else -joint, 0.0, HEIGHT / STATURE * size]
        motion = dancer.trajectories[side].at(beats)
        off = [
            k.size * ((k.start <= beats) & (beats <= k.end)) for k in dancer.deviation.get(side, ())
        ]
        more = np.max([np.zeros(len(beats)), *off], axis=0)
        span = np.sqrt(((motion.hand - hangs) ** 2).sum(axis=1))
        elbow = np.sqrt(np.clip(arm**2 - span**2, 0.0, None)) / 2
        along, shaft, head, rear = _bodies(prop, burning)
        far, near = motion.hand + along * motion.tether, motion.hand - prop.behind * motion.tether
        places = [staged(each) for each in (axis + hangs, motion.hand, near, far)]
        out.append((places[0], places[1], limb + np.maximum(elbow, LEAST_ELBOW) + more))
        out.append((places[2], places[3], shaft + more))
        out.append((places[3], places[3], head + more))
        if prop.behind:
            out.append((places[2], places[2], rear + more))
    return out


def _bodies(prop, burning):
    """Where a prop's far ball lies [m from the hand]; radii [m] of its shaft, and of far and rear ball.

    A fan is held in a ball about the chord of its outer spokes, a hoop in one about its middle, and a
    narrow fan's spokes in a shaft as wide as the ball.
    """
    thick, wick = THICK[prop.kind], prop.wick_radius
    hot = wick + prop.flame_reach * burning
    if prop.kind == "fan":
        half = prop.spread / 2
        along, wide = prop.length * np.cos(half), prop.length * np.sin(half)
        return (
            along,
            thick + (wide if half < np.pi / 4 else 0.0),
            wide + np.maximum(hot, thick),
            hot,
        )
    if prop.kind == "hoop":
        wide = prop.length / 2
        return wide, thick, wide + np.maximum(hot, thick), hot
    return prop.length, thick, hot, hot if prop.kind == "staff" else thick


def _apart(a, b, c, d):
    """Distance of segments ab and cd, each end (n, 3): least over the square of parameters."""
    u, v, w = b - a, d - c, a - c
    uu, uv, vv, uw, vw = (_dots(*two) for two in ((u, u), (u, v), (v, v), (u, w), (v, w)))
    with np.errstate(divide="ignore", invalid="ignore"):
        det = uu * vv - uv * uv
        tries = [((uv * vw - vv * uw) / det, (uu * vw - uv * uw) / det)]
        for edge in (0.0, 1.0):
            tries.append((np.full_like(uu, edge), (vw + edge * uv) / vv))
            tries.append(((edge * uv - uw) / uu, np.full_like(uu, edge)))
    best = np.full(len(uu), np.inf)
    for each in tries:
        s, t = (np.clip(np.nan_to_num(share), 0.0, 1.0)[:, None] for share in each)
        between = w + s * u - t * v
        best = np.minimum(best, _dots(between, between))
    return np.sqrt(best)


def _dots(a, b):
    """Products (n,) of vectors (n, 3), row by row."""
    return np.einsum("ij,ij->i", a, b)


@pytest.fixture(scope="session")
def dance():
    """Makers of performers, and a reference for their distance."""
    return SimpleNamespace(
        trajectory_of=trajectory_of,
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
quartet, ticking_page, opened = _machine.quartet, _machine.ticking_page, _machine.opened


@pytest.fixture(autouse=True)
def nothing_allowed_before(monkeypatch):
    """What one test allows a show to read is not allowed in the next."""
    monkeypatch.setenv("SEQUENCER_ALLOW", "")
