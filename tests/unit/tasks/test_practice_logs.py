"""What `check --danced` takes from a practice log: of whoever dances a part tonight, and of nobody else."""

from sequencer.show.reading import show_from_document
from sequencer.show.text.document import parse_document
from sequencer.staging.timeline import staged
from sequencer.tasks.practice_logs import practised_spreads
from tests.practice_show import SHOW
from tests.songs import even_song

TONIGHT = "tonight: {stand_ins: [{for: Bo, name: Cy, stature: 1.7 m}]}\n"


def test_a_part_strays_as_whoever_has_it_tonight(tmp_path):
    rows = {"Ada": "20 cm upstage", "Bo": "80 cm upstage", "Cy": "40 cm upstage"}
    lines = [f"2026-11-02,{who},{drift}" for who, drift in rows.items() for _ in range(5)]
    (tmp_path / "two.practice.csv").write_text(
        "\n".join(["date,performer,drift", *lines]), encoding="utf-8"
    )
    text, song = parse_document(SHOW + TONIGHT, str(tmp_path / "two.yaml")), even_song(beats=96)
    (tmp_path / "two.yaml").write_text(SHOW + TONIGHT, encoding="utf-8")
    (tmp_path / "song.ogg").touch()
    found = practised_spreads(staged(show_from_document(text), song))
    assert {who: round(each.place, 6) for who, each in found.items()} == {
        "Ada": round(0.2 / 2**0.5, 6),
        "Bo": round(0.4 / 2**0.5, 6),
    }
