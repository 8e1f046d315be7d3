"""Hearing: accuracy on a corpus whose truth is exact, and CPU time against librosa's, in one run.

    python benchmarks/hearing.py --corpus FOLDER [--tracks N] [--repaired] --json

FOLDER holds audio/NAME.ogg and truth/NAME.json with `beats`, `downbeats`, `meter` and `sections`. Measures of
mir_eval: beat F (70 ms), CMLt, AMLt, downbeat F, section borders F at 3 s. librosa counts every fourth beat as
a bar; its sections are its agglomerative segmentation with as many sections as were heard. CPU seconds are
of one core, imports excluded, first use included. With `--repaired`, beats of the truth that lie within a beat are left out (`truth.py`).
"""

import os

os.environ.update(OMP_NUM_THREADS="1", OPENBLAS_NUM_THREADS="1", NUMBA_NUM_THREADS="1")

import argparse
import json
import time
import warnings
from itertools import pairwise
from pathlib import Path

import mir_eval
import numpy as np
import soundfile  # noqa: F401  imports are no part of the time
from truth import repaired

from sequencer.listening.hearing import hear, song_json


def by_librosa(path, n_sections):
    """Beats and sections of librosa, and the CPU seconds of its beats."""
    import librosa

    begun = time.process_time()
    samples, rate = librosa.load(path)
    _, beats = librosa.beat.beat_track(y=samples, sr=rate, units="time")
    spent = time.process_time() - begun
    features = librosa.feature.mfcc(y=samples, sr=rate, n_mfcc=13)
    starts = [0.0]
    if len(beats) > n_sections > 1:
        frames = librosa.time_to_frames(beats, sr=rate)
        synced = librosa.util.sync(features, frames)
        edges = librosa.segment.agglomerative(synced, n_sections)
        at = np.concatenate([[0.0], beats])
        starts = sorted({float(at[min(e, len(at) - 1)]) for e in edges} | {0.0})
    told = {"beats": list(beats), "downbeats": list(beats[::4]), "meter": 4}
    return told | {"sections": [{"start": s} for s in starts]}, spent


def scores(truth, told):
    """Measures of one track."""
    reference, estimate = np.array(truth["beats"]), np.array(told["beats"])
    out = {"beat_f": 0.0, "cmlt": 0.0, "amlt": 0.0, "downbeat_f": 0.0}
    if len(estimate) > 1:
        _, cmlt, _, amlt = mir_eval.beat.continuity(reference, estimate)
        out |= {"beat_f": mir_eval.beat.f_measure(reference, estimate), "cmlt": cmlt, "amlt": amlt}
    if len(told["downbeats"]) > 1:
        downbeats = np.array(truth["downbeats"]), np.array(told["downbeats"])
        out["downbeat_f"] = mir_eval.beat.f_measure(*downbeats)
    out["metre"] = float(told["meter"] == truth["meter"])
    if truth["sections"]:
        end = max(reference[-1], estimate[-1] if len(estimate) else 0.0) + 1
        spans = []
        for side in (truth, told):
            edges = [s["start"] for s in side["sections"]] + [end]
            spans.append(np.array([(a, b) for a, b in pairwise(edges) if b > a + 1e-3]))
        out["border_f_3"] = mir_eval.segment.detection(*spans, window=3.0, trim=True)[2]
    return out


def mean(rows):
    """Means of all measures over tracks."""
    keys = sorted({key for row in rows for key in row})
    return {k: round(float(np.mean([r[k] for r in rows if k in r])), 4) for k in keys}


def main():
    """Print the table, or one JSON object."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--corpus", type=Path, required=True)
    parser.add_argument("--tracks", type=int, default=0, help="only every so many, to be quick")
    parser.add_argument("--repaired", action="store_true")
    parser.add_argument("--json", action="store_true")
    a = parser.parse_args()
    warnings.simplefilter("ignore")
    import librosa  # noqa: F401
    import scipy.signal  # noqa: F401
    import soxr  # noqa: F401

    ours, theirs, seconds, cpu, groups = [], [], 0.0, [0.0, 0.0], {}
    for number, path in enumerate(sorted((a.corpus / "truth").glob("*.json"))):
        if a.tracks and number % a.tracks:
            continue
        truth = json.loads(path.read_text(encoding="utf-8"))
        if a.repaired:
            truth["beats"] = repaired(truth["beats"]).tolist()
        audio = a.corpus / "audio" / f"{path.stem}.ogg"
        begun = time.process_time()
        song = hear(audio, use_cache=False)
        cpu[0] += time.process_time() - begun
        told, spent = by_librosa(audio, len(song.sections))
        cpu[1] += spent
        ours.append(scores(truth, song_json(song)))
        theirs.append(scores(truth, told))
        seconds += song.duration
        groups.setdefault(truth["kind"].split("-")[0], []).append((ours[-1], theirs[-1]))
    report = {
        "tracks": len(ours),
        "sequencer": mean(ours),
        "librosa": mean(theirs),
        "groups": {
            name: {
                "n": len(rows),
                "sequencer": mean([r[0] for r in rows]),
                "librosa": mean([r[1] for r in rows]),
            }
            for name, rows in groups.items()
        },
        "cpu_s_per_minute": {
            "sequencer": round(cpu[0] / seconds * 60, 3),
            "librosa": round(cpu[1] / seconds * 60, 3),
        },
        "cpu_ratio": round(cpu[0] / cpu[1], 2),
    }
    if a.json:
        print(json.dumps(report))
        return
    for name in ("sequencer", "librosa"):
        print(name, report[name], report["cpu_s_per_minute"][name], "CPU s a minute")


if __name__ == "__main__":
    main()
