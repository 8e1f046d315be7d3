"""A draft as an errand: what the page asks for, drafted in another process, and told in the words of the command line."""

from collections.abc import Mapping
from typing import Any

from sequencer.desk.file.line_merge import changed_lines
from sequencer.progress import Progress


def draft_offer(given: Mapping[str, Any], progress: Progress) -> dict[str, Any]:
    """A draft, as the page shows it before it is laid.

    Parameters
    ----------
    given : mapping
        `path` and `text` of the show; `section`, or `span` as two moments, or None; `another` and `seed`.
    progress : callable

    Returns
    -------
    offer : dict
        `text`, the show with it; `rows` of what is danced when; `words` and `why`, lines for people; `checked`; `lines` that
        change in the file.

    Raises
    ------
    InputError
        If nothing can be drafted.
    KeyboardInterrupt
        If it is stopped before there is any routine.
    """
    from sequencer.tasks import draft_words
    from sequencer.tasks.drafts import draft_text

    text = given["text"]
    span = given["span"]
    try:
        draft = draft_text(
            text,
            given["path"],
            section=given["section"],
            span=None if span is None else (span[0], span[1]),
            another=given["another"],
            seed=given["seed"],
            progress=progress,
        )
    except KeyboardInterrupt as stop:
        if (best := getattr(stop, "draft", None)) is None:
            raise
        draft = best
    words = draft_words(draft)
    whole = draft_words(draft, why=True)
    return {
        "text": draft.text,
        "rows": [
            {"section": section, "position": position, "words": said}
            for section, position, said in draft.rows
        ],
        "words": words.splitlines(),
        "why": whole.removeprefix(words).strip("\n").splitlines(),
        "cost": draft.cost,
        "bound": draft.bound,
        "checked": draft.checked,
        "lines": changed_lines(text, draft.text),
    }
