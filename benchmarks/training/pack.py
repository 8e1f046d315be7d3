"""Packs trained networks into the one file of weights that the package carries.

python pack.py sequencer/listening/network.npz first.npz second.npz
"""

import json
import sys
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[2]))

from sequencer.listening.network import packed


def main(out: str, *paths: str) -> None:
    """Write the weights of all networks, as small whole numbers, and how they are built."""
    arrays, configs = {}, []
    for number, path in enumerate(paths):
        with np.load(path, allow_pickle=False) as given:
            configs.append(json.loads(given["config"].tobytes()))
            weights = {k: given[k] for k in given.files if k != "config"}
        arrays |= {f"{number}/{k}": v for k, v in packed(weights).items()}
    arrays["configs"] = np.frombuffer(json.dumps(configs).encode(), np.uint8)
    np.savez_compressed(out, **arrays)


if __name__ == "__main__":
    main(*sys.argv[1:])
