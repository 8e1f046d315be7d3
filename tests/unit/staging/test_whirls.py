"""Props that would turn so often in a beat that nothing can be said of them are refused, with the cycle to write."""

import numpy as np
import pytest

from sequencer.errors import InputError
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from sequencer.staging.whirls import MOST_TURNS
from tests.songs import even_song
from tests.unit.staging.test_dances import SHOW


def made(entry, phrases=""):
    head = SHOW[: SHOW.index("timeline:")]
    return staged(
        show_from_document(parse_document(f"{head}{phrases}timeline:\n{entry}", "s.yaml")),
        even_song(8),
    )


@pytest.mark.parametrize(
    ("given", "cycle"),
    [
        ("pattern: two-beat-weave, cycle: 1/8", "0.25"),  # two turns a cycle
        ("pattern: static-spin, cycle: 1/8", None),
        ("pattern: pendulum, cycle: 1/8", "0.25"),
        ("pattern: pro-bend-3, cycle: 1/8", "0.625"),
        ("pattern: inspin-flower-5, cycle: 1/4", "0.75"),
        ("pattern: two-beat-weave, cycle: 0.25", None),
    ],
)
def test_the_cycle_that_is_named_is_the_least_that_stages(given, cycle):
    row = f"  - {{from: 1.1, {given}, beats: 4}}\n"
    if cycle is None:
        (dancer,) = made(row).dancers
        spans = [own for hand in dancer.trajectories.values() for own in hand.spans]
        fastest = max(own.law.bounds().turn_rate for own in spans if own.kind == "block")
        assert 0.5 < fastest / (2.0 * np.pi * MOST_TURNS) <= 1.0 + 1e-6
        return
    with pytest.raises(InputError) as caught:
        made(row)
    assert caught.value.code == "turns-too-often"
    assert caught.value.mend.startswith(f"write `cycle: {cycle}` or more")
    written = given.split("cycle: ")[1]
    made(row.replace(f"cycle: {written}", f"cycle: {cycle}"))
    with pytest.raises(InputError):
        made(row.replace(f"cycle: {written}", f"cycle: {float(cycle) - 0.125}"))


def test_in_a_phrase_its_step_is_named():
    with pytest.raises(InputError) as caught:
        made(
            "  - {from: 1.1, phrase: fast, repeat: 2}\n",
            "phrases:\n  fast:\n    - {pattern: two-beat-weave, beats: 2, cycle: 1/8}\n",
        )
    place = caught.value.place
    head = SHOW[: SHOW.index("timeline:")].count("\n")
    assert place.line == head + 3
