"""`sequencer open --share`: a second server of an open show, on the network, that can only be looked at."""

import asyncio
import os
import socket
from collections.abc import Callable, Iterator
from contextlib import contextmanager

import uvicorn

from sequencer.desk.share.share_guard import ShareGuard, is_nearby
from sequencer.desk.share.share_routes import share_app
from sequencer.desk.share.shared_show import EXPOSED, SharedShow
from sequencer.desk.show_server import ShowServer
from sequencer.errors import InputError, Place

_USUAL_PORT = 4848  # short to type on a phone; any other one where it is taken
_FAR = (
    "192.0.2.1",
    9,
)  # of a network that is nowhere (RFC 5737): a way is looked up, nothing is sent
_MOST_AT_ONCE = 120  # connections


def share_socket(address: str | None = None) -> socket.socket:
    """A socket that listens on this machine's address in its network.

    Parameters
    ----------
    address : str, optional
        One of this machine's own; default: the one by which it reaches others.

    Raises
    ------
    InputError
        If there is no network, the address is none of this machine's, or it is one of the whole internet.
    """
    own = address or _network_address()
    if not is_nearby(own):
        raise InputError(
            "share-address", Place("--share"), f"{own} can be reached from the internet, not only from here",
            "share it in a private network, or name one of its addresses: --share-address 192.168.…",
        )  # fmt: skip
    for port in (_USUAL_PORT, 0):
        listening = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
        if os.name != "nt":
            listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            listening.bind((own, port))
            listening.listen()
        except OSError as error:
            listening.close()
            if port == 0:
                raise InputError(
                    "share-address", Place("--share"), f"nothing can be shared on {own} ({error.strerror})",
                    "name an address of this machine: --share-address",
                ) from error  # fmt: skip
        else:
            return listening
    raise AssertionError("the second port is any that is free")


def _network_address() -> str:
    """The address by which this machine reaches others."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as asking:
        try:
            asking.connect(_FAR)
            own = str(asking.getsockname()[0])
        except OSError:
            own = "0.0.0.0"  # noqa: S104 (it is compared, and never bound)
    if own.startswith(("127.", "0.")):
        raise InputError(
            "share-address", Place("--share"), "this machine is in no network",
            "join the network of the phones first, or name its address: --share-address",
        )  # fmt: skip
    return own


def share_words(shared: SharedShow) -> str:
    """What is told in the terminal."""
    return (
        f"shared, to be looked at only: {shared.address}\n"
        f"the code to join: {shared.door.code}\n"
        f"whoever has the code sees {EXPOSED}; nobody can change anything. Nothing is encrypted: others on this network "
        f"may read along. It ends with this program."
    )


async def serve_shared(
    server: ShowServer, listening: socket.socket, told: Callable[[SharedShow], None]
) -> None:
    """Serve a show to watchers until it is cancelled, or shared no longer.

    Parameters
    ----------
    server : ShowServer
    listening : socket
        Is closed in the end.
    told : callable
        Is given the shared show once it can be asked for.
    """
    host = "{}:{}".format(*listening.getsockname()[:2])
    shared = SharedShow(server, f"http://{host}")
    server.sharing = shared.values, shared.end
    app = ShareGuard(share_app(server, shared), host=host, door=shared.door)
    config = uvicorn.Config(
        app, lifespan="off", log_level="error", access_log=False, ws="none", server_header=False,
        proxy_headers=False, timeout_graceful_shutdown=1, limit_concurrency=_MOST_AT_ONCE,
    )  # fmt: skip
    http = _Beside(config)
    serving = asyncio.create_task(http.serve(sockets=[listening]))
    try:
        while not http.started and not serving.done():
            await asyncio.sleep(0.01)
        told(shared)
        while not shared.over and not serving.done():
            await asyncio.sleep(0.2)
    finally:
        shared.end("it is shared no longer")
        http.should_exit = True
        try:
            await asyncio.shield(serving)
        finally:
            listening.close()


class _Beside(uvicorn.Server):
    """A server beside another one, which alone is told of Ctrl-C."""

    @contextmanager
    def capture_signals(self) -> Iterator[None]:
        yield
