"""A practice plan as one page: loops to open on the rehearsal page, and room to write; it prints on one sheet of paper."""

import html
import re

from sequencer.facts.cautions import page_one
from sequencer.outputs.practice_pages.practice_words import (
    ADVICE,
    ADVICE_SOURCE,
    PAGE_OF_LOOPS,
    WEEK_HEADS,
    PlanEdition,
    behind_words,
    checked_words,
    item_words,
    last_weeks,
    loop_address,
    loops_words,
    nothing_left,
    span_text,
    told_lines,
    tries_words,
    week_cells,
)
from sequencer.practice.practice_plan import PracticeItem

_STYLE = (
    ":root{color-scheme:light dark;--ink:#15171c;--soft:#4f5560;--paper:#fff;--mist:#e6e9ee}"
    "@media(prefers-color-scheme:dark){:root{--ink:#f2f3f5;--soft:#b3b8c2;--paper:#121417;--mist:#2b3038}}"
    "body{margin:0 auto;max-width:48rem;padding:.75rem;font:1rem/1.35 system-ui,sans-serif;color:var(--ink);background:var(--paper);"
    "overflow-wrap:anywhere}h1{font-size:1.4rem;margin:.2rem 0}h2{font-size:1.1rem;margin:1rem 0 .2rem}p{margin:.3rem 0}"
    ".soft{color:var(--soft)}ol{padding:0;margin:.5rem 0;list-style:none}li{border-top:1px solid var(--mist);padding:.4rem 0}"
    ".steps{display:flex;flex-wrap:wrap;gap:.4rem;margin:.3rem 0}.steps a{min-height:44px;box-sizing:border-box;display:inline-flex;"
    "align-items:center;padding:0 .7rem;background:var(--mist);color:inherit;border-radius:.4rem;text-decoration:none}"
    ".steps a.now{outline:2px solid var(--ink)}.write{display:flex;gap:.3rem;flex-wrap:wrap}.write span{flex:1;min-width:5rem;"
    "border-bottom:1px solid var(--soft);height:2.2em;font-size:.75rem;color:var(--soft)}table{border-collapse:collapse;overflow-wrap:normal}"
    "td,th{text-align:right;padding:.1rem .6rem .1rem 0;font-weight:400}th{color:var(--soft)}"
    "@page{margin:12mm}@media print{:root{--ink:#000;--soft:#333;--paper:#fff;--mist:#ddd}body{font-size:9.5pt;max-width:none;padding:0}"
    "h1{font-size:14pt}.steps{padding:0 2px}.steps a{min-height:0;padding:0 .4em}.line{display:flex;gap:1em;align-items:end}.write{flex:1;flex-wrap:nowrap}.write span{min-width:0}.told li{border:0;padding:0}table{font-size:8.5pt}h2{font-size:11pt;margin:.3rem 0 0}.screen{display:none}li{break-inside:avoid;padding:.15rem 0}}"
    "@media screen{.write{display:none}}"
    ".loop{white-space:nowrap}.weeks{overflow-x:auto}td{white-space:nowrap}@media screen and (max-width:30rem){table{font-size:.8rem}td,th{padding-right:.35rem}}"
)
_WRITTEN = ("date", "clean / tried", "date", "clean / tried", "off the place")
_WRITTEN_BY_SEVERAL = ("who", "date", "clean / tried", "off the place")
_CODE = re.compile("`([^`]+)`")


def practice_page(edition: PlanEdition) -> str:
    """The page as HTML.

    Parameters
    ----------
    edition : PlanEdition
    """
    plan = edition.plan
    title = html.escape(edition.title)
    lit = edition.show.show.fire is not None
    warned = (
        f"<p><b>{html.escape(page_one())} Lit only with an experienced spotter: unlit mastery first.</b></p>"
        if lit
        else ""
    )
    said = checked_words(edition)
    checked = f"<p><b>{html.escape(said)}</b></p>" if said else ""
    items = "".join(_item(edition, k, item) for k, item in enumerate(plan.items, start=1))
    if not items:
        items = f"<li>{html.escape(nothing_left(plan))}</li>"
    done = ", ".join(item.exercise.title for item in plan.done)
    told = "".join(f"<li>{_with_code(line)}</li>" for line in told_lines(edition))
    loops = f"Each step opens {PAGE_OF_LOOPS} at its loop, slowed and repeated; press Play."
    missing = f" {loops_words(edition)}" if edition.loops != "there" else ""
    parts = (
        f'<h1>{title}</h1>{warned}{checked}<p class="soft screen">{html.escape(loops + missing)}</p>',
        f"<ol>{items}</ol>",
        f'<p class="soft">Done: {html.escape(done)}</p>' if done else "",
        f"<p>{html.escape(ADVICE)}</p>",
        f'<p class="soft">{html.escape(ADVICE_SOURCE)}</p>',
        f"<h2>So far</h2>{_weeks(edition)}<ol class=told>{told}</ol>" if plan.weeks else "",
    )
    return (
        '<!doctype html><html lang="en"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width,initial-scale=1">'
        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">"
        f"<title>{title}</title><style>{_STYLE}</style></head><body><main>{''.join(parts)}</main></body></html>\n"
    )


def _with_code(line: str) -> str:
    """A line whose text for the show file stands out as such."""
    return _CODE.sub(r"<code>\1</code>", html.escape(line))


def _item(edition: PlanEdition, number: int, item: PracticeItem) -> str:
    state = item.behind
    steps = "".join(
        f'<a href="{html.escape(loop_address(edition.show, state.exercise, step), quote=True)}"'
        f"{' class=now aria-current=step' if k == state.done else ''}>{'✓ ' if k < state.done else ''}{html.escape(step.words)}</a>"
        for k, step in enumerate(state.steps)
    )
    behind = f" · {behind_words(item)}" if item.all_behind else ""
    tried = f" · clean {tries_words(state)}" if state.tried else ""
    asked = _WRITTEN if len(item.states) == 1 else _WRITTEN_BY_SEVERAL
    blanks = "".join(f"<span>{each}</span>" for each in asked)
    return (
        f"<li><b>{number} {html.escape(item.exercise.title)}</b> <span class=loop>{html.escape(span_text(edition.show, item.exercise))}</span>"
        f'<div class="soft">{html.escape(item_words(edition, item) + behind + tried)}</div>'
        f'<div class="line"><div class="steps">{steps}</div><div class="write" aria-hidden="true">{blanks}</div></div></li>'
    )


def _weeks(edition: PlanEdition) -> str:
    head = "".join(f'<th scope="col">{html.escape(each)}</th>' for each in WEEK_HEADS)
    rows = "".join(
        f"<tr>{''.join(f'<td>{html.escape(cell)}</td>' for cell in week_cells(week))}</tr>"
        for week in last_weeks(edition.plan)
    )
    return f'<div class="weeks"><table><thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table></div>'
