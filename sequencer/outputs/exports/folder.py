"""Write everything that `rehearse` produces into one folder."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace
from fractions import Fraction
from pathlib import Path

from sequencer.arrays import Floats
from sequencer.errors import InputError, Place
from sequencer.findings import Report
from sequencer.given_files import is_given_file
from sequencer.outputs.exports.captions import write_captions
from sequencer.outputs.exports.cue_list import write_cue_list
from sequencer.outputs.exports.midi import write_midi
from sequencer.outputs.exports.midi_timecode import write_midi_timecode
from sequencer.outputs.exports.timetable import write_timetable
from sequencer.outputs.rehearsal import write_page
from sequencer.outputs.rehearsal.song_audio import Sound, embedded_track, linked, silent
from sequencer.outputs.sheets.page.wording import slug
from sequencer.outputs.sound.counts import COUNTED, Mix, mixed, played
from sequencer.outputs.sound.linear_timecode import write_timecode_sound
from sequencer.outputs.sound.recording import read_recording, write_recording
from sequencer.progress import Progress
from sequencer.staging.in_flight.flown_show import flown_show
from sequencer.staging.staged import Staged
from sequencer.timing.timecode import RATES, frame_labelled

_EXPORTS = ("page", "counts", "midi", "captions", "timetable")
_ON_DEMAND = ("timecode",)
CARRIED = ("embed", "link", "none")
DEFAULT_RATE = 44_100  # [Hz] sample rate of a count track without a song


@dataclass(frozen=True, slots=True, kw_only=True)
class ExportOptions:
    """What to write, and how."""

    parts: tuple[str, ...] = _EXPORTS
    audio: str = "embed"  # one of CARRIED: how the page carries the song
    speeds: tuple[float, ...] = (1.0,)  # one count track each
    mix: Mix = field(default_factory=Mix)
    small: bool = False  # whether count tracks are MP3, for phones, instead of WAV
    each: bool = False  # whether everybody gets count tracks of their changes
    flown: bool = False  # whether the page dances the show as it can be flown
    timecodes: tuple[str, ...] = ("25",)  # of RATES, for the part `timecode`
    code_from: str = "00:00:00:00"  # the label of the frame that begins with the track

    def __post_init__(self) -> None:
        known = _EXPORTS + _ON_DEMAND
        if not set(self.parts) <= set(known):
            raise ValueError(f"parts must be among {', '.join(known)}, got {self.parts!r}")
        if not set(self.timecodes) <= set(RATES):
            raise ValueError(f"time code must be among {', '.join(RATES)}, got {self.timecodes!r}")
        if self.audio not in CARRIED:
            raise ValueError(f"audio must be one of {', '.join(CARRIED)}, got {self.audio!r}")


def write_exports(
    staged: Staged,
    report: Report | None,
    track: Path | None,
    folder: Path,
    options: ExportOptions,
    *,
    progress: Callable[[str, float], None] | None = None,
) -> list[Path]:
    """Write page, count tracks and tables.

    Parameters
    ----------
    staged : Staged
    report : Report or None
        Findings to show on the page; only the page needs them.
    track : Path or None
        The song; with None or a missing file the page is silent and the count tracks hold clicks only.
    folder : Path
        Created if missing.
    options : ExportOptions
    progress : callable, optional

    Returns
    -------
    written : list of Path

    Raises
    ------
    InputError
        If the song cannot be read, a name in `options.mix.who` is not in the cast, there is no such time code, or
        the folder cannot be written.
    ValueError
        If a page is wanted without a report.
    """
    unknown = [name for name in options.mix.who if name not in staged.show.names]
    if unknown:
        raise InputError(
            "unknown-performer",
            Place("--for"),
            f"there is no {unknown[0]!r} in the cast",
            f"write one of {', '.join(staged.show.names)}",
        )
    starts = _starts_of_code(options)
    say = progress or (lambda _subject, _share: None)
    there = track if track is not None and is_given_file(track) else None
    written: list[Path] = []
    song = None if there is None else _SongFile(there, say)
    if "page" in options.parts:
        if report is None:
            raise ValueError("the page shows what a check found, and needs its report")
        say("drawing the page", 0.1)
        path = folder / "rehearsal.html"
        sound = _carried(song, path, options.audio)
        if options.flown:
            write_page(path, flown_show(staged).staged, report, sound, staged)
        else:
            write_page(path, staged, report, sound)
        written.append(path)
    if "counts" in options.parts:
        written += _write_counts(staged, song, folder, options, say)
    for name, first in starts.items():
        say(f"writing time code at {name} frames a second", 0.95)
        written += _write_timecode(staged, folder, name, first)
    written += _write_tables(staged, folder, options.parts)
    if "timetable" in options.parts:
        write_cue_list(folder / "cue-list.csv", staged, options.code_from)
        written.append(folder / "cue-list.csv")
    return written


def _starts_of_code(options: ExportOptions) -> dict[str, int]:
    """The frame that begins with the track, for each rate of time code that is written."""
    sounding = options.timecodes if "timecode" in options.parts else ()
    listed = (
        ("30",) if "timetable" in options.parts else ()
    )  # which has every label that any rate has
    found = {}
    for name in (*sounding, *listed):
        try:
            found[name] = frame_labelled(options.code_from, RATES[name])
        except ValueError as error:
            raise InputError(
                "timecode", Place("--code-from"), str(error), "write another one, such as 01:00:00:00"
            ) from error  # fmt: skip
    return {name: found[name] for name in sounding}


def _write_timecode(staged: Staged, folder: Path, name: str, first: int) -> list[Path]:
    """Time code of the track, or of a part from where its count track begins."""
    start, end = 0.0, staged.song.duration
    if staged.part is not None:
        start = max(0.0, staged.seconds(staged.part.start - COUNTED))
        end = staged.seconds(staged.part.end)
    sound, midi = folder / f"timecode-{name}.wav", folder / f"timecode-{name}.mid"
    write_timecode_sound(sound, first, Fraction(start), Fraction(end), RATES[name])
    write_midi_timecode(midi, first, Fraction(start), Fraction(end), RATES[name])
    return [sound, midi]


def _write_counts(
    staged: Staged, song: "_SongFile | None", folder: Path, options: ExportOptions, say: Progress
) -> list[Path]:
    """Count tracks: one of each speed, or one of each speed for everybody whose changes are counted."""
    samples, rate = (None, DEFAULT_RATE) if song is None else song.read()
    chosen = options.mix.who or staged.show.names
    whose = [(name,) for name in chosen] if options.each else [options.mix.who]
    stems = _stems(chosen) if options.each else {}
    written: list[Path] = []
    for k, speed in enumerate(options.speeds):
        heard = None
        for n, who in enumerate(whose):
            share = (k + n / len(whose)) / len(options.speeds)
            say(f"mixing the count track at {speed:.0%}", 0.5 + 0.4 * share)
            mix = replace(options.mix, speed=speed, who=who)
            heard = played(samples, mix) if heard is None else heard
            parts = ["counts", *(stems[each] for each in who if options.each)]
            name = "-".join([*parts, *([] if speed == 1.0 else [f"{100 * speed:g}"])])
            path = folder / f"{name}.{'mp3' if options.small else 'wav'}"
            write_recording(
                path, mixed(staged, heard, rate, mix), rate, tags=_tags(staged, who, speed)
            )
            written.append(path)
    return written


def _stems(names: Sequence[str]) -> dict[str, str]:
    """Part of a file's name for each performer: no two alike, and none that looks like a speed."""
    found: dict[str, str] = {}
    for number, name in enumerate(names, start=1):
        stem = slug(name)
        while stem in found.values() or stem.rpartition("-")[2].isdigit():
            stem = f"{stem}-nr{number}"
        found[name] = stem
    return found


def _tags(staged: Staged, who: tuple[str, ...], speed: float) -> dict[str, str]:
    """What a phone shows of a count track."""
    title = " ".join(
        ["Counts", *(["for", ", ".join(who)] if who else []), *([] if speed == 1.0 else [f"at {speed:.0%}"])]
    )  # fmt: skip
    return {"title": title, "album": staged.show.title, "comment": f"version {staged.show.version}"}


class _SongFile:
    """The song's file, read once and only if somebody needs its samples."""

    def __init__(self, path: Path, say: Progress) -> None:
        self.path = path
        self._say = say
        self._read: tuple[Floats, int] | None = None

    def read(self) -> tuple[Floats, int]:
        """Samples and rate; see `read_recording`."""
        if self._read is None:
            self._say("reading the song", 0.4)
            self._read = read_recording(self.path)
        return self._read


def _carried(song: _SongFile | None, page: Path, how: str) -> Sound:
    if song is None:
        return silent("The song file was not found; this page runs on a silent clock.")
    if how == "none":
        return silent("This page was made without the song and runs on a silent clock.")
    if how == "link":
        return linked(song.path, page)
    return embedded_track(song.path, song.read)


def _write_tables(staged: Staged, folder: Path, parts: tuple[str, ...]) -> list[Path]:
    writers = (
        ("midi", "cues.mid", write_midi),
        ("captions", "captions.vtt", write_captions),
        ("timetable", "timetable.csv", write_timetable),
        ("timetable", "timetable.json", write_timetable),
    )
    written = []
    for part, name, write in writers:
        if part in parts:
            write(folder / name, staged)
            written.append(folder / name)
    return written
