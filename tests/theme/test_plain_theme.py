"""A second, tiny theme: what a theme's folder must have is enough for every page of every guide."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from guidegen.build import build
from guidegen.guide.pages import Guide
from tests.theme.example_guide import make_guide

ROOT = Path(__file__).parents[2]
PLAIN = Path(__file__).parent / "plain"
WORKSHOP = ROOT / "themes" / "workshop"
SAMPLE = ROOT / "sample_project" / "potting-bench.yaml"


@pytest.fixture(scope="module")
def plain_guide(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The sample guide in the plain theme; publishing has checked its links and ids."""
    out = tmp_path_factory.mktemp("plain") / "guide"
    build(SAMPLE, out, theme=PLAIN)
    return out


def test_every_page_is_written_with_its_title(plain_guide: Path) -> None:
    links = re.findall(r'<li><a href="([^"]+)"[^>]*>([^<]+)</a>', (plain_guide / "index.html").read_text())
    assert len(links) >= 11
    assert {name for name, _title in links} == {path.name for path in plain_guide.glob("*.html")}
    for name, title in links:
        assert f"<h1>{title}</h1>" in (plain_guide / name).read_text()


def test_nothing_of_the_other_theme_is_in_it(plain_guide: Path) -> None:
    files = {path.relative_to(plain_guide).as_posix() for path in plain_guide.rglob("*") if path.is_file()}
    assert "plain.css" in files
    assert not [name for name in files if "workshop" in name]


def test_it_has_every_template_that_pages_name() -> None:
    """Those of the sample and of a guide that stops for licensed work."""
    named = {page.template for page in make_guide().pages} | {"electrician.html", "one-file.html"}
    assert named <= {path.name for path in PLAIN.glob("*.html")}


def test_it_goes_into_one_file_too(tmp_path: Path) -> None:
    build(SAMPLE, tmp_path / "guide", theme=PLAIN, one_file=True)
    (written,) = (tmp_path / "guide").iterdir()
    text = written.read_text()
    sections = re.findall(r'<section id="([a-z-]+)">', text)
    assert sections[0] == "start"
    assert "print-set" in sections
    assert len(re.findall(r' id="([^"]+)"', text)) == len(set(re.findall(r' id="([^"]+)"', text)))


def test_a_guide_that_stops_for_licensed_work_has_its_sheet(tmp_path: Path) -> None:
    build(ROOT / "tests" / "examples" / "safety-new-fixed-wiring.yaml", tmp_path / "guide", theme=PLAIN)
    assert "________" in (tmp_path / "guide" / "electrician.html").read_text()


def test_a_print_set_shows_what_its_sheets_show(plain_guide: Path) -> None:
    """Of the same models: every line of the three sheets stands in the set."""
    stack = (plain_guide / "print-set.html").read_text()
    for name in ("stay-safe.html", "parts-and-tools.html", "readings.html"):
        sheet = (plain_guide / name).read_text().split("</h1>")[1].split("</main>")[0]
        lines = re.findall(r"<(?:li|p|strong)>([^<]{12,})<", sheet)[1:]  # the first is the page's purpose
        assert len(lines) > 5
        assert [line for line in lines if line not in stack] == []


def test_ids_of_a_print_set_are_told_apart_by_sheet(pages: dict[str, str]) -> None:
    ids = re.findall(r' id="([^"]+)"', pages["print-set.html"])
    assert len(ids) == len(set(ids))
    assert {"stay-safe-hot-resistor", "parts-buy", "readings-reading-t1-volts"} <= set(ids)


def test_ticks_and_readings_of_a_print_set_are_those_of_the_sheets(pages: dict[str, str]) -> None:
    """Kept under the same names, so that what was filled in on one page shows on the other."""
    kept = re.findall(r'data-keep="([^"]+)"', pages["print-set.html"])
    assert kept == re.findall(r'data-keep="([^"]+)"', pages["parts.html"] + pages["readings.html"])
    assert kept


def test_a_print_set_is_reached_from_the_first_page_and_the_contents(pages: dict[str, str]) -> None:
    start = pages["index.html"]
    assert '<p class="order-print"><a href="print-set.html">' in start
    assert 'href="print-set.html"' in start.split('id="contents"')[1]


def test_a_guide_without_a_print_set_offers_none(render) -> None:  # type: ignore[no-untyped-def]
    guide: Guide = make_guide(pages=make_guide().pages[:-1])
    assert "print-set.html" not in render(guide)["index.html"]
