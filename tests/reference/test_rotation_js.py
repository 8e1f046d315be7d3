"""Matrices that the page gives to three.js against scipy's rotations.

Source: scipy.spatial.transform.Rotation (B. Yao et al.), an independent implementation. Needs the
browser; skipped where there is none.
"""

import numpy as np
import pytest
from numpy.testing import assert_allclose
from scipy.spatial.transform import Rotation

DRAWN = "() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))"
MATRIX = """(name) => { const mesh = rehearsal.stage[name]; rehearsal.seek(90); return new Promise((done) =>
  requestAnimationFrame(() => requestAnimationFrame(() => done(Array.from(mesh.instanceMatrix.array))))); }"""


def matrices(page, name):
    """Instance matrices, shape (n, 4, 4); three.js stores columns."""
    flat = np.array(page.evaluate(MATRIX, name))
    return flat.reshape(-1, 4, 4).transpose(0, 2, 1)


@pytest.fixture(scope="module")
def seen(browser, quartet, opened):
    with opened(browser, quartet.mute) as there:
        yield there.page


def test_trunks_turn_with_the_facing(seen, quartet):
    """Body y is −Y at facing 0: the trunk is turned by the facing and half a turn."""
    beat = quartet.staged.tempo.beats_from_seconds(90.0)
    for dancer, matrix in zip(quartet.staged.dancers, matrices(seen, "torsos"), strict=True):
        facing = float(dancer.floor.at(beat).facing)
        turned = Rotation.from_euler("z", facing + np.pi).as_matrix()
        scale = np.linalg.norm(matrix[:3, :3], axis=0)
        assert_allclose(matrix[:3, :3] / scale, turned, atol=1e-4)
        assert_allclose(matrix[:2, 3], dancer.floor.at(beat).place, atol=1e-3)


def test_discs_lie_in_the_planes_of_the_laws(seen, quartet):
    """The ring's axis is n in the stage frame, its middle the hand, its radius the tether."""
    beat = quartet.staged.tempo.beats_from_seconds(90.0)
    rings = iter(matrices(seen, "rings"))
    for dancer in quartet.staged.dancers:
        turn = Rotation.from_euler("z", float(dancer.floor.at(beat).facing) + np.pi)
        points, _ = dancer.stage_points(beat)
        for side, hand in (("left", 3), ("right", 6)):
            matrix = next(rings)
            axis = turn.apply(dancer.trajectories[side].at(beat).plane)
            assert_allclose(matrix[:3, 2] / dancer.props[side].length, axis, atol=0.03)
            assert_allclose(matrix[:3, 3], points[hand], atol=2e-3)
            turned, _ = Rotation.align_vectors([axis], [[0, 0, 1]])
            assert_allclose(turned.apply([0, 0, 1]), axis, atol=1e-9)
            assert np.linalg.det(matrix[:3, :3]) > 0


def test_own_eye_looks_where_the_performer_faces(seen, quartet):
    beat = quartet.staged.tempo.beats_from_seconds(90.0)
    seen.keyboard.press("3")
    seen.evaluate(DRAWN)
    flat = np.array(seen.evaluate("rehearsal.stage.camera.matrixWorld.elements"))
    camera = flat.reshape(4, 4).T
    dancer = quartet.staged.dancers[0]
    facing = float(dancer.floor.at(beat).facing)
    ahead = Rotation.from_euler("z", facing + np.pi).apply([0, np.cos(-0.1), np.sin(-0.1)])

    assert_allclose(-camera[:3, 2], ahead, atol=1e-4)
    assert camera[2, 3] == pytest.approx(0.935 * dancer.body.stature, abs=1e-3)
