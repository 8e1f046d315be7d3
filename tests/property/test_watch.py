"""Whatever the show, the watch never exceeds what one spotter may watch, and leaves no gap unsaid."""

from hypothesis import given, settings
from hypothesis import strategies as st

from sequencer.motion.clearance.to_posts import Followed
from sequencer.motion.performers.walks import Move, WalkPath
from sequencer.safety.duties.watching import Duty, watch_plan

PLACE = st.tuples(st.floats(-8, 8), st.floats(-8, 8))


@st.composite
def burns(draw):
    out = []
    for index in range(draw(st.integers(1, 5))):
        start = draw(st.integers(0, 12))
        end = start + draw(st.integers(1, 12))
        go = draw(st.integers(0, 20))
        moves = ()
        if draw(st.booleans()):
            moves = (Move(start=go, end=go + 4, facing=0.0, place=draw(PLACE)),)
        floor = WalkPath(draw(PLACE), moves=moves)
        out.append(Followed(who=f"P{index}", floor=floor, start=float(start), end=float(end)))
    return out


@st.composite
def crews(draw):
    names = [f"P{index}" for index in range(5)]
    return [
        Duty(
            who=f"S{index}",
            place=draw(PLACE),
            duty=draw(st.sampled_from(["spotter", "spotter", "perimeter"])),
            watches=tuple(draw(st.lists(st.sampled_from(names), max_size=3, unique=True))),
        )
        for index in range(draw(st.integers(0, 4)))
    ]


@settings(max_examples=60, deadline=None)
@given(burns(), crews(), st.integers(1, 3), st.sampled_from([0.0, 5.0]))
def test_the_watch_holds_at_every_moment(lit, crew, each, limit):
    plan = watch_plan(lit, crew, each=each, limit=limit)
    duties = {duty.who: duty for duty in crew}

    for watch in plan.watches:
        duty = duties[watch.spotter]
        assert duty.duty == "spotter"
        assert not duty.watches or watch.who in duty.watches
        assert watch.end > watch.start
    for quarter in range(4 * 24):
        beat = quarter / 4 + 1 / 8
        on = [watch for watch in plan.watches if watch.start <= beat <= watch.end]
        bare = [who for who, start, end in plan.unwatched if start <= beat <= end]
        burning = [burn.who for burn in lit if burn.start <= beat <= burn.end]
        assert sorted([watch.who for watch in on] + bare) == sorted(burning)
        for name in duties:
            assert sum(watch.spotter == name for watch in on) <= each
    for hand_over in plan.hand_overs:
        assert hand_over.giver != hand_over.taker
