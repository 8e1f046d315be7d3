"""A practice plan in words that the screen and the page share: exercises, steps, drifts, burns, lines for the show."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal
from urllib.parse import quote, urlencode

from sequencer.errors import written_out
from sequencer.outputs.practice_pages.lines_for_show import show_lines
from sequencer.practice.exercises import Exercise
from sequencer.practice.logged_burns import BurnBelief
from sequencer.practice.logged_spreads import ToldDrift
from sequencer.practice.place_drift import drift_words
from sequencer.practice.practice_plan import PracticeItem, PracticePlan
from sequencer.practice.practice_steps import ExerciseState, PracticeStep
from sequencer.practice.practice_weeks import PracticeWeek
from sequencer.shell_words import shell_path
from sequencer.staging.staged import Staged
from sequencer.timing.position import clock_text
from sequencer.units import counted, length_words

PAGE_OF_LOOPS = "rehearsal.html"  # beside the plan's own page
ADVICE = (
    "Each exercise first slow, then at tempo, both unlit; lit comes last and brings nothing new. A step is done when 8 of the last 10 "
    "tries were clean (lit: 3 of 3). Change the exercise after some minutes, and come back to it."
)
ADVICE_SOURCE = (
    "Unlit before lit, nothing new when lit: North American fire-arts guidelines 2.1/3.0 (read). Changing between exercises: "
    "Shea and Morgan 1979 (from memory). The rest is common practice."
)
_MOST_NAMED = 3
_MOST_WEEKS = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanEdition:
    """A plan with all that a print-out of it needs."""

    show: Staged
    plan: PracticePlan
    show_path: str  # as it was typed
    log_path: str
    log_name: str  # beside the show
    loops: Literal[
        "there", "older", "missing"
    ]  # the rehearsal page, and whether the show was changed after it

    checked: bool | None = (
        None  # what the checks said of the show as it stands; None: they were not run
    )

    @property
    def title(self) -> str:
        """Whose plan of which show it is."""
        whose = (
            f" for {_listed(self.plan.who)}"
            if len(self.plan.who) < len(self.show.show.names) or len(self.plan.who) == 1
            else ""
        )
        return f"Practice{whose}: {self.show.show.title}, version {self.show.show.version}"

    @property
    def alone(self) -> bool:
        """Whether the plan is one performer's."""
        return len(self.plan.who) == 1


def checked_words(edition: PlanEdition) -> str:
    """What the checks say of the show, since a plan asks them nothing; empty if it can be danced."""
    check = f"sequencer check {shell_path(edition.show_path)}"
    if edition.checked is None:
        return f"Not checked here: {check} says whether it can be danced."
    lit = "" if edition.show.show.fire is None else " LIT"
    return (
        ""
        if edition.checked
        else f"DO NOT DANCE THIS{lit} YET: something must be mended first, see {check}"
    )


def loops_words(edition: PlanEdition) -> str:
    """What has to be done before the loops open; empty if nothing."""
    again = f"sequencer rehearse {shell_path(edition.show_path)} --only page"
    if edition.loops == "older":
        return f"{PAGE_OF_LOOPS} is older than the show, write it anew: {again}"
    return (
        f"The loops need {PAGE_OF_LOOPS} beside it: {again}" if edition.loops == "missing" else ""
    )


def nothing_left(plan: PracticePlan) -> str:
    """Why a plan has no exercises."""
    if not plan.done:
        return "There is nothing to practise yet: nothing is spun."
    return "Nothing is left to practise: every exercise came off, lit where it is lit in the show."


def span_text(show: Staged, exercise: Exercise) -> str:
    """The loop's bars: "24.1 – 27.1"."""
    return f"{show.position(exercise.start)} – {show.position(exercise.end)}"


def loop_address(show: Staged, exercise: Exercise, step: PracticeStep) -> str:
    """Address of the rehearsal page at a loop, at the step's speed and repeated."""
    asked = {
        "from": show.position(exercise.start),
        "until": show.position(exercise.end),
        "speed": f"{100 * step.speed:.0f}",
        "for": exercise.who,
    }
    return f"{PAGE_OF_LOOPS}#{urlencode(asked, quote_via=quote)}"


def item_words(edition: PlanEdition, item: PracticeItem) -> str:
    """Why it is there and where else: one line below its title."""
    show, exercise = edition.show, item.exercise
    words = [exercise.why]
    if exercise.canon:
        words.append("in canon")
    if exercise.also:
        shown = ", ".join(show.position(at) for at, _ in exercise.also[:_MOST_NAMED])
        more = len(exercise.also) - _MOST_NAMED
        words.append(f"also at {shown}{f' and {more} more' if more > 0 else ''}")
    if not edition.alone:
        names = [state.exercise.who for state in item.states]
        words.insert(0, "everybody" if len(names) == len(show.show.names) else _listed(names))
    return "; ".join(words)


def tries_words(state: ExerciseState) -> str:
    """How the last tries at the next step came off: "6 of 8"; a dash if there were none."""
    return f"{state.clean} of {state.tried}" if state.tried else "–"


def next_words(item: PracticeItem) -> str:
    """The step that comes next, and of whom it is told if others are further."""
    step = item.behind.next_step
    words = "done" if step is None else step.words
    return f"{words} ({item.behind.exercise.who})" if item.all_behind else words


def behind_words(item: PracticeItem) -> str:
    """Who is behind, at which step; empty if all are at the same."""
    step = item.behind.next_step
    if not item.all_behind or step is None:
        return ""
    verb = "is" if len(item.all_behind) == 1 else "are"
    return f"{_listed(item.all_behind)} {verb} behind: next {step.words}"


def week_cells(week: PracticeWeek) -> tuple[str, ...]:
    """A week's figures: from, days, tries, clean, at tempo, lit, off the place."""
    clean = "–" if week.share is None else f"{100 * week.share:.0f} %"
    off = "–" if week.drift is None else length_words(week.drift)
    tries = (str(each) for each in (week.at_tempo, week.lit))
    return (week.monday.isoformat(), str(week.days), str(week.tried), clean, *tries, off)


WEEK_HEADS = ("week from", "days", "tries", "clean", "at tempo", "lit", "off the place")


def last_weeks(plan: PracticePlan) -> Sequence[PracticeWeek]:
    """The weeks that are shown: the last ones, up to now."""
    return plan.weeks[-_MOST_WEEKS:]


def told_lines(edition: PlanEdition) -> list[str]:
    """What the log says besides the plan: drifts, burns, and lines that may be put into the show."""
    plan = edition.plan
    lines = [_drift_line(edition, each) for each in plan.drifts[:_MOST_NAMED]]
    if (more := len(plan.drifts) - _MOST_NAMED) > 0:
        lines.append(f"and {counted(more, 'more drift')}: --json has all")
    lines += [
        f"{each.who} is {counted(round(abs(each.late), 2), 'beat')} {'late' if each.late > 0 else 'early'} on average ({counted(each.timings, 'measured run')})"
        for each in plan.spreads
        if each.timings >= _MOST_NAMED and abs(each.late) >= edition.show.show.drift.timing
    ]
    lines += [burn_line(each) for each in plan.burns]
    lines += [
        f"For the show, if you agree: {line}"
        for line in show_lines(edition.show.show, plan, edition.log_name)
    ]
    if plan.outdated:
        lines.append(
            f"{counted(plan.outdated, 'line')} of the log {'is' if plan.outdated == 1 else 'are'} about what is no longer in the show: kept, and not counted for the exercises"
        )
    if plan.uncounted:
        lines.append(
            f"{counted(plan.uncounted, 'line')} of the log {'names' if plan.uncounted == 1 else 'name'} neither an exercise nor all of its loop: counted in the weeks, and for no exercise"
        )
    return lines


def burn_line(belief: BurnBelief) -> str:
    """What was timed against what the show counts on."""
    timed = belief.timed
    each = f"{belief.who}: {counted(timed.count, 'burn')} timed, median {_time(timed.middle)}, shortest {_time(timed.shortest)}; count on {_time(timed.counted_on)}"
    if belief.believed is None:
        return f"{each}. The show knows no burning time"
    basis = {"measured": "timed", "stated": "stated", "default": "nobody timed it"}[
        belief.believed.basis
    ]
    told = f"the show counts on {_time(belief.believed.seconds)} ({basis})"
    return f"{each}. {'TOO LONG: ' if belief.rosy else ''}{told}"


def _drift_line(edition: PlanEdition, drift: ToldDrift) -> str:
    canon = any(
        state.exercise.title.casefold() == drift.what.casefold() and state.exercise.canon
        for item in (*edition.plan.items, *edition.plan.done, *edition.plan.later)
        for state in item.states
        if state.exercise.who == drift.who
    )
    where = f" in {'the canon, ' if canon else ''}{written_out(drift.what)}" if drift.what else ""
    return f"{drift.who} drifts {drift_words(drift.mean)}{where} ({drift.that_way} of {counted(drift.runs, 'measured run')})"


def _time(seconds: float) -> str:
    return clock_text(float(int(seconds)), decimals=0)


def _listed(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
