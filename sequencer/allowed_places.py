"""Where a show may read: its own folder, its project's, and what the person at this machine has allowed.

Shows are mailed around. What one names must not lead a reader's program to whatever else lies on that machine, so a
path of a show stays below the show's folder, or below the nearest folder at or above it that holds a file called
`.sequencer`. So a mark in a show's own folder keeps it there, whatever is marked above. Anything else the person allows: with `--allow FOLDER` for one command, or with SEQUENCER_ALLOW.
"""

import os
from pathlib import Path

from sequencer.system_folders import crowded_folders

VARIABLE = "SEQUENCER_ALLOW"
PROJECT_MARK = ".sequencer"


def is_allowed(path: Path, folder: Path) -> bool:
    """Whether a show file in a folder may read a file; links are followed first.

    Parameters
    ----------
    path : Path
        The file, which need not exist.
    folder : Path
        The show's folder.
    """
    real = Path(os.path.realpath(path))
    own = Path(os.path.realpath(folder))
    if real.is_relative_to(own):
        return True
    project = next((each for each in (own, *own.parents) if _is_project(each)), None)
    if project is not None and real.is_relative_to(project):
        return True
    return any(real.is_relative_to(os.path.realpath(each)) for each in _for_now())


def _is_project(folder: Path) -> bool:
    """Whether a folder is marked, and none into which things from elsewhere are put: a mark may come with them."""
    return (folder / PROJECT_MARK).is_file() and str(folder) not in crowded_folders()


def allow_for_now(folders: tuple[str, ...]) -> None:
    """Allow folders to this process and to those that it starts."""
    if folders:
        os.environ[VARIABLE] = os.pathsep.join(
            [*_for_now(), *(str(Path(each).absolute()) for each in folders)]
        )


def _for_now() -> list[str]:
    return [each for each in os.environ.get(VARIABLE, "").split(os.pathsep) if each]
