"""Entry point of `sequencer` and of `python -m sequencer`."""

import gc
import sys

# A call makes many small objects that live as long as it does: looking through them for circles takes time
# and finds little.
gc.set_threshold(50_000, 20, 50)


def main() -> None:
    """Run the command line; stopped while that is still being loaded, it says so in one line."""
    try:
        from sequencer.cli import main as run
    except KeyboardInterrupt:
        sys.stderr.write("interrupted; nothing was begun\n")
        raise SystemExit(130) from None
    try:
        run()
    finally:
        gc.freeze()  # the end of the interpreter would look through all that is left, twice


if __name__ == "__main__":
    main()
