"""`sequencer trace SHOW`: what is drawn and what is flown, side by side."""

import csv
import io
import math

from click.testing import CliRunner

from sequencer.cli import main
from sequencer.motion.trajectories.flown_path import flown_courses
from sequencer.tasks import print_outs
from tests.unit.staging.in_flight.test_flown_show import staged_show


def test_hand_and_head_are_a_tether_apart(tmp_path, monkeypatch):
    """Source: a tether neither stretches nor, where it is flown, goes slack; links are as drawn to spare their search."""
    monkeypatch.setattr(flown_courses, "flown_link", lambda *_: None)
    monkeypatch.setattr(print_outs, "stage_show", lambda _path, **_: staged_show())
    plain, both = (
        CliRunner().invoke(main, ["trace", str(tmp_path / "show.yaml"), "--rate", "2", *more])
        for more in (("--drawn",), ())
    )
    assert (plain.exit_code, both.exit_code) == (0, 0), both.output
    rows = list(csv.DictReader(io.StringIO(both.stdout)))
    assert len(rows) == len(list(csv.DictReader(io.StringIO(plain.stdout))))
    moved = 0.0
    for row in rows:
        hand, head, drawn = (
            [float(row[f"{part}_{axis}"]) for axis in "xyz"]
            for part in ("flown_hand", "flown_head", "hand")
        )
        assert abs(math.dist(hand, head) - 0.45) < 1e-6
        moved = max(moved, math.dist(hand, drawn))
    assert moved > 0.02  # the hand leaves the drawn path
