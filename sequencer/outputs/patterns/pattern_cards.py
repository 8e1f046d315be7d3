"""Patterns as text: the list, one pattern's card, build steps, the join matrix.

What a performer feels of a poi or a rope dart is told as it is flown (flown_words.py), as values. Figures of the law
as drawn, for props that the hand turns and for patterns that cannot be flown, are the largest over one closing of the
pattern (four cycles where it has none), proven and rounded up to two figures, so at most 1.2 times the true value; if a
law of another package has only a coarse bound, the bound is printed with "at most".
"""

from collections.abc import Callable, Container, Mapping, Sequence
from math import floor, isfinite
from typing import Any

import numpy as np

from sequencer.geometry.bodies import Side
from sequencer.motion.laws.law import Law
from sequencer.motion.patterns.build_steps import Station
from sequencer.motion.patterns.law_kinds import LawKind
from sequencer.motion.patterns.library import Pattern, patterns
from sequencer.motion.patterns.parameters import Parameter
from sequencer.motion.props.peaks import (
    Peak,
    farthest_let_go,
    fastest_hand,
    fastest_wick,
    hardest_pull,
    hardest_twist,
)
from sequencer.motion.props.prop import Prop, PropKind
from sequencer.motion.props.reach import farthest_reach
from sequencer.motion.props.tension import TautTempo, hand_work, lowest_tempo
from sequencer.motion.trajectories.join_matrix import JoinMatrix
from sequencer.motion.trajectories.joining import VERDICTS, ends
from sequencer.outputs.patterns.fit_words import (
    cycle_words,
    danced_words,
    finite,
    margin_words,
    opens_words,
    two_figures_up,
    verdict,
    who_words,
    window_lines,
)
from sequencer.outputs.patterns.flown_words import (
    flown_lines,
    flown_record,
    flown_words,
    station_words,
)
from sequencer.outputs.patterns.one_pattern import OnePattern
from sequencer.outputs.words.law_words import law_words
from sequencer.progress import Progress
from sequencer.units import rounded_down, rounded_up

_SAMPLES = 2048  # per closing, for the lowest wick
_SPARE = 1e-3  # [m] of reach that counts as rounding: a hand at arm's length is in reach
HARDLY = 0.1  # [N·m] nobody feels a smaller twist
_STILL = 0.02  # [m/s] a hand slower than this counts as still
STEERED = 0.2  # [m] of the hand off its drawn path that makes a pattern harder; common practice
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


def card_record(one: OnePattern, progress: Progress | None = None) -> dict[str, Any]:
    """Everything on a card, as plain data; a pattern that does not fly takes up to a minute the first time.

    Parameters
    ----------
    one : OnePattern
    progress : callable, optional
    """
    if progress is not None:
        progress(f"flying {one.name}", 0.0)
    pattern = one.pattern
    hands: dict[str, Any] = {}
    for side in one.sides:
        law = one.laws[side]
        hands[side] = {
            "performer": str(law_words(law)),
            "audience": str(law_words(law, eye="audience")),
            "home_after_beats": finite(law.period),
            "after_one_cycle": ends(one.lead(side), one.cycle, length=one.prop.length),
            **_figures(one, side),
            "flown": flown_record(one, side, progress),
        }
    return {
        "name": pattern.name,
        "family": pattern.family,
        "summary": pattern.summary,
        "difficulty": pattern.difficulty,
        "why": _reason(pattern, [hand["flown"] for hand in hands.values()]),
        "needs": list(pattern.needs),
        "props": list(pattern.props),
        "notes": pattern.notes,
        "source": pattern.source,
        "cycle_beats": one.cycle,
        "usual_cycle_beats": one.usual_beats,
        "tempo": one.tempo,
        "timing": one.dance.timing,
        "direction": one.dance.direction,
        "stature_m": one.body.stature,
        "arm_m": one.body.arm_length,
        "prop": one.prop.kind,
        "tether_m": one.prop.length,
        "prop_mass_kg": one.prop.mass,
        "parameters": parameter_records(pattern.parameters),
        "fit": _fit_record(one),
        "hands": hands,
    }


def _fit_record(one: OnePattern) -> dict[str, Any]:
    """How this body dances the pattern, how much room is left, and what would make some."""
    angles = zip(one.posture.__slots__, np.degrees(one.posture.angles).tolist(), strict=True)
    margins = one.proven.margins
    return {
        "fits": not verdict(one.proven),
        "short_of": verdict(one.proven),
        "values": {side: dict(one.fit.values.get(side, {})) for side in one.sides},
        "posture_degrees": {name: round(angle, 3) for name, angle in angles},
        "margins": {
            "body_m": finite(margins.body),
            "other_prop_m": finite(margins.other),
            "reach_m": finite(margins.reach),
            "pull_m_s2": finite(margins.pull),
        },
        "windows": {
            name: {
                "low": round(window.low, 4), "high": round(window.high, 4),
                "best": round(window.best, 4), "left_more": round(window.apart, 4),
            }
            for name, window in one.room.windows.items()
        },
        "opens": list(one.room.opens),
        "words": [*danced_words(one), *filter(None, [_gaps(one)])],
        "window_words": window_lines(one.room),
    }  # fmt: skip


def _figures(one: OnePattern, side: Side) -> dict[str, Any]:
    """One hand's figures: the largest of each over one closing, and which of them are only bounds."""
    law, prop, tempo = one.laws[side], one.dance.props[side], one.tempo
    whole = isfinite(law.period)
    end, beats_per_second = law.period if whole else 4 * one.cycle, tempo / 60
    peaks = {
        "hand_speed_m_s": fastest_hand(law, beats_per_second=beats_per_second, start=0.0, end=end),
        "head_speed_m_s": fastest_wick(
            law, prop=prop, beats_per_second=beats_per_second, start=0.0, end=end
        ),
        "pull_n": hardest_pull(
            law, prop=prop, beats_per_second=beats_per_second, start=0.0, end=end
        ),
        "let_go_m": farthest_let_go(
            law, prop=prop, beats_per_second=beats_per_second, start=0.0, end=end
        ),
    }
    twist: Peak | None = None
    taut = work = None
    if prop.flexible:
        taut = _taut_tempi(law, prop.length, end)
        work = hand_work(law, length=prop.length, mass=prop.mass, tempo=tempo) if whole else None
    else:
        twist = hardest_twist(law, prop=prop, beats_per_second=beats_per_second, start=0.0, end=end)
        peaks["torque_n_m"] = twist
    reach = farthest_reach(law, side=side, body=one.body, end=end, posture=one.posture)
    return {
        "reach_m": reach.distance + reach.error,
        "out_of_reach_m": one.beyond[side],
        "lowest_tempo": taut.lowest if taut and isfinite(taut.lowest) else None,
        "highest_tempo": taut.highest if taut and isfinite(taut.highest) else None,
        "tempo_known": taut is not None,
        "hand_work_m": work.largest if work else None,
        "hand_work_rms_m": work.rms if work else None,
        "hand_work_j_a_beat": work.work if work else None,
        "torque_n_m": None,
        **{key: peak.most for key, peak in peaks.items()},
        "lowest_m": _lowest_wick(law, prop, end),
        "bounds_only": [key for key, peak in peaks.items() if not peak.known],
    }


def _taut_tempi(law: Law, length: float, end: float) -> TautTempo | None:
    """Lowest and highest tempo at which the tether is taut; None if nothing is proven."""
    try:
        return lowest_tempo(law, length=length, start=0.0, end=end)
    except ValueError:  # the law's third derivative is unknown
        return None


def _lowest_wick(law: Law, prop: Prop, end: float) -> float:
    """Height of the lowest wick's underside above the floor [m]; sampled, within 1 mm for danceable patterns."""
    motion = law.at(end * np.arange(_SAMPLES + 1, dtype=np.float64) / _SAMPLES)
    aside = np.cross(motion.plane, motion.tether)
    wicks = [motion.hand + spot.along * motion.tether + spot.across * aside for spot in prop.heads]
    return min(float(wick[:, 2].min()) for wick in wicks) - prop.wick_radius


def _reason(pattern: Pattern, flown: Sequence[Mapping[str, Any] | None]) -> str:
    """What makes a pattern difficult; a hand that leaves its drawn path by a lot is one more reason."""
    most = max((each["hand_off_m"] for each in flown if each is not None), default=0.0)
    steered = f"the prop is steered: the hand leaves its drawn path by up to {100 * most:.0f} cm"
    return "; ".join(filter(None, (pattern.why, steered if most >= STEERED else "")))


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


def _gaps(one: OnePattern) -> str:
    return margin_words(one.proven, flexible=one.prop.flexible)


def _danced_lines(one: OnePattern) -> list[str]:
    """How this body dances it, and how much room is left."""
    lines = [f"danced by someone {who_words(one)}:", *(f"  {each}" for each in danced_words(one))]
    wrong = verdict(one.proven)
    room = [wrong, opens_words(one.room)] if wrong else [_gaps(one)]
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


def parameter_records(parameters: Sequence[Parameter]) -> list[dict[str, Any]]:
    """Parameters as plain data."""
    return [
        {
            "name": parameter.name,
            "range": parameter.range_words,
            "default": "the prop's" if parameter.default is None else parameter.default,
            "unit": parameter.unit,
            "help": parameter.help,
        }
        for parameter in parameters
    ]


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
    cycle = 0
    for station in stations:
        if station.cycle != cycle and station is not stations[-1]:
            cycle = station.cycle
            lines += ["", f"cycle {cycle}"]
        last = station is stations[-1]
        lines.append(
            f"{station.number:>3}  beat {station.beat:g}: {station.half}, lobe {station.lobe}; "
            f"hand: {station.place}" + ("; home again" if last else "")
        )
        lines.append(f"     you see: {station.performer}")
        if off := station_words(one, station):
            lines.append(f"     as flown, the head is {off} the drawing")
        if station.audience != station.performer:
            lines.append(f"     the audience sees: {station.audience}")
        if station.number > 1:
            lines.append(f"     {station.change}")
            cross = station.cross_words or "none, the two planes are parallel"
            lines.append(
                f"     cross point with the previous step, from the circle's centre: {cross}"
            )
    return "\n".join([*lines, ""])


def station_record(one: OnePattern, station: Station) -> dict[str, Any]:
    """One build step as plain data; places in metres, body frame; `flown_head` is None if it flies as drawn or not at all."""
    flown = one.flown_head(station)
    return {
        "number": station.number,
        "beat": station.beat,
        "half": station.half,
        "lobe": station.lobe,
        "cycle": station.cycle,
        "hand": station.hand.tolist(),
        "tether": station.tether.tolist(),
        "plane": station.plane.tolist(),
        "flown_head": None if flown is None else flown.tolist(),
        "place": station.place,
        "performer": station.performer,
        "audience": station.audience,
        "change": station.change,
        "cross": None if station.cross is None else station.cross.tolist(),
        "cross_words": station.cross_words,
    }


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
