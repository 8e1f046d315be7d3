"""How far a cycle has to change, by the figures of a fault."""

from math import inf

import pytest

from sequencer.findings import Figure, Finding
from sequencer.planning.edits.pace_edits import pace_share


def fault(code, *figures):
    return Finding(
        code=code, severity="stop", who=("Isa",), start=0.0, end=1.0, position="1.1", message="",
        figures=figures,
    )  # fmt: skip


def of(quantity, value, limit):
    return Figure(quantity=quantity, value=value, limit=limit, unit="")


def test_a_slack_cycle_shrinks_to_the_tempo_that_keeps_it_taut():
    taut = Figure(quantity="tempo", value=100.0, limit=200.0, unit="beats/min", least=True)
    assert pace_share(fault("tether-slack", taut)) == pytest.approx(0.51)
    never = Figure(quantity="tempo", value=100.0, limit=inf, unit="beats/min", least=True)
    assert pace_share(fault("tether-slack", never)) == 1.0


def test_a_fast_one_grows_by_the_figure_that_asks_for_most():
    assert pace_share(fault("too-fast-to-dance", of("turns", 5.0, 2.5))) == pytest.approx(2 / 1.02)
    # an acceleration goes with the square of the pace, so four times too much is twice too fast
    sharp, fast = of("hand acceleration", 320.0, 80.0), of("turns", 7.5, 2.5)
    assert pace_share(fault("too-fast-to-dance", sharp)) == pytest.approx(2 / 1.02)
    assert pace_share(fault("too-fast-to-dance", sharp, fast)) == pytest.approx(3 / 1.02)
    assert pace_share(fault("self-tangle", of("gap between props", -0.1, 0.0))) == 1.0
