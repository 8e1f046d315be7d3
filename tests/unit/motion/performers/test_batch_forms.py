"""Laws in tables: every form of phase, several of each, beside laws that stand alone, all out of order."""

import numpy as np
import pytest
from numpy.polynomial import Polynomial
from numpy.testing import assert_allclose, assert_array_equal

from sequencer.geometry.bodies import Body
from sequencer.motion.laws.composed import Arm, ComposedLaw, HandPath, Slide
from sequencer.motion.laws.phases import CosineSteps, Spline, Steps, Wave
from sequencer.motion.laws.rotations import Turn
from sequencer.motion.laws.transforms import Mirrored, Retimed
from sequencer.motion.patterns.library import law_for, patterns
from sequencer.motion.performers import batch, turn_tables
from sequencer.motion.performers.batch import Laws, Needed
from sequencer.motion.trajectories.one_link.hand_paths import Piecewise
from sequencer.motion.trajectories.one_link.link_law import LinkLaw

PARTS = ("hand", "hand_rate", "tether", "tether_rate")
ALL_PARTS = (
    "hand", "hand_rate", "hand_acceleration", "tether", "tether_rate", "tether_acceleration", "plane",
)  # fmt: skip


def axis(draw):
    way = draw.normal(size=3)
    return tuple((way / np.linalg.norm(way)).tolist())


def wave(draw, sways=2):
    own = tuple(tuple(draw.uniform(-2, 2, 3).tolist()) for _ in range(sways))
    return Wave(float(draw.uniform(-2, 2)), float(draw.uniform(-2, 2)), own)


def steps(draw, *, repeats=True, knots=4):
    own = np.cumsum(draw.uniform(0.4, 1.6, knots)) - 1.0
    return Steps(tuple(own.tolist()), tuple(draw.uniform(-3, 3, knots).tolist()), repeats)


def cosine(draw, knots=3):
    own = np.cumsum(draw.uniform(0.4, 1.6, knots)) + 0.5
    return CosineSteps(tuple(own.tolist()), tuple(draw.uniform(-3, 3, knots).tolist()))


def spline(draw):
    return Spline((0.0, 1.0, 2.5), (0.0, 1.3, float(draw.uniform(1, 2))))


MAKERS = {
    "waves": wave,
    "plain waves": lambda draw: wave(draw, 0),
    "steps": steps,
    "steps once": lambda draw: steps(draw, repeats=False),
    "more steps": lambda draw: steps(draw, knots=5),
    "cosine steps": cosine,
    "splines": spline,  # no table
}


def law_of(draw, slide, arm, turns):
    """Two slides, an arm of two turns and one of one, and a tether of some turns, every number drawn."""

    def vector():
        return tuple(draw.uniform(-1, 1, 3).tolist())

    hand = HandPath(
        vector(),
        (Slide(vector(), slide(draw)), Slide(vector(), wave(draw))),
        (
            Arm(vector(), (Turn(axis(draw), arm(draw)), Turn(axis(draw), wave(draw)))),
            Arm(vector(), (Turn(axis(draw), arm(draw)),)),
        ),
    )
    tether = np.array(axis(draw))
    plane = np.cross(tether, axis(draw))
    plane /= np.linalg.norm(plane)
    own = tuple(Turn(axis(draw), each(draw)) for each in turns)
    return ComposedLaw(
        hand=hand, tether=tuple(tether.tolist()), plane=tuple(plane.tolist()), turns=own, period=4.0
    )


def quintics(draw, pieces, m):
    return draw.uniform(-1, 1, (1, pieces, 6, m))


def link(draw, hand_knots, angle_knots):
    """A link whose pieces do not join, so that it tells which one is taken."""
    frame = np.linalg.qr(draw.normal(size=(3, 3)))[0]
    return LinkLaw(
        beats=float(draw.uniform(1.0, 4.0)),
        hand=Piecewise(hand_knots, quintics(draw, len(hand_knots) - 1, 3)),
        frame=frame,
        angles=Piecewise(angle_knots, quintics(draw, len(angle_knots) - 1, 2)),
        tilt=(0.0, 0.3),
    )


def composed(seed=1):
    draw = np.random.default_rng(seed)
    kinds = list(MAKERS.values())
    laws = [
        law_of(draw, kinds[k], kinds[(k + shift) % 7], (kinds[(k + 2 * shift) % 7], wave, kinds[k]))
        for _ in range(2)
        for shift in (0, 3)
        for k in range(7)
    ]
    still = HandPath((0.1, 0.2, 1.3))
    laws += [
        ComposedLaw(
            hand=still, tether=(0.0, 1.0, 0.0), plane=(1.0, 0.0, 0.0), turns=(), period=1.0
        ),
        ComposedLaw(
            hand=still, tether=(0.0, 0.0, 1.0), plane=(1.0, 0.0, 0.0), turns=(), period=1.0
        ),
    ]
    return laws


def beats_for(law, draw):
    """Many cycles before and after, and the knots themselves."""
    knots = [
        knot
        for phase in [s.phase for s in law.hand.slides] + [t.angle for t in law.turns]
        for knot in getattr(phase, "knots", ())
    ]
    return np.array([*knots, *draw.uniform(-30.0, 30.0, 12 - len(knots) % 12)])


def assert_same(laws, which, beats):
    seen = Laws(laws).at(which, beats)
    every = Laws(laws).parts(which, beats, Needed(hand=3, tether=3, plane=True))
    for k in np.unique(which):
        own = laws[k].at(beats[which == k])
        for name, part in (*zip(PARTS, seen, strict=True), *zip(ALL_PARTS, every, strict=True)):
            expected = getattr(own, name)
            size = max(1.0, float(np.abs(expected).max()) / 100)
            found = part[:, which == k].T
            assert_allclose(found, expected, atol=1e-11 * size, err_msg=f"{k} {name}")


def test_every_form_by_itself_and_among_the_others():
    """Against the laws one by one, whose formulas are written anew in the tables."""
    draw = np.random.default_rng(2)
    laws = composed()
    laws += [Retimed(laws[k], 0.3, 1.7) for k in (0, 8, 11)]
    laws += [Mirrored(Retimed(Mirrored(Mirrored(laws[k])), -0.4, 0.6)) for k in (1, 9)]
    which = np.concatenate([np.full(6, k) for k in range(len(laws))])
    beats = draw.uniform(-30.0, 30.0, len(which))
    order = draw.permutation(len(which))
    assert_same(laws, which[order], beats[order])
    plain = [law for law in laws if isinstance(law, ComposedLaw)]
    own = [beats_for(law, draw) for law in plain]
    assert_same(
        plain, np.repeat(np.arange(len(plain)), [len(each) for each in own]), np.concatenate(own)
    )


KNOTS = ((0, 16), (0, 8, 16), (0, 4, 7, 16), (0, 2, 16))


def test_links_take_the_piece_their_share_lies_in():
    """Polynomials worked out one by one; at a knot the later piece counts, beyond the ends the outer ones go on."""
    draw = np.random.default_rng(3)
    pairs = [(0, 0), (1, 2), (2, 1), (3, 0), (0, 2)]
    links = [link(draw, KNOTS[a], KNOTS[b]) for a, b in pairs]
    shares = np.array([-0.2, 0.0, 0.1, 2 / 16, 0.2, 4 / 16, 0.3, 7 / 16, 0.46, 0.5, 0.9, 1.0, 1.3])
    which = np.tile(np.arange(5), len(shares))
    beats = np.repeat(shares, 5) * np.array([each.beats for each in links])[which]
    seen = Laws(links).at(which, beats)

    def on(path, share):
        knots = np.array(path.knots) / 16
        k = min(max(int(np.sum(knots <= share)) - 1, 0), len(knots) - 2)
        width = knots[k + 1] - knots[k]
        own = [Polynomial(path.pieces[0, k, :, i]) for i in range(path.pieces.shape[-1])]
        x = (share - knots[k]) / width
        return np.array([p(x) for p in own]), np.array([p.deriv()(x) for p in own]) / width

    for row, (k, share) in enumerate(zip(which, np.repeat(shares, 5), strict=True)):
        law = links[k]
        place, slope = on(law.hand, share)
        assert_allclose(seen.hand[:, row], place, atol=1e-12)
        assert_allclose(seen.hand_rate[:, row], slope / law.beats, atol=1e-12)
        (azimuth, height), rates = on(law.angles, share)

        def way(a, e):
            return np.array([np.cos(e) * np.cos(a), np.cos(e) * np.sin(a), np.sin(e)])

        assert_allclose(seen.tether[:, row], way(azimuth, height) @ law.frame, atol=1e-12)
        # the chain rule: ∂d/∂α and ∂d/∂ψ are d a quarter turn on, the first of them level
        by_azimuth = np.cos(height) * way(azimuth + np.pi / 2, 0.0)
        by_height = way(azimuth, height + np.pi / 2)
        rate = (rates[0] * by_azimuth + rates[1] * by_height) / law.beats
        assert_allclose(seen.tether_rate[:, row], rate @ law.frame, atol=1e-12)


def test_equal_laws_share_a_row_and_equal_forms_a_table():
    """By hand: two forms of phases, one of them twice; links in one table; what has no form in one other."""
    draw = np.random.default_rng(4)
    first, second = (law_of(draw, wave, wave, (wave,)) for _ in range(2))
    other = law_of(draw, steps, wave, (wave,))
    again = law_of(np.random.default_rng(4), wave, wave, (wave,))  # equal to the first
    assert again == first
    alone = law_of(draw, spline, wave, (wave,))
    linked = link(draw, (0, 16), (0, 16))
    laws = [
        first, other, Retimed(second, 1.0, 2.0), Mirrored(again), linked, alone, linked,
        link(draw, (0, 8, 16), (0, 16)), alone,
    ]  # fmt: skip
    table = Laws(laws)
    assert_array_equal(table._table, [-1] * 9)  # none is asked for yet
    table.at(np.array([0, 1]), np.zeros(2))
    assert_array_equal(table._table, [0, 1, -1, -1, -1, -1, -1, -1, -1])
    table.at(np.arange(9), np.zeros(9))
    assert_array_equal(table._table, [0, 1, 0, 0, 2, 3, 2, 2, 3])
    assert_array_equal(table._row, [0, 0, 1, 0, 0, 0, 0, 1, 0])
    assert_array_equal(table._shift, [0, 0, 1, 0, 0, 0, 0, 0, 0])
    assert_array_equal(table._pace, [1, 1, 2, 1, 1, 1, 1, 1, 1])
    assert_array_equal(table._side, [1, 1, 1, -1, 1, 1, 1, 1, 1])
    kinds = [type(each) for each in table._tables]
    assert kinds == [batch._Composed, batch._Composed, batch._Links, batch._Loose]
    assert len(table._tables[3].laws) == 1


def test_wrappings_come_off_in_order():
    """t → 0.5 + 2·(0.25 + 3·t) = 1 + 6t; two mirrors are none."""
    law = composed()[0]
    own = batch.unwrapped(Retimed(Mirrored(Retimed(law, 0.5, 2.0)), 0.25, 3.0))
    assert own == (law, 1.0, 6.0, -1.0)
    assert batch.unwrapped(Mirrored(Mirrored(law))) == (law, 0.0, 1.0, 1.0)
    assert batch.unwrapped(law) == (law, 0.0, 1.0, 1.0)


def test_forms_by_hand():
    draw = np.random.default_rng(5)
    law = law_of(draw, steps, cosine, (wave, lambda d: steps(d, repeats=False)))
    assert batch._form(law) == (
        (("steps", 4, True), ("wave", 2)),
        ((("cosine", 3), ("wave", 2)), (("cosine", 3),)),
        (("wave", 2), ("steps", 4, False)),
    )
    assert batch._form(link(draw, (0, 16), (0, 16))) == "link"
    assert batch._form(Mirrored(law)) is None
    for kinds in ((spline, wave, wave), (wave, spline, wave), (wave, wave, spline)):
        assert batch._form(law_of(draw, kinds[0], kinds[1], (kinds[2],))) is None


@pytest.mark.parametrize("n", [0, 1])
def test_none_or_one_instant(n):
    laws = composed()[:2]
    seen = Laws(laws).at(np.zeros(n, dtype=np.int64), np.full(n, 0.7))
    assert [part.shape for part in seen] == [(3, n)] * 4
    if n:
        assert_allclose(seen.hand[:, 0], laws[0].at(np.array(0.7)).hand, atol=1e-12)


def test_links_in_full_are_those_one_by_one():
    """Of links that turn fast, with tilts and several knots, in every part, mirrored too."""
    draw = np.random.default_rng(8)
    links = [link(draw, KNOTS[a], KNOTS[b]) for a, b in ((0, 2), (1, 0), (3, 1), (2, 3))]
    laws = [*links, Mirrored(links[1]), Retimed(links[2], 0.2, 1.4)]
    which = np.repeat(np.arange(len(laws)), 40)
    assert_same(laws, which, draw.uniform(-0.1, 1.1, len(which)))


@pytest.mark.parametrize("side", ["left", "right"])
def test_turns_about_coordinate_axes_keep_every_digit(side, monkeypatch):
    """Without the products with zeros it is the same as with them, in every derivative."""
    short = turn_tables._carried_about
    seen = []

    def both(about, angle, jet, rows, beats):
        i, j, sense = about
        axis = np.zeros((3, 1))
        axis[3 - i - j] = sense
        turn = turn_tables.TurnTable(axis.repeat(rows.max() + 1, axis=1), angle, None)
        whole = turn_tables.carried_rows([turn], jet, rows, beats)
        found = short(about, angle, jet, rows, beats)
        for own, other in zip(found, whole, strict=True):
            assert_array_equal(own, other)
        seen.append((len(jet), sense))
        return found

    monkeypatch.setattr(turn_tables, "_carried_about", both)
    beats = np.linspace(-3.1, 9.7, 40)
    for name in patterns():
        laws = batch.Laws([law_for(name, {}, side=side, body=Body(stature=1.72))])
        for needed in (batch.Needed(1, 1), batch.Needed(2, 2), batch.Needed(3, 3, True)):
            laws.parts(np.zeros(len(beats), dtype=np.int64), beats, needed)
    assert {1, 2, 3} == {count for count, _ in seen}
    assert {1.0, -1.0} == {sense for _, sense in seen}


@pytest.mark.parametrize(
    ("axes", "about"),
    [
        ([(1.0, 0.0, 0.0)], (1, 2, 1.0)),
        ([(0.0, -1.0, 0.0)] * 2, (2, 0, -1.0)),
        ([(0.0, 0.0, 1.0)], (0, 1, 1.0)),
        ([(0.0, 0.0, 1.0), (0.0, 0.0, -1.0)], None),
        ([(0.6, 0.8, 0.0)], None),
        ([(0.0, 0.0, 0.5)], None),
        ([(0.0, 0.0, 0.0)], None),
    ],
)
def test_turns_that_share_a_coordinate_axis(axes, about):
    assert turn_tables._about(axes) == about
