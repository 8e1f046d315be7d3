"""A schema for editors beside a show: made by `new`, found by its first line, renewed when names are added.

Outside source: JSON Schema draft 2020-12, as the library jsonschema checks it; YAML 1.2 by ruamel.yaml.
"""

import json

import jsonschema
from click.testing import CliRunner
from ruamel.yaml import YAML

from sequencer.cli import main


def run(*arguments):
    return CliRunner().invoke(main, [str(argument) for argument in arguments])


def marked(show, schema):
    values = YAML(typ="safe", pure=True).load(show)
    for key in {"date", "night"} & set(values):
        values[key] = str(values[key])
    validator = jsonschema.Draft202012Validator(json.loads(schema.read_text(encoding="utf-8")))
    return [".".join(map(str, error.absolute_path)) for error in validator.iter_errors(values)]


def test_new_writes_the_schema_and_the_line_by_which_it_is_found(stage_folder, tmp_path):
    show, schema = tmp_path / "fresh.yaml", tmp_path / "fresh.schema.json"
    made = run("new", show, "--track", stage_folder / "song.wav", "--no-draft")
    assert made.exit_code == 0, made.output

    text = show.read_text(encoding="utf-8")
    assert text.splitlines()[0] == "# yaml-language-server: $schema=fresh.schema.json"
    assert marked(show, schema) == []
    show.write_text(text.replace("Performer", "Dune"), encoding="utf-8")
    assert marked(show, schema) != []  # which knows nobody called Dune
    renewed = run("new", show, "--schema")
    assert renewed.exit_code == 0, renewed.output
    assert renewed.stdout.strip() == str(schema)
    assert marked(show, schema) == []


def test_a_schema_of_no_file_is_refused_in_a_line(tmp_path):
    gone = run("new", tmp_path / "gone.yaml", "--schema")
    assert gone.exit_code == 2
    assert "file not found" in gone.stderr
    assert list(tmp_path.iterdir()) == []


def test_the_schema_of_any_show_is_printed():
    said = run("new", "--schema")
    assert said.exit_code == 0
    assert "else" in json.loads(said.stdout)
