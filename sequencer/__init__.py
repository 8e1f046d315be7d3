"""From a song to a fire-spinning routine that can be danced, checked and printed.

    import sequencer

    song = sequencer.hear("my-song.mp3")              # beats, bars, sections
    show = sequencer.stage("shows/mine.yaml")         # a show file on its song
    report = sequencer.check(show)                    # findings and clearances
    report.to_frame("findings")                       # as a pandas data frame
    law = sequencer.law("pro-bend-4", start=-1)       # one hand and its prop, by a pattern's name

Documented in docs/library.md; each name says its units in its docstring. Nothing is loaded until a name is
first used. DEVELOPERS.md tells how the folders depend on each other.
"""

from importlib import import_module
from typing import TYPE_CHECKING

from sequencer.version import __version__

if TYPE_CHECKING:
    from sequencer.api import (
        Body,
        Prop,
        Report,
        check,
        distances,
        draft,
        hear,
        law,
        open_show,
        pattern_book,
        read_show,
        stage,
        trace,
    )
    from sequencer.errors import InputError

__all__ = [
    "Body",
    "InputError",
    "Prop",
    "Report",
    "__version__",
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


def __getattr__(name: str) -> object:
    """Load a name of the face when it is first used."""
    if name not in __all__:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    home = import_module(f"{__name__}.{'errors' if name == 'InputError' else 'api'}")
    value: object = getattr(home, name)
    globals()[name] = value
    return value


def __dir__() -> list[str]:
    return sorted(__all__)
