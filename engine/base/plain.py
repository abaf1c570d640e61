"""Text from a file or a stranger made safe to show: no control, bidirectional or line-breaking characters."""

from __future__ import annotations

from unicodedata import category

# format characters (Cf) hold the bidirectional overrides; Zl and Zp break lines where nobody expects it
_UNSAFE = {"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"}


def plain(text: str, longest: int = 400) -> str:
    """`text` with every unsafe character shown as '?', cut after `longest` characters."""
    if not text.isascii() or not text.isprintable():
        text = "".join("?" if category(char) in _UNSAFE else char for char in text)
    return text if len(text) <= longest else text[: longest - 3] + "..."
