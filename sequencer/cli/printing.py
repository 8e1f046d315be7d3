"""The one way in which the command line prints: what somebody else wrote steers no terminal."""

import click

from sequencer.unseen_letters import seen_text


def say(text: str, *, nl: bool = True, err: bool = False) -> None:
    """Print a text; letters that steer a terminal, or turn a line around, are written out.

    Parameters
    ----------
    text : str
    nl : bool
        End it with a line end.
    err : bool
        Print it to standard error.
    """
    click.echo(seen_text(text), nl=nl, err=err)
