"""What findings and advice on a show as danced say, in a captain's words."""

from sequencer.checks.distances.binomial import CONFIDENCE
from sequencer.checks.distances.conflict_groups import ConflictGroup
from sequencer.checks.distances.meeting import met_words
from sequencer.checks.distances.missed_cues import Slip
from sequencer.checks.distances.rehearse_first import EXACT, REHEARSED, Advice, must_mend
from sequencer.findings import Chance
from sequencer.units import counted

_LINK = "the link from "


def finding_message(own: Chance, required: float, spell: tuple[str, str]) -> str:
    """What a finding says of a conflict; `spell`: from when to when, as counted."""
    first, second = own.between
    where = ", ".join(part for part in (own.formation, own.section, moves_words(own.moves)) if part)
    return (
        f"as danced, {first} and {second} come closer than {required:.2f} m in {own.conflicts} of {own.runs} runs "
        f"({100 * own.chance:.0f} %; {100 * own.low:.0f} to {100 * own.high:.0f} % with {100 * CONFIDENCE:.0f} % confidence"
        f"{_spreads(own)}){f' – {where} –' if where else ','} between {spell[0]} and {spell[1]}; "
        f"at worst {met_words(own.between, own.parts, own.worst, own.apart)}"
    )


def _spreads(own: Chance) -> str:
    if own.half is None or own.twice is None:
        return ""
    return (
        f"; {100 * own.half:.0f} % with errors half as wide, {100 * own.twice:.0f} % twice as wide"
    )


def moves_words(moves: tuple[str, str]) -> str:
    """What two dance: one name if it is the same."""
    told = [move for move in dict.fromkeys(moves) if move]
    return " and ".join(told)


def remedies(one: ConflictGroup, own: Chance) -> tuple[str, ...]:
    """How to mend a conflict: the plan first where rehearsing does not help, else what takes most of it away."""
    room = "give them more room, or raise the distance between performers in the rules"
    if must_mend(one):
        return (f"mend the plan: {_why_mend(own)}", room)
    if not own.matters:
        return (room, "mend the likelier conflicts first")
    people = " and ".join(own.who)
    alike = " alike" if len(own.who) > 1 else " above all"
    now, then = _percent(own.chance), _percent(own.without[own.matters])
    first = f"rehearse {REHEARSED[own.matters]} first, {people}{alike}"
    return (f"{first}: with {EXACT[own.matters]} it is {then} instead of {now}", room)


def _why_mend(own: Chance) -> str:
    if own.raises:
        worst = max(own.raises, key=lambda kind: own.without[kind])
        return (
            f"with {EXACT[worst]} it would be {_percent(own.without[worst])} instead of {_percent(own.chance)}, so "
            "they only miss each other by being off; a wider formation, another count or another plane keeps them apart"
        )
    return "no error by itself makes much of it, so there is no one thing to rehearse"


def rehearsed(each: Advice, begins: str, move: str) -> str:
    """What one line of "rehearse this first" says.

    Parameters
    ----------
    each : Advice
    begins : str
        What begins at its beat.
    move : str
        What is danced there.
    """
    where = move if move and not move.startswith(_LINK) else ""
    into = f" in {where}" if where else ""
    if each.mend:
        places = f" and in {counted(each.more, 'more place')}" if each.more else ""
        return f"mend the plan{into}{places}: more room, another count or another plane"
    if each.kind:
        return f"{REHEARSED[each.kind]} everywhere{f', {where} above all' if where else ''}"
    cues = len({slip.cue for slip in each.slips})
    more = f", and {counted(cues - 1, 'more cue')} like it" if cues > 1 else ""
    return f"the cue{f' into {begins}' if begins else ''}: {_slip_words(each.slips[0])}{more}"


def begun(move: str) -> str:
    """What begins with a move: what the link leads into, if it is one."""
    if not move.startswith(_LINK):
        return move
    return move.rpartition(" into " if " into " in move else " to ")[2]


def _slip_words(worst: Slip) -> str:
    """What missing a cue does."""
    return f"{worst.kind}, {harm_words(worst)}"


def harm_words(slip: Slip) -> str:
    """Which parts come how near to each other where a cue is missed, and who else is too close."""
    first, *others = slip.meets
    also = f"; too close to {' and '.join(others)} as well" if others else ""
    return f"{met_words((slip.who, first), slip.parts, slip.worst, slip.apart)}{also}"


def _percent(share: float) -> str:
    value = 100 * share
    return f"{value:.1g} %" if 0 < value < 1 else f"{value:.0f} %"
