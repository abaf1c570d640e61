"""How cards look: dark ink on white, large first line; two by five on A4 to be cut, one to a phone's screen."""

from __future__ import annotations

from engine.render.card_fit import GAP_MM, HEAD, HEIGHT_MM, LINE, LONG_HEAD, PADDING_MM, SIZES_PT, WIDTH_MM

COLUMNS, ROWS = 2, 5
TICK_MM = 1.8
LARGEST_PX, LEAST_PX = 14.0, 12.0  # letters on a screen, of a card with little on it and of a full one

_STYLE = """\
* { box-sizing: border-box; margin: 0; padding: 0; }
html { background: #fff; color: #000; font-family: system-ui, sans-serif; -webkit-text-size-adjust: 100%; }
h2 { line-height: 1.1; letter-spacing: -0.01em; }
h3 { font-size: 1em; border-bottom: 0.06em solid #000; margin-bottom: 0.24em; }
ol, ul { list-style-position: outside; }
li, p, h2, h3 { overflow-wrap: anywhere; }
data { white-space: nowrap; font-weight: 600; }
h2 data, h3 data, h2 { font-weight: 800; }
h3 data { font-weight: 700; }
.subject .name { font-weight: 600; }
ul { list-style: none; }
.alerts { border-top: 0.14em solid #000; padding-top: 0.16em; }
.danger { border: 0.14em solid #000; padding: 0 0.3em; font-weight: 600; }
.danger b { text-transform: uppercase; }
.down td:last-child data { white-space: normal; font-weight: 400; }
.down td:nth-child(2) data { font-weight: 700; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
th { text-align: left; font-weight: 400; font-style: italic; }
td { border-bottom: 0.03em solid #777; white-space: nowrap; }
td:first-child { padding-right: 0.5em; }
.across td { text-align: right; }
.across td:first-child { text-align: left; }
.notes { flex: 1 1 auto; border: 0.1em dotted #555; color: #333; }
.card { display: flex; flex-direction: column; background: #fff; }
.cuts, .on-paper { display: none; }

@media screen {
  html { font-size: 14px; line-height: 1.26; scroll-snap-type: y proximity; }
  .card { width: 100%; max-width: 420px; min-height: 100vh; min-height: 100svh; margin: 0 auto; padding: 0.7em 0.9em;
    scroll-snap-align: start; border-bottom: 0.15em solid #000; gap: 0.35em; }
  h2 { font-size: 1.75em; }
  .alerts { padding-top: 0.3em; }
  .alerts li { padding-left: 0.8em; text-indent: -0.8em; margin-bottom: 0.1em; }
  .alerts li::before { content: "▸ "; }
  .block ul li { margin-bottom: 0.05em; }
  .at-0 ol, .at-0 li, .at-5 ul, .at-5 li { display: inline; }
  .at-0 li + li::before { content: " → "; }
  .at-5 li + li::before { content: " · "; }
  .columns { display: flex; flex-direction: column; gap: 0.45em; }
  .column { display: contents; }
  .block ol { padding-left: 0; }
  .at-0 { order: 0; } .at-1 { order: 1; } .at-2 { order: 2; }
  .at-3 { order: 3; } .at-4 { order: 4; } .at-5 { order: 5; }
  .notes { min-height: 3.5em; padding: 0.2em 0.4em; }
}
"""


def style() -> str:
    """The style sheet, its measures those that cards are set by."""
    sizes = "\n".join(f"  .size-{n} {{ font-size: {size}pt; }}" for n, size in enumerate(SIZES_PT))
    printed = f"""
@page {{ size: A4; margin: 5mm; }}
@media print {{
  .sheet {{ position: relative; display: grid; grid-template-columns: {WIDTH_MM}mm {WIDTH_MM}mm;
    grid-template-rows: repeat({ROWS}, {HEIGHT_MM}mm); break-after: page; }}
  .sheet:last-child {{ break-after: auto; }}
  .card {{ width: {WIDTH_MM}mm; height: {HEIGHT_MM}mm; padding: {PADDING_MM}mm; line-height: {LINE};
    break-inside: avoid; }}
  h2 {{ font-size: {HEAD}em; }}
  h2.long {{ font-size: {LONG_HEAD}em; }}
  .columns {{ display: flex; gap: {GAP_MM}mm; }}
  .column {{ flex: 1 1 0; min-width: 0; }}
  .block {{ margin-top: 0.26em; }}
  li {{ display: inline; }}
  .alerts ul, .block ul, .block ol {{ display: inline; }}
  .on-paper {{ display: inline; }}
  .on-screen {{ display: none; }}
  .alerts li + li::before {{ content: " · "; }}
  .at-0 li + li::before {{ content: " → "; }}
  .at-3 li + li::before {{ content: " "; }}
  .at-5 li + li::before {{ content: " · "; }}
  td {{ border-bottom: 0; }}
  .notes {{ margin-top: 0.4em; padding: 0.12em 0.4em 0; line-height: 1.2; min-height: 0; }}
  .cuts {{ display: block; position: absolute; left: 0; top: 0; width: {COLUMNS * WIDTH_MM}mm;
    height: {ROWS * HEIGHT_MM}mm; overflow: visible; pointer-events: none; }}
{sizes}
}}
"""
    # a full card has smaller letters, so that it stays on one screen
    steps = len(SIZES_PT) - 1
    screen = "\n".join(
        f"  .size-{n} {{ font-size: {LARGEST_PX - (LARGEST_PX - LEAST_PX) * min(2 * n / steps, 1):.1f}px; }}"
        for n in range(len(SIZES_PT))
    )
    return f"{_STYLE}\n@media screen {{\n{screen}\n}}\n{printed}"


def marks() -> str:
    """Crosses where the cards of a sheet meet, to cut by."""
    lines = []
    for column in range(COLUMNS + 1):
        for row in range(ROWS + 1):
            x, y = column * WIDTH_MM, row * HEIGHT_MM
            lines.append(f"M{x - TICK_MM:g} {y:g}h{2 * TICK_MM:g}M{x:g} {y - TICK_MM:g}v{2 * TICK_MM:g}")
    box = f"0 0 {COLUMNS * WIDTH_MM:g} {ROWS * HEIGHT_MM:g}"
    return (
        f'<svg class="cuts" viewBox="{box}" aria-hidden="true"><path d="{"".join(lines)}" fill="none" '
        'stroke="#000" stroke-width="0.15"/></svg>'
    )
