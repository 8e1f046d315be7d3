"""The count of a song before and after it is put right, as a page shows it before anything is written."""

from collections.abc import Sequence
from typing import Any

import numpy as np

from sequencer.outputs.rehearsal.page_data import tempo_document
from sequencer.staging.staged import Block, Staged
from sequencer.timing.song import Song
from sequencer.timing.tempo import TempoMap

_SAME = 0.005  # [s] what moves by less stays where it is
_MOST_TOLD = 6  # blocks that are told one by one


def count_view(
    song: Song, tempo: TempoMap, now: Staged | None, after: Staged | None
) -> dict[str, Any]:
    """A count that is thought of, and what it moves.

    Parameters
    ----------
    song : Song
        With the corrections that are thought of.
    tempo : TempoMap
        Of it.
    now : Staged, optional
        The show as it is; None if it cannot be staged.
    after : Staged, optional
        The show on that count; None if it cannot be staged.

    Returns
    -------
    values : dict
        `tempo` as a view has it, `bpm`, `sections`; `beats` and `ones` (`same`, `moved`, `gone`, `come`), `borders` that move or come
        or go, and `blocks` (`same`, `moved`, `most_s`, `told`); null what is not known.
    """
    return {
        "bpm": song.tempo,
        "tempo": tempo_document(tempo),
        "sections": [
            {
                "name": name, "label": one.label, "start": one.start, "end": one.end,
                "position": tempo.position_text(float(tempo.beats_from_seconds(one.start))),
            }
            for one, name in zip(song.sections, song.section_names(), strict=True)
        ],
        "beats": None if now is None else _moved(now.song.beats, song.beats),
        "ones": None if now is None else _moved(now.song.downbeats, song.downbeats),
        "borders": [] if now is None else _borders(now.song, song),
        "blocks": None if now is None or after is None else _blocks(now, after),
    }  # fmt: skip


def _moved(before: Sequence[float], after: Sequence[float]) -> dict[str, int]:
    """How many times stay, how many have moved by less than half a step, and how many come or go."""
    old, new = np.asarray(before), np.asarray(after)
    if not len(old) or not len(new):
        return {"same": 0, "moved": 0, "gone": len(old), "come": len(new)}
    step = min(float(np.median(np.diff(times))) if len(times) > 1 else 1.0 for times in (old, new))
    away = _to_nearest(old, new)
    same = int(np.sum(away <= _SAME))
    moved = int(np.sum((away > _SAME) & (away < step / 2)))
    come = int(np.sum(_to_nearest(new, old) >= step / 2))
    return {"same": same, "moved": moved, "gone": len(old) - same - moved, "come": come}


def _to_nearest(times: "np.ndarray[Any, Any]", others: "np.ndarray[Any, Any]") -> Any:
    """How far each time is from the nearest of others."""
    k = np.clip(np.searchsorted(others, times), 1, max(len(others) - 1, 1))
    right = others[np.minimum(k, len(others) - 1)]
    return np.minimum(np.abs(times - others[k - 1]), np.abs(times - right))


def _borders(before: Song, after: Song) -> list[dict[str, Any]]:
    """Sections that begin elsewhere, by their names; with None where there is none of this name."""
    old = {
        name: each.start for name, each in zip(before.section_names(), before.sections, strict=True)
    }
    new = {
        name: each.start for name, each in zip(after.section_names(), after.sections, strict=True)
    }
    return [
        {"name": name, "before_s": old.get(name), "after_s": new.get(name)}
        for name in dict.fromkeys((*old, *new))
        if name not in old or name not in new or abs(old[name] - new[name]) > _SAME
    ]  # fmt: skip


def _blocks(before: Staged, after: Staged) -> dict[str, Any]:
    """What is written in the file and sounds elsewhere."""
    old, new = _by_place(before), _by_place(after)
    both = old.keys() & new.keys()
    found: dict[tuple[Any, ...], dict[str, Any]] = {}
    moved, most = 0, 0.0
    for key in (key for key in old if key in both):
        block, other = old[key], new[key]
        a, b = before.seconds(block.start), after.seconds(other.start)
        longer = after.seconds(other.end) - b - (before.seconds(block.end) - a)
        if max(abs(b - a), abs(longer)) <= _SAME:
            continue
        moved, most = moved + 1, max(most, abs(b - a))
        told = {
            "who": [], "title": block.title, "before": before.position(block.start),
            "after": after.position(other.start), "before_s": a, "after_s": b, "longer_s": longer,
        }  # fmt: skip
        found.setdefault((block.path, round(a, 3)), told)["who"].append(block.who)
    first = sorted(found.values(), key=lambda told: float(told["before_s"]))[:_MOST_TOLD]
    return {"same": len(both) - moved, "moved": moved, "most_s": most, "told": first}


def _by_place(show: Staged) -> dict[tuple[Any, ...], Block]:
    """Blocks by who dances them, their place in the file, and which time of it that is."""
    out: dict[tuple[Any, ...], Block] = {}
    for block in (*show.blocks, *show.stops):
        if block.link:
            continue
        times = 0
        while (block.who, block.path, times) in out:
            times += 1
        out[block.who, block.path, times] = block
    return out
