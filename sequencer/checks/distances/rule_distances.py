"""Least distances from the rules in force, tightened by the show's own."""

from collections.abc import Mapping
from types import MappingProxyType

from sequencer.checks.distances.requirements import Requirements
from sequencer.facts.rule_book import RuleBook
from sequencer.safety.rules.house_rules import rules_of
from sequencer.safety.rules.permits import permit_that_holds
from sequencer.staging.results import once_per_show_with
from sequencer.staging.staged import Staged

_FIELDS: Mapping[str, str] = MappingProxyType(
    {
        "combustible": "combustible-distance",
        "overhead": "ceiling-margin",
        "ceiling_least": "ceiling-height",
    }
)


@once_per_show_with()
def required_distances(show: Staged) -> Requirements:
    """Distances that a show must keep by the rules in force for it.

    Raises
    ------
    InputError
        If the show's own file of rules cannot be used.
    """
    return distances_by(show, rules_of(show))


def distances_by(show: Staged, book: RuleBook) -> Requirements:
    """Distances that a show must keep by a book of rules.

    Parameters
    ----------
    show : Staged
    book : RuleBook
        Rules in force. A distance in the show applies where it is larger; a smaller one only with a
        recorded permit.

    Raises
    ------
    ValueError
        If no rule in force names a distance to the audience.
    """
    rules = show.show.rules
    one, of_one = book.audience_distance(1)
    several, of_several = book.audience_distance(2)
    values = {"audience": one, "audience_more": several - one}
    sources = {
        "audience": " ".join(rule.citation for rule in of_one),
        "audience_more": " ".join(rule.citation for rule in of_several),
    }
    permit = permit_that_holds(show.show)
    loosened = permit is not None and "audience-distance" in permit.loosens
    if rules.audience is not None and (rules.audience > one or loosened):
        reference = f", permit {permit.number}" if permit and loosened else ""
        values["audience"] = rules.audience
        values["audience_more"] = 0.0 if loosened else max(several - rules.audience, 0.0)
        sources["audience"] = f"this show, rules, audience{reference}"
    for field, kind in _FIELDS.items():
        rule = book.strictest(kind)
        if rule is not None:
            values[field] = rule.number
            sources[field] = rule.citation
    if rules.between_performers is not None:
        values["performers"] = rules.between_performers
        sources["performers"] = "this show, rules, between_performers"
    return Requirements(**values, sources=MappingProxyType(sources))
