"""What somebody does before the page has heard what became of the thing before: it is done too, and never stands in its own way."""

from contextlib import contextmanager

import pytest

from tests.browser.machine import DRAWN
from tests.browser.shows_on_disk import beside_its_song
from tests.browser.test_planning_dragging import ANSWERED_LATE
from tests.browser.test_planning_first_visit import counts_on, written
from tests.browser.test_planning_page import Planner
from tests.browser.test_stage_page import SHOW, became, text
from tests.desk_client import eventually, warm_desk

WALK = "  - {formation: deep, from: 5.1, beats: 8}   # upstage\n"
LED = WALK.replace("beats: 8}", "beats: 8, via: {Ash: [[-4, 5], [-4, 6]]}}")
# What the server tells is kept back while there is a list for it; each event there can be told after all.
EVENTS_KEPT = """window.kept = null;
{ const send = window.fetch; window.fetch = async (...what) => {
    const answer = await send(...what);
    if (!String(what[0]).endsWith('/events')) return answer;
    let left = ''; const read = new TextDecoder(), write = new TextEncoder();
    const events = new TransformStream({ transform(chunk, out) {
      const all = (left + read.decode(chunk, { stream: true })).split('\\n\\n'); left = all.pop();
      for (const one of all) { const tell = () => out.enqueue(write.encode(one + '\\n\\n')); if (window.kept) window.kept.push([one, tell]); else tell(); } } });
    return new Response(answer.body.pipeThrough(events), { status: answer.status, headers: answer.headers }); } }"""
OF_THE_SHOW = "([event]) => event.startsWith('event: show')"


@pytest.fixture
def planner(flat_browser, tmp_path):
    path = beside_its_song(tmp_path, SHOW.replace(WALK, LED), "three.yaml")
    with warm_desk(path) as served, Planner(flat_browser, served.address) as planner:
        planner.served = served
        planner.page.context.add_init_script(EVENTS_KEPT)
        planner.page.reload()
        planner.page.wait_for_selector(".eight")
        yield planner
        assert planner.faults == []


TOLD = "() => { const all = window.kept; window.kept = null; all.forEach(([, tell]) => tell()); }"


@contextmanager
def unanswered(planner):
    """The server does what is asked for first, and the page hears of it once this is over."""
    planner.page.evaluate("() => { window.kept = []; window.release = null; }")
    planner.page.evaluate(ANSWERED_LATE, "operations")
    yield
    planner.page.wait_for_function("() => !!window.release")
    planner.page.evaluate("() => window.release()")
    planner.page.evaluate(TOLD)


def not_refused(planner):
    planner.up_to_date()
    assert planner.page.locator(".refused").count() == 0


def on_the_stage(planner):
    planner.tab("Stage")
    planner.page.get_by_label("Look at").select_option("to deep, from 5.1")


def test_a_walk_is_deleted_right_after_it_was_changed(planner):
    on_the_stage(planner)
    with unanswered(planner):
        planner.page.get_by_label("From", exact=True).fill("6.1")
        planner.page.keyboard.press("Tab")
        eventually(lambda: "from: 6.1" in text(planner))
        planner.page.get_by_role("button", name="Delete this walk").press("Enter")
    eventually(lambda: text(planner) == SHOW.replace(WALK, ""))
    not_refused(planner)


def test_a_point_is_taken_out_right_after_it_was_moved_and_only_that_one(planner):
    on_the_stage(planner)
    point = planner.page.get_by_role("button", name="Point 2 of 2 of Ash’s way")
    with unanswered(planner):
        point.press("Shift+ArrowLeft")
        eventually(lambda: "[-4.5, 6]" in text(planner))
        point.press("Delete")
        point.press("Delete")
    became(planner, LED.replace("[[-4, 5], [-4, 6]]", "[[-4, 5]]")[:-1])
    planner.waits_for("through 1 point")
    not_refused(planner)
    assert "[[-4, 5]]" in text(planner)


def test_a_point_that_was_moved_stays_there_when_the_next_is_moved_before_the_view_comes(planner):
    on_the_stage(planner)
    points = [planner.page.get_by_role("button", name=f"Point {k} of 2 of") for k in (1, 2)]
    planner.page.evaluate("() => { window.kept = []; }")  # without which no view is asked for
    points[0].press("Shift+ArrowLeft")
    planner.page.get_by_role("button", name="Undo").and_(
        planner.page.locator("[title*=another]")
    ).wait_for()
    points[1].press("Shift+ArrowLeft")
    eventually(lambda: "[-4.5, 6]" in text(planner))
    assert "[[-4.5, 5], [-4.5, 6]]" in text(planner)
    planner.page.evaluate(TOLD)
    not_refused(planner)


def test_a_formation_is_renamed_right_after_somebody_was_moved_in_it(planner):
    planner.tab("Stage")
    with unanswered(planner):
        planner.page.get_by_role("button", name="Ash, ").press("Shift+ArrowLeft")
        eventually(lambda: "[-3.5, 4]" in text(planner))
        group = planner.page.get_by_role("group", name="The formation pair")
        group.get_by_label("Its name").fill("wide")
        planner.page.keyboard.press("Tab")
    eventually(lambda: "wide: {spots: {Ash: {at: [-3.5, 4]}," in text(planner))
    not_refused(planner)


def test_two_who_are_away_and_two_who_are_mirrored_are_said_one_right_after_the_other(planner):
    planner.tab("Who")
    ash, ivy = (planner.page.get_by_role("region", name=name) for name in ("Ash", "Ivy"))
    with unanswered(planner):
        ash.get_by_label("is away").check()
        eventually(lambda: "away: " in text(planner))
        ivy.get_by_label("is away").check()
    eventually(lambda: "away: [Ash, Ivy]" in text(planner))
    not_refused(planner)
    planner.page.get_by_role("button", name="Everybody is there").click()
    eventually(lambda: "tonight" not in text(planner))
    planner.up_to_date()
    planner.page.locator(".block.written").first.click()
    mirrored = planner.page.get_by_role("group", name="Together")
    with unanswered(planner):
        mirrored.get_by_label("Ash").click()
        eventually(lambda: "mirror: Ash" in text(planner))
        mirrored.get_by_label("Birch").click()
    eventually(lambda: "mirror: [Ash, Birch]" in text(planner) or "mirror: all" in text(planner))
    not_refused(planner)


def test_what_the_server_told_of_an_earlier_change_does_not_turn_the_page_back(planner):
    page = planner.page
    on_the_stage(planner)
    page.evaluate("() => { window.kept = []; window.release = null; }")
    undo = page.get_by_role("button", name="Undo")
    page.get_by_label("From", exact=True).fill("6.1")
    page.keyboard.press("Tab")
    undo.and_(page.locator("[title*='change from']")).wait_for()
    page.wait_for_function(f"() => window.kept.some({OF_THE_SHOW})")
    page.get_by_label("in beats").fill("6")
    page.keyboard.press("Tab")
    later = undo.and_(page.locator("[title*='change beats']"))
    later.wait_for()
    page.evaluate(f"() => window.kept.find({OF_THE_SHOW})[1]()")
    page.evaluate(DRAWN)
    assert later.count() == 1
    page.evaluate(
        "() => { const all = window.kept; window.kept = null; all.forEach(([, tell]) => tell()); }"
    )
    not_refused(planner)


# --- what somebody else did meanwhile ---


def somebody_else(planner, *operations):
    """Another page does something, as one step."""
    other = planner.served.page
    revision = other.get("show")[1]["revision"]
    status, said = other.post("operations", revision=revision, operations=operations)
    assert status == 200, said
    return said


def test_a_walk_is_deleted_after_a_change_that_somebody_else_had_made_with_another_walk(planner):
    planner.tab("Stage")
    moved = {"do": "move-spot", "formation": "pair", "who": "Ash", "at": [-3.5, 4]}
    early = {"do": "put-walk", "formation": "pair", "start": "3.1", "beats": 4, "before": 1}
    with unanswered(planner):
        somebody_else(planner, moved, early)
        planner.page.get_by_role("button", name="Ash, ").press("Shift+ArrowLeft")
        planner.page.wait_for_function("() => !!window.release")
        planner.page.get_by_label("Look at").select_option("to deep, from 5.1")
        planner.page.get_by_role("button", name="Delete this walk").press("Enter")
    eventually(lambda: "deep, from: 5.1" not in text(planner))
    not_refused(planner)
    (walk,) = (
        each for each in text(planner).splitlines() if "from: 3.1" in each and "pair" in each
    )
    assert walk.startswith("  - {formation: pair, from: 3.1")
    assert "Ash: {at: [-3.5, 4]}" in text(planner)


def test_going_back_after_a_save_that_took_over_a_change_of_the_file_is_refused(planner, tmp_path):
    page, (show,) = planner.page, tmp_path.rglob("three.yaml")
    status, _ = planner.served.page.post("versions", name="first")
    assert status == 200
    somebody_else(planner, {"do": "change-titles", "values": {"title": "Here"}})
    status, _ = planner.served.page.post("save")
    assert status == 200
    planner.tab("Versions")
    back = page.get_by_role("button", name="Go back to it first")
    back.wait_for()
    planner.up_to_date()
    page.evaluate("() => { window.kept = []; window.release = null; }")
    page.evaluate(ANSWERED_LATE, "save")
    there = show.read_text(encoding="utf-8").replace("Ivy", "Olive")
    show.write_text(there, encoding="utf-8")
    page.keyboard.press("Control+s")
    page.wait_for_function("() => !!window.release")
    assert "Olive" in text(planner)
    back.press("Enter")
    page.evaluate("() => window.release()")
    page.locator(".refused", has_text="the show has been changed meanwhile").wait_for()
    page.evaluate(TOLD)
    assert text(planner) == there


def test_undo_takes_nothing_back_that_somebody_else_did_unseen(planner):
    page = planner.page
    on_the_stage(planner)
    page.get_by_label("in beats").fill("6")
    page.keyboard.press("Tab")
    eventually(lambda: "beats: 6" in text(planner))
    planner.up_to_date()
    page.evaluate("() => { window.kept = []; }")
    somebody_else(planner, {"do": "change-titles", "values": {"title": "Theirs"}})
    page.get_by_role("button", name="Undo").click()
    page.locator(".refused", has_text="the show has been changed meanwhile").wait_for()
    assert "title: Theirs" in text(planner)
    assert "beats: 6" in text(planner)
    page.evaluate(TOLD)


def test_a_second_delete_of_a_point_says_and_sends_nothing(planner):
    on_the_stage(planner)
    sent = []
    planner.page.on("request", lambda one: one.url.endswith("/operations") and sent.append(one))
    point = planner.page.get_by_role("button", name="Point 2 of 2 of Ash’s way")
    planner.page.evaluate("() => { window.kept = []; }")  # the point is seen until the view comes
    for _ in range(2):
        point.press("Delete")
    eventually(lambda: "via: {Ash: [[-4, 5]]}" in text(planner))
    planner.page.get_by_label("in beats").fill("6")  # after both
    planner.page.keyboard.press("Tab")
    eventually(lambda: "beats: 6" in text(planner))
    planner.page.evaluate(TOLD)
    not_refused(planner)
    assert [each.post_data_json["operation"]["do"] for each in sent] == ["set-way", "change-walk"]


ROOM = """() => { const send = window.fetch; window.rooms = 0; window.sent = null; window.fetch = async (...what) => {
    const where = String(what[0]);
    if (where.endsWith('operations')) window.sent = JSON.parse(what[1].body);
    if (!where.endsWith('/room')) return send(...what);
    if (++window.rooms === 1) return new Response(JSON.stringify({ error: { code: 'superseded', message: 'the show has changed meanwhile; ask again' } }), { status: 409 });
    const answer = await send(...what);
    window.room = await answer.clone().json();
    await new Promise((done) => (window.release = done));
    return answer; } }"""


def test_room_is_asked_about_again_and_said_of_the_revision_of_the_answer(planner):
    page = planner.page
    planner.tab("Show")
    cast = page.locator(".forms > details", has=page.locator("> summary:text-is('Cast')"))
    cast.locator("> summary").click()
    cast.get_by_role("button", name="Add a performer").click()
    new = cast.get_by_role("group", name="A new performer")
    for label, words in (("name *", "Cedar"), ("height *", "1.6 m"), ("prop *", "poi")):
        box = new.get_by_label(label, exact=True)
        if box.evaluate("each => each.tagName") == "SELECT":
            box.select_option(words)
        else:
            box.fill(words)
            page.keyboard.press("Tab")
    page.evaluate(ROOM)
    new.get_by_role("button", name="Add the performer").click()
    page.wait_for_function("() => !!window.release")
    somebody_else(planner, {"do": "change-titles", "values": {"title": "Meanwhile"}})
    page.wait_for_function(
        "() => [...document.querySelectorAll('input')].some((each) => each.value === 'Meanwhile')"
    )
    page.evaluate("() => window.release()")
    eventually(lambda: "Cedar" in text(planner))
    said = page.evaluate("() => [window.room.revision, window.sent.revision, window.rooms]")
    assert said == [1, 1, 2]
    spots = page.evaluate("() => [window.room.spots, window.sent.operation.spots]")
    assert spots[0] == spots[1]
    assert "cannot be put on its song" not in page.locator("body").inner_text()
    assert "title: Meanwhile" in text(planner)


REPEATED = SHOW[: SHOW.index("timeline:")] + (
    "phrases:\n"
    "  wheel:\n"
    "    - {pattern: two-beat-weave, beats: 4}\n"
    "timeline:\n"
    "  - {from: 3.1, phrase: wheel, repeat: 3}\n"
)
LATER = """() => { const send = window.fetch; window.fetch = async (...what) => {
    const answer = await send(...what);
    if (!String(what[0]).endsWith('/view')) return answer;
    const view = await answer.json();
    for (const each of view.blocks) { each.start += 1; each.end += 1; }
    window.later = true;
    return new Response(JSON.stringify(view), { status: 200 }); } }"""


def test_a_move_of_a_phrase_that_begins_elsewhere_by_now_is_not_changed_for_another_time(
    flat_browser, tmp_path
):
    path = beside_its_song(tmp_path, REPEATED, "three.yaml")
    with warm_desk(path) as served, Planner(flat_browser, served.address) as planner:
        page, planner.served = planner.page, served
        page.context.add_init_script(EVENTS_KEPT + "window.kept = [];")
        page.reload()
        staged = "([event]) => event.startsWith('event: staged')"
        page.wait_for_function(f"() => window.kept?.some({staged})")
        page.evaluate(f"() => (window.again = window.kept.find({staged})[1])")
        page.evaluate(TOLD)
        page.wait_for_selector(".eight")
        planner.up_to_date()
        counts_on(planner, written(planner, 5), 2, of=4, end=True)
        page.mouse.up()
        question = page.get_by_role("alertdialog")
        question.wait_for()
        page.evaluate(LATER)
        page.evaluate("() => window.again()")
        page.wait_for_function("() => window.later")
        page.evaluate(DRAWN)
        question.get_by_role("button", name="Here only").click()
        page.locator(".refused", has_text="the move begins elsewhere by now").wait_for()
        assert text(planner) == REPEATED
        assert planner.faults == []
