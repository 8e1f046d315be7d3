"""What is printed: a staged show, the result of its checks, and the lines that identify it on every page."""

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from pathlib import PurePath

from sequencer.alike_findings import as_one, by_cause
from sequencer.findings import Clearance, Finding, Report
from sequencer.outputs.sheets.page.bidi import apart, is_mixed
from sequencer.outputs.sheets.page.letters import uncovered
from sequencer.outputs.sheets.page.own_type import OwnType
from sequencer.outputs.sheets.page.wording import listed, plural, slug
from sequencer.outputs.sheets.parts.changes import Changes
from sequencer.safety.compliance import ComplianceRow, compliance
from sequencer.safety.rules.permits import permit_that_holds, permit_words
from sequencer.safety.safety_plan import SafetyPlan, safety_plan
from sequencer.show.file_records.site import VenueRecord
from sequencer.staging.in_flight.flown_show import flown_show
from sequencer.staging.staged import Staged

HASH_SHOWN = 12  # hex digits of the track's content hash; enough to distinguish any two cuts


@dataclass(frozen=True, kw_only=True, eq=False)
class Edition:
    """One printing of a show."""

    staged: Staged
    report: Report
    before: "Edition | None" = None  # the last print; changes since then are marked
    own_type: OwnType | None = None  # for letters that the sheets' type lacks
    flown: bool = False  # whether the report is of the show as flown
    turned: bool = False  # whether formations are seen from the performers' side

    @property
    def motion(self) -> Staged:
        """The show in the motion that the report is of: where heads go that come off is read from it."""
        return flown_show(self.staged).staged if self.flown else self.staged

    @cached_property
    def changes(self) -> Changes | None:
        """Changes since the last print; None if there is none."""
        return None if self.before is None else Changes(self.staged, self.before.staged)

    @property
    def plan(self) -> SafetyPlan:
        """Burns, crew and watches, the same as in the checks."""
        return safety_plan(self.staged)

    @cached_property
    def compliance(self) -> tuple[ComplianceRow, ...]:
        """What is asked and what the plan has; empty if nobody is lit."""
        return compliance(self.staged, self.report, self.motion)

    @property
    def title(self) -> str:
        """The show's title."""
        return self.staged.show.title

    @property
    def issue(self) -> str:
        """Version and date of the show file."""
        date = self.staged.show.date or "no date in the show file"
        return f"version {self.staged.show.version} · {date}"

    @property
    def track(self) -> str:
        """Name of the track's file, without folders."""
        return PurePath(self.staged.song.track.replace("\\", "/")).name

    @property
    def track_hash(self) -> str:
        """First digits of the track's content hash."""
        return self.staged.song.sha256[:HASH_SHOWN]

    @property
    def is_draft(self) -> bool:
        """Whether no permit that holds for this place and night is recorded."""
        return permit_that_holds(self.staged.show) is None

    @cached_property
    def stops(self) -> tuple[Finding, ...]:
        """Findings that stop the show."""
        return tuple(f for f in self.report.findings if f.severity == "stop")

    @property
    def banner(self) -> str:
        """Warning for the head of every page; empty if nothing stops the show."""
        if not self.stops:
            return ""
        return f"DO NOT DANCE YET – {plural(len(self.stops), 'finding')} against this show"

    @property
    def is_lit(self) -> bool:
        """Whether anybody is lit in this show."""
        return bool(self.staged.lit)

    @property
    def printed_for(self) -> dt.date | None:
        """Date of the show file."""
        date = self.staged.show.date
        return dt.date.fromisoformat(date) if date else None

    def number_of(self, who: str) -> int:
        """A performer's number, from 1 in the order of the cast."""
        return self.staged.number_of(who)

    def person(self, part: str) -> str:
        """Who has a part tonight, as a title: with the part that they take if they stand in."""
        name = self.staged.taken_by(part)
        return part if name == part else f"{name} for {part}"

    @property
    def tonight(self) -> str:
        """Who is away and who stands in, for the head of each sheet; empty if everybody is there."""
        tonight = self.staged.show.tonight
        if tonight is None:
            return ""
        words = [self.person(each.part) for each in tonight.stand_ins]
        if tonight.away:
            words.append(f"{listed(tonight.away)} away")
        return f"Tonight: {', '.join(words)}" if words else ""

    def in_order(self, text: str) -> str:
        """Text in which every name with mixed writing directions is isolated."""
        for name in self._turned:
            text = text.replace(name, apart(name))
        return text

    @cached_property
    def _turned(self) -> tuple[str, ...]:
        show = self.staged.show
        names = {*show.names, *(post.name for post in show.crew), *show.formations}
        names |= set(_named(show.venue))
        return tuple(sorted((n for n in names if is_mixed(n)), key=lambda n: (-len(n), n)))

    def file_part(self, who: str) -> str:
        """A performer's part of a file name; the number distinguishes names that look alike in plain letters."""
        return self._file_parts[who]

    @cached_property
    def _file_parts(self) -> dict[str, str]:
        parts: dict[str, str] = {}
        taken: set[str] = set()
        for number, name in enumerate(self.staged.show.names, start=1):
            part = slug(name)
            parts[name] = part if part not in taken else f"{part}-no{number}"
            taken.add(parts[name])
        return parts

    def findings_for(self, who: str | None = None) -> tuple[Finding, ...]:
        """Findings about a performer or the whole show; all findings if nobody is given. One cause is one finding."""
        own = (f for f in self.report.findings if who is None or not f.who or who in f.who)
        return tuple(as_one(group, self.report.bars) for group in by_cause(own))

    def close_passes(self, who: str | None = None) -> tuple[Clearance, ...]:
        """Measured clearances, the tightest against its requirement first."""
        measured = (
            c for c in self.report.clearances if not c.bound and (who is None or who in c.between)
        )
        return tuple(sorted(measured, key=lambda c: (c.distance - c.required, c.at, c.between)))

    def missing_letters(self) -> tuple[str, ...]:
        """Letters in the show's texts that the embedded type lacks."""
        return uncovered(self._own_words)

    @property
    def own_letters(self) -> str:
        """Letters in the show's texts that are not plain ASCII."""
        return "".join(
            sorted({each for words in self._own_words for each in words if ord(each) > 127})
        )

    @cached_property
    def _own_words(self) -> frozenset[str]:
        """Texts with letters that are not plain ASCII: gathered once, for every sheet asks which of them the type lacks."""
        return frozenset(words for words in self._words() if not words.isascii())

    def _words(self) -> Iterable[str]:
        show = self.staged.show
        yield from (show.title, show.version, show.venue.name, self.staged.song.track)
        yield from show.names
        yield from (note for dancer in show.cast for note in dancer.notes)
        yield self.tonight
        yield from show.formations
        yield from (section.label for section in self.staged.song.sections)
        yield from (accent.note for accent in self.staged.accents)
        for block in (*self.staged.stops, *self.staged.blocks):
            yield from (block.note, block.cue)
            yield from (part.pattern for part in block.hands.values())
        for post in show.crew:
            yield from (post.name, *post.equipment)
        yield from _named(show.venue)
        yield from (show.stop_call.word, show.stop_call.signal)
        yield from (words for does in show.stop_call.does.values() for words in does)
        yield from (words for _, words in show.emergency.lines if words)
        yield from show.weather.lines
        yield from filter(None, (permit_words(show), show.rules.authority, *show.rules.profile))
        if show.fire is not None:
            yield show.fire.fuel
        for finding in self.report.findings:
            yield from (finding.message, finding.source, *finding.remedies)


def _named(venue: VenueRecord) -> tuple[str, ...]:
    """Names of everything at the venue."""
    return (
        *(thing.name for thing in venue.scenery),
        *(place.name for place in venue.exits),
        *(edge.name for edge in venue.audience),
    )
