"""Lines for the show file that follow from a practice log: a person puts them in."""

from collections.abc import Iterator

from sequencer.practice.logged_spreads import FEWEST_MEASURED
from sequencer.practice.practice_plan import PracticePlan
from sequencer.show.model import Show


def show_lines(show: Show, plan: PracticePlan, log_name: str) -> list[str]:
    """Lines for the show file, with where they belong; what the show says already is not told again.

    Parameters
    ----------
    show : Show
    plan : PracticePlan
    log_name : str
        The log's name beside the show.
    """
    return [*_of_everybody(show, plan), *_of_some(show, plan), *_of_burns(show, plan, log_name)]


def _of_everybody(show: Show, plan: PracticePlan) -> Iterator[str]:
    parts = _measured(
        (plan.place, show.drift.place),
        (plan.timing, show.drift.timing),
    )
    if not parts:
        return
    why = "from which `check --danced` draws the errors of those who were not measured themselves"
    if "drift" not in show.model_fields_set:
        yield f"`drift: {{{', '.join(parts)}}}`, {why}"
    else:
        keys = " and ".join(f"`{each}`" for each in parts)
        yield f"under `drift:` {keys}, {why}; all else there stays"


def _of_some(show: Show, plan: PracticePlan) -> Iterator[str]:
    """Of those for whom the show says otherwise: of the others `check --danced` asks the log itself."""
    for each in plan.spreads:
        own = show.drift.people.get(each.who)
        if own is None:
            continue
        parts = _measured(
            (each.place if each.places >= FEWEST_MEASURED else None, own.place),
            (each.timing if each.timings >= FEWEST_MEASURED else None, own.timing),
            stated_only=True,
        )
        if parts:
            keys = " and ".join(f"`{part}`" for part in parts)
            yield f"under `drift:`, `people:`, {each.who}: {keys}, as measured; what is stated there counts, and not the log"


def _measured(
    place: tuple[float | None, float | None],
    timing: tuple[float | None, float | None],
    *,
    stated_only: bool = False,
) -> list[str]:
    """Keys and values where what was measured is not what is stated, each pair in that order; [m] and [beats]."""

    def differs(measured: float | None, stated: float | None) -> bool:
        if measured is None or (stated is None and stated_only):
            return False
        return stated is None or round(measured, 2) != round(stated, 2)

    out = []
    if differs(*place):
        out.append(f"place: {100 * (place[0] or 0.0):.0f} cm")
    if differs(*timing):
        out.append(f"timing: {timing[0] or 0.0:.2f} beats")
    return out


def _of_burns(show: Show, plan: PracticePlan, log_name: str) -> Iterator[str]:
    fire = show.fire
    if plan.burns and fire is not None and fire.burns != log_name:
        instead = (
            f" (instead of {fire.burns}, whose lines can be copied into it)" if fire.burns else ""
        )
        yield f"under `fire:` the line `burns: {log_name}`{instead}, so that checks count on what was timed"
