"""The command line prints in one way only, by which nothing steers a terminal."""

import ast
import inspect
import io
import pkgutil
from importlib import import_module

import click
import pytest

import sequencer.cli
from sequencer.cli import main
from sequencer.cli.printing import say

# What is printed of a stranger's files by each verb, made by the task that is named.
SOURCES = [
    (["check", "s.yaml"], ("sequencer.tasks.check_show", "sequencer.tasks.report_text")),
    (["compare", "a.yaml", "b.yaml"], ("sequencer.tasks.compare_shows", "sequencer.tasks.comparison_words")),
    (["patterns"], ("sequencer.tasks.vocabulary.list_text",)),
    (["patterns", "--json"], ("sequencer.tasks.vocabulary.list_text",)),
    (["patterns", "--joins"], ("sequencer.tasks.vocabulary.joins_text",)),
    (["patterns", "petal"], ("sequencer.tasks.vocabulary.card_text",)),
    (["patterns", "petal", "--steps"], ("sequencer.tasks.vocabulary.steps_text",)),
    (["trace", "s.yaml"], ("sequencer.tasks.trace_show",)),
    (["new", "--schema"], ("sequencer.tasks.schema_text",)),
]  # fmt: skip


class Terminal(io.StringIO):
    """Standard output as a terminal: click strips nothing from what goes there."""

    def isatty(self):
        return True


class Told(str):
    """What a task says; it is its own report."""

    __slots__ = ()
    ok = True


TOLD = Told("evil \x1b[2J\x1b]0;owned\a \u202etxet")


@pytest.mark.parametrize(("words", "tasks"), SOURCES, ids=lambda each: " ".join(each)[:20])
def test_no_verb_lets_a_text_steer_the_terminal(monkeypatch, words, tasks):
    for task in tasks:
        monkeypatch.setattr(task, lambda *_given, **_more: TOLD)
    terminal = Terminal()
    monkeypatch.setattr("sys.stdout", terminal)
    with pytest.raises(SystemExit):
        main(words, prog_name="sequencer")
    printed = terminal.getvalue().removesuffix("\n")
    assert printed == r"evil \u001b[2J\u001b]0;owned\u0007 \u202etxet"


def test_a_terminal_is_given_what_it_is_told_without_this(monkeypatch):
    """The reference for the test above: click takes nothing away there."""
    terminal = Terminal()
    monkeypatch.setattr("sys.stdout", terminal)
    click.echo("a\x1b[2J\u202e", nl=False)
    say("a\x1b[2J\u202e", nl=False)
    assert terminal.getvalue() == "a\x1b[2J\u202ea\\u001b[2J\\u202e"


def test_nothing_else_prints():
    folder = sequencer.cli.__path__
    names = [f"sequencer.cli.{each.name}" for each in pkgutil.iter_modules(folder)]
    calls = {
        (name, ast.unparse(node.func))
        for name in ("sequencer.cli", *names)
        for node in ast.walk(ast.parse(inspect.getsource(import_module(name))))
        if isinstance(node, ast.Call)
    }
    prints = {"click.echo", "click.secho", "print", "sys.stdout.write", "echo"}
    assert {(name, call) for name, call in calls if call in prints} == {
        ("sequencer.cli.printing", "click.echo")
    }
