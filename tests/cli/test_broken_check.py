"""A package whose check cannot be used: one line that names it, and exit status 2."""

from types import SimpleNamespace

from click.testing import CliRunner

from sequencer import plugins
from sequencer.checks import registry
from sequencer.cli import main


def test_the_package_is_named_and_nothing_is_checked(stage_folder, monkeypatch):
    broken = SimpleNamespace(
        name="wax",
        value="waxworks:CHECK",
        dist=SimpleNamespace(name="waxworks", version="0.3"),
        load=lambda: 3,
    )
    registry.checks.cache_clear()
    monkeypatch.setattr(
        plugins, "entries", lambda group: [broken] if group == "sequencer.checks" else []
    )
    result = CliRunner().invoke(main, ["check", str(stage_folder / "show.yaml")])
    registry.checks.cache_clear()

    assert result.exit_code == 2
    lines = [line for line in result.output.splitlines() if "waxworks" in line]
    assert len(lines) == 1
    assert lines[0].startswith(
        "error: waxworks 0.3: this package's entry point 'wax' of sequencer.checks"
    )
    assert "expected a Check, got int" in lines[0]
    assert "Traceback" not in result.output
