"""Performers whose moves follow one another, for tests of scenes and cues."""

from dataclasses import replace

import pytest

from sequencer.motion.trajectories.trajectory import Span, Trajectory


@pytest.fixture(scope="session")
def dancing(dance):
    """A performer with spans as (kind, start, end, label), all with the law of the usual one."""

    def made(name, *spans, **given):
        plain = dance.dancer(name, **given)
        return replace(
            plain,
            trajectories={
                side: Trajectory(
                    tuple(
                        Span(
                            start=a, end=b, law=own.spans[0].law, origin=0.0, kind=kind, label=label
                        )
                        for kind, a, b, label in spans
                    )
                )
                for side, own in plain.trajectories.items()
            },
        )

    return made
