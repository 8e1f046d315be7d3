"""Where the members of a group can stand: clear of the edge, the audience, scenery and posts, and of each other.

Stage frame [m]: X to the audience's right, Y upstage.
"""

from typing import Any

from sequencer.checks.distances.requirements import Requirements
from sequencer.geometry.regions import Venue

_ROUND = 32  # corners to a quarter circle


def standing_room(
    venue: Venue, *, reach: float, girth: float, audience: float, required: Requirements
) -> Any:
    """The part of the stage on which somebody may stand whatever is danced there.

    Parameters
    ----------
    venue : Venue
        With a stage.
    reach : float
        From the body's axis to the outer edge of prop and flame [m].
    girth : float
        What a body takes beyond half its own breadth, such as a wheelchair [m]; 0 for those who stand.
    audience : float
        What the audience must be from the reach [m].
    required : Requirements

    Returns
    -------
    room : shapely geometry [m, stage frame]
        Empty where nobody can stand.

    Raises
    ------
    ValueError
        If the venue has no stage: then nothing says where its edge is.

    Notes
    -----
    Source: the distances that the checks of boundaries measure, from the reach instead of from the motion, so that they hold for any
    motion. Circles are drawn round outside, so that a place is never allowed wrongly.
    """
    import shapely

    if venue.stage is None:
        raise ValueError("the venue has no stage, so nothing says where its edge is")

    def around(thing: Any, distance: float) -> Any:
        # A polygon's sides lie inside its circle: drawn larger, they lie outside.
        return thing.buffer(distance / _inside(), quad_segs=_ROUND)

    room = venue.stage.polygon.buffer(-(required.stage_edge + girth), quad_segs=_ROUND)
    for edge in venue.audience:
        room = room.difference(around(shapely.LineString(edge.line), audience + reach))
    for piece in venue.scenery:
        clear = max(required.scenery, required.combustible if piece.combustible else 0.0)
        room = room.difference(around(piece.region.polygon, clear + reach))
    for post in venue.posts:
        room = room.difference(around(shapely.Point(post.at), required.post + post.radius + reach))
    return room


def _inside() -> float:
    """How near the sides of a many-sided circle come to its centre, as a share of its radius."""
    from math import cos, pi

    return cos(pi / (4 * _ROUND))
