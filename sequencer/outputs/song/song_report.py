"""An analysed song, as JSON for tools and as a summary for people."""

import json
from itertools import groupby
from pathlib import Path
from typing import Any

import numpy as np

from sequencer.listening.hearing import song_json as song_record_of
from sequencer.listening.song_form.sections import divisible
from sequencer.outputs.song.highlight_words import highlight_records, highlights_text
from sequencer.timing.form import FormPart, section_mark, song_form, sure_word
from sequencer.timing.phrases import Phrase, level_word, phrase_length, phrases
from sequencer.timing.position import clock_text
from sequencer.timing.song import Reading, Song
from sequencer.units import counted

_SURE = 0.6  # confidence from which a result needs no "listen here"
_NAMED = 6  # stretches of uncertain bars that are named one by one
_OTHER = 0.1  # likelihood from which another way to count is mentioned
_ROW, _GROUPS = 28, 5  # letters and groups of a part from which its fours are told shorter
_NUMBERS = {1, 2, 3}  # columns of the table of parts that stand to the right


def song_record(song: Song, track: Path) -> dict[str, Any]:
    """The record of `listen --json`: seconds as numbers, tempo in beats per minute."""
    record = song_record_of(song, track)
    for part, name in zip(record["sections"], song.section_names(), strict=True):
        part["name"] = name
        part["level"] = level_word(part["energy"])
    for part, section in zip(record["sections"], song.sections, strict=True):
        part["mark"] = section_mark(section)
        part["border"] = sure_word(section.confidence)
    record["form"] = [_part_record(part) for part in song_form(song)]
    record["phrases"] = [
        {"section": p.section, "number": p.number, "start": p.start, "end": p.end, "counts": p.counts}
        for p in phrases(song)
    ]  # fmt: skip
    record["highlights"] = highlight_records(song)
    record["listen_here"] = [{"from_bar": a, "to_bar": b} for a, b in song.unsure_bars()]
    return record


def song_json(song: Song, track: Path) -> str:
    """`listen --json` as text, the same bytes each time."""
    return json.dumps(song_record(song, track), ensure_ascii=False, indent=1)


def song_summary(song: Song) -> str:
    """The result in a few lines."""
    lines = [f"{song.track}   {clock_text(song.duration)}   {song.sha256[:12]}"]
    lines += [f"warning: {warning}" for warning in song.warnings]
    if len(song.beats) < 2:
        spans = _spans_text(song)
        lines.append(
            f"no steady beat found here{f' ({spans})' if spans else ''}; "
            "supply your own beats (--tap), or use another track"
        )
    else:
        lines.append(
            f"{song.tempo:.1f} beats a minute, {song.metre} beats a bar, {len(song.beats)} beats, "
            f"bar 1 at {clock_text(song.downbeats[0], decimals=2)}{_before_bar_one(song)}"
        )
        if others := readings_text(song):
            lines.append(f"could also be counted: {others}")
        if changes := metres_text(song):
            lines.append(f"the metre changes: {changes}")
        if odd := odd_bars_text(song):
            lines.append(f"bars of another length: {odd}")
        doubt = [
            f"{subject} {value:.0%}" for subject, value in song.confidence.items() if value < _SURE
        ]
        if doubt:
            lines.append("check these by ear, they are uncertain: " + ", ".join(doubt))
        if bars := unsure_text(song):
            lines.append(f"listen here: {bars}")
        if song.unsteady:
            lines.append(f"no steady beat found here: {_spans_text(song)}")
    if song.sections:
        lines += ["", *form_text(song), *highlights_text(song)]
    return "\n".join(lines)


def _before_bar_one(song: Song) -> str:
    """The beats before the first bar: a count-in, or a pick-up; empty if there are none."""
    beats = song.beats.index(song.downbeats[0])
    if not beats:
        return ""
    if beats == song.count_in:
        return f", after a count-in of {counted(beats, 'beat')}"
    return (
        f", after a pick-up of {counted(beats, 'beat')}"
        if beats < song.metre
        else f", {counted(beats, 'beat')} before it"
    )


def readings_text(song: Song) -> str:
    """Other ways to count the song, with their likelihood, such as "60.0 a minute in bars of 4 (12%)"."""
    return ", ".join(
        f"{r.tempo:.1f} a minute in bars of {r.metre}{_later_text(song, r)} ({r.share:.0%})"
        for r in song.readings[1:]
        if r.share >= _OTHER
    )


def _later_text(song: Song, reading: Reading) -> str:
    """Where the one of a reading lies against the count's, such as " with the one 2 beats later"; empty if that is not told."""
    later = song.shift_of(reading) if reading.metre == song.metre else 0
    return f" with the one {counted(later, 'beat')} later" if later else ""


def unsure_text(song: Song) -> str:
    """Bars whose count is uncertain, such as "bars 3, 41–48"; empty where there are none."""
    stretches = song.unsure_bars()
    if not stretches:
        return ""
    if sum(b - a + 1 for a, b in stretches) > 0.7 * len(song.downbeats):
        return "all through the song"
    named = ", ".join(f"{a}" if a == b else f"{a}–{b}" for a, b in stretches[:_NAMED])
    more = len(stretches) - _NAMED
    one = len(stretches) == 1 and stretches[0][0] == stretches[0][1]
    rest = f" and {more} more {'places' if more > 1 else 'place'}" if more > 0 else ""
    return f"{'bar' if one else 'bars'} {named}{rest}"


def metres_text(song: Song) -> str:
    """Where bars change length, such as "4 from bar 1, 3 from bar 33 (1:04.0)"; empty if they do not."""
    runs = song.metres()
    named = [f"{m} from bar {bar}" for bar, m in runs[:1]]
    named += [f"{m} from bar {bar} ({clock_text(song.downbeats[bar - 1])})" for bar, m in runs[1:]]
    return ", ".join(named) if len(runs) > 1 else ""


def odd_bars_text(song: Song) -> str:
    """Extra or shortened bars, such as "9 (2 beats)"; empty if there are none."""
    bars = song.odd_bars()
    named = [f"{bar} ({beats} beat{'s' if beats != 1 else ''})" for bar, beats in bars[:_NAMED]]
    return ", ".join(named) + (f" and {len(bars) - _NAMED} more" if len(bars) > _NAMED else "")


def _spans_text(song: Song) -> str:
    return ", ".join(f"{clock_text(a)} to {clock_text(b)}" for a, b in song.unsteady)


def form_text(song: Song) -> list[str]:
    """The parts of a song, their eights in fours, and where else a part may begin; one line each."""
    whole = phrase_length(song.metre)
    heading = {8: "eights", 6: "sixes"}.get(whole, f"{whole}s")
    rows = [["section", "from", "to", "bars", heading, "begins", "energy"]]
    form = song_form(song)
    for part in form:
        section, mark = part.section, section_mark(part.section)
        rows.append(
            [
                part.name if mark == section.label else f"{part.name} ({mark})",
                clock_text(section.start),
                clock_text(section.end),
                f"{part.bars[0]}–{part.bars[1]}" if part.bars else "–",
                _fours(part, whole, heading),
                "" if part is form[0] else sure_word(section.confidence),
                f"{'█' * round(10 * section.energy):<10} {level_word(section.energy)}",
            ]
        )
    lines = _table(rows)
    if len(form) == 1 and (said := _one_part(song, form[0])):
        lines.append(said)
    if turns := [turn for part in form for turn in part.turns]:
        lines.append(f"a part may also begin at bar {_turns_text(turns)}")
    return lines


def _table(rows: list[list[str]]) -> list[str]:
    """Lines whose columns are as wide as what is in them."""
    widths = [max(map(len, column)) for column in zip(*rows, strict=True)]
    return [
        "  ".join(
            cell.rjust(width) if k in _NUMBERS else cell.ljust(width)
            for k, (cell, width) in enumerate(zip(row, widths, strict=True))
        ).rstrip()
        for row in rows
    ]


def _one_part(song: Song, part: FormPart) -> str:
    """Why a song has one part only; empty where there is no count, or where it may have more."""
    if not part.bars or part.turns:
        return ""
    if not divisible(np.array(song.downbeats)):
        return "taken as one part: the counted stretch is too short to look for others"
    where = "with a steady beat " if song.unsteady else ""
    return f"one part from beginning to end: nothing {where}in it stands out as a new one"


def _turns_text(turns: list[tuple[int, float]]) -> str:
    """The likeliest bars with how likely they are, and how many more there are."""
    likely = sorted(turns, key=lambda turn: -turn[1])[:_NAMED]
    named = [f"{bar} ({share:.0%})" for bar, share in turns if (bar, share) in likely]
    more = len(turns) - len(likely)
    if more:
        return f"{', '.join(named)}, and at {more} less likely {'places' if more > 1 else 'place'}"
    return _listed(named)


def _fours(part: FormPart, whole: int, heading: str) -> str:
    """The eights of each group, such as "4 + 4 + 2"; counts left over behind them; many of a kind as "12 × 4"."""
    words = []
    for group in part.groups:
        full = sum(p.counts == whole for p in group.phrases)
        words += ([str(full)] if full else []) + [
            f"{p.counts} ct" for p in group.phrases if p.counts != whole
        ]
    text = " + ".join(words)
    if len(text) <= _ROW:
        return text or "–"
    short = []
    for word, same in groupby(words):
        times = len(list(same))
        short += [f"{times} × {word}"] if times > 2 else [word] * times
    if len(short) <= _GROUPS:
        return " + ".join(short)
    eights = sum(p.counts == whole for group in part.groups for p in group.phrases)
    return f"{' + '.join(short[: _GROUPS - 2])} + … ({eights} {heading})"


def _listed(words: list[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} or {words[-1]}"


def _part_record(part: FormPart) -> dict[str, Any]:
    """A part of the tree of `listen --json`."""
    section = part.section
    return {
        "name": part.name,
        "mark": section_mark(section),
        "start": section.start,
        "end": section.end,
        "bars": list(part.bars) if part.bars else None,
        "confidence": section.confidence,
        "border": sure_word(section.confidence),
        "groups": [
            {
                "start": group.start, "end": group.end, "turn": group.turn,
                "phrases": [_phrase_record(p) for p in group.phrases],
            }
            for group in part.groups
        ],
        "turns": [{"bar": bar, "confidence": share} for bar, share in part.turns],
    }  # fmt: skip


def _phrase_record(phrase: Phrase) -> dict[str, Any]:
    return {
        "number": phrase.number,
        "start": phrase.start,
        "end": phrase.end,
        "counts": phrase.counts,
    }
