"""What everybody dances in each slot, where some come on or go off between slots."""

from types import SimpleNamespace

from sequencer.planning.drafting.auditioning.candidates import DraftMove
from sequencer.planning.drafting.finishing.slot_dances import slot_dances
from sequencer.planning.drafting.gaps.slots import Slot

MOVES = [
    DraftMove(pattern=name, timing="split", direction="same", cycle=2.0, usual=True)
    for name in ("line", "box")
]


def of_three(off, links):
    """Ash leads Bo and Cy through three slots of 16 beats; who is off in which, and the links between two slots."""
    names = ("Ash", "Bo", "Cy")
    base = SimpleNamespace(show=SimpleNamespace(names=names), blocks_of=lambda _name: [])
    ground = SimpleNamespace(
        base=base,
        dancing=[SimpleNamespace(name=name) for name in names],
        lead=SimpleNamespace(name="Ash"),
    )
    setting = SimpleNamespace(
        slots=[
            Slot(start=16 * k, end=16 * (k + 1), section="A", label="A", material=k)
            for k in range(3)
        ],
        cast=SimpleNamespace(moves=MOVES),
        keys_between=lambda _at: [(pair, (None, None, beats)) for pair, beats in links.items()],
        ended_early=lambda k, move: 3 + k + move,
    )
    group = SimpleNamespace(
        late={}, off=off, mirrored={0: ("Cy",)}, solos=frozenset(), remark=lambda _k, _lead: ""
    )
    return slot_dances(ground, group, setting, (0, 1, 0))


def test_who_goes_off_ends_before_the_others_go_on():
    gone = frozenset({"Cy"})
    first, second, third = of_three({1: gone, 2: gone}, {(0, 1): 2, (1, 2): 0})
    assert (first.who, first.ends, first.off) == (("Ash", "Bo", "Cy"), ("Cy",), ())
    assert first.ends_early == 3  # so that Cy's props come to rest, whatever the others' link takes
    assert (second.who, second.ends, second.off) == (("Ash", "Bo"), (), ("Cy",))
    assert (second.ends_early, third.ends_early) == (0, 0)
    # Those who stay end the last slot as it leads on to nothing; where a link of no beats goes on, nobody ends early.
    assert (first.rest, second.rest, third.rest) == (0, 0, 5)
    assert first.turns == {(0, 0): ["Ash", "Bo"], (0, -1): ["Cy"]}


def test_where_nobody_goes_on_all_end_alike():
    first, second, _ = of_three({1: frozenset({"Bo", "Cy"})}, {(1, 2): 2})
    assert (first.ends, first.ends_early, first.rest) == ((), 0, 3)
    assert (second.who, second.off) == (("Ash",), ("Bo", "Cy"))
