"""Entry point of `sequencer` and of `python -m sequencer`."""

import gc
import io
import os
import sys

# A call makes many small objects that live as long as it does: looking through them for circles takes time
# and finds little.
gc.set_threshold(50_000, 20, 50)


def main() -> None:
    """Run the command line; stopped while that is still being loaded, it says so in one line."""
    _open_closed_streams()
    _write_out_strange_letters()
    try:
        from sequencer.cli import main as run
    except KeyboardInterrupt:
        sys.stderr.write("interrupted; nothing was begun\n")
        raise SystemExit(130) from None
    try:
        run()
    finally:
        gc.freeze()  # the end of the interpreter would look through all that is left, twice


def _open_closed_streams() -> None:
    """Give a closed stream a stand-in that swallows all.

    Else the first file that is opened would have its number, and what a library writes to standard error would go in there.
    """
    for number, name in enumerate(("stdin", "stdout", "stderr")):
        try:
            os.fstat(number)
        except OSError:
            os.open(os.devnull, os.O_RDWR)  # the lowest number that is free: this one
        if getattr(sys, name) is None:
            way = "r" if number == 0 else "w"
            setattr(sys, name, open(os.devnull, way, encoding="utf-8"))  # noqa: PTH123, SIM115 (to the end)


def _write_out_strange_letters() -> None:
    """Letters that the terminal's or file's encoding lacks, and bytes of a path that are no text, are written out: nothing stops at them."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper) and stream.errors == "strict":
            stream.reconfigure(errors="backslashreplace")


if __name__ == "__main__":
    main()
