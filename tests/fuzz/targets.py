"""What is fuzzed: each reader of a file that people give, with files that it takes to start from.

A case ends well if the reader takes the file, or refuses it with InputError: one line each, a place in the file where the
file is a text, letters that can be seen, and no more of them than anybody reads. Anything else is a bug.
"""

import re
import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import numpy as np

from sequencer.errors import InputError, InputErrors
from tests.fuzz import archives, options
from tests.fuzz.changes import changed_bytes, changed_text
from tests.made_archives import archive, entries

ROOT = Path(__file__).parents[2]
LONGEST_LINE = 1500  # letters
NO_LINE = {
    "empty-file", "too-deep", "taps-too-few", "taps-not-text", "midi-not-understood", "no-burns", "not-text",
    "no-file", "outside-folder", "taps-unreadable", "cannot-read", "track-damaged", "track-not-audio", "track-empty",
    "track-silent", "track-too-short", "track-not-finite", "track-too-long", "track-unreadable",
}  # fmt: skip


@dataclass(frozen=True)
class Target:
    """A reader, and files to start from."""

    name: str
    seeds: Callable[[], list[bytes]]
    read: Callable[[bytes], object]
    text: bool = True

    def case(self, seed: int) -> bytes:
        """The file of a case."""
        seeds = self.seeds()
        start = seeds[seed % len(seeds)]
        if not self.text:
            return changed_bytes(start, seed)
        if seed % 7 == 0:  # bytes that are no text, too
            return changed_bytes(start, seed)
        return changed_text(start.decode("utf-8"), seed).encode("utf-8", "surrogatepass")

    def run(self, seed: int) -> str:
        """'taken' or 'refused'.

        Raises
        ------
        AssertionError
            If it is refused in a way that helps nobody.
        Exception
            Whatever the reader lets out that it should not.
        """
        return self.judged(self.case(seed))

    def judged(self, content: bytes) -> str:
        """The same of any file."""
        try:
            self.read(content)
        except InputErrors as errors:
            for each in errors.errors:
                self._judge(each)
            return "refused"
        except InputError as error:
            self._judge(error)
            return "refused"
        return "taken"

    def _judge(self, error: InputError) -> None:
        line = str(error)
        assert line.isprintable(), f"not one line of letters that are seen: {line!r}"
        assert len(line) <= LONGEST_LINE, f"{len(line)} letters: {line[:200]}"
        assert error.what, line
        assert error.mend, line
        if self.text:
            assert error.place.line or error.code in NO_LINE, f"no line: {line}"


@dataclass(frozen=True)
class MadeTarget(Target):
    """A reader of files that are made from nothing, since a changed one would only be damaged."""

    made: Callable[[int], bytes] = archives.made_archive

    def case(self, seed: int) -> bytes:
        """The file of a case."""
        return self.made(seed)


class OptionTarget:
    """The command line, given words."""

    name = "options"
    text = True

    def seeds(self) -> list[bytes]:
        """It starts from the options that each verb has."""
        return []

    def case(self, seed: int) -> list[str]:
        """The words of a case."""
        return options.command_line(seed)

    def run(self, seed: int) -> str:
        """As `Target.run`."""
        return options.run(seed)


# --- shows ---


@cache
def _shows() -> list[bytes]:
    from tests.handled_show import SHOW as HANDLED

    names = ("night_ferry", "salt_wind", "wrong_turns", "lantern_round")
    shows = [(ROOT / "shows" / f"{name}.yaml").read_text(encoding="utf-8") for name in names]
    shows = [
        re.sub(r"(?m)^  sha256:.*\n", "", text.replace("../audio_samples/", "")) for text in shows
    ]
    short = [_shortened(text) for text in shows]
    return [
        text.encode() for text in (*short, *short, *short, shows[0], shows[-1], HANDLED, HANDLED)
    ]


def _shortened(text: str) -> str:
    """A show with the beginning of its timeline: more cases can be read in the same time, of the same kinds."""
    head, timeline, rest = re.split(r"(?ms)^(timeline:\n.*?)(?=^\w)", text, maxsplit=1)
    return head + "".join(re.split(r"(?m)^(?=  - )", timeline)[:13]) + rest


@cache
def _song():
    from tests.songs import even_song

    return even_song(500)


def _show(content: bytes) -> object:
    from sequencer.show.reading import show_from_document
    from sequencer.show.text.document import parse_document
    from sequencer.tasks.shows import stage_show

    text = _read_back(content, "show.yaml", _text)
    return stage_show(show_from_document(parse_document(text, "show.yaml")), song=_song())


def _text(path: Path) -> str:
    from sequencer.show.text.file_text import file_text

    return file_text(path)


# --- files beside a show ---


def _pattern_file(content: bytes) -> object:
    from sequencer.show.pattern_book import book_from_file

    return _read_back(content, "patterns.yaml", book_from_file)


def _rules(content: bytes) -> object:
    from sequencer.safety.rules.house_rules import read_house_rules

    return _read_back(content, "rules.yaml", read_house_rules)


def _burns(content: bytes) -> object:
    from sequencer.facts.burn_log import read_burn_log

    return _read_back(content, "burns.csv", read_burn_log)


def _practice_log(content: bytes) -> object:
    from sequencer.practice.log_reading import read_practice_log
    from tests.practice_show import ground

    return _read_back(content, "two.practice.csv", lambda path: read_practice_log(path, ground()))


def _taps(content: bytes) -> object:
    from sequencer.timing.taps import given_count

    return _read_back(content, "taps.txt", given_count)


def _midi(content: bytes) -> object:
    from sequencer.timing.taps import given_count

    return _read_back(content, "taps.mid", given_count)


def _audio(content: bytes) -> object:
    from sequencer.listening.signal.audio import AudioFile

    kinds = {b"RIFF": "wav", b"fLaC": "flac", b"OggS": "ogg"}
    kind = kinds.get(content[:4], "mp3")

    def heard(path: Path) -> int:
        return sum(len(block) for block in AudioFile(path).blocks())

    return _read_back(content, f"song.{kind}", heard)


def _read_back(content: bytes, name: str, read):
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / name
        path.write_bytes(content)
        return read(path)


PATTERNS = """\
patterns:
  small flower:                      # a law with some parameters fixed; the rest stays open
    law: orbit
    set: {ratio: -3, hand_radius: 25 cm}
    defaults: {plane: wheel}
    room: {across: [-5 cm, 30 cm]}
    summary: an antispin flower of four petals, close to the body
    difficulty: 2
    why: the hand goes against the prop
    needs: [extension]
    props: [poi, club, fan]
  two ways:
    left: {law: orbit, set: {ratio: -3}}
    right: {law: orbit, set: {ratio: 1}}
"""
RULES = """\
name: hall
title: Rules of the hall
rules:
  - {rule: audience-distance, value: 25 ft, source: "By-law 12, section 3, p. 4, 2026"}
  - {rule: spotters, value: {each: 1, least: 2}, source: "By-law 12, section 5"}
  - rule: wind-stop
    value: 8 m/s
    source: "letter of the fire marshal, 2026-05-02"
    override: {reference: L-7, by: Ada, reason: "fenced field, no dry grass"}
"""
BURNS = "performer,fuel,wick,burn,ended\nAsh,lamp-oil,cathedral,3:05,burnt out\nAsh,kerosene,cathedral,171,put out\n"
PRACTISED = """\
date,performer,what,from,until,speed,lit,tried,clean,burn,ended,fuel,drift,late,note
2026-11-02,Ada,extension into static-spin,6.1,8.1,60%,no,8,6,,,,"40 cm downstage, 10 cm stage left",,"windy, cold"
9.11.2026,Bo,the whole show,,,100,yes,1,1,4:05,put out,lamp oil,,-0.25,
"""
TAPS = "time,place\n" + "".join(f"{0.5 * k:.2f},{k % 4 + 1}\n" for k in range(40))


@cache
def _midis() -> list[bytes]:
    import io

    import mido

    file, track = mido.MidiFile(), mido.MidiTrack()
    track.append(mido.MetaMessage("set_tempo", tempo=500_000))
    track.append(mido.MetaMessage("time_signature", numerator=3, denominator=4))
    track.extend(mido.Message("note_on", note=60, time=240) for _ in range(40))
    track.append(mido.MetaMessage("time_signature", numerator=6, denominator=8, time=10))
    track.append(mido.Message("note_off", note=60, time=4800))
    file.tracks.append(track)
    out = io.BytesIO()
    file.save(file=out)
    return [out.getvalue()]


@cache
def _songs() -> list[bytes]:
    import io

    import soundfile

    t = np.arange(22_050 * 5) / 22_050
    samples = 0.3 * np.sin(2 * np.pi * 220 * t) * (np.mod(t, 0.5) < 0.1)
    found = []
    for kind, subtype in (
        ("WAV", "PCM_16"),
        ("WAV", "FLOAT"),
        ("FLAC", "PCM_16"),
        ("OGG", "VORBIS"),
        ("MP3", None),
    ):
        out = io.BytesIO()
        soundfile.write(out, samples, 22_050, format=kind, subtype=subtype)
        found.append(out.getvalue())
    return found


TARGETS = {
    target.name: target
    for target in (
        Target("show", _shows, _show),
        Target("patterns", lambda: [PATTERNS.encode()], _pattern_file),
        Target("rules", lambda: [RULES.encode()], _rules),
        Target("burns", lambda: [BURNS.encode()], _burns),
        Target("practice log", lambda: [PRACTISED.encode()], _practice_log),
        Target("taps", lambda: [TAPS.encode(), b"0.5\n1.0\n1.5\n2.0\n2.5\n"], _taps),
        Target("midi", _midis, _midi, text=False),
        Target("audio", _songs, _audio, text=False),
        MadeTarget("archive", lambda: [archive(entries())], archives.unpacked, text=False),
        OptionTarget(),
    )
}
