"""Each check reads only the parts of a show that it declares: what it does not depend on may change without it.

Reference: the reads themselves, noted while the check runs on a show with every heading and nothing kept.
"""

from dataclasses import replace
from pathlib import Path

import pytest

from sequencer import tasks
from sequencer.checks.registry import BUILT_IN
from sequencer.motion.performers.dancer import Dancer
from sequencer.show.model import Show
from sequencer.staging.carrying import HEADINGS
from sequencer.staging.results import SHOW_PARTS, OfParts
from sequencer.staging.staged import Staged

SHOWS = Path(__file__).resolve().parents[3] / "shows"
PART_OF = {  # what is read, and the part of a show that it belongs to; all else belongs to no part
    **{(Show, heading): part for heading, part in HEADINGS.items()},
    (Staged, "blocks"): "trajectories",
    (Staged, "standings"): "places",
    (Staged, "lit"): "burns",
    (Staged, "venue"): "venue",
    (Staged, "read"): "everything",
    (Dancer, "trajectories"): "trajectories",
    (Dancer, "deviation"): "trajectories",
    (Dancer, "body"): "bodies",
    (Dancer, "props"): "bodies",
    (Dancer, "carriage"): "bodies",
    (Dancer, "floor"): "places",
    (Dancer, "lit"): "burns",
}


@pytest.fixture(scope="module")
def show():
    found = tasks.stage_show(SHOWS / "lantern_round.yaml")
    unsure = replace(
        found.song, unsteady=((0.0, found.song.duration),)
    )  # so that nothing is skipped
    return replace(found, song=unsure)


@pytest.fixture
def noted(monkeypatch):
    """Parts that have been read."""
    parts = set()
    for cls in (Show, Staged, Dancer):
        plain = cls.__getattribute__

        def read(self, name, cls=cls, plain=plain):
            if (cls, name) in PART_OF:
                parts.add(PART_OF[cls, name])
            return plain(self, name)

        monkeypatch.setattr(cls, "__getattribute__", read)
    return parts


CHECKS = [check for check in BUILT_IN if not check.on_request]


@pytest.mark.parametrize("check", CHECKS, ids=lambda check: check.name)
def test_a_check_reads_only_parts_that_it_declares(show, noted, check):
    again = replace(show)
    noted.clear()
    check.outcome(again)

    assert noted - {"everything"} <= set(check.depends_on)
    if "trajectories" not in check.depends_on:
        assert "everything" not in noted


def test_a_result_that_checks_share_reads_only_parts_that_it_declares(show, noted):
    again = replace(show)
    for check in CHECKS:
        check.outcome(again)
    shared = [key for key in again.results if isinstance(key, OfParts)]

    assert len(shared) >= 4
    for key in shared:
        fresh = replace(show)
        noted.clear()
        key.work(fresh)
        assert noted <= set(key.depends_on), key


def test_a_part_is_read_by_some_check(show, noted):
    """Else the notes would miss it, and the tests above pass whatever is declared."""
    again = replace(show)
    noted.clear()
    for check in CHECKS:
        check.outcome(again)

    assert noted == set(SHOW_PARTS) | {"everything"} or noted == set(SHOW_PARTS)
