"""The JSON Schema of a show file, for editors that complete and check while you type."""

from typing import Any

from sequencer.show.model import Show


def show_schema() -> dict[str, Any]:
    """JSON Schema, draft 2020-12, of a show file.

    Every scalar may also be written as text: the reader takes `8`, `"8"` and `8 beats` alike.
    """
    schema = Show.model_json_schema(by_alias=True, mode="validation")
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "$comment": "written by `sequencer new --schema`",
        **schema,
    }
