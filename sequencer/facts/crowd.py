"""The audience's room and exits: simple flow arithmetic, not an evacuation study."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from sequencer.facts.sources import Source, data, source


@dataclass(frozen=True, slots=True, kw_only=True)
class Flow:
    """People through a metre of exit in a minute."""

    name: str
    per_metre_minute: float  # [people/(m·min)]
    what: str
    source: Source


@cache
def flows() -> Mapping[str, Flow]:
    """Flows by name; `default` is the slower peak flow."""
    return {
        entry["name"]: Flow(**{**entry, "source": source(entry["source"])})
        for entry in data("crowd.json")["flows"]
    }


def exit_capacity(
    widths: Sequence[float],
    *,
    minutes: float,
    flow: float | None = None,
    discount_largest: bool = True,
) -> int:
    """People who can leave in time.

    Parameters
    ----------
    widths : sequence of float
        Clear width of each exit [m].
    minutes : float
        Time to leave in.
    flow : float, optional
        [people/(m·min)]; the default flow where none is given.
    discount_largest : bool
        The largest exit counts as lost to the fire, where there is more than one.

    Raises
    ------
    ValueError
        If a width or the time is negative.

    Notes
    -----
    Source: Hastings BC and Buckinghamshire CC, after the open-air guide and the Green Guide. Exits
    narrower than 1.05 m are not counted.
    """
    if any(not width >= 0 for width in widths) or not minutes >= 0:
        raise ValueError("widths and minutes must be ≥ 0")
    narrowest = data("crowd.json")["smallest_exit_width"]["width"]
    usable = sorted(width for width in widths if width >= narrowest)
    if discount_largest and len(usable) > 1:
        usable = usable[:-1]
    rate = flows()["default"].per_metre_minute if flow is None else flow
    return int(sum(usable) * rate * minutes + 1e-9)


def floor_capacity(area: float, *, kind: str = "outdoors") -> int:
    """People that an area holds [m²] once the exclusion zone has been cut out of it.

    Source: 0.5 m² a person outdoors (Buckinghamshire CC), 0.3 m² standing (second-hand).
    """
    spaces = {entry["name"]: entry["area"] for entry in data("crowd.json")["floor_space"]}
    if kind not in spaces:
        raise ValueError(f"{kind!r} is no known kind of floor; use one of {', '.join(spaces)}")
    if not area >= 0:
        raise ValueError(f"area must be ≥ 0, got {area!r}")
    return int(area / spaces[kind] + 1e-9)
