"""What is wrong with the watch, without the posts that would mend it."""

from dataclasses import replace

import pytest

from sequencer.checks.check import Check
from sequencer.checks.fire import watch_kept
from sequencer.checks.outcome import Outcome
from sequencer.facts.flames import FASTEST_HEAD, stretched_reach
from sequencer.show.document import parse_document
from sequencer.show.reading import show_from_document
from sequencer.staging.timeline import staged
from tests.property.test_edits import SHOW, SONG


@pytest.fixture
def show():
    far = SHOW.replace("post: [-8, 6]", "post: [-30, 6]")
    return staged(show_from_document(parse_document(far, "s.yaml")), SONG)


def test_the_faults_are_those_of_the_check_but_for_the_proposed_posts(show, monkeypatch):
    with monkeypatch.context() as patch:
        patch.setattr(watch_kept, "proposed_posts", None)
        faults = watch_kept.CHECK.faults(show)
    whole = watch_kept.CHECK.outcome(show)
    assert any(each.remedies[-1].startswith("post ") for each in whole.findings)
    bare = [
        replace(each, remedies=tuple(words for words in each.remedies if not words.startswith("post ")))
        for each in whole.findings
    ]  # fmt: skip
    assert list(faults.findings) == bare
    assert faults.not_checked == whole.not_checked
    assert watch_kept.CHECK.faults(show) is whole, "what is known with its mends is not found again"


def test_a_check_whose_mends_are_cheap_tells_its_outcome(show):
    asked = []

    def run(each):
        asked.append(each)
        return Outcome()

    check = Check(name="cheap", run=run, codes={"none": ("note",)})
    assert check.faults(show) is check.outcome(show)
    assert asked == [show]


def test_a_faster_flame_is_never_shorter():
    """So a performer who is looked at with the flame of an ordinary prop is not seen closer than they are."""
    reaches = [
        stretched_reach(0.3, diameter=0.06, speed=FASTEST_HEAD * k) for k in (1, 1.2, 2, 5, 20)
    ]
    assert reaches == sorted(reaches)
