"""Entry point of `sequencer` and of `python -m sequencer`."""

import gc

from sequencer.cli import main

# A call makes many small objects that live as long as it does: looking through them for circles takes time
# and finds little.
gc.set_threshold(50_000, 20, 50)

if __name__ == "__main__":
    main()
