"""The library's front door: one function per command. Only here do listening, show, checks and outputs meet."""

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sequencer.tasks.comparisons import compare_shows, comparison_words
    from sequencer.tasks.dancing import Dancing
    from sequencer.tasks.drafts import draft_show, draft_words
    from sequencer.tasks.folders import chart_folder, folder_text, hear_folder
    from sequencer.tasks.mend import mend_show
    from sequencer.tasks.packing import pack_show, unpack_show
    from sequencer.tasks.part_of_show import PartOfShow
    from sequencer.tasks.practising import log_practice, plan_practice
    from sequencer.tasks.print_outs import print_sheets, trace_show, write_rehearsal
    from sequencer.tasks.recounting import recount_show
    from sequencer.tasks.schema_files import schema_text, write_schema
    from sequencer.tasks.shows import check_show, report_text, stage_show
    from sequencer.tasks.songs import click_song, draw_song, hear_song, song_text
    from sequencer.tasks.starting import start_show
    from sequencer.tasks.vocabulary import trace_pattern

__all__ = [
    "Dancing",
    "PartOfShow",
    "chart_folder",
    "check_show",
    "click_song",
    "compare_shows",
    "comparison_words",
    "draft_show",
    "draft_words",
    "draw_song",
    "folder_text",
    "hear_folder",
    "hear_song",
    "log_practice",
    "mend_show",
    "pack_show",
    "plan_practice",
    "print_sheets",
    "recount_show",
    "report_text",
    "schema_text",
    "song_text",
    "stage_show",
    "start_show",
    "trace_pattern",
    "trace_show",
    "unpack_show",
    "write_rehearsal",
    "write_schema",
]
_HOMES = {
    "chart_folder": "folders",
    "click_song": "songs",
    "compare_shows": "comparisons",
    "comparison_words": "comparisons",
    "Dancing": "dancing",
    "draft_show": "drafts",
    "draft_words": "drafts",
    "draw_song": "songs",
    "folder_text": "folders",
    "hear_folder": "folders",
    "hear_song": "songs",
    "log_practice": "practising",
    "mend_show": "mend",
    "pack_show": "packing",
    "PartOfShow": "part_of_show",
    "plan_practice": "practising",
    "print_sheets": "print_outs",
    "recount_show": "recounting",
    "schema_text": "schema_files",
    "song_text": "songs",
    "start_show": "starting",
    "trace_pattern": "vocabulary",
    "trace_show": "print_outs",
    "unpack_show": "packing",
    "write_rehearsal": "print_outs",
    "write_schema": "schema_files",
}  # all others are in `shows`


def __getattr__(name: str) -> object:
    """Load a task when it is first used: each needs only a part of the house."""
    if name not in __all__:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    home = import_module(f"{__name__}.{_HOMES.get(name, 'shows')}")
    value: object = getattr(home, name)
    globals()[name] = value
    return value
