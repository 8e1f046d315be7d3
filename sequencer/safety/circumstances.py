"""What is so in a show, as far as cautions depend on it."""

from collections.abc import Collection

from sequencer.facts.cautions import Caution, Condition, Reader, cautions_for
from sequencer.staging.staged import Staged


def conditions_of(show: Staged, brought_up: Collection[Condition] = ()) -> frozenset[Condition]:
    """Conditions of a show, with those that the checks brought up.

    Parameters
    ----------
    show : Staged
    brought_up : collection of str
        Conditions that the checks' findings brought up (`Report.conditions`).
    """
    found: set[Condition] = {"music"}
    if show.show.crew:
        found.add("crew")
    if show.lit:
        found.add("lit")
        found.add("radiant")
    if show.lit and not show.show.rules.permit:
        found.add("without-permit")
    if show.show.venue.setting == "indoors":
        found.add("indoors")
    else:
        found.add("outdoors")
        found.add("wind")
    if show.show.venue.exits:
        found.add("exits")
    if show.lit:
        found.update(brought_up)
    return frozenset(found)


def cautions_of(
    show: Staged, brought_up: Collection[Condition] = (), *, reader: Reader | None = None
) -> tuple[Caution, ...]:
    """Cautions that a reader of a show's sheets gets; none where nothing burns.

    Parameters
    ----------
    show : Staged
    brought_up : collection of str
        Conditions that the checks' findings brought up (`Report.conditions`).
    reader : str, optional
        Whose sheet it is; everybody's where none is named.
    """
    return cautions_for(conditions_of(show, brought_up), reader) if show.lit else ()
