"""The progress of a part within the whole."""

import pytest

from sequencer.progress import within


def test_a_part_goes_from_its_start_to_its_end():
    told = []
    part = within(lambda subject, share: told.append((subject, share)), 0.2, 0.6)
    for share in (0.0, 0.5, 1.0, 1.7, -1.0):
        part("a", share)
    assert [subject for subject, _ in told] == ["a"] * 5
    assert [share for _, share in told] == pytest.approx([0.2, 0.4, 0.6, 0.6, 0.2])


def test_nobody_watches_a_part_of_what_nobody_watches():
    assert within(None, 0.2, 0.6) is None
