"""The subjects that a rule can be about, and what its value must be.

A subject is compared in one way: a least value, a most value, a number of people or things a head, a
yes, a list of fuels, or a text that the tool cannot judge and prints as a question.
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
    units: Mapping[str, float] | None = None  # what its value may be written in
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
    Kind("audience-distance", "least", "audience to the outer edge of prop and flame", *_LENGTH),
    Kind("several-performers-extra", "least", "added when several are lit at once", *_LENGTH),
    Kind("combustible-distance", "least", "things that burn to prop and flame", *_LENGTH),
    Kind(
        "overhang-distance", "least", "a burning overhang to prop and flame", *_LENGTH, by_hand=True
    ),
    Kind("ceiling-height", "least", "height of the ceiling", *_LENGTH),
    Kind("ceiling-margin", "least", "ceiling above prop and flame", *_LENGTH),
    Kind("indoor-forbidden", "yes", "no fire under a roof"),
    Kind("indoor-agreed", "yes", "indoors only as agreed with the authority"),
    Kind("sprinklers", "yes", "the room is sprinklered"),
    Kind("spotters", "count", "spotters for those lit at once"),
    Kind("perimeter-guards", "count", "people who keep the perimeter"),
    Kind("fuel-keepers", "count", "people at the fuel point"),
    Kind("stewards", "count", "stewards"),
    Kind("roles-apart", "yes", "a spotter does nothing else"),
    Kind("official-watch", "yes", "a fire watch sent by the authority", by_hand=True),
    Kind("response-time", "most", "from signal to arrival at a lit performer", *_TIME),
    Kind("extinguishers", "extinguishers", "extinguishers"),
    Kind("opposing-sides", "yes", "extinguishers on opposing sides"),
    Kind("extinguisher-travel", "most", "walk to an extinguisher", *_LENGTH),
    Kind("extinguisher-near", "most", "one extinguisher to the act", *_LENGTH),
    Kind("towels", "count", "damp towels for those lit at once"),
    Kind("blankets", "count", "fire blankets"),
    Kind("blanket-or-towels", "yes", "a blanket or damp towels"),
    Kind("buckets", "count", "water buckets"),
    Kind("fuel-point-distance", "least", "fuel point to any lit prop", *_LENGTH),
    Kind("fuel-point-audience", "least", "fuel point to the audience", *_LENGTH),
    Kind("fuel-upwind", "yes", "fuel point upwind of the act"),
    Kind("fuel-per-performer", "most", "fuel for each performer", *_VOLUME),
    Kind("fuel-on-site", "most", "fuel on site", *_VOLUME),
    Kind("fuel-permit-volume", "volumes", "fuel above which a storage permit is asked"),
    Kind("fuel-refused", "fuels", "fuels that are refused"),
    Kind("fuel-warned", "fuels", "fuels that need a warning"),
    Kind("spin-off-zone", "yes", "a closed zone for soaking and spinning off", by_hand=True),
    Kind("flame-height", "most", "height of a flame", *_LENGTH),
    Kind("wind-warn", "most", "gusts above which to take care", *_SPEED),
    Kind("wind-stop", "most", "gusts above which nothing is lit", *_SPEED),
    Kind("performer-age", "least", "age of a performer", *_YEARS),
    Kind("operator-age", "least", "age of the licence holder", *_YEARS, by_hand=True),
    Kind("fire-watch", "least", "watch after the last flame", *_TIME, by_hand=True),
    Kind("stop-word", "yes", "a word that stops the act", by_hand=True),
    Kind("no-smoking", "yes", "no smoking by the fuel", by_hand=True),
    Kind("burn-share", "most", "share of the burn time that may be planned", *_SHARE),
    Kind("audience-flux", "most", "radiant heat where the audience stands", *_FLUX),
    Kind("fire-breathing-forbidden", "yes", "no fire breathing", by_hand=True),
    Kind("permit", "yes", "a permit for place and date"),
    Kind("fire-ban", "yes", "a ban on open-air fire"),
    Kind("soak-seconds", "least", "soaking of a wick", *_TIME),
    Kind("spin-off-seconds", "least", "spinning off", *_TIME),
    Kind("ask", "ask", "to be confirmed by a person", by_hand=True),
)
RULE_KINDS: Mapping[str, Kind] = {kind.name: kind for kind in _TABLE}
