"""Capsules: what bodies are made of. Body frame [m]."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Capsule:
    """All points within `radius` of a segment [m, body frame]; a ball if the ends coincide."""

    name: str
    start: tuple[float, float, float]
    end: tuple[float, float, float]
    radius: float
