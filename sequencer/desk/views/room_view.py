"""Where somebody new in the cast has room, as a page puts them there and says it."""

from collections.abc import Callable, Mapping, Sequence
from math import ceil
from typing import Any

from sequencer.planning.new_spots import NewSpot, NewSpots, new_spots
from sequencer.staging.staged import Staged


def room_view(
    show: Staged, who: str, tried: Callable[[Mapping[str, dict[str, Any]]], Staged]
) -> dict[str, Any]:
    """Spots for somebody new, and where there is no room for them.

    Parameters
    ----------
    show : Staged
        With them in it, wherever they stand.
    who : str
    tried : callable
        Stages the show with them in other spots, as the file says these.

    Returns
    -------
    values : dict
        `spots` by formation, as `add-performer` takes them, `words`, and `short`: the formations without room, also those
        of a named shape, in which everybody's spot follows from the number of people.
    """
    found = new_spots(
        show, who, lambda spots: tried({name: _said(spot) for name, spot in spots.items()})
    )
    return {
        "spots": {name: _said(spot) for name, spot in found.spots.items()},
        "short": [
            *(name for name, spot in found.spots.items() if spot.short or not spot.clear),
            *found.crowded,
        ],
        "words": " ".join([_stands(who, found), *_no_room(who, found), *_as_lit(who, found)]),
    }


def _said(spot: NewSpot) -> dict[str, Any]:
    """A spot as a show file says it."""
    at = [int(each) if each == int(each) else each for each in spot.at]
    return {"at": at, **({"facing": spot.facing} if spot.facing else {})}


def _stands(who: str, found: NewSpots) -> str:
    well = {name: spot for name, spot in found.spots.items() if spot.clear and not spot.short}
    there: dict[str, list[str]] = {}
    for name, spot in well.items():
        if spot.how:
            there.setdefault(spot.how, []).append(name)
    everywhere = len(well) == len(found.spots) and not found.crowded
    unsaid = [] if everywhere else [name for name, spot in well.items() if not spot.how]
    where = f" in {_together(unsaid)}" if unsaid else ""
    place = "".join(f", {how} in {_together(names)}" for how, names in there.items())
    room = f", and stands where there is room{where}{place}." if well else "."
    return f"{who} is in the cast{room}"


def _together(names: Sequence[str]) -> str:
    *others, last = names
    return f"{', '.join(others)} and {last}" if others else last


def _no_room(who: str, found: NewSpots) -> list[str]:
    said = []
    for name, spot in found.spots.items():
        if spot.short:
            missing = ceil(20 * spot.short - 1e-9) / 20  # as it can be marked
            said.append(
                f"Nowhere on the stage is there room for {who} in {name}: even where there is most, {missing:.2f} m are "
                "missing. Move others apart on the stage."
            )
        elif not spot.clear:
            said.append(_too_close(name))
    return [*said, *map(_too_close, found.crowded)]


def _too_close(name: str) -> str:
    return f"In {name}, or on the way there, somebody comes too close: Findings tell who."


def _as_lit(who: str, found: NewSpots) -> list[str]:
    if not found.as_lit or not found.spots:
        return []
    return [f"Others burn in this show, so the room is measured as if {who} burned too."]
