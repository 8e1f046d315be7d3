"""Who may watch a shared show: whoever types its code; wrong codes are answered more and more slowly, and then not at all."""

import hmac
import secrets
import time
from collections.abc import Callable

CODE_LETTERS = "23456789ABCDEFGHJKMNPQRSTUVWXYZ"  # none that is read as another one
CODE_LENGTH = 8  # of 31 letters: 8.5e11 codes
MOST_GUESTS = 40
FREE = 5  # wrong codes of one address before it has to wait
WAIT = 60.0  # [s] then, and twice as long after each further one
LONGEST_WAIT = 3_600.0  # [s]
MOST_WRONG = (
    100  # of everybody: then nobody can join any more; one guess in 8.5e9 would have been right
)


class NotLetInError(Exception):
    """Somebody is not let in.

    Parameters
    ----------
    status : int
        Of the answer.
    words : str
        Why.
    wait : float
        For how long they have to wait [s]; 0 if that does not help, or need not be.
    """

    def __init__(self, status: int, words: str, wait: float = 0.0) -> None:
        super().__init__(words)
        self.status, self.words, self.wait = status, words, wait


class ShareDoor:
    """The code, and those who were let in by it.

    Parameters
    ----------
    clock : callable
        Seconds that only rise.
    """

    def __init__(self, clock: Callable[[], float] = time.monotonic) -> None:
        self._clock = clock
        letters = "".join(secrets.choice(CODE_LETTERS) for _ in range(CODE_LENGTH))
        self.code = f"{letters[:4]}-{letters[4:]}"
        self._guests: list[bytes] = []
        self._wrong: dict[
            str, tuple[int, float]
        ] = {}  # by address: how often, and until when it has to wait
        self._all_wrong = 0

    def __repr__(self) -> str:
        return f"<ShareDoor: {len(self._guests)} let in, {self._all_wrong} wrong codes>"

    @property
    def shut(self) -> bool:
        """Whether nobody can join any more."""
        return self._all_wrong >= MOST_WRONG

    def join(self, code: str, address: str) -> str:
        """The token by which somebody is known from then on.

        Parameters
        ----------
        code : str
            As it was typed: small letters, spaces and hyphens do not matter.
        address : str
            From where.

        Raises
        ------
        NotLetInError
            If the code is wrong, or was wrong too often.
        """
        now = self._clock()
        times, until = self._wrong.get(address, (0, 0.0))
        if self.shut:
            raise NotLetInError(
                403, "wrong codes came too often: nobody can join any more until the show is shared anew"
            )  # fmt: skip
        if now < until:
            raise NotLetInError(429, "that was wrong too often: wait, then try again", until - now)
        given = "".join(letter for letter in code.upper() if letter.isalnum())
        if not hmac.compare_digest(given.encode(), self.code.replace("-", "").encode()):
            self._all_wrong += 1
            times += 1
            wait = min(WAIT * 2.0 ** (times - FREE), LONGEST_WAIT) if times >= FREE else 0.0
            self._wrong[address] = times, now + wait
            raise NotLetInError(403, "this is not the code", wait)
        if len(self._guests) >= MOST_GUESTS:
            raise NotLetInError(403, f"{MOST_GUESTS} watch already")
        self._wrong.pop(address, None)
        token = secrets.token_urlsafe(32)
        self._guests.append(token.encode())
        return token

    def knows(self, token: str) -> bool:
        """Whether a token was given to somebody; it takes as long whichever it is."""
        given = token.encode("utf-8", "replace")
        same = [hmac.compare_digest(given, own) for own in self._guests]
        return any(same)

    def send_away(self) -> None:
        """Everybody has to join anew."""
        self._guests.clear()
