"""A commented show file to start from, divided into the detected sections."""

import json
import re
from collections.abc import Sequence
from dataclasses import dataclass

from sequencer.show.drafted import flow_text
from sequencer.timing.form import section_mark, song_form, sure_word
from sequencer.timing.position import Position, clock_text
from sequencer.timing.song import Song
from sequencer.timing.tempo import TempoMap

LIT = 180.0  # [s] three quarters of the four minutes assumed in the starter's fire block
USUAL_FLOOR = ("8 m", "8 m")  # width and depth, to be put right
_NAMED = 4  # moments inside a section that are named as where another may begin
LINK = 2  # beats from one section's pattern to the next
STARTER_SPACING = (
    4.0  # [m] between neighbours until formations are drafted: more than twice what a poi reaches
)
_LENGTH = re.compile(r"\d[\d.]* ?[a-z]{0,4}")
_Part = tuple[str, int, int, float]  # name, first beat, last beat, energy


@dataclass(frozen=True, slots=True, kw_only=True)
class StarterDancer:
    """Who dances, as far as it is asked for at the beginning."""

    name: str
    stature: str = "1.70 m"  # as the file says it
    prop: str = "poi"
    level: int | None = 2


_SOMEBODY = StarterDancer(name="Performer")


def starter_text(
    song: Song,
    *,
    track: str,
    title: str,
    date: str,
    blocks: bool = True,
    cast: Sequence[StarterDancer] = (),
    floor: tuple[str, str] = USUAL_FLOOR,
) -> str:
    """A show file to start from.

    Parameters
    ----------
    song : Song
        The analysed song.
    track : str
        Path of the song relative to the show file's folder, with forward slashes.
    title : str
        Title of the show.
    date : str
        YYYY-MM-DD.
    blocks : bool
        Whether it has one easy pattern for each section; without, the timeline is empty, to be drafted.
    cast : sequence of StarterDancer
        One who is to be named if left out. Several stand in a line, which a draft may replace by formations of its own.
    floor : (str, str)
        Width and depth of the stage, as the file says them.

    Raises
    ------
    ValueError
        If no steady beat was found.
    """
    count = song.tempo_map()
    names = song.section_names()
    starts = [max(round(float(count.beats_from_seconds(part.start))), 0) for part in song.sections]
    ends = [*starts[1:], _last_beat(song)]
    parts = [
        (name, start, end, section.energy)
        for name, start, end, section in zip(names, starts, ends, song.sections, strict=True)
        if end > start
    ]
    inside = _inside(song)
    marks = "\n".join(
        f"      - {{from: {count.position_of(start)}, name: {_quoted(_label(name, song))}}}"
        f"   # {clock_text(float(count.seconds_from_beats(start)))}, energy {energy:.2f}{inside[name]}"
        for name, start, _, energy in parts
    )
    rows = [
        _block_lines(part, pattern, count, last=part is parts[-1])
        for part, pattern in zip(parts, _patterns(parts), strict=True)
    ]
    first, last = count.position_of(parts[0][1]), count.position_of(_dark(parts, count))
    return _TEXT.format(
        title=_quoted(title), date=date, track=_quoted(track), sha=song.sha256, tempo=f"{song.tempo:.1f}",
        metre=song.metre, duration=clock_text(song.duration), marks=marks,
        timeline=_BLOCKS + "\n".join(rows) if blocks else _DRAFTED,
        first=first, last=last, width=_measure(floor[0]), depth=_measure(floor[1]), cast=_cast_lines(cast or (_SOMEBODY,)),
        places=_places(cast or (_SOMEBODY,), first),
    )  # fmt: skip


def _inside(song: Song) -> dict[str, str]:
    """What is said of each section besides: how it returns, how sure its border is, what may begin inside it."""
    said = {}
    form = song_form(song)
    for part in form:
        section = part.section
        mark = section_mark(section)
        words = [f"{section.label} again, but varied ({mark})"] if section.variant else []
        if part is not form[0]:
            sure = sure_word(section.confidence) == "sure"
            words.append("surely a new part" if sure else "perhaps not a new part")
        if part.turns:
            words.append(f"another may begin at {_moments(song, part.turns)}")
        said[part.name] = "".join(f"; {word}" for word in words)
    return said


def _moments(song: Song, turns: Sequence[tuple[int, float]]) -> str:
    """The likeliest few, such as "1:52.1, 2:00.1 or 2:08.1": bars would be others once the count is put right."""
    likely = sorted(sorted(turns, key=lambda turn: -turn[1])[:_NAMED])
    *others, last = [clock_text(song.downbeats[bar - 1]) for bar, _ in likely]
    return f"{', '.join(others)} or {last}" if others else last


def _cast_lines(cast: Sequence[StarterDancer]) -> str:
    """Who dances; what can be said of everybody is explained with the first."""
    first, *others = cast
    rows = [_FIRST_DANCER.format(**_said(first), level=_level(first, _LEVELS_NOTE))]
    rows += [_DANCER.format(**_said(each), level=_level(each)) for each in others]
    return "\n".join(rows)


def _said(each: StarterDancer) -> dict[str, str]:
    note = _USUAL_POI if each == _SOMEBODY else ""
    return {
        "name": flow_text(each.name), "stature": _measure(each.stature), "prop": flow_text(each.prop),
        "usual": note,
    }  # fmt: skip


def _measure(text: str) -> str:
    """A length as a person wrote it; quoted if it is anything else."""
    return text if _LENGTH.fullmatch(text) else flow_text(text)


def _level(each: StarterDancer, note: str = "") -> str:
    return "" if each.level is None else f"\n    level: {each.level}{note}"


def _places(cast: Sequence[StarterDancer], first: Position) -> str:
    """Where everybody stands: side by side, as a formation that a draft may replace where they are several."""
    mark = ", drafted: true" if len(cast) > 1 else ""
    middle = (len(cast) - 1) / 2
    spots = [
        f"      {flow_text(each.name)}: {{at: [{STARTER_SPACING * (k - middle):g}, 4], facing: 0}}"
        + ("     # 0 faces the audience, 90 turns to the left" if k == 0 else "")
        for k, each in enumerate(cast)
    ]
    replaced = (
        "    drafted: true   # `sequencer draft` may replace it; take this line away to keep it\n"
    )
    head = "  start:\n" + (replaced if mark else "")
    return (
        f"formations:\n{head}    spots:\n" + "\n".join(spots)
        + f"\n\nstaging:\n  - {{formation: start, from: {first}{mark}}}"
    )  # fmt: skip


def _dark(parts: list[_Part], count: TempoMap) -> int:
    """The last section boundary within the burn assumed in the commented fire block."""
    start = float(count.seconds_from_beats(parts[0][1]))
    ends = [end for *_, end, _ in parts if float(count.seconds_from_beats(end)) <= start + LIT]
    return max(ends, default=parts[0][2])


def _block_lines(part: _Part, pattern: str, count: TempoMap, *, last: bool) -> str:
    """One block per section, and a computed link to the next if there is time for it."""
    name, start, end, _ = part
    link = 0 if last or end - start < 3 * LINK else LINK
    lines = [
        f"  # {name}: {count.position_of(start)} to {count.position_of(end)}, {end - start} beats",
        f"  - {{from: {count.position_of(start)}, pattern: {pattern}, beats: {end - start - link}}}",
    ]
    if link:
        lines.append(f"  - {{link: true, beats: {link}}}")
    return "\n".join(lines)


def _last_beat(song: Song) -> int:
    count = song.tempo_map()
    return int(float(count.beats_from_seconds(song.beats[-1])))


def _label(name: str, song: Song) -> str:
    """The label without its number, so that repeats share a label."""
    labels = dict(zip(song.section_names(), (part.label for part in song.sections), strict=True))
    return labels[name]


def _patterns(parts: list[_Part]) -> list[str]:
    """A calm or a full pattern, by the section's energy; only a starting point."""
    middle = sorted(energy for *_, energy in parts)[len(parts) // 2]
    return ["three-beat-weave" if energy >= middle else "two-beat-weave" for *_, energy in parts]


def _quoted(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)


_BLOCKS = """\
# One block per section to start from, and a link (a computed transition) to the next.
# `sequencer patterns` lists the patterns you can use here.
timeline:
"""
_DRAFTED = """\
# Drafted: entries with `drafted` are drawn anew by `sequencer draft`. Change one, or take its mark away, and it is yours.
# A link is a computed transition. `sequencer patterns` lists the patterns you can use here.
timeline: []"""
_LEVELS_NOTE = """              # 1 to 5: `sequencer draft` uses every pattern up to this difficulty; besides those:
    # repertoire: {known: [three-beat-weave], learning: [antispin-flower-4], never: [stall]}"""
_USUAL_POI = "             # usual size: tether 0.51 m (0.30 of the stature), head 200 g, wick 5 cm"
_FIRST_DANCER = """\
  - name: {name}
    stature: {stature}
    # birth_year: 1990    # rules set a minimum age for performing with fire{level}
    prop: {prop}{usual}
    # If you have measured yours, write: prop: {{kind: poi, tether: 0.48 m, head_mass: 180 g, wick: 4.5 cm}}
    # Or rope dart, staff, club, fan, hoop. For a prop in one hand only:
    # right: staff        # instead of prop; or right: {{kind: staff, length: 1.4 m}}"""
_DANCER = """\
  - name: {name}
    stature: {stature}{level}
    prop: {prop}"""
_TEXT = """\
# A show for `sequencer`. Times are bar.beat (17.1), m:ss.s of the track (1:02.5) or a section's name;
# lengths are metres unless a unit follows (6 ft). Everything after a # is a note for you.
# Then: sequencer check THIS-FILE   and   sequencer sheet THIS-FILE

title: {title}
version: 1               # raise it with every change; it is printed on every sheet
date: {date}

track:
  file: {track}
  sha256: {sha}   # of this cut; any other cut is refused
  # detected: {duration}, {tempo} beats per minute, {metre} beats per bar. If that is wrong, correct it:
  corrections:
    # metre: 3           # beats per bar
    # one: 0:01.2        # a beat that is the first of its bar
    # tempo: half        # or double; constant where the count slips
    # Bars below are numbered in this count. `sequencer check THIS-FILE --recount tempo=half` corrects it and
    # writes them anew, so that everything stays at its moment of the song.
    # shift: -12 ms      # all beats earlier or later
    sections:            # rename them as you like; give parts that repeat the same name
{marks}

# What you do not state here is printed as "not stated", and stops a lit show: nothing is filled in for you.
venue:
  name: "name the place"
  # setting: outdoors      # or indoors
  # Seen from above: x to the audience's right, y upstage, 0, 0 in the middle of the downstage edge.
  stage: {{shape: rectangle, width: {width}, depth: {depth}}}
  audience:
    - {{name: front row, line: [[-8, -6], [8, -6]]}}
  # ceiling: open          # or its height, measured: 6.2 m
  # exits:                 # each with its clear width; the widest is counted as lost
  #   - {{name: gate, at: [-10, -10], width: 3 m}}
  # audience_size: 120
  # extinguishers:         # copy the rating from the label
  #   - {{at: [-4.5, 1], rating: "2-A:10-B:C", kind: foam}}
  # fuel_station: [9, 12]
  # spin_off: [[8, 13], [10, 13], [10, 15], [8, 15]]   # where wicks are soaked and spun off, closed to the public
  # fire_lane: {{line: [[14, 8], [9, 8]], width: 4 m}}
  # gate: [14, 8]
  # wind: 2 m/s            # gusts at prop height, measured
  # wind_from: stage left  # or stage right, upstage, audience: keep the fuel upwind

cast:
{cast}

{places}

# What `sequencer draft` should bring: give your wishes, take the #s away, and give the command.
# wishes:
#   moves: {{three-beat-weave: 1, flower: 2, stop: 1}}   # patterns or kinds of pattern, and how often
#   character: {{A: calm}}         # of a section: calm or full

{timeline}

# Only for a lit show: remove the #. Time your own burn before you trust a number here.
# night: 2027-06-19        # the night of the performance
# fire:
#   fuel: kerosene
#   burn: {{time: 4 min, measured: false}}   # true once you have timed this wick with this fuel
#   flame: 0.5 m           # over the wick at its highest, watched in a real burn
#   fuel_on_site: 1 L
#   lit:
#     - {{who: all, from: {first}, until: {last}}}   # relight or end dark after that
#   # Time all of this: the wick burns while others are lit, and until it is out.
#   handling: {{light: 10 s, put_out: 10 s, waiting: on the ground, lit_by: Lighter}}

# What a caller says, and the call that stops the act; anything left out is a blank line to fill in.
# emergency: {{number: "112", address: "street and gate", meeting_point: "where", meets: "who", caller: "who",
#   first_aider: "who"}}
# stop_call: {{word: STOP, signal: both arms crossed overhead, callers: all}}

# A permit counts only with all of this, for this place and night; without one every page says DRAFT.
# rules:
#   permit: {{number: "…", issued_by: "…", from: 2027-06-19, until: 2027-06-19, place: "name the place"}}

# Each person has one duty. Nobody here is lit, films, or fuels another's prop.
# crew:
#   - {{name: Lead, post: [-6, -1], duty: lead}}
#   - {{name: Spotter, post: [-3, -1], duty: spotter, equipment: [damp towel, fire blanket]}}
#   - {{name: Lighter, post: [6, -1], duty: lighter, equipment: [torch, lidded metal can]}}
#   - {{name: Guard, post: [0, -5.5], duty: perimeter, equipment: [damp towel]}}
#   - {{name: Keeper, post: [9, 11], duty: fuel keeper, equipment: [lidded metal can, fire blanket]}}
"""
