"""Lighting, waiting alight and putting out in a performer's words; each order says who does it."""

from sequencer.motion.trajectories.trajectory import Trajectory
from sequencer.outputs.sheets.page.wording import brief, place_words, plural
from sequencer.outputs.sheets.parts.cues import early_clock, late_clock
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.safety.burns.burning import PlannedBurn
from sequencer.safety.burns.handling import seconds_words, waiting_order
from sequencer.staging.staged import Block

NEVER_HOT = "the second soaked set, never the hot wick"
_EXACT = 1e-6  # [s]


def lighter_words(edition: Edition, burn: PlannedBurn) -> str:
    """Who lights a performer, and with what: "Sorrel lights you"."""
    if burn.lit_by is None:
        return "NOBODY IS NAMED TO LIGHT YOU: do not light"
    again = f", {NEVER_HOT}" if burn.second_set else ""
    return f"{edition.in_order(brief(edition.staged.taken_by(burn.lit_by)))} lights you{again}"


def putter_words(edition: Edition, burn: PlannedBurn) -> str:
    """Who puts a performer out: "Rowan puts you out"."""
    if burn.put_out_by is None:
        return "NOBODY IS NAMED TO PUT YOU OUT: do not light"
    return f"{edition.in_order(brief(edition.staged.taken_by(burn.put_out_by)))} puts you out"


def lighting_lines(edition: Edition, burn: PlannedBurn) -> tuple[str, ...]:
    """All that a performer does and gets done from the start of lighting to the first move."""
    staged, handling = edition.staged, edition.plan.handling
    place = f", {place_words(*burn.lit_at)}" if burn.lit_at is not None else ""
    lines = [
        (
            f"{lighter_words(edition, burn)}{place}: {seconds_words(burn.lighting_s)}{handling.words('light')}. "
            "Stand still"
        )
    ]
    first = first_move(edition, burn)
    if first is not None:
        lines.append(
            f"{waiting_words(edition, burn, f'until {first}')}; then lift into the first move"
        )
    begins = f"{early_clock(burn.start_s)}, bar {staged.position(burn.start)}"
    lines.append(
        f"Burn begins at {begins}. Out by {late_clock(burn.out_s)}, after {seconds_words(burn.flame_s)} alight"
    )
    return tuple(lines)


def putting_out_lines(edition: Edition, burn: PlannedBurn) -> tuple[str, ...]:
    """All that a performer does and gets done when they are put out."""
    handling = edition.plan.handling
    what = "heads" if _on_lines(edition, burn) else "props"
    down = f"Stand still, {what} to the ground, away from you"
    if burn.queue_s > _EXACT:
        down += f". You wait about {seconds_words(burn.queue_s)}: somebody else is put out first"
    out = f"out by {late_clock(burn.out_s)}{handling.words('put_out')}"
    hot = f"{seconds_words(burn.cool_s)}{handling.words('cool')}"
    lines = [
        down,
        f"{putter_words(edition, burn)}: smothers, checks that it is out; {out}",
        f"Hot for {hot}, until {late_clock(burn.cold_s)}: lay the {what} down away from the fuel",
    ]
    after = _next(edition, burn)
    if after is not None:
        lines.append(relight_words(edition, after))
    return tuple(lines)


def relight_words(edition: Edition, burn: PlannedBurn) -> str:
    """What has to be done before a relight."""
    handling = edition.plan.handling
    by = (
        f" by {edition.in_order(brief(edition.staged.taken_by(burn.lit_by)))}"
        if burn.lit_by is not None
        else ""
    )
    place = f", {place_words(*burn.lit_at)}" if burn.lit_at is not None else ""
    when = f"lit{by} from {early_clock(burn.alight_s)}{place}"
    if burn.second_set:
        return f"Take {NEVER_HOT}: {seconds_words(handling.swap)} to change{handling.words('swap')}; {when}"
    return f"Relight of the same wick, only once it is cold and soaked again; {when}"


def waiting_words(edition: Edition, burn: PlannedBurn, until: str) -> str:
    """How a performer keeps the lit props at rest before the first or after the last move of a burn."""
    fire = edition.staged.show.fire
    waiting = fire.handling.waiting if fire is not None else None
    return waiting_order(waiting, flexible=_on_lines(edition, burn), until=until)


def first_move(edition: Edition, burn: PlannedBurn) -> str | None:
    """When a performer starts to move in a burn, counted to the block: "2 beats before bar 3.1"; None if they rest."""
    staged = edition.staged
    blocks = [block for block in staged.blocks_of(burn.who) if burn.start <= block.start < burn.end]
    if not blocks:
        return None
    first = blocks[0]
    lift = first.start - _lifts(edition, burn, first)
    bar = f"bar {staged.position(first.start)}"
    return f"{plural(lift, 'beat')} before {bar}" if lift > _EXACT else bar


def _lifts(edition: Edition, burn: PlannedBurn, first: Block) -> float:
    """The beat at which the first hand leaves its rest for a block."""
    starts = [
        span.start
        for dancer in edition.staged.dancers
        if dancer.name == burn.who
        for trajectory in dancer.trajectories.values()
        if isinstance(trajectory, Trajectory)
        for span in trajectory.spans
        if span.kind == "link" and abs(span.end - first.start) < _EXACT
    ]
    return min(starts, default=first.start)


def _on_lines(edition: Edition, burn: PlannedBurn) -> bool:
    """Whether all of a performer's props hang on lines."""
    (dancer,) = (each for each in edition.staged.show.cast if each.name == burn.who)
    return all(prop.held().flexible for prop in dancer.props.values())


def _next(edition: Edition, burn: PlannedBurn) -> PlannedBurn | None:
    later = [
        each for each in edition.plan.burns if each.who == burn.who and each.start > burn.start
    ]
    return later[0] if later else None
