"""A staged show as a page draws it: JSON values of sections, blocks, walks and places, each with its path in the show file.

Beats, seconds of the track and metres; facings in degrees, as people write them.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

import numpy as np

from sequencer.checks.distances.rule_distances import required_distances
from sequencer.motion.performers.dancer import Dancer
from sequencer.outputs.rehearsal.page_data import place_document, tempo_document
from sequencer.outputs.words.block_words import block_words
from sequencer.outputs.words.entrance_words import only_entrances
from sequencer.staging.entries.danced_entries import DancedBy, danced_by
from sequencer.staging.home_beats import home_beats
from sequencer.staging.staged import Block, Coming, Staged
from sequencer.timing.form import heard_borders_of, song_form, sure_word
from sequencer.timing.song import Song

_STEPS = 16  # straight pieces by which a walk is drawn
_DIGITS = 6


def song_view(song: Song) -> dict[str, Any]:
    """What was heard in a song, with what the show file corrects."""
    try:
        count = tempo_document(song.tempo_map())
    except ValueError:
        count = {"times": [], "first": 0, "bars": [], "metre": song.metre}
    return {
        "track": song.track,
        "duration": song.duration,
        "tempo": song.tempo,
        **count,
        "downbeats": list(song.downbeats),
        "bar_confidence": list(song.bar_confidence),
        "sections": [
            {"name": name, "label": one.label, "start": one.start, "end": one.end, "energy": one.energy}
            for one, name in zip(song.sections, song.section_names(), strict=True)
        ],
        "energy": list(song.energy),
        "loudness": {"step": 0.1, "db": list(song.loudness)},
        "onsets": list(song.onsets),
        "onset_strengths": list(song.onset_strengths),
        "unsteady": [list(span) for span in song.unsteady],
        "readings": [
            {"tempo": one.tempo, "metre": one.metre, "share": one.share} for one in song.readings
        ],
        "confidence": dict(song.confidence),
        "warnings": list(song.warnings),
    }  # fmt: skip


def show_view(staged: Staged) -> dict[str, Any]:
    """A staged show as JSON values."""
    ways = danced_by(staged)
    dancers = {dancer.name: dancer for dancer in staged.dancers}
    homes = {name: home_beats(dancer) for name, dancer in dancers.items()}
    low, high = staged.span
    whole = staged.show if staged.read is None else staged.read.written
    there = {post.name: post for post in staged.show.crew}
    return {
        "title": staged.show.title,
        "duration": staged.song.duration,
        "span": [_rounded(low), _rounded(high)],
        "tempo": tempo_document(staged.tempo),
        "sections": list(_sections(staged)),
        "turns": list(_turns(staged)),
        "cast": list(_cast(staged)),
        "blocks": [
            {
                **_block(staged, each, dancers[each.who], ways.get(id(each))),
                "home": homes[each.who].get(each.start),
            }
            for each in sorted(
                (*staged.blocks, *staged.stops),
                key=lambda one: (one.start, staged.show.names.index(one.who)),
            )
        ],
        "accents": [
            {
                "who": each.who, "beat": _rounded(each.beat), "seconds": _second(staged, each.beat),
                "position": staged.position(each.beat), "phrase": each.phrase, "note": each.note,
                "path": list(each.path),
            }
            for each in staged.accents
        ],
        "standings": list(_standings(staged)),
        "walks": list(_walks(staged)),
        "entrances": [_coming(staged, each) for each in staged.comings],
        "formations": _formations(staged),
        "place": place_document(staged),
        "crew": [
            {
                "name": post.name, "duty": post.duty, "at": list(post.post),
                "watches": list(there[post.name].watches), "path": ["crew", k],
            }
            for k, post in enumerate(whole.crew)
            if post.name in there
        ],
        "missing": [
            {
                "who": block.who, "start": _rounded(block.start), "end": _rounded(block.end),
                "position": staged.position(block.start), "end_position": staged.position(block.end),
                "kind": _kind(block), "title": block.title, "path": list(block.path),
            }
            for block in staged.missing
        ],
        "reach": {dancer.name: _rounded(dancer.reach) for dancer in staged.dancers},
        "apart": _rounded(required_distances(staged).performers),
    }  # fmt: skip


def _kind(block: Block) -> str:
    return block.stop or ("link" if block.link else "pattern")


def _block(staged: Staged, block: Block, dancer: Dancer, by: DancedBy | None) -> dict[str, Any]:
    return {
        "who": block.who,
        "kind": _kind(block),
        "start": _rounded(block.start),
        "end": _rounded(block.end),
        "start_s": _second(staged, block.start),
        "end_s": _second(staged, block.end),
        "position": staged.position(block.start),
        "end_position": staged.position(block.end),
        "title": block.title,
        "words": block_words(block, dancer),
        "phrase": block.phrase,
        "note": block.note,
        "cue": block.cue,
        "mirrored": block.mirrored,
        "path": list(block.path),
        "entry": None if by is None else ["timeline", by.entry],
        "use": [] if by is None else [list(each) for each in by.use],
        "rounds": [] if by is None else list(by.rounds),
        "cycle": _rounded(block.cycle),
        "shift": _rounded(block.shift),
        "timing": block.timing,
        "direction": block.direction,
        "stopped": list(block.stopped),
        "hands": {
            side: {
                "pattern": hand.pattern,
                "parameters": _plain(hand.parameters),
                "fitted": _plain(hand.fitted),
            }
            for side, hand in block.hands.items()
        },
    }


def _sections(staged: Staged) -> Iterator[dict[str, Any]]:
    song = staged.song
    marks = heard_borders_of(song, staged.heard or song)
    for one, name, (mark, share) in zip(song.sections, song.section_names(), marks, strict=True):
        beats = [float(staged.tempo.beats_from_seconds(edge)) for edge in (one.start, one.end)]
        yield {
            "name": name, "label": one.label, "start": one.start, "end": one.end, "energy": one.energy,
            "start_beat": _rounded(beats[0]), "end_beat": _rounded(beats[1]),
            "mark": mark, "border": None if share is None else sure_word(share),
        }  # fmt: skip


def _turns(staged: Staged) -> Iterator[dict[str, Any]]:
    """Where else a section may begin, by what was heard: a bar or more from any that does."""
    for part in song_form(staged.song):
        for bar, share in part.turns:
            start = staged.song.downbeats[bar - 1]
            yield {"start": start, "bar": bar, "confidence": share}


def _cast(staged: Staged) -> Iterator[dict[str, Any]]:
    names = staged.show.names if staged.read is None else staged.read.written.names
    for record, dancer in zip(staged.show.cast, staged.dancers, strict=True):
        yield {
            "name": record.name,
            "path": ["cast", names.index(record.name)],
            "stature": _rounded(dancer.body.stature),
            "prop": next((prop.kind for prop in dancer.props.values()), None),
            "props": {
                side: {"kind": prop.kind, "length": _rounded(prop.length)}
                for side, prop in dancer.props.items()
            },
            "lit": [
                {
                    "start": _rounded(span.start), "end": _rounded(span.end),
                    "start_s": _second(staged, span.start), "end_s": _second(staged, span.end),
                    "path": list(span.path),
                }
                for span in staged.lit_of(record.name)
            ],
        }  # fmt: skip


def _standings(staged: Staged) -> Iterator[dict[str, Any]]:
    for one in staged.standings:
        yield {
            "formation": one.formation,
            "walk": _rounded(one.walk),
            "start": _rounded(one.start),
            "end": _rounded(one.end),
            "walk_s": _second(staged, one.walk),
            "start_s": _second(staged, one.start),
            "end_s": _second(staged, one.end),
            "position": staged.position(one.walk),
            "path": list(one.path),
            "waiting": list(one.waiting),
            "spots": {who: _spot(spot) for who, spot in one.spots.items()},
        }


def _walks(staged: Staged) -> Iterator[dict[str, Any]]:
    to = {one.start: one.path for one in staged.standings}
    for dancer in staged.dancers:
        own = {each.end: each.path for each in staged.comings if each.who == dancer.name}
        for move in dancer.floor.moves:
            beats = np.linspace(move.start, move.end, _STEPS + 1)
            places = dancer.floor.at(beats).place
            path = own.get(move.end, to.get(move.end))
            yield {
                "who": dancer.name,
                "start": _rounded(move.start),
                "end": _rounded(move.end),
                "start_s": _second(staged, move.start),
                "end_s": _second(staged, move.end),
                "points": [[round(x, 3), round(y, 3)] for x, y in places.tolist()],
                "via": [list(point) for point in move.through],
                "length": round(float(np.hypot(*np.diff(places, axis=0).T).sum()), 3),
                "path": None if path is None else list(path),
            }


def _coming(staged: Staged, each: Coming) -> dict[str, Any]:
    return {
        "who": each.who, "on": each.on, "words": each.words, "side": each.side,
        "place": list(each.place), "start": _rounded(each.start), "end": _rounded(each.end),
        "start_s": _second(staged, each.start), "position": staged.position(each.start),
        "end_position": staged.position(each.end), "path": list(each.path),
    }  # fmt: skip


def _formations(staged: Staged) -> dict[str, Any]:
    out: dict[str, Any] = {}
    for name, record in staged.show.formations.items():
        used = [
            k
            for k, one in enumerate(staged.standings)
            if one.formation == name and not only_entrances(one)
        ]
        spots: dict[str, list[float]] | None = None
        if record.spots is not None:
            spots = {who: _spot((*own.at, own.facing)) for who, own in record.spots.items()}
        elif used:  # who takes which place of a shape is known where it is taken
            spots = {who: _spot(spot) for who, spot in staged.standings[used[0]].spots.items()}
        out[name] = {
            "spots": spots, "shape": record.shape, "path": ["formations", name], "used": used
        }  # fmt: skip
    return out


def _spot(spot: Sequence[float]) -> list[float]:
    return [round(float(value), 4) for value in spot]


def _second(staged: Staged, beat: float) -> float:
    return _rounded(staged.seconds(beat))


def _rounded(value: float) -> float:
    return round(float(value), _DIGITS)


def _plain(value: Any) -> Any:
    """A value as JSON can say it."""
    if isinstance(value, Mapping):
        return {str(key): _plain(own) for key, own in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(own) for own in value]
    if isinstance(value, bool | int | str) or value is None:
        return value
    if isinstance(value, float | np.floating):
        return float(value) if math.isfinite(value) else None
    return str(value)
