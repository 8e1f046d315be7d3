"""The command line: options in, one task, text out; the heavy imports stay inside the verbs."""

import errno
import os
import sys
from contextlib import suppress
from pathlib import Path
from traceback import walk_tb
from typing import Any

import click

from sequencer.cli.check import check
from sequencer.cli.compare import compare
from sequencer.cli.draft import draft
from sequencer.cli.draw import draw
from sequencer.cli.listen import listen
from sequencer.cli.new import new
from sequencer.cli.open import open_
from sequencer.cli.pack import pack
from sequencer.cli.patterns import patterns
from sequencer.cli.practice import practice
from sequencer.cli.printing import say
from sequencer.cli.rehearse import rehearse
from sequencer.cli.sheet import sheet
from sequencer.cli.trace import trace
from sequencer.cli.unpack import unpack
from sequencer.errors import InputError, written_out
from sequencer.given_files import is_given_file
from sequencer.system_folders import fault_log
from sequencer.version import __version__

_GO_ON = {
    "check",
    "draft",
    "draw",
    "rehearse",
    "sheet",
}  # verbs whose results are kept as they are found


_DISK = {
    errno.ENOSPC: "write {}, the disk is full; free some space",
    errno.EDQUOT: "write {}, the disk quota is used up; delete what is no longer needed",
    errno.EIO: "read or write {}, its disk reports a fault; look after that disk, and use another",
}
_TYPED = "sequencer.typed"  # the words of a command line
_NOBODY_READS = 141  # as of a program that SIGPIPE ends


class Verbs(click.Group):
    """Exit status: 0 success, 1 the show needs mending, 2 bad input, 70 a bug in sequencer, 130 interrupted, 141 nobody reads what is printed."""

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        """Keep the words as they were typed, for what is said of them."""
        ctx.meta[_TYPED] = list(args)
        try:
            return super().parse_args(ctx, args)
        except click.ClickException as error:
            raise _seen(error) from None
        except OSError as error:  # as --help is printed
            raise _ended(error) from None

    def invoke(self, ctx: click.Context) -> Any:
        """Report each failure in one line on standard error."""
        given = ctx.meta[_TYPED]
        try:
            return super().invoke(ctx)
        except click.NoSuchOption as error:
            meant = [
                each
                for each in given
                if each.startswith(error.option_name) and is_given_file(Path(each))
            ]
            if meant:
                words = f"{error.message} The file of that name is written ./{meant[0]}"
                raise click.NoSuchOption(error.option_name, words, ctx=error.ctx) from None
            raise _seen(error) from None
        except click.ClickException as error:
            raise _seen(error) from None
        except click.exceptions.Exit:
            raise
        except InputError as error:
            message, status = f"error: {error}", 2
        except (KeyboardInterrupt, click.Abort) as stop:
            message, status = str(stop) or "interrupted; nothing was half-written", 130
            if ctx.invoked_subcommand in _GO_ON and not str(stop):
                message += ", and what was worked out so far is kept: ask again to go on"
        except Exception as error:  # noqa: BLE001 (the last line of defence: it is logged and reported)
            raise _ended(error) from None
        _tell(message)
        raise click.exceptions.Exit(status)


def _seen(error: click.ClickException) -> click.ClickException:
    """What was typed wrong, with letters that steer a terminal written out: it may have been copied from elsewhere."""
    vars(error)["message"] = written_out(error.message)  # click means it to be final
    return error


def _ended(error: Exception) -> click.exceptions.Exit:
    """How a command ends by an error that nobody expected; one line says which, where anybody reads it."""
    if isinstance(error, BrokenPipeError) and _while_printing(error):  # as in `… | head`
        with suppress(
            OSError, ValueError
        ):  # what is still to be written would be refused at the end
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return click.exceptions.Exit(_NOBODY_READS)
    if isinstance(error, OSError) and error.errno in _DISK:
        _tell(f"error: cannot {_DISK[error.errno].format(_handled(error))}")
        return click.exceptions.Exit(2)
    _tell(_fault(error))
    return click.exceptions.Exit(70)


def _handled(error: OSError) -> str:
    """What a disk did not take or give: what is printed, a file that the error names, or else one that nobody asked for."""
    if _while_printing(error):
        return "the output"
    if isinstance(error.filename, str | bytes):
        return written_out(os.fsdecode(error.filename)).replace("\n", "\\n")
    return "a temporary file"


def _while_printing(error: Exception) -> bool:
    """Whether it came from the output; a broken pipe between processes would be a bug."""
    frames = (frame for frame, _ in walk_tb(error.__traceback__))
    return any(frame.f_code is click.echo.__code__ for frame in frames)


def _tell(message: str) -> None:
    with suppress(OSError):
        say(message, err=True)


def _fault(error: Exception) -> str:
    """Save the traceback in a log file; return one line for the user."""
    import datetime as dt
    import traceback

    now = dt.datetime.now(tz=dt.UTC)
    told = "".join(traceback.format_exception(error))
    log = fault_log(f"sequencer-fault-{now:%Y%m%d-%H%M%S}.log", f"sequencer {__version__}\n{told}")
    bug = f"bug in sequencer ({type(error).__name__}); please report it"
    return f"{bug}; no log of it could be written" if log is None else f"{bug} and attach {log}"


@click.group(cls=Verbs, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="sequencer")
def main() -> None:
    """Turn a song into a fire-spinning routine that can be danced, checked and printed."""


for verb in (
    listen, new, open_, draft, check, compare, draw, sheet, rehearse, practice, pack, unpack, patterns, trace
):  # fmt: skip
    main.add_command(verb)
