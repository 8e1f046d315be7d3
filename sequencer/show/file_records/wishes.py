"""What a performer can dance, and what a routine that is drafted should hold.

`sequencer draft` goes by both; nothing that is danced does. Names of patterns are looked up when the show is staged
(`staging.wish_faults`), since a pattern file may bring some; `check` notes wishes that no draft can meet.
"""

from collections.abc import Iterator, Mapping, Sequence
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, WithJsonSchema, model_validator

from sequencer.show.file_records.field_kinds import Name
from sequencer.show.file_records.record import Names, Record

USUAL_LEVEL = 3  # of somebody whose cast entry says nothing
MOST_WISHED = 40  # of one move
STOP_MOVE = "stop"  # the move that is no pattern: nothing spins
_BEFORE = "before "

SkillLevel = Annotated[int, Field(ge=1, le=5)]
DraftMark = Annotated[str, Field(pattern=r"^[a-z]+$")]  # a word, see `show.drafted`


class Repertoire(Record):
    """Patterns that a performer dances, is learning, or never dances."""

    known: Names = Field((), description="patterns that they dance; with `level`, besides those")
    learning: Names = Field(
        (), description="patterns to be used only where a wish names them or the music is calm"
    )
    never: Names = Field((), description="patterns that are never used")


def _often(value: Any) -> Any:
    """A number of times, or moments of stops."""
    if isinstance(value, int):
        return value
    text = str(value).strip()
    if text.isdecimal() and len(text) < 10:
        return int(text)
    if isinstance(value, list | tuple):
        return tuple(str(each) for each in value)
    if text.startswith(_BEFORE):
        return (text,)
    raise ValueError(f"{value!r} is neither a number of times nor a place such as `before refrain`")


HowOften = Annotated[
    int | tuple[str, ...],
    BeforeValidator(_often),
    WithJsonSchema(
        {
            "anyOf": [
                {"type": ["integer", "string"]},
                {"type": "array", "items": {"type": "string"}},
            ],
            "description": "a number of times; for a stop also a place",
            "examples": ["2", "before refrain"],
        }
    ),
]


class Wishes(Record):
    """What a drafted routine should hold."""

    moves: dict[Name, HowOften] = Field(
        default_factory=dict,
        description="moves that must occur, and in how many different places: a family such as `hybrid` or `toroid`, a "
        "pattern, or a word in patterns' names such as `flower`; `stop: before refrain` (each of them), "
        "`stop: before refrain 2` or `stop: 2` for stops in which nothing spins",
    )
    character: dict[Name, Literal["calm", "full"]] = Field(
        default_factory=dict,
        description="of a section, by its name or by the name that repeats share; default: as loud as the music",
    )
    returns: Literal["alike", "same", "free"] = Field(
        "alike",
        description="how parts of the song that return are danced: `alike`, the same moves each time, smaller where the part "
        "is softer and larger where it is louder; the `same`, as large each time too; or `free`, differently each time",
    )
    walking: Literal["none", "little", "much"] = Field(
        "little", description="how often a group changes its formation"
    )
    lead: Name | None = Field(
        None, description="whose dance the others follow; default: the first of the cast"
    )

    @model_validator(mode="after")
    def _countable(self) -> "Wishes":
        for move, often in self.moves.items():
            if isinstance(often, int) and not 1 <= often <= MOST_WISHED:
                raise ValueError(f"{move}: {often} times is outside 1 … {MOST_WISHED}")
            if isinstance(often, tuple):
                if move != STOP_MOVE:
                    raise ValueError(f"{move}: only a stop has a place; give a number of times")
                wrong = [each for each in often if not each.startswith(_BEFORE)]
                if wrong:
                    raise ValueError(
                        f"stop: {wrong[0]!r} is no place; write `before` and the name of a section"
                    )
        return self

    @property
    def stops(self) -> tuple[str, ...] | int:
        """Names of the sections before which everything stops, or how many stops there should be."""
        often = self.moves.get(STOP_MOVE, 0)
        if isinstance(often, int):
            return often
        return tuple(each.removeprefix(_BEFORE).strip() for each in often)

    @property
    def counted(self) -> Mapping[str, int]:
        """How often each pattern or kind of pattern is wished."""
        return {
            move: often
            for move, often in self.moves.items()
            if isinstance(often, int) and move != STOP_MOVE
        }


def meant_by(word: str, families: Mapping[str, str]) -> tuple[str, ...]:
    """Patterns that a word means: a family, else the pattern of that name, else those with it in their names.

    Parameters
    ----------
    word : str
    families : mapping of str to str
        The family of each pattern, by its name.
    """
    of_family = tuple(name for name, family in families.items() if family == word)
    if of_family:
        return of_family
    if word in families:
        return (word,)
    return tuple(name for name in families if word in name.split("-"))


Missing = tuple[tuple[str | int, ...], str]  # path in the file, and the word that means no pattern


def words_for_nothing(
    repertoires: Sequence[Repertoire | None], wishes: Wishes, families: Mapping[str, str]
) -> Iterator[Missing]:
    """Words under repertoires and wishes that mean no pattern."""
    for i, each in enumerate(repertoires):
        if each is None:
            continue
        for key in ("known", "learning", "never"):
            for k, word in enumerate(getattr(each, key)):
                if not meant_by(word, families):
                    yield ("cast", i, "repertoire", key, k), word
    for word in wishes.counted:
        if not meant_by(word, families):
            yield ("wishes", "moves", word), word
