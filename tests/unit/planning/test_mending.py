import pytest

from sequencer.errors import InputError
from sequencer.planning.mending import mended_spacing
from sequencer.planning.mends.space_mends import baseline, harm_of, too_close
from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from sequencer.tasks.mend import mend_show
from tests.songs import even_song

SONG = even_song(32)
SHOW = """\
title: Two
track: {file: song.ogg}
venue:
  stage: {shape: rectangle, width: 14 m, depth: 8 m}
  audience: [{line: [[-7, -9], [7, -9]]}]
cast:
  - {name: Ash, stature: 1.7, prop: &poi {tether: 0.45}}
  - {name: Birch, stature: 1.7, prop: *poi}
formations:
  close:  # too close on purpose
    FORMATION
staging:
  - {formation: close, from: 1.1}
timeline:
  - {from: 3.1, pattern: extension, cycle: 2, beats: 12, timing: together}
fire:
  fuel: kerosene
  flame: 0.3 m
  lit: [{from: 1.1, until: 8.1}]
"""
SPOTS = "spots: {Ash: {at: [-1, 4]}, Birch: {at: [APART, 4]}}"


def stage(text):
    return staged(show_from_document(parse_document(text, "s.yaml")), SONG)


def mended(formation):
    return mended_spacing(SHOW.replace("FORMATION", formation), "s.yaml", SONG)


def test_spots_are_moved_until_nobody_is_too_close():
    spaced = mended(SPOTS.replace("APART", "0.9"))

    assert spaced.left == ()
    assert len(spaced.done) >= 1
    assert "close" in spaced.done[0]
    assert "# too close on purpose" in spaced.text
    again = mended_spacing(spaced.text, "s.yaml", SONG)
    assert again.done == ()
    assert again.text == spaced.text


def test_what_is_roomy_is_left_alone():
    spaced = mended(SPOTS.replace("APART", "3"))

    assert (spaced.done, spaced.left) == ((), ())
    assert spaced.text == SHOW.replace("FORMATION", SPOTS.replace("APART", "3"))


def test_named_shapes_are_mended_by_what_makes_them():
    spaced = mended("shape: line\n    centre: [0, 4]\n    spacing: 1.9")

    assert spaced.left == ()
    assert "close" in spaced.done[0]
    assert "shape: line" in spaced.text
    assert "spots" not in spaced.text
    assert too_close(stage(spaced.text)) == ()


def test_what_is_left_is_said():
    """Three in a box so small that no single change parts any two."""
    cast = "".join(f"  - {{name: P{k}, stature: 1.7, prop: *poi}}\n" for k in range(1))
    text = SHOW.replace("FORMATION", "shape: line\n    centre: [0, 4]\n    spacing: 0.4").replace(
        "  - {name: Birch, stature: 1.7, prop: *poi}\n",
        "  - {name: Birch, stature: 1.7, prop: *poi}\n" + cast,
    ).replace("width: 14 m, depth: 8 m", "width: 2 m, depth: 2 m").replace("[0, 4]", "[0, 1]")  # fmt: skip
    spaced = mended_spacing(text, "s.yaml", SONG)

    assert spaced.left
    assert all("too close" in words for words in spaced.left)
    assert len(spaced.left) == len(too_close(stage(spaced.text)))


def test_a_move_never_brings_anyone_too_near_to_something_else():
    """Birch could go upstage but for the edge, Ash downstage but for the fence: both aside, then."""
    text = SHOW.replace("FORMATION", SPOTS.replace("APART", "0.9")).replace(
        "audience: [{line: [[-7, -9], [7, -9]]}]",
        "audience: [{line: [[-30, -6.3], [30, -6.3]]}]",
    )
    spaced = mended_spacing(text, "s.yaml", SONG)
    before = baseline(stage(text))

    assert harm_of(before, stage(spaced.text), trajectories=True) == ()


def test_a_file_is_written_whole_or_not_at_all(tmp_path, monkeypatch):
    path = tmp_path / "s.yaml"
    text = SHOW.replace("FORMATION", SPOTS.replace("APART", "0.9"))
    path.write_text(text, encoding="utf-8")
    (tmp_path / "song.ogg").write_bytes(b"")
    monkeypatch.setattr("sequencer.tasks.songs.hear_song", lambda *_args, **_named: SONG)

    def fail(self, _target):
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as broken:
        broken.setattr("pathlib.Path.replace", fail)
        with pytest.raises(InputError, match="disk is full"):
            mend_show(path)
    assert path.read_text("utf-8") == text
    assert [each.name for each in tmp_path.iterdir() if each.name.startswith(".partial")] == []
    mended_show = mend_show(path)
    assert path.read_text("utf-8") == mended_show.text != text
    assert "# too close on purpose" in mended_show.text
