"""The conditions in a show that decide which cautions apply."""

from collections.abc import Collection

from sequencer.facts.cautions import Caution, Condition, Reader, cautions_for
from sequencer.safety.rules.permits import permit_that_holds
from sequencer.staging.staged import Staged


def conditions_of(show: Staged, brought_up: Collection[Condition] = ()) -> frozenset[Condition]:
    """Conditions that hold for a show, including those raised by the checks.

    Parameters
    ----------
    show : Staged
    brought_up : collection of str
        Conditions raised by the checks' findings (`Report.conditions`).
    """
    found: set[Condition] = {"music"}
    if show.show.crew:
        found.add("crew")
    if show.lit:
        found.add("lit")
        found.add("radiant")
    if show.lit and permit_that_holds(show.show) is None:
        found.add("without-permit")
    if show.show.venue.setting != "outdoors":  # not stated: both
        found.add("indoors")
    if show.show.venue.setting != "indoors":
        found.add("outdoors")
        found.add("wind")
    if show.show.venue.exits:
        found.add("exits")
    found.update(each for each in brought_up if show.lit or each == "fire-breathing")
    return frozenset(found)


def cautions_of(
    show: Staged, brought_up: Collection[Condition] = (), *, reader: Reader | None = None
) -> tuple[Caution, ...]:
    """Cautions for a reader of a show's sheets; none if nothing is lit or breathed.

    Parameters
    ----------
    show : Staged
    brought_up : collection of str
        Conditions raised by the checks' findings (`Report.conditions`).
    reader : str, optional
        Reader of the sheet; default: everybody.
    """
    if not show.lit and "fire-breathing" not in brought_up:
        return ()
    return cautions_for(conditions_of(show, brought_up), reader)
