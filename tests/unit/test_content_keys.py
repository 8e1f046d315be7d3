"""Content keys: the same for equal values, another for anything else, and for any other code."""

import struct
from pathlib import Path

import numpy as np

from sequencer import content_keys
from sequencer.content_keys import content_key
from sequencer.geometry.bodies import Body
from sequencer.geometry.walking import WalkableFloor
from sequencer.motion.props.prop import Prop
from sequencer.motion.trajectories.one_link.link_limits import LinkLimits

DIFFERENT = [
    (), (None,), (0,), (1,), (True,), (0.0,), (-0.0,), (1.0,), ("",), ("1",), (b"1",), ((),), ((), ()), ([1], 2),
    ([1, 2],), ([1.0, 2.0],), ([1.0, 2],), ([1.0], [2.0]), ([[1.0], [2.0]],), ([[1], 2],), ("a", "b"), ("ab", ""), ({"a": 1},), ({"b": 1},), ({"a": 1, "b": 1},), (float("nan"),),
    (np.zeros(2),), (np.zeros((2, 1)),), (np.zeros(2, dtype=np.int64),), (np.zeros(3),), (Body(stature=1.7),),
    (Body(stature=1.71),), (Prop(length=0.5, mass=0.2, wick_radius=0.05),), (LinkLimits(),),
    (LinkLimits(hand_speed=3.0),), (LinkLimits().__repr__,), (Body(stature=1.7).shoulder,),
]  # fmt: skip


def test_no_two_values_share_a_key():
    keys = [content_key(*values) for values in DIFFERENT]
    assert len(set(keys)) == len(keys)
    assert keys == [content_key(*values) for values in DIFFERENT]
    assert content_key({"a": 1, "b": 2}) == content_key({"b": 2, "a": 1})
    assert content_key([1, 2]) == content_key((1, 2))


def test_equal_values_share_a_key_whatever_they_were_made_of():
    """A text that Python holds once and one that it has just made, one object twice and two equal ones."""
    text, number, code = "a tether", 2.5, b"1234"
    again = " ".join(["a", text[2:]]), float("2.5"), bytes(bytearray(code))
    assert text is not again[0]
    for one, other in zip((text, number, code), again, strict=True):
        assert content_key(one, [one, one]) == content_key(other, [one, other])
        assert content_key((one, 1)) == content_key([other, 1])
        assert content_key((one, 1)) != content_key((one, 1.0))
        assert content_key((one, 1)) != content_key((one, True))


def test_numbers_of_one_list_are_not_those_of_several():
    """Nine lists of a number, and the one list of ten numbers whose bytes would be the same without its length."""
    several = [[float(k)] for k in range(9)]
    run = b"v".join(struct.pack("<d", k) for (k,) in several)
    one = [float(n) for n in np.frombuffer(run)]
    assert len(one) == 10
    assert content_key(*several) != content_key(one)


def test_formulas_are_all_the_code_that_computes(monkeypatch, tmp_path):
    """Every file of the packages, by content: one byte more and the hash is another."""
    top = Path(content_keys.__file__).parent
    named = {
        Path(str(file))
        for room in content_keys.COMPUTING
        for file in content_keys._files(top / room)
    }
    assert {
        top / "arrays.py",
        top / "timing" / "tempo.py",
        top / "motion" / "laws" / "carriage.py",
    } <= named
    assert {
        file for room in ("motion", "geometry", "timing") for file in (top / room).rglob("*.py")
    } <= named


def test_what_may_still_change_is_hashed_each_time():
    floor = WalkableFloor(obstacles=[((0.0, 0.0), (1.0, 0.0), (0.0, 1.0))])
    before = content_key(floor)
    floor.obstacles.append(((5.0, 5.0), (6.0, 5.0), (5.0, 6.0)))
    assert content_key(floor) != before
