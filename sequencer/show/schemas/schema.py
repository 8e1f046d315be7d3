"""The JSON Schema of a show file, for editors that complete and check while you type."""

from typing import Any

from sequencer.show.file_records.step_kinds import NEVER_TOGETHER, STEP_KINDS, is_of_use
from sequencer.show.model import Entry, Show
from sequencer.show.schemas.schema_names import SchemaNames, with_names, with_vocabulary
from sequencer.show.schemas.schema_parameters import with_parameters


def show_schema(names: SchemaNames | None = None) -> dict[str, Any]:
    """JSON Schema, draft 2020-12, of a show file: of any show, or of one with its names.

    Every scalar may also be written as text: the reader takes `8`, `"8"` and `8 beats` alike.

    Parameters
    ----------
    names : SchemaNames, optional
        Names of one show; an editor then offers them, and marks any other.
    """
    schema = Show.model_json_schema(by_alias=True, mode="validation")
    if names is None:
        with_vocabulary(schema)
    else:
        with_names(schema, names)
    with_parameters(schema)
    written = "sequencer new --schema" if names is None else "sequencer new SHOW --schema"
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "$comment": f"written by `{written}`",
        **schema,
    }


def editor_schema(names: SchemaNames | None = None) -> dict[str, Any]:
    """The schema as editors are given it: each form of a value says what the value is for.

    Parameters
    ----------
    names : SchemaNames, optional
        As for `show_schema`.
    """
    schema = show_schema(names)
    _tell_what_for(schema)
    return schema


def _tell_what_for(schema: dict[str, Any]) -> None:
    """Say in each form of a value what the value is for: an editor shows the words of the form that it found, not those of the key."""
    for record in (schema, *schema["$defs"].values()):
        for field in record.get("properties", {}).values():
            forms = [form for form in field.get("anyOf", ()) if "description" in form]
            for form in forms if "description" in field else ():
                form["description"] = f"{field['description']}; {form['description']}"


def step_kinds() -> dict[str, Any]:
    """What each kind of entry can say, for forms: what makes it one, its keys, and keys that exclude each other."""
    keys = {name: field.alias or name for name, field in Entry.model_fields.items()}
    return {
        "kinds": {
            kind: {
                "made_by": [*names],
                "takes": [key for name, key in keys.items() if is_of_use(name, kind)],
            }
            for kind, names in STEP_KINDS.items()
        },
        "never_together": NEVER_TOGETHER,
    }
