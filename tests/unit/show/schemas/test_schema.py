"""The JSON Schema for editors: valid by the standard, and it takes what the reader takes.

Outside source: JSON Schema draft 2020-12, as the library jsonschema checks it; YAML 1.2 by ruamel.yaml.
"""

from pathlib import Path

import jsonschema
import pytest
from ruamel.yaml import YAML

from sequencer.show.schemas.schema import show_schema

SHOWS = sorted((Path(__file__).parents[4] / "shows").glob("*.yaml"))


def test_it_is_a_schema_of_the_draft_it_names():
    schema = show_schema()
    assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    jsonschema.Draft202012Validator.check_schema(schema)


@pytest.mark.parametrize("path", SHOWS, ids=lambda path: path.stem)
def test_it_takes_the_demo_shows_and_refuses_an_unknown_key(path):
    validator = jsonschema.Draft202012Validator(show_schema())
    values = YAML(typ="safe", pure=True).load(path)
    for key in {"date", "night"} & set(values):
        values[key] = str(values[key])  # an editor's reader gives a date
    assert [error.message for error in validator.iter_errors(values)] == []
    values["titel"] = "typo"
    assert ["titel" in error.message for error in validator.iter_errors(values)] == [True]
