"""The list of questions as people put them is read well enough; `python -m tests.grammar.reads` shows which are not."""

from __future__ import annotations

from tests.grammar.reads import scores

LEAST = {"intent": 0.95, "lens": 0.84, "body": 0.92}


def test_most_questions_of_the_list_are_read_as_they_are_meant() -> None:
    rows = scores()
    for part, least in LEAST.items():
        judged = [row.right[part] for row in rows if row.right[part] is not None]
        assert sum(map(bool, judged)) / len(judged) >= least, part
