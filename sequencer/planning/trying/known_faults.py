"""The faults of a show, by code and who: those of a code are sought when somebody first asks for one of them.

Most changes are settled by few checks, and only faults of their codes are compared with those that were there before.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence

from sequencer.findings import Finding

Who = tuple[str, ...]


class KnownFaults(Mapping[tuple[str, Who], Sequence[Finding]]):
    """Faults by code and who.

    Parameters
    ----------
    codes : iterable of str
        Of all faults that there may be.
    found : callable
        Finds those of one code, in their order.
    """

    def __init__(self, codes: Iterable[str], found: Callable[[str], Iterable[Finding]]) -> None:
        self._codes = tuple(dict.fromkeys(codes))
        self._found = found
        self._known: dict[str, dict[Who, list[Finding]]] = {}

    def __getitem__(self, key: tuple[str, Who]) -> Sequence[Finding]:
        code, who = key
        return self._of(code)[who]

    def __iter__(self) -> Iterator[tuple[str, Who]]:
        return ((code, who) for code in self._codes for who in self._of(code))

    def __len__(self) -> int:
        return sum(len(self._of(code)) for code in self._codes)

    def _of(self, code: str) -> Mapping[Who, list[Finding]]:
        if code not in self._codes:
            return {}
        if code not in self._known:
            own: dict[Who, list[Finding]] = {}
            for each in self._found(code):
                own.setdefault(each.who, []).append(each)
            self._known[code] = own
        return self._known[code]
