"""What a page's form says of a show that is to be begun: looked at before the song is heard, each value by the name of its field."""

from typing import Any

from pydantic import TypeAdapter, ValidationError

from sequencer.errors import InputError, Place
from sequencer.motion.props.prop import PROP_KINDS
from sequencer.show.file_records.field_kinds import Length
from sequencer.show.file_records.performer_record import STATURES, Performer
from sequencer.units import QuantityError

_MOST_DANCERS = 40
_LEVELS = (1, 2, 3, 4, 5)
_LENGTH: TypeAdapter[float] = TypeAdapter(Length)
_FIELDS = {"name": "name", "stature": "height"}  # as a person calls them
_MENDS = {
    "name": "write a name as it is to be printed",
    "stature": f"write the body height, {STATURES[0]:g} to {STATURES[1]:g} m, as in 1.70 m, 170 cm or 5 ft 7 in",
}


def form_cast(given: Any) -> list[dict[str, Any]]:
    """Who dances, as a form says it.

    Parameters
    ----------
    given : any
        JSON: a list of mappings with `name`, `stature`, `prop` and `level`.

    Raises
    ------
    InputError
        If nobody dances, a name is missing or is there twice, or somebody cannot be so; the place is the field's name.
    """
    if not isinstance(given, list) or not 0 < len(given) <= _MOST_DANCERS:
        raise InputError(
            "nobody", Place("cast"), "nobody dances yet", "name at least one performer"
        )
    cast = [_dancer(each) for each in given]
    names = [each["name"] for each in cast]
    twice = next((name for name in names if names.count(name) > 1), None)
    if twice is not None:
        raise InputError(
            "same-name", Place("cast"), f"two are called {twice}", "give each a name of their own"
        )
    return cast


def form_floor(given: Any) -> list[str]:
    """The width and the depth of the floor, as a form says them.

    Parameters
    ----------
    given : any
        JSON: a list of two lengths in words.

    Raises
    ------
    InputError
        If one is no length; the place is the field's name.
    """
    if not isinstance(given, list) or len(given) != 2 or not all(isinstance(x, str) for x in given):
        raise bad_request("'floor' is a width and a depth, in words")
    for name, words in zip(("width", "depth"), given, strict=True):
        try:
            _LENGTH.validate_python(words.strip())
        except ValidationError as error:
            mend = "write a length, as in 8 m or 26 ft"
            raise _fault(f"The floor's {name}", error, mend) from None
    return [each.strip() for each in given]


def bad_request(what: str) -> InputError:
    """What no page asks."""
    return InputError("bad-request", Place("request"), what, "see docs/desk.md")


def _dancer(given: Any) -> dict[str, Any]:
    if not isinstance(given, dict):
        raise bad_request("each of 'cast' is an object")
    name, stature = given.get("name"), given.get("stature")
    prop, level = given.get("prop", "poi"), given.get("level", 2)
    if not isinstance(name, str) or not isinstance(stature, str):
        raise bad_request("'name' and 'stature' are words")
    if not name.strip():
        raise InputError(
            "no-name", Place("cast"), "somebody has no name", "write it, or take them out"
        )
    if prop not in PROP_KINDS:
        raise bad_request(f"'prop' is one of {', '.join(PROP_KINDS)}")
    if level is not None and level not in _LEVELS:
        raise bad_request("'level' is 1 to 5")
    said = {"name": name.strip(), "stature": stature.strip(), "prop": prop}
    try:
        Performer.model_validate(said)
    except ValidationError as error:
        key = str(next(iter(error.errors()[0]["loc"]), ""))
        whose = "name" if key == "name" else f"{name.strip()}'s {_FIELDS.get(key, key or prop)}"
        raise _fault(whose, error, _MENDS.get(key, "choose another one")) from None
    return {**said, "level": level}


def _fault(field: str, error: ValidationError, mend: str) -> InputError:
    first = error.errors()[0]
    what = first["msg"].removeprefix("Value error, ")
    cause = first.get("ctx", {}).get("error")
    if isinstance(cause, QuantityError):  # it says itself how to mend it
        what, mend = cause.what, cause.mend
    return InputError("bad-value", Place(field), what, mend)
