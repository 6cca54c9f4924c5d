"""Checks that any page or drawing can be put to; each returns what is wrong, so nothing when all is well."""

from __future__ import annotations

import json
import shutil
import subprocess
from collections.abc import Iterable
from pathlib import Path

from tests.browser.surfing import HTML_CHECKER, missing

# Text boxes are line boxes: taller than the ink by about a fifth above and below.
_TEXT_OVERLAPS = """
() => {
  const boxes = [...document.querySelectorAll('svg text, text')].filter(t => t.textContent.trim()).map(t => {
    const box = t.getBoundingClientRect();
    const upright = box.width >= box.height || t.textContent.trim().length < 3;
    const [dx, dy] = upright ? [0.5, box.height * 0.2] : [box.width * 0.2, 0.5];
    return {text: t.textContent.trim(), svg: t.ownerSVGElement,
            left: box.left + dx, right: box.right - dx, top: box.top + dy, bottom: box.bottom - dy};
  }).filter(b => b.right > b.left && b.bottom > b.top);
  const found = [];
  boxes.forEach((a, i) => boxes.slice(i + 1).forEach(b => {
    if (a.svg === b.svg && a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
      found.push(`"${a.text}" on "${b.text}"`);
  }));
  return found;
}
"""
_TEXT_OUTSIDE = """
() => [...document.querySelectorAll('svg text, text')].filter(t => {
  let svg = t.ownerSVGElement;
  while (svg.ownerSVGElement) svg = svg.ownerSVGElement;
  const box = t.getBoundingClientRect(), frame = svg.getBoundingClientRect();
  return box.width > 0 && (box.left < frame.left - 1 || box.right > frame.right + 1
                           || box.top < frame.top - 3 || box.bottom > frame.bottom + 3);
}).map(t => t.textContent.trim())
"""
_TOO_WIDE = """
() => {
  const width = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth <= width) return [];
  return [...document.querySelectorAll('body *')].filter(e => e.getBoundingClientRect().right > width + 1)
    .slice(0, 5).map(e => `${e.tagName.toLowerCase()}.${e.className || e.id || e.textContent.slice(0, 20)}`);
}
"""


def text_overlaps(page) -> list[str]:
    """Pairs of texts of one drawing that lie on one another, in the page or drawing that is open."""
    return page.evaluate(_TEXT_OVERLAPS)


def text_outside(page) -> list[str]:
    """Texts that reach out of their drawing, where they are cut off."""
    return page.evaluate(_TEXT_OUTSIDE)


def too_wide(page) -> list[str]:
    """What makes the page scroll sideways: the first elements that reach over the window's edge."""
    return page.evaluate(_TOO_WIDE) or (["the page itself"] if _scrolls_sideways(page) else [])


def _scrolls_sideways(page) -> bool:
    return page.evaluate("document.documentElement.scrollWidth > document.documentElement.clientWidth")


def axe_findings(page) -> list[str]:
    """What axe-core finds: the rule, and where."""
    from axe_playwright_python.sync_playwright import Axe

    # Left to preload, axe asks for the style sheets itself, which a page opened from disk may not.
    violations = Axe().run(page, options={"preload": False}).response["violations"]
    return [f"{found['id']}: {node['html'][:160]}" for found in violations for node in found["nodes"]]


def requests_outside(page, folder: Path) -> list[str]:
    """What the page has asked for that is not a file of its own folder or inside the page itself."""
    allowed = (folder.as_uri() + "/", "data:", "blob:")
    return [url for url in page.requested if not url.startswith(allowed)]


def html_faults(files: Iterable[Path]) -> list[str]:
    """What the Nu Html Checker calls an error in these files."""
    java = shutil.which("java")
    if java is None:
        missing("a Java runtime")
    if not HTML_CHECKER.exists():
        missing("the HTML checker: npm ci --ignore-scripts --prefix tests/browser")
    command = [java, "-jar", str(HTML_CHECKER), "--errors-only", "--format", "json", "--exit-zero-always"]
    done = subprocess.run([*command, *map(str, files)], capture_output=True, text=True, check=True)
    told = json.loads(done.stderr)["messages"]
    return [
        f"{Path(fault.get('url', '')).name}:{fault.get('lastLine')}: {fault['message']}" for fault in told
    ]
