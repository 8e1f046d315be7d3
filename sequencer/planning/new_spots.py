"""Where somebody who is new in the cast has room: a spot in each formation that gives everybody their own.

Spots that keep the formation's picture come before others: mirrored to somebody, on the line between mirrored pairs, in line
with two others. Each is measured by how far bodies, props and flames reach, and by the distances that the show must keep; what
is chosen is then tried by the checks themselves. Those who are away tonight keep their spots, and who stands in has room for
what they hold. Where anybody burns, somebody new is measured as if they burned too: the file may let them at any time.
"""

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations, pairwise

import numpy as np

from sequencer.arrays import Bools, Floats
from sequencer.checks.distances.boundaries import audience_distance
from sequencer.checks.distances.keeping_clear import boundaries_of
from sequencer.checks.distances.rule_distances import required_distances
from sequencer.checks.distances.spacing import spacing
from sequencer.findings import Finding
from sequencer.planning.edits.shapes import centre_line, marked, partner
from sequencer.planning.trying.restaging import with_everybody
from sequencer.staging.staged import Spots, Staged, Standing

_GRID = 0.5  # [m] between spots that keep no picture
_TRIES = 4  # times that what was chosen is tried by the checks
_MORE = 0.25  # [m] farther from everybody where the checks found something
_TOUCH = 1e-9
_FAR = 1000.0  # [m] farther than any stage is wide
_ANYWHERE = 8.0  # [m] around the others that is looked at where the file has no stage

_Staging = Callable[[Mapping[str, "NewSpot"]], Staged]


@dataclass(frozen=True, slots=True, kw_only=True)
class NewSpot:
    """A spot for somebody new in one formation."""

    at: tuple[float, float]  # [m, stage frame]
    facing: float  # [degrees]
    how: str  # what it keeps of the picture, such as "mirrored to Ash"; empty if nothing
    short: float = 0.0  # [m] that the distances fall short there; 0 where there is room
    clear: bool = True  # whether the checks find nobody too close there, nor on the way


@dataclass(frozen=True, slots=True, kw_only=True)
class NewSpots:
    """Spots for somebody new, and formations without spots of their own in which there is no room for them."""

    spots: Mapping[str, NewSpot]  # by formation
    crowded: tuple[str, ...]  # formations of a named shape in which somebody comes too close
    as_lit: bool  # measured as if they burned, since others do, though the file lights them nowhere


def new_spots(show: Staged, who: str, tried: _Staging) -> NewSpots:
    """A spot with room in each formation that gives everybody their own, or the one that falls least short.

    Parameters
    ----------
    show : Staged
        With the new performer in it, wherever they stand.
    who : str
        Their name.
    tried : callable
        Stages the show with them in other spots.

    Raises
    ------
    InputError
        If the show's file of rules cannot be used, or it cannot be staged.
    """
    rooms = _Room(show, who)
    more: dict[str, float] = {}
    found = []
    for _ in range(_TRIES):
        spots = _chosen(rooms, more)
        after = tried(spots)
        close = {name for each in {after, with_everybody(after)} for name in _too_close(each, who)}
        found.append(
            NewSpots(
                spots={
                    name: replace(spot, clear=name not in close) for name, spot in spots.items()
                },
                crowded=tuple(sorted(close - spots.keys())),
                as_lit=rooms.as_lit,
            )
        )
        if not close & spots.keys():  # what else is close, no other spot mends
            break
        for formation in close & spots.keys():
            more[formation] = more.get(formation, 0.0) + _MORE
    return min(found, key=_unclear)


def _unclear(found: NewSpots) -> int:
    return len(found.crowded) + sum(not spot.clear for spot in found.spots.values())


def _too_close(show: Staged, who: str) -> set[str]:
    """Formations in which, or on the way to which, the checks find somebody new too close; in a named shape, anybody.

    There everybody makes room for them, and may come too close to others by that.
    """
    start, end = show.span
    pairs = spacing(show.dancers, show.tempo, required_distances(show), start=start, end=end)
    shaped = {name for name, one in show.show.formations.items() if one.spots is None}
    return {
        name
        for one in (*pairs.findings, *boundaries_of(show).findings)
        if one.severity == "stop"
        for name in _formations_at(show, one)
        if who in one.who or name in shaped
    }


def _formations_at(show: Staged, one: Finding) -> Iterator[str]:
    if one.start is None:
        return
    beat = float(show.tempo.beats_from_seconds(one.start))
    for standing in show.standings:
        if standing.walk - 1e-6 <= beat <= standing.end + 1e-6:
            yield standing.formation


# --- one formation after the other ---


def _chosen(rooms: "_Room", more: Mapping[str, float]) -> dict[str, NewSpot]:
    """A spot in each formation, the first that is taken first: later ones mind the ways between them."""
    show = rooms.show
    chosen: dict[str, NewSpot] = {}
    order = dict.fromkeys(one.formation for one in show.standings)
    for name in [*order, *(name for name in show.show.formations if name not in order)]:
        formation = show.show.formations.get(name)
        if formation is not None and formation.spots is not None:
            spots = {
                each: (spot.at[0], spot.at[1], spot.facing)
                for each, spot in formation.spots.items()
                if each != rooms.who
            }
            chosen[name] = _spot(rooms, name, spots, chosen, more.get(name, 0.0))
    return chosen


def _spot(
    rooms: "_Room", name: str, others: Spots, chosen: Mapping[str, NewSpot], more: float
) -> NewSpot:
    pictures = list(_pictures(others))
    at, nearest = rooms.anywhere(others)
    places = np.vstack([np.array([spot.at for spot in pictures]).reshape(-1, 2), at])
    spare = rooms.spare(places, others) - more
    room = spare >= -_TOUCH
    clear = room & rooms.ways_clear(name, places, chosen, more)
    fits = np.flatnonzero(clear if clear.any() else room)
    # Off the stage would be no way out of it.
    k = (
        int(fits[0])
        if len(fits)
        else int(np.argmax(np.where(rooms.on_stage(places) >= 0, spare, spare - _FAR)))
    )
    short = 0.0 if len(fits) else float(-spare[k] - more)
    if k < len(pictures):
        own = pictures[k]
        return NewSpot(at=own.at, facing=own.facing, how=own.how, short=max(short, 0.0))
    x, y = (float(each) for each in places[k])
    return NewSpot(
        at=(x, y), facing=float(nearest[k - len(pictures)]), how="", short=max(short, 0.0)
    )


def _pictures(others: Spots) -> Iterator[NewSpot]:
    """Spots that keep a formation's picture, best first."""
    places = {each: (x, y) for each, (x, y, _) in others.items()}
    if not places:
        return
    own = centre_line(places)
    middle = 0.0 if own is None else own
    for each, (x, y) in places.items():
        if partner(places, each) is None and abs(x - middle) > _GRID:
            facing = -others[each][2] % 360
            yield NewSpot(at=(marked(2 * middle - x), y), facing=facing, how=f"mirrored to {each}")
    if own is not None:
        deep = [y for _, y in places.values()]
        mean = sum(deep) / len(deep)
        steps = np.arange(-_ANYWHERE, _ANYWHERE + _GRID, _GRID)
        for y in sorted({*deep, *(mean + steps)}, key=lambda y: (abs(y - mean), y)):
            yield NewSpot(at=(marked(own), marked(y)), facing=0.0, how="on the middle line")
    pairs = sorted(
        combinations(places, 2),
        key=lambda pair: (
            round(abs(places[pair[0]][1] - places[pair[1]][1]), 2),  # rows before slants
            round(math.dist(places[pair[0]], places[pair[1]]), 2),
        ),
    )
    for a, b in pairs:
        for one, two in ((a, b), (b, a)):
            (x, y), (u, v) = places[one], places[two]
            at = marked(2 * u - x), marked(2 * v - y)
            yield NewSpot(at=at, facing=others[two][2], how=f"in line with {one} and {two}")


class _Room:
    """How much room there is for somebody anywhere on a stage.

    Parameters
    ----------
    show : Staged
    who : str
    """

    def __init__(self, show: Staged, who: str) -> None:
        self.show, self.who = with_everybody(show), who
        self._required = required_distances(self.show)
        self.reach: dict[str, float] = {}
        for dancer in (*self.show.dancers, *show.dancers):  # whose part is taken, and who takes it
            self.reach[dancer.name] = max(dancer.reach, self.reach.get(dancer.name, 0.0))
        own = next(dancer for dancer in self.show.dancers if dancer.name == who)
        others = [dancer for dancer in self.show.dancers if dancer is not own]
        lit = own.lit or next((dancer.lit for dancer in others if dancer.lit), ())
        self.as_lit = lit != own.lit
        self._lit = bool(lit)
        self._audience = audience_distance([*others, replace(own, lit=lit)], self._required)

    def anywhere(self, others: Spots) -> tuple[Floats, Floats]:
        """Spots all over the stage, the nearest to the others first [m]; and the facing of whoever is nearest [degrees]."""
        given = np.array([(x, y) for x, y, _ in others.values()]).reshape(-1, 2)
        stage = self.show.venue.stage
        if stage is not None:
            low_x, low_y, high_x, high_y = stage.polygon.bounds
        elif len(given):
            low_x, low_y = given.min(axis=0) - _ANYWHERE
            high_x, high_y = given.max(axis=0) + _ANYWHERE
        else:
            low_x, low_y, high_x, high_y = -_ANYWHERE, 0.0, _ANYWHERE, _ANYWHERE
        xs = _GRID * np.arange(math.ceil(low_x / _GRID), math.floor(high_x / _GRID) + 1)
        ys = _GRID * np.arange(math.ceil(low_y / _GRID), math.floor(high_y / _GRID) + 1)
        at = np.stack(np.meshgrid(xs, ys, indexing="ij"), axis=-1).reshape(-1, 2)
        if not len(given):
            middle = np.array([0.5 * (low_x + high_x), 0.5 * (low_y + high_y)])
            order = np.argsort(np.hypot(*(at - middle).T), kind="stable")
            return at[order], np.zeros(len(at))
        far = np.hypot(at[:, None, 0] - given[:, 0], at[:, None, 1] - given[:, 1])
        order = np.lexsort((at[:, 0], np.hypot(*(at - given.mean(axis=0)).T), far.min(axis=1)))
        facings = np.array([facing for _, _, facing in others.values()])
        return at[order], facings[far.argmin(axis=1)][order]

    def apart(self, other: str) -> float:
        """How far the middles of two stay apart, so that nothing of one can come too close to the other [m]."""
        return self.reach[self.who] + self.reach[other] + self._required.performers

    def spare(self, at: Floats, others: Spots) -> Floats:
        """By how much each place has more room than it needs, below 0 where it has less [m]."""
        import shapely

        venue, required, own = self.show.venue, self._required, self.reach[self.who]
        points = shapely.points(at)
        spare = [
            np.hypot(at[:, 0] - x, at[:, 1] - y) - self.apart(each)
            for each, (x, y, _) in others.items()
        ]
        spare.append(self.on_stage(at))
        if self._lit:
            spare += [
                shapely.distance(shapely.LineString(edge.line), points) - own - self._audience
                for edge in venue.audience
            ]
        for piece in venue.scenery:
            burns = piece.combustible and self._lit
            far = max(required.scenery, required.combustible if burns else 0.0)
            spare.append(shapely.distance(piece.region.polygon, points) - own - far)
        spare += [
            np.hypot(at[:, 0] - post.at[0], at[:, 1] - post.at[1])
            - (own + post.radius + required.post)
            for post in venue.posts
        ]
        return np.asarray(np.min(spare, axis=0))

    def on_stage(self, at: Floats) -> Floats:
        """How far each place lies within the edge that bodies keep from the stage's, below 0 outside it [m]."""
        import shapely

        stage = self.show.venue.stage
        if stage is None:
            return np.full(len(at), _FAR)
        points = shapely.points(at)
        inside = np.where(shapely.covers(stage.polygon, points), 1.0, -1.0)
        edge = shapely.distance(stage.polygon.boundary, points)
        return np.asarray(inside * edge - self._required.stage_edge)

    def ways_clear(
        self, formation: str, at: Floats, chosen: Mapping[str, NewSpot], more: float
    ) -> Bools:
        """From which places the straight ways to and from formations that are settled stay clear of the others'."""
        clear = np.ones(len(at), dtype=bool)
        for before, after in pairwise(self.show.standings):
            if formation not in {before.formation, after.formation}:
                continue
            own = [
                at if one.formation == formation else self._settled(one, chosen)
                for one in (before, after)
            ]
            if own[0] is None or own[1] is None:
                continue
            here, there = np.broadcast_arrays(own[0], own[1])
            for other in before.spots.keys() & after.spots.keys() - {self.who}:
                near = _nearest(here, there, before.spots[other][:2], after.spots[other][:2])
                clear &= near >= self.apart(other) + more - _TOUCH
        return clear

    def _settled(self, one: Standing, chosen: Mapping[str, NewSpot]) -> Floats | None:
        """Where somebody new stands in a formation that is settled, or that has a named shape; else None."""
        if one.formation in chosen:
            return np.array([chosen[one.formation].at])
        formation = self.show.show.formations.get(one.formation)
        if formation is None or formation.spots is not None or self.who not in one.spots:
            return None
        return np.array([one.spots[self.who][:2]])


def _nearest(
    here: Floats, there: Floats, other_here: Sequence[float], other_there: Sequence[float]
) -> Floats:
    """How close two come who walk straight in the same time [m].

    Source: the distance of the origin from a segment, which is what one's way is as the other sees it.
    """
    start = here - np.array(other_here)
    along = there - np.array(other_there) - start
    size = np.einsum("ij,ij->i", along, along)
    part = np.divide(
        -np.einsum("ij,ij->i", start, along), size, out=np.zeros_like(size), where=size > 0
    )
    return np.asarray(np.hypot(*(start + np.clip(part, 0.0, 1.0)[:, None] * along).T))
