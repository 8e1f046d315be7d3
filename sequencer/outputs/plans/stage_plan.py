"""The stage from above: who stands where and faces which way, reach, flames, crew, the closest pair.

Stage frame [m]; the audience is at the bottom of the sheet, as seen from the front.
"""

import math
import textwrap
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from matplotlib.figure import Figure
from matplotlib.patches import Circle, Polygon
from matplotlib.ticker import MaxNLocator

from sequencer.geometry.regions import Venue
from sequencer.motion.clearance.nearest import Closest, closest
from sequencer.motion.performers.dancer import Dancer
from sequencer.outputs.figures import plain_text
from sequencer.outputs.plans.plan_extent import extent, seen_edge
from sequencer.outputs.plans.plan_labels import Label, LabelBox, place_labels
from sequencer.outputs.plans.plan_style import (
    COOL,
    PLAN_FAINT,
    PLAN_FLAME,
    PLAN_FLOOR,
    PLAN_INK,
    PLAN_SOFT,
    STOP,
    fitted_names,
    shown,
)
from sequencer.outputs.plans.site_marks import SiteMarks, draw_site, site_labels

_SITE_ROOM = 1.0  # [m] round what is shown of the site
_BODY = 0.25  # [m] radius of the mark for a person, on a small stage
_ROUNDS = 3  # of laying out, at most
_MOST_NAMED = 12  # performers; more are numbered, with a key under the plan
_LETTER = 0.62  # mean width of a letter, as a share of the type size


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanPicture:
    """What a plan shows, and how."""

    title: str = ""
    required: float | None = None  # [m] between performers; None leaves the closest pair out
    reach: bool = True
    props: bool = True
    names: bool = True
    surroundings: bool = True  # False: the stage alone, as large as possible
    site: SiteMarks | None = None  # exits, lane, fuel …
    mark: float = 0.016  # radius of a person's mark as a share of the picture's longer side, if that is larger
    size: tuple[float, float] = (7.2, 7.2)  # [in]


@plain_text
def stage_plan(
    dancers: Sequence[Dancer], venue: Venue, beat: float, *, picture: PlanPicture | None = None
) -> Figure:
    """Plan of the stage at one beat.

    Parameters
    ----------
    dancers : sequence of Dancer
    venue : Venue
    beat : float
        Show beat.
    picture : PlanPicture, optional

    Returns
    -------
    figure : Figure

    Notes
    -----
    More than twelve performers are numbered in the order of the cast, with a key under the plan.
    """
    use = PlanPicture() if picture is None else picture
    key = _key(dancers, use) if use.names and len(dancers) > _MOST_NAMED else ""
    tall = use.size[1] + 0.14 * (key.count("\n") + 1 if key else 0)
    figure = Figure(figsize=(use.size[0], tall), layout="constrained")
    axes = figure.subplots()
    pair = None if use.required is None else _nearest(dancers, beat)
    draw_shapes(axes, dancers, venue, beat, picture=use)
    axes.set_ylabel("metres upstage")
    below = "metres from the centre line; the audience's left is on the left"
    axes.set_xlabel(f"{below}\n{key}" if key else below, fontsize=8 if key else None)
    if use.title:
        wide = int(use.size[0] * 72 / (12 * _LETTER))
        lines = "\n".join(textwrap.wrap(shown(use.title), wide))
        figure.suptitle(lines, x=0.01, ha="left", fontsize=12, fontweight="bold")
    if pair is not None and use.required is not None:
        _say_closest(axes, pair, use)
    _legend(figure, dancers, beat, use)
    _lay_out(figure, axes)
    figure.set_layout_engine("none")
    _write(axes, dancers, venue, beat, use, pair)
    return figure


def _lay_out(figure: Figure, axes: Any) -> None:
    """Make room for all words round the plan; that of some shapes settles only in a second round or a third."""
    for _ in range(_ROUNDS):
        figure.draw_without_rendering()
        below = axes.xaxis.label.get_window_extent().y0
        if all(each.get_window_extent().y1 <= below for each in figure.legends):
            return


def draw_shapes(
    axes: Any, dancers: Sequence[Dancer], venue: Venue, beat: float, *, picture: PlanPicture
) -> None:
    """Draw all of a plan except its words into existing axes."""
    left, down, right, up = extent(dancers, venue, surroundings=picture.surroundings)
    x, y = zip((left, down), (right, up), *_site_points(picture), strict=True)
    axes.set_xlim(min(x), max(x))
    axes.set_ylim(min(y), max(y))
    axes.set_aspect("equal")
    for axis in (axes.xaxis, axes.yaxis):
        axis.set_major_locator(MaxNLocator(integer=True, steps=[1, 2, 5, 10], min_n_ticks=3))
    axes.set_axisbelow(True)
    axes.grid(visible=True, color=PLAN_FAINT, linewidth=0.5)
    for side in ("top", "right"):
        axes.spines[side].set_visible(False)
    if picture.site is not None:
        draw_site(axes, picture.site)
    _venue(axes, venue, picture)
    mark = mark_radius(axes, picture)
    for dancer in dancers:
        _performer(axes, dancer, beat, mark, picture)


def _site_points(picture: PlanPicture) -> list[tuple[float, float]]:
    """Corners of boxes round everything of the site that is shown."""
    points = () if picture.site is None else picture.site.points
    return [(x + side, y + side) for x, y in points for side in (-_SITE_ROOM, _SITE_ROOM)]


def write_names(axes: Any, dancers: Sequence[Dancer], beat: float, *, picture: PlanPicture) -> None:
    """Write letters or numbers, and of a cast that is not too large the names, on a plan whose layout is fixed."""
    labels = _letters(axes, dancers, beat, picture)
    if len(dancers) <= _MOST_NAMED:
        labels += _names(axes, dancers, beat, picture, [label.text for label in labels])
    place_labels(axes, labels)


def name_key(dancers: Sequence[Dancer], picture: PlanPicture) -> str:
    """Numbers and names of a cast that is too large for names on the plan; empty for a smaller one."""
    return _key(dancers, picture) if len(dancers) > _MOST_NAMED else ""


def _names(
    axes: Any, dancers: Sequence[Dancer], beat: float, picture: PlanPicture, letters: Sequence[str]
) -> list[Label]:
    """Names beside their performers; with the letter where a name stands farther off."""
    mark = mark_radius(axes, picture)
    stood = [_pair(dancer.floor.at(beat).place) for dancer in dancers]
    labels = []
    for number, dancer in enumerate(dancers):
        back = -1.0 if np.cos(float(dancer.floor.at(beat).facing)) < -0.3 else 1.0
        labels.append(
            Label(
                text=shown(dancer.name[:24]), at=stood[number], off=1.2 * mark, ink=PLAN_INK,
                first=(0.0, back), rivals=(*stood[:number], *stood[number + 1 :]),
                otherwise=f"{letters[number]}: {shown(dancer.name[:24])}",
            )
        )  # fmt: skip
    return labels


def mark_radius(axes: Any, picture: PlanPicture) -> float:
    """Radius of the disc of somebody who stands there [m]."""
    (left, right), (down, up) = axes.get_xlim(), axes.get_ylim()
    return max(_BODY, picture.mark * max(abs(right - left), abs(up - down)))


def _write(
    axes: Any,
    dancers: Sequence[Dancer],
    venue: Venue,
    beat: float,
    picture: PlanPicture,
    pair: "_Pair | None",
) -> None:
    """All words of a plan, the most important first."""
    mark = mark_radius(axes, picture)
    labels = _letters(axes, dancers, beat, picture)
    stood = [_pair(dancer.floor.at(beat).place) for dancer in dancers]
    if pair is not None and picture.required is not None:
        ink = STOP if pair.near.distance[0] < picture.required else PLAN_INK
        labels.append(
            Label(
                text=_apart(pair), at=pair.middle, off=0.1, ink=ink, boxed=ink,
                bold=True, first=(0.0, 1.0),
            )
        )  # fmt: skip
    for edge in venue.audience:
        at, out = seen_edge(edge, axes)
        labels.append(
            Label(
                text=shown(edge.name.upper()),
                at=at,
                off=0.4 * mark,
                ink=COOL,
                size=10,
                bold=True,
                first=out,
                upright=abs(out[0]) > abs(out[1]),
            )
        )
    if picture.names:
        things: list[tuple[str, tuple[float, float]]] = [
            (piece.name, _pair(np.mean(piece.region.outline, axis=0))) for piece in venue.scenery
        ]
        things += [
            (f"{each.name} at {each.height:.2f} m", _pair(np.mean(each.region.outline, axis=0)))
            for each in venue.ceilings
            if each.region is not None
        ]
        if len(dancers) <= _MOST_NAMED:
            letters = [label.text for label in labels[: len(dancers)]]
            labels += _names(axes, dancers, beat, picture, letters)
        labels += [
            Label(
                text=shown(post.name[:32]), at=post.at, off=0.6 * mark, ink=PLAN_INK,
                rivals=(*stood, *(other.at for other in venue.posts if other is not post)),
                otherwise=shown(post.name[:32]),
            )
            for post in venue.posts
        ]  # fmt: skip
        labels += [
            Label(text=shown(name[:32]), at=at, off=0.6 * mark, ink=PLAN_INK) for name, at in things
        ]
        if picture.site is not None:
            labels += site_labels(picture.site, 0.6 * mark)
    posts = _boxes(axes, [post.at for post in venue.posts], 5.0 * axes.figure.dpi / 72)
    per_metre = float(axes.transData.transform((1, 0))[0] - axes.transData.transform((0, 0))[0])
    place_labels(axes, labels, keep_out=posts + _boxes(axes, stood, mark * per_metre))


def _letters(
    axes: Any, dancers: Sequence[Dancer], beat: float, picture: PlanPicture
) -> list[Label]:
    names = [dancer.name for dancer in dancers]
    marks = fitted_names(names)
    if len(names) > _MOST_NAMED or max((len(mark) for mark in marks.values()), default=0) > 2:
        marks = {name: str(k + 1) for k, name in enumerate(names)}
    size = 8.0 if len(names) <= _MOST_NAMED else 6.5
    mark = mark_radius(axes, picture)
    return [
        Label(
            text=marks[dancer.name], at=_pair(dancer.floor.at(beat).place), off=1.1 * mark, ink=PLAN_INK,
            size=size, bold=True, inside=True, first=(1.0, 0.6),
        )
        for dancer in dancers
    ]  # fmt: skip


def _boxes(axes: Any, places: Sequence[tuple[float, float]], half: float) -> list[LabelBox]:
    """Boxes around places that words must avoid [px]."""
    at = [axes.transData.transform(place) for place in places]
    return [(float(x) - half, float(y) - half, float(x) + half, float(y) + half) for x, y in at]


def _key(dancers: Sequence[Dancer], picture: PlanPicture) -> str:
    """Numbers and names in columns that fit the picture."""
    names = [f"{k + 1} {shown(dancer.name[:24])}" for k, dancer in enumerate(dancers)]
    wide = int(picture.size[0] * 72 * 0.9 / (8 * _LETTER))
    key = "   ".join(name.replace(" ", "\u00a0") for name in names)
    return "\n".join(textwrap.wrap(key, wide))


def _pair(point: Any) -> tuple[float, float]:
    return float(point[0]), float(point[1])


def _venue(axes: Any, venue: Venue, picture: PlanPicture) -> None:
    if venue.stage is not None:
        axes.add_patch(
            Polygon(
                venue.stage.outline,
                facecolor=PLAN_FLOOR,
                edgecolor=PLAN_INK,
                linewidth=1.4,
                zorder=0.5,
            )
        )
        for hole in venue.stage.holes:
            axes.add_patch(
                Polygon(
                    hole, facecolor="white", edgecolor=PLAN_INK, hatch="xx", linewidth=1, zorder=0.6
                )
            )
    for edge in venue.audience:
        x, y = np.array(edge.line).T
        axes.plot(x, y, color=COOL, linewidth=4, solid_capstyle="butt", zorder=1)
    for piece in venue.scenery:
        axes.add_patch(
            Polygon(
                piece.region.outline,
                facecolor="white",
                edgecolor=PLAN_SOFT,
                hatch="////" if piece.combustible else "..",
                linewidth=1,
                zorder=1,
            )
        )
    for ceiling in venue.ceilings:
        if ceiling.region is not None:
            axes.add_patch(
                Polygon(
                    ceiling.region.outline, fill=False, edgecolor=PLAN_INK, linewidth=1.0,
                    linestyle=(0, (6, 2, 1, 2)), zorder=1.2,
                )
            )  # fmt: skip
    for post in venue.posts if picture.surroundings else ():
        axes.plot(
            *post.at, marker="s", markersize=9, color="white", mec=PLAN_INK, mew=1.6, zorder=4
        )
        axes.plot(*post.at, marker="x", markersize=6, color=PLAN_INK, mew=1.6, zorder=5)


def _performer(axes: Any, dancer: Dancer, beat: float, mark: float, picture: PlanPicture) -> None:
    stand = dancer.floor.at(beat)
    x, y = (float(value) for value in stand.place)
    phi = float(stand.facing)
    lit = bool(dancer.is_lit(beat))
    if picture.reach:
        axes.add_patch(
            Circle(
                (x, y),
                dancer.reach,
                fill=False,
                edgecolor=PLAN_SOFT,
                linestyle=(0, (4, 3)),
                linewidth=0.9,
            )
        )
    if picture.props:
        _props(axes, dancer, beat, lit=lit)
    nose = (x + 2.1 * mark * np.sin(phi), y - 2.1 * mark * np.cos(phi))
    wide = 0.95 * mark
    axes.add_patch(
        Polygon(
            [
                nose,
                (x + wide * np.cos(phi), y + wide * np.sin(phi)),
                (x - wide * np.cos(phi), y - wide * np.sin(phi)),
            ],
            facecolor=PLAN_INK,
            edgecolor="white",
            linewidth=0.6,
            zorder=6.5,
        )
    )
    axes.add_patch(
        Circle((x, y), mark, facecolor="white", edgecolor=PLAN_INK, linewidth=1.4, zorder=7)
    )


def _props(axes: Any, dancer: Dancer, beat: float, *, lit: bool) -> None:
    at = np.array([float(beat)])
    for side, wicks in dancer.wick_places(at).items():
        prop = dancer.props[side]
        lines = [s for s in prop.solids if s.start != s.end]
        ends = dancer.spots(
            side, at, [spot[:2] for line in lines for spot in (line.start, line.end)]
        )
        for start, end in zip(ends[::2, 0], ends[1::2, 0], strict=True):
            axes.plot(
                [start[0], end[0]], [start[1], end[1]], color=PLAN_INK, linewidth=1.2, zorder=5
            )
        for wick in wicks[:, 0, :2]:
            if lit:
                axes.add_patch(
                    Circle(
                        wick,
                        prop.hot_radius,
                        facecolor=PLAN_FLAME,
                        edgecolor=PLAN_INK,
                        linewidth=0.8,
                        alpha=0.75,
                        hatch="..",
                        zorder=4,
                    )
                )
            axes.add_patch(
                Circle(
                    wick,
                    prop.wick_radius,
                    facecolor=PLAN_INK if lit else "white",
                    edgecolor=PLAN_INK,
                    zorder=6,
                )
            )


@dataclass(frozen=True, slots=True, eq=False)
class _Pair:
    """The two performers who are closest at a beat."""

    first: Dancer
    second: Dancer
    near: Closest

    @property
    def middle(self) -> tuple[float, float]:
        """Between the two nearest points on the plan [m]."""
        return _pair(self.near.point[0, :, :2].mean(axis=0))


def _nearest(dancers: Sequence[Dancer], beat: float) -> _Pair | None:
    """The closest two; pairs whose reaches are farther apart than the best so far are skipped."""
    places = [dancer.floor.at(beat).place for dancer in dancers]
    rows = sorted(
        (math.dist(places[i], places[j]) - dancers[i].reach - dancers[j].reach, i, j)
        for i in range(len(dancers))
        for j in range(i + 1, len(dancers))
    )
    best: _Pair | None = None
    for bound, i, j in rows:
        if best is not None and bound > best.near.distance[0]:
            break
        near = closest(dancers[i], dancers[j], [beat])
        if best is None or near.distance[0] < best.near.distance[0]:
            best = _Pair(dancers[i], dancers[j], near)
    return best


def _apart(pair: _Pair) -> str:
    metres = float(pair.near.distance[0])
    return f"{metres:.2f}\u00a0m" if metres >= 0 else f"overlap of {-metres:.2f}\u00a0m"


def _say_closest(axes: Any, pair: _Pair, picture: PlanPicture) -> None:
    required = picture.required or 0.0
    ink = STOP if pair.near.distance[0] < required else PLAN_INK
    (xa, ya), (xb, yb) = pair.near.point[0, :, :2]
    axes.plot([xa, xb], [ya, yb], color=ink, linewidth=1.8, linestyle=(0, (1, 1)), zorder=8)
    parts = [
        f"{shown(who.name)}'s {who.part_name(int(part))}"
        for who, part in zip((pair.first, pair.second), pair.near.part[0], strict=True)
    ]
    title_text = (
        f"closest: {_apart(pair)}, {' – '.join(parts)} (required\u00a0{required:.2f}\u00a0m)"
    )
    (left, right), (down, up) = axes.get_xlim(), axes.get_ylim()
    share = min(1.0, (right - left) / (up - down))  # of the picture's width that the plan takes
    wide = int(picture.size[0] * 72 * 0.85 * share / (8 * _LETTER))
    axes.set_title(
        "\n".join(textwrap.wrap(title_text, max(wide, 30))), loc="left", fontsize=8, color=ink
    )


def _legend(figure: Figure, dancers: Sequence[Dancer], beat: float, picture: PlanPicture) -> None:
    from matplotlib.lines import Line2D

    if not dancers:
        return
    dashes = (0, (4, 3))
    handles = [
        Line2D([], [], marker="o", ls="", mfc="white", mec=PLAN_INK, ms=9,
               label="performer, pointing where they look"),
    ]  # fmt: skip
    if picture.reach:
        handles.append(Line2D([], [], color=PLAN_SOFT, ls=dashes, label="reach: arm, prop, flame"))
    if picture.props and any(dancer.is_lit(beat) for dancer in dancers):
        handles.append(
            Line2D([], [], marker="o", ls="", mfc=PLAN_FLAME, mec=PLAN_INK, ms=11, label="flame")
        )
    figure.legend(
        handles=handles, loc="outside lower center", ncols=len(handles), frameon=False, fontsize=8
    )
