"""The rehearsal page: one HTML file that dances a show, or one pattern, from disk and without a network."""

from sequencer.outputs.rehearsal.page import rehearsal_page, write_page

__all__ = ["rehearsal_page", "write_page"]
