"""Refuses texts of a file that would steer a terminal, or turn a line around, wherever they are told of."""

from collections.abc import Iterator
from typing import Any

from sequencer.errors import InputError
from sequencer.show.text.document import Document
from sequencer.show.text.plain_values import ValuePath
from sequencer.unseen_letters import steering_fault


def unseen_texts(document: Document, *under: str) -> Iterator[InputError]:
    """Keys and values that hold letters which nobody sees and a terminal obeys, each with its place.

    Parameters
    ----------
    document : Document
        A show, a file of patterns, or a file of rules.
    under : str
        The heading to look at; default: all that it says.
    """
    if not document.may_steer:
        return
    value = document.values
    for key in under:
        value = value.get(key) if isinstance(value, dict) else None
    yield from _faults(document, value, under)


def _faults(document: Document, value: Any, path: ValuePath) -> Iterator[InputError]:
    if isinstance(value, dict):
        for key, own in value.items():
            if (fault := steering_fault(str(key))) is not None:
                yield InputError(
                    "unseen-letter", document.key_place(*path, key), f"{key!r}: a key {fault}", _MEND
                )  # fmt: skip
            yield from _faults(document, own, (*path, key))
    elif isinstance(value, list):
        for i, own in enumerate(value):
            yield from _faults(document, own, (*path, i))
    elif isinstance(value, str) and (fault := steering_fault(value)) is not None:
        subject = next((key for key in reversed(path) if isinstance(key, str)), "this")
        yield InputError("unseen-letter", document.place(*path), f"{subject}: {value!r}: a text {fault}", _MEND)  # fmt: skip


_MEND = "write the text again without them; an editor may not show them"
