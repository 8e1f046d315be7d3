"""How a move is taken up from rest, and led to rest: what no prop can fly there is no move to begin or to end with."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import partial

from sequencer.content_keys import whole_code
from sequencer.geometry.bodies import Side
from sequencer.kept import kept_each
from sequencer.motion.laws.carriage import carried
from sequencer.motion.performers.dancer import Dancer
from sequencer.motion.performers.walks import WalkPath
from sequencer.motion.trajectories.assembly import LEAD_IN, assembled
from sequencer.motion.trajectories.one_link.link_limits import hand_space_of
from sequencer.motion.trajectories.rests import rest
from sequencer.motion.trajectories.trajectory import Span, Trajectory
from sequencer.planning.drafting.auditioning.candidates import DraftMove, pattern_content
from sequencer.planning.drafting.auditioning.flights import unflown_rest
from sequencer.planning.drafting.auditioning.passages import MoveLaws
from sequencer.staging.dancers import link_limits
from sequencer.timing.tempo import TempoMap


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeDance:
    """A move that is danced for some beats beside a rest."""

    move: DraftMove
    beats: float
    begins: bool  # whether the rest comes before it


def stranded(dances: Sequence[EdgeDance], laws: MoveLaws) -> list[str]:
    """What keeps each of some moves from being flown out of the rest before it, or into the one behind; empty texts where nothing does.

    Parameters
    ----------
    dances : sequence of EdgeDance
        With the beats of those who are not late.
    laws : MoveLaws

    Returns
    -------
    said : list of str
        Kept by their content.
    """
    stage = laws.stage
    if not any(prop.flexible for prop in stage.props.values()):
        return [""] * len(dances)
    contents = [
        (
            whole_code(), each, laws.of(each.move), laws.longer,
            pattern_content(stage, each.move), *stage.content,
        )
        for each in dances
    ]  # fmt: skip
    return kept_each(
        "moves beside a rest",
        contents,
        lambda missing: [_stranded(dances[k], laws) for k in missing],
        record=str,
        restore=str,
    )


def _stranded(each: EdgeDance, laws: MoveLaws) -> str:
    tempo = laws.stage.tempo[1]
    dancer = _between_rests(each, laws, tempo)
    return unflown_rest(dancer, laws.stage, tempo, begins=each.begins)


def _between_rests(each: EdgeDance, laws: MoveLaws, tempo: float) -> Dancer:
    """A performer who begins at rest, dances a move, and ends at rest, as a show would stage it."""
    stage = laws.stage
    danced, posture = laws.of(each.move)
    start, end = LEAD_IN, LEAD_IN + each.beats + laws.longer
    carriage = carried(stage.body, [(start, end, posture)], lead=LEAD_IN)
    steady, props = TempoMap.steady(tempo, beats=16), stage.props
    trajectories: dict[Side, Trajectory] = {}
    for side in sorted(props, reverse=True):  # as in a show: the right hand first
        block = Span(
            start=start, end=end, law=danced[side], origin=start, kind="block",
            label=each.move.pattern,
        )  # fmt: skip
        trajectories[side] = assembled(
            [block],
            rest(side, stage.body, props[side]),
            space=hand_space_of(stage.body, side, props[side]),
            other=trajectories.get("right"),
            carriage=carriage,
            limits=partial(link_limits, stage.show.show.limits, steady),
        )
    whole: Mapping[Side, Trajectory] = {side: trajectories[side] for side in props}
    return Dancer(
        name=each.move.pattern,
        body=stage.body,
        props=props,
        trajectories=whole,
        floor=WalkPath(place=(0.0, 0.0)),
        lit=((0.0, end),) if stage.lit else (),
        carriage=carriage,
    )
