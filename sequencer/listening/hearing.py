"""From an audio file to a `Song`: the entry point of this package."""

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

import numpy as np

from sequencer.arrays import Floats
from sequencer.errors import InputError
from sequencer.listening import cache
from sequencer.listening.activations import activations_of
from sequencer.listening.beats import BeatCount, count_of
from sequencer.listening.signal.audio import (
    SAMPLE_RATE,
    AudioFile,
    is_audio_name,
    sha256_of,
    warning_of,
)
from sequencer.listening.signal.energy import energy_curve, loudness_curve, mean_energy
from sequencer.listening.signal.loudness_meter import integrated_loudness
from sequencer.listening.signal.onsets import brightness_of, onsets_of
from sequencer.listening.signal.spectra import Ear, Spectra
from sequencer.listening.song_form.sections import form_of
from sequencer.progress import Progress
from sequencer.timing.song import Section, Song
from sequencer.timing.tempo import median_tempo

_DECIMALS = 4  # decimals of seconds that are kept


def hear(path: Path, *, progress: Progress | None = None, use_cache: bool = True) -> Song:
    """Beats, bars, sections and energy of an audio file.

    Parameters
    ----------
    path : Path
        A wav, flac, ogg or mp3 file.
    progress : callable, optional
        Called with the current step and the overall fraction done, 0 … 1.
    use_cache : bool
        Use a cached result for the file's content; the result is cached in any case.

    Returns
    -------
    song : Song
        Without beats, and with the spans in `unsteady`, if no steady beat is found.

    Raises
    ------
    InputError
        If the file is not audio that can be read to its end, or is too short.
    """
    tell = progress or (lambda _what, _share: None)
    tell("reading", 0.0)
    digest = sha256_of(path)
    if use_cache and (known := cache.load(digest, track=path.name)):
        tell("this song was heard before", 1.0)
        return known
    spectra, powers = _spectra(path, tell)
    tell("finding the beat", 0.5)
    count = count_of(activations_of(spectra), spectra.duration, spectra.chroma)
    tell("finding the sections", 0.9)
    warning = warning_of(path)
    song = _song(path.name, digest, spectra, powers, count, (warning,) if warning else ())
    cache.store(song)
    tell("done", 1.0)
    return song


def heard_tracks(
    paths: Sequence[Path], *, jobs: int = -1, use_cache: bool = True
) -> Iterator[tuple[Path, Song | InputError]]:
    """Analyse many tracks in parallel; each yields its song, or the error that prevented it.

    Parameters
    ----------
    paths : sequence of Path
    jobs : int
        Number of processes; −1 for one per core. Inside `joblib.parallel_config` that backend is used.
    use_cache : bool

    Yields
    ------
    path, song : Path, Song or InputError
        In the order of `paths`.
    """
    from joblib import Parallel, delayed

    work = Parallel(n_jobs=jobs, return_as="generator")
    songs = work(delayed(_heard_or_not)(path, use_cache) for path in paths)
    yield from zip(paths, songs, strict=True)


def tracks_in(folder: Path) -> list[Path]:
    """Audio files of a folder, by name; subfolders are not searched."""
    return sorted(path for path in folder.iterdir() if path.is_file() and is_audio_name(path))


def _heard_or_not(path: Path, use_cache: bool) -> Song | InputError:
    try:
        return hear(path, use_cache=use_cache)
    except InputError as error:
        return error


def song_json(song: Song, path: Path | None = None) -> dict[str, Any]:
    """The output of `listen --json`; `path`, if given, names the track."""
    return {
        "track": str(path) if path is not None else song.track,
        "sha256": song.sha256,
        "duration": song.duration,
        "tempo": song.tempo,
        "meter": song.metre,
        "beats": list(song.beats),
        "downbeats": list(song.downbeats),
        "count_in": song.count_in,
        "sections": [
            {
                "start": s.start,
                "end": s.end,
                "label": s.label,
                "energy": s.energy,
                "variant": s.variant,
                "confidence": s.confidence,
            }
            for s in song.sections
        ],
        "turns": [{"start": at, "confidence": share} for at, share in song.turns],
        "confidence": dict(song.confidence),
        "bar_confidence": list(song.bar_confidence),
        "readings": [
            {"tempo": r.tempo, "meter": r.metre, "share": r.share, "shift": song.shift_of(r)}
            for r in song.readings
        ],
        "unsteady": [list(span) for span in song.unsteady],
        "warnings": list(song.warnings),
        "energy": list(song.energy),
        "integrated_lufs": song.integrated,
    }


def _spectra(path: Path, tell: Progress) -> tuple[Spectra, Floats]:
    """Spectra of the file, of the first channel only if mixing would cancel the music; and the power of all channels."""
    expected = _expected_duration(path)
    for channel in (None, 0):
        track = AudioFile(path, channel)
        ear = Ear()
        for block in track.blocks():
            ear.take(block)
            tell("listening", 0.5 * min(1.0, track.duration / expected))
        if not track.cancels:
            break
    powers = track.meter.powers() if track.meter is not None else np.zeros(0)
    return ear.spectra(track.duration), powers


def _expected_duration(path: Path) -> float:
    """Duration in seconds estimated from the file size; used only for progress."""
    rate = {".mp3": 24_000, ".ogg": 16_000, ".opus": 16_000, ".flac": 90_000}
    return max(path.stat().st_size / rate.get(path.suffix.lower(), 8 * SAMPLE_RATE), 1.0)


def _song(
    name: str,
    digest: str,
    spectra: Spectra,
    powers: Floats,
    count: BeatCount,
    warnings: tuple[str, ...],
) -> Song:
    energy = energy_curve(spectra.loudness, spectra.duration)
    form = form_of(spectra, count.downbeats)
    levels = [mean_energy(energy, spectra.duration, s.start, s.end) for s in form.parts]
    onsets, strengths = onsets_of(spectra)
    beats = np.round(count.beats, _DECIMALS)
    confidence = _confidence(count)
    return Song(
        track=name,
        sha256=digest,
        duration=round(spectra.duration, _DECIMALS),
        tempo=round(median_tempo(beats), 2),
        metre=count.metre,
        beats=tuple(beats.tolist()),
        downbeats=tuple(np.round(count.downbeats, _DECIMALS).tolist()),
        sections=tuple(
            Section(
                start=round(s.start, _DECIMALS),
                end=round(s.end, _DECIMALS),
                label=s.label,
                energy=round(level, 3),
                variant=s.variant,
                confidence=round(s.confidence, 3),
            )
            for s, level in zip(form.parts, levels, strict=True)
        ),
        turns=tuple((round(at, _DECIMALS), round(share, 3)) for at, share in form.turns),
        energy=tuple(np.round(energy, 3).tolist()),
        loudness=tuple(np.round(loudness_curve(spectra.loudness), 1).tolist()),
        integrated=round(integrated_loudness(powers), 1),
        brightness=tuple(np.round(brightness_of(spectra), 3).tolist()),
        onsets=tuple(np.round(onsets, 2).tolist()),
        onset_strengths=tuple(np.round(strengths, 2).tolist()),
        confidence=confidence,
        bar_confidence=tuple(np.round(count.confidence, 3).tolist()),
        readings=count.readings,
        unsteady=count.unsteady,
        count_in=count.count_in,
        warnings=warnings,
    )


def _confidence(count: BeatCount) -> dict[str, float]:
    if not len(count.beats):
        return {"beats": 0.0, "downbeats": 0.0, "metre": 0.0}
    return {
        "beats": round(float(np.mean(count.beat_confidence)), 3),
        "downbeats": round(float(np.mean(count.confidence)), 3),
        "metre": round(float(count.metre_confidence), 3),
    }
