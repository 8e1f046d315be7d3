"""Trains the ear's network on rendered pieces and writes its weights.

    python train.py DATA OUT.npz --seconds 400 [--config hybrid] [--seed 1]

DATA is a folder that `render.py` fills, before or meanwhile. Needs PyTorch; what it writes does not.
Loss: cross-entropy of beat and downbeat at 50 frames a second, with neighbouring frames half right, and
of the metre. The last weights are a running mean over training.
"""
# ruff: noqa: C901, C408, D101, D102, D103, E731, N812, PLR0915  # layers explain themselves; PyTorch's own names

import argparse
import json
import math
import sys
import threading
import time
from pathlib import Path

import numpy as np
import torch
import torch.nn.functional as F
from torch import nn

sys.path.insert(0, str(Path(__file__).parents[2]))

from sequencer.listening.network import unpacked

FPS, BANDS, METRES = 50, 80, 7  # metre classes: 1 … 7 beats
CONFIGS = {
    "tiny": dict(width=32, first=8, second=8, dilations=[1, 2], layers=1, heads=2, inner=48, after=[1], kernel=3),
    "hybrid": dict(width=128, first=24, second=32, dilations=[1, 2, 4, 8], layers=5, heads=4, inner=384, after=[1, 2], kernel=3),
    "deep": dict(width=112, first=24, second=32, dilations=[1, 2, 4, 8, 16], layers=7, heads=4, inner=320, after=[1, 2], kernel=3),
    "wide": dict(width=128, first=24, second=32, dilations=[1, 2, 4, 8, 16, 32, 64, 128, 256, 512], layers=0, heads=4, inner=0, after=[1, 2, 4], kernel=5),
    "tcn": dict(width=112, first=24, second=32, dilations=[1, 2, 4, 8, 16, 32, 64, 128, 256, 512], layers=0, heads=4, inner=0, after=[1, 2, 4], kernel=5),
}  # fmt: skip


# ---------------------------------------------------------------- network
class Norm(nn.Module):
    def __init__(self, width):
        super().__init__()
        self.gain = nn.Parameter(torch.ones(width))

    def forward(self, x):  # over the last axis
        return F.rms_norm(x.float(), (x.shape[-1],), eps=1e-5).to(x.dtype) * self.gain


class Dilated(nn.Module):
    def __init__(self, width, kernel, dilation, drop):
        super().__init__()
        self.norm = Norm(width)
        self.conv = nn.Conv1d(
            width, width, kernel, dilation=dilation, padding=dilation * (kernel // 2)
        )
        self.mix = nn.Linear(width, width)
        self.drop = nn.Dropout(drop)

    def forward(self, x):
        y = self.conv(self.norm(x).transpose(1, 2)).transpose(1, 2)
        return x + self.drop(self.mix(F.relu(y)))


class Attention(nn.Module):
    def __init__(self, width, heads, inner, drop):
        super().__init__()
        self.heads = heads
        self.norm1, self.norm2 = Norm(width), Norm(width)
        self.qkv = nn.Linear(width, 3 * width, bias=False)
        self.out = nn.Linear(width, width, bias=False)
        self.up, self.down = nn.Linear(width, inner), nn.Linear(inner, width)
        self.drop = nn.Dropout(drop)

    def forward(self, x, cos, sin):
        b, t, c = x.shape
        q, k, v = (
            self.qkv(self.norm1(x))
            .view(b, t, 3, self.heads, c // self.heads)
            .permute(2, 0, 3, 1, 4)
        )
        y = F.scaled_dot_product_attention(turned(q, cos, sin), turned(k, cos, sin), v)
        x = x + self.drop(self.out(y.transpose(1, 2).reshape(b, t, c)))
        return x + self.drop(self.down(F.relu(self.up(self.norm2(x)))))


def turned(x, cos, sin):
    a, b = x.chunk(2, dim=-1)
    return torch.cat([a * cos - b * sin, a * sin + b * cos], dim=-1).to(x.dtype)


class Ear(nn.Module):
    def __init__(
        self, width, first, second, dilations, layers, heads, inner, after, kernel, drop=0.1
    ):
        super().__init__()
        self.heads = heads
        self.conv1 = nn.Conv2d(1, first, 3, padding=1)
        self.conv2 = nn.Conv2d(first, second, 3, padding=1)
        self.flat = nn.Linear(second * (BANDS // 4), width)
        self.before = nn.ModuleList([Dilated(width, kernel, d, drop) for d in dilations])
        self.layers = nn.ModuleList([Attention(width, heads, inner, drop) for _ in range(layers)])
        self.after = nn.ModuleList([Dilated(width, kernel, d, drop) for d in after])
        self.norm = Norm(width)
        self.head = nn.Linear(width, 2)
        self.metre = nn.Linear(width, METRES)
        self.drop = nn.Dropout(drop)

    def forward(self, x):  # (b, t, bands)
        y = F.max_pool2d(F.relu(self.conv1(x[:, None])), (1, 2))
        y = F.max_pool2d(F.relu(self.conv2(y)), (1, 2))
        b, c, t, f = y.shape
        x = self.drop(self.flat(y.permute(0, 2, 1, 3).reshape(b, t, c * f)))
        for block in self.before:
            x = block(x)
        if len(self.layers):
            low = F.avg_pool1d(x.transpose(1, 2), 2).transpose(1, 2)
            half = low.shape[2] // self.heads // 2
            speed = 10000.0 ** (-torch.arange(half, device=x.device) / half)
            angle = torch.arange(low.shape[1], device=x.device)[:, None] * speed
            cos, sin = angle.cos(), angle.sin()
            for layer in self.layers:
                low = layer(low, cos, sin)
            x = x + low.repeat_interleave(2, dim=1)
        for block in self.after:
            x = block(x)
        x = self.norm(x)
        return self.head(x).float(), self.metre(x).float()


# ---------------------------------------------------------------- data
def piece(path):
    with np.load(path) as z:
        return z["level"], z["near"], min(int(z["metre"]), METRES)


class Data:
    """Chunks of pieces on the device; new ones join while training goes on."""

    def __init__(self, folder, device, window, held):
        self.folder, self.device, self.window, self.held = Path(folder), device, window, held
        self.seen, self.chunks, self.frames = set(), [], 0

    def load(self, least, limit=2500):
        from concurrent.futures import ThreadPoolExecutor

        paths = [
            p
            for p in self.folder.glob("[0-9]*.npz")
            if p.name not in self.seen and int(p.stem) >= self.held
        ]
        if len(paths) < least:
            return False
        paths = sorted(paths)[:limit]
        with ThreadPoolExecutor(8) as pool:
            got = [g for g in pool.map(piece, paths) if len(g[0]) > self.window * 1.02]
        self.seen |= {p.name for p in paths}
        lengths = np.array([len(g[0]) for g in got])
        chunk = dict(
            mel=torch.from_numpy(np.concatenate([g[0] for g in got])).to(self.device),
            near=torch.from_numpy(np.concatenate([g[1] for g in got])).to(self.device),
            metre=torch.tensor([g[2] for g in got], device=self.device),
            start=torch.from_numpy(np.cumsum(lengths) - lengths).to(self.device),
            length=torch.from_numpy(lengths).to(self.device),
        )
        self.chunks = [*self.chunks, chunk]
        self.frames += int(lengths.sum())
        return True

    def batch(self, size, gen):
        sizes = torch.tensor([len(c["length"]) for c in self.chunks], dtype=torch.float)
        chunk = self.chunks[int(torch.multinomial(sizes, 1))]
        dev, w = self.device, self.window
        rand = lambda *shape: torch.rand(*shape, device=dev, generator=gen)
        which = (rand(size) * len(chunk["length"])).long()
        factor = 0.88 + 0.26 * rand(size)
        factor = torch.minimum(factor, (chunk["length"][which] - 2) / w)
        room = chunk["length"][which] - 2 - factor * w
        at = (rand(size) * room.clamp(min=0))[:, None] + factor[:, None] * torch.arange(
            w, device=dev
        )
        low = at.floor().long()
        part = (at - low)[..., None]
        index = chunk["start"][which][:, None] + low
        mel = chunk["mel"][index].float() * (1 - part) + chunk["mel"][index + 1].float() * part
        near = (chunk["near"][index].float() + part) / factor[:, None, None]
        far = chunk["near"][index].float().abs() > 8.5
        target = (1 - near.abs() / 2).clamp(0, 1).masked_fill(far, 0.0)
        return roughened(mel, rand), target, chunk["metre"][which]


def roughened(mel, rand):
    """Other loudspeakers, other keys: bands raised, lowered, moved, blanked."""
    b, t, n = mel.shape
    knots = (rand(b, 1, 7) - 0.5) * 0.36 * (rand(b, 1, 1) < 0.7)
    curve = F.interpolate(knots, size=n, mode="linear", align_corners=True)
    mel = torch.where(mel > 0, mel + curve + (rand(b, 1, 1) - 0.5) * 0.16, mel).clamp(min=0)
    move = ((rand(b) * 9).long() - 4) * (rand(b) < 0.7)
    index = torch.arange(n, device=mel.device)[None] + move[:, None]
    inside = ((index >= 0) & (index < n)).float()
    mel = torch.gather(mel, 2, index.clamp(0, n - 1)[:, None].expand(b, t, n)) * inside[:, None]
    along = ((torch.arange(t, device=mel.device) / t - rand(b, 1)) * (1 + 5 * rand(b, 1))).clamp(
        0, 1
    )
    turn = torch.where(
        rand(b, 1) < 0.5, along, 1 - along
    )  # (b, t), 0 … 1: filters opened, closed, faders moved
    fader = (rand(b, 1) - 0.4) * 0.5 * (rand(b, 1) < 0.3) * turn
    mel = torch.where(mel > 0, mel - fader[..., None], mel).clamp(min=0)
    low, high = 25 + 55 * rand(b, 1), torch.full((b, 1), 99.0, device=mel.device)
    top = torch.where(rand(b, 1) < 0.12, 40 + 40 * rand(b, 1), high)
    top = torch.where(rand(b, 1) < 0.12, low + (high - 10 - low) * turn, top)
    mel = mel * (torch.arange(n, device=mel.device)[None, None] < top[..., None])
    floor = torch.where(rand(b) < 0.25, rand(b) * 0.45, torch.zeros(b, device=mel.device))[
        :, None, None
    ]
    hiss = floor + 0.04 * (rand(b, t, n) - 0.5)
    mel = torch.where(floor > 0, torch.maximum(mel, hiss), mel)
    low, wide = rand(b, 1, 1) * n, 4 + 20 * rand(b, 1, 1) * (rand(b, 1, 1) < 0.35)
    band = torch.arange(n, device=mel.device)[None, None]
    mel = torch.where((wide > 4) & (band >= low) & (band < low + wide), torch.zeros_like(mel), mel)
    begin, width = (rand(b) * t), rand(b) * 80 * (rand(b) < 0.3)
    time_ = torch.arange(t, device=mel.device)[None]
    blank = (time_ >= begin[:, None]) & (time_ < (begin + width)[:, None])
    return mel.masked_fill(blank[..., None], 0.0)


def loss_of(net, mel, target, metre):
    logits, metres = net(mel)
    weight = torch.tensor([1.0, 1.0], device=mel.device)
    main = (
        F.binary_cross_entropy_with_logits(logits, target, reduction="none").mean(dim=(0, 1))
        * weight
    ).sum()
    known = metre > 0
    kind = metres.mean(dim=1)
    side = F.cross_entropy(kind[known], metre[known] - 1) if known.any() else 0.0 * main
    return main, side


def save(path, weights, config):
    arrays = {k: v.float().cpu().numpy().astype(np.float16) for k, v in weights.items()}
    arrays["config"] = np.frombuffer(json.dumps(config).encode(), np.uint8)
    np.savez(path, **arrays)


def main():
    parser = argparse.ArgumentParser()
    parser.add_argument("data")
    parser.add_argument("out")
    parser.add_argument("--config", default="hybrid")
    parser.add_argument("--seconds", type=float, default=60)
    parser.add_argument("--begin-with", type=int, default=2000, help="pieces to wait for")
    parser.add_argument("--batch", type=int, default=56)
    parser.add_argument("--window", type=int, default=1600)
    parser.add_argument("--rate", type=float, default=1.5e-3)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument(
        "--begin", help="FILE:NUMBER of a packed network whose weights to begin with"
    )
    parser.add_argument("--held", type=int, default=160, help="the first so many pieces only judge")
    a = parser.parse_args()
    begun = time.time()
    device = "cuda" if torch.cuda.is_available() else "cpu"
    torch.manual_seed(a.seed)
    torch.backends.cuda.matmul.allow_tf32 = True
    torch.backends.cudnn.allow_tf32 = True
    torch.backends.cudnn.benchmark = True
    gen = torch.Generator(device=device).manual_seed(a.seed)
    data = Data(a.data, device, a.window, a.held)
    stop = threading.Event()

    def more():
        while not stop.wait(1):
            data.load(500)

    threading.Thread(target=more, daemon=True).start()
    config = CONFIGS[a.config]
    net = Ear(**config).to(device)
    if a.begin:
        name, number = a.begin.rsplit(":", 1)
        with np.load(name, allow_pickle=False) as file:
            weights = unpacked(file, int(number))
        net.load_state_dict({k: torch.tensor(v) for k, v in weights.items()})
    print("parameters", sum(p.numel() for p in net.parameters()), flush=True)
    quick = torch.compile(net) if device == "cuda" else net
    with torch.autocast(
        device, torch.bfloat16, enabled=device == "cuda"
    ):  # compile while pieces are made
        empty = torch.zeros(a.batch, a.window, BANDS, device=device)
        some = torch.zeros(a.batch, a.window, 2, device=device)
        sum(
            loss_of(quick, empty, some, torch.ones(a.batch, dtype=torch.long, device=device))
        ).backward()
    net.zero_grad(set_to_none=True)
    print("compiled", round(time.time() - begun), "s", flush=True)
    while sum(len(c["length"]) for c in data.chunks) < a.begin_with:
        time.sleep(0.5)
    print(
        "begins",
        round(time.time() - begun),
        "s,",
        round(data.frames / FPS / 3600, 1),
        "h",
        flush=True,
    )
    ready = time.time()
    decay = [p for p in net.parameters() if p.ndim > 1]
    rest = [p for p in net.parameters() if p.ndim <= 1]
    groups = [dict(params=decay, weight_decay=0.03), dict(params=rest, weight_decay=0.0)]
    optimiser = torch.optim.AdamW(groups, lr=a.rate, betas=(0.9, 0.98))
    mean = {k: v.detach().clone().float() for k, v in net.state_dict().items()}
    step, logged, saved, parts = 0, time.time(), time.time(), []
    while (share := (time.time() - ready) / (a.seconds - (ready - begun))) < 1:
        lr = (
            a.rate * min(1, (step + 1) / 400) * (0.5 + 0.5 * math.cos(math.pi * min(1, share)))
            + 1e-6
        )
        for group in optimiser.param_groups:
            group["lr"] = lr
        mel, target, metre = data.batch(a.batch, gen)
        with torch.autocast(device, torch.bfloat16, enabled=device == "cuda"):
            main_loss, side = loss_of(quick, mel, target, metre)
        optimiser.zero_grad(set_to_none=True)
        (main_loss + 0.02 * side).backward()
        nn.utils.clip_grad_norm_(net.parameters(), 1.0)
        optimiser.step()
        step += 1
        if step % 5 == 0:
            keep = min(0.999, step / (step + 50)) ** 5
            with torch.no_grad():
                for k, v in net.state_dict().items():
                    mean[k].lerp_(v.float(), 1 - keep)
        parts.append(torch.stack([main_loss.detach(), side.detach()]))
        if time.time() - logged > 20:
            logged = time.time()
            values = torch.stack(parts).float().mean(dim=0).tolist()
            print(
                f"{logged - begun:4.0f} s step {step} loss {values[0]:.4f} metre {values[1]:.3f} lr {lr:.1e} hours {data.frames / FPS / 3600:.0f}",
                flush=True,
            )
            parts = []
        if time.time() - saved > 240:  # a run that is cut short leaves something
            saved = time.time()
            save(a.out, mean, config)
    stop.set()
    save(a.out, mean, config)
    net.load_state_dict({k: v.to(device) for k, v in mean.items()})
    net.eval()
    judged = []
    for path in sorted(Path(a.data).glob("[0-9]*.npz")):
        if int(path.stem) < a.held:
            mel, near, metre = piece(path)
            mel, near = mel[: a.window], near[: a.window]
            target = torch.from_numpy(np.clip(1 - np.abs(near.astype(np.float32)) / 2, 0, 1))[
                None
            ].to(device)
            with torch.no_grad(), torch.autocast(device, torch.bfloat16, enabled=device == "cuda"):
                value, side = loss_of(
                    net,
                    torch.from_numpy(mel.astype(np.float32))[None].to(device),
                    target,
                    torch.tensor([metre], device=device),
                )
            judged.append((float(value), float(side)))
    print("steps", step, "held-out loss, metre", np.mean(judged, axis=0), flush=True)


if __name__ == "__main__":
    main()
