"""How far people deviate: for all, for somebody by name, and by a log of rehearsals."""

import math

import pytest

from sequencer.motion.performers.drifting import MeasuredSpread, Spread
from sequencer.show.file_records.drift_records import Drift


def test_nothing_said_is_what_all_do():
    own = Drift()
    assert own.spread() == Spread(facing=math.radians(8.6))
    assert own.own_spreads({}, ["Wren", "Moss"]) == {}
    assert (own.missed, own.marks) == (0.02, 0.05)


def test_somebody_differs_only_in_what_is_said_of_them():
    own = Drift(
        place="20 cm", people={"Wren": {"place": "40 cm", "facing": 20}, "Moss": {"timing": 0}}
    )
    found = own.own_spreads({}, ["Wren", "Moss", "Sable"])
    base = own.spread()

    assert set(found) == {"Wren", "Moss"}
    assert (found["Wren"].place, found["Wren"].facing) == (0.4, pytest.approx(math.radians(20)))
    assert (found["Wren"].timing, found["Wren"].hand) == (base.timing, base.hand)
    assert (found["Moss"].place, found["Moss"].timing) == (0.2, 0.0)


def test_a_log_speaks_where_the_show_does_not():
    own = Drift(people={"Wren": {"place": "40 cm"}})
    logged = {
        "Wren": MeasuredSpread(place=0.1, timing=0.3),
        "Moss": MeasuredSpread(timing=0.2),
        "Sable": MeasuredSpread(place=math.nan),
        "Ghost": MeasuredSpread(place=0.5),
    }
    found = own.own_spreads(logged, ["Wren", "Moss", "Sable"])

    assert set(found) == {"Wren", "Moss"}  # of Sable nothing was measured, and nobody else dances
    assert (found["Wren"].place, found["Wren"].timing) == (0.4, 0.3)
    assert (found["Moss"].place, found["Moss"].timing) == (own.place, 0.2)


@pytest.mark.parametrize("given", [{"missed": 1.5}, {"missed": -0.1}, {"marks": "3 m"}])
def test_what_cannot_be_is_refused(given):
    with pytest.raises(ValueError, match="is outside"):
        Drift(**given)
