"""The guide as one file, in a browser."""

from __future__ import annotations

import subprocess
import sys

import pytest

from tests.browser.checks import axe_findings, html_faults, requests_outside, too_wide
from tests.browser.surfing import PHONE, ROOT


@pytest.fixture(scope="module")
def one_file(tmp_path_factory):
    out = tmp_path_factory.mktemp("one") / "guide"
    sample = str(ROOT / "sample_project" / "potting-bench.yaml")
    command = [sys.executable, "-m", "guidegen", "build", sample, "--out", str(out), "--one-file"]
    subprocess.run(command, cwd=ROOT, check=True, capture_output=True)
    return out / "potting-bench.html"


def test_it_opens_from_disk_and_asks_for_nothing(opened, one_file):
    with opened(one_file) as page:
        assert requests_outside(page, one_file.parent) == []
        assert page.complaints == []
        assert (
            page.evaluate("[...document.images].filter(i => !i.naturalWidth && i.loading != 'lazy').length")
            == 0
        )


@pytest.mark.parametrize("look", [{"color_scheme": "light"}, {"color_scheme": "dark"}, {"viewport": PHONE}])
def test_axe_finds_nothing(opened, one_file, look):
    with opened(one_file, **look) as page:
        assert axe_findings(page) == []


def test_nothing_reaches_over_the_edge_of_a_phone(opened, one_file):
    with opened(one_file, viewport=PHONE) as page:
        assert too_wide(page) == []


def test_the_html_is_valid(one_file):
    assert html_faults([one_file]) == []


def test_the_contents_lead_to_every_sheet(opened, one_file):
    with opened(one_file) as page:
        names = page.locator("#contents a").evaluate_all("found => found.map(a => a.getAttribute('href'))")
        assert len(names) >= 8
        for name in names:
            page.click(f"#contents a[href='{name}']")
            at_the_end = page.evaluate("innerHeight + scrollY >= document.documentElement.scrollHeight - 1")
            # The last sheet may be lower than the window, and so not reach its top.
            last = name == names[-1] and at_the_end
            assert last or abs(page.locator(name).bounding_box()["y"]) < 40, name


def test_the_steps_are_counted_without_the_ticks_of_other_sheets(opened, one_file):
    with opened(one_file) as page:
        steps = page.locator("#build .step").count()
        assert f"of {steps} steps" in page.locator("#build [role=status]").inner_text()


def test_a_chosen_sheet_prints_alone(opened, one_file, tmp_path):
    from pypdf import PdfReader

    def pages(fragment: str) -> list[str]:
        with opened(one_file, media="print") as page:
            page.goto(one_file.as_uri() + fragment)
            page.pdf(path=tmp_path / "print.pdf", format="A4")
        return [sheet.extract_text() for sheet in PdfReader(tmp_path / "print.pdf").pages]

    alone, together = pages("#light"), pages("")
    assert len(alone) < len(together) / 4
    assert "Light along the run" in alone[0]
    assert not any("Stay safe" in text for text in alone)


def test_the_print_set_prints_the_sheets_that_it_names_and_is_no_copy_of_them(opened, one_file, tmp_path):
    from pypdf import PdfReader

    with opened(one_file, media="print") as page:
        page.goto(one_file.as_uri() + "#print-set")
        page.pdf(path=tmp_path / "print.pdf", format="A4")
        shown = page.locator(".one-sheet").filter(visible=True)
        names = shown.evaluate_all("found => found.map(sheet => sheet.id)")
        assert page.locator("#print-set table, #print-set .box").count() == 0
    assert names == ["stay-safe", "parts-and-tools", "readings"]
    assert len(PdfReader(tmp_path / "print.pdf").pages) <= 9
