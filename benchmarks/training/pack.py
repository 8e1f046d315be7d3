"""Packs trained networks into the one file of weights that the package carries.

python pack.py sequencer/listening/network.npz first.npz second.npz

FILE:NUMBER takes over a network of a packed file as it is, such as network.npz:0.
"""

import json
import sys
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[2]))

from sequencer.listening.network import packed


def arrays_of(path: str) -> tuple[dict, dict]:
    """Packed arrays of one network, by name, and how it is built."""
    name, _, number = path.partition(":")
    with np.load(name, allow_pickle=False) as given:
        if not number:
            weights = {k: given[k] for k in given.files if k != "config"}
            return packed(weights), json.loads(given["config"].tobytes())
        own = {
            k.removeprefix(f"{number}/"): given[k]
            for k in given.files
            if k.startswith(f"{number}/")
        }
        return own, json.loads(given["configs"].tobytes())[int(number)]


def main(out: str, *paths: str) -> None:
    """Write the weights of all networks, as small whole numbers, and how they are built."""
    arrays, configs = {}, []
    for number, path in enumerate(paths):
        own, config = arrays_of(path)
        configs.append(config)
        arrays |= {f"{number}/{k}": v for k, v in own.items()}
    arrays["configs"] = np.frombuffer(json.dumps(configs).encode(), np.uint8)
    np.savez_compressed(out, **arrays)


if __name__ == "__main__":
    main(*sys.argv[1:])
