"""A show file and its song in a folder of their own, for the planning page."""

import soundfile as sf

from tests.cli.conftest import RATE, click_track


def beside_its_song(folder, text, name="two.yaml"):
    """The path of a show file with that text, beside clicks that it names as its song."""
    sf.write(folder / "song.wav", click_track(), RATE)
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path
