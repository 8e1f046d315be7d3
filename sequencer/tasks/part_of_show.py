"""A part of a show, as it is asked for: from one moment to another, in a performer's words."""

from dataclasses import dataclass

from sequencer.errors import InputError, Place
from sequencer.show.reading import ReadShow
from sequencer.staging.staged import Staged
from sequencer.staging.timeline import staged
from sequencer.timing.position import Moment, parse_moment
from sequencer.timing.song import Song


@dataclass(frozen=True, slots=True, kw_only=True)
class PartOfShow:
    """From one moment to another: bar.beat, m:ss.s of the track or a section, as in a show file."""

    start: str | None = None  # the start of the track if not given
    until: str | None = None  # its end if not given

    def staged(self, read: ReadShow, song: Song) -> Staged:
        """The part staged, as the whole show is there.

        Raises
        ------
        InputError
            If the show cannot be staged, or a moment is not in the song.
        """
        between = _moment(self.start, "--from"), _moment(self.until, "--until")
        try:
            return staged(read, song, between=between)
        except ValueError as error:
            raise _refused(str(error), "--from" if self.until is None else "--until") from error


def _moment(text: str | None, option: str) -> Moment | None:
    try:
        return None if text is None else parse_moment(text)
    except ValueError as error:
        raise _refused(str(error), option) from error


def _refused(what: str, option: str) -> InputError:
    return InputError(
        "no-such-moment", Place(option), what,
        "write bar.beat (17.3), m:ss.s of the track (1:02.5) or a section (verse 2)",
    )  # fmt: skip
