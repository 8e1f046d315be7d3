"""A drafted routine in words: what it costs and why, and how good it is proven to be."""

from sequencer.planning.drafting.costing.weights import TERMS
from sequencer.planning.drafting.drafted_routine import Draft
from sequencer.units import counted

_WELL = 0.6  # [1] rank correlation from which a dance is seen to follow the music
_MUCH = 0.9  # [1] from which on what returns is in nobody's way
_PROVEN = 1e-6  # [1] gap below which nothing better exists


def summary(draft: Draft, *, why: bool = False) -> str:
    """What was drafted, line by line.

    Parameters
    ----------
    draft : Draft
    why : bool
        Also what it costs, how good that is proven to be, each term of the cost, and what is danced in every stretch.
    """
    patterns = {words.partition(",")[0] for *_, words in draft.rows}
    stretches = counted(len(draft.rows), "stretch", "stretches")
    links = f"{counted(draft.links, 'link')} ({100 * draft.link_share:.0f} % of the time)"
    lines = [
        f"{stretches}, {counted(len(patterns), 'pattern')}, {links}",
        fit(draft),
    ]
    if draft.unflown:
        lines.append(
            f"checked: no STOP comes from the routine; what cannot be flown is left ({counted(len(draft.unflown), 'WARN')}): "
            "`sequencer check --mend` mends it as far as it goes"
        )
    elif draft.checked:
        lines.append("checked: no STOP and no WARN comes from the routine")
    else:
        lines.append("NOT checked: run `sequencer check` before you rely on it")
    lines += shortfalls(draft)
    lines += [f"on and off: {words}" for words in draft.on_and_off]
    for finding in draft.left:
        at = f" ({finding.position})" if finding.position else ""
        lines.append(f"not from the routine, {finding.severity.upper()}{at}: {finding.message}")
    if why:
        lines += ["", f"What it costs: {draft.cost:.2f}, {goodness(draft)}"]
        lines += [*_terms(draft), *_following(draft)]
        lines += ["", "What is danced", *_rows(draft)]
    return "\n".join(lines)


def shortfalls(draft: Draft) -> list[str]:
    """What it leaves out, leaves open or cannot fly, line by line."""
    return [
        *(f"left out: {words}" for words in draft.unmet),
        *(f"left open: {words}" for words in draft.left_open),
        *(f"cannot be flown yet ({each.position}): {each.message}" for each in draft.unflown),
    ]


def fit(draft: Draft) -> str:
    """How well it suits song, cast and wishes, for whoever dances it: without figures that mean nothing to them."""
    of = "music, wishes and what everybody can dance, as this tool weighs them"
    looked = " of those looked at" if draft.unseen or draft.dearer > 1 else ""
    what = "for what is drafted, " if draft.left_open else ""
    if draft.gap <= _PROVEN:
        return f"{what}no other routine{looked} fits better: {of}"
    return f"{what}close to the best fit of {of}: what counts against it could be {100 * draft.gap:.2g} % less at most"


def goodness(draft: Draft) -> str:
    """How much better a routine could be, in words."""
    rules = "these rules"
    if draft.left_open:
        rules += ", for what is drafted"
    if draft.dearer > 1:
        rules += f", with links {draft.dearer:.1f} times as dear so that they take less of the time"
    if draft.unseen:
        ways = "one way" if draft.unseen == 1 else f"{draft.unseen} ways"
        rules += (
            f", leaving out {ways} of dancing a pattern where two others of it had failed alike"
        )
    if draft.gap <= _PROVEN:
        return f"no better routine exists under {rules}"
    return f"within {100 * draft.gap:.2g} % of the best under {rules} (nothing costs less than {draft.bound:.2f})"


def _terms(draft: Draft) -> list[str]:
    return [
        f"  {draft.terms.get(name, 0.0):7.2f}  {name}: {words}"
        for name, words in sorted(TERMS.items(), key=lambda each: -draft.terms.get(each[0], 0.0))
    ]


def _following(draft: Draft) -> list[str]:
    """How well size follows loudness, and what stands in the way."""
    if draft.follows is None:
        return []
    lines = [
        "",
        f"Size follows loudness by {draft.follows:.2f} (rank correlation over the stretches; 1 is always, 0 not at all)",
    ]
    if draft.most is not None and draft.follows < _WELL and draft.most < _MUCH:
        lines.append(
            f"  parts that return are louder at one time than at another: danced as large each time, at most {draft.most:.2f} can be had"
        )
        if draft.returns == "same":
            lines.append("  `returns: alike` draws them larger where they are louder")
        lines.append("  `returns: free` lets them be danced differently")
    return lines


def _rows(draft: Draft) -> list[str]:
    wide = max((len(section) for section, *_ in draft.rows), default=0)
    return [f"  {at:>7}  {section:<{wide}}  {words}" for section, at, words in draft.rows]
