"""One thing that lies beside a show under a name of the desk, as a journal of a single line: a draft on offer, the last switch."""

from pathlib import Path

from sequencer.desk.file.step_journal import StepJournal


class KeptBeside:
    """What lies there; where something else has its name, nothing is kept.

    Parameters
    ----------
    path : Path
        Where it lies.
    """

    def __init__(self, path: Path) -> None:
        self._file = StepJournal(path)

    def __repr__(self) -> str:
        return f"<{type(self).__name__} {self._file.path.name}>"

    def forget(self) -> None:
        """Take it away."""
        self._file.remove()
