"""The run of the night: from load-in to the fire watch, who does what when, and the stop call.

Times are seconds from the start of the song; clock times are given if the show says when it begins. The
tasks and their order are common practice, with the rule named where one applies; the lead times are design
choices that a safety lead adapts to the venue.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from sequencer.facts.rule_book import RuleBook
from sequencer.facts.wind import beaufort
from sequencer.safety.burning import PlannedBurn
from sequencer.safety.fuel_plan import FUEL_RESERVE, Light
from sequencer.safety.handling import moment_words, seconds_words, waiting_order
from sequencer.safety.permits import permit_words
from sequencer.safety.safety_plan import SafetyPlan
from sequencer.show.evening import Role, StopCall
from sequencer.show.site import extinguisher_words
from sequencer.staging.staged import Staged

MINUTE = 60.0  # [s]
SOAKING = 60.0  # [s] to soak, spin off and wipe one prop; a design choice
_THINGS = {
    "towels": ("damp towel", "damp towels"),
    "blankets": ("fire blanket", "fire blankets"),
    "buckets": ("bucket of water", "buckets of water"),
}
_PEOPLE = (
    ("spotters", "spotter"),
    ("perimeter-guards", "perimeter guard"),
    ("fuel-keepers", "fuel keeper"),
)
BEFORE_SOAK = 10 * MINUTE  # [s] at most between the last soak and the start; a design choice


@dataclass(frozen=True, slots=True, kw_only=True)
class NightStep:
    """One task."""

    at: float  # [s] from the start of the song; negative before it
    until: float | None  # [s] duration, if it has one
    who: tuple[str, ...]  # roles or names
    what: str
    checks: tuple[str, ...] = ()  # boxes to tick
    position: str | None = None  # bar.beat, within the act
    source: str = "common practice"


@dataclass(frozen=True, slots=True, kw_only=True)
class Stop:
    """What one role or person does on the stop call."""

    role: str
    does: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RunOfNight:
    """The complete run of the night."""

    begins: str | None  # HH:MM of the start of the song
    steps: tuple[NightStep, ...]  # by time
    go: tuple[str, ...]  # all must be true before anybody soaks, and again before anybody is lit
    stop: tuple[Stop, ...]
    log: tuple[str, ...]  # lines of the after-show log

    def clock(self, seconds: float) -> str | None:
        """Clock time, HH:MM:SS, of a time from the start of the song; None if not known."""
        if self.begins is None:
            return None
        hours, minutes = (int(part) for part in self.begins.split(":"))
        total = math.floor(hours * 3600 + minutes * 60 + seconds + 0.5) % 86_400
        return f"{total // 3600:02d}:{total // 60 % 60:02d}:{total % 60:02d}"


def run_of_the_night(show: Staged, plan: SafetyPlan) -> RunOfNight:
    """The night of a show.

    Parameters
    ----------
    show : Staged
    plan : SafetyPlan
        Of that show.
    """
    last = max([show.song.duration] + [burn.out_s for burn in plan.burns])
    steps = [*_before(show, plan), *_act(show, plan), *_after(plan, last)]
    return RunOfNight(
        begins=show.show.begins,
        steps=tuple(sorted(steps, key=lambda step: step.at)),
        go=_go(show, plan),
        stop=stop_call(plan.lit_at_once, show.show.stop_call, caller=show.show.emergency.caller),
        log=_log(show, plan),
    )


def stop_call(
    lit: int, call: StopCall | None = None, *, caller: str | None = None
) -> tuple[Stop, ...]:
    """What everybody does on the stop call; without fire there is no flame to put out.

    Duties given in the show for a role replace the usual ones; people given by name come last. If the
    emergency card names a caller, that person calls for help instead of the lead.

    Source: common practice; a shared stop word, juggling society, Dublin [A37; read].
    """
    agreed = (call or StopCall()).does
    usual = _usual(lit > 0, caller)
    roles = tuple(Stop(role=each.role, does=agreed.get(each.role, each.does)) for each in usual)
    known = {each.role for each in usual}
    persons = (Stop(role=name, does=does) for name, does in agreed.items() if name not in known)
    return (*roles, *persons)


def agreed_on_stop(call: StopCall, who: str | None, role: Role) -> tuple[str, ...]:
    """What the show says a person, or else their role, does on the stop call; empty if it says nothing."""
    return call.does.get(who or "", call.does.get(role, ()))


def calling(caller: str | None) -> str:
    """What the lead does to get help called."""
    return (
        f"have {caller} call for help and name the gate"
        if caller
        else "call for help, name the gate"
    )


def _usual(flame: bool, caller: str | None) -> tuple[Stop, ...]:
    performer: tuple[str, ...] = ("stand still", "let the heads hang away from you and everybody")
    if flame:
        performer = (
            "stop the props, hold them low and away from you",
            "stay where you can be seen; your spotter comes to you",
            "clothes alight: lie down, do not run",
        )
    return (
        Stop(
            role="everybody",
            does=("whoever sees the danger gives the stop call, loudly", "repeat it"),
        ),
        Stop(role="operator", does=("cut the music", "full light on the stage", "then silence")),
        Stop(role="performer", does=performer),
        Stop(
            role="spotter",
            does=(
                "go to the performer you watch; approach from where they can see you",
                "smother from the head downward",
            )
            if flame
            else ("go to the performer you watch",),
        ),
        Stop(role="perimeter", does=("keep everybody out", "clear the way for help")),
        Stop(role="fuel keeper", does=("shut the can", "stay with it")),
        Stop(
            role="lead",
            does=(
                "decide: go on, end, or clear the place",
                calling(caller),
                "note the time",
            ),
        ),
    )


def _before(show: Staged, plan: SafetyPlan) -> list[NightStep]:
    book = plan.book
    props = sum(each.soaks for each in plan.fuel.props) if plan.fuel else 0
    soaking = max(props * SOAKING, 5 * MINUTE) if props else 0.0
    soak_at = -BEFORE_SOAK - soaking
    found = [
        NightStep(at=-120 * MINUTE, until=None, who=("lead",), what="load in and walk the site",
             checks=("exits and fire lanes free", "ground even and dry, no dry grass",
                     "combustibles cleared or wetted", "emergency address and gate known")),
        NightStep(at=-100 * MINUTE, until=None, who=("lead", "perimeter"), what="mark the floor",
             checks=("audience edge, with a physical barrier", "start places and posts", "fuel point and spin-off zone")),
        NightStep(at=-60 * MINUTE, until=None, who=("everybody",), what="briefing",
             checks=(f"stop word “{show.show.stop_call.word}” agreed and called once by each", "who watches whom",
                     "nobody has been drinking or is ill", "anyone may stand anyone down")),
        NightStep(at=-45 * MINUTE, until=None, who=("performer",), what="check every prop",
             checks=("links and swivels pulled hard", "wicks tight", "handles whole", "tether length as planned")),
        NightStep(at=-40 * MINUTE, until=None, who=("performer", "spotter"), what="check costume and hair",
             checks=("close-fitting natural or treated cloth", "hair tied or damp", "no spray or glitter",
                     "jewellery off")),
    ]  # fmt: skip
    if not plan.burns:
        return found
    found += [
        NightStep(at=-90 * MINUTE, until=None, who=("lead",), what="set out equipment", checks=_set_out(show, plan)),
        NightStep(at=-75 * MINUTE, until=None, who=("lead",), what="weather and ban: first go or no-go",
             checks=("fire-danger and ban notice of today read", *_wind_lines(book, show.show.weather.gusts), *show.show.weather.lines)),
        NightStep(at=soak_at - 10 * MINUTE, until=None, who=("fuel keeper",), what="open the fuel point",
             checks=("keeper stays with it", "upwind, or with a crosswind", "no flame, no smoking", "extinguisher and absorbent at hand",
                     "catch container and lidded can for rags"), source=_cited(book, "fuel-keepers")),
        NightStep(at=soak_at, until=-BEFORE_SOAK, who=("fuel keeper", "performer"), what="soak and spin off",
             checks=_soak_lines(plan), source=_cited(book, "spin-off-zone")),
        NightStep(at=-BEFORE_SOAK, until=None, who=("fuel keeper",), what="shut the can, count the props out",
             checks=(f"{props} soaked props out, including those for relights", "can stays shut until the act is over"), source=_cited(book, "fuel-point-distance")),
        NightStep(at=-10 * MINUTE, until=None, who=("spotter", "perimeter"), what="to the posts",
             checks=("towels damp", "perimeter closed", "line of sight to the performer you watch")),
        NightStep(at=-5 * MINUTE, until=None, who=("lead",), what="second go or no-go, each by name",
             checks=_go(show, plan)),
    ]  # fmt: skip
    return found


def _act(show: Staged, plan: SafetyPlan) -> list[NightStep]:
    found = [
        NightStep(at=0.0, until=show.song.duration, who=("operator",), what="start the music", position=show.position(0.0))
    ]  # fmt: skip
    found += lighting_steps(show, plan)
    found += putting_out_steps(show, plan)
    found += [
        NightStep(at=show.seconds(each.beat), until=None, who=(each.giver, each.taker),
             what=f"hand over the watch of {each.who}: {each.taker} says the name, {each.giver} lets go",
             position=show.position(each.beat))
        for each in plan.watch.hand_overs
    ]  # fmt: skip
    return found


def lighting_steps(show: Staged, plan: SafetyPlan) -> list[NightStep]:
    """One step for each person who lights, and each change to a second set of props."""
    waiting = show.show.fire.handling.waiting if show.show.fire else None
    wait = waiting_order(waiting, flexible=_on_lines(show), until="until the first move")
    found = []
    for lighting in plan.lighting:
        people: dict[str | None, list[Light]] = {}
        for light in lighting.lights:
            people.setdefault(light.burn.lit_by, []).append(light)
        for person, lights in people.items():
            names = tuple(light.burn.who for light in lights)
            each = seconds_words(plan.handling.light) + plan.handling.words("light")
            what = "NOBODY IS NAMED TO LIGHT: do not light"
            if person is not None:
                what = f"{person} lights {names[0]}, {each}"
                if len(names) > 1:
                    what = f"{person} lights, in this order, {each} each"
            found.append(
                NightStep(at=lights[0].at_s, until=lighting.start_s, who=(*filter(None, (person,)), *names),
                     what=what, checks=(*(_light_text(light) for light in lights), wait),
                     position=show.position(lighting.start),
                     source="least to spare last: common practice")
            )  # fmt: skip
            found += [
                NightStep(at=light.at_s - plan.handling.swap, until=light.at_s, who=(light.burn.who,),
                     what=f"change to the second soaked set, never the hot wick, {seconds_words(plan.handling.swap)}"
                     f"{plan.handling.words('swap')}",
                     checks=("hot set laid down away from fuel", "second set in hand, no spray"))
                for light in lights if light.burn.second_set
            ]  # fmt: skip
    return found


def putting_out_steps(show: Staged, plan: SafetyPlan) -> list[NightStep]:
    """One step for each person who puts out, with everybody whom they put out from that moment on."""
    groups: dict[tuple[float, str | None], list[PlannedBurn]] = {}
    for burn in sorted(plan.burns, key=lambda burn: (burn.end, burn.queue_s)):
        groups.setdefault((burn.end, burn.put_out_by), []).append(burn)
    found = []
    for (end, person), burns in groups.items():
        names = tuple(burn.who for burn in burns)
        what = "NOBODY IS NAMED TO PUT OUT: do not light"
        if person is not None:
            each = seconds_words(plan.handling.put_out) + plan.handling.words("put_out")
            order = f"{names[0]}, {each}" if len(names) == 1 else f"in this order, {each} each"
            what = f"{person} puts out {order}: smother; never spin the flame out"
        found.append(
            NightStep(at=burns[0].end_s, until=burns[-1].out_s, who=(*filter(None, (person,)), *names),
                 what=what, position=show.position(end),
                 checks=(*(f"{burn.who}: out by {moment_words(burn.out_s)}" for burn in burns),
                         "put out while there is still flame above the wick", "hot head down, away from fuel"),
                 source="put out before the wick itself burns: common practice [P9; read second-hand]")
        )  # fmt: skip
    return found


def _on_lines(show: Staged) -> bool:
    return all(prop.held().flexible for dancer in show.show.cast for prop in dancer.props.values())


def _after(plan: SafetyPlan, last: float) -> list[NightStep]:
    found = [
        NightStep(at=last, until=None, who=("everybody",), what="the act is over", checks=("lights on the ground",))
    ]  # fmt: skip
    if not plan.burns:
        return found
    watch = plan.book.strictest("fire-watch")
    seconds = watch.number if watch else 0.0
    dark = max(burn.out_s for burn in plan.burns)
    found += [
        NightStep(at=dark + MINUTE, until=None, who=("performer", "spotter"), what="quench and wrap",
             checks=("props wrapped or in a lidded metal can", "hands and face checked for burns")),
        NightStep(at=dark + 3 * MINUTE, until=None, who=("fuel keeper",), what="seal the fuel",
             checks=("can sealed", "spun-off fuel sealed as waste", "rags in lidded metal")),
        NightStep(at=dark + 5 * MINUTE, until=None, who=("lead", "perimeter"), what="sweep for embers, count wicks",
             checks=("every wick and quick-link found", "ground and scenery checked for heat", "perimeter opened")),
        NightStep(at=dark, until=dark + seconds, who=("lead",), what=f"fire watch, {seconds / MINUTE:g} min, logged",
             checks=("walk the area again at the end",), source=_cited(plan.book, "fire-watch")),
        NightStep(at=dark + seconds, until=None, who=("lead",), what="hand the venue back in writing, fill in the log",
             checks=("all waste taken away",)),
    ]  # fmt: skip
    return found


def _go(show: Staged, plan: SafetyPlan) -> tuple[str, ...]:
    """Conditions that must all be met."""
    if not plan.burns:
        return ("floor dry and lit", "everybody well")
    book = plan.book
    weather = show.show.weather
    lines = [*_wind_lines(book, weather.gusts), *weather.lines]
    if show.show.venue.setting == "indoors":
        lines = []
    for kind, word in _PEOPLE:
        needed = book.needed(kind, plan.lit_at_once)
        if needed:
            posted = sum(each.duty == word.removesuffix(" guard") for each in show.show.crew)
            count = max(posted, needed[0])  # the response time was computed for everyone posted
            several = "" if count == 1 else "s"
            lines.append(f"{count} {word}{several} on post, with one job each")
    lines.append(f"permit on site: {permit_words(show.show)}")
    blank = [word.lower() for word, entered in show.show.emergency.lines if entered is None]
    if blank:
        lines.append(f"emergency card filled in by hand: {', '.join(blank)}")
    lines += ["perimeter closed, exits free", "everybody fit and sober, nobody working alone"]
    return tuple(lines)


def _wind_lines(book: RuleBook, own: float | None = None) -> tuple[str, ...]:
    stop, warn = book.strictest("wind-stop"), book.strictest("wind-warn")
    lines = []
    if own is not None and (stop is None or own < stop.number):
        lines.append(f"gusts at prop height below {own:.1f} m/s (this show’s own limit)")
    elif stop is not None:
        lines.append(
            f"gusts at prop height below {stop.number:.1f} m/s (Beaufort {beaufort(stop.number)}; "
            "borrowed from open burning)"
        )
    if warn is not None and not (own is not None and own <= warn.number):
        lines.append(f"from {warn.number:.1f} m/s measure before each lighting")
    return tuple(lines)


def _set_out(show: Staged, plan: SafetyPlan) -> tuple[str, ...]:
    lines = [
        f"extinguisher, {extinguisher_words(each)}, in its planned position: pressure, pin, tag"
        for each in show.show.venue.extinguishers
    ]
    for kind, (one, several) in _THINGS.items():
        needed = plan.book.needed(kind, plan.lit_at_once)
        if needed:
            lines.append(f"at least {needed[0]} {one if needed[0] == 1 else several} in total")
    lines += [
        f"{each.name}, {each.duty}: {', '.join(each.equipment)}"
        for each in show.show.crew
        if each.equipment
    ]
    return tuple(lines)


def _soak_lines(plan: SafetyPlan) -> tuple[str, ...]:
    book = plan.book
    lines = []
    for kind, text in (("soak-seconds", "soak at least {} s, until no bubbles rise"), ("spin-off-seconds", "spin off at least {} s, until no spray; wipe hands and handles")):  # fmt: skip
        rule = book.strictest(kind)
        if rule is not None:
            lines.append(text.format(f"{rule.number:g}"))
    if plan.fuel is not None:
        lines.append(
            f"{plan.fuel.prepared * 1000:.2f} L of {plan.fuel.fuel.title.lower()} prepared, "
            f"including {FUEL_RESERVE:.0%} spare; about {plan.fuel.spun_off * 1000:.2f} L is left over as waste"
        )
    return tuple(lines)


def _log(show: Staged, plan: SafetyPlan) -> tuple[str, ...]:
    lines: Sequence[str] = (
        "date, place, weather, gusts at prop height",
        "who was there and in what role",
        *(
            f"burn of {burn.who} from {show.position(burn.start)}: planned "
            f"{seconds_words(burn.flame_s)}, lasted … s, burnt out / put out"
            for burn in plan.burns
        ),
        "stops called, by whom, why",
        "near misses, burns, first aid",
        "fuel brought, used, taken home; waste",
        "fire watch: from … to …, by …",
        "to change before the next show",
    )
    return tuple(lines)


def _light_text(light: Light) -> str:
    spare = light.spare_s
    text = "burning time unknown" if spare is None else f"{math.floor(spare)} s to spare at the end"
    again = ", with the second soaked set, never the hot wick" if light.burn.second_set else ""
    return f"{light.burn.who}, from {moment_words(light.at_s)}: {text}{again}"


def _cited(book: RuleBook, kind: str) -> str:
    rules = book.all(kind)
    return rules[-1].citation if rules else "common practice"
