"""What an extinguisher stands ready for: as entered, or what it is nearer to."""

import pytest

from sequencer.safety.site_ground.guarding import guarded_by
from tests.sites import site

THIRD = '{at: [11, 11], rating: "2-A:10-B:C", kind: foam}'


@pytest.mark.parametrize(
    ("third", "guards"),
    [
        ("{at: [11, 11]}", "fuel"),
        ("{at: [11, 11], guards: act}", "act"),
        # between Moss at [2, 4] and the fuel at [11, 12], 12.04 m apart: halfway is [6.5, 8]
        ("{at: [6.4, 7.9]}", "act"),
        ("{at: [6.6, 8.1]}", "fuel"),
        ("{at: [2, 2], guards: fuel}", "fuel"),
    ],
)
def test_it_stands_ready_for_what_it_is_nearer_to(third, guards):
    assert guarded_by(site((THIRD, third))) == ("act", "act", guards)


def test_without_a_fuel_point_all_are_for_the_act():
    assert guarded_by(site(("  fuel_station: [11, 12]\n", ""))) == ("act", "act", "act")
