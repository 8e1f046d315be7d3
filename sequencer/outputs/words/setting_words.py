"""What is set for a pattern, as one performer tells another: "hands go 60 % as wide as usual" instead of `width 0.6`."""

from collections.abc import Callable, Mapping
from typing import Any

from sequencer import units
from sequencer.outputs.words.block_words import parameters_text

# Told by the words for each hand (its plane, its direction) and by where the hands are: not again by their names.
TOLD_AS_DANCED = ("plane", "turn", "way", "start", "from")
PATH_PARAMETERS = ("hand_radius", "size", "across", "ahead", "up")
_CROSSES = {"front": "in front", "behind": "behind the back", "overhead": "over the head"}
_ALONG = {"infinity": "a lying eight", "box": "a square", "diamond": "a square on its corner"}
_TOWARDS = {
    "own": "turn towards the spinning hand’s own side",
    "left": "turn to the left",
    "right": "turn to the right",
}


def setting_words(parameters: Mapping[str, Any], *, places: bool = False) -> list[str]:
    """One phrase for each parameter that is set, in their order.

    Parameters
    ----------
    parameters : mapping
        By name, as the show file has them; a bare number is metres or degrees.
    places : bool
        Whether sizes and places of the hands' paths are told too.

    Notes
    -----
    Planes and directions are left out: they are told as they are danced. A parameter of one's own
    pattern is told by its name. Source: the parameters' definitions (docs/library.md), common practice.
    """
    out = []
    for name, value in parameters.items():
        if name in TOLD_AS_DANCED or (name in PATH_PARAMETERS and not places):
            continue
        try:
            words = _PHRASES[name](value) if name in _PHRASES else ""
        except (ValueError, KeyError):
            words = ""
        out.append(words or parameters_text({name: value}))
    return out


def _count(value: Any) -> float:
    top, slash, bottom = str(value).partition("/")
    return float(top) / float(bottom) if slash else float(top)


def _degrees(value: Any) -> float:
    return units.quantity(value, units.ANGLES, default="°")


def _centimetres(value: Any) -> int:
    return round(100 * units.quantity(value, units.LENGTHS, default="m"))


def _lobes(value: Any) -> str:
    return f"{_count(value):g} {'lobe' if _count(value) == 1 else 'lobes'}"


def _ratio(value: Any) -> str:
    many = abs(_count(value))
    way = "against the hand" if _count(value) < 0 else "with the hand"
    return f"prop turns {_times(many)} a round, {way}"


def _times(many: float) -> str:
    return {1.0: "once", 2.0: "twice"}.get(many, f"{many:g} times")


def _loops(value: Any) -> str:
    many = abs(_count(value))
    way = ", against the hand" if _count(value) < 0 else ""
    return f"{many:g} {'loop' if many == 1 else 'loops'} a round{way}"


def _angle(value: Any, lead: str, more: str, less: str, none: str) -> str:
    """An angle with its direction: "prop 45° ahead of the arm"."""
    angle = _degrees(value)
    return f"{lead} {abs(angle):g}° {more if angle > 0 else less}" if angle else f"{lead} {none}"


def _lag(value: Any) -> str:
    return _angle(value, "prop", "ahead of the arm", "behind the arm", "in line with the arm")


def _yaw(value: Any) -> str:
    return _angle(value, "plane turned", "to your left", "to your right", "to neither side")


def _lead(value: Any) -> str:
    return _angle(value, "prop", "ahead of its usual place", "behind its usual place", "in its usual place")  # fmt: skip


def _arm(value: Any, where: str) -> str:
    return _angle(value, "arm", f"above level at its {where}", f"below level at its {where}", f"level at its {where}")  # fmt: skip


def _shape(value: Any) -> str:
    return f"hand goes along {_ALONG.get(str(value)) or f'a {value}'}"


def _moved(value: Any, more: str, less: str, usual: str) -> str:
    far = _centimetres(value)
    return (
        f"{abs(far)} cm {more if far > 0 else less} than usual" if far else f"as {usual} as usual"
    )


def _swing(value: Any) -> str:
    way = "towards" if _degrees(value) >= 0 else "away from"
    return f"plane turns {abs(_degrees(value)):g}° {way} the wall plane as the hand crosses"


def _apart(value: Any) -> str:
    return _moved(value, "farther from the body", "nearer to the body", "far from the body")


_PHRASES: dict[str, Callable[[Any], str]] = {
    "lobes": _lobes,
    "bend": lambda value: f"{value}-bend",
    "begin": lambda value: f"begins at an {value}",
    "ratio": _ratio,
    "loops": _loops,
    "tether": lambda value: f"{_centimetres(value)} cm from hand to head",
    "lag": _lag,
    "yaw": _yaw,
    "lead": _lead,
    "width": lambda value: f"{100 * _count(value):.0f} % as wide as usual",
    "swing": _swing,
    "lean": lambda value: f"plane leans {_degrees(value):g}° as the hand passes overhead",
    "low": lambda value: _arm(value, "lowest"),
    "high": lambda value: _arm(value, "highest"),
    "amplitude": lambda value: f"swings {_degrees(value):g}° to either side",
    "place": lambda value: f"hand crosses {_CROSSES[value]}",
    "shape": _shape,
    "towards": lambda value: _TOWARDS[value],
    "apart": _apart,
    "hand_radius": lambda value: f"hand’s circle {_centimetres(value)} cm in radius",
    "size": lambda value: f"hand’s path {2 * _centimetres(value)} cm across",
    "across": lambda value: _moved(value, "farther out", "farther in", "far out"),
    "ahead": lambda value: _moved(value, "farther ahead", "farther back", "far ahead"),
    "up": lambda value: _moved(value, "higher", "lower", "high"),
}
