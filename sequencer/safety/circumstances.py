"""What is so in a show, as far as cautions depend on it."""

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
    """Conditions of a show and of what the checks found in it.

    Parameters
    ----------
    show : Staged
    findings : collection of Finding
        Of all checks; some cautions belong to what was found.
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
    """Cautions that a reader of a show's sheets gets; none where nothing burns.

    Parameters
    ----------
    show : Staged
    findings : collection of Finding
        Of all checks.
    reader : str, optional
        Whose sheet it is; everybody's where none is named.
    """
    return cautions_for(conditions_of(show, findings), reader) if show.lit else ()
