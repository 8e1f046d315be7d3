"""Debian's Firefox by its own remote protocol, Marionette: enough to open a page, press keys and ask what is there.

Playwright drives only a Firefox of its own make. Without firefox-esr or firefox the tests are skipped; SEQUENCER_FIREFOX names another
executable.
Source: Firefox source documentation, Marionette protocol version 3; W3C WebDriver for the commands.
"""

import json
import os
import shutil
import socket
import subprocess
import time

WAIT = 60.0  # [s] for Firefox to start, and for what is waited for
_PREFERENCES = {
    "marionette.port": 0, "browser.shell.checkDefaultBrowser": False, "datareporting.policy.dataSubmissionEnabled": False,
    "app.update.enabled": False, "network.captive-portal-service.enabled": False, "network.connectivity-service.enabled": False,
    "media.autoplay.default": 0, "toolkit.startup.max_resumed_crashes": -1, "browser.safebrowsing.malware.enabled": False,
}  # fmt: skip
ENTER, ESCAPE, RIGHT = "\ue007", "\ue00c", "\ue014"


def firefox_executable():
    """Path of a Firefox on this machine, or None."""
    names = ("firefox-esr", "firefox")
    return os.environ.get("SEQUENCER_FIREFOX") or next(filter(None, map(shutil.which, names)), None)


class Firefox:
    """A Firefox without a window, with one page."""

    def __init__(self, profile):
        lines = [f"user_pref({json.dumps(k)}, {json.dumps(v)});" for k, v in _PREFERENCES.items()]
        (profile / "user.js").write_text("\n".join(lines), encoding="utf-8")
        self.process = subprocess.Popen(
            [firefox_executable(), "--headless", "--marionette", "--no-remote", "--profile", str(profile)],
            stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, env={**os.environ, "HOME": str(profile)},
        )  # fmt: skip
        try:
            port = _when(lambda: _port(profile / "MarionetteActivePort"))
            self._link = socket.create_connection(("127.0.0.1", port), timeout=WAIT)
            self._file = self._link.makefile("rb")
            self._number = 0
            self._received()  # how it calls itself
            self.ask("WebDriver:NewSession", strictFileInteractability=True)
        except BaseException:
            self.process.kill()
            self.process.wait()
            raise

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self._file.close()
        self._link.close()
        self.process.terminate()
        try:
            self.process.wait(20)
        except subprocess.TimeoutExpired:
            self.process.kill()
            self.process.wait()

    def ask(self, command, **given):
        """What a command of WebDriver gives."""
        self._number += 1
        message = json.dumps([0, self._number, command, given]).encode()
        self._link.sendall(str(len(message)).encode() + b":" + message)
        _, number, error, result = self._received()
        assert number == self._number
        if error is not None:
            raise RuntimeError(f"{command}: {error['message']}")
        return result

    def _received(self):
        length = b""
        while (letter := self._file.read(1)) != b":":
            length += letter
        return json.loads(self._file.read(int(length)))

    # --- a person ---

    def goto(self, address):
        self.ask("WebDriver:Navigate", url=address)

    def run(self, script, *given):
        """What a function's body returns in the page; it runs beside the page's own scripts."""
        return self.ask("WebDriver:ExecuteScript", script=script, args=list(given))["value"]

    def until(self, script, *given):
        """What it returns, once that is true."""
        return _when(lambda: self.run(script, *given))

    def element(self, selector):
        found = _when(lambda: self._elements(selector))
        return next(iter(found[0].values()))

    def _elements(self, selector):
        return self.ask("WebDriver:FindElements", using="css selector", value=selector)

    def click(self, selector):
        self.ask("WebDriver:ElementClick", id=self.element(selector))

    def type(self, keys):
        """Press keys, one after the other, wherever the keyboard is."""
        actions = [{"type": kind, "value": key} for key in keys for kind in ("keyDown", "keyUp")]
        self.ask("WebDriver:PerformActions", actions=[{"type": "key", "id": "keys", "actions": actions}])  # fmt: skip


def _port(path):
    return int(path.read_text()) if path.is_file() and path.read_text().strip() else None


def _when(asked):
    end = time.monotonic() + WAIT
    while time.monotonic() < end:
        if found := asked():
            return found
        time.sleep(0.1)
    raise AssertionError("it did not come")
