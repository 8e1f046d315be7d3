"""Patterns as text: the list, one pattern's card, build steps, the join matrix."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from math import isfinite
from typing import Any

import numpy as np

from sequencer.geometry.bodies import SIDES, Body
from sequencer.motion.grip import largest_torque
from sequencer.motion.joining import VERDICTS, ends
from sequencer.motion.kinds import DEFAULT_TETHER, LawKind
from sequencer.motion.library import Pattern, cycle_beats, find, law_for, patterns
from sequencer.motion.matrix import JoinMatrix
from sequencer.motion.parameters import Parameter
from sequencer.motion.props import Prop, PropKind
from sequencer.motion.reach import farthest_reach
from sequencer.motion.rows import STATURE
from sequencer.motion.steps import Station
from sequencer.motion.tension import farthest_flight, hand_work, lowest_tempo
from sequencer.motion.words import words

TEMPO = 100.0  # [beats a minute] of a card's figures, unless said
HEAD_MASS = 0.2  # [kg]
STEERED = 0.25  # [m] of hand work from which a pattern is harder for it; common practice
MARKS = {"joins": "●", "joins after a shift": "◐", "needs a link": "·", "wrong way round": "↺", "cannot join": "×"}  # fmt: skip


def chosen_patterns(
    book: Mapping[str, Pattern] | None = None,
    *,
    family: str | None = None,
    hardest: int | None = None,
    containing: str | None = None,
    prop: PropKind | None = None,
) -> list[Pattern]:
    """Patterns of a family, up to a difficulty, for a prop, whose name or summary holds some text."""
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
    """One line a pattern, grouped by family."""
    if not chosen:
        return "no pattern fits\n"
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


def card_record(
    name: str,
    parameters: Mapping[str, object],
    *,
    tempo: float = TEMPO,
    prop: Prop | None = None,
    book: Mapping[str, Pattern] | None = None,
) -> dict[str, Any]:
    """Everything that a card says, as plain data.

    Raises
    ------
    ValueError
        If the pattern or a parameter is not known, or out of range.
    """
    pattern = find(name, book)
    body = Body(stature=STATURE)
    cycle = cycle_beats(name, parameters, book)
    held = prop or Prop(length=DEFAULT_TETHER, mass=HEAD_MASS, wick_radius=0.05)
    if held.flexible and pattern.values(parameters).get("tether"):
        held = replace(held, length=float(pattern.values(parameters)["tether"]))
    tether, masses = held.length, abs(held.centre_of_mass)
    hands: dict[str, Any] = {}
    for side in SIDES:
        law = law_for(name, parameters, side=side, body=body, tether=tether, book=book)
        said = words(name, dict(parameters), side, body=body, book=dict(book) if book else None)
        whole = isfinite(law.period)
        span = law.period if whole else 4 * cycle
        bounds = law.bounds()
        rate = tempo / 60
        lowest = work = None
        if held.flexible:
            lowest = lowest_tempo(law, length=tether, start=0.0, end=span).lowest
            work = hand_work(law, length=tether, mass=held.mass, tempo=tempo) if whole else None
        motion = law.at(span * np.arange(2049, dtype=np.float64) / 2048)
        height = float(np.max(motion.head(tether)[:, 2]))
        aside = np.cross(motion.plane, motion.tether)
        wicks = [
            motion.hand + spot.along * motion.tether + spot.across * aside for spot in held.heads
        ]
        lowest_wick = min(float(wick[:, 2].min()) for wick in wicks) - held.wick_radius
        hands[side] = {
            "performer": str(said["performer"]),
            "audience": str(said["audience"]),
            "home_after_beats": law.period if whole else None,
            "after_one_cycle": ends(law, cycle, length=tether),
            "reach_m": farthest_reach(law, side=side, body=body, end=span).distance,
            "lowest_tempo": lowest if lowest is not None and isfinite(lowest) else None,
            "hand_work_m": work.largest if work else None,
            "hand_work_rms_m": work.rms if work else None,
            "hand_work_j_a_beat": work.work if work else None,
            "hand_speed_m_s": bounds.hand_speed * rate,
            "head_speed_m_s": held.fastest(bounds) * rate,
            "pull_n": held.mass * (bounds.head_acceleration(masses) * rate**2 + 9.81),
            "torque_n_m": None
            if held.flexible
            else largest_torque(law, prop=held, rate=rate, start=0.0, end=span),
            "let_go_m": farthest_flight(held.fastest(bounds) * rate, height),
            "lowest_m": lowest_wick,
        }
    return {
        "name": pattern.name,
        "family": pattern.family,
        "summary": pattern.summary,
        "difficulty": pattern.difficulty,
        "why": _reason(pattern, [hand["hand_work_m"] for hand in hands.values()]),
        "needs": list(pattern.needs),
        "props": list(pattern.props),
        "notes": pattern.notes,
        "source": pattern.source,
        "cycle_beats": cycle,
        "tempo": tempo,
        "prop": held.kind,
        "tether_m": tether,
        "prop_mass_kg": held.mass,
        "parameters": parameter_records(pattern.parameters),
        "hands": hands if pattern.hybrid else {"right": hands["right"]},
    }


def _reason(pattern: Pattern, work: Sequence[float | None]) -> str:
    """Why a pattern is as hard as it is; much hand work is one more reason."""
    most = max((each for each in work if each is not None), default=0.0)
    steered = f"the prop is steered, by up to {100 * most:.0f} cm of hand work"
    return "; ".join(filter(None, (pattern.why, steered if most >= STEERED else "")))


def card_text(
    name: str,
    parameters: Mapping[str, object],
    *,
    tempo: float = TEMPO,
    prop: Prop | None = None,
    book: Mapping[str, Pattern] | None = None,
) -> str:
    """One pattern's card, danced with a poi unless a prop is given.

    Raises
    ------
    ValueError
        If the pattern or a parameter is not known, or out of range.
    """
    card = card_record(name, parameters, tempo=tempo, prop=prop, book=book)
    lines = [
        f"{card['name']}: {card['family']}, difficulty {card['difficulty']} of 5"
        + (f" ({card['why']})" if card["why"] else ""),
        card["summary"],
        "",
        f"one hand cycle: {card['cycle_beats']:g} beat{'' if card['cycle_beats'] == 1 else 's'} unless the show says otherwise",
    ]
    for side, hand in card["hands"].items():
        lines += _hand_lines(side, hand, card)
    lines.append(f"danced with: {', '.join(card['props'])}")
    if card["needs"]:
        lines.append(f"learn first: {', '.join(card['needs'])}")
    if card["notes"]:
        lines.append(f"body: {card['notes']}")
    lines += ["", "may be set:", *_parameter_lines(card["parameters"])]
    lines += [
        "",
        f"source of the pattern: {card['source']}; figures: docs/motion.md, section 6",
        "",
    ]
    return "\n".join(lines)


def _hand_lines(side: str, hand: Mapping[str, Any], card: Mapping[str, Any]) -> list[str]:
    home = {
        "home": "home",
        "reversed": "the wrong way round (a second cycle brings it home)",
        "elsewhere": "on its way",
    }[hand["after_one_cycle"]]
    rigid = hand["torque_n_m"] is not None
    line = "rope" if card["prop"] == "rope dart" else "tether"
    held = (
        f"{card['prop']} of {card['prop_mass_kg']:g} kg, {100 * card['tether_m']:.0f} cm before the hand"
        if rigid
        else f"{100 * card['tether_m']:.0f} cm {line} and a {card['prop_mass_kg']:g} kg head"
    )
    under = f"  at {card['tempo']:g} beats a minute with a {held} (1.70 m body):"
    figures = (
        f"    hand up to {hand['reach_m']:.2f} m from the shoulder and {hand['hand_speed_m_s']:.1f} m/s, "
        f"head {hand['head_speed_m_s']:.1f} m/s, pull up to {hand['pull_n']:.0f} N"
    )
    lines = [
        f"{side} hand, as you see it: {hand['performer']}",
        f"{' ' * len(side)}  as the audience sees it: {hand['audience']}",
        f"  after one cycle: {home}",
        under,
        figures,
    ]
    lowest = hand["lowest_tempo"]
    if rigid:
        lines.append(
            f"    the hand twists with up to {hand['torque_n_m']:.1f} N·m; no tether to keep taut"
        )
    else:
        lines.append(
            f"    the tether stays taut from {lowest:.1f} beats a minute on"
            if lowest is not None
            else "    no tempo keeps the tether taut all along"
        )
    if hand["hand_work_m"] is not None:
        lines.append(
            f"    hand work: up to {100 * hand['hand_work_m']:.0f} cm off the drawn path, "
            f"{100 * hand['hand_work_rms_m']:.0f} cm RMS, {hand['hand_work_j_a_beat']:.1f} J a beat"
        )
    if hand["lowest_m"] < 0:
        lines.append(
            f"    a wick goes {-100 * hand['lowest_m']:.0f} cm into the floor: take it shorter, or "
            "raise the hand (up)"
        )
    lines.append(
        f"    let go, a head flies at most {hand['let_go_m']:.0f} m (bound, no drag; see the cautions)"
    )
    return lines


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


def _parameter_lines(records: Sequence[Mapping[str, Any]]) -> list[str]:
    wide = max((len(p["name"]) for p in records), default=0)
    return [
        f"  {p['name']:<{wide}}  {p['range']}; {p['default']} if not said; {p['help']}"
        for p in records
    ]


def steps_text(name: str, stations: list[Station]) -> str:
    """Build steps for a pupil: what to see, where the hand is, what changes, where planes cross."""
    lines = [f"Build steps of {name}"]
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
        if station.audience != station.performer:
            lines.append(f"     the audience sees: {station.audience}")
        if station.number > 1:
            lines.append(f"     {station.change}")
            cross = station.cross_words or "none, the two planes are parallel"
            lines.append(
                f"     cross point with the step before, from the circle's middle: {cross}"
            )
    return "\n".join([*lines, ""])


def station_record(station: Station) -> dict[str, Any]:
    """One build step as plain data; places in metres, body frame."""
    return {
        "number": station.number,
        "beat": station.beat,
        "half": station.half,
        "lobe": station.lobe,
        "cycle": station.cycle,
        "hand": station.hand.tolist(),
        "tether": station.tether.tolist(),
        "plane": station.plane.tolist(),
        "place": station.place,
        "performer": station.performer,
        "audience": station.audience,
        "change": station.change,
        "cross": None if station.cross is None else station.cross.tolist(),
        "cross_words": station.cross_words,
    }


def joins_text(matrix: JoinMatrix) -> str:
    """The join matrix: rows come first, columns after; then how many of each verdict."""
    wide = max(len(name) for name in matrix.names)
    count = len(matrix.names)
    tens = "".join(str(k // 10) if k >= 10 else " " for k in range(1, count + 1))
    ones = "".join(str(k % 10) for k in range(1, count + 1))
    lines = [f"{'':<{wide + 4}} {digits}" for digits in (tens, ones)]
    for k, name in enumerate(matrix.names):
        row = "".join(MARKS[VERDICTS[int(v)]] for v in matrix.kind[k])
        lines.append(f"{k + 1:>3} {name:<{wide}} {row}")
    lines.append("")
    for verdict, number in matrix.counts().items():
        lines.append(f"{MARKS[verdict]}  {verdict}: {number}")
    return "\n".join([*lines, ""])
