"""An editor's server with the schema that `new` writes: marks, offers and words. Skipped where it is not installed.

Outside source: yaml-language-server 1.25.0; Language Server Protocol 3.17 (from memory).
"""

import json
import shutil
import subprocess
from pathlib import Path

import pytest

from sequencer.tasks import write_schema

SERVER = shutil.which("yaml-language-server")
SHOW = Path(__file__).parents[2] / "shows" / "lantern_round.yaml"


def say(server, **message):
    text = json.dumps({"jsonrpc": "2.0", **message}).encode()
    server.stdin.write(b"Content-Length: %d\r\n\r\n%s" % (len(text), text))
    server.stdin.flush()


def heard(server, key, value):
    """The next message that has a value; questions of the server are answered with nothing."""
    while True:
        size = int(server.stdout.readline().split(b":")[1])
        server.stdout.readline()
        message = json.loads(server.stdout.read(size))
        if "method" in message and "id" in message:
            say(server, id=message["id"], result=[None] * len(message["params"].get("items", ())))
        elif message.get(key) == value:
            return message


@pytest.mark.skipif(SERVER is None, reason="yaml-language-server is not installed")
def test_a_misspelt_pattern_is_marked_and_patterns_are_offered_with_words(tmp_path):
    path = tmp_path / "mine.yaml"
    path.write_text(SHOW.read_text())
    write_schema(path)
    lines = ["# yaml-language-server: $schema=mine.schema.json", *SHOW.read_text().splitlines()]
    top = lines.index("timeline:") + 1
    slip = (
        "  - {from: twenty, pattern: pro-bend-4, with: {hand_raduis: 15 cm, plane: wal}, beats: 4}"
    )
    lines.insert(top, slip)
    slips = [(top, slip.index(word)) for word in ("twenty", "hand_raduis", "wal}")]
    row = next(k for k, line in enumerate(lines) if "pattern: two-beat-weave" in line)
    lines[row] = lines[row].replace("two-beat-weave", "two-beet-weave")
    start = {"line": row, "character": lines[row].index("two-beet")}
    at = {"textDocument": {"uri": path.as_uri()}, "position": start}
    shown = {**at["textDocument"], "languageId": "yaml", "version": 1, "text": "\n".join(lines)}
    with subprocess.Popen([SERVER, "--stdio"], stdin=-1, stdout=-1) as server:
        say(server, id=1, method="initialize", params={"processId": None, "capabilities": {}})
        say(server, method="textDocument/didOpen", params={"textDocument": shown})
        marks = heard(server, "method", "textDocument/publishDiagnostics")["params"]["diagnostics"]
        say(server, id=2, method="textDocument/completion", params=at)
        offers = heard(server, "id", 2)["result"]["items"]
        say(server, id=3, method="textDocument/hover", params=at)
        words = str(heard(server, "id", 3)["result"])
        server.kill()
    told = {
        (m["range"]["start"]["line"], m["range"]["start"]["character"]): m["message"] for m in marks
    }
    assert set(told) == {(start["line"], start["character"]), *slips}
    assert "no pattern" in told[start["line"], start["character"]]
    assert "no such section" in told[slips[0]]
    assert "no such value" in told[slips[1]]
    assert "wall, wheel, floor" in told[slips[2]]
    assert any(o["label"] == "two-beat-weave" and "front of the body" in str(o) for o in offers)
    assert "lists" in words
