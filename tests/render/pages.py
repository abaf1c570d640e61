"""A saved page as it is read, and as a browser lays it out: on a phone's screen, and on paper."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
from collections.abc import Sequence
from html import escape, unescape
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest

PHONE = (390, 844)  # px
PAPER = (794, 1123)  # A4 at 96 to the inch
WAYS = ("chromium", "chromium-browser")
QUIET = (
    "--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
    "--disable-component-update", "--disable-sync", "--hide-scrollbars",
)  # fmt: skip

needs_browser = pytest.mark.skipif(
    not any(shutil.which(way) for way in WAYS), reason="no Chromium on this machine to lay the page out"
)

# what is wrong with how a page is laid out: text outside its card or the page, blocks over one another
MEASURE = """
function wrongOf(doc, width, paper) {
  const out = [], view = doc.defaultView;
  const text = (node) => node.textContent.trim().slice(0, 40);
  if (doc.documentElement.scrollWidth > width) out.push('page ' + doc.documentElement.scrollWidth + ' px wide');
  doc.querySelectorAll('.card').forEach((card, n) => {
    const box = card.getBoundingClientRect(), say = (what) => out.push('card ' + (n + 1) + ': ' + what);
    if (card.scrollHeight > card.clientHeight + 1) say('more than its height');
    const walk = doc.createTreeWalker(card, 4);
    const range = doc.createRange();
    for (let node = walk.nextNode(); node; node = walk.nextNode()) {
      if (!node.textContent.trim()) continue;
      range.selectNodeContents(node);
      for (const r of range.getClientRects())
        if (r.left < box.left - 0.5 || r.right > box.right + 0.5 || r.top < box.top - 0.5 ||
            r.bottom > box.bottom + 0.5) say('outside: ' + text(node));
      const home = node.parentElement;
      if (view.getComputedStyle(home).overflow === 'hidden') say('may be cut off: ' + text(node));
    }
    for (const cell of card.querySelectorAll('td, th, li, p, h2, h3'))
      if (cell.scrollWidth > cell.clientWidth + 1 && view.getComputedStyle(cell).display !== 'inline')
        say('wider than its place: ' + text(cell));
    const found = [...card.querySelectorAll('h2, .subject, .alerts, .block, .notes')];
    const parts = found.map((e) => [e, e.getBoundingClientRect()]);
    parts.forEach(([a, one], i) => parts.slice(i + 1).forEach(([b, other]) => {
      const over = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
      const beside = Math.min(one.right, other.right) - Math.max(one.left, other.left);
      if (over > 0.5 && beside > 0.5) say(text(a) + ' runs into ' + text(b));
    }));
    const notes = card.querySelector('.notes').getBoundingClientRect();
    if (notes.height < (paper ? 12 : 40)) say('no room for notes: ' + notes.height);
    if (paper && parseFloat(view.getComputedStyle(card).fontSize) < 6)
      say('letters of ' + view.getComputedStyle(card).fontSize);
  });
  return {cards: doc.querySelectorAll('.card').length, wrong: out,
    heights: [...doc.querySelectorAll('.card')].map((card) => card.getBoundingClientRect().height)};
}
"""


class Reading(HTMLParser):
    """The text of each card with its figures and names told apart."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.cards: list[dict[str, Any]] = []
        self.elsewhere: list[str] = []
        self._figure: str | None = None
        self._name = False
        self._inside = False
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        told = dict(attrs)
        if tag == "article":
            self.cards.append({"figures": [], "names": [], "words": [], "text": ""})
            self._inside = True
        elif tag == "data":
            self._figure = told["value"] or ""
        elif told.get("class") == "name":
            self._name = True

    def handle_endtag(self, tag: str) -> None:
        if tag == "article":
            self._inside = False
        elif tag == "data":
            self._figure = None
        elif tag == "span":
            self._name = False

    def handle_data(self, data: str) -> None:
        if not self._inside:
            self.elsewhere.append(data)
            return
        card = self.cards[-1]
        card["text"] += data
        if self._figure is not None:
            name, _, case = self._figure.partition(" ")
            card["figures"].append((name, case, data))
        elif self._name:
            card["names"].append(data)
        else:
            card["words"].append(data)


def laid_out(pages: Sequence[str], folder: Path) -> list[tuple[dict[str, Any], dict[str, Any]]]:
    """How each page stands in a window of a phone's size, and with the styles for print in force as wide as A4."""
    # a window of a browser without a screen is never as narrow as a phone's: the pages stand in frames of their size
    shown = [way for page in pages for way in ((page, PHONE), (_as_printed(page), PAPER))]
    frames = "".join(
        f'<iframe srcdoc="{escape(page)}" style="width:{width}px;height:{height}px;border:0"></iframe>'
        for page, (width, height) in shown
    )
    run = "onload = () => { const out = document.createElement('pre'); out.id = 'measured';"
    run += "const found = [...document.querySelectorAll('iframe')].map((frame, n) =>"
    run += f" wrongOf(frame.contentDocument, n % 2 ? {PAPER[0]} : {PHONE[0]}, n % 2 == 1));"
    run += "out.textContent = JSON.stringify(found); document.body.append(out); }"
    file = folder / "measured.html"
    file.write_text(f"<body style='margin:0'>{frames}<script>{MEASURE}{run}</script>", "utf-8")
    dumped = browse(folder, "--window-size=1300,1400", "--dump-dom", file.as_uri())
    found = re.search(r'<pre id="measured">(.*?)</pre>', dumped, re.DOTALL)
    assert found, dumped[-400:]
    rows = json.loads(unescape(found[1]))
    return list(zip(rows[::2], rows[1::2], strict=True))


def _as_printed(page: str) -> str:
    assert "@media print" in page
    assert "@media screen" in page
    return page.replace("@media print", "@media all").replace("@media screen", "@media not all")


def printed_pages(page: str, folder: Path) -> int:
    """Pages of the PDF that a browser prints, each of them A4."""
    file, paper = folder / "printed.html", folder / "printed.pdf"
    file.write_text(page, "utf-8")
    browse(folder, "--no-pdf-header-footer", f"--print-to-pdf={paper}", file.as_uri())
    data = paper.read_bytes()
    boxes = re.findall(rb"/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)\s*\]", data)
    assert boxes
    assert all(abs(float(w) - 595) < 1 and abs(float(h) - 842) < 1 for w, h in boxes), boxes
    return len(re.findall(rb"/Type\s*/Page\b(?!s)", data))


def browse(folder: Path, *options: str) -> str:
    browser = next(path for way in WAYS if (path := shutil.which(way)))
    done = subprocess.run(
        [browser, *QUIET, f"--user-data-dir={folder / 'browser'}", *options],
        capture_output=True, text=True, timeout=120, check=False,
    )  # fmt: skip
    return done.stdout
