"""The rehearsal page: one HTML file that dances a show or a single pattern, opened from disk, without a network."""

from sequencer.outputs.rehearsal.page_file import rehearsal_page, write_page

__all__ = ["rehearsal_page", "write_page"]
