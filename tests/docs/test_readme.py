"""What the README shows is what the commands print."""

import re
from pathlib import Path

from click.testing import CliRunner

from sequencer.cli import main

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")


def test_the_listen_excerpt_is_what_listen_prints(monkeypatch):
    monkeypatch.chdir(ROOT)
    shown = re.search(r"\$ sequencer listen (\S+)\n(.*?)\n```", README, re.DOTALL)
    result = CliRunner().invoke(main, ["listen", shown[1]])
    assert result.exit_code == 0
    assert result.stdout.rstrip() == shown[2].rstrip()


def test_every_verb_and_every_linked_file_is_there():
    verbs = set(re.findall(r"`?sequencer ([a-z]+)\b", README)) - {"is"}
    assert verbs <= set(main.commands), verbs - set(main.commands)
    links = re.findall(r"\]\((?!https?:)([^)#]+)\)", README)
    missing = [link for link in links if not (ROOT / link).exists()]
    assert links
    assert missing == []


def test_the_first_screen_holds_the_job_the_caution_and_two_commands():
    first = README[: README.index("## The tour")]
    assert "This plan is arithmetic, not permission." in first
    blocks = re.findall(r"```bash\n(.*?)\n```", first, re.DOTALL)
    assert len(blocks) == 2
    assert all("\n" not in block for block in blocks)
    assert "sequencer sheet shows/" in blocks[0]
    assert "pytest" in blocks[1]
