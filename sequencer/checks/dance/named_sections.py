"""Moments that are named by a section as it was heard: another hearing may put them elsewhere."""

from collections.abc import Iterator, Mapping

from pydantic import BaseModel

from sequencer.checks.check import Check
from sequencer.checks.outcome import Outcome
from sequencer.findings import Finding
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
    edges = [each.name for each in _edges(written)]
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


def _edges(value: object) -> Iterator[SectionEdge]:
    """All moments that are sections, in the order of the file's fields."""
    if isinstance(value, SectionEdge):
        yield value
    elif isinstance(value, BaseModel):
        for name in type(value).model_fields:
            yield from _edges(getattr(value, name))
    elif isinstance(value, Mapping):
        for each in value.values():
            yield from _edges(each)
    elif isinstance(value, list | tuple):
        for each in value:
            yield from _edges(each)


CHECK = Check(
    name="named-sections",
    run=named_sections,
    codes={"sections-as-heard": ("note",)},
    progress="checking fire and crew",
)
