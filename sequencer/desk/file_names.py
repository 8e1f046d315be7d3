"""What a file beside a show can be called so that every system takes it, and nobody is deceived by how it looks."""

_REFUSED = '<>:"/\\|?*'  # letters that a file's name cannot have on every system


def refused_letter(name: str) -> str | None:
    """The first letter that no file's name should have; None if all are good.

    Line breaks, control characters and letters that turn the direction of text are refused, and letters that mean something else
    in a path on some system.
    """
    return next((each for each in name if each in _REFUSED or not each.isprintable()), None)
