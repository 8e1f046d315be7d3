"""The door of a shared show: who is let in, how often may be guessed, and what a guess is worth."""

import pytest

from sequencer.desk.share import share_door
from sequencer.desk.share.share_door import (
    CODE_LENGTH,
    CODE_LETTERS,
    MOST_GUESTS,
    NotLetInError,
    ShareDoor,
)


class Clock:
    now = 0.0

    def __call__(self):
        return self.now


@pytest.fixture
def clock():
    return Clock()


@pytest.fixture
def door(clock):
    return ShareDoor(clock)


def refused(door, code, address="10.0.0.5"):
    with pytest.raises(NotLetInError) as error:
        door.join(code, address)
    return error.value


def test_the_code_is_long_readable_and_another_one_each_time():
    codes = {ShareDoor().code for _ in range(200)}
    assert len(codes) == 200
    assert all(len(code.replace("-", "")) == CODE_LENGTH and set(code) <= {*CODE_LETTERS, "-"} for code in codes)  # fmt: skip
    assert not set("01ILO") & set(CODE_LETTERS)
    assert len(CODE_LETTERS) ** CODE_LENGTH / share_door.MOST_WRONG > 1e9


def test_as_it_is_typed_on_a_phone(door):
    for typed in (door.code, door.code.lower(), door.code.replace("-", " "), f" {door.code} "):
        token = door.join(typed, "10.0.0.5")
        assert door.knows(token)
    assert not door.knows("")
    assert not door.knows("é" * 43)
    assert not door.knows(token[:-1])


@pytest.mark.parametrize("code", ["", "-", "AAAA-AAAA", "x" * 1000, "é", "٣"])
def test_what_is_not_the_code(door, code):
    error = refused(door, code)
    assert (error.status, error.words) == (403, "this is not the code")


def test_an_address_that_guesses_has_to_wait_longer_each_time(door, clock):
    for _ in range(4):
        assert refused(door, "WRONG").wait == 0
    assert refused(door, "WRONG").wait == 60
    error = refused(door, door.code)  # also with the right one
    assert (error.status, error.wait) == (429, 60)
    assert door.join(door.code, "10.0.0.6")  # others are let in
    clock.now = 59.0
    assert refused(door, door.code).status == 429
    clock.now = 60.1
    assert refused(door, "WRONG").wait == 120
    clock.now = 60.1 + 120.1
    assert door.join(door.code, "10.0.0.5")
    assert refused(door, "WRONG").wait == 0, "who was let in begins anew"


def test_waiting_guesses_do_not_count_and_no_wait_is_without_end(door, clock):
    waits = []
    for _ in range(20):
        waits.append(refused(door, "WRONG").wait)
        refused(door, "WRONG")
        clock.now += waits[-1] + 0.1
    assert max(waits) == 3600
    assert not door.shut


def test_after_a_hundred_wrong_codes_from_anywhere_nobody_joins(door):
    before = door.join(door.code, "10.0.0.1")
    for k in range(100):
        assert not door.shut
        refused(door, "WRONG", f"10.0.1.{k}")
    assert door.shut
    assert "shared anew" in refused(door, door.code, "10.0.0.2").words
    assert door.knows(before), "who watches goes on"


def test_no_more_than_so_many(door):
    tokens = [door.join(door.code, f"10.0.0.{k}") for k in range(MOST_GUESTS)]
    assert f"{MOST_GUESTS} watch already" in refused(door, door.code, "10.0.2.1").words
    door.send_away()
    assert not any(map(door.knows, tokens))


def test_every_token_is_compared_in_constant_time(door, monkeypatch):
    """However early one is the right one, all are looked at, each by a comparison that takes as long whatever it finds."""
    tokens = [door.join(door.code, "10.0.0.5") for _ in range(3)]
    seen = []
    real = share_door.hmac.compare_digest
    monkeypatch.setattr(share_door.hmac, "compare_digest", lambda a, b: seen.append(b) or real(a, b))  # fmt: skip
    assert door.knows(tokens[0])
    assert len(seen) == 3
    door.join(door.code, "10.0.0.5")
    assert len(seen) == 4, "the code as well"
