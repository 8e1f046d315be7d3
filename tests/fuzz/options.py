"""Command lines as a slip makes them: each verb with its own options, and with values that are right, nearly right, or no values at all."""

import os
import tempfile
from contextlib import chdir
from functools import cache
from pathlib import Path
from random import Random

import click

SAID = (
    "", " ", "-", "--", "-1", "0", "1", "1e999", "nan", "inf", "-inf", "0x10", "1_000", "½", "٣", "9" * 400, "x" * 400, "a\nb", "\x1b[31m", "\u202e", "é",
    "\udcff", "../x", "no such", "1.1", "3.1", "99999.1", "0:00", "9:99.9", "verse", "all", "Ash", "=", "a=b", "tempo=half", "metre=7", "one=0:12.4", "lobes=4",
    "%s", "{}", "*", "~", "null", "1 m", "1,8 m", "-3 m", "00:00:00:00", "23:59:59:29", "01:00:00;02",
)  # fmt: skip
FILES = (
    "show.yaml",
    "show.yaml",
    "show.yaml",
    "song.wav",
    "empty",
    "folder",
    "none.yaml",
    "taps.txt",
    "-x",
    "new.yaml",
    "a/b/c",
    "\udcff.yaml",
    "x.zip",
    "x" * 300,
)
SHOWS = """\
title: Small
track: {file: song.wav, corrections: {metre: 4, one: 0:00.5}}
venue:
  stage: {shape: rectangle, width: 12 m, depth: 10 m}
  audience: [{line: [[-12, -9], [12, -9]]}]
cast:
  - {name: Ash, stature: 1.7, birth_year: 1990, prop: {tether: 0.55}}
timeline:
  - {from: 2.1, pattern: extension, beats: 4}
"""
LEFT_OUT = {"open"}  # a server, which ends when a page is closed
# What would reach beyond this process, or take long because it was asked for.
NOT_ASKED = {"cluster", "jobs", "draft", "help", "version"}
NUMBERS = (-1, 0, 1, 2, 3, 0.5, 24, 100)
RIGHT = {0, 1, 2}


@cache
def _verbs() -> dict[str, click.Command]:
    from sequencer.cli import main

    return {name: verb for name, verb in main.commands.items() if name not in LEFT_OUT}


@cache
def _song() -> bytes:
    import io

    import numpy as np
    import soundfile

    rate = 8000
    sound = np.zeros(12 * rate)
    for k in range(23):
        at = int((0.5 + 0.5 * k) * rate)
        sound[at : at + 300] += np.sin(np.arange(300) * 0.5) * (1.0 if k % 4 else 0.5)
    out = io.BytesIO()
    soundfile.write(out, sound, rate, format="WAV")
    return out.getvalue()


def command_line(seed: int) -> list[str]:
    """The words of a case."""
    draw = Random(seed)  # noqa: S311 (no secret: a case is made again from its seed)
    name = draw.choice(sorted(_verbs()))
    verb = _verbs()[name]
    options = [
        each
        for each in verb.params
        if isinstance(each, click.Option) and each.name not in NOT_ASKED
    ]
    words = [name]
    places = sum(isinstance(each, click.Argument) for each in verb.params)
    words += [_place(draw, name) for _ in range(places) if draw.random() < 0.95]
    for each in draw.sample(options, min(len(options), draw.choice((0, 1, 1, 2, 3)))):
        flag = draw.choice((*each.opts, *each.secondary_opts))
        words += [flag] if each.is_flag else [flag, _value(each, draw)]
    if name in {"check", "draw", "rehearse", "sheet", "trace"} and draw.random() < 0.9:
        words.append("--drawn")
    if draw.random() < 0.1:
        words.insert(draw.randrange(len(words) + 1), draw.choice(SAID))
    if name == "new" and "--no-draft" not in words:
        words.append("--no-draft")
    return words


def _place(draw: Random, verb: str) -> str:
    shows = ("empty",) if verb == "draft" else FILES[:3]  # a real draft takes its time
    return draw.choice(shows if draw.random() < 0.6 else (*FILES[3:], *SAID))


def _value(option: click.Option, draw: Random) -> str:
    kind = option.type
    if draw.random() < 0.3:
        return draw.choice(SAID)
    if isinstance(kind, click.Choice):
        return str(draw.choice(kind.choices))
    if isinstance(kind, click.Path):
        return draw.choice(FILES)
    if isinstance(kind, click.types.IntParamType | click.types.FloatParamType):
        return str(draw.choice(NUMBERS))
    return draw.choice(SAID)


class Started:
    """The command as it is started from a shell, with a standard output that refuses no letter."""

    name = "sequencer"

    @staticmethod
    def main(**given) -> None:
        """As click's own."""
        from sequencer import __main__ as entry
        from sequencer.cli import main

        entry._write_out_strange_letters()
        main.main(**given)


def run(seed: int) -> str:
    """'taken' or 'refused'.

    Raises
    ------
    AssertionError
        If it ends as a fault in the program, or is refused in a way that helps nobody.
    """
    from click.testing import CliRunner

    words = command_line(seed)
    told_as = repr(words)[:300]
    with tempfile.TemporaryDirectory() as base:
        folder = Path(base)
        _filled(folder)
        with chdir(folder):
            before = {
                name: (folder / name).read_bytes() for name in ("song.wav", "taps.txt", "empty")
            }
            result = CliRunner().invoke(Started, words)
            after = {
                name: (folder / name).read_bytes() for name in before if (folder / name).is_file()
            }
    assert result.exit_code in RIGHT, f"{told_as}: {result.exit_code} {result.output[-600:]}"
    assert "Traceback" not in result.output, f"{told_as}: {result.output[-600:]}"
    assert after == before or "--force" in words, (
        f"{told_as}: a file that was only to be read is another"
    )
    if result.exit_code == 2:
        told = [line for line in result.stderr.splitlines() if line.strip()]
        assert told, f"{told_as}: no word"
        assert len(told[-1]) <= 1500, f"{told_as}: {len(told[-1])} letters"
        assert all(each.isprintable() for each in told), f"{told_as}: {told}"
    return "refused" if result.exit_code == 2 else "taken"


def _filled(folder: Path) -> None:
    (folder / "show.yaml").write_text(SHOWS, encoding="utf-8")
    (folder / "song.wav").write_bytes(_song())
    (folder / "taps.txt").write_text(
        "\n".join(f"{0.5 + 0.5 * k}" for k in range(20)), encoding="utf-8"
    )
    (folder / "empty").touch()
    (folder / "folder").mkdir()
    (folder / "-x").write_text(SHOWS, encoding="utf-8")
    os.utime(folder / "song.wav", (1e9, 1e9))
