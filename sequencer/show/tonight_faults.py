"""What stands against the cast of tonight: names that nobody has, parts taken twice, people in two places."""

from collections.abc import Callable, Iterator, Sequence
from typing import Any

from pydantic import ValidationError

from sequencer.errors import InputError
from sequencer.show.file_records.tonight_record import StandIn
from sequencer.show.model import Show

_Fault = Callable[..., InputError]
_Nearest = Callable[[str, list[str]], str]


def tonight_faults(show: Show, fault: _Fault, nearest: _Nearest) -> Iterator[InputError]:
    """Faults of the heading `tonight`.

    Parameters
    ----------
    show : Show
        As the file says it.
    fault : callable
        Makes an error from its code, path, text and mend.
    nearest : callable
        Says which known words are meant.
    """
    tonight = show.tonight
    if tonight is None:
        return
    crew = [post.name for post in show.crew]
    everybody = [*show.names, *crew]
    yield from _away_faults(show, tonight.away, everybody, fault, nearest)
    free = set(tonight.away) | {each.part for each in tonight.stand_ins}
    taken: dict[str, int] = {}
    for k, each in enumerate(tonight.stand_ins):
        yield from _of_one(show, each, ("tonight", "stand_ins", k), fault, nearest)
        busy = next((own for own in everybody if _same(own, each.name) and own not in free), None)
        if busy is not None:
            yield fault(
                "needed-twice", ("tonight", "stand_ins", k, "name"),
                f"{busy} has a part of their own tonight",
                f"put {busy} under away as well, or name somebody else",
            )  # fmt: skip
        for key, said in (("for", each.part), ("name", each.name)):
            word = f"{key} {said.casefold()}"
            if word in taken:
                what = (
                    f"the part of {said} is taken twice" if key == "for"
                    else f"{said} takes two parts"
                )  # fmt: skip
                yield fault("taken-twice", ("tonight", "stand_ins", k, key), what, "name each once")
            taken.setdefault(word, k)
        if each.part in tonight.away:
            yield fault(
                "away-and-taken", ("tonight", "stand_ins", k, "for"),
                f"{each.part}'s part falls out and is taken: it is under away too",
                f"take {each.part} out of away, or take the stand-in out",
            )  # fmt: skip


def _away_faults(
    show: Show, away: Sequence[str], everybody: list[str], fault: _Fault, nearest: _Nearest
) -> Iterator[InputError]:
    for k, name in enumerate(away):
        if name in away[:k]:
            yield fault(
                "name-twice", ("tonight", "away", k), f"{name} is away twice", "name each once"
            )
        if name not in everybody:
            what = f"{name!r} is in neither cast nor crew"
            yield fault("unknown-person", ("tonight", "away", k), what, nearest(name, everybody))
    if set(show.names) <= set(away):
        yield fault(
            "nobody-left", ("tonight", "away"), "everybody in the cast is away",
            "leave somebody in, or give stand-ins",
        )  # fmt: skip


def _of_one(
    show: Show, each: StandIn, path: tuple[Any, ...], fault: _Fault, nearest: _Nearest
) -> Iterator[InputError]:
    crew = [post.name for post in show.crew]
    if each.part in show.names:
        if each.stature is not None:
            try:
                each.as_performer(show.cast[show.names.index(each.part)])
            except ValidationError as error:
                what = error.errors()[0]["msg"].removeprefix("Value error, ")
                yield fault("bad-value", path, f"{each.name} as {each.part}: {what}", "correct it")
        else:
            yield fault(
                "missing-key", path, f"nothing says how tall {each.name} is, who dances {each.part}'s part",
                "add a stature, such as stature: 1.70 m",
            )  # fmt: skip
    elif each.part not in crew:
        yield fault(
            "unknown-person", (*path, "for"), f"{each.part!r} is in neither cast nor crew",
            nearest(each.part, [*show.names, *crew]),
        )  # fmt: skip
    elif each.danced:
        yield fault(
            "bad-value", (*path, each.danced[0]),
            f"{each.part} is in the crew, and a post needs no {each.danced[0].replace('_', ' ')}",
            "leave it out",
        )  # fmt: skip


def _same(one: str, other: str) -> bool:
    return one.casefold() == other.casefold()
