"""What a person at a post does in the act, moment by moment: the rows of their page.

Each row has a time, what is seen or heard then, and orders that begin with the verb. Rows come from the watches,
lightings and putting out of the safety plan; a guard and a fuel keeper get the first and the last flame.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import ceil

from sequencer.outputs.sheets.page.wording import NB, brief, listed, metres
from sequencer.outputs.sheets.parts.cues import early_clock, late_clock, place_at
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.own_side import OwnSide, Point
from sequencer.outputs.sheets.parts.sight_cues import last_seen, section_words, sight_of
from sequencer.safety.burns.burning import PlannedBurn
from sequencer.safety.burns.fuel_plan import Light, Lighting
from sequencer.safety.run_of_night import MINUTE, second_go
from sequencer.show.model import CrewMember

_SAME = 1e-6  # [beats]
_SOON = 1e-3  # [beats] after a flame is lit, when whoever watches it does
_AT_START = 1.0  # [s] all alight so near to the start of the song are alight "at the start"


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """One thing to do."""

    words: str  # printed large
    detail: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PostAct:
    """One row: a moment of the act for a post."""

    at_s: float  # [s] from the start of the song
    beat: float  # at which the plan beside it is drawn
    cue: str  # what is seen or heard
    orders: tuple[Order, ...]
    still: str = ""  # who is watched as before
    watched: tuple[str, ...] = ()  # performers who are named on the plan
    crew: tuple[str, ...] = ()  # other posts on the plan

    @property
    def when(self) -> str:
        """The time as printed."""
        return act_time(self.at_s)


def act_time(seconds: float) -> str:
    """m:ss of the song, or minutes before it; rounded so that nobody is too late."""
    early = ceil(-seconds - _SAME)
    return f"−{early // 60}{NB}min" if early >= 2 * MINUTE else early_clock(seconds)


def post_acts(edition: Edition, post: CrewMember, side: OwnSide) -> tuple[PostAct, ...]:
    """Rows of a post by time; none if nobody is lit."""
    if not edition.plan.burns:
        return ()
    acts = [*_DUTIES[post.duty](edition, post), *_lightings(edition, post, side)]
    acts += _put_outs(edition, post)
    return _merged(sorted(acts, key=lambda act: act.at_s))


def numbered(edition: Edition, who: str) -> str:
    """A performer's number and name, as large as on the plan."""
    return f"{edition.number_of(who)}{NB}{brief(who, most=24).upper()}"


def _merged(acts: Sequence[PostAct]) -> tuple[PostAct, ...]:
    """Rows of one printed time as one row."""
    out: list[PostAct] = []
    for act in acts:
        if not out or out[-1].when != act.when:
            out.append(act)
            continue
        before = out[-1]
        cues = dict.fromkeys(filter(None, (before.cue, act.cue)))
        out[-1] = PostAct(
            at_s=before.at_s,
            beat=max(before.beat, act.beat),
            cue="; ".join(cues),
            orders=(*before.orders, *act.orders),
            still=before.still if before.still == act.still else "",
            watched=tuple(dict.fromkeys((*before.watched, *act.watched))),
            crew=tuple(dict.fromkeys((*before.crew, *act.crew))),
        )
    return tuple(out)


def _spotter(edition: Edition, post: CrewMember) -> list[PostAct]:
    watches = edition.plan.watch.of(post.name)
    if not watches:
        first = _first(edition)
        orders = (Order(words="STAY on your post", detail="you watch nobody: you are the spare"),)
        return [PostAct(at_s=first.at_s, beat=first.burn.start, cue="first flame", orders=orders)]
    beats = sorted({round(beat, 6) for w in watches for beat in (w.start, w.end)})
    acts = [act for beat in beats for act in _hand_overs(edition, post, beat)]
    return acts + _lit_acts(edition, post)


def _hand_overs(edition: Edition, post: CrewMember, beat: float) -> list[PostAct]:
    """What a spotter gives and takes at a beat."""
    plan = edition.plan
    changes = [h for h in plan.watch.hand_overs if abs(h.beat - beat) < _SAME]
    gives = [h for h in changes if h.giver == post.name]
    takes = [h for h in changes if h.taker == post.name]
    if not gives and not takes:
        return []
    orders = [
        Order(words=f"GIVE {numbered(edition, h.who)}", detail=f"to {brief(h.taker)}")
        for h in gives
    ]
    orders += [
        Order(
            words=f"TAKE {numbered(edition, h.who)}", detail=f"from {brief(h.giver)}: say the name"
        )
        for h in takes
    ]
    kept = _kept(edition, post, beat)
    return [
        PostAct(
            at_s=edition.staged.seconds(beat),
            beat=beat,
            cue=sight_of(edition.staged, beat),
            orders=tuple(orders),
            still=_still(edition, kept),
            watched=(*(h.who for h in takes), *(h.who for h in gives), *kept),
            crew=(*(h.taker for h in gives), *(h.giver for h in takes)),
        )
    ]


def _kept(edition: Edition, post: CrewMember, beat: float) -> list[str]:
    """Whom a spotter watches before and after a beat."""
    watches = edition.plan.watch.of(post.name)
    return [w.who for w in watches if w.start < beat - _SAME and w.end > beat + _SAME]


def _still(edition: Edition, kept: Sequence[str]) -> str:
    return f"still watch {listed(numbered(edition, who) for who in kept)}" if kept else ""


def _lit_acts(edition: Edition, post: CrewMember) -> list[PostAct]:
    """Lightings of those whom a post watches then, from the torch on; and watches that begin while somebody burns."""
    plan, staged = edition.plan, edition.staged
    watches = plan.watch.of(post.name)
    acts, begun = [], set()
    for lighting in plan.lighting:
        own = []
        for light in lighting.lights:
            alight = float(staged.tempo.beats_from_seconds(light.burn.alight_s)) + _SOON
            now = [w for w in watches if w.who == light.burn.who and w.start < alight < w.end]
            begun |= {w for w in now if abs(w.start - alight) < 2 * _SOON}
            own += [light] if now else []
        if own:
            first = min(own, key=lambda light: light.at_s)
            names = [light.burn.who for light in own]
            acts.append(
                _watch_act(edition, post, first.at_s, names, lighting.start, _lit_cue(edition, own))
            )
    taken = {(h.who, round(h.beat, 6)) for h in plan.watch.hand_overs if h.taker == post.name}
    for w in watches:
        if w not in begun and (w.who, round(w.start, 6)) not in taken:
            at_s, cue = staged.seconds(w.start), sight_of(staged, w.start)
            acts.append(_watch_act(edition, post, at_s, [w.who], w.start, cue))
    return acts


def _watch_act(
    edition: Edition, post: CrewMember, at_s: float, names: Sequence[str], beat: float, cue: str
) -> PostAct:
    """The row from which on a post watches somebody."""
    kept = _kept(edition, post, float(edition.staged.tempo.beats_from_seconds(at_s)))
    return PostAct(
        at_s=at_s,
        beat=beat,
        cue=cue,
        orders=(
            Order(
                words=f"WATCH {' and '.join(numbered(edition, who) for who in names)}",
                detail="from the torch until cold",
            ),
        ),
        still=_still(edition, [who for who in kept if who not in names]),
        watched=tuple(names),
    )


def _lit_cue(edition: Edition, lights: Sequence[Light]) -> str:
    """Who lights whom; for one of several, whether it is the first or the last."""
    if not lights:
        return ""
    people: dict[str | None, list[str]] = {}
    for light in lights:
        people.setdefault(light.burn.lit_by, []).append(brief(light.burn.who, most=24))
    words = "; ".join(_lights_words(edition, lighter, names) for lighter, names in people.items())
    together = next(each.lights for each in edition.plan.lighting if lights[0] in each.lights)
    place, many = together.index(lights[0]), len(together)
    if len(lights) == 1 and many > 1 and place in {0, many - 1}:
        words += f", {'last' if place else 'first'} of {many}"
    return words


def _lights_words(edition: Edition, lighter: str | None, names: Sequence[str]) -> str:
    if lighter is None:
        return f"{listed(names)} {'is' if len(names) == 1 else 'are'} lit"
    return f"{brief(edition.staged.taken_by(lighter), most=24)} lights {', then '.join(names)}"


def _put_outs(edition: Edition, post: CrewMember) -> list[PostAct]:
    """Putting out, in the order of the plan; or standing by where somebody else does it."""
    watches = edition.plan.watch.of(post.name)
    acts = []
    for beat in sorted({burn.end for burn in edition.plan.burns}):
        burns = [burn for burn in edition.plan.burns if burn.end == beat]
        own = sorted((b for b in burns if b.put_out_by == post.name), key=lambda b: b.out_s)
        watched = {w.who for w in watches if w.start <= beat <= w.end}
        others = [b for b in burns if b.who in watched and b not in own]
        orders = _out_orders(edition, own, others)
        if not orders:
            continue
        names = [burn.who for burn in (*own, *others)]
        acts.append(
            PostAct(
                at_s=edition.staged.seconds(beat),
                beat=beat,
                cue=_out_cue(edition, names, beat),
                orders=orders,
                watched=tuple(names),
            )
        )
    return acts


def _out_orders(
    edition: Edition, own: Sequence[PlannedBurn], others: Sequence[PlannedBurn]
) -> tuple[Order, ...]:
    orders = []
    if own:
        names = ", then ".join(numbered(edition, burn.who) for burn in own)
        by = " and ".join(late_clock(burn.out_s) for burn in own)
        detail = f"by {by}: towel on until cold; never spin the flame out"
        orders.append(Order(words=f"PUT OUT {names}", detail=detail))
    for burn in others:
        by = brief(edition.staged.taken_by(burn.put_out_by or "nobody"), most=24)
        detail = f"{by} puts out; towel ready until cold"
        orders.append(Order(words=f"STAND BY {numbered(edition, burn.who)}", detail=detail))
    return tuple(orders)


def _out_cue(edition: Edition, out: Sequence[str], beat: float) -> str:
    ends = max(burn.end for burn in edition.plan.burns)
    seen = dict.fromkeys(filter(None, (last_seen(edition.staged, who, beat) for who in out)))
    words = [*seen][:1] or [section_words(edition.staged, beat)]
    return "; ".join(
        filter(None, ["the last flames go out" if beat > ends - _SAME else "", *words])
    )


def _lightings(edition: Edition, post: CrewMember, side: OwnSide) -> list[PostAct]:
    """What a post lights, in order, and where."""
    acts = []
    for lighting in edition.plan.lighting:
        lights = [each for each in lighting.lights if each.burn.lit_by == post.name]
        if not lights:
            continue
        orders = [
            Order(
                words=f"LIGHT {numbered(edition, light.burn.who)}",
                detail=f"{act_time(light.at_s)}: {_lit_detail(edition, light.burn, post, side)}",
            )
            for light in lights
        ]
        orders.append(Order(words="PUT OUT the torch", detail="then step back to your mark"))
        acts.append(
            PostAct(
                at_s=lights[0].at_s, beat=lighting.start, cue="" if post.duty == "lead" else f"{_lead_name(edition)} says go",
                orders=tuple(orders), watched=tuple(light.burn.who for light in lights),
            )
        )  # fmt: skip
    return acts


def _lit_detail(edition: Edition, burn: PlannedBurn, post: CrewMember, side: OwnSide) -> str:
    """Where to light, and with what."""
    x, y, _ = place_at(edition.staged, burn.who, burn.start)
    where = _from_post(post.post, burn.lit_at or (x, y), side)
    return f"{where}; second set, never the hot wick" if burn.second_set else where


def _lead_name(edition: Edition) -> str:
    leads = [
        edition.staged.taken_by(post.name)
        for post in edition.staged.show.crew
        if post.duty == "lead"
    ]
    return brief(leads[0], most=24) if len(leads) == 1 else "the lead"


def _from_post(start: Point, end: Point, side: OwnSide) -> str:
    """How far ahead and to which hand a place is from a post."""
    (x0, y0), (x1, y1) = side.view(*start), side.view(*end)
    aside, ahead = x1 - x0, y1 - y0
    words = [f"{metres(abs(ahead), decimals=0)} {'ahead' if ahead > 0 else 'behind you'}"]
    if abs(aside) >= 0.5:  # printed in whole metres
        words.append(f"{metres(abs(aside), decimals=0)} to your {'right' if aside > 0 else 'left'}")
    return ", ".join(words)


def _guard(edition: Edition, _post: CrewMember) -> list[PostAct]:
    return _first_and_last(
        edition,
        (
            Order(words="LET NOBODY CROSS the edge"),
            Order(words="WATCH children and dogs first"),
        ),
        (Order(words="KEEP the edge closed", detail="until the lead opens it"),),
    )


def _keeper(edition: Edition, _post: CrewMember) -> list[PostAct]:
    return _first_and_last(
        edition,
        (Order(words="KEEP every can shut"), Order(words="LET NO FLAME near; stay with the fuel")),
        (
            Order(words="KEEP every can shut", detail="until every wick is cold"),
            Order(words="COUNT the wicks in", detail="then seal the can"),
        ),
    )


def _first_and_last(
    edition: Edition, at_first: tuple[Order, ...], at_last: tuple[Order, ...]
) -> list[PostAct]:
    """Two rows: the first flame, and the last one out."""
    first, last = _first(edition), max(edition.plan.burns, key=lambda burn: burn.out_s)
    return [
        PostAct(at_s=first.at_s, beat=first.burn.start, cue="first flame", orders=at_first),
        PostAct(at_s=last.out_s, beat=last.end, cue="last flame out", orders=at_last),
    ]


def _lighter(_edition: Edition, _post: CrewMember) -> list[PostAct]:
    return []  # all of it follows from who is named to light


def _lead(edition: Edition, post: CrewMember) -> list[PostAct]:
    """The decisions: go or no-go, each lighting, the start of the music, and the watch after the last flame."""
    plan = edition.plan
    first = _first(edition)
    acts = [
        PostAct(
            at_s=second_go(plan), beat=first.burn.start, cue="everybody is on post",
            orders=(Order(words="ASK each by name: go?", detail="one no: nobody is lit"),),
        )
    ]  # fmt: skip
    acts += [_go_act(edition, post, lighting) for lighting in plan.lighting]
    at_start = [each for each in plan.lighting if abs(each.start_s) < _AT_START]
    cue = f"all {len(at_start[0].lights)} are alight" if at_start else "everybody is ready"
    music = Order(words="SAY GO: start the music", detail="to the operator")
    acts.append(PostAct(at_s=0.0, beat=0.0, cue=cue, orders=(music,)))
    watch = plan.book.strictest("fire-watch")
    last = max(plan.burns, key=lambda burn: burn.out_s)
    long = f": {watch.number / MINUTE:.0f}{NB}min" if watch else ""
    orders = (
        Order(words=f"START the fire watch{long}"),
        Order(words="KEEP everybody out", detail="until the watch ends"),
    )
    acts.append(PostAct(at_s=last.out_s, beat=last.end, cue="last flame out", orders=orders))
    return acts


def _go_act(edition: Edition, post: CrewMember, lighting: Lighting) -> PostAct:
    """The word for one lighting."""
    people: dict[str | None, list[str]] = {}
    for light in lighting.lights:
        people.setdefault(light.burn.lit_by, []).append(brief(light.burn.who, most=24))
    said = []
    for lighter, names in people.items():
        words = (
            f"light {names[0]}"
            if lighter == post.name
            else _lights_words(edition, lighter, names[:1])
        )
        said.append(f"{words} first" if len(names) > 1 else words)
    is_first = lighting is edition.plan.lighting[0]
    words = "SAY GO: first flame" if is_first else "DECIDE: light, yes or no"
    return PostAct(
        at_s=min(light.at_s for light in lighting.lights),
        beat=lighting.start,
        cue="all said go" if is_first else sight_of(edition.staged, lighting.start),
        orders=(Order(words=words, detail="; ".join(said)),),
        watched=tuple(each.burn.who for each in lighting.lights),
        crew=tuple(name for name in people if name is not None and name != post.name),
    )


def _first(edition: Edition) -> Light:
    """The first flame of the show."""
    lights = [light for lighting in edition.plan.lighting for light in lighting.lights]
    return min(lights, key=lambda light: light.at_s)


_DUTIES: dict[str, Callable[[Edition, CrewMember], list[PostAct]]] = {
    "spotter": _spotter,
    "perimeter": _guard,
    "fuel keeper": _keeper,
    "lighter": _lighter,
    "lead": _lead,
}
