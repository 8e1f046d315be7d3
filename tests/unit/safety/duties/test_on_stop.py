"""What everybody does on the stop call: every role has a part, and nobody waits for anybody."""

from sequencer.safety.duties.on_stop import CALL_FOR_HELP, own_on_stop, stop_call
from sequencer.show.file_records.evening import StopCall
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document

SHOW = """\
title: One lantern
track: {file: song.ogg}
venue: {stage: {shape: rectangle, width: 12 m, depth: 8 m}, audience: [{line: [[-12, -9], [12, -9]]}]}
cast: [{name: Wren, stature: 1.7 m, prop: {tether: 55 cm}}]
crew:
  - {name: Flint, post: [-6, 3], duty: spotter}
  - {name: Brook, post: [6, 3], duty: spotter}
timeline: []
emergency: {caller: Brook}
stop_call: {does: {spotter: [run]}}
"""


def test_whom_the_emergency_card_names_calls_at_once_and_waits_for_nobody():
    """Nobody waits for anybody's word: the caller acts on the stop call, and tells the lead."""
    said = {part.role: part.does for part in stop_call(1, caller="Hazel")}

    assert "check that Hazel is calling for help" in said["lead"]
    assert not any("call for help" in line for line in said["lead"])
    assert said["Hazel"] == CALL_FOR_HELP
    assert not any("word" in line for line in CALL_FOR_HELP)


def test_without_a_caller_or_as_the_caller_the_lead_calls():
    own = [{part.role: part.does for part in stop_call(1, caller=caller, leads=["Ada"])}
           for caller in (None, "Ada, at the desk")]  # fmt: skip

    assert own[0] == own[1]
    assert own[0]["lead"][:2] == ("anybody hurt or on fire: call for help at once", "name the gate")
    other = {part.role: part.does for part in stop_call(1, caller="Adam", leads=["Ada"])}
    assert "Adam" in other  # whose name only begins like the lead's


def test_one_person_gets_their_part_and_the_call_for_help_if_it_is_theirs():
    record = show_from_document(parse_document(SHOW, "s.yaml")).show

    assert own_on_stop(record, 2, "Flint", "spotter") == ("run",)
    assert own_on_stop(record, 2, "Brook", "spotter") == ("run", *CALL_FOR_HELP)
    assert own_on_stop(record, 2, None, "operator")[0] == "cut the sound at once"
    assert "wait for nobody" in own_on_stop(record.model_copy(update={"stop_call": StopCall()}), 2, "Flint", "spotter")  # fmt: skip
    assert "smother" not in " ".join(own_on_stop(record, 0, "Flint", "performer"))


def test_the_stop_call_has_a_part_for_every_role():
    lit, dark = stop_call(2), stop_call(0)

    assert [part.role for part in lit] == [part.role for part in dark]
    assert {
        "everybody",
        "operator",
        "performer",
        "spotter",
        "perimeter",
        "fuel keeper",
        "lighter",
        "lead",
    } == {part.role for part in lit}
    assert any("smother" in line for part in lit for line in part.does)
    assert not any("smother" in line for part in dark for line in part.does)
