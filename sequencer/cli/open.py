"""`sequencer open`: the planning page of a show, in the browser."""

from pathlib import Path

import click

from sequencer.cli.allowing import allow_option
from sequencer.cli.printing import say


@click.command(name="open", epilog="Example: sequencer open shows/lantern_round.yaml")
@click.argument("show", type=click.Path(path_type=Path, readable=False), required=False)
@click.option(
    "--track", type=click.Path(path_type=Path), help="The song, for a show that is not there yet."
)
@click.option("--port", type=click.IntRange(1, 65535), metavar="N",
              help="The port of the page on this machine (default: any that is free).")  # fmt: skip
@click.option("--stay", type=click.FloatRange(0), default=20.0, show_default=True, metavar="SECONDS",
              help="How long to wait for a page after the last one was closed.")  # fmt: skip
@click.option("--share", is_flag=True,
              help="Let phones on the same network watch, by a code; nobody can change anything there.")  # fmt: skip
@click.option("--share-address", metavar="ADDRESS",
              help="Share at this address of this machine (default: the one by which it reaches others).")  # fmt: skip
@click.option("--no-browser", is_flag=True, help="Only print the page's address.")
@allow_option
def open_(
    show: Path | None,
    track: Path | None,
    port: int | None,
    stay: float,
    share: bool,
    share_address: str | None,
    no_browser: bool,
) -> None:
    """Open SHOW in the browser, to plan it there; a SHOW that does not exist yet is begun there.

    SHOW may also be a folder, by default the one you are in: its show is opened, or one is begun in it. If it is a song, the show
    of its name beside it is opened, or begun. The ending `.yaml` can be left out. If it is not certain which show is meant, you are told what to type.

    The page is served by this machine to itself alone; nothing leaves it, unless you --share it. What you do is kept in a journal beside SHOW at
    once, and SHOW itself is written when you save. It may be edited in an editor meanwhile. The command ends when the last
    page is closed, or with Ctrl-C; what was not saved then is there again the next time.
    """
    from sequencer.desk.pages.what_to_open import what_to_open
    from sequencer.desk.serving import serve_show
    from sequencer.desk.share.sharing import share_words

    show, track = what_to_open(show, track)
    try:
        saved = serve_show(
            show, track=track, port=port or 0, browser=not no_browser, stay=stay, opened=say,
            share=(share_address or "") if share or share_address else None,
            shared=lambda shared: say(share_words(shared), err=True),
        )  # fmt: skip
    except KeyboardInterrupt:
        raise KeyboardInterrupt("ended; what was not saved is in the journal") from None
    if not saved:
        say(
            f"not everything is in {show} yet: the rest is in its journal, and there again when you open it",
            err=True,
        )
