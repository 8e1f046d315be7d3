"""Operations as JSON, and what becomes of one that cannot be done."""

import pytest

from sequencer.errors import InputError, Place
from sequencer.show.operations.block_operations import DeleteBlocks, StretchBlock
from sequencer.show.operations.combined_operations import DoTogether
from sequencer.show.operations.every_operation import OPERATIONS, read_operation
from sequencer.show.operations.operation import applied, apply, json_of, shown_text
from sequencer.show.operations.phrase_operations import ChangeHere
from tests.unit.show.operations.duo import SHOW

STRETCH = {"do": "stretch-block", "at": ["timeline", 4], "beats": 12}


def test_there_and_back_as_json_with_operations_in_it():
    inner = StretchBlock(at=("phrases", "wheel", 0), beats="1/2")
    both = DoTogether(
        operations=(ChangeHere(use=(("timeline", 0),), operation=inner), inner), said="both"
    )
    assert json_of(both)["operations"][0]["operation"] == {"do": "stretch-block", "at": ["phrases", "wheel", 0], "beats": "1/2"}  # fmt: skip
    assert read_operation(json_of(both)) == both
    assert read_operation(STRETCH) == StretchBlock(at=("timeline", 4), beats=12)


@pytest.mark.parametrize(
    ("data", "says"),
    [
        ({**STRETCH, "do": "strech"}, "operation: there is no operation 'strech'; did you mean 'stretch-block'"),
        ([], "operation: there is no operation None; write one of: "),
        ({**STRETCH, "beat": 1}, "operation stretch-block: unknown field 'beat'; did you mean 'beats'"),
        ({"do": "stretch-block"}, "operation stretch-block: the field 'at' is missing; add it"),
        ({**STRETCH, "at": "timeline"}, "operation stretch-block: at: input should be a valid array; correct it"),
        ({**STRETCH, "beats": [1]}, "operation stretch-block: beats.float: input should be a valid number"),
        ({"do": "do-together", "operations": [{"do": "x"}]}, "there is no operation 'x'"),
        ({"do": "change-heading", "heading": "cast", "values": {}}, "heading: input should be 'venue', 'fire'"),
    ],
)  # fmt: skip
def test_what_is_wrong_in_json_is_one_sentence(data, says):
    with pytest.raises(InputError) as told:
        read_operation(data)
    assert says in str(told.value)
    assert "\n" not in str(told.value)


def test_every_operation_has_a_name_words_and_frozen_fields():
    assert len(OPERATIONS) > 40
    for name, kind in OPERATIONS.items():
        assert name == name.lower().replace("_", "-") == kind.KIND
        assert kind.__dataclass_params__.frozen


def test_a_show_that_the_judge_refuses_is_not_made():
    def judge(read):
        if len(read.show.timeline) < 6:
            raise InputError("too-short", Place("s.yaml"), "too short", "dance more")

    before = shown_text(SHOW, "s.yaml")
    assert applied(before, StretchBlock(at=("timeline", 4), beats=8), judge=judge).text != SHOW
    with pytest.raises(InputError, match="too short; dance more"):
        applied(before, DeleteBlocks(at=(("timeline", 0),)), judge=judge)


def test_what_makes_no_show_is_refused_with_the_files_own_sentence():
    both = DeleteBlocks(at=(("phrases", "wheel", 0), ("phrases", "wheel", 1)))
    text = apply(SHOW, both, file="s.yaml")  # an empty phrase is found out when it is danced
    assert "wheel: []" in text
    with pytest.raises(InputError, match=r"s\.yaml:30:5: give one of pattern, phrase"):
        apply(SHOW, read_operation({"do": "change-block", "at": ["timeline", 4], "values": {"rest": None}}), file="s.yaml")  # fmt: skip


def test_a_file_with_a_fault_can_be_mended_by_an_operation():
    broken = SHOW.replace("{rest: 4}", "{rest: 4, pattern: a}")
    mend = read_operation(
        {"do": "change-block", "at": ["timeline", 4], "values": {"pattern": None}}
    )
    assert apply(broken, mend) == SHOW
    with pytest.raises(InputError, match="give one of pattern"):
        apply(broken, StretchBlock(at=("phrases", "wheel", 0), beats=8))
