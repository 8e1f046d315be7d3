"""One performer's show as a list of cues, and who burns when: plain records, independent of any page."""

from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from sequencer.staging.results import result_of
from sequencer.staging.staged import Block, Staged, Standing

CueKind = Literal["wait", "move", "link", "walk", "light", "out", "end"]
_ORDER: dict[CueKind, int] = {
    "out": 0,
    "light": 1,
    "walk": 2,
    "wait": 3,
    "move": 3,
    "link": 3,
    "end": 4,
}
_LEAST = 1e-6  # [beats] shorter gaps are ignored


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Cue:
    """One thing a performer does, from `start` to `end` [beats]; light, out and end take no time."""

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

    @property
    def beats(self) -> float:
        """Its length."""
        return self.end - self.start


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
    blocks = staged.blocks_of(who)
    begin, end = min(first_beat(staged), *(b.start for b in blocks), 0.0), last_beat(staged)
    rows: list[tuple[CueKind, float, float, Block | None]] = []
    done = begin
    for block in blocks:
        rows += [("wait", a, b, None) for a, b in _waits(staged, who, done, block.start)]
        rows.append(("link" if block.link else "move", block.start, block.end, block))
        done = max(done, block.end)
    rows += [("wait", a, b, None) for a, b in _waits(staged, who, done, end)]
    for burn in staged.lit_of(who):
        rows.append(("light", burn.start, burn.start, None))
        rows.append(("out", burn.end, burn.end, None))
    rows += [("walk", walk.walk, walk.start, None) for walk in walks_of(staged, who)]
    rows.append(("end", max(end, done), max(end, done), None))
    rows.sort(key=lambda row: (round(row[1], 6), _ORDER[row[0]]))
    return tuple(_cue(staged, who, *row) for row in rows)


def _waits(staged: Staged, who: str, start: float, end: float) -> list[tuple[float, float]]:
    """A rest, split where its performer is lit or put out."""
    if end - start <= _LEAST:
        return []
    burns = [edge for burn in staged.lit_of(who) for edge in (burn.start, burn.end)]
    inner = sorted(edge for edge in burns if start + _LEAST < edge < end - _LEAST)
    return list(pairwise([start, *inner, end]))


def walks_of(staged: Staged, who: str) -> tuple[Standing, ...]:
    """Formations that this performer has to walk or turn to."""
    return tuple(
        after
        for before, after in pairwise(staged.standings)
        if who in after.spots and before.spots.get(who) != after.spots[who]
    )


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
    for dancer in staged.dancers:
        if dancer.name == who:
            from math import degrees

            stand = dancer.floor.at(beat)
            x, y = stand.place
            return float(x), float(y), degrees(float(stand.facing))
    raise ValueError(f"there is no {who!r} in the cast")


def is_lit(staged: Staged, who: str, beat: float) -> bool:
    """Whether a performer is lit just after a beat."""
    return any(burn.start <= beat + _LEAST < burn.end for burn in staged.lit_of(who))


def _cue(
    staged: Staged, who: str, kind: CueKind, start: float, end: float, block: Block | None
) -> Cue:
    found = standing_at(staged, start)
    formation, walking = "", False
    via: tuple[tuple[float, float], ...] = ()
    if found is not None and who in found[0].spots:
        formation, walking = found[0].formation, found[1]
    if kind == "walk":
        goal = next(s for s in walks_of(staged, who) if s.walk == start and s.start == end)
        spot = goal.spots[who]
        via = tuple((x, y) for x, y in staged.show.staging[int(goal.path[1])].via.get(who, ()))
        walking = False
    else:
        spot = place_at(staged, who, start)
        if walking and found is not None:
            spot = found[0].spots[who]
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
    )
