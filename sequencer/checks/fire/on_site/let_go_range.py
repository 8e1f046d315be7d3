"""Where a head that comes off would come down: in the crowd, at the fuel, in an exit, on what burns, by a post.

Places in the stage frame [m]. No rule that was read asks for this, and no plan that can be danced keeps crew out of it:
what may hurt people who cannot look out for it, or the fuel, is a warning; a post is a note. The distances of the rules
apply as well.
Source: `motion.clearance.let_go`; how near counts is a design choice.
"""

from collections.abc import Callable, Sequence
from functools import partial

from sequencer.checks.check import Check
from sequencer.checks.fault_kinds import DISTANCE
from sequencer.checks.fire.records import PROGRESS, BeatReader, where_lit
from sequencer.checks.outcome import Outcome
from sequencer.findings import Figure, Finding
from sequencer.motion.clearance.let_go import NearestFlight
from sequencer.safety.site_ground.landings import Landing, LandingPlan, landing_plan
from sequencer.staging.moves_danced import move_words
from sequencer.staging.staged import Staged
from sequencer.timing.position import clock_text
from sequencer.units import rounded_down, rounded_up

REACHED = 1.0  # [m] a flight as near as this counts as reaching it; a design choice
LEFT_OUT = (
    "A head that comes off is followed to where it first lands on level ground: bounces, rolls, wind, and a whole prop "
    "that slips from the hand were not checked."
)
SOURCE = (
    "flight without air drag, from the motion of every lit head: mechanics; within 1 m counts as reaching it: design "
    "choice"
)
_Moves = Callable[[str, float], str]  # who, beat → what is danced
_MARGIN = "For fans and hoops where one pattern blends into the next the flights let go are sampled with a margin, not proven."


@where_lit
def let_go_range(show: Staged) -> Outcome:
    """Flights of heads let go, against people, fuel, exits and what burns."""
    plan = landing_plan(show)
    if plan is None:
        return Outcome()
    return Outcome(
        findings=tuple(let_go_findings(plan, clock=show, moves=partial(move_words, show))),
        not_checked=(LEFT_OUT,) if plan.proven else (LEFT_OUT, _MARGIN),
    )


def let_go_findings(plan: LandingPlan, *, clock: BeatReader, moves: _Moves) -> list[Finding]:
    """What a head that comes off at some lit instant would reach.

    Parameters
    ----------
    plan : LandingPlan
    clock : BeatReader
    moves : callable
        What somebody dances at a beat, in words.
    """
    found = [
        _crowd(each, clock, moves)
        for each in plan.near("audience")
        if each.flight.distance <= REACHED
    ]
    near = [
        each
        for place in ("fuel", "exit", "gate", "combustible")
        for each in plan.near(place)
        if each.flight.distance <= REACHED
    ]
    found += [_thing(each, clock, moves) for each in near]
    posts = [each for each in plan.near("post") if each.flight.distance <= REACHED]
    return [*found, *_posts(posts, clock, moves)]


def _crowd(each: Landing, clock: BeatReader, moves: _Moves) -> Finding:
    flight = each.flight
    if flight.beyond > 0:
        where = f"lands up to {rounded_up(flight.beyond, 1):.1f} m beyond {each.name}"
    else:
        where = f"comes within {rounded_down(flight.distance, 1):.1f} m of {each.name}"
    return _finding(
        "let-go-audience",
        (each.who,),
        flight,
        clock,
        f"a head of {each.who} that comes off at {_when(each, clock, moves)} {where}",
        (
            "put a barrier or a net before the audience",
            "move the act and the audience apart",
            "dance this move slower (a link: with more beats), or turned so that the prop's plane lies along the audience's edge",
        ),
    )


def _thing(each: Landing, clock: BeatReader, moves: _Moves) -> Finding:
    mends = {
        "fuel": ("move it farther away", "put a screen that does not burn before it"),
        "exit": ("open another exit", "keep this one clear of people while anybody is lit"),
        "gate": ("let the engine in by another gate",),
        "combustible": ("move it away, or cover it with something that does not burn",),
    }
    return _finding(
        "let-go-near",
        (each.who,),
        each.flight,
        clock,
        f"a head of {each.who} that comes off at {_when(each, clock, moves)} comes within "
        f"{rounded_down(each.flight.distance, 1):.1f} m of {each.name}",
        mends[each.place],
    )


def _posts(posts: Sequence[Landing], clock: BeatReader, moves: _Moves) -> list[Finding]:
    """One note on all posts under a flight."""
    if not posts:
        return []
    first = posts[0]
    names = ", ".join(each.name for each in posts)
    return [
        Finding(
            code="let-go-post",
            severity="note",
            who=tuple(each.name for each in posts),
            start=None,
            end=None,
            position=None,
            message=f"heads that come off may land at these posts: {names} ({first.name}: a head of {first.who} at "
            f"{_when(first, clock, moves)})",
            remedies=(
                "face the act while anybody is lit; smother what lands, and do not catch it",
            ),
            source=SOURCE,
        )
    ]


def _when(each: Landing, clock: BeatReader, moves: _Moves) -> str:
    """When a head comes off, and in which move: that one can be slowed."""
    beat = each.flight.beat
    move = moves(each.who, beat)
    return clock_text(clock.seconds(beat)) + (f" in {move}" if move else "")


def _finding(
    code: str,
    who: tuple[str, ...],
    flight: NearestFlight,
    clock: BeatReader,
    message: str,
    remedies: tuple[str, ...],
) -> Finding:
    return Finding(
        code=code,
        severity="warn",
        who=who,
        start=clock.seconds(flight.beat),
        end=None,
        position=clock.position(round(16 * flight.beat) / 16),
        message=message,
        remedies=remedies,
        source=SOURCE,
        where=flight.landing,
        figures=(
            Figure(
                quantity=DISTANCE,
                value=-flight.beyond if flight.beyond > 0 else flight.distance,
                limit=REACHED,
                unit="m",
                least=True,
            ),
        ),
    )


CHECK = Check(
    name="let-go",
    run=let_go_range,
    codes={
        "let-go-audience": ("warn",),
        "let-go-near": ("warn",),
        "let-go-post": ("note",),
    },
    depends_on=("trajectories", "bodies", "places", "burns", "venue", "crew"),
    progress=PROGRESS,
)
