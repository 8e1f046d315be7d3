"""The subjects of rules, and the type of value each takes.

Each subject is compared in one way: a minimum, a maximum, a number of people or things per head, a yes, a
list of fuels, or a text that the tool cannot judge and prints as a question.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from sequencer import units

Sort = Literal["least", "most", "count", "extinguishers", "yes", "fuels", "volumes", "ask"]


@dataclass(frozen=True, slots=True)
class Kind:
    """One subject."""

    name: str
    sort: Sort
    what: str
    units: Mapping[str, float] | None = None  # units its value may be written in
    default_unit: str = ""
    by_hand: bool = False  # no key of a show answers it: a person confirms it


_LENGTH = (units.LENGTHS, "m")
_TIME = (units.DURATIONS, "s")
_VOLUME = (units.VOLUMES, "L")
_SPEED = (units.SPEEDS, "m/s")
_FLUX = ({"W/m²": 1.0, "kW/m²": 1000.0}, "kW/m²")
_SHARE = ({"": 1.0, "%": 0.01}, "")
_YEARS = ({"years": 1.0, "a": 1.0}, "years")

_TABLE = (
    Kind(
        "audience-distance",
        "least",
        "distance from the audience to the outer edge of prop and flame",
        *_LENGTH,
    ),
    Kind("several-performers-extra", "least", "added when several are lit at once", *_LENGTH),
    Kind(
        "combustible-distance",
        "least",
        "distance from combustible things to prop and flame",
        *_LENGTH,
    ),
    Kind(
        "overhang-distance",
        "least",
        "distance from a combustible overhang to prop and flame, sideways and above",
        *_LENGTH,
        by_hand=True,
    ),
    Kind("ceiling-height", "least", "height of the ceiling", *_LENGTH),
    Kind("ceiling-margin", "least", "clearance from prop and flame to the ceiling", *_LENGTH),
    Kind("indoor-forbidden", "yes", "no fire under a roof"),
    Kind("indoor-agreed", "yes", "indoors only by agreement with the authority"),
    Kind("sprinklers", "yes", "the room is sprinklered"),
    Kind("spotters", "count", "spotters for performers lit at the same time"),
    Kind("perimeter-guards", "count", "people guarding the perimeter"),
    Kind("fuel-keepers", "count", "people at the fuel point"),
    Kind("stewards", "count", "stewards"),
    Kind("roles-apart", "yes", "a spotter has no other duty"),
    Kind("official-watch", "yes", "a fire watch sent by the authority", by_hand=True),
    Kind("response-distance", "most", "walk from a lit performer's spotter to them", *_LENGTH),
    Kind(
        "response-time",
        "most",
        "time from signal to arrival at a lit performer, at a slow walk",
        *_TIME,
    ),
    Kind("extinguishers", "extinguishers", "extinguishers"),
    Kind("opposing-sides", "yes", "extinguishers on opposing sides"),
    Kind("extinguisher-travel", "most", "walking distance to an extinguisher", *_LENGTH),
    Kind("extinguisher-near", "most", "distance from the act to an extinguisher", *_LENGTH),
    Kind("towels", "count", "damp towels for performers lit at the same time"),
    Kind("blankets", "count", "fire blankets"),
    Kind("blanket-or-towels", "yes", "a blanket or damp towels"),
    Kind("buckets", "count", "water buckets"),
    Kind("fuel-point-distance", "least", "distance from the fuel point to any lit prop", *_LENGTH),
    Kind("fuel-point-audience", "least", "distance from the fuel point to the audience", *_LENGTH),
    Kind("fuel-upwind", "yes", "fuel point upwind of the act"),
    Kind("fuel-per-performer", "most", "fuel for each performer", *_VOLUME),
    Kind("fuel-on-site", "most", "fuel on site", *_VOLUME),
    Kind(
        "fuel-permit-volume", "volumes", "amount of fuel above which a storage permit is required"
    ),
    Kind("fuel-refused", "fuels", "fuels that are refused"),
    Kind("fuel-warned", "fuels", "fuels that need a warning"),
    Kind("spin-off-zone", "yes", "a closed zone for soaking and spinning off"),
    Kind("flame-height", "most", "height of a flame", *_LENGTH),
    Kind("wind-warn", "most", "gusts above which to take care", *_SPEED),
    Kind("wind-stop", "most", "gusts above which nothing is lit", *_SPEED),
    Kind("performer-age", "least", "age of a performer", *_YEARS),
    Kind("operator-age", "least", "age of the licence holder", *_YEARS, by_hand=True),
    Kind("fire-watch", "least", "watch after the last flame", *_TIME, by_hand=True),
    Kind("stop-word", "yes", "a word that stops the act", by_hand=True),
    Kind("no-smoking", "yes", "no smoking by the fuel", by_hand=True),
    Kind("burn-share", "most", "fraction of the burning time that may be planned", *_SHARE),
    Kind("audience-flux", "most", "radiant heat at the audience", *_FLUX),
    Kind("fire-breathing-forbidden", "yes", "no fire breathing", by_hand=True),
    Kind("permit", "yes", "a permit for place and date"),
    Kind("fire-ban", "yes", "a ban on open-air fires"),
    Kind("soak-seconds", "least", "soaking of a wick", *_TIME),
    Kind("spin-off-seconds", "least", "spinning off", *_TIME),
    Kind("ask", "ask", "to be confirmed by a person", by_hand=True),
)
RULE_KINDS: Mapping[str, Kind] = {kind.name: kind for kind in _TABLE}
