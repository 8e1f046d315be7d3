"""The formations as one small page for phones: a plan, who walks from where and when; no script, no network, a few kilobytes.

It follows the phone's light or dark setting, and its plans fit any width. Stage frame [m]: X to the audience's right,
Y upstage.
"""

import html
from collections.abc import Sequence

from sequencer.outputs.sheets.page.wording import (
    NB,
    clock,
    facing_words,
    metres,
    place_words,
    plural,
)
from sequencer.outputs.sheets.parts.edition import Edition
from sequencer.outputs.sheets.parts.notices import callers_words
from sequencer.outputs.sheets.parts.stage_plans.formation_plans import scene_of, wings_words
from sequencer.outputs.sheets.parts.stage_plans.scene import (
    Scene,
    stage_outline,
    way_length,
    window,
)
from sequencer.outputs.sheets.parts.stage_plans.spike_marks import fixed_points, mark_at, sides
from sequencer.outputs.sheets.parts.stage_plans.walk_marks import crossing_words
from sequencer.outputs.way_marks import start_mark, way_arrow

_UNITS = 100  # of a plan's own measure, to a metre
_DISC = 0.045  # radius of a performer's disc, of the plan's width
_STYLE = (
    ":root{color-scheme:light dark;--ink:#15171c;--soft:#565b66;--paper:#fff;--mist:#eceef2}"
    "@media(prefers-color-scheme:dark){:root{--ink:#f2f3f5;--soft:#a9aeb8;--paper:#121417;--mist:#262a31}}"
    "body{margin:0 auto;max-width:40rem;padding:.75rem;font:1.05rem/1.35 system-ui,sans-serif;color:var(--ink);"
    "background:var(--paper);overflow-wrap:anywhere}h1{font-size:1.5rem;margin:.2rem 0}h2{font-size:1.35rem;margin:1.6rem 0 .1rem}"
    "p{margin:.2rem 0}.soft{color:var(--soft)}.stop{background:var(--ink);color:var(--paper);padding:.5rem;font-weight:700}"
    "svg{width:100%;height:auto;display:block;background:var(--mist)}ul{padding:0;margin:.4rem 0;list-style:none}"
    "li{padding:.45rem 0;border-top:1px solid var(--mist)}nav{display:flex;flex-wrap:wrap;gap:.4rem;margin:.6rem 0}"
    "nav a{min-height:44px;padding:0 .8rem;display:flex;align-items:center;background:var(--mist);color:inherit;"
    "border-radius:.5rem;text-decoration:none}"
)


def phone_page(edition: Edition) -> str:
    """The page as HTML.

    Parameters
    ----------
    edition : Edition
        With `turned`, plans are seen from the performers' side.
    """
    staged = edition.staged
    title = html.escape(edition.title)
    links = "".join(
        f'<a href="#f{k}">{k} {html.escape(each.formation)}</a>'
        for k, each in enumerate(staged.standings, start=1)
    )
    call = staged.show.stop_call
    warned = [
        words
        for words in (edition.banner, "DRAFT – no permit that counts" if edition.is_draft else "")
        if words
    ]
    head = "".join(f'<p class="stop">{html.escape(words)}</p>' for words in warned)
    stop = f"{callers_words(edition)}: shout “{call.word}” three times, {call.signal}."
    a, b = fixed_points(staged)
    usual = sides(staged)[0].replace("of it", "of the line A–B")
    measured = (
        f"Marks are measured from A, {a.words}, and B, {b.words}: {usual} unless said otherwise."
    )
    parts = "".join(_formation(edition, k) for k in range(len(staged.standings)))
    return (
        '<!doctype html><html lang="en"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width,initial-scale=1">'
        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">"
        f"<title>{title}: formations</title><style>{_STYLE}</style></head><body><h1>{title}</h1>{head}"
        f'<p class="soft">{html.escape(f"{edition.issue} · {edition.track}")}</p><p>{html.escape(stop)}</p><p class="soft">{html.escape(measured)}</p>'
        f'<nav aria-label="Formations">{links}</nav>{parts}</body></html>\n'
    )


def _formation(edition: Edition, index: int) -> str:
    staged = edition.staged
    standing = staged.standings[index]
    when = f"{clock(staged.seconds(standing.walk))}, bar {staged.position(standing.walk)}"
    beats = standing.start - standing.walk
    if beats > 1e-6:
        end = f"{clock(staged.seconds(standing.start))}, bar {staged.position(standing.start)}"
        when = f"walk from {when} to {end}, {plural(beats, 'count')}"
    scene = scene_of(edition, index, crew=False, close=True)
    rows = "".join(_row(edition, index, scene, name) for name in standing.spots)
    if crossed := "; ".join(crossing_words(scene.ways, beats)):
        rows += f"<li>Where ways cross: {html.escape(crossed)}</li>"
    return (
        f'<section id="f{index + 1}"><h2>{index + 1} {html.escape(standing.formation)}</h2><p>{html.escape(when)}</p>'
        f"{_plan(edition, scene)}<ul>{rows}</ul></section>"
    )


def _row(edition: Edition, index: int, scene: Scene, name: str) -> str:
    staged = edition.staged
    standing = staged.standings[index]
    x, y, facing = standing.spots[name]
    words = [
        f"{wings_words(staged, standing, name)}{place_words(x, y)}",
        f"face {facing_words(facing)}",
    ]
    if (long := way_length(scene.ways.get(name, ()))) >= 0.05:
        words.insert(0, f"walk {metres(long)}")
    if mark := mark_at(staged, (x, y)):
        lengths = (metres(each, decimals=2) for each in mark.lengths)
        words.append(
            ", ".join(f"{letter}{NB}{long}" for letter, long in zip("AB", lengths, strict=True))
        )
        if mark.behind:
            words[-1] += f", {sides(staged)[1].replace('of it', 'of the line A–B')}"
        if mark.weak:
            words.append(
                "tapes cross too flatly here: measure from the centre line and the front edge"
            )
    number = edition.number_of(name)
    return f"<li><b>{number} {html.escape(name)}</b> {html.escape('; '.join(words))}</li>"


def _plan(edition: Edition, scene: Scene) -> str:
    """The stage, the walks and everybody with number and facing, as SVG."""
    low_x, low_y, high_x, high_y = window(scene)
    wide, tall = (high_x - low_x) * _UNITS, (high_y - low_y) * _UNITS
    disc = _DISC * wide

    def at(x: float, y: float) -> tuple[float, float]:
        if scene.turned:
            return (high_x - x) * _UNITS, (y - low_y) * _UNITS
        return (x - low_x) * _UNITS, (high_y - y) * _UNITS

    def points(way: Sequence[tuple[float, float]]) -> str:
        return " ".join(f"{px:.0f},{py:.0f}" for px, py in (at(*point) for point in way))

    stage = points(stage_outline(edition.staged))
    edge_ink = f'stroke="var(--ink)" stroke-width="{0.004 * wide:.1f}"'
    drawn = [f'<polygon points="{stage}" fill="var(--paper)" {edge_ink}/>']
    discs = [at(*spot[:2]) for spot in scene.spots.values()]
    for way in scene.ways.values():
        if way_length(way) >= 0.05:
            walked = [at(*point) for point in way]
            x, y = start_mark(walked, discs, 1.4 * disc)
            (tip_x, tip_y), (to_x, to_y) = way_arrow(walked, discs, 1.8 * disc)
            size = 0.5 * disc
            head = " ".join(
                f"{tip_x + along * size * to_x - aside * size * to_y:.0f},{tip_y + along * size * to_y + aside * size * to_x:.0f}"
                for along, aside in ((1.2, 0.0), (-0.8, 0.8), (-0.8, -0.8))
            )
            thin = 0.005 * wide
            drawn.append(
                f'<polyline points="{points(way)}" fill="none" stroke="var(--soft)" stroke-width="{thin:.1f}" '
                f'stroke-dasharray="{3 * thin:.0f} {2 * thin:.0f}"/><circle cx="{x:.0f}" cy="{y:.0f}" r="{0.3 * disc:.0f}" '
                f'fill="var(--paper)" stroke="var(--soft)" stroke-width="{thin:.1f}"/><polygon points="{head}" fill="var(--soft)"/>'
            )
    for name, (place_x, place_y, facing) in scene.spots.items():
        x, y = at(place_x, place_y)
        turn = -facing if not scene.turned else 180 - facing
        nose = f"{x - 0.6 * disc:.0f},{y + 0.75 * disc:.0f} {x + 0.6 * disc:.0f},{y + 0.75 * disc:.0f} {x:.0f},{y + 1.7 * disc:.0f}"
        drawn.append(
            f'<polygon points="{nose}" fill="var(--ink)" transform="rotate({turn:.0f} {x:.0f} {y:.0f})"/>'
            f'<circle cx="{x:.0f}" cy="{y:.0f}" r="{disc:.0f}" fill="var(--ink)"/>'
            f'<text x="{x:.0f}" y="{y + 0.38 * disc:.0f}" font-size="{1.1 * disc:.0f}" text-anchor="middle" '
            f'font-weight="700" fill="var(--paper)">{edition.number_of(name)}</text>'
        )
    for point in fixed_points(edition.staged):
        x, y = at(*point.place)
        half = 0.65 * disc
        drawn.append(
            f'<rect x="{x - half:.0f}" y="{y - half:.0f}" width="{2 * half:.0f}" height="{2 * half:.0f}" fill="var(--paper)" '
            f'{edge_ink}/><text x="{x:.0f}" y="{y + 0.36 * disc:.0f}" font-size="{disc:.0f}" text-anchor="middle" '
            f'font-weight="700" fill="var(--ink)">{point.letter}</text>'
        )
    size = 0.032 * wide  # of the words, whole at either edge of however wide a stage
    edge = 1.05 * size if scene.turned else tall - 0.35 * size
    drawn.append(
        f'<text x="{wide / 2:.0f}" y="{edge:.0f}" font-size="{size:.0f}" text-anchor="middle" '
        f'fill="var(--soft)">audience</text>'
    )
    label = f"Plan from above, the audience at the {'top' if scene.turned else 'bottom'}"
    return f'<svg viewBox="0 0 {wide:.0f} {tall:.0f}" role="img" aria-label="{label}">{"".join(drawn)}</svg>'
