"""Names in a show that stand for sourced facts: its fuel, its rule profile, its extinguishers' ratings."""

from collections.abc import Callable, Iterator, Sequence

from sequencer.errors import InputError
from sequencer.facts.extinguishers import parse_rating
from sequencer.facts.fuels import fuel
from sequencer.facts.profiles import profile
from sequencer.show.document import PathKey
from sequencer.show.model import Show

Fault = Callable[[str, Sequence[PathKey], str, str], InputError]


def unknown_facts(show: Show, fault: Fault) -> Iterator[InputError]:
    """Faults of a show's names that no table of facts holds.

    Parameters
    ----------
    show : Show
    fault : callable
        Makes an error of code, path, what and mend.
    """
    asked: list[tuple[str, tuple[PathKey, ...], Callable[[str], object], str, str]] = [
        ("unknown-profile", ("rules", "profile"), profile, name, "docs/sources.md lists them")
        for name in show.rules.profile
    ]  # fmt: skip
    if show.fire is not None:
        asked.append(
            ("unknown-fuel", ("fire", "fuel"), fuel, show.fire.fuel, "copy the name from its data sheet")
        )  # fmt: skip
    asked += [
        (
            "bad-rating",
            ("venue", "extinguishers", i, "rating"),
            parse_rating,
            each.rating,
            "copy it from the label",
        )
        for i, each in enumerate(show.venue.extinguishers)
    ]
    for code, path, known, name, mend in asked:
        try:
            known(name)
        except ValueError as error:
            yield fault(code, path, str(error), mend)
