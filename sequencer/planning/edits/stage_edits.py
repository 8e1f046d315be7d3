"""Changes of walks and burns: more beats for a walk, a nearer place, a smaller turn; an earlier end of a burn.

Places in 5 cm, turns in 15 degrees, times in beats, so that all can be marked, counted and called.
"""

import math
from collections.abc import Iterator, Mapping
from itertools import pairwise
from typing import Any

from sequencer.checks.fault_kinds import BURN, FAST_WALK, OF_BURNS
from sequencer.checks.fire.each_burn.burning_time import cuts_of
from sequencer.findings import Finding
from sequencer.planning.edits.as_written import angle_like, length_like, plain
from sequencer.planning.edits.ladders import Ladder
from sequencer.planning.edits.link_edits import counted_beats
from sequencer.planning.trying.trials import DanceEdit
from sequencer.staging.staged import Lit, Staged, Standing
from sequencer.timing.position import clock_text

_MARK = 0.05  # [m] to which places are taped
_TURN = 15.0  # [degrees]
_MOST_BEATS = 16  # that a walk gains
_NEARER = 3.0  # [m] at most
_NEAR = 0.05  # [beats]


def stage_ladders(show: Staged, fault: Finding) -> list[Ladder]:
    """Changes for a walk that is too fast, or a burn that is too long, in the order of a captain."""
    if fault.code in OF_BURNS:
        return [ladder for ladder in (_sooner_out(show, fault),) if ladder.rungs]
    found = _walk_of(show, fault)
    if found is None:
        return []
    before, walk, after = found
    ladders = [_longer(walk, after), _earlier(show, before, walk)]
    if fault.code == FAST_WALK:
        ladders.append(_nearer(show, fault.who[0], before, walk))
    else:
        ladders.append(_smaller_turn(show, fault.who[0], before, walk))
    return [ladder for ladder in ladders if ladder.rungs]


def walk_path(show: Staged, fault: Finding) -> tuple[str | int, ...] | None:
    """The staging entry that a walk belongs to."""
    found = _walk_of(show, fault)
    return None if found is None else found[1].path


def _walk_of(show: Staged, fault: Finding) -> tuple[Standing, Standing, Standing | None] | None:
    if fault.start is None:
        return None
    start = float(show.tempo.beats_from_seconds(fault.start))
    for k, (before, one) in enumerate(pairwise(show.standings)):
        if one.path[0] == "staging" and abs(one.walk - start) < _NEAR:
            after = show.standings[k + 2] if k + 2 < len(show.standings) else None
            return before, one, after
    return None


def _words(beats: float, now: float) -> str:
    return f"give the walk {counted_beats(beats)} (now {now:g})"


def _range(now: float) -> Any:
    return lambda low, high: f"give the walk {low.value:g} to {high.value:g} beats (now {now:g})"


def _longer(walk: Standing, after: Standing | None) -> Ladder:
    """More beats: they set off as before and arrive later."""
    now = walk.start - walk.walk
    room = (walk.end if after is None else after.walk) - walk.walk
    rungs = [
        DanceEdit(
            words=_words(beats, now),
            cost=f"those who walk arrive {counted_beats(beats - now)} later",
            changes=(((*walk.path, "beats"), plain(beats)),),
            value=beats,
        )
        for k in range(1, _MOST_BEATS + 1)
        if (beats := math.floor(now) + k) <= room + 1e-9
    ]
    return Ladder(name="more beats for the walk", rungs=rungs, most=_MOST_BEATS, step=1.0,
                  range_words=_range(now))  # fmt: skip


def _earlier(show: Staged, before: Standing, walk: Standing) -> Ladder:
    """More beats: they set off earlier and arrive as before."""
    now = walk.start - walk.walk
    rungs = [
        DanceEdit(
            words=f"set off {counted_beats(beats - now)} earlier, at {show.position(walk.start - beats)}",
            cost="they arrive when they did",
            changes=(
                ((*walk.path, "from"), show.position(walk.start - beats)),
                ((*walk.path, "beats"), plain(beats)),
            ),
            value=beats,
        )
        for k in range(1, _MOST_BEATS + 1)
        if walk.start - (beats := math.floor(now) + k) >= before.start + 1e-9
    ]
    return Ladder(name="an earlier start", rungs=rungs, most=_MOST_BEATS)


def _nearer(show: Staged, who: str, before: Standing, walk: Standing) -> Ladder:
    """A nearer place to walk to, in 5 cm."""
    formation = show.show.formations.get(walk.formation)
    spot = None if formation is None or formation.spots is None else formation.spots[who]
    here, there = before.spots[who][:2], walk.spots[who][:2]
    far = math.dist(here, there)
    if spot is None or far < 0.2:
        return Ladder(name="a nearer place", rungs=())
    raw = _raw(show)["formations"][walk.formation]["spots"][who]
    old = raw["at"]
    rungs = []
    steps = int(min(_NEARER, far - 0.1) / 0.25)
    for k in range(1, steps + 1):
        share = 0.25 * k / far
        at = [round((there[i] + share * (here[i] - there[i])) / _MARK) * _MARK for i in (0, 1)]
        new = [length_like(own, value + 0.0) for own, value in zip(old, at, strict=True)]
        rungs.append(
            DanceEdit(
                words=f"let {who} walk to [{new[0]}, {new[1]}] in {walk.formation}",
                cost=f"{math.dist(at, there):.2f} m short of the place",
                changes=((("formations", walk.formation, "spots", who, "at"), new),),
                value=0.25 * k,
            )
        )
    return Ladder(name="a nearer place", rungs=rungs, most=12)


def _smaller_turn(show: Staged, who: str, before: Standing, walk: Standing) -> Ladder:
    """A facing nearer to the one before, in 15 degrees."""
    formation = show.show.formations.get(walk.formation)
    if formation is None or formation.spots is None:
        return Ladder(name="a smaller turn", rungs=())
    raw = _raw(show)["formations"][walk.formation]["spots"][who]
    now = walk.spots[who][2]
    turn = math.remainder(now - before.spots[who][2], 360.0)
    rungs = []
    for k in range(1, int(abs(turn) / _TURN) + 1):
        facing = math.remainder(now - math.copysign(_TURN * k, turn), 360.0)
        new = angle_like(raw.get("facing", 0), facing)
        rungs.append(
            DanceEdit(
                words=f"let {who} face {new}{'' if isinstance(new, str) else '°'} in {walk.formation} (now {now:g}°)",
                cost=f"{_TURN * k:.0f}° less of a turn",
                changes=((("formations", walk.formation, "spots", who, "facing"), new),),
                value=_TURN * k,
            )
        )
    return Ladder(name="a smaller turn", rungs=rungs, most=12)


def burn_path(show: Staged, fault: Finding) -> tuple[str | int, ...] | None:
    """The span under `fire, lit` that a burn belongs to."""
    burn = _burn_of(show, fault)
    return None if burn is None else burn.path


def _burn_of(show: Staged, fault: Finding) -> Lit | None:
    if fault.start is None or not fault.who:
        return None
    near = [
        burn for burn in show.lit_of(fault.who[0]) if abs(show.seconds(burn.start) - fault.start) < 0.05
    ]  # fmt: skip
    return near[0] if near else None


def _sooner_out(show: Staged, fault: Finding) -> Ladder:
    """Put out at an earlier border of a section or of one of their own blocks, the latest first."""
    burn = _burn_of(show, fault)
    if burn is None:
        return Ladder(name="an earlier end of the burn", rungs=())
    who = fault.who[0]
    start, end = show.seconds(burn.start), show.seconds(burn.end)
    together = [own.who for own in show.lit if own.path == burn.path]
    named = who if len(together) == 1 else " and ".join((", ".join(together[:-1]), together[-1]))
    own = [
        cut for cut in cuts_of(show)
        if start < cut.seconds <= end - max(0.5, _over(fault)) + 0.1 and cut.who in ("", who)
    ]  # fmt: skip
    rungs = [
        DanceEdit(
            words=f"put {named} out at {cut.position} ({cut.label}, {clock_text(cut.seconds)})",
            cost=f"{end - cut.seconds:.1f} s earlier, then dark",
            changes=(((*burn.path, "until"), cut.position),),
            value=end - cut.seconds,
        )
        for cut in _whole_beats(reversed(own))
    ]
    return Ladder(name="an earlier end of the burn", rungs=rungs, most=40)


def _over(fault: Finding) -> float:
    """By how much a burn is too long [s]; 0 if its finding does not say."""
    return max((each.beyond for each in fault.figures if each.quantity == BURN), default=0.0)


def _whole_beats(cuts: Iterator[Any]) -> Iterator[Any]:
    return (cut for cut in cuts if "+" not in cut.position)


def _raw(show: Staged) -> Mapping[str, Any]:
    if show.read is None:
        raise ValueError("this show does not remember its file")
    values: Mapping[str, Any] = show.read.document.values
    return values
