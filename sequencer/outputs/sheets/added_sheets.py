"""Sheets that other packages add, through the entry-point group `sequencer.sheets`.

Each entry names a function that takes an `Edition` and returns a `Sheet`, several, or None where the show
needs none. They are held to what every sheet is held to: a name of its own, and the cautions of a lit show.
"""

from collections.abc import Iterable
from dataclasses import replace
from functools import partial

from reportlab.platypus import Flowable

from sequencer.outputs.sheets.page.paper import Page
from sequencer.outputs.sheets.page.wording import slug
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.furniture import Sheet, with_caution
from sequencer.plugins import Plugin, blamed, plugins

SHEET_PLUGINS = "sequencer.sheets"


def added_sheets(edition: Edition, names: Iterable[str]) -> list[Sheet]:
    """Sheets of other packages for a show.

    Parameters
    ----------
    edition : Edition
    names : iterable of str
        Of the sheets that there are already.

    Raises
    ------
    InputError
        If a package's function fails, returns no sheet, or a name is in use.
    """
    taken = set(names)
    out: list[Sheet] = []
    for plugin in plugins(SHEET_PLUGINS):
        for sheet in _sheets(plugin, edition):
            with blamed(plugin):
                _check_name(sheet.name, taken)
            taken.add(sheet.name)
            out.append(replace(sheet, story=partial(_story, plugin, sheet, edition)))
    return out


def _sheets(plugin: Plugin, edition: Edition) -> list[Sheet]:
    make = plugin.load()
    with blamed(plugin):
        if not callable(make):
            raise TypeError(f"expected a function of an edition, got {type(make).__name__}")
        made = make(edition)
        sheets = [] if made is None else [made] if isinstance(made, Sheet) else list(made)
        for sheet in sheets:
            if not isinstance(sheet, Sheet):
                raise TypeError(f"expected a Sheet, got {type(sheet).__name__}")
    return sheets


def _check_name(name: str, taken: set[str]) -> None:
    """Refuse a name that is no part of a file name, or that another sheet bears."""
    if slug(name) != name:
        raise ValueError(
            f"a sheet's name is part of a file name; write {slug(name)!r} for {name!r}"
        )
    if name in taken:
        raise ValueError(f"a sheet {name!r} is there already; choose another name")


def _story(plugin: Plugin, sheet: Sheet, edition: Edition, page: Page) -> list[Flowable]:
    with blamed(plugin):
        return with_caution(sheet, list(sheet.story(page)), edition)
