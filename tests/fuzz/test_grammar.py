"""Shows drawn from the published schema are taken or refused, each fault in a line with its place; Hypothesis makes a failing one small."""

import json
from collections import Counter

from hypothesis import HealthCheck, given, settings

from sequencer.show.text.document import parse_document
from tests.fuzz import grammar
from tests.fuzz.targets import TARGETS
from tests.handled_show import SHOW

BASE = parse_document(SHOW, "show.yaml").values


@settings(
    max_examples=120, derandomize=True, deadline=None, database=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)  # fmt: skip
@given(grammar.shows(BASE))
def test_a_show_of_the_schema_is_taken_or_refused(values):
    assert TARGETS["show"].judged(_written(values)) in {"taken", "refused"}


def test_not_all_are_refused_nor_all_taken():
    """Else only the first fault of each would be looked at, or none."""
    ends: Counter[str] = Counter()

    @settings(
        max_examples=40, derandomize=True, deadline=None, database=None, suppress_health_check=list(HealthCheck)
    )  # fmt: skip
    @given(grammar.shows(BASE, most=1))
    def run(values):
        ends[TARGETS["show"].judged(_written(values))] += 1

    run()
    assert ends["taken"] >= 4
    assert ends["refused"] >= 8


def _written(values):
    return json.dumps(values, ensure_ascii=False, indent=1).encode("utf-8", "surrogatepass")
