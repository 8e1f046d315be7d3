"""Every operation by its name in JSON, in the order in which a page lists them."""

from typing import Any

from sequencer.show.operations.block_operations import (
    ChangeBlock,
    CopyBlocks,
    DeleteBlocks,
    MoveBlock,
    PasteBlocks,
    PutBlock,
    SplitBlock,
    StretchBlock,
)
from sequencer.show.operations.combined_operations import DoTogether, MakeChanges, PutBack
from sequencer.show.operations.floor_operations import (
    ChangeWalk,
    DeleteFormation,
    DeleteWalk,
    MoveSpot,
    PutWalk,
    RenameFormation,
    SetFormation,
    SetWay,
)
from sequencer.show.operations.heading_operations import (
    ChangeHeading,
    ChangeItem,
    ChangeSection,
    ChangeTitles,
    CorrectCount,
    DeleteHeading,
    DeleteItem,
    DeleteSection,
    PutItem,
    PutSection,
)
from sequencer.show.operations.operation import Operation, operation_from_json
from sequencer.show.operations.pattern_operations import (
    AddPattern,
    ChangePattern,
    DeletePattern,
    RenamePattern,
    SetPatternFiles,
)
from sequencer.show.operations.people_operations import (
    AddCrew,
    AddPerformer,
    ChangePerson,
    RemovePerson,
    RenamePerson,
)
from sequencer.show.operations.phrase_operations import (
    ChangeHere,
    DeletePhrase,
    NamePhrase,
    RenamePhrase,
    SplitOut,
    WriteOutPhrase,
)
from sequencer.show.operations.section_operations import SetSections
from sequencer.show.operations.together_operations import (
    AnswerWith,
    PartEntry,
    SetCanon,
    SetMirror,
    SetUnison,
)
from sequencer.show.operations.tonight_operations import SetAway, SetStandIn, SetThere

OPERATIONS: dict[str, type[Operation]] = {
    kind.KIND: kind
    for kind in (
        PutBlock, ChangeBlock, StretchBlock, MoveBlock, SplitBlock, CopyBlocks, PasteBlocks, DeleteBlocks,
        SetCanon, SetMirror, SetUnison, PartEntry, AnswerWith,
        NamePhrase, WriteOutPhrase, SplitOut, ChangeHere, RenamePhrase, DeletePhrase,
        MoveSpot, SetFormation, RenameFormation, DeleteFormation, PutWalk, ChangeWalk, SetWay, DeleteWalk,
        AddPerformer, AddCrew, ChangePerson, RenamePerson, RemovePerson,
        AddPattern, ChangePattern, RenamePattern, DeletePattern, SetPatternFiles,
        SetAway, SetStandIn, SetThere,
        ChangeTitles, ChangeHeading, DeleteHeading, PutItem, ChangeItem, DeleteItem,
        CorrectCount, PutSection, ChangeSection, DeleteSection, SetSections,
        DoTogether, MakeChanges, PutBack,
    )
}  # fmt: skip


def read_operation(data: Any) -> Operation:
    """An operation from its JSON: `do` names one of `OPERATIONS`, all else are its fields.

    Parameters
    ----------
    data : mapping

    Raises
    ------
    InputError
        If there is no such operation, or a field is missing, unknown or wrong.
    """
    return operation_from_json(data)
