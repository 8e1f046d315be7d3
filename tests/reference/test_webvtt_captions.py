"""The captions as an independent parser reads them.

Source: W3C, WebVTT, by way of webvtt-py, a parser and validator of that format.
"""

from itertools import pairwise

import pytest
import webvtt

from sequencer.outputs.exports.captions import timestamp, write_captions


@pytest.fixture(scope="module")
def staged(rounds, tmp_path_factory):
    return rounds.show(tmp_path_factory.mktemp("vtt"))


@pytest.fixture(scope="module")
def cues(staged, tmp_path_factory):
    path = tmp_path_factory.mktemp("vtt") / "captions.vtt"
    write_captions(path, staged)
    return webvtt.read(str(path)).captions


def test_cues_follow_each_other(cues):
    assert len(cues) > 10
    for before, after in pairwise(cues):
        assert before.end_in_seconds <= after.start_in_seconds + 1e-6
        assert before.start_in_seconds < before.end_in_seconds


def test_every_block_is_said_while_it_is_danced(staged, cues):
    for block in staged.blocks:
        middle = staged.seconds((block.start + block.end) / 2)
        now = [cue for cue in cues if cue.start_in_seconds <= middle < cue.end_in_seconds]
        assert len(now) == 1
        line = next(line for line in now[0].lines if line.endswith(f": {block.title}"))
        assert block.who in line or line.startswith("all:")


def test_cues_start_on_the_blocks_to_the_millisecond(staged, cues):
    starts = [cue.start_in_seconds for cue in cues]
    for block in staged.blocks:
        assert min(abs(start - staged.seconds(block.start)) for start in starts) < 1.0
    exact = {cue.identifier: cue.start for cue in cues}
    assert exact["25.1"] == "00:00:48.500"


def test_markup_in_a_name_is_escaped(rounds, tmp_path):
    """WebVTT, cue text: < & and the arrow must be escaped."""
    staged = rounds.show(tmp_path, rounds.ROUND.replace("Søren", '"<b>S --> n</b>"'))
    path = tmp_path / "captions.vtt"
    write_captions(path, staged)
    text = path.read_text(encoding="utf-8")

    assert "<b>" not in text
    assert "&lt;b&gt;S --&gt; n&lt;/b&gt;" in text
    assert len(webvtt.read(str(path)).captions) > 10


@pytest.mark.parametrize(
    ("seconds", "text"),
    [
        (3661.5, "01:01:01.500"),
        (59.9996, "00:01:00.000"),
        (3599.9996, "01:00:00.000"),
        (0.0, "00:00:00.000"),
    ],
)
def test_a_timestamp_carries(seconds, text):
    """Minutes and seconds run from 00 to 59, hours have at least two digits: 60:00.000 does not exist."""
    assert timestamp(seconds) == text
