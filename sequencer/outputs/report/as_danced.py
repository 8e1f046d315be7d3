"""The show as danced, for a terminal: who comes too close to whom and where in the plan, how often, and what to rehearse."""

import textwrap
from collections.abc import Mapping

from sequencer.findings import AnyChance, Chance, Danced, MissedCue, Rehearsal
from sequencer.outputs.report.terminal import columns, fitted
from sequencer.timing.position import clock_text
from sequencer.units import BarLengths, aloud, counted

_ROWS = 10  # in the table; JSON holds all
_NEVER = 1e-6  # chance that is not told in numbers
_MANY = 3  # people told as "everybody": one, two or all are named
_CUES = 5  # missed cues that are told
_KINDS = {
    "place": ("places", "m", 1.0),
    "facing": ("facings", "°", 57.29577951308232),
    "timing": ("timing", "beats", 1.0),
    "tempo": ("tempo", "%", 100.0),
    "tether": ("tethers", "m", 1.0),
    "hand": ("hands", "m", 1.0),
}


def danced_lines(danced: Danced, width: int, bars: BarLengths | None = None) -> list[str]:
    """Lines for a terminal of a given width.

    Parameters
    ----------
    danced : Danced
    width : int
    bars : BarLengths, optional
        Of the song, for counting positions aloud.
    """
    count = bars or BarLengths()
    head = f"As danced: {counted(danced.runs, 'run')}, seed {danced.seed}; errors drawn: {spread_words(danced)}"
    lines = textwrap.wrap(head, width, subsequent_indent="  ")
    if not danced.pairs:
        return [*lines, "  A solo: nobody to come too close to."]
    lines += [*_chance_lines(danced, width, count), *_clear_lines(danced, width)]
    lines += [*_cue_lines(danced, width, count), *_mark_lines(danced, width, count)]
    return [*lines, "", *_sum_lines(danced, width), *_rehearsal_lines(danced, width, count)]


def spread_words(danced: Danced) -> str:
    """The standard deviations, for people: everybody's, then those of performers with their own."""
    own = (
        f"{name}{' (by the practice log)' if name in danced.by_log else ''}: {_spread({k: v for k, v in each.items() if v != danced.spread[k]})}"
        for name, each in danced.own.items()
    )
    return "; ".join((_spread(danced.spread), *own))


def _spread(spread: Mapping[str, float]) -> str:
    words = []
    for kind, value in spread.items():
        name, unit, factor = _KINDS[kind]
        words.append(f"{name} {factor * value:.3g}{'' if unit == '°' else chr(0xA0)}{unit}")
    return ", ".join(words) or "as all"


def percent(share: float) -> str:
    """A share for people: finer near zero, where it matters."""
    value = 100 * share
    return f"{value:.2g} %" if 0 < value < 1 else f"{value:.0f} %"


def _chance_lines(danced: Danced, width: int, bars: BarLengths) -> list[str]:
    """The conflicts, each with where in the plan it is."""
    shown = danced.chances[:_ROWS]
    if not shown:
        return []
    names = [" – ".join(one.between) for one in shown]
    times = [_when(one, bars) for one in shown]
    wide = max(columns(when) for when in times)
    room = min(max(columns(name) for name in names), max(width - 46 - wide, 12))
    interval = f"{100 * danced.confidence:.0f} % interval"
    head = f"  {fitted('from', wide)} {fitted('between', room)}  {'under':>7} {interval:>16} {'closest':>8}"
    lines = [f"{head}  most by"]
    for when, name, one in zip(times, names, shown, strict=True):
        row = _row(f"{fitted(when, wide)} {fitted(name, room)}", one)
        lines += [row, *_where_lines(one, width, bars)]
    more = len(danced.chances) - len(shown)
    if more:
        lines.append(f"  {more} more, less likely (--json lists all)")
    unsure = sum(one.low < danced.least <= one.high for one in danced.chances)
    if unsure:
        are = "1 of these may be" if unsure == 1 else f"{unsure} of these may be"
        lines += _wrapped(
            f"{are} as likely as {percent(danced.least)} or not: {danced.runs} runs are too few to say",
            width,
        )
    return lines


def _when(one: Chance, bars: BarLengths) -> str:
    return clock_text(one.start) + (f" ({aloud(one.position, bars)})" if one.position else "")


def _row(begins: str, one: Chance) -> str:
    interval = f"{percent(one.low)} – {percent(one.high)}"
    people = f", {' and '.join(one.who)}" if one.who else ""
    why = f"{one.matters}{people}" if one.matters else ""
    if one.raises:
        why = "the plan"
    return (
        f"  {begins}  {percent(one.chance):>7} {interval:>16} {one.worst:>6.2f} m  {why}"
    ).rstrip()


def _where_lines(one: Chance, width: int, bars: BarLengths) -> list[str]:
    """Where in the plan a conflict is, when in it, and what the spread makes of it."""
    moves = " and ".join(move for move in dict.fromkeys(one.moves) if move)
    parts = [", ".join(part for part in (one.formation, one.section, moves) if part)]
    if all(one.parts):
        own = zip(one.between, one.parts, strict=True)
        parts.append("nearest: " + " and ".join(f"{who}'s {part}" for who, part in own))
    if one.slices and one.slices_from:
        every = "beat" if one.slice_beats == 1 else f"stretch of {one.slice_beats:g} beats"
        counts = " ".join(str(count) for count in one.slices)
        parts.append(
            f"to {clock_text(one.end)}; how many runs brought them nearest in each {every} from {aloud(one.slices_from, bars)} on: {counts}"
        )
    if one.half is not None and one.twice is not None:
        parts.append(f"{percent(one.half)} at half the spread, {percent(one.twice)} at twice")
    if one.without:
        kinds = sorted(one.without, key=lambda kind: one.without[kind])
        told = [f"{_KINDS[kind][0]} {percent(one.without[kind])}" for kind in kinds]
        parts.append(f"without errors of {', '.join(told)}")
    return _wrapped("; ".join(part for part in parts if part), width, indent=6)


def _clear_lines(danced: Danced, width: int) -> list[str]:
    if not danced.clear:
        return []
    pairs = "pair" if danced.clear == 1 else "pairs"
    return _wrapped(
        f"{danced.clear} {pairs} of {danced.pairs} never under {danced.required:.2f} m: "
        f"chance of each at most {percent(danced.clear_high)}",
        width,
    )


def _cue_lines(danced: Danced, width: int, bars: BarLengths) -> list[str]:
    """What missed cues do."""
    if not danced.slips:
        return []
    harm = len(danced.missed_cues)
    head = (
        f"Missed cues: each cue of each performer a beat, a bar and an eight late, and with left and right mixed up, while "
        f"all others dance the plan: {harm} of {danced.slips} bring two too close, flames counted"
    )
    lines = _wrapped(head + (", the nearest first:" if harm else ""), width)
    for one in danced.missed_cues[:_CUES]:
        lines += _wrapped(_cue_words(one, bars), width, indent=4)
    if harm > _CUES:
        lines.append(f"    {harm - _CUES} more (--json lists all)")
    return lines


def _cue_words(one: MissedCue, bars: BarLengths) -> str:
    into = f" into {one.begins}" if one.begins else ""
    return f"{clock_text(one.start)} ({aloud(one.position, bars)}) {one.who}, {one.kind}{into}: at {clock_text(one.at)} {one.harm}"


def _mark_lines(danced: Danced, width: int, bars: BarLengths) -> list[str]:
    """How far all marks may be off together."""
    marks = danced.marks
    if marks is None:
        return []
    who, thing = marks.between
    thing = f"the {thing}" if thing == "edge of the stage" else thing
    when = f" at {clock_text(marks.at)}" + (
        f" ({aloud(marks.position, bars)})" if marks.position else ""
    )
    if not marks.room:
        return _wrapped(
            f"Marks off for all: no room is left between {who} and {thing}{when} as it is planned",
            width,
        )
    return _wrapped(
        f"Marks off for all: nobody comes nearer to anybody else, but if all marks are {100 * marks.room:.0f} cm off, {who} is too near "
        f"{thing}{when}: with marks off by {100 * marks.spread:.0f} cm (standard deviation) "
        + (
            f"in at most {percent(marks.most)} of the runs"
            if marks.most > _NEVER
            else "practically never"
        ),
        width,
    )


def _sum_lines(danced: Danced, width: int) -> list[str]:
    """The chance that any two come too close."""
    if not danced.anything:
        return []
    now, *others = danced.anything
    by = f"{_any_words(now)} by small errors"
    if danced.slips:
        by += f", the rest by missed cues (each performer misses one in {percent(danced.missed)} of the runs)"
    text = (
        f"Chance that any two come too close in a run: {percent(danced.goes_wrong)} ({percent(danced.goes_wrong_low)} to "
        f"{percent(danced.goes_wrong_high)}); {by}."
    )
    if others:
        words = " and ".join(
            f"{_any_words(each)} if they are {'half' if each.spread < 1 else 'twice'} as wide"
            for each in others
        )
        text += f" Small errors make it {words}."
    return _wrapped(text, width, indent=0)


def _any_words(each: AnyChance) -> str:
    return f"{percent(each.chance)} ({percent(each.low)} to {percent(each.high)} by {counted(each.runs, 'run')})"


def _rehearsal_lines(danced: Danced, width: int, bars: BarLengths) -> list[str]:
    """What to rehearse first, and cues to be sure of that show in too few runs to be weighed."""
    lines, first = list[str](), [one for one in danced.rehearse if one.gains]
    if first:
        lines.append("Rehearse this first")
    for k, one in enumerate(first, start=1):
        then, now = (_share_of_runs(share, danced.runs) for share in (one.after, one.before))
        told = f"{_rehearsal_words(one, bars)} – any two too close in {then} of the runs instead of {now}"
        lines += _wrapped(f"{k}. {told}", width, indent=2, hang=5)
    cues = [one for one in danced.rehearse if not one.gains]
    if cues:
        seldom = f"missed so seldom that it shows in less than one run of {danced.runs}"
        lines += _wrapped(f"Cues to be sure of ({seldom})", width, indent=0)
    for one in cues:
        lines += _wrapped(f"– {_rehearsal_words(one, bars)}", width, indent=2, hang=4)
    return lines


def _share_of_runs(share: float, runs: int) -> str:
    """A share of the runs, no finer than so many can tell."""
    if share * runs < 1:
        return f"under {percent(1 / runs)}"
    return f"{100 * share:.1g} %" if share < 0.01 else percent(share)


def _rehearsal_words(one: Rehearsal, bars: BarLengths) -> str:
    where = f" ({aloud(one.position, bars)})" if one.position else ""
    who = " and ".join(one.who) if len(one.who) < _MANY else "everybody"
    return f"{clock_text(one.start)}{where} {who}: {one.what}"


def _wrapped(text: str, width: int, *, indent: int = 2, hang: int | None = None) -> list[str]:
    """Lines of a text, in which no number is parted from its sign."""
    lines = textwrap.wrap(
        text.replace(" %", "\u00a0%"),
        width,
        initial_indent=" " * indent,
        subsequent_indent=" " * (indent + 2 if hang is None else hang),
    )
    return [line.replace("\u00a0%", " %") for line in lines]
