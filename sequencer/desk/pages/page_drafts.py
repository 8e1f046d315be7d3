"""Drafts that a page asks for: begun, told, stopped, and laid into the show as one step."""

from collections.abc import Mapping
from typing import Any

from sequencer.desk.connection.page_values import all_errors
from sequencer.desk.processes.draft_errand import draft_offer
from sequencer.desk.processes.errand import Errand
from sequencer.desk.processes.worker_link import AnswerError
from sequencer.desk.show_server import DRAFT, ShowServer
from sequencer.errors import InputError, Place

_LARGEST_SEED = 2**31


async def draft_values(server: ShowServer, _given: Mapping[str, Any]) -> dict[str, Any]:
    """How far the draft is, and what it offers."""
    errand = server.errands.get(DRAFT)
    if errand is None:
        return {"state": "none"}
    given = errand.given
    offer = None
    if errand.result is not None:
        offer = {key: value for key, value in errand.result.items() if key != "text"}
        offer["new"] = errand.result["text"] != given["base"]
    return {
        **errand.values(),
        "asked": {key: given[key] for key in ("section", "span", "another", "seed")},
        "older": server.opened.text != given["base"],  # the show has been changed since
        "offer": offer,
    }


async def begin_draft(server: ShowServer, given: Mapping[str, Any]) -> dict[str, Any]:
    """Begin to draft; a draft that is under way is given up.

    Raises
    ------
    InputError
        If what is asked for is not understood.
    AnswerError
        If the text is no show, or its song is not there.
    """
    asked = _asked(given)
    fault = server.opened.read.fault
    if fault is not None:
        raise AnswerError(all_errors(fault, server.opened.path.name)[0])
    base = text = server.opened.text
    known = server.errands.get(DRAFT)
    offered = known is not None and known.result is not None and known.given["base"] == base
    if asked["another"] and offered and known is not None:
        # Another one than the one that is offered; what is laid in the end is one step all the same.
        text = known.result["text"]
    server.begin_errand(
        DRAFT, draft_offer, {**asked, "path": str(server.opened.path), "text": text, "base": base}
    )
    return await draft_values(server, given)


async def stop_draft(server: ShowServer, given: Mapping[str, Any]) -> dict[str, Any]:
    """Stop drafting: with `keep` the best by then is offered, else it is given up."""
    errand = server.errands.get(DRAFT)
    if errand is not None and given.get("keep"):
        errand.stop()
    else:
        server.drop_errand(DRAFT)
    return await draft_values(server, given)


async def lay_draft(server: ShowServer, given: Mapping[str, Any]) -> dict[str, Any]:
    """Lay the draft that is offered, as one step.

    Raises
    ------
    InputError
        If that draft is not offered any more, or what it touches has been changed meanwhile.
    AnswerError
        If the show cannot be staged with it and with what has been changed meanwhile.
    """
    errand = server.errands.get(DRAFT)
    if errand is None or errand.result is None or given.get("number") != errand.number:
        raise InputError(
            "conflict", Place(server.opened.path.name), "this draft is not there any more", "draft again"
        )  # fmt: skip
    state = await server.bring(errand.given["base"], errand.result["text"], _words(errand))
    server.drop_errand(DRAFT)
    return state


def _words(errand: Errand) -> str:
    given = errand.given
    if given["section"] is not None:
        where = f" for {given['section']}"
    elif given["span"] is not None:
        where = f" from {given['span'][0]} to {given['span'][1]}"
    else:
        where = ""
    checked = "" if errand.result["checked"] else ", not checked"
    return f"draft a routine{where}{checked}"


def _asked(given: Mapping[str, Any]) -> dict[str, Any]:
    section, span = given.get("section"), given.get("span")
    seed, another = given.get("seed", 0), given.get("another", False)
    if section is not None and not isinstance(section, str):
        raise _bad("'section' is a section's name")
    if span is not None and not _is_span(span):
        raise _bad("'span' is two moments")
    if span is not None and section is not None:
        raise _bad("'section' or 'span', not both")
    if not isinstance(another, bool):
        raise _bad("'another' is true or false")
    if not isinstance(seed, int) or isinstance(seed, bool) or not 0 <= seed < _LARGEST_SEED:
        raise _bad("'seed' is a whole number from 0 on")
    return {"section": section, "span": span, "another": another, "seed": seed}


def _is_span(span: object) -> bool:
    return isinstance(span, list) and len(span) == 2 and all(isinstance(one, str) for one in span)


def _bad(what: str) -> InputError:
    return InputError("bad-request", Place("request"), what, "see docs/desk.md")
