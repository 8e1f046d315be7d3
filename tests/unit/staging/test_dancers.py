"""Laws of blocks are taken again only for the same block, body and props."""

from sequencer.geometry.bodies import Body
from sequencer.motion.trajectories.one_link.link_limits import PaceLimits
from sequencer.show.model import Limits
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.dancers import _laws, link_limits
from sequencer.staging.timeline import staged
from sequencer.timing.tempo import TempoMap
from tests.songs import even_song
from tests.unit.staging.test_dances import SHOW


def test_a_longer_tether_is_another_law():
    """Source: patterns are drawn for the prop they are danced with; a body of the same stature is the same body."""
    show = staged(show_from_document(parse_document(SHOW, "s.yaml")), even_song(8))
    block, body = show.blocks[0], Body(stature=1.7)
    first = _laws(show.read, block, body, {"right": 0.45, "left": 0.45}, show.book)
    again = _laws(show.read, block, Body(stature=1.7), {"right": 0.45, "left": 0.45}, show.book)
    longer = _laws(show.read, block, body, {"right": 0.6, "left": 0.6}, show.book)

    assert again["right"] is first["right"]
    assert longer["right"] is not first["right"]


def test_a_link_may_ask_for_what_the_show_allows_at_its_fastest():
    limits = Limits(hand_speed=3.0, hand_acceleration=40.0, turns=1.5, torque=5.0)
    found = link_limits(limits, TempoMap.steady(120.0, beats=16), 4.0, 6.0)
    assert found == PaceLimits(hand_speed=3.0, hand_acceleration=40.0, turns=1.5, torque=5.0).at(
        2.0
    )
    assert found.torque == 5.0 / 2.0**2
