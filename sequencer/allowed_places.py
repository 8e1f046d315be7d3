"""Where a show may read: its own folder, its project's, and what the person at this machine has allowed.

Shows are mailed around. What one names must not lead a reader's program to whatever else lies on that machine, so a
path of a show stays below the show's folder, or below the nearest folder above it that holds a file called
`.sequencer`. Anything else the person allows: with `--allow FOLDER` for one command, with SEQUENCER_ALLOW for a
session, or for good in `allowed.txt` among their settings, one path a line; a song that they gave themselves is
written there.
"""

import os
from contextlib import suppress
from pathlib import Path

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
    project = next((each for each in own.parents if (each / PROJECT_MARK).is_file()), None)
    if project is not None and real.is_relative_to(project):
        return True
    return any(real.is_relative_to(os.path.realpath(each)) for each in [*_for_now(), *_for_good()])


def allow_for_now(folders: tuple[str, ...]) -> None:
    """Allow folders to this process and to those that it starts."""
    if folders:
        os.environ[VARIABLE] = os.pathsep.join(
            [*_for_now(), *(str(Path(each).absolute()) for each in folders)]
        )


def allow_for_good(path: Path) -> None:
    """Note in the person's settings a file that they named themselves; without settings it is only for now."""
    settings, line = _settings(), os.path.realpath(path)
    if line in _for_good() or "\n" in line:
        return
    try:
        settings.parent.mkdir(parents=True, exist_ok=True)
        with settings.open("a", encoding="utf-8") as out:
            out.write(f"{line}\n")
    except (OSError, UnicodeEncodeError):
        allow_for_now((line,))


def _for_now() -> list[str]:
    return [each for each in os.environ.get(VARIABLE, "").split(os.pathsep) if each]


def _for_good() -> list[str]:
    with suppress(OSError, UnicodeDecodeError):
        lines = _settings().read_text(encoding="utf-8").splitlines()
        return [line for line in lines if Path(line).is_absolute()]
    return []


def _settings() -> Path:
    from platformdirs import user_config_path

    return user_config_path("sequencer") / "allowed.txt"
