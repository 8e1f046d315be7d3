"""Arrangements for the evening: the stop call, the emergency card, the weather limits.

Anything left out is a blank line on the sheets, to be filled in by hand on the day.
"""

import re
from typing import Literal, Self

from pydantic import Field, model_validator

from sequencer.show.file_records.field_kinds import Date, Name, Speed
from sequencer.show.file_records.record import Names, Record

Role = Literal[
    "everybody", "lead", "performer", "spotter", "perimeter", "fuel keeper", "lighter", "operator"
]


_ARTICLE = re.compile(r"^(any|no|some|a|an|the)\s+", re.IGNORECASE)


class StopCall(Record):
    """The call that stops the act: its word and hand signal, who may give it, what each person does."""

    word: Name = Field(
        "STOP", description="the word that is shouted; short, and not a word from the song"
    )
    signal: Name = Field(
        "both arms crossed overhead", description="the hand signal for those who cannot hear"
    )
    callers: Names = Field(
        ("all",), min_length=1, description="who may give it: all, or names from the cast and crew"
    )
    does: dict[Name, Names] = Field(
        default_factory=dict,
        description="what each person does when it is called, by role (everybody, lead, performer, spotter, perimeter, "
        "fuel keeper, lighter, operator) or by name; default: the usual duties",
    )

    @model_validator(mode="after")
    def _says(self) -> Self:
        if len(self.word) > 40:
            raise ValueError("a stop word is shouted: use at most 40 characters")
        return self


class Emergency(Record):
    """The emergency card: what the caller says, and where to get help."""

    number: Name | None = Field(None, description="emergency number that works at this place")
    address: Name | None = Field(
        None, description="address of the place, as a driver would need it"
    )
    gate: Name | None = Field(None, description="gate or access for fire engine and ambulance")
    grid: Name | None = Field(None, description="grid reference or coordinates of that gate")
    meeting_point: Name | None = Field(None, description="where responders are met, and by whom")
    meets: Name | None = Field(None, description="who meets the responders and leads them in")
    caller: Name | None = Field(None, description="who calls")
    first_aider: Name | None = Field(None, description="first aider, and where they are")
    hospital: Name | None = Field(None, description="nearest hospital or burn unit")
    poison_help: Name | None = Field(
        None, description="poison centre's number, in case fuel is swallowed"
    )
    authority: Name | None = Field(None, description="contact at the authority on the night")

    @property
    def lines(self) -> tuple[tuple[str, str | None], ...]:
        """Each line of the card and its entry; None if it is to be filled in by hand."""
        return (
            ("Emergency number here", self.number),
            ("Who calls", self.caller),
            ("Address of the place", self.address),
            ("Gate for engine and ambulance", self.gate),
            ("Grid reference", self.grid),
            ("Meeting point", self.meeting_point),
            ("Who meets the responders", self.meets),
            ("First aider", self.first_aider),
            ("Nearest hospital or burn unit", self.hospital),
            ("Poison help", self.poison_help),
            ("The authority on the night", self.authority),
        )


class Weather(Record):
    """Weather in which nothing is lit; printed with the go/no-go lines."""

    gusts: Speed | None = Field(
        None,
        description="gusts at or above which nothing is lit; a lower limit in the rules takes precedence",
    )
    rain: Name | None = Field(
        None, description="rain in which nothing is lit, such as rain since soaking"
    )
    lightning: Name | None = Field(
        None, description="lightning conditions in which the place is cleared"
    )
    dryness: Name | None = Field(None, description="fire-danger notice at which nothing is lit")
    other: Names = Field((), description="any other reason to stop: heat, cold, fog, dust")

    @property
    def lines(self) -> tuple[str, ...]:
        """The limits, as statements that must be true before anybody is lit: "No rain since soaking."."""
        given = (self.rain, self.lightning, self.dryness, *self.other)
        return tuple(f"No {_ARTICLE.sub('', limit.rstrip('.'))}." for limit in given if limit)


class Permit(Record):
    """The authority's permit: what makes a print-out more than a draft, and which limits it loosens."""

    number: Name | None = Field(None, description="the authority's reference number")
    issued_by: Name | None = Field(None, description="the authority that issued it")
    start: Date | None = Field(None, alias="from", description="first day on which it holds")
    until: Date | None = Field(None, description="last day on which it holds")
    place: Name | None = Field(
        None, description="the place it is for, as written under `venue`, `name`"
    )
    loosens: Names = Field(
        (),
        description="subjects of rules, such as audience-distance, on which it allows the chosen profile's figure, or "
        "the show's, instead of a stricter one; it loosens nothing else",
    )

    @model_validator(mode="after")
    def _days(self) -> Self:
        if self.start and self.until and self.until < self.start:
            raise ValueError(f"the permit ends on {self.until}, before it starts on {self.start}")
        return self

    @property
    def blanks(self) -> tuple[str, ...]:
        """Keys that are not stated, without which it is not a permit."""
        given = {
            "number": self.number,
            "issued_by": self.issued_by,
            "from": self.start,
            "until": self.until,
            "place": self.place,
        }
        return tuple(
            key for key, value in given.items() if value is None or not any(map(str.isalnum, value))
        )
