"""One check of a show, declared as data: the function it runs and every finding code it can give.

Another package adds its checks through an entry point of the group `sequencer.checks`; see
`checks.registry`.
"""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from sequencer.checks.outcome import Outcome, outcome_record, restored_outcome
from sequencer.facts.cautions import CONDITIONS, Condition
from sequencer.findings import SEVERITIES, Severity
from sequencer.kept import shelved
from sequencer.plugins import any_installed
from sequencer.staging.carrying import parts_content, same_files_beside
from sequencer.staging.results import SHOW_PARTS, OfParts, Part, result_of
from sequencer.staging.staged import Staged

Codes = Mapping[str, tuple[Severity, ...]]
_KEBAB = re.compile(r"[a-z]+(-[a-z0-9]+)*")


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Check:
    """One check: a staged show in, an outcome out.

    Raises
    ------
    ValueError
        If a name is not in kebab case, no code is declared, or a severity, a condition or a part is
        unknown.
    """

    name: str  # in kebab case, such as "burning-time"
    run: Callable[[Staged], Outcome]
    codes: Codes  # every finding code it can give, with its possible severities
    # the caution condition that a code raises
    cautions: Mapping[str, Condition] = field(default_factory=dict)
    of_fuel: tuple[str, ...] = ()  # codes listed on the fuel keeper's sheet
    after: tuple[str, ...] = ()  # names of checks whose findings it uses (`registry.found_by`)
    # a change to one of these can change its outcome; what belongs to no part, such as the cast, always can
    depends_on: tuple[Part, ...] = SHOW_PARTS
    progress: str = ""  # shown while it runs; "checking" and its name if empty
    share: float = 0.0  # of the running time of all checks
    on_request: bool = False  # runs only on request, as `check --danced` does
    replaces: tuple[str, ...] = ()  # codes of other checks that are not told where it has run
    # the same findings, without those of their mends that take long to find
    unmended: Callable[[Staged], Outcome] | None = None

    def __post_init__(self) -> None:
        for name in (self.name, *self.codes):
            if not _KEBAB.fullmatch(name):
                raise ValueError(f"check {self.name!r}: {name!r} is not in kebab case")
        if not self.codes:
            raise ValueError(f"check {self.name!r} declares no finding code")
        for code, severities in self.codes.items():
            if not severities or not set(severities) <= set(SEVERITIES):
                raise ValueError(
                    f"check {self.name!r}: severities of {code!r} are some of {SEVERITIES}, "
                    f"got {severities!r}"
                )
        if not {*self.cautions, *self.of_fuel} <= set(self.codes):
            raise ValueError(
                f"check {self.name!r}: cautions and of_fuel are about codes that it declares"
            )
        if not set(self.cautions.values()) <= set(CONDITIONS):
            raise ValueError(f"check {self.name!r}: conditions are some of {CONDITIONS}")
        if not set(self.depends_on) <= set(SHOW_PARTS):
            raise ValueError(f"check {self.name!r} depends on some of {SHOW_PARTS}")

    @property
    def words(self) -> str:
        """Shown while it runs."""
        return self.progress or f"checking {self.name}"

    @property
    def can_fail(self) -> bool:
        """Whether any of its findings can stop a show, or warns."""
        return any(each != "note" for severities in self.codes.values() for each in severities)

    def outcome(self, show: Staged) -> Outcome:
        """Its outcome for a show, computed once per show.

        Raises
        ------
        ValueError
            If it gives a code or a severity that it does not declare.
        """
        return result_of(show, self, lambda: self._shelved(show))

    def outcome_of(self, show: Staged) -> Outcome:
        """Its outcome for a show whose motion is not that of its file, computed once per show.

        Raises
        ------
        ValueError
            As `outcome`.
        """
        return result_of(show, self, lambda: self._as_declared(self.run(show)))

    def faults(self, show: Staged) -> Outcome:
        """Its outcome, for those who only ask what is wrong: mends may be missing.

        Raises
        ------
        ValueError
            As `outcome`.
        """
        work = self.unmended
        if work is None or self in show.results:
            return self.outcome(show)
        key = OfParts(work, self.depends_on)
        return result_of(show, key, lambda: self._as_declared(work(show)))

    def _shelved(self, show: Staged) -> Outcome:
        """Its outcome, as it lies on the shelf of a show whose parts are the same."""

        def record(outcome: Outcome) -> list[Any]:
            if not same_files_beside(show):
                raise ValueError("a file that the check read is another one now")
            return outcome_record(outcome)

        return shelved(
            "outcome",
            lambda: self._key(show),
            lambda: self._as_declared(self.run(show)),
            record=record,
            restore=restored_outcome,
        )

    def _key(self, show: Staged) -> tuple[str, bytes] | None:
        """All that its outcome depends on; None if that is the whole show, or is not known."""
        if set(self.depends_on) == set(SHOW_PARTS) or any_installed():
            return None
        parts = parts_content(show, self.depends_on)
        return None if parts is None else (self.name, parts)

    def _as_declared(self, outcome: Outcome) -> Outcome:
        """The outcome, once each finding is known to be declared."""
        for finding in outcome.findings:
            if finding.severity not in self.codes.get(finding.code, ()):
                raise ValueError(
                    f"check {self.name!r} gives {finding.code!r} as {finding.severity!r}, which it "
                    "does not declare under codes"
                )
        return outcome
