"""The JSON Schema of show files, for editors that know it: of every show, or of one with its names."""

import json
from pathlib import Path

from sequencer.files import AnyPath


def schema_text() -> str:
    """The JSON Schema of a show file."""
    from sequencer.show.schemas.schema import editor_schema

    return json.dumps(editor_schema(), indent=2, ensure_ascii=False)


def write_schema(path: AnyPath) -> Path:
    """Write the JSON Schema of one show, with its names, beside it; the show need not be without faults.

    Returns
    -------
    written : Path
        `mine.schema.json` beside `mine.yaml`.

    Raises
    ------
    InputError
        If the show file is no YAML, names a file of patterns that cannot be used, or the schema cannot be written.
    """
    from sequencer.files import write_text
    from sequencer.show.schemas.schema import editor_schema
    from sequencer.show.schemas.schema_names import names_of
    from sequencer.show.text.document import read_document
    from sequencer.tasks.vocabulary import book_from

    values = read_document(Path(path)).values
    values = values if isinstance(values, dict) else {}
    book = book_from(path if {"patterns", "pattern_files"} & set(values) else None)
    names = names_of(values, book)
    target = Path(path).with_suffix(".schema.json")
    write_text(target, json.dumps(editor_schema(names), indent=1, ensure_ascii=False) + "\n")
    return target
