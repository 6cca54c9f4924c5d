"""What the guide's script does: ticks and readings kept, progress counted, readings judged."""

from __future__ import annotations

import pytest


def verdict(page, text: str) -> str:
    """What the page says of a reading typed into the first blank, beside its bounds."""
    page.locator(".reading input").first.fill(text)
    return page.locator(".judgement").first.inner_text().strip()


def bounds(page) -> tuple[float, float]:
    """The range of the first reading, as the page's script gets it."""
    row = page.locator(".reading").first
    return float(row.get_attribute("data-low")), float(row.get_attribute("data-high"))


def test_a_reading_is_told_in_range_too_low_or_too_high(opened, guide):
    with opened(guide / "readings.html") as page:
        low, high = bounds(page)
        width = high - low
        assert verdict(page, f"{(low + high) / 2:.3f}") == "in range"
        assert verdict(page, f"{low - 0.2 * width:.3f}") == "too low"
        assert verdict(page, f"{high + 0.2 * width:.3f}") == "too high"
        assert verdict(page, "") == ""


def test_a_reading_just_outside_is_borderline_with_a_word_and_a_shape_of_its_own(opened, guide):
    with opened(guide / "readings.html") as page:
        row = page.locator(".reading").first
        low, out_low = (float(row.get_attribute(name)) for name in ("data-low", "data-out-low"))
        high, out_high = (float(row.get_attribute(name)) for name in ("data-high", "data-out-high"))
        assert verdict(page, f"{(low + out_low) / 2:.6f}") == "borderline, low"
        below = page.evaluate(
            "getComputedStyle(document.querySelector('.reading output'), '::before').content"
        )
        assert verdict(page, f"{(high + out_high) / 2:.6f}") == "borderline, high"
        above = page.evaluate(
            "getComputedStyle(document.querySelector('.reading output'), '::before').content"
        )
        assert verdict(page, f"{out_high + 0.2:.6f}") == "too high"
        far = page.evaluate("getComputedStyle(document.querySelector('.reading output'), '::before').content")
        assert len({below, above, far}) == 3
        assert "0 out of range" not in page.locator("[data-tally] .count").inner_text()


@pytest.mark.parametrize("form", ["{:.3f}", "{:.3f} V", " {:.3f}V ", "+{:.3f}"])
def test_a_reading_may_be_typed_with_its_unit_and_a_decimal_comma(opened, guide, form):
    with opened(guide / "readings.html") as page:
        typed = form.format(sum(bounds(page)) / 2)
        assert verdict(page, typed) == "in range"
        assert verdict(page, typed.replace(".", ",")) == "in range"


@pytest.mark.parametrize("typed", ["about five", "5.0.1", "1e3", "<b>5</b>"])
def test_what_is_no_number_is_called_so(opened, guide, typed):
    with opened(guide / "readings.html") as page:
        assert verdict(page, typed) == "not a number"


def test_readings_are_still_there_after_the_page_is_opened_again(opened, guide):
    with opened(guide / "readings.html") as page:
        verdict(page, "1.23")
        page.reload()
        assert page.locator(".reading input").first.input_value() == "1.23"
        assert page.locator(".judgement").first.inner_text().strip() == "too low"


def test_ticked_steps_are_counted_and_kept_under_the_project_s_key(opened, guide):
    with opened(guide / "build.html") as page:
        ticks = page.locator(".step input[type=checkbox]")
        ticks.nth(1).check()
        page.reload()
        assert ticks.nth(1).is_checked()
        assert page.locator(".count").inner_text() == f"1 of {ticks.count()} steps done"
        key = page.locator("html").get_attribute("data-key")
        assert all(name.startswith(f"guidegen:{key}:") for name in page.evaluate("Object.keys(localStorage)"))


def test_the_first_step_that_is_not_done_is_one_click_away(opened, guide):
    with opened(guide / "build.html") as page:
        page.locator(".step input[type=checkbox]").first.check()
        page.get_by_role("link", name="Go to step 2").click()
        assert page.evaluate("location.hash.slice(1)") == page.locator(".step").nth(1).get_attribute("id")


def test_clearing_asks_first(opened, guide):
    with opened(guide / "build.html") as page:
        tick = page.locator(".step input[type=checkbox]").first
        tick.check()
        page.once("dialog", lambda dialog: dialog.dismiss())
        page.get_by_role("button", name="Clear all ticks").click()
        assert tick.is_checked()
        page.once("dialog", lambda dialog: dialog.accept())
        page.get_by_role("button", name="Clear all ticks").click()
        assert not tick.is_checked()
        assert page.evaluate("localStorage.length") == 0


def test_the_project_file_can_be_copied(opened, guide):
    with opened(guide / "numbers.html", permissions=["clipboard-read", "clipboard-write"]) as page:
        page.locator("button.copy").click()
        page.get_by_role("button", name="Copied").wait_for()
        assert page.evaluate("navigator.clipboard.readText()") == page.locator("pre").text_content()


@pytest.mark.parametrize("name", ["build.html", "readings.html", "numbers.html"])
def test_without_script_nothing_is_offered_that_would_not_work(opened, guide, name):
    with opened(guide / name, java_script_enabled=False) as page:
        assert page.locator("button").count() == 0
        assert page.locator(".progress:visible, .tally:visible").count() == 0


def test_the_skip_link_comes_first_and_leads_to_the_main_part(opened, guide):
    with opened(guide / "build.html") as page:
        page.keyboard.press("Tab")
        assert page.evaluate("document.activeElement.className") == "skip"
        page.keyboard.press("Enter")
        assert page.evaluate("document.activeElement.id") == "main"


def test_nothing_moves_while_a_page_loads(opened, guide):
    with opened(guide / "build.html") as page:
        moved = page.evaluate(
            """() => new Promise(done => new PerformanceObserver(list =>
                 done(list.getEntries().reduce((sum, entry) => sum + entry.value, 0)))
               .observe({type: 'layout-shift', buffered: true}) || setTimeout(() => done(0), 300))"""
        )
        # 0.1 is what the Web Vitals call good; nothing of ours has a reason to move at all.
        assert moved < 0.01
