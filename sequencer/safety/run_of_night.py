"""The run of the night: from load-in to the fire watch, who does what when.

Times are seconds from the start of the song; clock times are given if the show says when it begins. The
tasks and their order are common practice, with the rule named where one applies; the lead times are design
choices that a safety lead adapts to the venue.
"""

import math
from dataclasses import dataclass

from sequencer.facts.rule_book import RuleBook
from sequencer.facts.wind import beaufort
from sequencer.safety.burns.burning import PlannedBurn
from sequencer.safety.burns.fuel_plan import FUEL_RESERVE, Light
from sequencer.safety.burns.handling import seconds_words, waiting_order
from sequencer.safety.duties.on_stop import Stop, stop_of
from sequencer.safety.rules.permits import permit_words
from sequencer.safety.safety_plan import SafetyPlan
from sequencer.show.file_records.site import extinguisher_words
from sequencer.staging.staged import Staged
from sequencer.timing.position import moment_words

MINUTE = 60.0  # [s]
SOAKING = 60.0  # [s] to soak, spin off and wipe one prop; a design choice
_THINGS = {
    "towels": ("damp towel", "damp towels"),
    "blankets": ("fire blanket", "fire blankets"),
    "buckets": ("bucket of water", "buckets of water"),
}
_PEOPLE = (
    ("spotters", "spotter"),
    ("perimeter-guards", "perimeter"),
    ("fuel-keepers", "fuel keeper"),
)
_DUTY_WORDS = {"perimeter": "perimeter guard"}
BEFORE_SOAK = 10 * MINUTE  # [s] at most between the last soak and the start; a design choice
OPENING = 10 * MINUTE  # [s] from opening the fuel point to the first soak; a design choice
FIRST_GO = -75 * MINUTE  # [s] first go or no-go, earlier if soaking takes long; a design choice
SECOND_GO = -5 * MINUTE  # [s] second go or no-go: everybody is on post by then; a design choice
_LEAST_BEFORE_FLAMES = (
    3 * MINUTE
)  # [s] from the second go or no-go to the first flame; a design choice
_LEAST_BETWEEN = 40 * MINUTE  # [s] from the first go or no-go to opening the fuel point
WATCH_ROUND = 10 * MINUTE  # [s] between two rounds of the fire watch; a design choice


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
class GoLine:
    """One line of go or no-go: a statement that is true or not."""

    group: str
    asks: str
    if_no: str = ""  # what then; empty: nobody is lit
    first: bool = True  # asked before the fuel is opened
    second: bool = True  # asked before anybody is lit


@dataclass(frozen=True, slots=True, kw_only=True)
class RunOfNight:
    """The complete run of the night."""

    begins: str | None  # HH:MM of the start of the song
    steps: tuple[NightStep, ...]  # by time
    go: tuple[GoLine, ...]  # all must be true
    first_go: float  # [s] from the start of the song, as of the steps; negative
    second_go: float  # [s]
    people: tuple[str, ...]  # asked by name at the second go or no-go
    stop: tuple[Stop, ...]
    log: tuple[str, ...]  # lines of the after-show log
    rounds: tuple[float, ...]  # [s] from the last flame, of the fire watch

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
        first_go=FIRST_GO + _earlier(plan),
        second_go=second_go(plan),
        people=_people(show, plan),
        stop=stop_of(show.show, plan.lit_at_once),
        log=_log(),
        rounds=_rounds(plan) if plan.burns else (),
    )


def _soaking(plan: SafetyPlan) -> tuple[int, float]:
    """How many props are soaked, and how long it takes [s]."""
    props = sum(each.soaks for each in plan.fuel.props) if plan.fuel else 0
    return props, max(props * SOAKING, 5 * MINUTE) if props else 0.0


def _flames_before(plan: SafetyPlan) -> float:
    """How much earlier the last steps before the act are, where lighting begins long before the song [s]; at most 0."""
    first = min((burn.alight_s for burn in plan.burns), default=0.0)
    return min(first - SECOND_GO - _LEAST_BEFORE_FLAMES, 0.0)


def second_go(plan: SafetyPlan) -> float:
    """When go or no-go is asked the second time [s of the track]."""
    return SECOND_GO + _flames_before(plan)


def _earlier(plan: SafetyPlan) -> float:
    """What is done before the fuel is opened is earlier by this where soaking takes long [s]; at most 0."""
    opened = -BEFORE_SOAK + _flames_before(plan) - _soaking(plan)[1] - OPENING
    return min(opened - _LEAST_BETWEEN - FIRST_GO, 0.0)


def _before(show: Staged, plan: SafetyPlan) -> list[NightStep]:
    book = plan.book
    props, soaking = _soaking(plan)
    soaked = -BEFORE_SOAK + _flames_before(plan)
    soak_at = soaked - soaking
    shift = _earlier(plan)
    found = [
        NightStep(at=-120 * MINUTE + shift, until=None, who=("lead",), what="load in and walk the site",
             checks=("exits and fire lanes free", "ground even and dry, no dry grass",
                     "combustibles cleared or wetted", "emergency address and gate known")),
        NightStep(at=-100 * MINUTE + shift, until=None, who=("lead", "perimeter"), what="mark the floor",
             checks=("audience edge, with a physical barrier", "start places and posts", "fuel point and spin-off zone")),
        NightStep(at=-60 * MINUTE + shift, until=None, who=("everybody",), what="briefing",
             checks=(f"stop word “{show.show.stop_call.word}” agreed and called once by each", "who watches whom",
                     "nobody has been drinking or is ill", "anyone may stand anyone down")),
        NightStep(at=-45 * MINUTE + shift, until=None, who=("performer",), what="check every prop",
             checks=("links and swivels pulled hard", "wicks tight", "handles whole", "tether length as planned")),
        NightStep(at=-40 * MINUTE + shift, until=None, who=("performer", "spotter"), what="check costume and hair",
             checks=("close-fitting natural or treated cloth", "hair tied or damp", "no spray or glitter",
                     "jewellery off")),
    ]  # fmt: skip
    if not plan.burns:
        return found
    found += [
        NightStep(at=-90 * MINUTE + shift, until=None, who=("lead",), what="set out equipment", checks=_set_out(show, plan)),
        NightStep(at=-80 * MINUTE + shift, until=None, who=("lead", "operator"), what="test the sound cut",
             checks=("stop word called: sound off at once, full light on",)),
        NightStep(at=FIRST_GO + shift, until=None, who=("lead",), what="first go or no-go: weather, ban, equipment, sound",
             checks=("every line of page 1 initialled",)),
        NightStep(at=soak_at - OPENING, until=None, who=("fuel keeper",), what="open the fuel point",
             checks=("keeper stays with it", "upwind, or with a crosswind", "no flame, no smoking", "extinguisher and absorbent at hand",
                     "catch container and lidded can for rags"), source=_cited(book, "fuel-keepers")),
        NightStep(at=soak_at, until=soaked, who=("fuel keeper", "performer"), what="soak and spin off",
             checks=_soak_lines(plan), source=_cited(book, "spin-off-zone")),
        NightStep(at=soaked, until=None, who=("fuel keeper",), what="shut the can, count the props out",
             checks=(f"{props} soaked props out, including those for relights", "can stays shut until the act is over"), source=_cited(book, "fuel-point-distance")),
        NightStep(at=soaked, until=None, who=("spotter", "perimeter"), what="to the posts",
             checks=("towels damp", "perimeter closed", "line of sight to the performer you watch")),
        NightStep(at=second_go(plan), until=None, who=("lead",), what="second go or no-go: everybody by name",
             checks=("every line of page 1 initialled",)),
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
        for part, lights in people.items():
            person = None if part is None else show.taken_by(part)
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
    for (end, part), burns in groups.items():
        person = None if part is None else show.taken_by(part)
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
        NightStep(at=last, until=None, who=("everybody",), what="the act is over", checks=("work lamps on the ground",))
    ]  # fmt: skip
    if not plan.burns:
        return found
    watch = plan.book.strictest("fire-watch")
    seconds = watch.number if watch else 0.0
    dark, cold = (
        max(each) for each in zip(*((burn.out_s, burn.cold_s) for burn in plan.burns), strict=True)
    )
    found += [
        NightStep(at=dark + MINUTE, until=None, who=("performer", "spotter"), what="quench and wrap",
             checks=("props wrapped or in a lidded metal can", "hands and face checked for burns")),
        NightStep(at=max(dark + 3 * MINUTE, cold), until=None, who=("fuel keeper",), what="seal the fuel",
             checks=(f"every wick cold, {seconds_words(plan.handling.cool)}{plan.handling.words('cool')}", "can sealed", "spun-off fuel sealed as waste", "rags in lidded metal")),
        NightStep(at=dark + 5 * MINUTE, until=None, who=("lead", "perimeter"), what="sweep for embers, count wicks",
             checks=("every wick and quick-link found", "ground and scenery checked for heat", "perimeter still closed")),
        NightStep(at=dark, until=dark + seconds, who=("lead",), what=f"fire watch, {seconds / MINUTE:g} min, logged",
             checks=("walk the area again at the end, then open the perimeter",), source=_cited(plan.book, "fire-watch")),
        NightStep(at=dark + seconds, until=None, who=("lead",), what="hand the venue back in writing, fill in the log",
             checks=("all waste taken away",)),
    ]  # fmt: skip
    return found


def _go(show: Staged, plan: SafetyPlan) -> tuple[GoLine, ...]:
    """Statements that must all be true, without the people on post; grouped."""
    if not plan.burns:
        return (
            GoLine(group="Place", asks="Floor dry and lit", first=False),
            GoLine(group="People", asks="Everybody well", first=False),
        )
    record = show.show
    lines = [
        GoLine(group="Papers", asks=f"Permit for tonight and this place on site (recorded: {permit_words(record)})", second=False),
        GoLine(group="Papers", asks="Fire-danger and ban notice of today read: no ban"),
    ]  # fmt: skip
    blank = [word.lower() for word, entered in record.emergency.lines if entered is None]
    if blank:
        asks = f"Emergency card filled in by hand: {', '.join(blank)}"
        lines.append(GoLine(group="Papers", asks=asks, second=False))
    if record.venue.setting != "indoors":
        lines += _wind_lines(plan.book, record.weather.gusts)
        lines += [GoLine(group="Weather", asks=line) for line in record.weather.lines]
    lines += _equipment_lines(show, plan)
    props, _ = _soaking(plan)
    lines += [
        GoLine(group="Fuel", asks="Every can shut, its keeper and an extinguisher beside it", first=False),
        GoLine(group="Fuel", asks=f"Soaked props counted out: {props}", first=False),
        GoLine(group="Sound", asks="Sound cut tested with the operator: stop word called, sound off, full light on", second=False),
        GoLine(group="Sound", asks="Operator at the desk, one hand on the cut", first=False),
        GoLine(group="Place", asks="Exits, the ways to them and the fire lane free"),
        GoLine(group="Place", asks="Perimeter closed, nobody inside it who is not named below", first=False),
        GoLine(group="People", asks="Everybody fit and sober, and nobody works alone", if_no="stand that person down, and ask again"),
    ]  # fmt: skip
    return tuple(lines)


def _equipment_lines(show: Staged, plan: SafetyPlan) -> list[GoLine]:
    """Extinguishers one by one, and what else the rules ask."""
    tools = show.show.venue.extinguishers
    lines = [
        GoLine(
            group="Equipment",
            asks=f"Extinguisher {k} of {len(tools)} ({extinguisher_words(each)}{', for the fuel' if each.guards == 'fuel' else ''}) "
            "in position: pressure, pin, tag",
        )
        for k, each in enumerate(tools, start=1)
    ]  # fmt: skip
    if not tools:
        asks = "Extinguishers in position: pressure, pin, tag (none is in the show file)"
        lines.append(GoLine(group="Equipment", asks=asks))
    if needed := _needed_things(plan):
        asks = f"In place: {', '.join(needed)}"
        lines.append(GoLine(group="Equipment", asks=asks, first=False))
    return lines


def _people(show: Staged, plan: SafetyPlan) -> tuple[str, ...]:
    """Who is asked by name, with what they answer for; a blank where the rules ask for one more."""
    if not plan.burns:
        return ()
    record = show.show
    found = [
        f"S{show.post_number(post.name)} {show.taken_by(post.name)}, {_DUTY_WORDS.get(post.duty, post.duty)}: on post"
        for post in record.crew
    ]
    for kind, duty in _PEOPLE:
        needed = plan.book.needed(kind, plan.lit_at_once)
        posted = sum(each.duty == duty for each in record.crew)
        missing = max(needed[0] - posted, 0) if needed else 0
        found += [f"________, {_DUTY_WORDS.get(duty, duty)}: on post"] * missing
    if not any(post.duty == "lead" for post in record.crew):
        found.append("________, lead: on post")
    card = record.emergency
    for entered, job in (
        (card.first_aider, "first aider: there"),
        (card.caller, "caller: phone tested"),
        (card.meets, "meets the responders: there"),
    ):
        found.append(f"{entered or '________'}, {job}")
    return (*found, *(f"{_with_part(show, name)}, performer: ready" for name in record.names))


def _with_part(show: Staged, part: str) -> str:
    """Who dances a part, and whose it is if they stand in."""
    name = show.taken_by(part)
    return name if name == part else f"{name} for {part}"


def _wind_lines(book: RuleBook, own: float | None = None) -> list[GoLine]:
    """The gust limit, and the lower one from which the wind is measured again and again."""
    stop, warn = book.strictest("wind-stop"), book.strictest("wind-warn")
    limit, why = None, ""
    if own is not None and (stop is None or own < stop.number):
        limit, why = own, "this show’s own limit"
    elif stop is not None:
        limit = stop.number
        why = f"Beaufort {beaufort(limit)}; borrowed from open burning"
    lines = []
    if limit is not None:
        asks = f"Gusts at prop height below {limit:.1f} m/s ({why})"
        lines.append(GoLine(group="Weather", asks=asks, if_no="nobody is lit until they drop"))
    if warn is not None and (limit is None or warn.number < limit):
        asks = f"Gusts at prop height below {warn.number:.1f} m/s"
        if_no = "go on only if you measure again before each lighting"
        lines.append(GoLine(group="Weather", asks=asks, if_no=if_no))
    return lines


def _needed_things(plan: SafetyPlan) -> list[str]:
    """Towels, blankets and buckets that the rules ask for, with how many."""
    lines = []
    for kind, (one, several) in _THINGS.items():
        needed = plan.book.needed(kind, plan.lit_at_once)
        if needed:
            lines.append(f"{needed[0]} {one if needed[0] == 1 else several}")
    return lines


def _rounds(plan: SafetyPlan) -> tuple[float, ...]:
    """When the fire watch walks the area, from the last flame to its end [s]."""
    watch = plan.book.strictest("fire-watch")
    long = watch.number if watch else 0.0
    rounds = [WATCH_ROUND * k for k in range(math.ceil(long / WATCH_ROUND))]
    return (*rounds, long)


def _set_out(show: Staged, plan: SafetyPlan) -> tuple[str, ...]:
    tools = len(show.show.venue.extinguishers)
    lines = (
        [f"{tools} {'extinguisher' if tools == 1 else 'extinguishers'} in position"]
        if tools
        else []
    )
    lines += [f"at least {thing} in total" for thing in _needed_things(plan)]
    if any(each.equipment for each in show.show.crew):
        lines.append("each post’s own things, as on its page")
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
            f"including {FUEL_RESERVE * 100:.0f} % spare; about {plan.fuel.spun_off * 1000:.2f} L is left over as waste"
        )
    return tuple(lines)


def _log() -> tuple[str, ...]:
    """What is written down after the show, besides the burns and the rounds of the fire watch."""
    return (
        "date, place, weather, gusts at prop height",
        "who was there and in what role",
        "no-go: which line, when, what was done",
        "stops called: by whom, when, why",
        "near misses, burns, first aid",
        "fuel brought, used, taken home; waste",
        "to change before the next show",
    )


def _light_text(light: Light) -> str:
    spare = light.spare_s
    text = "burning time unknown" if spare is None else f"{math.floor(spare)} s to spare at the end"
    again = ", with the second soaked set, never the hot wick" if light.burn.second_set else ""
    return f"{light.burn.who}, from {moment_words(light.at_s)}: {text}{again}"


def _cited(book: RuleBook, kind: str) -> str:
    rules = book.all(kind)
    return rules[-1].citation if rules else "common practice"
