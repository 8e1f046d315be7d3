"""What `import sequencer` offers: a small set of names over the same tasks as the command line.

Paths may be `str` or `Path`. What a person gave and cannot be used (a file, a song, a moment in a show
file) raises `InputError`, one line that says how to mend it; what the caller gets wrong in Python raises
`ValueError` or `TypeError`. Lengths are metres, times seconds or beats (0 is bar 1 beat 1), as each says.
Results turn into pandas data frames with `to_frame`.
"""

from collections.abc import Mapping
from math import inf, isfinite
from os import PathLike
from pathlib import Path
from typing import TYPE_CHECKING

from sequencer.arrays import as_positive, as_whole
from sequencer.files import AnyPath
from sequencer.findings import Report
from sequencer.geometry.bodies import SIDES, Body, Side
from sequencer.motion.laws.law import Law
from sequencer.motion.patterns.library import Pattern
from sequencer.motion.props.prop import Prop
from sequencer.show.reading import ReadShow
from sequencer.staging.staged import Staged
from sequencer.tasks.closeness import Distances
from sequencer.timing.song import Song
from sequencer.units import LENGTHS, quantity

if TYPE_CHECKING:
    import pandas as pd

    from sequencer.planning.drafting.drafted_routine import Draft
    from sequencer.planning.open_show import OpenShow

_SHOW = "a show is a path, what read_show returns, or what stage returns"


def hear(track: AnyPath, *, taps: AnyPath | None = None, again: bool = False) -> Song:
    """Beats, bars, sections and energy of a song.

    Parameters
    ----------
    track : path
        wav, flac, ogg or mp3.
    taps : path, optional
        Beats that you bring, one time [s] a line, or a MIDI file; they replace those heard.
    again : bool
        Hear it anew, although it was heard before.

    Returns
    -------
    song : Song
        `tempo` [beats a minute], `beats` and `downbeats` [s], `sections`; `to_frame("bars")`, "beats" and
        "sections" are data frames; `tempo_map()` turns beats into seconds and back.

    Raises
    ------
    InputError
        If the file cannot be used as a song, or the taps do not fit it.

    Examples
    --------
    >>> song = hear("audio_samples/cinder_ferry.ogg")
    >>> round(song.tempo), len(song.to_frame("bars"))
    (100, 80)
    """
    from sequencer.tasks import hear_song

    beats = None if taps is None else _path("taps", taps)
    return hear_song(_path("track", track), taps=beats, again=again)


def read_show(path: AnyPath) -> ReadShow:
    """A show file, read and validated; its song is not looked at.

    Parameters
    ----------
    path : path

    Returns
    -------
    read : ReadShow
        `show` holds the headings of the file as typed records, `document` where each stands in it.

    Raises
    ------
    InputError
        If the file cannot be used: every fault with line and column.

    Examples
    --------
    >>> read_show("shows/night_ferry.yaml").show.names
    ('Isa',)
    """
    from sequencer.show import reading

    return reading.read_show(_path("path", path))


def stage(show: AnyPath | ReadShow | Staged, *, song: Song | None = None) -> Staged:
    """A show on its song: every moment in beats, every block turned into laws.

    Parameters
    ----------
    show : path or ReadShow
        What is staged already comes back as it is.
    song : Song, optional
        What was heard in the show's track; it is heard (or looked up) here if not given.

    Returns
    -------
    staged : Staged
        `dancers` with bodies, props, trajectories and walks; `blocks`, `standings` and `lit` [beats]; `tempo`.

    Raises
    ------
    InputError
        If the show or its track cannot be used, or the song is another cut.

    Examples
    --------
    >>> stage("shows/night_ferry.yaml").dancers[0].name
    'Isa'
    """
    from sequencer.tasks.shows import stage_show

    if song is not None and not isinstance(song, Song):
        raise TypeError(f"song must be what hear returns, got {type(song).__name__}")
    return stage_show(_show(show), song=song)


def check(
    show: AnyPath | ReadShow | Staged,
    *,
    flown: bool = True,
    danced: int | None = None,
    seed: int = 0,
    start: str | None = None,
    until: str | None = None,
) -> Report:
    """Every check on a show, the same as `sequencer check`.

    Parameters
    ----------
    show : path, ReadShow or Staged
    flown : bool
        Whether passive props are checked as they can be flown, which takes seconds to a minute the first time; or as
        drawn, with a margin for the hands.
    danced : int, optional
        How many times it is danced, as drawn, with the errors that people make, which takes minutes; not at all if
        not given.
    seed : int
        Of these errors.
    start, until : str, optional
        Look only at what is danced between these moments: bar.beat, m:ss.s of the track or a section. The show must then be
        a file or a `ReadShow`; it is looked at as drawn, and not danced with errors.

    Returns
    -------
    report : Report
        `ok` is False where something must be mended before the show is danced; `findings`, `clearances`;
        `to_frame("findings")`, "clearances" and "chances" are data frames.

    Raises
    ------
    InputError
        If the show, its track or its own rules cannot be used.
    ValueError
        If `danced` is less than 1, `seed` less than 0, or a part of a show is asked for that is staged, or to be
        danced.
    TypeError
        If one of them is not a whole number.

    Examples
    --------
    >>> check("shows/night_ferry.yaml").ok
    True
    """
    from sequencer.tasks import Dancing, PartOfShow, check_show

    given, seed = _show(show), as_whole("seed", seed, least=0)
    if start is not None or until is not None:
        if danced is not None:
            raise ValueError("only a whole show is danced with errors")
        return check_show(given, part=PartOfShow(start=start, until=until))
    if danced is None:
        return check_show(given, flown=flown)
    runs = as_whole("danced", danced, least=1)
    return check_show(given, flown=flown, dancing=Dancing(runs=runs, seed=seed))


def open_show(show: AnyPath | ReadShow | Staged, *, song: Song | None = None) -> "OpenShow":
    """A show to change: it answers at once, because only what a change touches is staged and checked again.

    Parameters
    ----------
    show : path, ReadShow or Staged
    song : Song, optional
        As for `stage`.

    Returns
    -------
    show : OpenShow
        `change([(path, value)])` sets a value of the file, `answers()` gives what each check says as it becomes
        known, as drawn and then as flown, `report()` the whole. The file itself is not written. A change from another thread ends answers
        about the show before with `sequencer.progress.Stopped`.

    Raises
    ------
    InputError
        If the show or its track cannot be used, or the song is another cut.

    Examples
    --------
    >>> planned = open_show("shows/night_ferry.yaml")
    >>> planned.change([(("title",), "The last ferry")]).show.title
    'The last ferry'
    """
    from sequencer.planning.open_show import OpenShow

    return OpenShow(stage(show, song=song))


def draft(
    show: AnyPath,
    *,
    section: str | None = None,
    another: bool = False,
    seed: int = 0,
) -> "Draft":
    """A routine drafted for a show's song; the file itself is not written.

    Parameters
    ----------
    show : path
    section : str, optional
        Only this section of the song.
    another : bool
        The next best routine that differs from the one in the file in at least a third.
    seed : int
        The same seed gives the same routine.

    Returns
    -------
    draft : Draft
        `text` of the file with the routine, `cost`, the proven `bound` and `gap`, the `terms` of the cost, and `rows`:
        what is danced when.

    Raises
    ------
    InputError
        If the show or its track cannot be used, or nothing can be drafted; it names what to relax.
    ValueError
        If the seed is less than 0.
    TypeError
        If it is not a whole number, or the show no path.

    Examples
    --------
    >>> draft("shows/mine.yaml", section="intro").checked  # doctest: +SKIP
    True
    """
    from sequencer.tasks import draft_show

    number = as_whole("seed", seed, least=0)
    return draft_show(
        _path("show", show), section=section, another=another, seed=number, write=False
    )


def pattern_book(path: AnyPath | None = None) -> Mapping[str, Pattern]:
    """The vocabulary: patterns by name, those of installed packages among them.

    Parameters
    ----------
    path : path, optional
        A file of patterns, or a show file, whose patterns come on top.

    Returns
    -------
    book : mapping of str to Pattern
        Each with its `family`, `parameters` (unit, default and range), `difficulty` (1 … 5), `summary`.

    Raises
    ------
    InputError
        If the file cannot be used, or an installed package is broken.

    Examples
    --------
    >>> pattern_book()["pro-bend-4"].family
    'toroid'
    """
    from sequencer.tasks.vocabulary import book_from

    return book_from(None if path is None else _path("path", path))


def law(
    name: str,
    *,
    side: Side = "right",
    body: Body | None = None,
    beats: float | None = None,
    tether: float | str | None = None,
    book: Mapping[str, Pattern] | None = None,
    **parameters: object,
) -> Law:
    """The motion of one hand and its prop in a pattern, as a smooth function of beats.

    Parameters
    ----------
    name : str
        Of a pattern; see `pattern_book`.
    side : {"left", "right"}
    body : Body, optional
        Who dances it; 1.70 m tall if not given.
    beats : float, optional
        Of one hand cycle; the pattern's own if not given.
    tether : float or str, optional
        Hand to head, in metres or with a unit ("51 cm"); 0.51 m if neither this nor the pattern says.
    book : mapping, optional
        Patterns to look in, instead of the built-in ones.
    **parameters
        Of the pattern: lengths in metres or with a unit ("15 cm"), angles in degrees. `from`, a word of
        Python, is written `from_`.

    Returns
    -------
    law : Law
        `law.at(beats)` gives a `Motion` (hand, tether, plane and their rates; shape (..., 3), body frame
        [m], x to the performer's right, y forward, z up); `law.bounds()` proven bounds; `law.period`
        [beats].

    Raises
    ------
    ValueError
        If the pattern or a parameter is not known (the nearest is offered), or out of range.
    TypeError
        If `beats` or `tether` is not a number, or `body` is not a Body.

    Examples
    --------
    >>> toroid = law("pro-bend-4", hand_radius="15 cm", start=-1)
    >>> toroid.period
    4.0
    """
    from sequencer.motion.patterns.library import law_for
    from sequencer.motion.patterns.samples import CARD_STATURE

    if side not in SIDES:
        raise ValueError(f"side must be 'left' or 'right', got {side!r}")
    if body is not None and not isinstance(body, Body):
        raise TypeError(f"body must be a sequencer.Body, got {type(body).__name__}")
    cycle = None if beats is None else as_positive("beats", beats, "beats")
    length = None if tether is None else _length("tether", tether)
    return law_for(
        name, {key.removesuffix("_"): value for key, value in parameters.items()},
        side=side, body=body or Body(stature=CARD_STATURE), beats=cycle, tether=length, book=book,
    )  # fmt: skip


def trace(
    of: Law | AnyPath | ReadShow | Staged,
    *,
    rate: float | None = None,
    flown: bool = True,
    beats: float | None = None,
    per_beat: int | None = None,
    tempo: float | None = None,
    tether: float | str | None = None,
) -> "pd.DataFrame":
    """Positions over time: of one law in the body frame, or of a show's hands and props on the stage.

    Parameters
    ----------
    of : Law, path, ReadShow or Staged
    rate : float, optional
        Of a show: instants a second; 60 if not given.
    flown : bool
        Of a show: whether columns `flown_…` say where hand and head of a passive prop really go, which takes seconds to a
        minute the first time.
    beats : float, optional
        Of a law: how many; one period if not given, 8 where it does not repeat.
    per_beat : int, optional
        Of a law: rows a beat; 24 if not given.
    tempo : float, optional
        Of a law [beats a minute], for its seconds; 100 if not given.
    tether : float or str, optional
        Of a law: hand to head, in metres or with a unit ("51 cm"); 0.51 m if not given.

    Returns
    -------
    frame : DataFrame
        `seconds`, `beat`, `hand_x` … `hand_z` and `head_x` … `head_z` [m], `sense_x` … `sense_z` [1, unit
        vector of the prop's plane and direction]. Of a law in the body frame (x to the performer's right, y
        forward, z up); of a show in the stage frame (X to the audience's right, Y upstage, Z up), with
        `performer`, `side` and `lit` (1 or 0), all hands of one instant together, and `head2_x` … for props
        with more wicks.

    Raises
    ------
    InputError
        If the show or its track cannot be used.
    ValueError
        If a number is not positive.
    TypeError
        If one is not a number, or does not apply: `rate` to a law, the others to a show.

    Examples
    --------
    >>> len(trace(law("pro-bend-4"), per_beat=24))
    97
    """
    if isinstance(of, str | PathLike | ReadShow | Staged):
        from sequencer.outputs.exports.trace import trace_frame

        of_laws = {"beats": beats, "per_beat": per_beat, "tempo": tempo, "tether": tether}
        _refuse(of_laws, "is for a law, this is a show")
        pace = 60.0 if rate is None else as_positive("rate", rate, "instants a second")
        show = stage(of)
        if not flown:
            return trace_frame(show, rate=pace)
        from sequencer.staging.in_flight.flown_show import flown_show

        return trace_frame(show, rate=pace, flown=flown_show(show).staged)
    if not callable(getattr(of, "bounds", None)):
        raise TypeError(f"trace takes a law or a show; {_SHOW}; got {type(of).__name__}")
    _refuse({"rate": rate}, "is for a show, this is a law")
    import pandas as pd

    from sequencer.motion.patterns.law_kinds import DEFAULT_TETHER
    from sequencer.motion.patterns.samples import SAMPLE_COLUMNS, law_rows

    usual = of.period if isfinite(of.period) else 8.0
    rows = law_rows(
        of, beats=usual if beats is None else beats,
        per_beat=24 if per_beat is None else per_beat, tempo=100.0 if tempo is None else tempo,
        tether=DEFAULT_TETHER if tether is None else _length("tether", tether),
    )  # fmt: skip
    return pd.DataFrame(rows, columns=list(SAMPLE_COLUMNS))


def distances(
    show: AnyPath | ReadShow | Staged,
    start: float | str | None = None,
    end: float | str | None = None,
    *,
    within: float = inf,
) -> Distances:
    """The smallest distance of every two performers, when and where; proven, not sampled.

    Parameters
    ----------
    show : path, ReadShow or Staged
    start, end : float or str, optional
        From when to when: beats (0 is bar 1 beat 1), or a moment as in a show file ("17.1", "1:02.5", "end
        of verse 2"); the whole show if not given.
    within : float
        Pairs that never come as near as this [m] are told by a lower bound, which is quicker for a large
        cast.

    Returns
    -------
    distances : Distances
        `pairs`, the closest first, each with `distance` [m] between surfaces (flame included) and `error`:
        the true one is no more than that below. `to_frame()` is a data frame.

    Raises
    ------
    InputError
        If the show or its track cannot be used.
    ValueError
        If a moment is none of this song, a beat is outside the show, or the end is not after the start.
    TypeError
        If a moment is neither a number nor text, or `within` is not a number.

    Examples
    --------
    >>> distances("shows/salt_wind.yaml", "1.1", "9.1").pairs[0].error
    0.005
    """
    from sequencer.tasks.closeness import show_distances

    return show_distances(stage(show), start, end, within=within)


def _path(name: str, given: object) -> Path:
    if not isinstance(given, str | PathLike):
        raise TypeError(f"{name} must be a path, str or Path, got {type(given).__name__}")
    return Path(given)


def _length(name: str, given: float | str) -> float:
    """A positive length [m], given in metres or as text with a unit."""
    if not isinstance(given, str):
        return as_positive(name, given, "m")
    try:
        metres = quantity(given, LENGTHS, default="m")
    except ValueError as error:
        raise ValueError(f"{name}: {error}") from None
    return as_positive(name, metres, "m")


def _refuse(arguments: Mapping[str, object], why: str) -> None:
    """Refuse the first argument that was given although it does not apply."""
    for name, given in arguments.items():
        if given is not None:
            raise TypeError(f"{name} {why}")


def _show(given: object) -> Path | ReadShow | Staged:
    if isinstance(given, ReadShow | Staged):
        return given
    if not isinstance(given, str | PathLike):
        raise TypeError(f"{_SHOW}; got {type(given).__name__}")
    return Path(given)


__all__ = [
    "Body",
    "Prop",
    "Report",
    "check",
    "distances",
    "draft",
    "hear",
    "law",
    "open_show",
    "pattern_book",
    "read_show",
    "stage",
    "trace",
]
