"""What a body is asked to give, against published ranges of joints and a survey of bodies.

Ranges: American Academy of Orthopaedic Surgeons (Greene and Heckman, The Clinical Measurement of Joint
Motion, 1994). Shoulder: Kapandji, The Physiology of the Joints, volume 1. Bodies: ANSUR II, men, 50th and
95th percentiles. All three from memory, in degrees and mm.
"""

import numpy as np
import pytest
from numpy.testing import assert_allclose

from sequencer.geometry.bodies import Body
from sequencer.geometry.posture import RANGE_OF_MOTION, USED_ANGLES

RANGES = {
    "turn": (-45, 45),
    "lean": (-25, 80),
    "side": (-35, 35),
    "nod": (-45, 45),
    "tilt": (-45, 45),
}
STATURE = 1.7562  # the survey's mean man
CHEST, HIP, DEPTH = (
    (289, 320),
    (343, 378),
    (254.5, 297),
)  # breadths, and depth of the chest: mean, P95


@pytest.mark.parametrize("name", list(RANGES))
def test_postures_keep_well_within_the_range_of_the_joint(name):
    """No more than two thirds of what a turn can be, and less than half of any other angle."""
    assert_allclose(np.degrees(RANGE_OF_MOTION[name]), RANGES[name])
    share = 2 / 3 if name == "turn" else 0.45
    for used, possible in zip(np.degrees(USED_ANGLES[name]), RANGES[name], strict=True):
        assert 0 < used / possible <= share + 1e-9


def test_a_shoulder_gives_less_than_half_of_what_the_blade_glides():
    """15 cm from back to front and 10 cm at least up and down."""
    low, high = Body(stature=STATURE).shoulder_give

    assert high[1] - low[1] <= 0.15 * 0.61
    assert max(high[1], -low[1]) < 0.15 / 2
    assert high[2] - low[2] < 0.10 / 2


def test_the_trunk_lies_between_the_mean_and_the_95th_percentile():
    """Breadth of chest and hips and depth of the chest: one standard deviation above the mean."""
    depth, chest, hip = trunk_of(STATURE)
    for own, (mean, stout) in ((chest, CHEST), (hip, HIP), (depth, DEPTH)):
        assert mean / 1000 < own < stout / 1000


def trunk_of(stature):
    """Depth, and breadth at chest and hips, of the capsules themselves."""
    uprights = Body(stature=stature).trunk[:4]
    broad = [2 * (abs(capsule.start[0]) + capsule.radius) for capsule in uprights]
    return 2 * uprights[0].radius, broad[0], broad[2]


# Sample subjects of the yeadon package, version 2.0.1, BSD licence (misc/samplemeasurements): ankle to hip,
# hip to acromion, acromion to crown; perimeter and breadth at hips (Ls0), umbilicus (Ls1), nipple (Ls3) [cm].
SUBJECTS = {
    "female1": (75.9, 51.4, 29.2, (87.6, 31.4), (73.7, 24.2), (84.0, 26.6)),
    "male1": (81.6, 50.2, 29.2, (86.9, 32.4), (75.0, 27.4), (80.6, 28.0)),
    "male2": (89.1, 60.5, 30.3, (109.8, 38.6), (105.1, 35.4), (106.3, 35.2)),
    "male3": (88.1, 54.5, 30.8, (97.0, 34.7), (86.5, 31.7), (90.5, 29.6)),
    "male4": (82.9, 59.6, 26.3, (98.0, 32.6), (87.4, 29.8), (97.2, 31.5)),
}
ANKLE = 0.039  # its height over stature, Drillis and Contini 1966, from memory


def excess(name):
    """By how much half a subject's breadth and depth exceed ours at hips, waist and chest, shape (3, 2) [cm]."""
    leg, back, head, *levels = SUBJECTS[name]
    depth, chest, hip = 100 * np.array(trunk_of((leg + back + head) / (1 - ANKLE) / 100))
    ours = np.array([(hip, depth), (hip, depth), (chest, depth)])
    # A stadium of perimeter p and breadth w is (p − 2w)/(π − 2) deep (Yeadon 1990, J. Biomechanics 23).
    theirs = np.array([(w, (p - 2 * w) / (np.pi - 2)) for p, w in levels])
    return (theirs - ours) / 2


@pytest.mark.parametrize("name", ["male1", "male3"])
def test_the_trunk_holds_measured_men(name):
    assert np.all(excess(name) <= 0)


def test_the_trunk_holds_three_of_four_measures_of_all_subjects():
    """Broad at hips and waist it holds all five, their depth to 4 mm; a deep or broad chest stands out by
    1.3 cm at most, as one standard deviation above the mean leaves it to one in six."""
    out = np.array([excess(name) for name in SUBJECTS])

    assert np.all(out[:, :2, 0] <= 0)
    assert np.all(out[:, :2, 1] <= 0.4)
    assert np.all(out[:, 2] <= 1.3)
    assert np.mean(out <= 0) >= 0.7
    assert np.mean(out) > -3.0  # nor is it far too fat
