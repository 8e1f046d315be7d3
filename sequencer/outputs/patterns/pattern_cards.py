"""Patterns as text: the list, one pattern's card, build steps, the join matrix.

The figures are those of the pattern's record (pattern_records.py); one that is only a bound is printed with "at most".
"""

from collections.abc import Callable, Container, Mapping, Sequence
from math import floor
from typing import Any

from sequencer.motion.patterns.law_kinds import LawKind
from sequencer.motion.patterns.library import Pattern, patterns
from sequencer.motion.props.prop import PropKind
from sequencer.motion.trajectories.join_matrix import JoinMatrix
from sequencer.motion.trajectories.joining import VERDICTS
from sequencer.outputs.patterns.fit_words import (
    cycle_words,
    danced_words,
    opens_words,
    two_figures_up,
    verdict,
    who_words,
    window_lines,
)
from sequencer.outputs.patterns.flown_words import (
    flown_lines,
    flown_words,
    station_words,
)
from sequencer.outputs.patterns.one_pattern import OnePattern
from sequencer.outputs.patterns.pattern_records import (
    card_record,
    gap_words,
    parameter_records,
)
from sequencer.outputs.words.station_words import clock_view, hand_words, spoken_count, step_words
from sequencer.progress import Progress
from sequencer.units import rounded_down, rounded_up

_SPARE = 1e-3  # [m] of reach that counts as rounding: a hand at arm's length is in reach
HARDLY = 0.1  # [N·m] nobody feels a smaller twist
_STILL = 0.02  # [m/s] a hand slower than this counts as still
MARKS = {"joins": "●", "joins after a shift": "◐", "needs a link": "·", "wrong way round": "↺", "cannot join": "×"}  # fmt: skip


def chosen_patterns(
    book: Mapping[str, Pattern] | None = None,
    *,
    family: str | None = None,
    hardest: int | None = None,
    containing: str | None = None,
    prop: PropKind | None = None,
) -> list[Pattern]:
    """Patterns filtered by family, greatest difficulty, prop, and text in their name or summary."""
    known = patterns() if book is None else book
    wanted = containing.casefold() if containing else ""
    return [
        pattern
        for pattern in known.values()
        if (family is None or pattern.family == family)
        and (hardest is None or pattern.difficulty <= hardest)
        and (prop is None or pattern.suits(prop))
        and (not wanted or wanted in f"{pattern.name} {pattern.summary}".casefold())
    ]


def list_text(chosen: list[Pattern]) -> str:
    """One line per pattern, grouped by family."""
    if not chosen:
        return "no pattern matches\n"
    wide = max(len(pattern.name) for pattern in chosen)
    lines: list[str] = []
    for family in dict.fromkeys(pattern.family for pattern in chosen):
        lines += ["", f"{family}"]
        lines += [
            f"  {p.name:<{wide}}  {'■' * p.difficulty}{'□' * (5 - p.difficulty)}  {p.summary}"
            for p in chosen
            if p.family == family
        ]
    return "\n".join([*lines[1:], ""])


def card_text(one: OnePattern, progress: Progress | None = None) -> str:
    """One pattern's card, for the body and prop that dance it; see `card_record`."""
    card = card_record(one, progress)
    lines = [
        f"{card['name']}: {card['family']}, difficulty {card['difficulty']} of 5"
        + (f" ({card['why']})" if card["why"] else ""),
        card["summary"],
        "",
        f"one hand cycle: {cycle_words(one)} unless the show sets another",
        *_danced_lines(one),
        *_hands_lines(one, card),
        _props_line(card),
    ]
    if card["needs"]:
        lines.append(f"learn first: {', '.join(card['needs'])}")
    if card["notes"]:
        lines.append(f"body: {card['notes']}")
    settable = [p for p in card["parameters"] if one.prop.flexible or p["name"] != "tether"]
    lines += ["", "parameters:", *_parameter_lines(settable, found=one.found)]
    lines += [
        "",
        f"source of the pattern: {card['source']}; figures: docs/motion.md, section 6",
        "",
    ]
    return "\n".join(lines)


def _props_line(card: Mapping[str, Any]) -> str:
    """The props that the pattern is for, and whether this card's prop is not one of them."""
    usual = card["prop"] in card["props"]
    apart = "" if usual else f" (not usually with a {card['prop']}: shown anyway)"
    return f"danced with: {', '.join(card['props'])}{apart}"


def _danced_lines(one: OnePattern) -> list[str]:
    """How this body dances it, and how much room is left."""
    lines = [f"danced by someone {who_words(one)}:", *(f"  {each}" for each in danced_words(one))]
    wrong = verdict(one.proven)
    room = [wrong, opens_words(one.room)] if wrong else [gap_words(one)]
    lines += [f"  {words}" for words in room if words]
    if one.room.windows:
        lines.append("  range of each parameter, with the others as above:")
        lines += [f"    {line}" for line in window_lines(one.room)]
    return lines


def _hands_lines(one: OnePattern, card: Mapping[str, Any]) -> list[str]:
    """Lines for each hand; if the left hand does the same, only the lines that differ, unless it reads otherwise."""
    lines_of = {side: _hand_lines(side, hand, card) for side, hand in card["hands"].items()}
    if not one.alike or len(lines_of) == 1:
        return [line for lines in lines_of.values() for line in lines]
    reads = {hand["flown"] and hand["flown"]["reads"] for hand in card["hands"].values()}
    own = lines_of["left"][2:]
    differing = own if len(reads) > 1 else [line for line in own if line not in lines_of["right"]]
    return [
        *lines_of["right"],
        *(["left hand, where it differs:", *differing] if differing else []),
    ]


def _hand_lines(side: str, hand: Mapping[str, Any], card: Mapping[str, Any]) -> list[str]:
    home = {
        "home": "home",
        "reversed": "the wrong way round (a second cycle brings it home)",
        "elsewhere": "not home yet",
    }[hand["after_one_cycle"]]
    rigid = hand["torque_n_m"] is not None
    line = "rope" if card["prop"] == "rope dart" else "tether"
    prop_text = (
        f"{card['prop']} of {card['prop_mass_kg']:g} kg, {100 * card['tether_m']:.0f} cm from hand to end"
        if rigid
        else f"{100 * card['tether_m']:.0f} cm {line} and a {card['prop_mass_kg']:g} kg head"
    )
    lines = [
        f"{side} hand, as you see it: {hand['performer']}",
        f"{' ' * len(side)}  as the audience sees it: {hand['audience']}",
        f"  after one cycle: {home}",
        f"  at {card['tempo']:g} beats a minute with a {prop_text}, {card['stature_m']:.2f} m tall:",
    ]
    if rigid:
        twists = f"twists with {_most(hand, 'torque_n_m')} N·m"
        weak = hand["torque_n_m"] < HARDLY
        lines += [
            "    flies as drawn:",
            f"      {_reach_words(hand['reach_m'], card['arm_m'], hand['out_of_reach_m'])}",
            f"      {_pace_words(hand)}",
            f"      the hand {'hardly twists' if weak else twists}; no tether to keep taut",
        ]
    else:
        lines += _flown_block(hand, card, line)
        lines += ["    as drawn:", *(f"      {each}" for each in _drawn_words(hand, card))]
    if hand["lowest_m"] < -_SPARE:
        lines.append(
            f"      a wick goes {_short(-hand['lowest_m'], rounded_up)} into the floor: take a shorter one, or "
            "raise the hand (up)"
        )
    lines.append(
        f"      let go at the worst moment, a head flies {_most(hand, 'let_go_m')} m (ignoring air drag)"
    )
    return lines


def _flown_block(hand: Mapping[str, Any], card: Mapping[str, Any], line: str) -> list[str]:
    """How the hand flies it, its headline first, and what was not looked at."""
    flown = hand["flown"]
    if flown is None:
        return ["    as flown: not known, for it never comes home"]
    first, *more = flown_lines(flown, line)
    if _flies(hand):
        beyond = max(-flown["spare_reach_m"], 0.0)
        more.insert(-1, _reach_words(flown["reach_m"], card["arm_m"], beyond))
    return [
        f"    as flown: {first}",
        *(f"      {each}" for each in more),
        f"      not looked at: {flown['not_looked_at']}",
    ]


def _flies(hand: Mapping[str, Any]) -> bool:
    return hand["flown"] is not None and hand["flown"]["reads"] != "not flown"


def _drawn_words(hand: Mapping[str, Any], card: Mapping[str, Any]) -> list[str]:
    """What the drawing alone asks; reach, speed and pull only where the flown motion does not tell them."""
    reach = _reach_words(hand["reach_m"], card["arm_m"], hand["out_of_reach_m"])
    return [*([] if _flies(hand) else [reach, _pace_words(hand)]), _taut_words(hand)]


def _taut_words(hand: Mapping[str, Any]) -> str:
    lowest, highest = hand["lowest_tempo"], hand["highest_tempo"]
    if not hand["tempo_known"]:
        return "the lowest tempo that keeps the tether taut is not known for this law"
    if lowest is None:
        return "no tempo keeps the tether taut throughout"
    upto = "" if highest is None else f" up to {floor(highest)} beats a minute"
    if lowest == 0:
        return f"the tether stays taut at every tempo{upto}"
    end = upto or " beats a minute on"
    return f"the tether stays taut from {_ceiling(lowest, 1)}{end}"


def _reach_words(reach: float, arm: float, beyond: float) -> str:
    """How far the hand gets, how long the arm is, and what is left to spare."""
    spare = arm - reach
    if spare > _SPARE:
        room = f"{_short(spare, rounded_down)} to spare"
    elif beyond > _SPARE:
        room = f"{_short(beyond, rounded_up)} out of reach, even with the shoulder forward"
    elif spare < -_SPARE:
        room = f"the shoulder reaches the last {_short(-spare, rounded_up)}"
    else:
        room = "fully stretched"
    return (
        f"hand up to {_ceiling(reach, 3)} m from the shoulder; the arm is {arm:.3f} m long: {room}"
    )


def _pace_words(hand: Mapping[str, Any]) -> str:
    still = hand["hand_speed_m_s"] < _STILL
    moves = "the hand stays still" if still else f"hand {_most(hand, 'hand_speed_m_s')} m/s"
    head = f"head {_most(hand, 'head_speed_m_s')} m/s"
    return f"{moves}, {head}, pull {_most(hand, 'pull_n')} N"


def _most(hand: Mapping[str, Any], key: str) -> str:
    """A largest value, or a bound if the value is not known."""
    return f"{'at most' if key in hand['bounds_only'] else 'up to'} {two_figures_up(hand[key])}"


def _ceiling(value: float, places: int) -> str:
    """Rounded up to a number of places."""
    return f"{rounded_up(value, places):.{places}f}"


def _short(length: float, rounded: Callable[[float], float]) -> str:
    """A length as people say it, rounded to the safe side: millimetres under 1 cm."""
    whole = rounded(1000 * length)
    return f"{whole:.0f} mm" if whole < 10 else f"{rounded(100 * length):.0f} cm"


def laws_text(kinds: Mapping[str, LawKind]) -> str:
    """Kinds of law by family, each with its parameters."""
    lines: list[str] = []
    for kind in sorted(kinds.values(), key=lambda kind: kind.family):
        lines += [f"{kind.name} ({kind.family})"]
        lines += [*_parameter_lines(parameter_records(kind.parameters)), ""]
    return "\n".join(lines)


def _parameter_lines(
    records: Sequence[Mapping[str, Any]], *, found: Container[str] = ()
) -> list[str]:
    """Parameters, one line each; those that are fitted to the body say so."""
    wide = max((len(p["name"]) for p in records), default=0)

    def unsaid(record: Mapping[str, Any]) -> str:
        number = isinstance(record["default"], float)
        default = f"{record['default']:g} {record['unit']}".strip() if number else record["default"]
        if record["name"] in found:
            return f"usually {default}, fitted to your body if you leave it out"
        return f"default {default}"

    return [f"  {p['name']:<{wide}}  {p['range']}; {unsaid(p)}; {p['help']}" for p in records]


def steps_text(one: OnePattern) -> str:
    """Build steps for a learner: what to see, where the hand is, what changes, where planes cross.

    Raises
    ------
    ValueError
        If the pattern is not a toroid and has no stations.
    """
    stations = one.stations()
    about = [*danced_words(one), *filter(None, [flown_words(one)])]
    lines = [f"Build steps of {one.name}, {who_words(one)}", *about]
    lines.append(f"the clock is the hand's circle {clock_view(stations)}")
    cycle = 0
    for station, said in zip(stations, step_words(stations), strict=True):
        if station.cycle != cycle and station is not stations[-1]:
            cycle = station.cycle
            lines += ["", f"cycle {cycle}"]
        last = station is stations[-1]
        lines.append(
            f"{station.number:>3}  count {spoken_count(station.beat)}: {station.half}, lobe {station.lobe}; "
            + hand_words(said.hand)
            + ("; back where you began" if last else "")
        )
        lines.append(f"     you see: {station.performer}")
        if off := station_words(one, station):
            lines.append(f"     as flown, the head is {off} the drawing")
        if station.audience != station.performer:
            lines.append(f"     the audience sees: {station.audience}")
        if station.number > 1:
            cross = station.cross_words or "none, the two planes are parallel"
            lines.append(
                f"     cross point with the previous step, from the circle's centre: {cross}"
            )
        if said.then:
            lines.append(f"     next: {said.then}")
    return "\n".join([*lines, ""])


def joins_text(matrix: JoinMatrix) -> str:
    """The join matrix: the row's pattern comes first, the column's second; then how many of each verdict."""
    wide = max(len(name) for name in matrix.names)
    count = len(matrix.names)
    tens = "".join(str(k // 10) if k >= 10 else " " for k in range(1, count + 1))
    ones = "".join(str(k % 10) for k in range(1, count + 1))
    lines = [f"{'':<{wide + 4}} {digits}" for digits in (tens, ones)]
    for k, name in enumerate(matrix.names):
        row = "".join(MARKS[VERDICTS[int(v)]] for v in matrix.kind[k])
        lines.append(f"{k + 1:>3} {name:<{wide}} {row}")
    lines.append("")
    lines += [f"{MARKS[kind]}  {kind}: {number}" for kind, number in matrix.counts().items()]
    return "\n".join([*lines, ""])
