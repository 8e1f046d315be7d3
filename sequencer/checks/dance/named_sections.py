"""Moments that are named by a section as it was heard: another hearing may put them elsewhere."""

from sequencer.checks.check import Check
from sequencer.checks.outcome import Outcome
from sequencer.findings import Finding
from sequencer.show.file_records.held_values import held_values
from sequencer.staging.staged import Staged
from sequencer.timing.position import SectionEdge
from sequencer.units import counted


def named_sections(show: Staged) -> Outcome:
    """One note, if moments of the file hang on sections that only the ear has named."""
    if show.read is None:
        return Outcome()
    written = show.read.written
    given = {
        mark.name
        for mark in written.track.corrections.sections
        if not isinstance(mark.start, SectionEdge)
    }
    edges = [each.name for each in held_values(written, SectionEdge)]
    heard = [name for name in edges if not {name, name.rpartition(" ")[0]} & given]
    if not heard:
        return Outcome()
    names = ", ".join(dict.fromkeys(heard))
    return Outcome(
        findings=(
            Finding(
                code="sections-as-heard",
                severity="note",
                who=(),
                start=None,
                end=None,
                position=None,
                message=(
                    f"{counted(len(heard), 'moment')} of the show {'is' if len(heard) == 1 else 'are'} named by sections as they "
                    f"were heard ({names}): a newer version of the program may hear them elsewhere"
                ),
                remedies=(
                    "name the sections yourself, under Count on the page or as `track`, `corrections`, `sections`",
                    "write bar.beat instead",
                ),
                source="this show file",
            ),
        )
    )


CHECK = Check(
    name="named-sections",
    run=named_sections,
    codes={"sections-as-heard": ("note",)},
    progress="checking fire and crew",
)
