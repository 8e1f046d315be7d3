"""Laws of blocks are taken again only for the same block, body and props."""

from sequencer.geometry.bodies import Body
from sequencer.show.document import parse_document
from sequencer.show.reading import show_from_document
from sequencer.staging.dancers import _laws
from sequencer.staging.timeline import staged
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
