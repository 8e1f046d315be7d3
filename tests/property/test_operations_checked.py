"""A show that is changed by operations on its text says the same as one read, staged and checked from nothing.

Reference: the text after each operation, with nothing kept: no earlier reading or staging, no results.
"""

import random

from sequencer.checks.suite import checked
from sequencer.errors import InputError
from sequencer.show.operations.history import History
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from tests.made_operations import Draw
from tests.nothing_kept import nothing_kept
from tests.operation_oracle import text_of
from tests.property.test_edits import SHOW, SONG


def test_findings_after_operations_are_those_of_the_text_alone():
    draw = Draw(random.Random(4))  # noqa: S311  # no secret
    history = History(SHOW, "s.yaml")
    now = staged(history.show, SONG)
    told = 0
    while told < 6:
        made = []

        def judge(read, made=made, before=now):
            made.append(staged(read, SONG, before=before))  # refuses what the song does not allow

        operation = draw.one(text_of(parse_document(history.text, "s.yaml").values))
        try:
            history.do(operation, judge=judge)
        except InputError:
            continue
        (now,) = made
        with nothing_kept():
            read = show_from_document(parse_document(history.text, "s.yaml"))
            alone = checked(staged(read, SONG))
        assert checked(now).findings == alone.findings, operation
        told += 1
