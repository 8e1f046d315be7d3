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


@pytest.fixture(scope="module")
def tracks(tmp_path_factory, stage_folder):
    """A folder of two songs, a file that is none, and a text beside them."""
    folder = tmp_path_factory.mktemp("tracks")
    samples, rate = sf.read(stage_folder / "song.wav")
    sf.write(folder / "b.wav", samples, rate)
    sf.write(folder / "a.flac", samples[: 20 * rate], rate)
    (folder / "broken.ogg").write_bytes(b"no sound")
    (folder / "notes.txt").write_text("no track", "utf-8")
    return folder


def listen_all(folder, *options):
    return CliRunner().invoke(main, ["listen", str(folder), "--jobs", "1", *options])


def test_a_folder_is_heard_in_one_table_and_a_bad_file_stops_nothing(tracks):
    result = listen_all(tracks)
    rows = result.stdout.splitlines()

    assert result.exit_code == 1  # done, and one file to be mended
    assert [row.split()[0] for row in rows[1:3]] == ["a.flac", "b.wav"]
    assert all("120.0" in row for row in rows[1:3])
    assert "2 tracks analysed, 1 could not be used" in rows[-1]
    faults = [line for line in result.stderr.splitlines() if line.startswith("error: ")]
    assert len(faults) == 1
    assert "broken.ogg" in faults[0]
    assert "notes.txt" not in result.output


def test_a_folder_as_json_holds_what_each_track_alone_gives(tracks, tmp_path):
    first, second = listen_all(tracks, "--json"), listen_all(tracks, "--json")
    record = json.loads(first.stdout)

    assert first.stdout == second.stdout
    assert record["tracks"][0] == json.loads(run("listen", tracks / "a.flac", "--json").stdout)
    assert [fault["code"] for fault in record["unusable"]] == ["track-not-audio"]


def test_charts_of_a_folder_are_named_after_its_tracks(tracks, tmp_path):
    listen_all(tracks, "--chart", str(tmp_path / "charts"))

    assert sorted(p.name for p in (tmp_path / "charts").iterdir()) == ["a.flac.png", "b.wav.png"]


def test_side_by_side_gives_the_same_as_one_after_the_other(tracks):
    alone = listen_all(tracks, "--json")
    two = CliRunner().invoke(main, ["listen", str(tracks), "--jobs", "2", "--again", "--json"])

    assert two.stdout == alone.stdout


def test_a_folder_without_a_track_is_bad_input(tmp_path):
    (tmp_path / "notes.txt").write_text("no track", "utf-8")
    result = listen_all(tmp_path)

    assert result.exit_code == 2
    assert "there is no audio file in this folder" in result.stderr


def test_a_folder_of_broken_files_is_bad_input(tmp_path):
    (tmp_path / "broken.ogg").write_bytes(b"no sound")

    assert listen_all(tmp_path).exit_code == 2


@pytest.mark.parametrize("option", [("--clicks", "x.wav"), ("--tap", "x.txt")])
def test_what_is_for_one_track_is_refused_for_a_folder(tracks, option):
    result = listen_all(tracks, *option)

    assert result.exit_code == 2
    assert "work on a single track" in result.stderr


def test_a_cluster_hears_a_folder_alike(tracks):
    distributed = pytest.importorskip("distributed")
    with distributed.LocalCluster(
        n_workers=1, threads_per_worker=1, processes=False, dashboard_address=None
    ) as cluster:
        asked = ["listen", str(tracks), "--json", "--again", "--cluster", cluster.scheduler_address]
        handed = CliRunner().invoke(main, asked)
    assert handed.stdout == listen_all(tracks, "--json").stdout


def test_the_summary_names_eights_levels_and_json_the_same(stage_folder):
    text = run("listen", stage_folder / "song.wav").stdout
    record = json.loads(run("listen", stage_folder / "song.wav", "--json").stdout)

    assert "eights" in text
    assert record["phrases"][0]["counts"] == 8
    assert record["phrases"][0]["start"] == record["downbeats"][0]
    assert {part["level"] for part in record["sections"]} <= {"high", "middle", "low"}
    assert sum(r["share"] for r in record["readings"]) == pytest.approx(1, abs=0.05)
