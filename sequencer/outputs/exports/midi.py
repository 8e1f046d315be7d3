"""The show as a Standard MIDI File: tempo map, bars, sections and blocks, for lighting and sound.

Format 1. A quarter note is a beat of the show; time 0 of the file is time 0 of the track. Anything
before the first beat is counted in bars of one quarter. Track 1 holds tempo, metre, and markers for bars
and sections; then comes one track per performer with a cue point at every block, stop and accent, lit and out as text, and
the same as notes, which programs show that hide texts: one note for each thing that is danced, named in a text at the
beginning. Performers take the channels in turn, but for the tenth, which is drums' in General MIDI.
Source: Standard MIDI Files 1.0, MIDI Manufacturers Association (RP-001); text is written as UTF-8,
which the standard neither names nor forbids.
"""

import math
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple, TypeAlias

from sequencer.files import replacing
from sequencer.outputs.words.block_words import block_words
from sequencer.staging.staged import Staged

TICKS = 960  # per quarter
_CHANNELS = (*range(9), *range(10, 16))
_LIT, _ACCENT, _FIRST = 36, 38, 60  # notes: C2, D2, and from middle C on what is danced
_VELOCITY = 96
_SLOWEST = 2**24 - 1  # [µs] per quarter, the most that a tempo event can hold


def write_midi(path: Path, staged: Staged) -> None:
    """Write the show as a Standard MIDI File.

    Raises
    ------
    InputError
        If the folder cannot be written.
    ValueError
        If two beats are more than 16.7 s apart, which no tempo event can hold.
    """
    with replacing(path) as scratch:
        midi_file(staged).save(scratch)


def midi_file(staged: Staged) -> Any:
    """The show as a mido.MidiFile.

    Raises
    ------
    ValueError
        If two beats are more than 16.7 s apart, which no tempo event can hold.

    Notes
    -----
    Tempo events are whole microseconds; the remainder is carried to the next beat, so that no beat
    is more than half a microsecond off, however long the song.
    """
    import mido

    file = mido.MidiFile(type=1, ticks_per_beat=TICKS, charset="utf-8")
    lead, tempos = _tempos(staged)
    shift = lead - staged.tempo.first  # quarters before beat 0

    def tick(beat: float) -> int:
        return max(0, round((beat + shift) * TICKS))

    def meta(kind: str, at: int, **values: Any) -> tuple[int, Any]:
        return at, mido.MetaMessage(kind, **values)

    end = tick(float(staged.tempo.beats_from_seconds(staged.song.duration)))
    count = [meta("track_name", 0, name=staged.show.title)]
    count += [meta("set_tempo", i * TICKS, tempo=tempo) for i, tempo in tempos]
    count += [
        meta("time_signature", at * TICKS, numerator=beats, denominator=4)
        for at, beats in _metres(staged, lead)
    ]
    for section, name in zip(staged.song.sections, staged.song.section_names(), strict=True):
        beat = float(staged.tempo.beats_from_seconds(section.start))
        count.append(meta("marker", tick(beat), text=f"section {name}"))
    bar = 1
    while tick(staged.tempo.bar_start(bar)) <= end:
        count.append(meta("marker", tick(staged.tempo.bar_start(bar)), text=f"bar {bar}"))
        bar += 1
    file.tracks.append(_track(mido, count, end))
    numbers = _numbers(staged)
    for k, name in enumerate(staged.show.names):
        events = [meta("track_name", 0, name=name), *_texts(mido, staged, name, tick)]
        spans = _spans(staged, name, numbers)
        used = {span.note for span in spans}
        said = ", ".join(f"{note} {title}" for title, note in numbers.items() if note in used)
        events += [meta("text", 0, text=f"notes: {said}")] if said else []
        events += _notes(mido, spans, tick, _CHANNELS[k % len(_CHANNELS)])
        file.tracks.append(_track(mido, events, end))
    return file


_Event: TypeAlias = tuple[int, Any]  # tick and message


def _texts(mido: Any, staged: Staged, name: str, tick: Callable[[float], int]) -> list[_Event]:
    """What a performer dances, as cue points and texts."""
    dancers = {dancer.name: dancer for dancer in staged.dancers}
    events = []
    for block in (*staged.blocks_of(name), *staged.stops_of(name)):
        title, *lines = block_words(block, dancers.get(name))
        text = f"{title}: {'; '.join(lines)}" if lines else title
        events.append((tick(block.start), mido.MetaMessage("cue_marker", text=text)))
    for accent in staged.accents_of(name):
        words = f"accent: {accent.note}" if accent.note else "accent"
        events.append((tick(accent.beat), mido.MetaMessage("cue_marker", text=words)))
    for span in staged.lit_of(name):
        events.append((tick(span.start), mido.MetaMessage("text", text="lit")))
        events.append((tick(span.end), mido.MetaMessage("text", text="out")))
    return events


def _numbers(staged: Staged) -> dict[str, int]:
    """A note for each thing that happens; what is danced in the order in which it first is, the same for everybody."""
    found = {"lit": _LIT, "accent": _ACCENT}
    for block in sorted((*staged.blocks, *staged.stops), key=lambda each: each.start):
        found.setdefault(block.title or "block", min(_FIRST + len(found) - 2, 127))
    return found


class _Span(NamedTuple):
    """A note and the beats between which it sounds."""

    note: int
    start: float
    end: float


def _spans(staged: Staged, name: str, numbers: Mapping[str, int]) -> list[_Span]:
    """What a performer does, as notes."""
    spans = [_Span(_LIT, span.start, span.end) for span in staged.lit_of(name)]
    spans += [_Span(_ACCENT, each.beat, each.beat + 0.25) for each in staged.accents_of(name)]
    danced = (*staged.blocks_of(name), *staged.stops_of(name))
    return spans + [_Span(numbers[each.title or "block"], each.start, each.end) for each in danced]


def _notes(
    mido: Any, spans: Sequence[_Span], tick: Callable[[float], int], channel: int
) -> list[_Event]:
    events: list[_Event] = []
    for note, start, end in spans:
        first = tick(start)
        last = max(tick(end), first + 1)
        on = mido.Message("note_on", channel=channel, note=note, velocity=_VELOCITY)
        events += [(first, on), (last, mido.Message("note_off", channel=channel, note=note))]
    return events


_ORDER = {"note_off": 0, "note_on": 2}  # at one moment, texts between them


def _track(mido: Any, events: list[tuple[int, Any]], end: int) -> Any:
    track = mido.MidiTrack()
    now = 0
    for at, message in sorted(events, key=lambda event: (event[0], _ORDER.get(event[1].type, 1))):
        track.append(message.copy(time=at - now))
        now = at
    track.append(mido.MetaMessage("end_of_track", time=max(0, end - now)))
    return track


def _tempos(staged: Staged) -> tuple[int, list[tuple[int, int]]]:
    """Quarters before the first beat, and (quarter, microseconds) of every tempo event."""
    times = [float(time) for time in staged.tempo.times]
    first = times[0]
    lead = max(1, round(first / (times[1] - first))) if first > 0 else 0
    edges = [first * i / lead for i in range(lead)] + times
    out: list[tuple[int, int]] = []
    written = 0  # [µs]
    for quarter, after in enumerate(edges[1:]):
        tempo = round(1e6 * after) - written
        written += tempo
        if not 0 < tempo <= _SLOWEST:
            raise ValueError(
                f"two beats are {tempo / 1e6:.1f} s apart; a MIDI file can hold at most 16.7 s"
            )
        if not out or out[-1][1] != tempo:
            out.append((quarter, tempo))
    return lead, out


def _metres(staged: Staged, lead: int) -> list[tuple[int, int]]:
    """(quarter, beats per bar) at every change of bar length."""
    tempo = staged.tempo
    out = [(0, 1)] if lead else []
    if tempo.first < 0:
        out.append((lead, -tempo.first))
    last = math.ceil(float(tempo.beats_from_seconds(staged.song.duration)))
    bar = 1
    while tempo.bar_start(bar) < last:
        out.append((lead - tempo.first + tempo.bar_start(bar), tempo.bar_length(bar)))
        bar += 1
    return [each for i, each in enumerate(out) if i == 0 or out[i - 1][1] != each[1]]
