"""The shipped words of the language agree with one another and with the reader."""

from __future__ import annotations

import re
from collections import defaultdict
from pathlib import Path

from grammar.hearing import HEARD_AS
from grammar.kinds import INTENTS
from grammar.words.atoms import key_of
from grammar.words.wordlist import WordList
from tests.grammar.names import WORDS, lexicon, words
from tests.reading import TEXTS, loaded

ROOT = Path(__file__).parents[2]
ORDERS = {
    "help",
    "help-teaching",
    "help-sources",
    "help-limits",
    "help-itself",
    "hello",
    "thanks",
    "noted",
    "quit",
    "show-memory",
    "start-over",
    "list-gear",
    "all-on-all",
}
OF_ANSWERS = {"doubt", "reason"}  # whole lines that ask why of the answer before
OF_OWN = {"which-own"}  # about all of one's own gear, which grammar/own/seeking.py reads
TAUGHT = {"teach", "forget"}  # told by statements, which grammar/own/taught.py reads


def records() -> list[tuple[str, str, list[str]]]:
    out = []
    for path in sorted(WORDS.glob("*.yaml")):
        for id_, record in loaded(path, TEXTS)["words"].items():
            out.append((id_, record.get("means") or "", record["says"]))
    return out


def test_every_word_has_an_id_of_its_own() -> None:
    ids = [id_ for id_, _, _ in records()]
    assert sorted(ids) == sorted(set(ids))


NO_PART_OF_SPEECH = frozenset(
    ["ask", "intent", "order", "teach", "sift", "reply", "alike", "mention", "group", "empty", "asking", "numeral"]
)


def test_no_phrase_is_two_parts_of_speech() -> None:
    """A phrase may be a cue besides what it is; it may not be, say, a lens and a measure."""
    seen: dict[str, set[str]] = defaultdict(set)
    for id_, means, says in records():
        if means and means.split()[0] not in NO_PART_OF_SPEECH:
            for phrase in says:
                seen[key_of(phrase)].add(id_)
    assert {key: ids for key, ids in seen.items() if len(ids) > 1} == {}


def test_every_order_is_an_intent_and_every_other_intent_has_evidence() -> None:
    told = {evidence.intent for evidence in lexicon().words.evidence}
    assert set(lexicon().words.orders.values()) == ORDERS | OF_ANSWERS
    assert told == set(INTENTS) - ORDERS - TAUGHT - OF_OWN


def test_evidence_names_only_what_can_show() -> None:
    cues = {means.split()[1] for means, _ in words() if means.startswith("ask ")}
    kinds = {means.split()[1] for means, _ in words() if re.match(r"(kind|trait|piece|body) \S", means)}
    kinds |= {"adapter", "hub"}
    seen = set(re.findall(r'"([a-z-]+)"', (ROOT / "grammar" / "intents.py").read_text(encoding="utf-8")))
    seen |= set(HEARD_AS.values())
    for evidence in lexicon().words.evidence:
        for one in evidence.needs | evidence.lacks:
            assert (
                one in cues | kinds | seen | {"equals", "dashes", "foreign", "talking"}
                or one.endswith("-said")
                or one.startswith(("about-", "surely-", "wholly-", "named-"))
                or one.removeprefix("after-") in INTENTS
            ), (
                evidence.intent,
                one,
            )


def test_a_word_is_of_each_group_that_names_it_or_how_it_begins() -> None:
    listed = WordList()
    listed.add("group shape", ["frame*", "scope"])
    listed.add("group lit", ["frame"])
    assert set(listed.groups.of("Frame")) == {"shape", "lit"}
    assert listed.groups.of("framed") == ("shape",)
    assert listed.groups.of("scopes") == ()
    assert not listed.knows("scope"), "it tells words apart, and makes none known"
