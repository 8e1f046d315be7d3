"""The beginning of a show as an errand: the song is heard, and the first text made."""

from collections.abc import Mapping
from typing import Any

from sequencer.progress import Progress


def first_text(given: Mapping[str, Any], progress: Progress) -> dict[str, Any]:
    """The text of a show in which nothing is danced yet.

    Parameters
    ----------
    given : mapping
        `path` of the show file, `track`, `title`, `cast` of mappings with `name`, `stature`, `prop` and `level`; `floor`: width and
        depth.
    progress : callable

    Returns
    -------
    first : dict
        `text`.

    Raises
    ------
    InputError
        If the song cannot be heard or counted, or what is said of somebody cannot be so.
    """
    from sequencer.show.starter import StarterDancer
    from sequencer.tasks.starting import begun_show

    text = begun_show(
        given["path"],
        given["track"],
        title=given["title"],
        cast=[StarterDancer(**each) for each in given["cast"]],
        floor=(given["floor"][0], given["floor"][1]),
        progress=progress,
    )
    return {"text": text}
