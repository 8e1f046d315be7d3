"""One person, one role; extinguishers on opposing sides: the cases at the edge."""

import pytest

from sequencer.checks.fire.crew import role_findings
from sequencer.checks.fire.extinguishers_at_hand import Placed, opposed
from sequencer.facts.extinguishers import hazard_of_volume
from sequencer.safety.watching import Duty


@pytest.mark.parametrize(
    ("roles", "severity"),
    [(("spotter", "perimeter"), "stop"), (("perimeter", "fuel keeper"), "warn")],
)
def test_a_spotter_with_a_second_role_is_a_stop(roles, severity):
    """A spotter's only task is spotting: Grants Pass OR, 2019 [A5; read]."""
    crew = [Duty(who="Ada", place=(0.0, 0.0), duty=role, watches=("all",)) for role in roles]
    (found,) = role_findings(crew, ["Wren"], lit=["Wren"], apart=None)

    assert (found.code, found.severity) == ("crew-doubles", severity)


@pytest.mark.parametrize(("other", "apart"), [((0.0, 5.0), True), ((0.1, 5.0), False)])
def test_sides_oppose_from_a_right_angle_on(other, apart):
    two = [Placed(place=(5.0, 0.0), rating="2-A:10-B:C", kind="foam"),
           Placed(place=other, rating="2-A:10-B:C", kind="foam")]  # fmt: skip

    assert opposed(two, (0.0, 0.0)) == [apart]


def test_a_gallon_is_no_longer_a_light_hazard():
    """Light below 1 US gal, ordinary from it on: NFPA 10 summary [B2; read second-hand]."""
    assert hazard_of_volume(3.785411784e-3) == "ordinary"
