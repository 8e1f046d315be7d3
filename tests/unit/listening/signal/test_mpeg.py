"""MP3 files that lack a part, or say another length than they have: heard whole, and said in one line.

The encoder is that of libsndfile (LAME), which writes the count of frames itself.
"""

import sys
from contextlib import suppress

import numpy as np
import pytest
import soundfile

from sequencer.errors import InputError
from sequencer.listening.hearing import hear
from sequencer.listening.signal.audio import AudioFile, warning_of
from sequencer.listening.signal.mpeg import frames_of

FRAME = 1152 / 44100  # [s] ISO/IEC 11172-3: samples of a layer III frame
SECONDS = 12.0


def clicks():
    samples = np.zeros(int(SECONDS * 44100))
    t = np.arange(2600) / 44100
    for k, at in enumerate(np.arange(0.25, SECONDS - 0.1, 0.5)):
        start = int(at * 44100)
        pitch = 900 if k % 4 else 180
        samples[start : start + len(t)] += 0.6 * np.sin(2 * np.pi * pitch * t) * np.exp(-t * 60)
    return samples


@pytest.fixture(params=["CONSTANT", "VARIABLE"])
def whole(request, tmp_path):
    """A whole file, of constant or of variable bit rate."""
    path = tmp_path / "whole.mp3"
    with soundfile.SoundFile(
        path, "w", 44100, 1, format="MP3", subtype="MPEG_LAYER_III",
        bitrate_mode=request.param, compression_level=0.5,
    ) as file:  # fmt: skip
        file.write(clicks())
    return path


def claiming(whole, frames):
    content = bytearray(whole.read_bytes())
    tag = max(content[:200].find(b"Xing"), content[:200].find(b"Info"))
    assert tag > 0
    content[tag + 8 : tag + 12] = frames.to_bytes(4, "big")
    path = whole.with_name(f"claims-{frames}.mp3")
    path.write_bytes(content)
    return path


def decoded(path):
    track = AudioFile(path)
    return np.concatenate(list(track.blocks())), track.duration


def test_frames_of_a_whole_file_are_those_it_claims(whole):
    frames = frames_of(whole)

    assert frames.claimed == frames.found
    assert not frames.cut
    assert frames.found * frames.seconds == pytest.approx(SECONDS, abs=3 * FRAME)  # padding
    assert frames.seconds == pytest.approx(FRAME)
    assert warning_of(whole) is None


def test_a_tag_in_front_and_one_behind_are_no_frames(whole):
    tagged = whole.with_name("tagged.mp3")
    front = b"ID3\x04\x00\x00\x00\x00\x02\x01" + bytes(257)  # size 2·128 + 1 in seven-bit bytes
    tagged.write_bytes(front + whole.read_bytes() + b"TAG" + bytes(125))

    assert frames_of(tagged).found == frames_of(whole).found
    assert warning_of(tagged) is None


def test_a_file_cut_short_is_heard_as_far_as_it_goes_and_said(whole):
    content = whole.read_bytes()
    whole.write_bytes(content[: int(len(content) * 0.7)])

    song = hear(whole, use_cache=False)

    assert 6 < song.duration < 11
    assert song.tempo == pytest.approx(120, rel=0.02)
    (said,) = song.warnings
    assert "is truncated" in said
    assert "12.0 s" in said
    assert "\n" not in said


def holed(whole, start, size):
    content = bytearray(whole.read_bytes())
    content[start : start + size] = bytes(size)
    path = whole.with_name("hole.mp3")
    path.write_bytes(content)
    return path


@pytest.mark.parametrize("count", [True, False])
def test_a_hole_is_told_where_it_begins(whole, count):
    """With the number of frames in front or, by writers who leave it out, without."""
    if not count:
        content = whole.read_bytes()
        whole.write_bytes(content.replace(b"Info", b"none", 1).replace(b"Xing", b"none", 1))
    size = whole.stat().st_size
    path = holed(whole, size // 2, size // 20)

    frames, said = frames_of(path), warning_of(path)

    assert frames.broken
    assert 4.0 < frames.found * FRAME < 8.0
    assert f"damaged at 0:{frames.found * FRAME:04.1f}: nothing after that was heard" in said
    if count:
        assert decoded(path)[1] == pytest.approx(frames.found * FRAME, abs=2 * FRAME)


def test_zeros_up_to_the_end_are_no_hole(whole):
    size = whole.stat().st_size
    path = holed(whole, size // 2, size)
    assert not frames_of(path).broken
    assert "is truncated" in warning_of(path)


def test_a_file_cut_in_its_last_frame_is_said(whole):
    whole.write_bytes(whole.read_bytes()[:-60])

    assert "in the middle of a frame" in warning_of(whole)


def test_a_file_that_claims_less_is_heard_to_its_true_end(whole):
    """Decoders stop where the claim ends: a third of the song would be heard, and nothing said."""
    less = claiming(whole, 150)  # 3.9 s

    samples, duration = decoded(less)
    right, _ = decoded(whole)

    assert duration == pytest.approx(SECONDS, abs=0.06)
    n = min(len(samples), len(right))
    assert np.max(np.abs(samples[:n] - right[:n])) < 1e-4  # and at the same times
    assert "claims 3.9 s" in warning_of(less)


def test_a_file_that_claims_more_is_heard_to_its_end(whole):
    more = claiming(whole, 1_000_000)

    assert decoded(more)[1] == pytest.approx(SECONDS, abs=0.06)
    assert "header is wrong" in warning_of(more)


def test_other_files_are_not_judged(tmp_path):
    path = tmp_path / "a.wav"
    soundfile.write(path, clicks(), 44100)

    assert warning_of(path) is None
    assert frames_of(path) is None


def test_the_decoder_says_nothing_of_its_own_on_a_damaged_file(whole, capfd):
    """It writes to the descriptor, past Python: there is nothing but our own one line, if any."""
    content = bytearray(whole.read_bytes())
    for start in range(3000, len(content) - 400, 1700):
        content[start : start + 300] = bytes(300)
    path = whole.with_name("damaged.mp3")
    path.write_bytes(content)
    with soundfile.SoundFile(path) as file:  # as the library says it when nobody keeps it from that
        file.read()
    assert "Trying to resync" in capfd.readouterr().err
    with suppress(InputError):
        list(AudioFile(path).blocks())
    print("still heard", file=sys.stderr)  # noqa: T201
    assert capfd.readouterr().err == "still heard\n"
