"""How one body dances a pattern, and how much room is left, in a performer's words."""

from collections.abc import Mapping
from fractions import Fraction
from math import ceil, floor, inf, isfinite, log10

from sequencer.geometry.bodies import Side
from sequencer.motion.fitting.fits import Fit
from sequencer.motion.fitting.windows import Window, Windows, short_of
from sequencer.motion.patterns.library import Pattern
from sequencer.motion.patterns.parameters import ParameterValue
from sequencer.motion.patterns.timing_words import timing_words
from sequencer.motion.performers.feasibility import GAP_ERROR, REACH_ERROR
from sequencer.motion.props.prop import Prop
from sequencer.outputs.patterns.one_pattern import OnePattern
from sequencer.outputs.words.posture_words import posture_words
from sequencer.outputs.words.station_words import clock_words

MOVES: Mapping[str, tuple[str, str]] = {
    "across": ("farther out", "farther in"),
    "ahead": ("farther ahead", "nearer"),
    "up": ("higher", "lower"),
}
SIZES: Mapping[str, str] = {"hand_radius": "hand circle", "size": "half the width of the path"}
_SPARE = 0.02  # [m] below which a prop is too close to something it should not touch


def who_words(one: OnePattern) -> str:
    """Body, prop, tempo, and the timing and direction of the two hands."""
    hands = f", {timing_words(one.dance.timing, one.dance.direction)}"
    return f"{body_words(one)} at {one.tempo:g} beats a minute{hands if len(one.sides) > 1 else ''}"


def body_words(one: OnePattern) -> str:
    """Body and prop."""
    return f"{one.body.stature:.2f} m tall with {prop_words(one.prop, len(one.sides))}"


def prop_words(prop: Prop, hands: int) -> str:
    """The prop and its length."""
    if prop.kind in ("staff", "club"):
        size = f"{100 * (prop.length + prop.behind):.0f} cm"
    else:
        size = f"{100 * prop.length:.0f} cm"
    plural = {"poi": "poi", "staff": "a pair of staffs"}.get(prop.kind, f"{prop.kind}s")
    return f"{plural if hands > 1 else f'one {prop.kind}'} of {size}"


def danced_words(one: OnePattern, *sides: Side) -> list[str]:
    """What differs from the pattern's usual place, one line each; a single line if nothing does.

    For both hands, or for those named.
    """
    lines = [*values_words(one, *sides), lower(posture_words(one.posture))]
    return [line for line in lines if line] or ["in its usual place"]


def values_words(one: OnePattern, *sides: Side) -> list[str]:
    """Where the hands dance it, if not in the usual place; one line per hand if they differ."""
    by_side = {
        side: _values_words(one.fit.values.get(side, {}), one.pattern)
        for side in sides or one.sides
    }
    if len(set(by_side.values())) == 1:
        return [words for words in by_side.values() if words][:1]
    return [f"{side} hand: {words or 'in its usual place'}" for side, words in by_side.items()]


def cycle_words(one: OnePattern) -> str:
    """Beats of one hand cycle, and the usual number."""
    plural = "" if one.cycle == 1 else "s"
    usual = "" if one.cycle == one.usual_beats else f" (usually {number_words(one.usual_beats)})"
    return f"{number_words(one.cycle)} beat{plural}{usual}"


def number_words(value: float) -> str:
    """A number of beats: thirds as a fraction such as 8/3, which a show file accepts too."""
    third = Fraction(value).limit_denominator(12)
    plain = f"{value:g}"
    return plain if len(plain) <= 5 or abs(third - Fraction(value)) > 1e-6 else f"{third}"


def margin_words(fit: Fit, *, flexible: bool = False) -> str:
    """The gaps that are left; empty if nothing is near. A flexible prop keeps them as drawn, not as it flies."""
    margins = fit.margins
    gaps = [
        f"{short(room)} {what}"
        for room, what in ((margins.body, "from your own body"), (margins.other, "between the two props"))
        if room != inf
    ]  # fmt: skip
    keeps = "as drawn, the prop keeps" if flexible else "the prop keeps"
    return f"{keeps} {' and '.join(gaps)}" if gaps else ""


def verdict(fit: Fit) -> str:
    """Why a fit fails, or is tighter than it should be; empty if it is good.

    It fails where the checks would report it, beyond their tolerance.
    """
    margins = fit.margins
    near = min(margins.body, margins.other)
    if near < -GAP_ERROR or margins.reach < -REACH_ERROR or margins.pull <= 0:
        return f"does not fit: {short_of(fit) or 'the tether goes slack'}"
    if near < 0:
        return f"only just: the prop brushes the {'body' if margins.body <= near else 'other prop'}"
    if near < _SPARE:
        return f"only just: {short_of(fit)}"
    return "only just: the arm is almost straight" if margins.reach < 0 else ""


def window_lines(found: Windows) -> list[str]:
    """One line per parameter: the range in which it fits, with all others unchanged."""
    wide = max((len(name) for name in found.windows), default=0)
    return [f"{window.name:<{wide}}  {_window(window)}" for window in found.windows.values()]


def opens_words(found: Windows) -> str:
    """Changes that would make room where there is none."""
    if found.fit.fits:
        return ""
    if not found.opens:
        return "none of the changes tried makes room"
    return f"it would fit with {', or with '.join(found.opens)}"


def short(length: float) -> str:
    """A length as people say it, rounded down: millimetres under 1 cm."""
    mm = floor(1000 * length + 1e-6)
    return f"{mm} mm" if mm < 10 else f"{mm // 10} cm"


def two_figures_up(value: float) -> str:
    """A number that is not negative, rounded up to two figures."""
    if value <= 0:
        return "0"
    step = 10.0 ** (floor(log10(value)) - 1)
    up = (
        ceil(value / step - 1e-9) * step
    )  # 1e-9: a value that is exact but for rounding stays as it is
    return f"{up:.{max(1 - floor(log10(up) + 1e-9), 0)}f}"


def lower(text: str) -> str:
    """A sentence as a clause of another."""
    return text[:1].lower() + text[1:].removesuffix(".")


def _window(window: Window) -> str:
    low, high = (centimetres(each) for each in (window.low, window.high))
    span = f"{low} cm only" if low == high else f"{low} to {high} cm"
    if abs(window.apart) < 5e-4:
        return span
    more = "more" if window.apart > 0 else "less"
    return f"{span} (left hand {centimetres(abs(window.apart))} cm {more})"


def centimetres(length: float) -> str:
    """Centimetres, with one decimal if it is not zero."""
    return f"{round(100 * length, 1) + 0.0:g}"


def _values_words(values: Mapping[str, ParameterValue], pattern: Pattern) -> str:
    """The placing that was found for one hand."""
    usual = {parameter.name: parameter.default for parameter in pattern.parameters}
    parts = [
        f"{words} {centimetres(float(values[name]))} cm "
        f"(usually {centimetres(float(usual.get(name) or 0.0))} cm)"
        for name, words in SIZES.items()
        if name in values
    ]
    moves = {
        name: float(values[name]) - float(usual.get(name) or 0.0)
        for name in MOVES
        if name in values
    }
    moved = [
        f"{centimetres(abs(move))} cm {MOVES[name][move < 0]}"
        for name, move in moves.items()
        if move
    ]
    if moved:
        parts.append(f"{', '.join(moved)} than usual")
    if "from" in values:
        parts.append(
            f"start the circle at {clock_words(float(values['from']))} "
            f"(from {float(values['from']):g}°, usually {float(usual.get('from') or 0.0):g}°)"
        )
    covered = {*SIZES, *MOVES, "from"}
    for parameter in pattern.parameters:
        if parameter.name in values and parameter.name not in covered:
            unit = {"angle": "°", "length": " m"}.get(parameter.kind, "")
            value, default = values[parameter.name], parameter.default
            parts.append(
                f"{parameter.name} {_plain(value)}{unit} (usually {_plain(default)}{unit})"
            )
    return ", ".join(parts)


def _plain(value: ParameterValue | None) -> str:
    return f"{value:g}" if isinstance(value, float) else str(value)


def finite(value: float) -> float | None:
    """A number that JSON can hold."""
    return value if isfinite(value) else None
