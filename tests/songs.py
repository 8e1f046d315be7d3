"""The one maker of songs as heard: steady beats, bars and sections, all known beforehand."""

from itertools import accumulate, pairwise

from sequencer.timing.song import Section, Song

SHA = "0" * 64


def even_song(
    beats=64, *, tempo=120.0, start=0.0, metre=4, lengths=None, duration=None, sections="A",
    track="song.ogg", sha256=SHA, **more,
):  # fmt: skip
    """A song of one tempo.

    Parameters
    ----------
    beats : int
        How many; the first is the first of a bar.
    tempo : float
        [beats a minute]
    start : float
        Of the first beat [s].
    metre : int
    lengths : sequence of int, optional
        Beats of each bar, where they are not all of one length; then `beats` is not looked at.
    duration : float, optional
        [s]; one beat after the last one if not given.
    sections : str or mapping of float to str
        Label of the whole, or of each section by its start [s].
    **more
        The other fields of a Song.
    """
    length = 60 / tempo
    bars = list(lengths or [metre] * -(-beats // metre))
    times = tuple(start + length * k for k in range(sum(bars) if lengths else beats))
    firsts = [k for k in accumulate([0, *bars[:-1]]) if k < len(times)]
    end = times[-1] + length if duration is None else duration
    labels = {0.0: sections} if isinstance(sections, str) else sections
    edges = pairwise([*labels, end])
    return Song(
        track=track, sha256=sha256, duration=end, tempo=tempo, metre=metre, beats=times,
        downbeats=tuple(times[k] for k in firsts),
        sections=tuple(
            Section(start=a, end=b, label=label)
            for (a, b), label in zip(edges, labels.values(), strict=True)
        ),
        **more,
    )  # fmt: skip


def silent_song(**more):
    """A track in which no beat was heard."""
    given = {"track": "s.wav", "sha256": SHA, "duration": 18.0, **more}
    whole = (Section(start=0.0, end=given["duration"], label="A"),)
    return Song(tempo=0.0, metre=4, beats=(), downbeats=(), **{"sections": whole, **given})
