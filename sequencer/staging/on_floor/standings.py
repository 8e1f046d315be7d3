"""Turns a show's formations and walks into one walking path for each performer."""

import math
from collections.abc import Mapping
from dataclasses import replace

from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.show.model import Formation
from sequencer.show.reading import ReadShow
from sequencer.staging.entries.moments import Moments
from sequencer.staging.on_floor.entrances import spans_off, stage_box, ways_behind, with_entrances
from sequencer.staging.on_floor.own_walks import own_walks
from sequencer.staging.staged import Path, Spots, Standing
from sequencer.timing.position import TOUCH


def standings(read: ReadShow, moments: Moments, last: float) -> tuple[Standing, ...]:
    """Formations in order, each with the beat at which the walk to it begins.

    Parameters
    ----------
    read : ReadShow
    moments : Moments
    last : float
        Beat coordinate at which the last formation ends.

    Raises
    ------
    InputError
        If there is no formation at the start, a later one has no walk, or walks overlap.
    """
    show = read.show
    if not show.staging:
        return with_entrances(read, moments, (_default(read, last),))
    found: list[Standing] = []
    for i, staging in enumerate(show.staging):
        path: Path = ("staging", i)
        start = moments.beat(staging.start, (*path, "from"))
        if i == 0:
            start = min(start, 0.0)
        elif staging.beats is None:
            raise read.fault(
                "no-walk",
                path,
                "every formation after the first needs beats for the walk to it",
                "add beats, such as 8",
            )
        reached = start + (staging.beats or 0.0) if i else start
        if i and reached > last + TOUCH:
            raise read.fault(
                "walk-past-the-end", (*path, "beats"),
                f"this walk ends {reached - last:g} beats after the end of the show",
                "start it earlier, or give it fewer beats",
            )  # fmt: skip
        spots = _spots(read, show.formations[staging.formation], staging.formation, found)
        if found and start < found[-1].start - TOUCH:
            there = moments.tempo.position_of(found[-1].start)
            raise read.fault(
                "walks-overlap", (*path, "from"),
                f"this walk starts before the previous one ends, at {there}",
                f"start it at {there} or later",
            )  # fmt: skip
        found.append(
            Standing(
                formation=staging.formation,
                walk=start,
                start=reached,
                end=last,
                spots=spots,
                path=path,
            )
        )
    ends = [later.walk for later in found[1:]] + [max(last, found[-1].start)]
    stood = tuple(
        Standing(
            formation=one.formation,
            walk=one.walk,
            start=one.start,
            end=end,
            spots={who: spot for who, spot in one.spots.items() if who in show.names},
            path=one.path,
        )
        for one, end in zip(found, ends, strict=True)
    )
    return with_entrances(read, moments, stood)


def floor_path(read: ReadShow, name: str, stood: tuple[Standing, ...]) -> WalkPath:
    """One performer's path through the formations, turning the short way round."""
    x, y, degrees = stood[0].spots[name]
    first = here = (x, y, math.radians(degrees))
    behind = _ways_behind(read, name, stood)
    moves: list[Move] = []
    for walk in own_walks(name, stood):
        x, y, degrees = walk.spot
        around = [move for move in behind if move.end <= walk.start + TOUCH]
        moves += [replace(move, facing=here[2]) for move in around]
        if around:
            behind = behind[len(around) :]
            here = (*around[-1].place, here[2])
        goal = (x, y, here[2] + math.remainder(math.radians(degrees) - here[2], math.tau))
        if math.dist(goal, here) > 1e-9:
            via = () if walk.coming else _via(read, name, walk.standing)
            start = max(walk.start, moves[-1].end) if walk.coming and moves else walk.start
            moves.append(Move(start=start, end=walk.end, place=(x, y), facing=goal[2], through=via))
        here = goal
    return WalkPath(
        place=first[:2], facing=first[2], moves=tuple(moves), off=spans_off(name, stood)
    )


def _ways_behind(read: ReadShow, name: str, stood: tuple[Standing, ...]) -> tuple[Move, ...]:
    if not any(each.who == name for one in stood for each in one.comings):
        return ()
    return ways_behind(name, stood, stage_box(read))


def _via(read: ReadShow, name: str, standing: Standing) -> tuple[tuple[float, float], ...]:
    """Points through which somebody walks to a formation."""
    if standing.path[0] != "staging":
        return ()
    return tuple(read.show.staging[int(standing.path[1])].via.get(name, ()))


def _default(read: ReadShow, last: float) -> Standing:
    """A single performer needs no formation: the middle of the stage."""
    show = read.show
    if len(read.written.cast) > 1:
        raise read.fault(
            "no-staging", ("cast",), "the show does not say where the performers stand",
            "add formations, and staging entries that say when each is taken",
        )  # fmt: skip
    depth = show.venue.stage.depth or show.venue.stage.width or 0.0
    spots = {show.names[0]: (0.0, depth / 2, 0.0)}
    return Standing(formation="middle", walk=0.0, start=0.0, end=last, spots=spots, path=("cast",))


def _spots(read: ReadShow, formation: Formation, name: str, before: list[Standing]) -> Spots:
    if formation.spots is not None:
        return {who: (spot.at[0], spot.at[1], spot.facing) for who, spot in formation.spots.items()}
    from sequencer.motion.performers.formations import (
        filled_shape,  # only shows with a named shape need scipy
    )

    stood: Mapping[str, tuple[float, float, float]] | None = before[-1].spots if before else None
    try:
        return filled_shape(
            str(formation.shape),
            names=formation.order or read.written.names,
            centre=formation.centre or (0.0, 0.0),
            spacing=formation.spacing or 1.0,
            turn=formation.turn,
            fixed=formation.order is not None,
            before=stood,
        )
    except ValueError as error:
        raise read.fault(
            "bad-formation",
            ("formations", name),
            str(error),
            "choose another shape, or give the spots",
        ) from error
