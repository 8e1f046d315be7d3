"""What is other on a line of a performer's sheet than in the last print: each value as it was and as it is."""

from collections.abc import Mapping

from sequencer.outputs.sheets.page.wording import clock, facing_words, number, place_words, plural
from sequencer.outputs.sheets.parts.cues import Cue, cues_of
from sequencer.outputs.sheets.parts.dance_rows.danced_values import SET, danced_values, finer_values
from sequencer.outputs.sheets.parts.dance_rows.folding import CueLine, folded
from sequencer.outputs.sheets.parts.dance_rows.hand_words import spoken_hands, together_words
from sequencer.outputs.sheets.parts.dance_rows.handling_words import (
    lighting_lines,
    putting_out_lines,
)
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.staging.staged import Staged

_NEAR = 8.0  # [beats] a move of the same name counts as the same one up to here
_SAME = 1e-3  # [beats]
_STOOD = ("place", "facing")
_UNKNOWN = "changed: see the show file"
_BY_NAME = ("hands", "where", "body", "company", "swapped")  # follow from the move


def change_words(edition: Edition, who: str, line: CueLine) -> str:
    """What is other on a line than in the last print, such as "14 counts (was 12)"; "new" if it had no such line.

    Empty if the line is as it was, or if there was no last print.
    """
    changes, before = edition.changes, edition.before
    if changes is None or before is None:
        return ""
    if not any(changes.is_new_cue(who, each) for each in line.cues):
        return ""
    lines = folded(cues_of(before.staged, who)) if who in before.staged.show.names else ()
    old = _counterpart(line, lines)
    if old is None:
        return "new"
    was, now = _values(before, who, old), _values(edition, who, line)
    if line.walk is None and old.walk is None and line.cue.kind in {"move", "stop"}:
        # where one already stands is told at the walk that led there
        stood = [(was.pop(key, ""), now.pop(key, "")) for key in _STOOD]
        if was == now and any(there != here for there, here in stood):
            return ""
    if was.get("move") != now.get("move"):
        for values in (was, now):  # another move: how it goes stands on the line
            for key in [k for k in values if k in _BY_NAME or k.startswith(SET)]:
                del values[key]
    told = _told(was, now)
    if not told and (len(old.cues) == len(line.cues)):
        pairs = zip(old.cues, line.cues, strict=True)
        told = [words for a, b in pairs for words in _told(finer_values(a), finer_values(b))]
    return "; ".join(dict.fromkeys(told)) or _UNKNOWN


def _told(was: Mapping[str, str], now: Mapping[str, str]) -> list[str]:
    """Values that differ, each as it is and as it was."""
    found = []
    for key in dict.fromkeys((*now, *was)):
        here, there = now.get(key, ""), was.get(key, "")
        if here != there:
            if key.startswith(SET) and here and there:  # the name once: "amplitude 80° (was 45°)"
                there = there.removeprefix(here.split(" ")[0]).strip()
            found.append(f"{here or f'no {key.removeprefix(SET)}'} (was {there or 'none'})")
    return found


def _counterpart(line: CueLine, lines: tuple[CueLine, ...]) -> CueLine | None:
    """The line of the last print that a line stands for: at the same beat, or the nearest of the same name."""
    cue = line.cue
    alike = [each for each in lines if each.cue.kind == cue.kind]
    for each in alike:
        if abs(each.cue.start - cue.start) < _SAME:
            return each
    named = [each for each in alike if _name(each.cue) == _name(cue)]
    near = min(named, key=lambda each: abs(each.cue.start - cue.start), default=None)
    return near if near is not None and abs(near.cue.start - cue.start) <= _NEAR else None


def _name(cue: Cue) -> str:
    return cue.block.title if cue.block is not None else cue.kind


def _values(edition: Edition, who: str, line: CueLine) -> dict[str, str]:
    """What a line says, value by value, in the order in which it is read."""
    staged, cue = edition.staged, line.cue
    dancer = next((each for each in staged.dancers if each.name == who), None)
    out = {"move": _name(cue), "time": _when(staged, cue)}
    if cue.kind in {"light", "out"} and cue.burn is not None:
        words = lighting_lines if cue.kind == "light" else putting_out_lines
        out |= {f"order {k}": words for k, words in enumerate(words(edition, cue.burn), start=1)}
        return out
    out["count"] = plural(round(4 * cue.beats) / 4, "count")
    if line.walk is not None:
        out["walk"] = f"walk of {plural(line.walk.beats, 'count')}"
    x, y, facing = (line.walk or cue).spot
    out["place"] = place_words(x, y)
    out["facing"] = f"facing {facing_words(facing)}"
    block = cue.block
    if block is not None and not block.link:
        out |= danced_values(staged, dancer, block)
    if block is not None and not block.link and not block.stop:
        out["hands"] = spoken_hands(dancer, block)
        out["timing"] = together_words(block)
        out["start"] = f"start {number(block.shift)} in" if block.shift else ""
        out["cue"], out["note"] = block.cue, block.note
    for after in line.then:
        out[after.kind] = (
            f"{after.kind.replace('wait', 'rest')} {number(round(4 * after.beats) / 4)}"
        )
    out["flames"] = "lit" if cue.lit else "out"
    return out


def _when(staged: Staged, cue: Cue) -> str:
    seconds = staged.seconds(cue.start)
    if seconds < 0:
        return f"{clock(-seconds)} before the track"
    if cue.kind == "light":  # anywhere between two beats
        return clock(seconds)
    return f"{clock(seconds)}, {staged.aloud(round(4 * cue.start) / 4)}"
