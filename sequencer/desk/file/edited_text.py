"""The text of an open show through all its steps, whatever it says: also one that is no show, or no YAML."""

from collections import OrderedDict

from sequencer.show.text.text_steps import TextSteps

_MOST_REVISIONS = 100  # whose texts are kept, for what is done on an older one


class EditedText(TextSteps):
    """A text through its steps that remembers what it said at its latest revisions.

    Parameters
    ----------
    text : str
    """

    def __init__(self, text: str) -> None:
        super().__init__(text, revision=1)
        self._texts = OrderedDict({1: text})

    def at(self, revision: int) -> str | None:
        """The text as it was at a revision; None if that is too long ago, or never was."""
        return self._texts.get(revision)

    def _now(self, text: str) -> None:
        super()._now(text)
        self._texts[self.revision] = text
        while len(self._texts) > _MOST_REVISIONS:
            self._texts.popitem(last=False)
