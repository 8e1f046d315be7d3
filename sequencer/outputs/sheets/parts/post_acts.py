"""What a person at a post does in the act, moment by moment: the rows of their page.

Each row has a time, what is seen or heard then, and orders that begin with the verb. Rows come from the watches,
lightings and putting out of the safety plan; a guard and a fuel keeper get the first and the last flame.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import ceil

from sequencer.outputs.sheets.page.wording import NB, brief, clock, listed, metres
from sequencer.outputs.sheets.parts.cues import place_at
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.own_side import OwnSide, Point
from sequencer.outputs.sheets.parts.sight_cues import last_seen, section_words, sight_of
from sequencer.safety.burning import PlannedBurn, spare
from sequencer.safety.fuel_plan import Light, Lighting
from sequencer.safety.run_of_night import MINUTE, SECOND_GO
from sequencer.show.model import CrewMember, LitSpan

_SAME = 1e-6  # [beats]
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
    if seconds >= -_SAME:
        return clock(seconds)
    early = ceil(-seconds - _SAME)
    return f"−{early // 60}{NB}min" if early >= 2 * MINUTE else f"−{clock(early)}"


def post_acts(edition: Edition, post: CrewMember, side: OwnSide) -> tuple[PostAct, ...]:
    """Rows of a post by time; none if nobody is lit."""
    if not edition.plan.burns:
        return ()
    acts = [*_DUTIES[post.duty](edition, post), *_lightings(edition, post, side)]
    acts += _put_out_for(edition, post)
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
    return [act for beat in beats for act in _watch_acts(edition, post, beat)]


def _watch_acts(edition: Edition, post: CrewMember, beat: float) -> list[PostAct]:
    """What a spotter does at a beat at which a watch of theirs begins or ends."""
    staged, plan = edition.staged, edition.plan
    watches = plan.watch.of(post.name)
    changes = [h for h in plan.watch.hand_overs if abs(h.beat - beat) < _SAME]
    gives = [h for h in changes if h.giver == post.name]
    takes = [h for h in changes if h.taker == post.name]
    begun = [w.who for w in watches if abs(w.start - beat) < _SAME]
    ended = [w.who for w in watches if abs(w.end - beat) < _SAME]
    new = [who for who in begun if who not in {h.who for h in takes}]
    out = [who for who in ended if who not in {h.who for h in gives}]
    orders = [Order(words=f"GIVE {numbered(edition, h.who)}", detail=f"to {brief(h.taker)}") for h in gives]  # fmt: skip
    orders += [Order(words=f"TAKE {numbered(edition, h.who)}", detail=f"from {brief(h.giver)}: say the name") for h in takes]  # fmt: skip
    orders += _out_orders(edition, post, out, beat)
    kept = [
        w.who for w in watches if w.start < beat - _SAME and w.end > beat + _SAME
    ]  # before and after
    still = f"still watch {listed(numbered(edition, who) for who in kept)}" if kept else ""
    acts = []
    if orders:
        crew = (*(h.taker for h in gives), *(h.giver for h in takes))
        shown = (*(h.who for h in takes), *(h.who for h in gives), *out, *kept)
        cue = _out_cue(edition, out, beat) if out and not changes else sight_of(staged, beat)
        acts.append(
            PostAct(
                at_s=staged.seconds(beat), beat=beat, cue=cue, orders=tuple(orders), still=still,
                watched=shown, crew=crew,
            )
        )  # fmt: skip
    if new:
        acts.append(_lit_act(edition, new, beat, still))
    return acts


def _lit_act(edition: Edition, new: Sequence[str], beat: float, still: str) -> PostAct:
    """The watch that begins with a lighting, from the torch on."""
    lights = sorted(
        (light for who in new for light in [_light_of(edition, who, beat)] if light),
        key=lambda light: light.at_s,
    )
    names = [light.burn.who for light in lights] or list(new)
    both = " and ".join(numbered(edition, who) for who in names)
    return PostAct(
        at_s=min([light.at_s for light in lights], default=edition.staged.seconds(beat)),
        beat=beat,
        cue=_lit_cue(edition, lights) or sight_of(edition.staged, beat),
        orders=(Order(words=f"WATCH {both}", detail="from the torch until cold"),),
        still=still,
        watched=tuple(names),
    )


def _light_of(edition: Edition, who: str, beat: float) -> Light | None:
    """The lighting with which a performer's watch begins at a beat."""
    lights = [
        light
        for lighting in edition.plan.lighting
        for light in lighting.lights
        if light.burn.who == who and light.burn.end > beat + _SAME
    ]
    return min(lights, key=lambda light: abs(light.burn.start - beat), default=None)


def _lit_cue(edition: Edition, lights: Sequence[Light]) -> str:
    """Who lights whom; for one of several, whether it is the first or the last."""
    if not lights:
        return ""
    lighter = lighter_of(edition, lights[0].burn)
    names = [brief(light.burn.who, most=24) for light in lights]
    if lighter is None:
        words = f"{listed(names)} {'is' if len(names) == 1 else 'are'} lit"
    else:
        words = f"{brief(lighter, most=24)} lights {', then '.join(names)}"
    together = next(each.lights for each in edition.plan.lighting if lights[0] in each.lights)
    place, many = together.index(lights[0]), len(together)
    if len(lights) == 1 and many > 1 and place in {0, many - 1}:
        words += f", {'last' if place else 'first'} of {many}"
    return words


def _out_orders(edition: Edition, post: CrewMember, out: Sequence[str], beat: float) -> list[Order]:
    """Putting out, least burning time to spare first; or standing by where somebody else does it."""
    burns = [
        burn for burn in edition.plan.burns if burn.who in out and abs(burn.end - beat) < _SAME
    ]
    burns.sort(key=spare)
    own = [b for b in burns if (putter_of(edition, b) or post.name) == post.name]
    orders = []
    if own:
        names = ", then ".join(numbered(edition, burn.who) for burn in own)
        orders.append(Order(words=f"PUT OUT {names}", detail="towel on until cold; never spin the flame out"))  # fmt: skip
    for burn in burns:
        if burn not in own:
            by = brief(putter_of(edition, burn) or "", most=24)
            orders.append(
                Order(words=f"STAND BY {numbered(edition, burn.who)}", detail=f"{by} puts out; towel ready until cold")
            )  # fmt: skip
    return orders


def _out_cue(edition: Edition, out: Sequence[str], beat: float) -> str:
    ends = max(burn.end for burn in edition.plan.burns)
    seen = dict.fromkeys(filter(None, (last_seen(edition.staged, who, beat) for who in out)))
    words = [*seen][:1] or [section_words(edition.staged, beat)]
    return "; ".join(filter(None, ["last flame" if beat > ends - _SAME else "", *words]))


def _put_out_for(edition: Edition, post: CrewMember) -> list[PostAct]:
    """Putting out by somebody who is named for it and does not watch then."""
    watched = {(w.who, round(w.end, 6)) for w in edition.plan.watch.of(post.name)}
    acts = []
    for beat in sorted({burn.end for burn in edition.plan.burns}):
        names = [
            burn.who
            for burn in edition.plan.burns
            if burn.end == beat
            and putter_of(edition, burn) == post.name
            and (burn.who, round(beat, 6)) not in watched
        ]
        if names:
            acts.append(
                PostAct(
                    at_s=edition.staged.seconds(beat), beat=beat, cue=_out_cue(edition, names, beat),
                    orders=tuple(_out_orders(edition, post, names, beat)), watched=tuple(names),
                )
            )  # fmt: skip
    return acts


def _lightings(edition: Edition, post: CrewMember, side: OwnSide) -> list[PostAct]:
    """What a post lights, in order, and where."""
    acts = []
    for lighting in edition.plan.lighting:
        lights = [each for each in lighting.lights if lighter_of(edition, each.burn) == post.name]
        if not lights:
            continue
        orders = [
            Order(
                words=f"LIGHT {numbered(edition, light.burn.who)}",
                detail=f"{act_time(light.at_s)}: {_from_post(post.post, lit_place(edition, light.burn), side)}",
            )
            for light in lights
        ]
        orders.append(Order(words="PUT OUT the torch", detail="then step back to your mark"))
        acts.append(
            PostAct(
                at_s=lights[0].at_s, beat=lighting.start, cue=f"{_lead_name(edition)} says go",
                orders=tuple(orders), watched=tuple(light.burn.who for light in lights),
            )
        )  # fmt: skip
    return acts


def _lead_name(edition: Edition) -> str:
    leads = [post.name for post in edition.staged.show.crew if post.duty == "lead"]
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
    first, last = _first(edition), max(edition.plan.burns, key=lambda burn: burn.end_s)
    return [
        PostAct(at_s=first.at_s, beat=first.burn.start, cue="first flame", orders=at_first),
        PostAct(at_s=last.end_s, beat=last.end, cue="last flame out", orders=at_last),
    ]


def _lighter(_edition: Edition, _post: CrewMember) -> list[PostAct]:
    return []  # all of it follows from who is named to light


def _lead(edition: Edition, post: CrewMember) -> list[PostAct]:
    """The decisions: go or no-go, each lighting, the start of the music, and the watch after the last flame."""
    plan = edition.plan
    first = _first(edition)
    acts = [
        PostAct(
            at_s=SECOND_GO, beat=first.burn.start, cue="everybody is on post",
            orders=(Order(words="ASK each by name: go?", detail="one no: nobody is lit"),),
        )
    ]  # fmt: skip
    acts += [_go_act(edition, post, lighting) for lighting in plan.lighting]
    at_start = [each for each in plan.lighting if abs(each.start_s) < _AT_START]
    cue = f"all {len(at_start[0].lights)} are alight" if at_start else "everybody is ready"
    music = Order(words="SAY GO: start the music", detail="to the operator")
    acts.append(PostAct(at_s=0.0, beat=0.0, cue=cue, orders=(music,)))
    watch = plan.book.strictest("fire-watch")
    last = max(plan.burns, key=lambda burn: burn.end_s)
    long = f": {watch.number / MINUTE:.0f}{NB}min" if watch else ""
    orders = (
        Order(words=f"START the fire watch{long}"),
        Order(words="KEEP everybody out", detail="until the ground is swept"),
    )
    acts.append(PostAct(at_s=last.end_s, beat=last.end, cue="last flame out", orders=orders))
    return acts


def _go_act(edition: Edition, post: CrewMember, lighting: Lighting) -> PostAct:
    """The word for one lighting."""
    light = lighting.lights[0]
    lighter = lighter_of(edition, light.burn)
    is_first = lighting is edition.plan.lighting[0]
    words = "SAY GO: first flame" if is_first else "DECIDE: light, yes or no"
    detail = f"light {brief(light.burn.who, most=24)} first"
    crew: tuple[str, ...] = ()
    if lighter is not None and lighter != post.name:
        detail = f"{brief(lighter, most=24)} lights {brief(light.burn.who, most=24)} first"
        crew = (lighter,)
    return PostAct(
        at_s=light.at_s,
        beat=lighting.start,
        cue="all said go" if is_first else sight_of(edition.staged, lighting.start),
        orders=(Order(words=words, detail=detail),),
        watched=tuple(each.burn.who for each in lighting.lights),
        crew=crew,
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


def lighter_of(edition: Edition, burn: PlannedBurn) -> str | None:
    """Who lights for a burn: as entered for it, for the show, or the crew's only lighter."""
    show = edition.staged.show
    span = _span(edition, burn)
    named = span.lit_by if span else None
    if named is None and show.fire is not None:
        named = show.fire.handling.lit_by
    lighters = [each.name for each in show.crew if each.duty == "lighter"]
    return named or (lighters[0] if len(lighters) == 1 else None)


def putter_of(edition: Edition, burn: PlannedBurn) -> str | None:
    """Who is named to put a burn out; None: the spotter who watches then."""
    span = _span(edition, burn)
    return span.put_out_by if span else None


def lit_place(edition: Edition, burn: PlannedBurn) -> Point:
    """Where a performer is lit: as entered, or where they stand when the burn begins [m, stage frame]."""
    span = _span(edition, burn)
    if span is not None and span.lit_at is not None:
        return span.lit_at
    x, y, _ = place_at(edition.staged, burn.who, burn.start)
    return x, y


def _span(edition: Edition, burn: PlannedBurn) -> LitSpan | None:
    """The entry of the show file that a burn comes from."""
    fire = edition.staged.show.fire
    for lit in edition.staged.lit_of(burn.who):
        if fire is not None and abs(lit.start - burn.start) < _SAME:
            return fire.lit[int(lit.path[2])]
    return None
