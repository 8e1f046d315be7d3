"""Every reader of files takes or refuses whatever it is given: a short run of what benchmarks/fuzz.py does at length."""

import pytest

from sequencer.errors import InputError
from tests.fuzz.changes import changed_bytes, changed_text
from tests.fuzz.targets import TARGETS
from tests.repeated import often

CASES = {"show": 100, "audio": 120, "archive": 150, "options": 40}
FEWEST = (
    0.02  # of the cases are still taken: else only the first fault of each file would be looked at
)


@pytest.mark.filterwarnings("ignore:invalid value encountered:RuntimeWarning")
@pytest.mark.parametrize("share", often(0.5, 1))
@pytest.mark.parametrize("name", sorted(TARGETS))
def test_a_reader_takes_or_refuses(name, share):
    target = TARGETS[name]
    ends = [target.run(seed) for seed in range(int(share * CASES.get(name, 300)))]
    assert ends.count("taken") > FEWEST * len(ends)
    assert ends.count("refused") > 0.2 * len(ends)


@pytest.mark.parametrize("name", sorted(TARGETS))
def test_what_it_starts_from_is_taken(name):
    taken = [TARGETS[name].read(content) for content in TARGETS[name].seeds()]
    assert all(each is not None for each in taken)


# Found by the long run, and mended: kept by their seeds.
@pytest.mark.parametrize(
    ("name", "seed"),
    [("patterns", 24), ("patterns", 27), ("patterns", 94), ("patterns", 159), ("taps", 51), ("burns", 20075232)],
)  # fmt: skip
def test_what_was_let_through_once_is_refused(name, seed):
    assert TARGETS[name].run(seed) in {"taken", "refused"}


def test_a_song_cut_within_its_first_frame_is_refused():
    (song,) = (each for each in TARGETS["audio"].seeds() if each[:1] == b"\xff")
    with pytest.raises(InputError):
        TARGETS["audio"].read(song[:120])


def test_a_case_is_known_by_its_seed():
    assert changed_text("a: {b: 1}\n", 5) == changed_text("a: {b: 1}\n", 5)
    assert len({changed_text("a: {b: [1, 2, 3]}\nc: d\n", seed) for seed in range(50)}) > 40
    assert len({changed_bytes(b"RIFF0123456789", seed) for seed in range(50)}) > 40
