"""The option by which a person lets a show read files outside its folder."""

from collections.abc import Callable
from typing import Any, TypeVar

import click

_Verb = TypeVar("_Verb", bound=Callable[..., Any])


def allow_option(verb: _Verb) -> _Verb:
    """Add `--allow` to a verb that reads a show."""
    return click.option(
        "--allow", multiple=True, type=click.Path(exists=True), metavar="FOLDER", expose_value=False,
        callback=_allowed, help="Let SHOW read files in this folder as well, not only in its own; may be given several times.",
    )(verb)  # fmt: skip


def _allowed(_context: click.Context, _option: click.Parameter, folders: tuple[str, ...]) -> None:
    if folders:
        from sequencer.allowed_places import allow_for_now

        allow_for_now(folders)
