"""Bars numbered in another count of the song than the one that the show's corrections give."""

from sequencer.checks.check import Check
from sequencer.checks.outcome import Outcome
from sequencer.findings import Finding
from sequencer.staging.entries.written_count import keys_spoken, recount_words, unknown_to_numbers
from sequencer.staging.staged import Staged


def other_count(show: Staged) -> Outcome:
    """One warning, if the show's numbers fit the song without some of its corrections, and not with them."""
    if show.read is None or show.heard is None:
        return Outcome()
    keys = unknown_to_numbers(show.read, show.heard)
    if not keys:
        return Outcome()
    return Outcome(
        findings=(
            Finding(
                code="other-count",
                severity="warn",
                who=(),
                start=None,
                end=None,
                position=None,
                message=(
                    f"the bars of this show are numbered in the count without {keys_spoken(show.read, keys)}: its sections begin "
                    "there where parts of the song were heard, and elsewhere now"
                ),
                remedies=(
                    "to have everything written in the new count, at the same moments of the song, give "
                    + recount_words(show.read, keys),
                ),
                source="this show file",
            ),
        )
    )


CHECK = Check(
    name="other-count",
    run=other_count,
    codes={"other-count": ("warn",)},
    progress="checking fire and crew",
)
