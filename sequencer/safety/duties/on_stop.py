"""What everybody does on the stop call: the usual duties, those that the show gives, and who calls for help.

Common practice; a show's own agreement replaces it, role by role.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from sequencer.show.file_records.evening import Role, StopCall
from sequencer.show.model import Show

# The stop call, as every page says it: nobody waits for anybody before going to a person on fire.
AT_ONCE = "Operator cuts the sound; spotters go at once, both at the same time."
CALL_FOR_HELP = ("anybody hurt or on fire: call for help at once; tell the lead", "name the gate")


@dataclass(frozen=True, slots=True, kw_only=True)
class Stop:
    """What one role or person does on the stop call."""

    role: str
    does: tuple[str, ...]


def stop_of(show: Show, lit: int) -> tuple[Stop, ...]:
    """What everybody of a show does on the stop call; see `stop_call`."""
    leads = [post.name for post in show.crew if post.duty == "lead"]
    return stop_call(lit, show.stop_call, caller=show.emergency.caller, leads=leads)


def stop_call(
    lit: int,
    call: StopCall | None = None,
    *,
    caller: str | None = None,
    leads: Sequence[str] = (),
) -> tuple[Stop, ...]:
    """What everybody does on the stop call; without fire there is no flame to put out.

    Duties given in the show for a role replace the usual ones; people given by name come last, and so does the caller
    on the emergency card, who waits for nobody's word.

    Parameters
    ----------
    lit : int
        How many are lit at once.
    call : StopCall, optional
    caller : str, optional
        As on the emergency card; without one the lead calls for help.
    leads : sequence of str
        Who leads.

    Notes
    -----
    Source: common practice; a shared stop word, juggling society, Dublin [A37; read].
    """
    agreed = (call or StopCall()).does
    is_other = caller is not None and not any(_is_named(who, caller) for who in leads)
    usual = _usual(lit > 0, caller if is_other else None)
    roles = tuple(Stop(role=each.role, does=agreed.get(each.role, each.does)) for each in usual)
    known = {each.role for each in usual}
    persons = {name: does for name, does in agreed.items() if name not in known}
    if caller is not None and is_other:
        persons[caller] = (*persons.get(caller, ()), *CALL_FOR_HELP)
    return (*roles, *(Stop(role=name, does=does) for name, does in persons.items()))


def agreed_on_stop(call: StopCall, who: str | None, role: Role) -> tuple[str, ...]:
    """What the show says a person, or else their role, does on the stop call; empty if it says nothing."""
    return call.does.get(who or "", call.does.get(role, ()))


def own_on_stop(show: Show, lit: int, who: str | None, role: Role) -> tuple[str, ...]:
    """What one person of a role does on the stop call, with calling for help if the emergency card names them.

    Parameters
    ----------
    show : Show
    lit : int
        How many are lit at once in the show.
    who : str or None
        None: somebody who is not named in the show.
    role : str
    """
    caller = show.emergency.caller
    parts = {part.role: part.does for part in stop_of(show, lit)}
    own = agreed_on_stop(show.stop_call, who, role) or parts[role]
    calls = who is not None and caller is not None and _is_named(who, caller)
    if not calls or role == "lead":  # a lead who is the caller has it among the usual duties
        return own
    return (*own, *CALL_FOR_HELP)


def _is_named(who: str, text: str) -> bool:
    """Whether a text has a name as a whole word."""
    return re.search(rf"(?<!\w){re.escape(who)}(?!\w)", text, re.IGNORECASE) is not None


def _help(caller: str | None) -> tuple[str, ...]:
    """What the lead does so that help is called."""
    if caller is not None:
        return (f"check that {caller} is calling for help",)
    return (CALL_FOR_HELP[0].removesuffix("; tell the lead"), *CALL_FOR_HELP[1:])


def _usual(flame: bool, caller: str | None) -> tuple[Stop, ...]:
    performer: tuple[str, ...] = ("stand still", "let the heads hang away from you and everybody")
    spotter: tuple[str, ...] = ("go to your performer at once",)
    lighter: tuple[str, ...] = ("stay clear",)
    if flame:
        performer = (
            "stop the props, low, away from everybody",
            "stay where you are seen; your spotter comes",
            "clothes alight: lie down, do not run",
        )
        spotter = (
            "go to your performer at once",
            "wait for nobody",
            "smother from the head down",
        )
        lighter = ("put out the torch", "light nobody")
    return (
        Stop(
            role="everybody",
            does=("shout the stop word as soon as you see danger", "repeat it when you hear it"),
        ),
        Stop(
            role="operator",
            does=(
                "cut the sound at once",
                "bring the stage light to full, white",
                "stay at the desk",
            ),
        ),
        Stop(role="performer", does=performer),
        Stop(role="spotter", does=spotter),
        Stop(role="perimeter", does=("keep everybody out", "clear the exits and the way for help")),
        Stop(role="fuel keeper", does=("shut every can", "stay with the fuel, hand out nothing")),
        Stop(role="lighter", does=lighter),
        Stop(
            role="lead",
            does=(
                *_help(caller),
                "decide: go on, end, or clear the place",
                "count everybody",
                "note the time",
            ),
        ),
    )
