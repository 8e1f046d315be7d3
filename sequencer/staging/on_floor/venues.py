"""The venue of a show file as geometry; an outline that crosses itself is reported at its position in the file."""

from collections.abc import Callable
from typing import Any, ParamSpec, TypeVar

from sequencer.geometry.regions import (
    AudienceEdge,
    Ceiling,
    Post,
    Region,
    Scenery,
    Venue,
    rectangle,
    round_stage,
    thrust,
)
from sequencer.show.file_records import site
from sequencer.show.file_records.record import FilePoint
from sequencer.show.reading import ReadShow
from sequencer.show.text.plain_values import PathKey

LEAST_EDGE = 0.5  # [m] minimum length of an audience line
P = ParamSpec("P")
T = TypeVar("T")


def venue_of(read: ReadShow) -> Venue:
    """Stage, audience, ceiling, scenery and posts as geometry.

    Raises
    ------
    InputError
        If an outline crosses itself or encloses no area, or a position is implausible.
    """
    venue, there = read.show.venue, {post.name for post in read.show.crew}
    stage = _made(read, ("venue", "stage"), _stage, venue.stage)
    edges = tuple(
        _made(read, ("venue", "audience", i, "line"), AudienceEdge, line=edge.line, name=edge.name)
        for i, edge in enumerate(venue.audience)
    )
    for i, edge in enumerate(edges):
        _refuse_odd_edge(read, ("venue", "audience", i, "line"), edge)
    scenery = tuple(
        _made(read, ("venue", "scenery", i), _scenery, thing)
        for i, thing in enumerate(venue.scenery)
    )
    whole = () if venue.ceiling in {None, "open"} else (Ceiling(height=float(venue.ceiling)),)
    posts = tuple(
        _made(read, ("crew", i, "post"), Post, name=post.name, at=post.post)
        for i, post in enumerate(read.written.crew)
        if post.name in there
    )
    return Venue(
        stage=stage,
        audience=edges,
        ceilings=whole
        + tuple(
            _made(read, ("venue", "ceilings", i), _ceiling, part)
            for i, part in enumerate(venue.ceilings)
        ),
        scenery=scenery,
        posts=posts,
    )


def _made(
    read: ReadShow,
    path: tuple[PathKey, ...],
    build: Callable[P, T],
    *args: P.args,
    **named: P.kwargs,
) -> T:
    try:
        return build(*args, **named)
    except ValueError as error:
        raise read.fault(
            "bad-outline", path, str(error), "give the corners in order, in metres"
        ) from None


def _refuse_odd_edge(read: ReadShow, path: tuple[PathKey, ...], edge: AudienceEdge) -> None:
    """An audience line must have a length: nobody can stand behind a dot."""
    import shapely

    line = shapely.LineString(edge.line)
    if line.length < LEAST_EDGE:
        raise read.fault(
            "bad-outline", path, f"the audience line {edge.name!r} is only {line.length:.2f} m long",
            "give both ends of the edge that the audience stands behind",
        )  # fmt: skip


def _ceiling(part: site.CeilingRecord) -> Ceiling:
    return Ceiling(height=part.height, region=Region(part.outline), name=part.name)


def _scenery(thing: site.SceneryRecord) -> Scenery:
    return Scenery(
        name=thing.name,
        region=Region(thing.outline),
        height=thing.height,
        combustible=thing.combustible,
    )


def _stage(stage: site.Stage) -> Region:
    return Region(_outline(stage), stage.holes)


def _outline(stage: site.Stage) -> tuple[FilePoint, ...]:
    sizes: dict[str, Any] = {"width": stage.width, "depth": stage.depth}
    if stage.shape == "rectangle":
        return rectangle(**sizes).outline
    if stage.shape == "round":
        return round_stage(sizes["width"]).outline
    if stage.shape == "thrust":
        tongue = {
            "tongue_width": stage.tongue_width or 0.0,
            "tongue_depth": stage.tongue_depth or 0.0,
        }
        return thrust(**sizes, **tongue).outline
    return stage.outline or ()
