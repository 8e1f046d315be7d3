"""Space and exits for the audience: simple flow arithmetic, not an evacuation study."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from sequencer.facts.sources import Source, data, source


@dataclass(frozen=True, slots=True, kw_only=True)
class Flow:
    """People per minute through a metre of exit width."""

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


def narrowest_exit() -> float:
    """Least clear width of an exit that counts [m]; source as `exit_capacity`."""
    return float(data("crowd.json")["smallest_exit_width"]["width"])


def exit_capacity(
    widths: Sequence[float],
    *,
    minutes: float,
    flow: float | None = None,
    discount_largest: bool = True,
) -> int:
    """Number of people who can leave in time.

    Parameters
    ----------
    widths : sequence of float
        Clear width of each exit [m].
    minutes : float
        Time available to leave.
    flow : float, optional
        [people/(m·min)]; default: the default flow.
    discount_largest : bool
        Count the largest exit as lost to the fire, if there is more than one.

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
    usable = sorted(width for width in widths if width >= narrowest_exit())
    if discount_largest and len(usable) > 1:
        usable = usable[:-1]
    rate = flows()["default"].per_metre_minute if flow is None else flow
    return int(sum(usable) * rate * minutes + 1e-9)


def floor_capacity(area: float, *, kind: str = "outdoors") -> int:
    """Number of people that an area [m²] holds, exclusion zone already deducted.

    Source: 0.5 m² a person outdoors (Buckinghamshire CC), 0.3 m² standing (second-hand).
    """
    spaces = {entry["name"]: entry["area"] for entry in data("crowd.json")["floor_space"]}
    if kind not in spaces:
        raise ValueError(f"{kind!r} is not a known kind of floor; use one of {', '.join(spaces)}")
    if not area >= 0:
        raise ValueError(f"area must be ≥ 0, got {area!r}")
    return int(area / spaces[kind] + 1e-9)
