"""A show that means harm: markup and scripts for names, 40 performers, 10,000 blocks, and its song."""

import numpy as np
import soundfile as sf

RATE = 22_050
NASTY = (
    "<script>window.hacked=1</script>", "<img src=x onerror=window.hacked=1>", "';window.hacked=1;'",
    "{{constructor.constructor('window.hacked=1')()}}", "javascript:window.hacked=1", '"><svg onload=window.hacked=1>',
)  # fmt: skip
MOVES = ("two-beat-weave", "windmill", "extension", "static-spin")


def hostile_show(folder, performers=40, each=250):
    """A show file of so many performers, who dance so many blocks of two beats each."""
    names = [f"{NASTY[k % len(NASTY)]} {k}" for k in range(performers)]
    cast = [f"  - {{name: {_said(name)}, stature: 1.7, prop: {{tether: 0.55}}}}" for name in names]
    spots = [
        f"{_said(name)}: {{at: [{4 * (k % 8) - 14}, {4 * (k // 8) + 2}]}}"
        for k, name in enumerate(names)
    ]
    rows = [
        f"  - {{who: {_said(name)}, from: {2 * n // 4 + 1}.{2 * n % 4 + 1}, pattern: {MOVES[(n // 8 + k) % 4]}, beats: 2, "
        f"note: {_said(NASTY[(n + k) % len(NASTY)])}}}"
        for n in range(each)
        for k, name in enumerate(names)
    ]
    sf.write(folder / "song.wav", _clicks(each + 2.0), RATE)
    path = folder / "hostile.yaml"
    text = [
        f"title: {_said(NASTY[1] + ' show')}",
        "track: {file: song.wav, corrections: {metre: 4, one: 0:00.5}}",
        "venue:",
        "  stage: {shape: rectangle, width: 36 m, depth: 24 m}",
        f"  audience: [{{name: {_said(NASTY[5])}, line: [[-18, -9], [18, -9]]}}]",
        "cast:", *cast,
        "formations:",
        f"  {_said(NASTY[0])}: {{spots: {{{', '.join(spots)}}}}}",
        "staging:",
        f"  - {{formation: {_said(NASTY[0])}, from: 1.1}}",
        "timeline:", *rows, "",
    ]  # fmt: skip
    path.write_text("\n".join(text), encoding="utf-8")
    return path


def _said(text):
    return "'" + text.replace("'", "''") + "'"


def _clicks(seconds):
    """A click on every beat, 120 a minute from 0.5 s on, heavier on the ones."""
    song = np.zeros(int(seconds * RATE))
    k = np.arange(RATE // 20)
    for beat, at in enumerate(np.arange(0.5, seconds - 0.5, 0.5)):
        tone = np.sin(2 * np.pi * (900 if beat % 4 else 1800) * k / RATE) * np.exp(-k / 300)
        first = int(at * RATE)
        song[first : first + len(k)] += (0.5 if beat % 4 else 0.8) * tone[: len(song) - first]
    return song
