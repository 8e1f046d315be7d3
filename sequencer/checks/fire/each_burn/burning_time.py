"""Burns against burning time: whether every flame goes out with fuel to spare.

Sources: the share of a burn that may be planned is a rule of the book in force; the burning time is the
one the performer timed, or a default.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from sequencer.checks.check import Check
from sequencer.checks.fault_kinds import BURN
from sequencer.checks.fire.records import CAPPED, PROGRESS, needed, night_finding, where_lit
from sequencer.checks.outcome import Outcome
from sequencer.facts.burn_log import FEWEST
from sequencer.facts.burn_times import BurnTime
from sequencer.facts.profiles import Rule
from sequencer.findings import Figure, Finding
from sequencer.safety.burns.burning import PlannedBurn
from sequencer.safety.burns.handling import HandlingTimes, handling_times, seconds_words
from sequencer.safety.safety_plan import PLAN_PARTS, refuel_rules, safety_plan
from sequencer.staging.results import once_per_show
from sequencer.staging.staged import Staged
from sequencer.timing.position import clock_text

_EXACT = 1e-6  # of rounding


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """A moment at which a burn may end: the border of a section or of a block."""

    seconds: float  # [s] of the track
    position: str  # bar.beat
    label: str  # the section or block that begins there
    who: str = ""  # whose block it is; nobody's if a section begins


@where_lit
def burning_time(show: Staged) -> Outcome:
    """Burns of a show against their burning time.

    Raises
    ------
    InputError
        If the show's file of rules, or its log of burns, cannot be used.
    """
    plan = safety_plan(show)
    share = needed(plan.book, "burn-share")
    reserve = show.show.fire.reserve if show.show.fire else share.number
    return Outcome(
        findings=(
            *_capped(share, reserve),
            *burn_findings(
                plan.burns,
                share=_stricter(share, reserve),
                cuts=cuts_of(show),
                positions=[show.position(burn.start) for burn in plan.burns],
                refuel=refuel_rules(plan.book),
                handling=plan.handling,
            ),
        )
    )


@once_per_show
def cuts_of(show: Staged) -> list[Cut]:
    """Section borders, and the borders of each performer's own blocks, at which a flame may be put out, by time."""
    found: dict[tuple[float, str], Cut] = {}
    song = show.song
    for section, name in zip(song.sections, song.section_names(), strict=True):
        beat = round(float(show.tempo.beats_from_seconds(section.start)))
        seconds = show.seconds(beat)
        if 0 <= seconds <= song.duration:
            found[round(seconds, 3), ""] = Cut(
                seconds=seconds, position=show.position(beat), label=name
            )
    for block in show.blocks:
        seconds = show.seconds(block.start)
        if (round(seconds, 3), "") not in found:
            position = show.position(block.start)
            found.setdefault(
                (round(seconds, 3), block.who),
                Cut(seconds=seconds, position=position, label=block.title, who=block.who),
            )
    return [found[key] for key in sorted(found)]


def _capped(share: Rule, reserve: float) -> list[Finding]:
    """A reserve in the show that is looser than the rules."""
    if reserve <= share.number:
        return []
    return [
        night_finding(
            "limit-capped", "warn",
            f"fire, reserve: {reserve:.0%} of the burning time is above what the rules allow; "
            f"{share.number:.0%} applies", share.citation,
            (f"write reserve: {share.number:g} or less, or add the authority's rule",),
        )
    ]  # fmt: skip


def _stricter(share: Rule, reserve: float) -> Rule:
    """The share of the burning time that applies: the show's reserve if it is smaller than the rule's."""
    if reserve >= share.number:
        return share
    return Rule(
        kind=share.kind,
        value=reserve,
        printed=f"at most {reserve:g} of the burning time, fire, reserve",
        profile="this show",
        source=share.source,
        mark="as entered",
    )


def burn_findings(
    burns: Sequence[PlannedBurn],
    *,
    share: Rule,
    cuts: Sequence[Cut],
    positions: Sequence[str],
    refuel: Sequence[Rule] = (),
    handling: HandlingTimes | None = None,
) -> list[Finding]:
    """Burns that outlast their wick, use up its reserve, or rely on a time that nobody measured.

    Parameters
    ----------
    burns : sequence of PlannedBurn
    share : Rule
        Share of the burning time that may be planned.
    cuts : sequence of Cut
        Where a burn may be cut, by time.
    positions : sequence of str
        bar.beat of each burn's start.
    refuel : sequence of Rule
        How long soaking and spinning off take: burns of one wick closer together than that, after cooling, count
        as one.
    handling : HandlingTimes, optional
        How long the props are handled; default: the usual times.
    """
    found: list[Finding] = []
    times = handling or handling_times(None)
    for burn, position in zip(burns, positions, strict=True):
        found += _too_long(burn, position, share, cuts, refuel, times)
    found += _not_timed(burns, positions)
    found += _few_timed(burns, positions)
    return found


def _too_long(
    burn: PlannedBurn,
    position: str,
    share: Rule,
    cuts: Sequence[Cut],
    refuel: Sequence[Rule],
    handling: HandlingTimes,
) -> list[Finding]:
    if burn.burn is None:
        return [
            _finding(
                "burn-unknown",
                burn,
                position,
                f"{burn.who} is lit for {_most(burn.lit_s)}{_parts(burn, handling)}, and how long {burn.fuel} "
                "burns in this wick is not known",
                ("time a burn of this wick with this fuel and write it under fire, burn",),
                "unknown is not zero: a blank counts as unmet",
            )
        ]
    allowed = share.number * burn.burn.seconds
    if burn.lit_s <= allowed + _EXACT:
        return []
    out = burn.lit_s > burn.burn.seconds + _EXACT
    basis = {"measured": "timed", "stated": "stated, not timed", "default": "a default"}
    together = burn.lit_s > burn.flame_s + _EXACT
    counted = (
        f"the wick burns {_least(burn.burn.seconds)} ({basis[burn.burn.basis]})"
        if out
        else f"{share.number:.0%} of the burning time of {_least(burn.burn.seconds)} "
        f"({basis[burn.burn.basis]}) is {_least(allowed)}"
    )
    return [
        _finding(
            "burns-out" if out else "burn-reserve",
            burn,
            position,
            f"{burn.who} is lit for {_most(burn.lit_s)}{_parts(burn, handling)}, but {counted}"
            + ("; burns with no time to cool and soak in between count as one" if together else ""),
            _remedies(burn, burn.burn, allowed, cuts, handling),
            " ".join(
                [
                    share.citation,
                    *(rule.citation for rule in refuel if together),
                    f"Burning time: {burn.burn.source}",
                ]
            ),
            Figure(
                quantity=BURN,
                value=burn.lit_s,
                limit=burn.burn.seconds if out else allowed,
                unit="s",
            ),
        )
    ]


def _parts(burn: PlannedBurn, handling: HandlingTimes) -> str:
    """What a burn is made of: " (5 s being lit, 26 s waiting, 3:01.4 danced, 8 s until it is out)"."""
    ending = burn.queue_s + burn.putting_out_s
    before = burn.lit_s - burn.flame_s
    named = [
        (before, f"{_most(before)} burnt before on the same soak"),
        (burn.lighting_s, f"{seconds_words(burn.lighting_s)} being lit{handling.words('light')}"),
        (burn.wait_s, f"{seconds_words(burn.wait_s)} waiting alight"),
        (burn.end_s - burn.start_s, f"{_most(burn.end_s - burn.start_s)} danced"),
        (ending, f"{seconds_words(ending)} until it is out{handling.words('put_out')}"),
    ]
    kept = [words for seconds, words in named if seconds > _EXACT]
    return f" ({', '.join(kept)})" if len(kept) > 1 else ""


def _not_timed(burns: Sequence[PlannedBurn], positions: Sequence[str]) -> list[Finding]:
    """One finding for all performers who rely on the same untimed figure: a blank stops, a stated one warns."""
    groups: dict[tuple[str, float, str], list[int]] = {}
    for index, burn in enumerate(burns):
        if burn.burn is not None and burn.burn.basis != "measured":
            key = (burn.burn.basis, burn.burn.seconds, burn.burn.source)
            groups.setdefault(key, []).append(index)
    found = []
    for (basis, seconds, source), members in groups.items():
        first = burns[members[0]]
        who = tuple(dict.fromkeys(burns[index].who for index in members))
        blank = basis == "default"
        word = "a default, assumed, not measured" if blank else "stated, not timed"
        found.append(
            Finding(
                code="burn-not-timed",
                severity="stop" if blank else "warn",
                who=who,
                start=first.start_s,
                end=max(burns[index].end_s for index in members),
                position=positions[members[0]],
                message=f"the burning time of {_clock(seconds)} is {word}: nobody timed this wick "
                f"with {first.fuel}{'; a blank counts as unmet' if blank else ''}",
                remedies=(
                    "time three burns of this wick on a similar day; write the shortest under fire, burn",
                ),
                source=source,
            )
        )
    return found


def _few_timed(burns: Sequence[PlannedBurn], positions: Sequence[str]) -> list[Finding]:
    """Performers with too few logged burns for an interval."""
    found: dict[str, Finding] = {}
    for burn, position in zip(burns, positions, strict=True):
        counted = burn.burn.count if burn.burn else None
        if burn.burn is None or counted is None or counted >= FEWEST or burn.who in found:
            continue
        found[burn.who] = Finding(
            code="burn-few-times",
            severity="warn",
            who=(burn.who,),
            start=burn.start_s,
            end=burn.end_s,
            position=position,
            message=f"the log holds {counted} timed {'burn' if counted == 1 else 'burns'} of "
            f"{burn.who} with {burn.fuel}: too few to say how long the next is sure to last",
            remedies=(f"time {FEWEST - counted} more on a similar day",),
            source=burn.burn.source,
        )
    return list(found.values())


def _remedies(
    burn: PlannedBurn,
    time: BurnTime,
    allowed: float,
    cuts: Sequence[Cut],
    handling: HandlingTimes,
) -> tuple[str, ...]:
    over = burn.lit_s - allowed
    latest = burn.end_s - over
    inside = [
        cut for cut in cuts
        if burn.start_s < cut.seconds < burn.end_s and cut.who in ("", burn.who)
    ]  # fmt: skip
    found = []
    early = [cut for cut in inside if cut.seconds <= latest]
    if early:
        cut = early[-1]
        found.append(
            f"put {burn.who} out at {cut.position} ({cut.label}, {_clock(cut.seconds)}), "
            f"{_sooner(burn.end_s - cut.seconds)} earlier, and end dark"
        )
    elif latest > burn.start_s:
        by = math.floor(10 * latest + _EXACT) / 10
        found.append(f"put {burn.who} out by {_clock(by)}, {_sooner(burn.end_s - by)} earlier")
    if burn.wait_s >= over:
        found.append(
            f"let another person light {burn.who}, last before the burn begins: "
            f"{math.floor(burn.wait_s)} s less alight"
        )
    relights = _relights(burn, inside, allowed)
    # one change only: after a second one the first set would be lit hot
    if relights and len(relights) == 1 and burn.soak == 0:
        (cut,) = relights
        where = f"{cut.position} ({cut.label}, {_clock(cut.seconds)})"
        dark = burn.queue_s + burn.putting_out_s + handling.swap + burn.lighting_s
        found.append(
            f"put {burn.who} out at {where}, and relight with a second soaked set (props: second set), "
            f"{seconds_words(dark)} later or more"
        )
    factor = math.ceil(100 * burn.lit_s / allowed - _EXACT) / 100
    found.append(
        f"use a wick that holds at least {factor:.2f} times the fuel and, timed, burns "
        f"{_most(time.seconds * burn.lit_s / allowed)} or longer"
    )
    return tuple(found)


def _relights(burn: PlannedBurn, inside: Sequence[Cut], allowed: float) -> list[Cut] | None:
    """Fewest cuts after which no part is longer than allowed; None where the cuts are too far apart."""
    chosen: list[Cut] = []
    handled = burn.flame_s - (burn.end_s - burn.start_s)  # of every part: lit, waiting, put out
    start, room = burn.start_s, allowed - handled - (burn.lit_s - burn.flame_s)
    while burn.end_s - start > room + _EXACT:
        reachable = [cut for cut in inside if start < cut.seconds <= start + room + _EXACT]
        if not reachable:
            return None
        chosen.append(reachable[-1])
        start, room = reachable[-1].seconds, allowed - handled
    return chosen


def _finding(
    code: str,
    burn: PlannedBurn,
    position: str,
    message: str,
    remedies: tuple[str, ...],
    source: str,
    *figures: Figure,
) -> Finding:
    return Finding(
        code=code,
        severity="warn" if code == "burn-reserve" else "stop",
        who=(burn.who,),
        start=burn.start_s,
        end=burn.end_s,
        position=position,
        message=message,
        remedies=remedies,
        source=source,
        figures=figures,
    )


def ends_earlier(remedy: str) -> bool:
    """Whether a remedy of a burn that is too long says when it is put out for good: the first of `_remedies`."""
    return remedy.startswith("put ") and remedy.endswith((" earlier", " earlier, and end dark"))


def _clock(seconds: float) -> str:
    return clock_text(seconds)


def _most(seconds: float) -> str:
    """A length of time as m:ss.s, rounded up."""
    return clock_text(math.ceil(10 * seconds - _EXACT) / 10)


def _least(seconds: float) -> str:
    """A length of time as m:ss.s, rounded down."""
    return clock_text(math.floor(10 * seconds + _EXACT) / 10)


def _sooner(seconds: float) -> str:
    """How much earlier, to a tenth of a second, rounded up."""
    return f"{math.ceil(10 * seconds - _EXACT) / 10:g} s"


CHECK = Check(
    name="burning-time",
    run=burning_time,
    codes={
        **CAPPED,
        "burn-few-times": ("warn",),
        "burn-not-timed": ("stop", "warn"),
        "burn-reserve": ("warn",),
        "burn-unknown": ("stop",),
        "burns-out": ("stop",),
    },
    cautions={"burn-reserve": "long-song", "burn-unknown": "missing", "burns-out": "long-song"},
    of_fuel=("burn-few-times", "burn-not-timed", "burn-reserve", "burn-unknown", "burns-out"),
    depends_on=("trajectories", *PLAN_PARTS),
    progress=PROGRESS,
)
