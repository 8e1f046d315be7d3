"""`listen`: JSON, chart, clicks, taps."""

import json

import mir_eval
import numpy as np
import pytest
import soundfile as sf
from click.testing import CliRunner

from sequencer.cli import main


def run(*arguments):
    result = CliRunner().invoke(main, [str(argument) for argument in arguments])
    assert result.exit_code == 0, result.output
    return result


def test_json_has_the_agreed_names_and_right_beats(stage_folder):
    """Source of the measure: mir_eval's F-measure of beats (Davies, Degara and Plumbley, 2009)."""
    heard = json.loads(run("listen", stage_folder / "song.wav", "--json").stdout)
    assert {
        "track",
        "duration",
        "tempo",
        "meter",
        "beats",
        "downbeats",
        "sections",
        "confidence",
    } <= set(heard)
    assert heard["tempo"] == pytest.approx(120, abs=0.5)
    truth = np.arange(0.5, 39.5, 0.5)
    assert mir_eval.beat.f_measure(truth, np.array(heard["beats"])) > 0.97
    assert set(heard["downbeats"]) <= set(heard["beats"])
    assert heard["sections"][0]["start"] == 0
    assert heard["sections"][-1]["end"] == pytest.approx(heard["duration"], abs=1e-3)


def test_taps_win_and_clicks_lie_on_them_to_the_sample(stage_folder, tmp_path):
    taps = tmp_path / "taps.txt"
    taps.write_text(
        "\n".join(f"{t:.2f} {k % 3 + 1}" for k, t in enumerate(np.arange(1, 31, 0.75))), "utf-8"
    )
    out = tmp_path / "clicked.wav"
    heard = json.loads(
        run("listen", stage_folder / "song.wav", "--tap", taps, "--clicks", out, "--json").stdout
    )
    assert heard["meter"] == 3
    assert heard["tempo"] == pytest.approx(80)
    clicked, rate = sf.read(out)
    song, _ = sf.read(stage_folder / "song.wav")
    assert np.max(np.abs(clicked)) <= 10 ** (-1 / 20) + 1e-4
    quiet = np.abs(clicked / np.max(np.abs(clicked)) - song / np.max(np.abs(song)))
    start = round(1.75 * rate)  # between the song's own clicks
    assert np.max(quiet[start : start + 40]) > 0.05
    assert len(clicked) == len(song)


@pytest.mark.parametrize("ending", ["png", "svg", "pdf"])
def test_chart_is_the_same_bytes_each_time(stage_folder, tmp_path, ending):
    charts = [tmp_path / f"{k}.{ending}" for k in range(2)]
    for chart in charts:
        run("listen", stage_folder / "song.wav", "--chart", chart)
    assert charts[0].read_bytes() == charts[1].read_bytes()
    assert len(charts[0].read_bytes()) > 5_000


def test_a_chart_of_an_unknown_kind_is_refused(stage_folder, tmp_path):
    result = CliRunner().invoke(
        main, ["listen", str(stage_folder / "song.wav"), "--chart", str(tmp_path / "a.bmp")]
    )
    assert result.exit_code == 2
    assert "end the name in .png" in result.stderr
