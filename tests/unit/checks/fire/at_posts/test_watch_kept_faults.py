"""What is wrong with the watch, without the posts that would mend it."""

import re
from dataclasses import replace

import pytest
from shapely import Point, unary_union

from sequencer.checks.check import Check
from sequencer.checks.fire.at_posts import watch_kept
from sequencer.checks.outcome import Outcome
from sequencer.facts.flames import FASTEST_HEAD, stretched_reach
from sequencer.safety.duties.watching import Duty
from sequencer.safety.site_ground.post_ground import post_faults
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.property.test_edits import SHOW, SONG
from tests.sites import site
from tests.unit.safety.site_ground.test_post_ground import RING


@pytest.fixture
def show():
    far = SHOW.replace("post: [-8, 6]", "post: [-30, 6]")
    return staged(show_from_document(parse_document(far, "s.yaml")), SONG)


def test_the_faults_are_those_of_the_check_but_for_the_proposed_posts(show, monkeypatch):
    with monkeypatch.context() as patch:
        patch.setattr(watch_kept, "proposed_posts", None)
        faults = watch_kept.CHECK.faults(show)
    whole = watch_kept.CHECK.outcome(show)
    assert any(each.remedies[-1].startswith("post ") for each in whole.findings)
    plain = [[replace(each, remedies=()) for each in some.findings] for some in (faults, whole)]
    assert plain[0] == plain[1]
    assert faults.not_checked == whole.not_checked
    assert watch_kept.CHECK.faults(show) is whole, "what is known with its mends is not found again"


def _places(finding):
    """Places in the mends of a finding that somebody is sent to."""
    told = [each for each in finding.remedies if re.match(r"post |move \S+ [\d.]+ m to ", each)]
    return [
        (float(x), float(y))
        for each in told
        for x, y in re.findall(r"\[(-?[\d.]+), (-?[\d.]+)\]", each)
    ]


def test_nobody_is_sent_into_a_ring_of_performers():
    """From 16 m upstage the way to the far performer of the ring leads into it, and would keep the limit there."""
    ring = site(*RING, ("post: [0, 9]", "post: [0, 16]"))
    act = unary_union(
        [Point(dancer.floor.place_at(8.0)).buffer(dancer.reach) for dancer in ring.dancers]
    ).convex_hull
    found = [
        each for each in watch_kept.CHECK.outcome(ring).findings if each.code == "post-out-of-reach"
    ]
    places = [place for each in found for place in _places(each)]

    assert found
    assert places
    for place in places:
        assert act.distance(Point(place)) > 0.25
        assert post_faults(ring, Duty(who="new", place=place, duty="spotter"), place) == ()
    assert act.contains(Point(0, 7.45)), "where the way there ends"


def test_a_check_whose_mends_are_cheap_tells_its_outcome(show):
    asked = []

    def run(each):
        asked.append(each)
        return Outcome()

    check = Check(name="cheap", run=run, codes={"none": ("note",)})
    assert check.faults(show) is check.outcome(show)
    assert asked == [show]


def test_a_faster_flame_is_never_shorter():
    """So a performer who is looked at with the flame of an ordinary prop is not seen closer than they are."""
    reaches = [
        stretched_reach(0.3, diameter=0.06, speed=FASTEST_HEAD * k) for k in (1, 1.2, 2, 5, 20)
    ]
    assert reaches == sorted(reaches)
