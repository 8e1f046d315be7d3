"""Names in a show that refer to sourced facts: fuel, rule profiles, extinguisher ratings."""

from collections.abc import Callable, Iterator, Sequence

from sequencer.errors import InputError
from sequencer.facts.extinguishers import parse_rating
from sequencer.facts.fuels import fuel
from sequencer.facts.profiles import kind_of, profile
from sequencer.show.model import Show
from sequencer.show.text.plain_values import PathKey

Fault = Callable[[str, Sequence[PathKey], str, str], InputError]


def unknown_facts(show: Show, fault: Fault) -> Iterator[InputError]:
    """Faults for names in a show that are in no table of facts.

    Parameters
    ----------
    show : Show
    fault : callable
        Makes an error from code, path, what is wrong and how to fix it.
    """
    lookups: list[tuple[str, tuple[PathKey, ...], Callable[[str], object], str, str]] = [
        ("unknown-profile", ("rules", "profile"), profile, name, "see docs/sources.md for the list")
        for name in show.rules.profile
    ]  # fmt: skip
    if show.fire is not None:
        lookups.append(
            ("unknown-fuel", ("fire", "fuel"), fuel, show.fire.fuel, "copy the name from its data sheet")
        )  # fmt: skip
    lookups += [
        (
            "bad-rating",
            ("venue", "extinguishers", i, "rating"),
            parse_rating,
            each.rating,
            "copy it from the label",
        )
        for i, each in enumerate(show.venue.extinguishers)
        if each.rating is not None
    ]
    if show.rules.permit is not None:
        lookups += [
            ("unknown-rule", ("rules", "permit", "loosens", i), kind_of, name, "see docs/sources.md")
            for i, name in enumerate(show.rules.permit.loosens)
        ]  # fmt: skip
    for code, path, known, name, mend in lookups:
        try:
            known(name)
        except ValueError as error:
            yield fault(code, path, str(error), mend)
