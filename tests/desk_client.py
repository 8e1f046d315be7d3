"""A page without a browser: starts `sequencer open` in a process of its own, and asks it over HTTP."""

import http.client
import json
import signal
import socket
import subprocess
import sys
import threading
import time
from contextlib import contextmanager
from urllib.parse import urlsplit

from tests.warm_desk import FORKS, WarmProcess


class DeskClient:
    """Asks a server by the address that it printed."""

    def __init__(self, address):
        parts = urlsplit(address)
        self.host, self.secret = parts.netloc, parts.fragment

    def raw(self, method, path, body=None, *, secret=True, **headers):
        """Status, headers and bytes of an answer."""
        said = {name.replace("_", "-"): value for name, value in headers.items()}
        if secret:
            said.setdefault("x-sequencer-secret", self.secret)
        if isinstance(body, dict):
            body = json.dumps(body)
            said.setdefault("content-type", "application/json")
        connection = http.client.HTTPConnection(self.host, timeout=120)
        try:
            connection.request(method, path, body, said)
            answer = connection.getresponse()
            return answer.status, answer.headers, answer.read()
        finally:
            connection.close()

    def get(self, path):
        status, _, content = self.raw("GET", f"/api/{path}")
        return status, json.loads(content)

    def post(self, path, **body):
        status, _, content = self.raw("POST", f"/api/{path}", body)
        return status, json.loads(content)

    def do(self, revision, **operation):
        return self.post("operations", revision=revision, operation=operation)

    @contextmanager
    def events(self):
        """A page's stream: a list that grows by (event, values)."""
        told = []
        connection = http.client.HTTPConnection(self.host, timeout=120)
        connection.request("GET", "/api/events", headers={"x-sequencer-secret": self.secret})
        held = connection.sock
        answer = connection.getresponse()
        assert answer.status == 200
        reading = threading.Thread(target=_read, args=(answer, told), daemon=True)
        reading.start()
        try:
            yield told
        finally:
            held.shutdown(socket.SHUT_RDWR)
            reading.join(10)
            answer.close()
            held.close()
            connection.close()

    def until_checked(self, seconds=120):
        """The findings once everything was looked at."""
        return eventually(lambda: (found := self.get("findings")[1])["complete"] and found, seconds)


def _read(answer, told):
    event = ""
    try:
        for line in answer:
            text = line.decode().rstrip("\n")
            if text.startswith("event: "):
                event = text[7:]
            elif text.startswith("data: "):
                told.append((event, json.loads(text[6:])))
    except (OSError, ValueError, http.client.HTTPException):
        return


def eventually(asked, seconds=60):
    """What is asked for, once it is true."""
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        if found := asked():
            return found
        time.sleep(0.05)
    raise AssertionError("it did not come")


def _interruptible():
    signal.signal(signal.SIGINT, signal.SIG_DFL)
    signal.signal(signal.SIGHUP, signal.SIG_DFL)


# tests that run in the background of a shell hand on that Ctrl-C, or its end, is ignored
INTERRUPTIBLE = None if sys.platform == "win32" else _interruptible


def _started(*arguments):
    """`sequencer` as a person starts it."""
    return subprocess.Popen(
        [sys.executable, "-m", "sequencer", *arguments],
        stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, preexec_fn=INTERRUPTIBLE,  # noqa: PLW1509 (nothing else runs yet)
    )  # fmt: skip


class Desk:
    """A process that serves a show."""

    def __init__(self, path, *options, start=_started):
        self.process = start("open", str(path), "--no-browser", *options)
        self.address = self.process.stdout.readline().strip()
        self.page = DeskClient(self.address) if self.address else None

    def end(self, how=signal.SIGINT):
        """Its exit status, and what it said on standard error."""
        if self.process.poll() is None:
            self.process.send_signal(how)
        self.said = self.process.communicate(timeout=60)[1]
        return self.process.returncode, self.said


@contextmanager
def desk(path, *options, start=_started):
    """A served show that ends with the context."""
    own = Desk(path, *options, start=start)
    try:
        assert own.page is not None, own.process.communicate()[1]
        yield own
    finally:
        if own.process.poll() is None:
            own.process.kill()
        own.process.wait()
        for pipe in (own.process.stdout, own.process.stderr):
            pipe.close()


def warm_desk(path, *options):
    """The same for what is asked of a page: its processes start with everything loaded."""
    return desk(path, *options, start=WarmProcess if FORKS else _started)
