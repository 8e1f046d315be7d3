"""Key samples against the laws that they stand for."""

import base64
import json
import zlib

import numpy as np
import pytest
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.outputs.rehearsal.keys import (
    GOAL,
    KeySamples,
    floor_track,
    lagrange,
    measured_error,
    packed,
    prop_track,
    read_points,
    recorded,
    restored,
)
from sequencer.outputs.rehearsal.page_data import cast_document


@pytest.fixture(scope="module")
def staged(rounds, tmp_path_factory):
    return rounds.show(tmp_path_factory.mktemp("keys"))


def tracks_of(dancer, start=-8.0, end=400.0):
    own = {"floor": floor_track(dancer.floor, dancer.reach, start, end)}
    own |= {
        side: prop_track(dancer.trajectories[side], dancer.props[side].length, start, end)
        for side in dancer.props
    }
    return own


def test_lagrange_is_exact_for_degree_five():
    f = np.linspace(0, 1, 11)
    for degree in range(6):
        assert_allclose(lagrange(f) @ np.arange(-2.0, 4.0) ** degree, f**degree, atol=1e-12)


def test_hands_and_heads_lie_within_two_millimetres(staged):
    """Looked at with instants that are not those at which the samples were chosen."""
    rng = np.random.default_rng(11)
    for dancer in staged.dancers:
        own = tracks_of(dancer)
        beats = np.sort(rng.uniform(0.0, 390.0, 20_000))
        points, _ = dancer.stage_points(beats)
        read = read_points(dancer, own, beats)
        for side, first in (("left", 3), ("right", 6)):
            true = np.stack([points[first], points[first + 1]], axis=1)
            assert np.max(np.linalg.norm(read[side] - true, axis=-1)) < 2e-3
        assert measured_error(dancer, own, 0.0, 390.0) < 2e-3


def test_planes_are_those_of_the_laws(staged):
    dancer = staged.dancers[0]
    beats = np.linspace(20.0, 300.0, 5000)
    true = dancer.trajectories["left"].at(beats).plane
    read = tracks_of(dancer)["left"].at(beats)[:, 6:]

    assert np.max(np.linalg.norm(read - true, axis=-1)) < 0.08


def test_a_prop_at_rest_costs_next_to_nothing(staged):
    track = tracks_of(staged.dancers[0], start=-80.0, end=0.0)["left"]

    assert sum(track.intervals[:8]) <= 8


def test_what_is_packed_can_be_unpacked():
    """Second differences wrap in 16 bits; summing them up again must give the same samples."""
    rng = np.random.default_rng(2)
    samples = rng.integers(-32_768, 32_767, (2, 14), dtype=np.int16)
    track = KeySamples(
        start=0.0, intervals=(8,), steps=(1.0, 1.0), bases=(0.0, 0.0), samples=samples.ravel()
    )
    planes = np.frombuffer(zlib.decompress(base64.b64decode(packed([track])), -15), dtype=np.uint8)
    words = planes[:28].astype(np.int64) | (planes[28:].astype(np.int64) << 8)
    second = (words >> 1) ^ -(words & 1)

    back = np.zeros((2, 14), dtype=np.int64)
    for row, own in enumerate(second.reshape(2, 14)):
        slope = np.concatenate([[own[0]], np.cumsum(own[1:])])
        back[row] = np.cumsum(slope)
    assert_array_equal(back.astype(np.int16), samples)


def test_a_dancer_who_turns_many_times_is_still_drawn(dance):
    from sequencer.motion.performers.walks import Move

    spun = dance.dancer(
        moves=[Move(start=8.0, end=16.0, place=(3.0, 3.0), facing=20 * np.pi)], end=64.0
    )
    cast, _, error = cast_document((spun,), 0.0, 64.0)

    assert error < 2e-3
    assert max(cast[0]["tracks"]["floor"]["intervals"]) > 8


def test_spans_of_a_flown_hand_are_those_that_are_drawn():
    """Blocks and links are of the show's file; where the hand goes in them is flown."""
    from tests.unit.staging.in_flight.test_flown_show import flown, staged_show

    made = flown().staged.dancers
    cast, _, error = cast_document(made, 4.0, 20.0)
    drawn = cast_document(staged_show().dancers, 4.0, 20.0)[0]
    assert error < 2e-3
    for own, other in zip(cast, drawn, strict=True):
        assert own["spans"] == other["spans"]
        assert [kind for _, _, kind in own["spans"]["right"]] == ["rest", "link", "block", "link", "rest"]  # fmt: skip
        assert own["tracks"]["right"] != other["tracks"]["right"]


def test_what_is_too_fast_is_refused(dance):
    """Sixty turns of the prop a beat cannot be drawn within 2 mm, and that is said."""
    wild = dance.dancer(ratio=24.0, beats=0.2, end=64.0)
    with pytest.raises(ValueError, match="too fast to be drawn"):
        cast_document((wild,), 0.0, 64.0)


def test_a_large_stage_keeps_the_error_small(dance):
    from sequencer.motion.performers.walks import Move

    far = dance.dancer(
        place=(-30.0, 1.0), moves=[Move(start=4.0, end=60.0, place=(30.0, 9.0), facing=0.0)]
    )
    assert cast_document((far,), 0.0, 64.0)[2] < 2e-3
    assert GOAL < 1e-3


def test_a_track_comes_back_from_its_record_to_the_last_bit():
    samples = np.array([-32_768, -1, 0, 1, 32_767, 12], dtype=np.int16)
    track = KeySamples(
        start=-1 / 3, intervals=(1, 4), steps=(0.1, 1 / 30_000), bases=(0.0, -7.0), samples=samples
    )
    again = restored(json.loads(json.dumps(recorded(track))))
    assert (again.start, again.intervals, again.steps, again.bases) == (
        track.start, track.intervals, track.steps, track.bases,
    )  # fmt: skip
    assert again.samples.dtype == np.int16
    assert_array_equal(again.samples, samples)
