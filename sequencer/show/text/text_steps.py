"""A text with the way back and forth through its steps, without end: of each only the letters that changed are kept."""

from dataclasses import dataclass

from sequencer.show.text.text_change import TextChange, change_between


@dataclass(frozen=True, slots=True)
class TextStep:
    """One step: what was done, when, and the letters that changed."""

    words: str
    time: str  # ISO 8601, with the zone; empty where nobody notes it
    change: TextChange


class TextSteps:
    """A text through all its steps, whatever it says.

    Parameters
    ----------
    text : str
    revision : int
        Of the text as it is at first.
    """

    def __init__(self, text: str, revision: int = 0) -> None:
        self.text = text
        self.revision = (
            revision  # raised by every step, back and forth alike; never the same for two texts
        )
        self.done: list[TextStep] = []
        self.undone: list[TextStep] = []  # the last of them is done again first

    def __repr__(self) -> str:
        return f"<{type(self).__name__} revision {self.revision}: {len(self.done)} done, {len(self.undone)} undone>"

    @property
    def all_steps(self) -> list[TextStep]:
        """All steps in their order, those that were undone too."""
        return [*self.done, *reversed(self.undone)]

    def after(self, number: int) -> str:
        """The text after so many steps, those that were undone too; 0 is the text as it was at first.

        Raises
        ------
        ValueError
            If there are not so many.
        """
        back, forth = (
            self.done[max(number, 0) :],
            self.undone[::-1][: max(number - len(self.done), 0)],
        )
        if not 0 <= number <= len(self.done) + len(self.undone):
            raise ValueError(f"there are {len(self.all_steps)} steps, not {number}")
        text = self.text
        for step in reversed(back):
            text = step.change.back.on(text)
        for step in forth:
            text = step.change.on(text)
        return text

    def step(self, text: str, words: str, time: str = "") -> TextStep:
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
