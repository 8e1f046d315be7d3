"""A show file's texts one after the other: operations, and the way back and forth without end."""

from sequencer.errors import InputError, Place
from sequencer.show.operations.operation import Judge, Operation, applied, read_again, shown_text
from sequencer.show.reading import ReadShow
from sequencer.show.show_text import ShowText
from sequencer.show.text.text_steps import TextSteps


class History:
    """A show file under a person's hands.

    Of each step only the letters that changed are kept, so that there is no end to what can be undone.

    Parameters
    ----------
    text : str
        The file as it stands.
    file : str
        Its name, for messages.

    Raises
    ------
    InputError
        If it is not YAML.
    """

    def __init__(self, text: str, file: str = "the show file") -> None:
        self._now = shown_text(text, file)
        self._steps = TextSteps(text)

    def __repr__(self) -> str:
        return (
            f"<History {self._now.file}: revision {self.revision}, {len(self._steps.done)} to undo>"
        )

    @property
    def text(self) -> str:
        """The file as it is now."""
        return self._now.text

    @property
    def revision(self) -> int:
        """Raised by every step, back and forth alike; never the same for two texts."""
        return self._steps.revision

    @property
    def can_undo(self) -> tuple[str, ...]:
        """What can be undone, in words, the last first."""
        return tuple(step.words for step in reversed(self._steps.done))

    @property
    def can_redo(self) -> tuple[str, ...]:
        """What can be done again, in words, the next first."""
        return tuple(step.words for step in reversed(self._steps.undone))

    @property
    def show(self) -> ReadShow:
        """The show that the file says.

        Raises
        ------
        InputError
            If it is none.
        """
        return read_again(self._now, self._now)

    def do(self, operation: Operation, *, on: int | None = None, judge: Judge | None = None) -> str:
        """The file after an operation.

        Parameters
        ----------
        operation : Operation
        on : int, optional
            The revision that the person saw; refused if it is not the one that stands.
        judge : callable, optional
            Is given the show that the operation makes, and refuses it by raising an InputError.

        Raises
        ------
        InputError
            If it is refused; then nothing has changed.
        """
        if on is not None and on != self.revision:
            raise InputError(
                "changed-meanwhile", Place(self._now.file),
                "the show has been changed since", "look at it as it is now, and do it again",
            )  # fmt: skip
        after = applied(self._now, operation, judge=judge)
        self._step(after, operation.words)
        return self.text

    def take(self, text: str, words: str) -> None:
        """The file as it was written elsewhere: a step as any other, even if it says no show.

        Parameters
        ----------
        text : str
        words : str
            What it is, for the list of what can be undone.

        Raises
        ------
        InputError
            If it is not YAML.
        """
        self._step(shown_text(text, self._now.file), words)

    def undo(self) -> bool:
        """Take the last step back; False if there is none."""
        return self._turned(self._steps.undo())

    def redo(self) -> bool:
        """Do again what was undone last; False if there is nothing."""
        return self._turned(self._steps.redo())

    def _step(self, after: ShowText, words: str) -> None:
        if after.text == self.text:
            return
        self._steps.step(after.text, words)
        self._now = after

    def _turned(self, done: bool) -> bool:
        """Read the text to which a step has led; each of them has been read before."""
        if done:
            self._now = shown_text(self._steps.text, self._now.file)
        return done
