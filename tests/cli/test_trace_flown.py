"""`sequencer trace SHOW --flown`: what is drawn and what is flown, side by side."""

import csv
import io
import math

from click.testing import CliRunner

from sequencer.cli import main
from sequencer.motion.trajectories import flown_courses

STILL = "{from: 3.1, pattern: two-beat-weave, beats: 16}"
SHORT = "{from: 3.1, pattern: extension, beats: 4}"


def test_hand_and_head_are_a_tether_apart(stage_folder, tmp_path, monkeypatch):
    """Source: a tether neither stretches nor, where it is flown, goes slack; links are as drawn to spare their search."""
    monkeypatch.setattr(flown_courses, "_kept_link", lambda *_: None)
    text = (stage_folder / "show.yaml").read_text(encoding="utf-8").replace(STILL, SHORT)
    show = tmp_path / "show.yaml"
    show.write_text(text.replace("song.wav", str(stage_folder / "song.wav")), encoding="utf-8")
    plain, both = (
        CliRunner().invoke(main, ["trace", str(show), "--rate", "2", *more])
        for more in ((), ("--flown",))
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
        assert abs(math.dist(hand, head) - 0.55) < 1e-6
        moved = max(moved, math.dist(hand, drawn))
    assert moved > 0.01  # the hand leaves the drawn path, in the block alone
