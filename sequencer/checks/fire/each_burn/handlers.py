"""Who lights and who puts out: somebody is named, and they are free for it then."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from sequencer.checks.fire.each_burn.busy import Busy, during
from sequencer.findings import Finding
from sequencer.geometry.regions import Point
from sequencer.safety.burns.burning import PlannedBurn
from sequencer.safety.burns.handling import seconds_words, walk_seconds
from sequencer.safety.safety_plan import SafetyPlan
from sequencer.staging.staged import Staged
from sequencer.timing.position import moment_words

ONE_TASK = "a spotter's only task is spotting; whoever keeps the fuel or the perimeter stays there: Grants Pass OR, 2019-08-29 [A5; read]; common practice"
_STAY = {
    "fuel keeper": "keeps the fuel, where no flame may be",
    "perimeter": "guards the perimeter and stays at it",
}  # duties that leave nobody free to light or put out
_EXACT = 1e-6  # [s]


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """One person lighting or putting out one performer."""

    who: str  # the performer
    by: str
    lights: bool  # lights; otherwise puts out
    start: float  # [s]
    end: float  # [s]
    place: Point
    burn: PlannedBurn

    @property
    def words(self) -> str:
        """What the person does: "lights Wren"."""
        return f"{'lights' if self.lights else 'puts out'} {self.who}"


def handler_findings(
    show: Staged, plan: SafetyPlan, busy: Mapping[str, Sequence[Busy]]
) -> list[Finding]:
    """Burns that nobody lights, and people who cannot light or put out then.

    Parameters
    ----------
    show : Staged
    plan : SafetyPlan
        Of that show.
    busy : mapping of performer to sequence of Busy
    """
    found = _nobody(show, plan)
    tasks = tasks_of(show, plan)
    for task in tasks:
        other = (
            "a lighter or the lead"
            if task.lights
            else "a spotter who watches nobody else then, the lighter or the lead, under put_out_by"
        )
        found += [
            _finding(
                show, task, f"{task.by} {task.words}, but {reason}", f"name another person: {other}"
            )
            for reason in _unfit(show, plan, busy, task)
        ]
    found += _two_places(show, plan, tasks)
    return found


def tasks_of(show: Staged, plan: SafetyPlan) -> tuple[Task, ...]:
    """Everything that people named do at lighting and putting out, by start."""
    floors = {dancer.name: dancer.floor for dancer in show.dancers}
    found = []
    for burn in plan.burns:
        spot = floors[burn.who].place_at(burn.start)
        if burn.lit_by is not None:
            lit = burn.alight_s + burn.lighting_s
            found.append(
                Task(who=burn.who, by=burn.lit_by, lights=True, start=burn.alight_s, end=lit,
                     place=burn.lit_at or spot, burn=burn)
            )  # fmt: skip
        if burn.put_out_by is not None:
            start = burn.end_s + burn.queue_s
            found.append(
                Task(who=burn.who, by=burn.put_out_by, lights=False, start=start, end=burn.out_s,
                     place=floors[burn.who].place_at(burn.end), burn=burn)
            )  # fmt: skip
    return tuple(sorted(found, key=lambda task: (task.start, task.end)))


def _nobody(show: Staged, plan: SafetyPlan) -> list[Finding]:
    """One finding for all who are lit at one moment by nobody."""
    groups: dict[float, list[PlannedBurn]] = {}
    for burn in plan.burns:
        if burn.lit_by is None:
            groups.setdefault(burn.start, []).append(burn)
    free = [post.name for post in show.show.crew if post.duty in {"lighter", "lead"}]
    mends = [f"write lit_by: {name} under fire, handling" for name in free]
    mends.append("add a lighter to the crew" + ("" if free else ": duty: lighter"))
    found = []
    for burns in groups.values():
        first = min(burn.alight_s for burn in burns)
        names = ", ".join(burn.who for burn in burns)
        each = seconds_words(plan.handling.light) + plan.handling.words("light")
        each += " each" if len(burns) > 1 else ""
        found.append(
            Finding(
                code="nobody-lights",
                severity="stop",
                who=tuple(burn.who for burn in burns),
                start=first,
                end=burns[0].start_s,
                position=show.position(burns[0].start),
                message=f"nobody is named to light {names}, from {moment_words(first)} to "
                f"{moment_words(burns[0].start_s)}, {each}",
                remedies=tuple(mends),
                source="whoever holds the props does not light them: common practice",
                where=burns[0].lit_at,
            )
        )
    return found


def _unfit(
    show: Staged, plan: SafetyPlan, busy: Mapping[str, Sequence[Busy]], task: Task
) -> Iterator[str]:
    """Why a person cannot do a task."""
    person = task.by.casefold()
    for post in show.show.crew:
        if post.name.casefold() == person and post.duty in _STAY:
            yield f"{task.by} {_STAY[post.duty]}"
    for name in show.show.names:
        if name.casefold() == person:
            yield from _performing(plan, busy, task, name)
    if not task.lights:
        yield from _watching_another(show, plan, task)
    else:
        for watch in plan.watch.of(task.by):
            start, end = show.seconds(watch.start), show.seconds(watch.end)
            if start < task.end - _EXACT and end > task.start + _EXACT:
                yield f"watches {watch.who}, who is alight from {moment_words(start)}"
                return


def _watching_another(show: Staged, plan: SafetyPlan, task: Task) -> Iterator[str]:
    """Another performer whose burn goes on while their spotter puts somebody out; who is to be put out next waits."""
    for watch in plan.watch.of(task.by):
        for burn in plan.burns:
            if watch.who != burn.who or burn.who == task.who:
                continue
            first = max(show.seconds(watch.start), burn.alight_s, task.start)
            if min(show.seconds(watch.end), burn.end_s, task.end) > first + _EXACT:
                yield f"watches {watch.who} then, who burns on until {moment_words(burn.end_s)}"
                return


def _performing(
    plan: SafetyPlan, busy: Mapping[str, Sequence[Busy]], task: Task, name: str
) -> Iterator[str]:
    """What keeps a performer from lighting or putting out."""
    if name == task.who:
        yield "their own hands hold the burning props"
        return
    for burn in plan.burns:
        if burn.who != name:
            continue
        if burn.alight_s < task.end - _EXACT and burn.out_s > task.start + _EXACT:
            alight, out = moment_words(burn.alight_s), moment_words(burn.out_s)
            yield f"{name} is alight from {alight} to {out}"
    for each in during(busy[name], task.start, task.end)[:1]:
        yield f"{name} {each.words} until {moment_words(each.end)}"


def _two_places(show: Staged, plan: SafetyPlan, tasks: Sequence[Task]) -> list[Finding]:
    """People who have to be with two performers at once, or with the next before they can be there."""
    walk = walk_seconds(plan.ground)
    last: dict[str, Task] = {}
    found = []
    for task in tasks:
        before = last.get(task.by.casefold())
        last[task.by.casefold()] = task
        if before is None:
            continue
        way = walk(before.place, task.place)
        if before.end + way > task.start + _EXACT:
            found.append(
                _finding(
                    show, task,
                    f"{task.by} {before.words} until {moment_words(before.end)} and {task.words} from "
                    f"{moment_words(task.start)}; the way there is {seconds_words(way)} of slow walk",
                    f"let another person {'light' if task.lights else 'put out'} {task.who}",
                )
            )  # fmt: skip
    return found


def _finding(show: Staged, task: Task, message: str, mend: str) -> Finding:
    beat = task.burn.start if task.lights else task.burn.end
    return Finding(
        code="lighter-unfit" if task.lights else "put-out-unfit",
        severity="stop",
        who=(task.by, task.who),
        start=task.start,
        end=task.end,
        position=show.position(beat),
        message=message,
        remedies=(mend,),
        source=ONE_TASK,
        where=task.place,
    )
