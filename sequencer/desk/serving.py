"""`sequencer open`: the server of one show on this machine, from its start to the last page that is closed."""

import asyncio
import os
import secrets
import signal
import socket
import webbrowser
from collections.abc import Callable, Coroutine, Iterable
from contextlib import ExitStack, suppress
from functools import partial
from pathlib import Path

import uvicorn
from watchfiles import awatch

from sequencer.desk.connection.page_entry import PageEntry
from sequencer.desk.connection.page_guard import PageGuard
from sequencer.desk.file.opened_file import OpenedFile
from sequencer.desk.pages.page_routes import page_app
from sequencer.desk.pages.what_to_open import SHOW_FILES
from sequencer.desk.share.shared_show import SharedShow
from sequencer.desk.share.sharing import serve_shared, share_socket
from sequencer.desk.show_server import ShowServer
from sequencer.errors import InputError, Place
from sequencer.system_folders import from_home

_HERE = "127.0.0.1"
STAY = 20.0  # [s] after the last page has gone: it may only have been loaded again
_TICK = 0.5  # [s]
_LOOK_AGAIN = 2.0  # [s] between two looks at the file, where the system tells no changes


def serve_show(
    path: Path,
    *,
    track: Path | None = None,
    port: int = 0,
    browser: bool = True,
    stay: float = STAY,
    opened: Callable[[str], None] = lambda _address: None,
    share: str | None = None,
    shared: Callable[[SharedShow], None] = lambda _shared: None,
) -> bool:
    """Serve a show until its last page is closed.

    Parameters
    ----------
    path : Path
        The show file; a YAML file that is not there yet is begun on the page.
    track : Path, optional
        The song of a show that is begun.
    port : int
        On this machine; 0 is any that is free.
    browser : bool
        Whether the page is opened in the browser.
    stay : float
        For how long the server waits for a page after the last one has gone [s].
    opened : callable
        Is given the page's address once it can be asked for.
    share : str, optional
        Share it with watchers, at this address of this machine; empty is the one by which it reaches others.
    shared : callable
        Is given how it is shared, once it is.

    Returns
    -------
    saved : bool
        Whether the file has all that was done; else the journal has it.

    Raises
    ------
    InputError
        If the show cannot be opened, the port is taken, or it cannot be shared.
    KeyboardInterrupt
        On Ctrl-C.
    """
    with ExitStack() as sockets:
        listening = sockets.enter_context(_listening(port))
        beside = None if share is None else sockets.enter_context(share_socket(share or None))
        file = _opened(path, track)
        sockets.pop_all()  # they are closed by those who serve
    own = None if track is None else from_home(track).resolve()
    sharing = None if beside is None else partial(serve_shared, listening=beside, told=shared)
    served = _served(
        file, own, listening, browser=browser, stay=stay, opened=opened, sharing=sharing
    )  # fmt: skip
    _end_well()
    asyncio.run(served)
    return file.saved


def _end_well() -> None:
    """Let go of the file also where the system ends the program, or its terminal is closed."""
    for name in ("SIGTERM", "SIGHUP"):
        number = getattr(signal, name, None)
        if number is not None and signal.getsignal(number) is signal.SIG_DFL:
            signal.signal(number, _ended)


def _ended(number: int, _frame: object) -> None:
    raise SystemExit(128 + number)


def _opened(path: Path, track: Path | None) -> OpenedFile:
    """The file; one that is there already has its song."""
    new = path.suffix.lower() in SHOW_FILES
    if track is not None and not track.is_file():
        raise InputError("no-track", Place(str(track)), "there is no such song", "check the path")
    file = OpenedFile(path, new=new)
    if track is not None and file.text.strip():
        file.close()
        raise InputError(
            "has-track", Place(str(path)), "this show is there already, and names its song",
            "leave --track out; another song is taken on the page, under Show",
        )  # fmt: skip
    return file


def _listening(port: int) -> socket.socket:
    listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    if os.name != "nt":  # there it would let two programs share a port
        listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listening.bind((_HERE, port))
    except OSError as error:
        listening.close()
        raise InputError(
            "port-taken", Place("--port"), f"port {port} cannot be used ({error.strerror})",
            "leave --port out, and a free one is taken",
        ) from error  # fmt: skip
    return listening


async def _served(
    file: OpenedFile,
    track: Path | None,
    listening: socket.socket,
    *,
    browser: bool,
    stay: float,
    opened: Callable[[str], None],
    sharing: Callable[[ShowServer], Coroutine[None, None, None]] | None = None,
) -> None:
    port = listening.getsockname()[1]
    secret = secrets.token_urlsafe(32)
    address = f"http://{_HERE}:{port}/#{secret}"
    server = ShowServer(file, track=track)
    entry = PageEntry(page_app(server), secret=secret)
    app = PageGuard(entry, hosts=(f"{_HERE}:{port}",), secret=secret)
    config = uvicorn.Config(
        app, lifespan="off", log_level="error", access_log=False, ws="none", server_header=False,
        proxy_headers=False, timeout_graceful_shutdown=3,
    )  # fmt: skip
    http = uvicorn.Server(config)
    around = [
        asyncio.create_task(_watch(server)),
        asyncio.create_task(_until_left(server, http, stay)),
        asyncio.create_task(_open(http, address, entry if browser else None, opened)),
        *([] if sharing is None else [asyncio.create_task(sharing(server))]),
    ]
    try:
        await http.serve(sockets=[listening])
    finally:
        # Nothing is waited for here: after a Ctrl-C whatever waits is cancelled.
        for task in around:
            task.cancel()
        server.end("the server has ended")
        listening.close()


async def _open(
    http: uvicorn.Server, address: str, entry: PageEntry | None, opened: Callable[[str], None]
) -> None:
    """Tell the address, and open it in the browser by a ticket: a command line is seen by others on this machine."""
    while not http.started:
        await asyncio.sleep(0.01)
    opened(address)
    if entry is not None:
        page = address.partition("#")[0]
        await asyncio.to_thread(webbrowser.open, f"{page}#ticket={entry.ticket()}")


async def _until_left(server: ShowServer, http: uvicorn.Server, stay: float) -> None:
    """End the server once every page has gone; end the streams of pages once the server ends."""
    while not http.should_exit:
        await asyncio.sleep(_TICK)
        left = server.events.met and server.events.alone > stay
        if left and not server.is_writing:
            http.should_exit = True
    server.events.end("the server ends")


async def _watch(server: ShowServer) -> None:
    """Look at the file whenever something in its folder changes, and now and then where the system does not tell."""
    path = server.opened.path
    looking = asyncio.create_task(_look_again(server))
    try:
        with suppress(OSError, RuntimeError):  # a folder that cannot be watched is looked at
            async for changes in awatch(path.parent, recursive=False, step=50, rust_timeout=1000):
                if any(Path(name).name == path.name for _, name in changes):
                    await server.look()
        await looking
    finally:
        looking.cancel()


async def _look_again(server: ShowServer) -> None:
    known = _mark(server.opened.path)
    beside = _marks(server.files_beside())
    while True:
        await asyncio.sleep(_LOOK_AGAIN)
        now = await asyncio.to_thread(_mark, server.opened.path)
        if now != known:
            known = now
            await server.look()
        others = await asyncio.to_thread(_marks, server.files_beside())
        if any(mark != beside[path] for path, mark in others.items() if path in beside):
            server.look_beside()
        beside = others


def _marks(paths: Iterable[Path]) -> dict[Path, tuple[int, int] | None]:
    return {path: _mark(path) for path in paths}


def _mark(path: Path) -> tuple[int, int] | None:
    try:
        said = path.stat()
    except OSError:
        return None
    return said.st_mtime_ns, said.st_size
