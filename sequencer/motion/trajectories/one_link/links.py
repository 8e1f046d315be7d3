"""Links: computed transitions from one state to another, kept once they are found.

Frame: body frame [m], rates per beat.
Source: docs/motion.md, section 5.
"""

from collections.abc import Mapping
from math import isfinite
from typing import Any

import numpy as np

from sequencer.arrays import Floats
from sequencer.kept import kept
from sequencer.motion.laws.state import Motion
from sequencer.motion.trajectories.one_link.link_gaps import Around, sample_fractions
from sequencer.motion.trajectories.one_link.link_law import LinkLaw, law_record, restored_law
from sequencer.motion.trajectories.one_link.link_limits import HandSpace, LinkLimits
from sequencer.motion.trajectories.one_link.link_search import FoundLink, searched


def link(
    first: Motion,
    last: Motion,
    beats: float,
    space: HandSpace | None = None,
    limits: LinkLimits | None = None,
    obstacles: Around | None = None,
) -> LinkLaw:
    """The transition from one state to another; see `found_link`."""
    return found_link(first, last, beats, space, limits, obstacles).law


def found_link(
    first: Motion,
    last: Motion,
    beats: float,
    space: HandSpace | None = None,
    limits: LinkLimits | None = None,
    obstacles: Around | None = None,
    *,
    keep: bool = True,
) -> FoundLink:
    """The transition from one state to another, and how good it is.

    Parameters
    ----------
    first, last : Motion
        One state each: arrays of shape (3,) [body frame].
    beats : float
    space : HandSpace, optional
        Reach and body to respect as far as possible; without it the gentlest plain path is used.
    limits : LinkLimits, optional
        Take precedence over everything else, if they can be met.
    obstacles : Around, optional
        Bodies to keep clear of; default: the performer's upright body.
    keep : bool
        Whether it is kept by all of these; False for who keeps it by what these come from.

    Returns
    -------
    found : FoundLink

    Raises
    ------
    ValueError
        If `beats` is not positive, or no path was found (which would take two ends near every pole).
    """
    if not (isfinite(beats) and beats > 0):
        raise ValueError(f"a link's beats must be positive, got {beats!r}")
    if not keep:
        return searched(first, last, beats, space, limits, obstacles)
    return _linked(_packed(first), _packed(last), beats, space, limits, obstacles)


def sample_beats(start: float, end: float) -> Floats:
    """Beats at which a link is sampled for clearance."""
    return start + (end - start) * sample_fractions()


def _packed(motion: Motion) -> bytes:
    return np.stack(
        (
            motion.hand,
            motion.hand_rate,
            motion.hand_acceleration,
            motion.tether,
            motion.tether_rate,
            motion.tether_acceleration,
            motion.plane,
        )
    ).tobytes()


def _unpacked(packed: bytes) -> Motion:
    parts = np.frombuffer(packed).reshape(7, 3)
    return Motion(
        hand=parts[0],
        hand_rate=parts[1],
        hand_acceleration=parts[2],
        tether=parts[3],
        tether_rate=parts[4],
        tether_acceleration=parts[5],
        plane=parts[6],
    )


def _linked(
    start_state: bytes,
    end_state: bytes,
    beats: float,
    space: HandSpace | None,
    limits: LinkLimits | None,
    obstacles: Around | None,
) -> FoundLink:
    """The link between two packed states; kept, since shows are restaged many times while mends are sought."""
    return kept(
        "link",
        (start_state, end_state, beats, space, limits, obstacles),
        lambda: searched(
            _unpacked(start_state), _unpacked(end_state), beats, space, limits, obstacles
        ),
        record=link_record,
        restore=restored_link,
    )


def link_record(found: FoundLink) -> dict[str, Any]:
    """A link as JSON, every digit kept."""
    return {"law": law_record(found.law), "choice": found[1:]}


def restored_link(record: Mapping[str, Any]) -> FoundLink:
    """The link of a record."""
    return FoundLink(restored_law(record["law"]), *record["choice"])
