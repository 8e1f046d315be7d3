"""The conditions in a show that decide which cautions apply."""

from collections.abc import Collection

from sequencer.facts.cautions import Caution, Condition, Reader, cautions_for
from sequencer.findings import Finding
from sequencer.staging.staged import Staged

_BY_CODE: dict[str, Condition] = {
    "burns-out": "long-song",
    "burn-reserve": "long-song",
    "too-few-safety": "crew-short",
    "nobody-watching": "crew-short",
    "limit-loosened": "override",
    "not-recorded": "missing",
    "burn-unknown": "missing",
    "indoors-not-recorded": "missing",
}


def conditions_of(show: Staged, findings: Collection[Finding] = ()) -> frozenset[Condition]:
    """Conditions that hold for a show and its findings.

    Parameters
    ----------
    show : Staged
    findings : collection of Finding
        From all checks; some cautions depend on them.
    """
    found: set[Condition] = {"music"}
    if show.show.crew:
        found.add("crew")
    if show.lit:
        found.add("lit")
        found.add("radiant")
    if show.lit and not show.show.rules.permit:
        found.add("no-permit")
    if show.show.venue.setting == "indoors":
        found.add("indoors")
    else:
        found.add("outdoors")
        found.add("wind")
    if show.show.venue.exits:
        found.add("exits")
    if show.lit:
        found.update(_BY_CODE[each.code] for each in findings if each.code in _BY_CODE)
    return frozenset(found)


def cautions_of(
    show: Staged, findings: Collection[Finding] = (), *, reader: Reader | None = None
) -> tuple[Caution, ...]:
    """Cautions for a reader of a show's sheets; none if nothing is lit.

    Parameters
    ----------
    show : Staged
    findings : collection of Finding
        From all checks.
    reader : str, optional
        Reader of the sheet; default: everybody.
    """
    return cautions_for(conditions_of(show, findings), reader) if show.lit else ()
