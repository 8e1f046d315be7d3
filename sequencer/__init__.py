"""From a song to a fire-spinning routine that can be danced, checked and printed.

The folders are the layers; imports run downwards only (held by import-linter):

    cli        the command line: options in, one task, text out
    tasks      the library's front door, one function a verb
    outputs    tables, sheets, charts, traces        |  checks   verdicts on a show
    listening  hears beats, bars, sections in a song |  show     the show file and its timeline
    motion     laws of hands and props, joins, links
    geometry   frames, bodies, certified distances   |  timing   beats, seconds, bar.beat
    arrays, facts, findings, files, units            plain records, sourced numbers, safe writing
    errors     what a caller may catch
"""

__version__ = "0.1.0"
