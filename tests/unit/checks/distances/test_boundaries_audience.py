"""An audience line over the stage stops the show; one along its edge does not."""

import pytest

from sequencer.checks.distances.boundaries import boundaries
from sequencer.checks.distances.requirements import Requirements
from sequencer.geometry.regions import AudienceEdge, Venue, rectangle
from sequencer.timing.tempo import TempoMap


@pytest.mark.parametrize(("y", "codes"), [(4.0, ["audience-on-stage"]), (0.0, []), (-9.0, [])])
def test_lines_over_the_stage_are_found(dance, y, codes):
    venue = Venue(
        stage=rectangle(12, 8), audience=(AudienceEdge(line=((-9.0, y), (9.0, y)), name="rows"),)
    )
    tempo = TempoMap.steady(100, beats=64)
    found = boundaries(
        [dance.dancer("Ada", (0.0, 4.0))], tempo, venue, Requirements(), start=0.0, end=8.0
    )
    assert [f.code for f in found.findings if f.code == "audience-on-stage"] == codes
