"""Long runs of random operations on a show, each held against the oracle; shared by tests and a benchmark."""

from collections import Counter
from dataclasses import dataclass, field
from difflib import unified_diff
from unittest import mock

import pytest

from sequencer.errors import InputError
from sequencer.show.operations.combined_operations import inverse
from sequencer.show.operations.every_operation import read_operation
from sequencer.show.operations.history import History
from sequencer.show.operations.operation import apply, json_of
from sequencer.show.reading import show_from_document
from sequencer.show.text import document
from sequencer.show.text.document import parse_document
from tests.made_operations import Draw
from tests.operation_oracle import expected, right_dance, text_of

BACK = 0.02  # of the steps put letters back


@dataclass
class Told:
    """What became of the operations."""

    done: int = 0
    refused: int = 0
    kinds: Counter = field(default_factory=Counter)
    codes: Counter = field(default_factory=Counter)


def run(text, random, *, steps, rounds, whole=1.0):
    """Operations on a show, from its text on in each round, with undo and redo.

    Parameters
    ----------
    text : str
    random : random.Random
    steps, rounds : int
    whole : float
        Share of the texts that are parsed in one go besides, to hold the parsing in pieces against it.
    """
    told, draw = Told(), Draw(random)
    for _ in range(rounds):
        history, texts = History(text, "s.yaml"), [text]
        for _ in range(steps):
            if random.random() < BACK:
                if put_back(history, random.choice(texts), random.choice(texts), told):
                    texts.append(history.text)
                continue
            values = text_of(parse_document(history.text, "s.yaml").values)
            op = draw.one(values)
            if one_step(history, values, op, told, whole=random.random() < whole):
                texts.append(history.text)
        revision = history.revision
        for back in reversed(texts[:-1]):
            assert history.undo()
            assert history.text == back
        assert not history.undo()
        assert history.text == text
        for forth in texts[1:]:
            assert history.redo()
            assert history.text == forth
        assert not history.redo()
        assert history.revision == revision + 2 * (len(texts) - 1)
    return told


def put_back(history, earlier, other, told):
    """The letters of an earlier text put back, and refused where another text stands; whether the text is another one."""
    before = history.text
    late = inverse(earlier, other, "an edit")  # made for `other`, which may not be what stands now
    there = before[late.start : late.start + len(late.old)]
    if there != late.old:
        with pytest.raises(InputError, match="changed since"):
            history.do(read_operation(json_of(late)))
        assert history.text == before
        told.refused += 1
        told.codes["put-back-late"] += 1
    back = read_operation(json_of(inverse(earlier, before, "an edit")))
    assert history.do(back, on=history.revision) == earlier
    assert earlier == before or history.can_undo[0] == "take back: an edit"
    told.done += 1
    told.kinds[back.KIND] += 1
    return earlier != before


def one_step(history, values, op, told, *, whole):
    """One operation; whether the text is another one."""
    before = history.text
    try:
        after = history.do(read_operation(json_of(op)), on=history.revision)
    except InputError as error:
        told.refused += 1
        told.codes[error.code] += 1
        refused = str(error)
    else:
        refused = None
    if refused is not None:
        assert refused.count("\n") < 12
        assert history.text == before
        return False
    told.done += 1
    told.kinds[op.KIND] += 1
    now = parsed(after, whole=whole)
    wanted = expected(values, op)
    if wanted is not None:
        assert now == wanted, f"{op}\n{before}\n----\n{after}"
    else:
        assert right_dance(values, now, op), f"{op}\n{before}\n----\n{after}"
        outside = {"timeline", "phrases"}
        assert {k: v for k, v in now.items() if k not in outside} == {
            k: v for k, v in values.items() if k not in outside
        }
    show_from_document(parse_document(after, "s.yaml"))  # it is a show, read without what was known
    assert apply(before, op, file="s.yaml") == after
    assert inverse(before, after).on(_Text(after)).text == before
    assert_words_stay(before, after, values, now, op)
    return after != before


class _Text:
    """As much of a `ShowText` as a way back needs."""

    file = "s.yaml"

    def __init__(self, text):
        self.text = text


def parsed(text, *, whole):
    found = parse_document(text, "s.yaml").values
    if whole:
        with mock.patch.object(document, "tree_in_pieces", return_value=None):
            assert parse_document(text, "s.yaml").values == found
    return found


def assert_words_stay(before, after, values, now, op):
    """Comments on lines of their own, line ends, and every line that no changed value stands on."""
    lines, left = before.splitlines(), after.splitlines()
    comments = Counter(line.strip() for line in lines if line.lstrip().startswith("# "))
    kept = Counter(line.strip() for line in left if line.lstrip().startswith("# "))
    lost = {line for line in comments - kept if not line.startswith("# inner")}
    if not goes_with_all(op, now):
        assert not lost, f"{op}: {lost}"
    if before.count("\r\n") == before.count("\n"):
        assert after.count("\r\n") == after.count("\n")
    else:
        assert "\r" not in after
    then, since = Counter(leaves(values)), Counter(leaves(now))
    differing = sum((then - since).values()) + sum((since - then).values())
    gone = sum((Counter(map(str.strip, lines)) - Counter(map(str.strip, left))).values())
    moved = (
        op.KIND == "write-out-phrase"
    )  # a phrase and its use, of several lines each, become others
    assert moved or gone <= 2 * differing + 2, f"{op}\n" + "\n".join(unified_diff(lines, left, n=0))


def goes_with_all(op, now):
    """Whether it takes out something with all in it, also its comments; so does the last pattern its heading."""
    return any(
        each.KIND in ("delete-phrase", "delete-formation", "delete-heading")
        or (each.KIND == "delete-pattern" and "patterns" not in now)
        for each in getattr(op, "operations", (op,))
    )


def leaves(value, key=""):
    """Every scalar with the key that it stands under."""
    if isinstance(value, dict):
        for name, own in value.items():
            yield from leaves(own, name)
    elif isinstance(value, list):
        for own in value:
            yield from leaves(own, key)
    else:
        yield key, value
