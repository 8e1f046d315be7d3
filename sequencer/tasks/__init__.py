"""The library's front door: one function per command. Only here do listening, show, checks and outputs meet."""

from sequencer.tasks.dancing import Dancing
from sequencer.tasks.folders import chart_folder, folder_text, hear_folder
from sequencer.tasks.mend import mend_show
from sequencer.tasks.shows import (
    check_show,
    click_song,
    draw_song,
    hear_song,
    print_sheets,
    report_text,
    schema_text,
    song_text,
    stage_show,
    start_show,
    trace_show,
    write_rehearsal,
)
from sequencer.tasks.vocabulary import trace_pattern

__all__ = [
    "Dancing",
    "chart_folder",
    "check_show",
    "click_song",
    "draw_song",
    "folder_text",
    "hear_folder",
    "hear_song",
    "mend_show",
    "print_sheets",
    "report_text",
    "schema_text",
    "song_text",
    "stage_show",
    "start_show",
    "trace_pattern",
    "trace_show",
    "write_rehearsal",
]
