"""What the rehearsal page draws on the ground."""

import json
import math
from dataclasses import replace

from sequencer.findings import Figure, Finding, Report
from sequencer.motion.performers.body_parts import HandDeviation
from sequencer.outputs.rehearsal.page_data import finding_document, show_document
from sequencer.outputs.rehearsal.page_file import embedded_json
from tests.sites import site
from tests.unit.staging.in_flight.test_flown_show import flown


def lines(*pairs):
    place = show_document(site(*pairs), Report(show="s"))["place"]
    return {line["name"]: line["points"] for line in place["lines"]}


def test_ways_lane_gate_zone_and_ring_lie_on_the_ground():
    more = (
        "  fire_lane:",
        "  spin_off: [[10, 13], [13, 13], [13, 16]]\n  gate: [20, 4]\n  fire_lane:",
    )
    found = lines(more, ("at: [-16, -12]", "at: [0, 16]"))

    assert found["lane does not count"][-1] == [0, 16]
    assert found[""] == [[12, -9], [16, -12]]
    assert found["gate"] == [[20, 4]]
    assert found["spin-off zone"] == [[10, 13], [13, 13], [13, 16], [10, 13]]
    assert sorted(found["fire lane 4.0 m"][:4]) == [[12, 2], [12, 6], [20, 2], [20, 6]]
    ring = found["no flame, no audience within 6.10 m of the fuel"]
    assert ring[0] == ring[-1]
    assert all(abs(math.dist(point, (11, 12)) - 6.096) < 1e-3 for point in ring)


def test_a_show_without_them_draws_none():
    bare = lines(
        ("  fire_lane: {line: [[20, 4], [12, 4]], width: 4 m}\n", ""),
        ("  fuel_station: [11, 12]\n", ""),
    )

    assert set(bare) == {""}


def test_one_cause_is_one_entry_of_the_list_and_every_finding_keeps_its_mark():
    def found(who, start, position, message="Isa: 3 cm out of reach"):
        return Finding(
            code="hand-out-of-reach", severity="stop", who=who, start=start, end=start, position=position,
            message=message, remedies=("ahead 10 cm",),
        )  # fmt: skip

    findings = (
        found(("Isa",), 4.0, "3.1+1/2"), found(("Isa", "Ash"), 5.0, "3.3", "too close"),
        found(("Isa",), 8.0, "5.1+1/2"),
    )  # fmt: skip
    document = show_document(site(), Report(show="s", findings=findings))
    assert [each["position"] for each in document["findings"]] == ["3.1+1/2", "3.3", "5.1+1/2"]
    first, second = document["entries"]
    assert (first["position"], first["of"], first["remedies"]) == (
        "the and of 3.1",
        [0, 2],
        ["ahead 10 cm"],
    )
    assert "again at the and of 5.1" in first["message"]
    assert (second["position"], second["of"]) == ("3.3", [1])


def test_before_the_track_nothing_is_counted():
    early = Finding(
        code="post-out-of-reach", severity="stop", who=("Isa",), start=-16.0, end=3.0, position="-6.1+3/8", message="far"
    )  # fmt: skip
    (entry,) = show_document(site(), Report(show="s", findings=(early,)))["entries"]
    assert entry["position"] == "0:16.0 before the track"


def test_a_finding_without_a_limit_can_be_put_on_the_page():
    """No tempo keeps the tether taut: the limit of its figure has no end, for which JSON has no number."""
    limit = Figure(quantity="taut tempo", value=60.0, limit=math.inf, unit="beats/min", least=True)
    finding = Finding(
        code="tether-slack", severity="stop", who=("Isa",), start=4.0, end=5.0, position="3.1",
        message="the tether goes slack", remedies=("make the hand circle smaller",), source="here",
        figures=(limit,), hands=("left",),
    )  # fmt: skip
    document = finding_document(finding)
    assert json.loads(embedded_json(document)) == {
        "code": "tether-slack", "severity": "stop", "who": ["Isa"], "start": 4.0, "end": 5.0, "position": "3.1",
        "message": "the tether goes slack", "remedies": ["make the hand circle smaller"], "source": "here",
    }  # fmt: skip


def test_a_show_as_flown_can_be_asked_how_it_is_drawn():
    show, report = flown(), Report(show="s")
    drawn = show_document(show.drawn, report)
    both = show_document(show.staged, report, show.drawn)
    alone = show_document(show.staged, report)
    for own, other, plain in zip(both["cast"], drawn["cast"], alone["cast"], strict=True):
        assert own["drawn"].keys() == other["tracks"].keys()
        assert own["drawnDeviation"] == other["deviation"]
        assert own["tracks"]["right"] == plain["tracks"]["right"]
        assert own["reach"] == max(plain["reach"], other["reach"])
        assert "drawn" not in plain
    wide = replace(show.drawn.dancers[0], deviation={"right": (HandDeviation(0.0, 9.0, 5.0),)})
    wider = replace(show.drawn, dancers=(wide, show.drawn.dancers[1]))
    asked = show_document(show.staged, report, wider)["cast"]
    assert asked[0]["reach"] > asked[1]["reach"] + 4.0  # of the drawing's margin too
    assert [entry["name"] for entry in both["cast"]] == ["Ash", "Birch"]
    assert len(both["keys"]) > len(alone["keys"])
    assert both["title"] == "Two – as flown"
