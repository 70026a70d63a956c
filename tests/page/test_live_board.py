"""The live board in Chromium: the drawn place is the pose, and mouse, finger and keyboard each play alone."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest

from backcut.motion.timeline import pose

from .demo import SPOTS, demo, timeline
from .hands import centre, drag, focused, on_screen, tab_to_the_floor, told, touch
from .live import Opener
from .test_board_contract import possession

AXE = Path(__file__).parents[1] / "vendor" / "axe-core" / "axe.min.js"
TIMES = 50


@pytest.mark.parametrize("turned", [False, True])
@pytest.mark.parametrize("width", [390, 820, 1440])
def test_every_player_is_drawn_where_the_pose_has_him_to_a_pixel(live: Opener, width: int, turned: bool) -> None:
    show = possession()
    page = live(show, width=width)
    page.evaluate("on => board.turn(on)", turned)
    times = [float(t) for t in np.linspace(0.0, show.timeline.duration_s, TIMES).round(3)]
    drawn = page.evaluate(
        """(times) => times.map((t) => {
          board.state.goTime(t * 100);
          return Object.fromEntries(Object.entries(board.parts.players).map(([n, node]) => {
            const box = node.querySelector("use").getBoundingClientRect();
            return [n, [box.left + box.width / 2, box.top + box.height / 2]];
          }));
        })""",
        times,
    )
    assert len(drawn) == TIMES
    for t_s, places in zip(times, drawn, strict=True):
        for player, (x, y) in pose(show.timeline, t_s).players.items():
            expected = on_screen(page, (x * 100, y * 100), turned)
            assert places[str(player)] == pytest.approx(expected, abs=1.0), (player, t_s)


def test_a_player_with_the_ball_is_dragged_to_whom_he_passes(live: Opener) -> None:
    page = live()
    drag(page, centre(page, "#p1 use"), centre(page, "#p3 use"))
    assert told(page) == [["do", "1>3"]]


def test_while_he_is_dragged_the_floor_shows_where_the_move_can_end(live: Opener) -> None:
    page = live()
    page.mouse.move(*centre(page, "#p1 use"))
    page.mouse.down()
    page.mouse.move(*on_screen(page, (200, 600)), steps=3)
    assert page.locator("#hints .from").count() == 1
    assert page.locator("#hints .target").count() == len(SPOTS) - 1
    assert page.locator("#hints .aimed").count() == 0
    page.mouse.move(*centre(page, "#p2 use"), steps=3)
    assert page.locator("#hints .aimed").count() == 1
    assert page.locator("#hint-words").text_content() == "1 passes to 2"
    page.keyboard.press("Escape")
    assert page.locator("#hints *").count() == 0
    page.mouse.up()
    assert told(page) == []


def test_dropped_elsewhere_nothing_happens(live: Opener) -> None:
    page = live()
    drag(page, centre(page, "#p1 use"), on_screen(page, (250, 1100)))
    assert told(page) == []
    assert page.locator("#hints *").count() == 0


def test_a_player_nobody_asks_anything_of_can_be_dragged_nowhere(live: Opener) -> None:
    page = live()
    drag(page, centre(page, "#p2 use"), centre(page, "#p3 use"))
    assert told(page) == []


def test_click_and_click_is_a_pass_and_a_click_on_the_floor_lets_go(live: Opener) -> None:
    page = live()
    page.mouse.click(*centre(page, "#p1 use"))
    assert page.locator("[data-cell=p1]").get_attribute("aria-pressed") == "true"
    page.mouse.click(*on_screen(page, (250, 1100)))
    assert page.locator("[aria-pressed=true]").count() == 0
    page.mouse.click(*centre(page, "#p1 use"))
    page.mouse.click(*centre(page, "#p4 use"))
    assert told(page) == [["choose", 1], ["choose", None], ["choose", 1], ["do", "1>4"]]


def test_a_hand_on_a_running_player_takes_him_where_he_is_now(live: Opener) -> None:
    page = live()
    page.evaluate("board.state.goTime(200)")
    place = pose(timeline(), 2.0).players[4]
    page.mouse.click(*on_screen(page, (place[0] * 100, place[1] * 100)))
    assert told(page) == [["choose", 4]]
    page.evaluate("again({ at: { t: 100, moment: 1 }, speed: 'slow', playing: true })")
    page.mouse.move(*centre(page, "#p5 use"))
    page.mouse.down()
    assert page.evaluate("board.state.now.playing") is False
    page.mouse.up()


def test_the_turned_floor_is_played_on_the_same_way(live: Opener) -> None:
    page = live()
    page.evaluate("board.turn(true)")
    assert centre(page, "#p1 use") == pytest.approx(on_screen(page, (0, 710), turned=True), abs=1.0)
    drag(page, centre(page, "#p1 use"), centre(page, "#p2 use"))
    page.locator("[data-cell=p1]").focus()
    page.keyboard.press("ArrowLeft")
    assert page.evaluate("document.activeElement.dataset.cell") == "p2"
    assert told(page) == [["do", "1>2"]]


def test_on_the_turned_floor_everything_that_is_read_stands_upright(live: Opener) -> None:
    page = live()
    page.evaluate("board.turn(true); board.you(2); board.state.goMoment(3)")
    lean = page.evaluate(
        """() => [...document.querySelectorAll(".half text")].filter((text) => text.getBoundingClientRect().width)
          .map((text) => {
            const along = text.querySelector("textPath") ? (text.getRotationOfChar(0) * Math.PI) / 180 : 0;
            return [text.textContent, Math.sign(text.getScreenCTM().a) * Math.cos(along)];
          })"""
    )
    assert len(lean) > 12
    assert [text for text, upright in lean if upright <= 0] == []
    page.evaluate("board.turn(false)")
    assert page.evaluate("document.querySelector('#floor-title').textContent") == "Half court, basket at the top."


def test_by_finger_tap_and_tap_and_drag(live: Opener) -> None:
    page = live(width=390, height=844, has_touch=True, is_mobile=True)
    page.touchscreen.tap(*centre(page, "#p1 use"))
    page.touchscreen.tap(*centre(page, "#p5 use"))
    touch(page, centre(page, "#p1 use"), centre(page, "#p3 use"))
    assert told(page) == [["choose", 1], ["do", "1>5"], ["do", "1>3"]]
    assert page.evaluate("scrollY") == 0


def test_a_finger_that_starts_on_the_empty_floor_scrolls_the_page(live: Opener) -> None:
    page = live(width=390, height=844, has_touch=True, is_mobile=True)
    x, y = on_screen(page, (250, 700))
    touch(page, (x, y), (x, y - 150))
    page.evaluate("async () => { while (scrollY < 50) await new Promise(requestAnimationFrame); }")
    assert told(page) == []


def test_the_keyboard_alone_walks_the_floor_passes_and_denies(live: Opener) -> None:
    page = live()
    tab_to_the_floor(page)
    assert focused(page) == "player 1, has the ball"
    page.keyboard.press("ArrowLeft")
    assert focused(page) == "player 3"
    page.keyboard.press("Enter")
    page.keyboard.press("d")
    page.keyboard.press("ArrowRight")
    page.keyboard.press("Enter")
    assert page.locator("[aria-pressed=true]").get_attribute("data-cell") == "p1"
    page.keyboard.press("Escape")
    assert page.locator("[aria-pressed=true]").count() == 0
    assert told(page) == [["do", "1>3"], ["do", "deny 3"], ["choose", 1], ["choose", None]]


def test_on_a_cell_arrows_walk_and_other_keys_go_on_in_time(live: Opener) -> None:
    page = live()
    tab_to_the_floor(page)
    now = "[board.state.now.moment, board.state.now.playing]"
    page.keyboard.press("ArrowRight")
    assert page.evaluate(now) == [0, False]
    for key, moment in ((".", 1), ("PageDown", 2), (",", 1), ("PageUp", 0)):
        page.keyboard.press(key)
        assert page.evaluate(now) == [moment, False]
    page.keyboard.press("Space")
    assert page.evaluate(now) == [1, True]
    page.keyboard.press("Space")
    assert page.evaluate(now) == [1, False]


def test_the_focus_is_a_square_of_ink_round_the_disc(live: Opener) -> None:
    page = live()
    tab_to_the_floor(page)
    square = page.locator("[data-cell=p1] .square")
    assert square.is_visible()
    assert square.evaluate("node => getComputedStyle(node).strokeWidth") == "3px"
    assert centre(page, "[data-cell=p1] .square") == pytest.approx(centre(page, "#p1 use"), abs=1.0)
    assert page.locator(".square:visible").count() == 1


def test_the_focus_stays_on_its_player_from_decision_to_decision(live: Opener) -> None:
    page = live()
    page.locator("[data-cell=p4]").focus()
    for moment in range(1, 5):
        page.evaluate("m => board.state.goMoment(m)", moment)
        assert page.evaluate("document.activeElement.dataset.cell") == "p4"
        assert centre(page, "[data-cell=p4] .reach") == pytest.approx(centre(page, "#p4 use"), abs=1.0)


def test_when_a_spot_is_taken_the_focus_goes_to_whoever_stands_there(live: Opener) -> None:
    page = live()
    page.evaluate("board.state.goMoment(2)")
    page.locator("[data-cell=T]").focus()
    page.evaluate("board.state.goMoment(0)")
    assert page.evaluate("document.activeElement.dataset.cell") == "p1"


def test_a_program_that_presses_for_somebody_does_what_enter_does(live: Opener) -> None:
    page = live()
    page.evaluate("document.querySelector('[data-cell=p2]').dispatchEvent(new MouseEvent('click', { bubbles: true }))")
    assert told(page) == [["do", "1>2"]]


def test_swapped_in_mid_flight_nobody_jumps_and_the_focus_stays(live: Opener) -> None:
    page = live()
    page.evaluate("again({ at: { t: 150 }, speed: 'slow', playing: true })")
    page.locator("[data-cell=p2]").focus()
    jumps = page.evaluate(
        """async () => {
          const frame = () => new Promise(requestAnimationFrame);
          const place = () => Object.values(board.parts.players).map((node) => {
            const { left, top } = node.querySelector("use").getBoundingClientRect();
            return [left, top];
          });
          const far = [];
          for (let i = 0; i < 20; i += 1) {
            await frame();
            const before = place();
            const { t, moment, playing, speed } = board.state.now;
            again({ at: { t, moment }, playing, speed });
            far.push(...place().map(([x, y], n) => Math.hypot(x - before[n][0], y - before[n][1])));
          }
          return [Math.max(...far), board.state.now.t, board.state.now.playing];
        }"""
    )
    assert jumps[0] < 0.1
    assert jumps[1] > 150
    assert jumps[2] is True
    assert page.evaluate("document.activeElement.dataset.cell") == "p2"


def test_a_board_that_has_ended_hears_nothing_more(live: Opener) -> None:
    page = live()
    page.evaluate("window.old = board; again()")
    page.keyboard.press("ArrowRight")
    assert page.evaluate("[old.state.now.moment, board.state.now.moment]") == [0, 1]


def test_after_a_move_the_new_decision_is_spoken(live: Opener) -> None:
    page = live()
    said = page.evaluate(
        """() => new Promise((done) => {
          again({ at: { moment: 1 }, speed: "slow", playing: true });
          const caption = document.getElementById("caption");
          new MutationObserver(() => done([caption.getAttribute("aria-live"), caption.textContent]))
            .observe(caption, { childList: true });
        })"""
    )
    assert said[0] == "polite"
    assert demo().moments[1].caption in said[1]


def test_one_players_view_marks_his_disc_and_only_his(live: Opener) -> None:
    page = live()
    wide = "n => getComputedStyle(document.querySelector(`#p${n}`)).getPropertyValue('--disc')"
    page.evaluate("board.state.goMoment(3); board.you(2)")
    assert [page.evaluate(wide, n) for n in (2, 4)] == ["10", ""]
    assert page.locator("#p2 .you-word").text_content() == "you"
    assert page.locator("#under .other[data-runner='4']").count() == 1
    assert page.locator("#under .other[data-runner='2']").count() == 0
    # The letters of the others step back with their ways; his own stays.
    flags = page.locator("#over g:has(> .m > use[href='#m-flag'])")
    assert flags.count() > 1
    for flag in flags.all():
        aside = flag.get_attribute("data-runner") != "2"
        assert ("other" in (flag.get_attribute("class") or "").split()) is aside
    page.evaluate("board.state.goMoment(2)")
    assert page.locator("#under .other[data-runner='4']").count() > 0
    page.evaluate("board.you(null)")
    assert page.locator(".you-word, .other").count() == 0


def test_trails_of_the_whole_possession_begin_at_its_beginning(live: Opener) -> None:
    page = live()
    first = "document.querySelector('#trails [data-player=\"1\"]').getAttribute('d').slice(1).split('L')[0]"
    page.evaluate("board.state.goTime(380)")
    assert page.evaluate(first) != "0.0 710.0"
    page.evaluate("board.trails(true)")
    assert page.evaluate(first) == "0.0 710.0"
    page.evaluate("board.trails(false)")
    assert page.evaluate(first) != "0.0 710.0"


MARK = """
window.moves = []; window.drops = [];
window.mark = handle(board.parts, {
  id: "mark", label: "Denial mark", x: 400, y: 500,
  limit: (x, y) => [Math.round(x / 10) * 10, Math.min(Math.max(y, 400), 600)],
  move: (x, y) => moves.push([x, y]), drop: (x, y) => drops.push([x, y]),
});
0;
"""


@pytest.mark.parametrize("turned", [False, True])
def test_a_handle_follows_the_hand_within_its_limits(live: Opener, turned: bool) -> None:
    page = live()
    page.evaluate("on => board.turn(on)", turned)
    page.evaluate(MARK)
    box = page.locator(".handle .reach").bounding_box()
    assert box is not None
    assert min(box["width"], box["height"]) == pytest.approx(44, abs=0.5)
    drag(page, on_screen(page, (400, 500), turned), on_screen(page, (300, 900), turned))
    assert page.evaluate("drops") == [[300, 600]]
    assert page.evaluate("moves.at(-1)") == [300, 600]
    assert told(page) == []


def test_a_handle_goes_by_keys_and_escape_gives_it_back(live: Opener) -> None:
    page = live()
    page.evaluate(MARK)
    page.locator(".handle").focus()
    page.keyboard.press("ArrowRight")
    page.keyboard.press("Shift+ArrowDown")
    assert page.evaluate("moves") == [[410, 500], [410, 550]]
    page.keyboard.press("Escape")
    assert page.evaluate("[moves.at(-1), drops]") == [[400, 500], []]
    page.keyboard.press("ArrowLeft")
    page.keyboard.press("Enter")
    assert page.evaluate("drops") == [[390, 500]]
    assert page.evaluate("board.state.now.moment") == 0
    assert page.locator(".handle").get_attribute("aria-valuetext") == "3.9 m right, 5.0 m out"


def test_a_handle_that_is_put_back_after_a_swap_has_the_focus_again(live: Opener) -> None:
    page = live()
    page.evaluate(MARK)
    page.locator(".handle").focus()
    page.evaluate("again()")
    page.evaluate(f"again(); {MARK}")
    assert page.evaluate("document.activeElement === document.body")
    page.locator(".handle").focus()
    page.evaluate(f"again(); {MARK}")
    assert page.evaluate("document.activeElement.dataset.handle") == "mark"
    page.keyboard.press("ArrowRight")
    page.evaluate("mark.remove()")
    assert page.evaluate("[moves.length, drops.length]") == [1, 0]


def test_on_a_phone_every_place_is_44_pixels_wide(live: Opener) -> None:
    page = live(width=390, height=844)
    boxes = [cell.bounding_box() for cell in page.locator(".cell .reach").all()]
    assert len(boxes) >= 5
    for box in boxes:
        assert box is not None
        assert min(box["width"], box["height"]) >= 44


@pytest.mark.parametrize("width", [390, 1440])
def test_axe_finds_nothing_on_the_live_floor(live: Opener, width: int) -> None:
    page = live(width=width)
    page.evaluate("board.state.goMoment(3); board.you(2); board.choose(3)")
    page.evaluate(MARK)
    page.locator("[data-cell=p3]").focus()
    page.wait_for_timeout(300)
    page.evaluate(AXE.read_text(encoding="utf-8"))
    found = json.loads(
        page.evaluate(
            """async () => {
              const { violations } = await axe.run(document.getElementById("floor"));
              return JSON.stringify(violations.map((v) => [v.id, v.nodes.map((node) => node.html.slice(0, 160))]));
            }"""
        )
    )
    assert found == []
