"""Distances that a show must keep, each with its source."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

_SOURCES = MappingProxyType(
    {
        "performers": "this tool's default; common practice gives no figure",
        "audience": "Grants Pass OR, fire art conditional-use permit, 2019-08-29: 20 ft from the "
        "fire-involved item",
        "audience_more": "Grants Pass OR, fire art conditional-use permit, 2019-08-29: boundaries "
        "5 ft wider with several performers, read as once",
        "audience_unlit": "this tool's default, as between performers; common practice gives no figure",
        "combustible": "Grants Pass OR, fire art conditional-use permit, 2019-08-29: 20 ft",
        "scenery": "this tool's default; common practice gives no figure",
        "overhead": "this tool's default: 1 m above the top of the flame",
        "ceiling_least": "Seattle WA, fire performance page: 12 ft",
        "floor": "geometry: the head clears the floor",
        "stage_edge": "this tool's default: half a body stands on the stage",
        "post": "geometry: the post lies outside the reach",
    }
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Requirements:
    """Least distances [m], filled from the show, the venue and the house rules."""

    performers: float = 0.30  # any part of one from any part of another, flame included
    audience: float = 6.096  # audience line from the outer edge of the lit envelope
    audience_more: float = 1.524  # more, once, when two or more are ever lit at once
    audience_unlit: float = (
        0.30  # audience line from any part of whoever waits in the wings, or walks on or off
    )
    combustible: float = 6.096  # combustible scenery from a flame
    scenery: float = 0.30  # any scenery from any part
    overhead: float = 1.0  # ceiling from the top of a flame, arm and tether straight up
    ceiling_least: float = 3.6576  # any ceiling over fire
    floor: float = 0.0  # floor from the surface of a head, flame left out
    stage_edge: float = 0.30  # edge of the stage from the body's axis
    post: float = 0.0  # crew post from the outer edge of the envelope
    sources: Mapping[str, str] = field(default_factory=dict)  # by name of the field

    def __post_init__(self) -> None:
        for name in _SOURCES:
            value = getattr(self, name)
            if not 0 <= value < 1000:  # also catches nan
                raise ValueError(f"{name} must be 0 to 1000 m, got {value!r}")

    def source(self, name: str) -> str:
        """Source of a distance: the one given by the caller, or that of the default."""
        return self.sources.get(name, _SOURCES[name])
