"""Which floor counts for the audience: as entered, else as drawn less what must be kept clear of flames."""

import pytest

from sequencer.facts.rule_book import rule_book
from sequencer.safety.site_ground.audience_floor import audience_floor
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.songs import even_song

FLOOR = "floor: [[-10, -20], [10, -20], [10, -9], [-10, -9]]"
SHOW = """\
title: A
track: {{file: a.ogg}}
venue:
  stage: {{shape: rectangle, width: 10 m, depth: 8 m}}
  audience: [{{line: [[-10, -9], [10, -9]]{floor}}}]
{area}
cast: [{{name: Ada, stature: 1.7 m, prop: {{tether: 50 cm}}}}]
formations: {{here: {{spots: {{Ada: {{at: [0, {y}]}}}}}}}}
staging: [{{formation: here, from: 1.1}}]
fire: {{fuel: kerosene, flame: 0.5 m, burn: {{time: 4 min, measured: true}}, lit: [{{from: 1.1, until: 9.1}}]}}
"""


def floor_of(floor=f", {FLOOR}", area="", y=4):
    text = SHOW.format(floor=floor, area=area, y=y)
    return staged(show_from_document(parse_document(text, "a.yaml")), even_song(64))


def test_a_floor_far_from_the_fire_counts_whole():
    assert audience_floor(floor_of()) == pytest.approx(220.0)


def test_what_is_kept_clear_is_taken_off():
    """Nearer than reach and required distance to the flame: a segment of that circle, at most a bit larger."""
    show = floor_of(y=-4)
    kept_clear = show.dancers[0].reach + rule_book().audience_distance(1)[0]

    assert kept_clear > 5.0  # from [0, -4] to the edge of the floor
    assert 220.0 - 2 * kept_clear * (kept_clear - 5.0) < audience_floor(show) < 220.0


def test_what_is_entered_goes_first_and_nothing_is_made_up():
    assert audience_floor(floor_of(area="  audience_area: 90 m²")) == 90.0
    assert audience_floor(floor_of(floor="")) is None
