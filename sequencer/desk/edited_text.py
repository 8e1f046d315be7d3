"""The text of an open show through all its steps, whatever it says: also one that is no show, or no YAML."""

from collections import OrderedDict
from dataclasses import dataclass

from sequencer.show.text_change import TextChange, change_between

_MOST_REVISIONS = 100  # whose texts are kept, for what is done on an older one


@dataclass(frozen=True, slots=True)
class TextStep:
    """One step: what was done, when, and the letters that changed."""

    words: str
    time: str  # ISO 8601, with the zone
    change: TextChange


class EditedText:
    """A text with the way back and forth through its steps, without end.

    Parameters
    ----------
    text : str
    """

    def __init__(self, text: str) -> None:
        self.text = text
        self.revision = 1
        self.done: list[TextStep] = []
        self.undone: list[TextStep] = []
        self._texts = OrderedDict({1: text})

    def __repr__(self) -> str:
        return f"<EditedText revision {self.revision}: {len(self.done)} done, {len(self.undone)} undone>"

    def at(self, revision: int) -> str | None:
        """The text as it was at a revision; None if that is too long ago, or never was."""
        return self._texts.get(revision)

    @property
    def steps(self) -> int:
        """How many steps there are, those that were undone too."""
        return len(self.done) + len(self.undone)

    def step_words(self, number: int) -> str:
        """What a step did, counted from 1.

        Raises
        ------
        IndexError
            If there is none.
        """
        return [*self.done, *reversed(self.undone)][number - 1].words

    def after(self, number: int) -> str:
        """The text after so many steps, those that were undone too; 0 is the text as it was at first.

        Raises
        ------
        ValueError
            If there are not so many.
        """
        if not 0 <= number <= self.steps:
            raise ValueError(f"there are {self.steps} steps, not {number}")
        text, at = self.text, len(self.done)
        for step in reversed(self.done[number:]):
            text = step.change.back.on(text)
        for step in reversed(self.undone[len(self.undone) - max(number - at, 0) :]):
            text = step.change.on(text)
        return text

    def step(self, text: str, words: str, time: str) -> TextStep:
        """Another text, as a step; what was undone before it cannot be done again."""
        step = TextStep(words, time, change_between(self.text, text))
        self.done.append(step)
        self.undone.clear()
        self._now(text)
        return step

    def undo(self) -> bool:
        """Take the last step back; False if there is none."""
        if not self.done:
            return False
        step = self.done.pop()
        self.undone.append(step)
        self._now(step.change.back.on(self.text))
        return True

    def redo(self) -> bool:
        """Do again what was undone last; False if there is nothing."""
        if not self.undone:
            return False
        step = self.undone.pop()
        self.done.append(step)
        self._now(step.change.on(self.text))
        return True

    def _now(self, text: str) -> None:
        self.text = text
        self.revision += 1
        self._texts[self.revision] = text
        while len(self._texts) > _MOST_REVISIONS:
            self._texts.popitem(last=False)
