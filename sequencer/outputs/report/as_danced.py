"""The table of a show as danced: who comes too close to whom and when, how often, and what to rehearse."""

import textwrap

from sequencer.findings import Chance, Danced
from sequencer.outputs.report.terminal import columns, fitted
from sequencer.timing.position import clock_text

_ROWS = 10  # in the table; JSON holds all
_KINDS = {
    "place": ("places", "m", 1.0),
    "facing": ("facings", "°", 57.29577951308232),
    "timing": ("timing", "beats", 1.0),
    "tempo": ("tempo", "%", 100.0),
    "tether": ("tethers", "m", 1.0),
    "hand": ("hands", "m", 1.0),
}


def danced_lines(danced: Danced, width: int) -> list[str]:
    """Lines for a terminal of a given width.

    Parameters
    ----------
    danced : Danced
    width : int
    """
    head = (
        f"As danced: {danced.runs} runs, seed {danced.seed}; errors drawn: {spread_words(danced)}"
    )
    lines = textwrap.wrap(head, width, subsequent_indent="  ")
    if not danced.pairs:
        return [*lines, "  A solo: nobody to come too close to."]
    shown = danced.chances[:_ROWS]
    if shown:
        names = [" – ".join(one.between) for one in shown]
        room = min(max(columns(name) for name in names), max(width - 66, 12))
        lines.append(
            f"  {'from':<20} {fitted('between', room)}  {'under':>7} "
            f"{f'{100 * danced.confidence:.0f} % interval':>16} {'closest':>8}  most by"
        )
        lines += [_row(name, one, room) for name, one in zip(names, shown, strict=True)]
    more = len(danced.chances) - len(shown)
    if more:
        lines.append(f"  {more} more, less likely (--json lists all)")
    if danced.clear:
        pairs = "pair" if danced.clear == 1 else "pairs"
        lines += textwrap.wrap(
            f"{danced.clear} {pairs} of {danced.pairs} never under {danced.required:.2f} m: "
            f"chance of each at most {percent(danced.clear_high)}",
            width,
            initial_indent="  ",
            subsequent_indent="  ",
        )
    return lines


def spread_words(danced: Danced) -> str:
    """The standard deviations, for people."""
    words = []
    for kind, value in danced.spread.items():
        name, unit, factor = _KINDS[kind]
        words.append(f"{name} {factor * value:.3g}{'' if unit == '°' else chr(0xA0)}{unit}")
    return ", ".join(words)


def percent(share: float) -> str:
    """A share for people: finer near zero, where it matters."""
    value = 100 * share
    return f"{value:.2g} %" if 0 < value < 1 else f"{value:.0f} %"


def _row(name: str, one: Chance, room: int) -> str:
    when = clock_text(one.start) + (f" ({one.position})" if one.position else "")
    interval = f"{percent(one.low)} – {percent(one.high)}"
    why = f"{one.matters}, {one.who}" if one.matters else ""
    return (
        f"  {when:<20} {fitted(name, room)}  {percent(one.chance):>7} {interval:>16} "
        f"{one.worst:>6.2f} m  {why}"
    ).rstrip()
