"""The beat-detection network, run by numpy on one core: mel bands in, odds of beat, downbeat and metre out.

Two convolutions over time and pitch, then residual dilated convolutions over time, so that each frame is
judged from some 15 s of music on either side. The weights were trained on pieces composed for the purpose
(benchmarks/training) and are stored as integers within ±56 with one scale per row. Source of the building
blocks: F. Yu, V. Koltun, Multi-scale context aggregation by
dilated convolutions, ICLR 2016; B. Zhang, R. Sennrich, Root mean square layer normalization, NeurIPS 2019.
"""

import json
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from itertools import pairwise
from typing import Any

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float32]
WINDOW = 1600  # frames evaluated together, as in training
_MARGIN = 150  # frames at each end of a window that the neighbouring window judges better
_LEVELS = 127  # largest integer of a stored weight
_SLICE = 400  # frames of the first layers in memory at a time


class Network:
    """Weights and forward pass."""

    def __init__(self, weights: dict[str, Array], config: dict[str, Any]) -> None:
        self.weights = weights
        names = [f"before.{i}" for i in range(len(config["dilations"]))]
        names += [f"after.{i}" for i in range(len(config["after"]))]
        dilations = [*config["dilations"], *config["after"]]
        self.blocks = list(zip(names, dilations, strict=True))
        self.taps = {
            name: np.ascontiguousarray(weights[f"{name}.conv.weight"].transpose(2, 1, 0))
            for name in names
        }
        self.kernels = {
            name: np.ascontiguousarray(
                weights[f"{name}.weight"]
                .transpose(2, 3, 1, 0)
                .reshape(-1, len(weights[f"{name}.bias"]))
            )
            for name in ("conv1", "conv2")
        }

    def __call__(self, bands: Array) -> tuple[Array, Array]:
        """Log odds of beat and downbeat, and scores of the metres 1 … 7.

        Parameters
        ----------
        bands : ndarray, shape (n, 80) [1]
            See `spectra.levelled`.

        Returns
        -------
        odds : ndarray, shape (n, 2) [nats]
        metres : ndarray, shape (n, 7) [nats]

        Notes
        -----
        Source: module docstring. Single precision.
        """
        n = len(bands)
        starts = [0]
        while starts[-1] + WINDOW < n:
            starts.append(min(starts[-1] + WINDOW - 2 * _MARGIN, n - WINDOW))
        odds, metres = np.zeros((n, 2), np.float32), np.zeros((n, 7), np.float32)
        cuts = [0, *((a + b + WINDOW) // 2 for a, b in pairwise(starts)), n]
        for start, (low, high) in zip(starts, pairwise(cuts), strict=True):
            o, m = self._window(bands[start : start + WINDOW])
            odds[low:high], metres[low:high] = (
                o[low - start : high - start],
                m[low - start : high - start],
            )
        return odds, metres

    def _window(self, bands: Array) -> tuple[Array, Array]:
        x = self._first_layers(bands)
        for name, dilation in self.blocks:
            x = x + self._block(x, name, dilation)
        x = _normed(x, self.weights["norm.gain"])
        w = self.weights
        return x @ w["head.weight"].T + w["head.bias"], x @ w["metre.weight"].T + w["metre.bias"]

    def _first_layers(self, bands: Array) -> Array:
        """Convolutions over time and pitch, slice by slice; one vector per frame."""
        w, out = self.weights, []
        padded = np.pad(bands, ((2, 2), (0, 0)))
        for start in range(0, len(bands), _SLICE):
            part = padded[start : min(start + _SLICE, len(bands)) + 4]
            x = _halved(self._convolved(part[:, :, None], "conv1"))
            # the second layer sees nothing before the track's start and after its end
            if start == 0:
                x[0] = 0
            if start + _SLICE >= len(bands):
                x[-1] = 0
            x = _halved(self._convolved(x, "conv2"))
            flat = x.transpose(0, 2, 1).reshape(len(x), -1)
            out.append(flat @ w["flat.weight"].T + w["flat.bias"])
        return np.concatenate(out)

    def _convolved(self, x: Array, name: str) -> Array:
        """3 × 3 convolution over (time, pitch, channels), two frames shorter, followed by ReLU."""
        wide = np.pad(x, ((0, 0), (1, 1), (0, 0)))
        t, f, c = len(x) - 2, x.shape[1], x.shape[2]
        patches = np.empty((t, f, 9, c), np.float32)
        for i in range(3):
            for j in range(3):
                patches[:, :, 3 * i + j] = wide[i : i + t, j : j + f]
        y = patches.reshape(t * f, 9 * c) @ self.kernels[name] + self.weights[f"{name}.bias"]
        return np.maximum(y, 0).reshape(t, f, -1)

    def _block(self, x: Array, name: str, dilation: int) -> Array:
        w, taps = self.weights, self.taps[name]
        y = _normed(x, w[f"{name}.norm.gain"])
        middle = len(taps) // 2
        total = np.tile(w[f"{name}.conv.bias"], (len(x), 1))
        for i, tap in enumerate(taps):
            shift = (i - middle) * dilation
            if abs(shift) >= len(x):
                continue
            if shift < 0:
                total[-shift:] += y[:shift] @ tap
            elif shift > 0:
                total[:-shift] += y[shift:] @ tap
            else:
                total += y @ tap
        mixed: Array = np.maximum(total, 0) @ w[f"{name}.mix.weight"].T + w[f"{name}.mix.bias"]
        return mixed


@cache
def networks() -> tuple[Network, ...]:
    """The networks shipped with this package; they were trained separately and are averaged."""
    with (
        files("sequencer.listening").joinpath("network.npz").open("rb") as file,
        np.load(file, allow_pickle=False) as arrays,
    ):
        configs = json.loads(arrays["configs"].tobytes().decode("utf-8"))
        return tuple(
            Network(unpacked(arrays, number), config) for number, config in enumerate(configs)
        )


def judged(bands: Array) -> tuple[Array, Array]:
    """Mean output of all networks, see `Network.__call__`.

    Parameters
    ----------
    bands : ndarray, shape (n, 80) [1]

    Returns
    -------
    odds : ndarray, shape (n, 2) [nats]
    metres : ndarray, shape (n, 7) [nats]

    Notes
    -----
    Source: module docstring. Single precision.
    """
    pairs = [network(bands) for network in networks()]
    odds = np.mean([pair[0] for pair in pairs], axis=0)
    metres = np.mean([pair[1] for pair in pairs], axis=0)
    return odds, metres


def packed(weights: Mapping[str, Array]) -> dict[str, NDArray[Any]]:
    """Weights as small integers with one scale per row; vectors in half precision."""
    out: dict[str, NDArray[Any]] = {}
    for name, values in weights.items():
        if values.ndim < 2:
            out[name] = values.astype(np.float16)
            continue
        rows = values.reshape(len(values), -1).astype(np.float32)
        scale = np.maximum(np.abs(rows).max(axis=1), 1e-8) / _LEVELS
        out[name] = np.round(rows / scale[:, None]).astype(np.int8).reshape(values.shape)
        out[f"{name}:scale"] = scale.astype(np.float32)
    return out


def unpacked(arrays: Mapping[str, NDArray[Any]], number: int) -> dict[str, Array]:
    """Weights of one of the networks in a file, stored as by `packed`."""
    prefix, out = f"{number}/", {}
    for name in arrays:
        if not name.startswith(prefix) or name.endswith(":scale"):
            continue
        values = arrays[name].astype(np.float32)
        if f"{name}:scale" in arrays:
            scale = arrays[f"{name}:scale"].astype(np.float32)
            values = values * scale.reshape(-1, *[1] * (values.ndim - 1))
        out[name.removeprefix(prefix)] = values
    return out


def _normed(x: Array, gain: Array) -> Array:
    """Each row scaled to unit mean square, then by channel."""
    square = np.einsum("ij,ij->i", x, x)[:, None] / np.float32(x.shape[1])
    return x / np.sqrt(square + np.float32(1e-5)) * gain


def _halved(x: Array) -> Array:
    """Maximum of each pair of neighbouring pitches."""
    return np.maximum(x[:, 0::2], x[:, 1::2])
