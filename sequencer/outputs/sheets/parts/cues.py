"""One performer's show as a list of cues, and who burns when: plain records, independent of any page."""

import math
from dataclasses import dataclass
from itertools import pairwise
from operator import attrgetter
from typing import Literal

from sequencer.motion.performers.walks import WalkPath
from sequencer.outputs.sheets.page.wording import clock
from sequencer.safety.burns.burning import PlannedBurn
from sequencer.safety.safety_plan import safety_plan
from sequencer.staging.on_floor.entrances import spans_in_wings
from sequencer.staging.on_floor.own_walks import OwnWalk, own_walks, wings_changed
from sequencer.staging.results import once_per_show, result_of
from sequencer.staging.staged import Block, Coming, Staged, Standing, by_name

CueKind = Literal["wait", "stop", "move", "link", "walk", "accent", "light", "out", "end"]
Waiting = Literal["first", "last", "only"]
_ORDER: dict[CueKind, int] = {
    "out": 0,
    "light": 1,
    "walk": 2,
    "accent": 2,
    "wait": 3,
    "stop": 3,
    "move": 3,
    "link": 3,
    "end": 4,
}
_LEAST = 1e-6  # [beats] shorter gaps are ignored
_EXACT = 1e-6  # [s]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Cue:
    """One thing a performer does, from `start` to `end` [beats]; light, out, accent and end take no time.

    Light is when lighting starts, which may be before the track; out is when putting out begins.
    """

    kind: CueKind
    start: float
    end: float
    section: str
    lit: bool  # at the start
    spot: tuple[
        float, float, float
    ]  # X [m], Y [m], facing [degrees] at the start; for a walk, its destination
    formation: str
    walking: bool  # on the way to `spot` when it starts
    block: Block | None = None
    via: tuple[tuple[float, float], ...] = ()  # points that a walk passes [m, stage frame]
    burn: PlannedBurn | None = None  # of light, out, and a rest or stop while lit
    note: str = ""  # of an accent
    coming: Coming | None = None  # of a walk on from the wings, or off into them
    in_wings: bool = False  # at the start
    onward: Coming | None = None  # of a wait in the wings: the entrance to whose place it leads
    waiting: Waiting | None = (
        None  # of a rest or stop while lit: before the first or after the last move of the burn
    )

    @property
    def beats(self) -> float:
        """Its length."""
        return self.end - self.start

    @property
    def still(self) -> bool:
        """Whether the performer does not dance: a rest, or a stop that is written."""
        return self.kind in {"wait", "stop"}


def early_clock(seconds: float) -> str:
    """m:ss of a cue, never read too late: rounded down, before the track with a minus."""
    return f"−{clock(math.ceil(-seconds - _EXACT))}" if seconds < -_EXACT else clock(seconds)


def late_clock(seconds: float) -> str:
    """m:ss by which something is over: rounded up."""
    if seconds < 0:
        return f"−{clock(-seconds)}"
    return clock(math.ceil(seconds - _EXACT))


def bar_words(staged: Staged, cue: Cue) -> str:
    """bar.beat of a cue; of a rest to a quarter beat, because it may begin anywhere."""
    beat = round(4 * cue.start) / 4 if cue.kind == "wait" else cue.start
    return staged.position(beat)


def first_beat(staged: Staged) -> float:
    """Beat coordinate of the start of the track."""
    return float(staged.tempo.beats_from_seconds(0.0))


def last_beat(staged: Staged) -> float:
    """Beat coordinate of the end of the track."""
    return float(staged.tempo.beats_from_seconds(staged.song.duration))


def cues_of(staged: Staged, who: str) -> tuple[Cue, ...]:
    """Everything one performer does, in order."""
    return result_of(staged, ("cues", who), lambda: _cues(staged, who))


def _cues(staged: Staged, who: str) -> tuple[Cue, ...]:
    blocks = sorted((*staged.blocks_of(who), *staged.stops_of(who)), key=attrgetter("start"))
    begin, end = min(first_beat(staged), *(b.start for b in blocks), 0.0), last_beat(staged)
    rows: list[tuple[CueKind, float, float, Block | None]] = []
    done = begin
    for block in blocks:
        rows += [("wait", a, b, None) for a, b in _waits(staged, who, done, block.start)]
        if block.stop:
            rows += [("stop", a, b, block) for a, b in _waits(staged, who, block.start, block.end)]
        else:
            rows.append(("link" if block.link else "move", block.start, block.end, block))
        done = max(done, block.end)
    rows += [("wait", a, b, None) for a, b in _waits(staged, who, done, end)]
    burns: dict[tuple[CueKind, float], PlannedBurn] = {}
    for burn in burns_of(staged, who):
        alight = _beat(staged, burn.alight_s)
        rows.append(("light", alight, alight, None))
        rows.append(("out", burn.end, burn.end, None))
        burns |= {("light", alight): burn, ("out", burn.end): burn}
    hits = staged.accents_of(who)
    rows += [("accent", hit.beat, hit.beat, None) for hit in hits]
    walks = own_walks(who, staged.standings)
    rows += [("walk", walk.start, walk.end, None) for walk in walks]
    rows.append(("end", max(end, done), max(end, done), None))
    rows.sort(key=lambda row: (round(row[1], 6), _ORDER[row[0]]))
    notes = {hit.beat: hit.note for hit in hits}
    return tuple(
        _cue(
            staged, who, *row, burn=burns.get(row[:2]),
            note=notes[row[1]] if row[0] == "accent" else "",
        )
        for row in rows
    )  # fmt: skip


def burns_of(staged: Staged, who: str) -> tuple[PlannedBurn, ...]:
    """One performer's burns, as they are handled, in order."""
    return _burns_by_name(staged).get(who, ())


@once_per_show
def _burns_by_name(staged: Staged) -> dict[str, tuple[PlannedBurn, ...]]:
    return by_name(safety_plan(staged).burns)


def _beat(staged: Staged, seconds: float) -> float:
    return float(staged.tempo.beats_from_seconds(seconds))


def _waits(staged: Staged, who: str, start: float, end: float) -> list[tuple[float, float]]:
    """A rest or stop, split where lighting or putting out its performer starts, without the walks on from the wings and off into them."""
    if end - start <= _LEAST:
        return []
    edges = [
        edge for burn in burns_of(staged, who) for edge in (_beat(staged, burn.alight_s), burn.end)
    ]
    own = [each for each in staged.comings if each.who == who]
    edges += [edge for each in own for edge in (each.start, each.end)]
    inner = sorted(edge for edge in edges if start + _LEAST < edge < end - _LEAST)
    return [
        (a, b)
        for a, b in pairwise([start, *inner, end])
        if b - a > _LEAST
        and not any(each.start < b - _LEAST and each.end > a + _LEAST for each in own)
    ]


def standing_at(staged: Staged, beat: float) -> tuple[Standing, bool] | None:
    """Formation held, or being walked to, at a beat; true while walking."""
    found = None
    for standing in staged.standings:
        if standing.walk <= beat + _LEAST or found is None:
            found = standing
    if found is None:
        return None
    return found, found.walk <= beat + _LEAST and beat < found.start - _LEAST


def place_at(staged: Staged, who: str, beat: float) -> tuple[float, float, float]:
    """X [m], Y [m] and facing [degrees] of a performer, from the path over the floor."""
    floor = _floors(staged).get(who)
    if floor is None:
        raise ValueError(f"there is no {who!r} in the cast")
    stand = floor.at(beat)
    x, y = stand.place
    return float(x), float(y), math.degrees(float(stand.facing))


@once_per_show
def _floors(staged: Staged) -> dict[str, WalkPath]:
    return {dancer.name: dancer.floor for dancer in staged.dancers}


def is_lit(staged: Staged, who: str, beat: float) -> bool:
    """Whether a performer is alight just after a beat: from the start of lighting until the flame is out."""
    return _alight(staged, who, beat) is not None


def _onward(staged: Staged, who: str, beat: float) -> Coming | None:
    """The entrance for which somebody who went off elsewhere has to get to another place in the wings."""
    for before, after in wings_changed(who, staged.standings):
        if before.end - _LEAST <= beat < after.start:
            return after
    return None


def _alight(staged: Staged, who: str, beat: float) -> PlannedBurn | None:
    """The burn in which a performer is alight just after a beat."""
    seconds = staged.seconds(beat + _LEAST)
    for burn in burns_of(staged, who):
        if burn.alight_s <= seconds < burn.out_s:
            return burn
    return None


def _waiting(staged: Staged, burn: PlannedBurn, start: float, end: float) -> Waiting | None:
    """Whether a rest is before the first or after the last move of a burn."""
    blocks = [
        block
        for block in staged.blocks_of(burn.who)
        if block.end > _beat(staged, burn.alight_s) and block.start < burn.end
    ]
    if all(block.start >= end - _LEAST for block in blocks):
        return "first" if blocks else "only"
    return "last" if all(block.end <= start + _LEAST for block in blocks) else None


def _cue(
    staged: Staged,
    who: str,
    kind: CueKind,
    start: float,
    end: float,
    block: Block | None,
    *,
    burn: PlannedBurn | None,
    note: str,
) -> Cue:
    if kind in {"wait", "stop"}:
        burn = _alight(staged, who, start)
    found = standing_at(staged, start)
    formation, walking = "", False
    own: list[OwnWalk] = []
    via: tuple[tuple[float, float], ...] = ()
    coming: Coming | None = None
    if found is not None and who in found[0].spots:
        formation = found[0].formation
        own = [walk for walk in own_walks(who, staged.standings) if walk.start <= start + _LEAST]
        walking = bool(own) and start < own[-1].end - _LEAST
    if kind == "walk":
        walk = next(
            each
            for each in own_walks(who, staged.standings)
            if (each.start, each.end) == (start, end)
        )
        spot, coming, path = walk.spot, walk.coming, walk.standing.path
        if path[0] == "staging" and coming is None:
            via = tuple((x, y) for x, y in staged.show.staging[int(path[1])].via.get(who, ()))
        walking = False
    else:
        spot = place_at(staged, who, start)
        if walking:
            spot = own[-1].spot
    in_wings = any(
        a - _LEAST <= start < b - _LEAST for a, b in spans_in_wings(who, staged.standings)
    )
    return Cue(
        kind=kind,
        start=start,
        end=end,
        section=staged.section_at(start),
        lit=is_lit(staged, who, start),
        spot=spot,
        formation=formation,
        walking=walking,
        block=block,
        via=via,
        coming=coming,
        in_wings=in_wings,
        onward=_onward(staged, who, start) if in_wings and kind == "wait" else None,
        burn=burn,
        note=note,
        waiting=_waiting(staged, burn, start, end) if kind in {"wait", "stop"} and burn else None,
    )
