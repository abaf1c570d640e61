"""Prints the table of all known pairs with what comes out: python -m tests.outside.table_of_pairs"""

from __future__ import annotations

from engine.ask import Desk
from tests.outside.test_known_pairs import KNOWN, ROWS, agrees, outcome


def main() -> None:
    desk = Desk()
    for row in ROWS:
        try:
            best, cup, ring, _ = outcome(desk, row)
        except AssertionError as misread:
            print(f"MISREAD {row['lens']} on {row['body']}: {misread}")
            continue
        good = agrees(row["expected"], best, cup, ring)
        weight = "must" if row in KNOWN else "lead"
        print(
            f"{'ok  ' if good else 'OFF '} {weight} {row['lens']:18} {row['body']:18} {row['expected']:26} "
            f"{best or '-':10} {'cup' if cup else '   '} ring {ring:8} {row['basis']}, {row['register_confidence']}"
        )


if __name__ == "__main__":
    main()
