"""Whether something falls on every accent that is written: a pattern, a stop or a cycle of a pattern begins there."""

from math import floor

from sequencer.checks.check import Check
from sequencer.checks.outcome import Outcome
from sequencer.findings import Finding
from sequencer.staging.staged import Accent, Block, Staged
from sequencer.timing.position import TOUCH
from sequencer.units import counted

ON_THE_ACCENT = 0.125  # [beats] a beginning so near to an accent falls on it; a design choice
SEEN_CYCLE = 2.0  # [beats] of a hand cycle that is seen to begin; shorter ones begin on nearly every beat; a design choice
_SOURCE = f"this show; within {ON_THE_ACCENT:g} of a beat"


def accents_hit(show: Staged) -> Outcome:
    """Accents on which nothing begins."""
    findings = []
    alike: dict[tuple[float, str, tuple[str, ...]], list[Accent]] = {}
    for accent in show.accents:
        near = nearest_beginning(show, accent)
        if near is None or abs(near - accent.beat) > ON_THE_ACCENT:
            said, ways = _words(show, accent, near)
            alike.setdefault((accent.beat, said, ways), []).append(accent)
    for (beat, said, ways), group in alike.items():
        findings.append(
            Finding(
                code="accent-missed",
                severity="warn",
                who=tuple(each.who for each in group),
                start=show.seconds(beat),
                end=show.seconds(beat),
                position=show.position(beat),
                message=said,
                remedies=ways,
                source=_SOURCE,
            )
        )
    return Outcome(findings=tuple(findings))


def nearest_beginning(show: Staged, accent: Accent) -> float | None:
    """The beat nearest to an accent on which its performer begins something; None if there is nothing.

    Parameters
    ----------
    show : Staged
    accent : Accent

    Returns
    -------
    beat : float or None
        [beats] Where a pattern or a stop begins, or a cycle of a pattern that lasts `SEEN_CYCLE` or more.
    """
    danced = [block for block in show.blocks_of(accent.who) if not block.link]
    begun = [block.start for block in (*danced, *show.stops_of(accent.who))]
    begun += [
        beat
        for block in danced
        if block.cycle >= SEEN_CYCLE - TOUCH
        for beat in _cycles(block, accent.beat)
    ]
    return min(begun, key=lambda beat: (abs(beat - accent.beat), beat), default=None)


def _cycles(block: Block, beat: float) -> list[float]:
    """Beginnings of cycles of a block, the nearest to a beat among them."""
    first = block.start - block.shift
    k = floor((min(max(beat, block.start), block.end) - first) / block.cycle)
    beats = [first + n * block.cycle for n in (k - 1, k, k + 1)]
    return [each for each in beats if block.start - TOUCH <= each < block.end - TOUCH]


def _words(show: Staged, accent: Accent, near: float | None) -> tuple[str, tuple[str, ...]]:
    if near is None:
        return "nothing begins on this accent", ("write a pattern or a stop that begins there",)
    away = abs(near - accent.beat)
    side, move = ("after", "earlier") if near > accent.beat else ("before", "later")
    far = counted(round(away, 3), "beat")
    message = f"nothing begins on this accent; the nearest beginning, {show.at_aloud(near)}, is {far} {side} it"
    return message, (
        f"begin what begins there {far} {move}",
        "begin a pattern, a rest or a hold on the accent",
        f"move the accent to {show.position(near)}",
    )


CHECK = Check(
    name="accents",
    run=accents_hit,
    codes={"accent-missed": ("warn",)},
    depends_on=("trajectories",),
    progress="checking joins",
)
