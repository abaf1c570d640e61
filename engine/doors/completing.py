"""What could come next on a line: the words and names that go on with what is typed, and what the grammar takes there.

Pure: from the text before the cursor and what is known. First what begins as typed, then what a slip of the finger may
have meant, nearest first; what the grammar cannot take at that place is left out.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping
from typing import Final, NamedTuple

from engine.answers.plain_talk import EXAMPLES
from engine.doors.describing import described
from engine.doors.offers import Offer, Offers
from engine.facts.catalogue import Catalogue
from grammar.own.sifting import about_own
from grammar.parsing import parse
from grammar.shaping import shaped
from grammar.shifting import Misfit
from grammar.things.letters import settled
from grammar.words.atoms import atoms_of, cuts_of, key_of, smooth
from grammar.words.lexicon import Lexicon
from grammar.words.tokens import Token, tokens_of

MOST: Final = 30
FOLLOW_UPS: Final = (
    ("why?", "the reason for the last answer"), ("why not infinity?", "what would cure it"),
    ("at f/8?", "the same at another stop"), ("and on ", "another body"), ("the second one", "of the last answer"),
    ("without the ", "leave a piece out"), ("show memory", "what is being talked about"),
)  # fmt: skip
_LOOKED_BACK: Final = 240  # characters before the cursor that tell what may come next
_MOST_WORDS: Final = 5  # of a name or phrase that is half typed
_WORDY: Final = 200  # of those that begin alike, how many are weighed against each other
_KEPT: Final = 64  # texts of which it is kept what may come after them
_ENOUGH: Final = 6  # with so many that begin as typed, nothing is taken for misspelt
_BEGINS: Final = re.compile(r"(?:^|(?<=[\s(\"/,+]))(?=[^\W_])")
_TERMINALS: Final = {
    "my lens": "NAMED", "my body": "NAMED", "my adapter": "NAMED", "named lens": "NAMED", "named body": "NAMED",
    "named adapter": "NAMED", "own": "CUE", "ask": "CUE", "term": "CUE", "order": "CUE",
}  # fmt: skip
_PASSED_OVER: Final = frozenset(["FILLER", "DET", "MARK", "UNKNOWN", "VERB"])
# kind of the last word -> what usually comes then, the likeliest first
_NEXT: Final[Mapping[str, tuple[str, ...]]] = {
    "": ("order", "ask"),
    "LENS": ("prep", "limit"),
    "MOUNTWORD": ("lens", "body", "prep"),
    "BODY": ("limit", "prep"),
    "PIECE": ("prep", "limit", "piece"),
    "ADAPTER": ("prep", "limit"),
    "KIND": ("lens", "prep"),
    "TRAIT": ("lens", "prep"),
    "LENGTH": ("mount", "kind", "lens"),
    "FNUM": ("mount", "kind", "lens"),
    "COMBO": ("mount", "kind", "lens"),
    "LIMIT": ("limit", "prep"),
    "on": ("my body", "mount", "format", "body"),
    "to": ("my body", "mount", "format", "body"),
    "via": ("piece", "my adapter", "named adapter"),
    "with": ("piece", "my adapter", "named adapter"),
    "without": ("piece", "my adapter"),
}
_USUAL: Final = ("my lens", "mount", "kind", "lens", "ask", "term")
_OF_LENS: Final = ("lens", "prep", "mountword")
_OF_BODY: Final = ("body", "format", "limit", "mountword")


_OF_OWN: Final = frozenset(["condition", "sorting"])  # offered only where all of one's own gear is asked about


class Candidate(NamedTuple):
    """What may be put in place of the last `back` characters, and what it is."""

    text: str
    back: int
    says: str


class _Nothing:
    """A token that no grammar knows: where it does not fit, the parser tells what would."""

    kind = "nothing"


def candidates(text: str, offers: Offers, facts: Catalogue, talking: bool = False) -> list[Candidate]:
    """At most 30 for the line `text` that ends at the cursor; `talking`: a question was answered before."""
    if not text.strip():
        return _openings(talking)
    line, columns = smooth(text[-_LOOKED_BACK:])
    found: dict[str, Candidate] = {}
    seen: set[tuple[str, str]] = set()
    for start, offer in _offered(line, offers):
        same = offer.phrase.casefold()
        if same in found or (offer.sort, offer.id) in seen or same == line[start:].rstrip().casefold():
            continue
        seen.add((offer.sort, offer.id))
        back = columns[-1] + 1 - columns[start] if start < len(line) else 0
        found[same] = Candidate(offer.phrase, back, described(offer, facts))
        if len(found) == MOST:
            break
    return list(found.values())


def _openings(talking: bool) -> list[Candidate]:
    follow = [Candidate(text, 0, says) for text, says in FOLLOW_UPS] if talking else []
    return [*follow, *(Candidate(text, 0, kind) for kind, text in EXAMPLES)]


def _offered(line: str, offers: Offers) -> Iterator[tuple[int, Offer]]:
    """(where it would stand, what it is), the likeliest first."""
    of_own = about_own(line, offers.lexicon) is not None
    starts = [match.start() for match in _BEGINS.finditer(line)][-_MOST_WORDS:]
    # what goes on with more of the line first, unless that is only an 'a' or 'on' more
    starts_by_weight = sorted(starts, key=lambda start: 0 < len(key_of(line[start : starts[-1]])) < 3)
    begun = [
        (start, offer)
        for start in starts_by_weight
        for offer in _fitting(line, start, offers, _begun(line[start:], offers))
        if of_own or offer.sort not in _OF_OWN
    ]
    if line[-1].isspace():
        # a limit goes on ('without glass'); else a new word is likelier than a longer form of the last one
        yield from (row for row in begun if row[1].sort == "limit" and not row[1].label)
        if of_own and not _is_open(line, offers.lexicon):
            yield from ((len(line), offer) for sort in sorted(_OF_OWN) for offer in offers.best.get(sort, ()))
        yield from ((len(line), offer) for offer in _next(line, offers))
    yield from begun
    if len(begun) >= _ENOUGH or line[-1].isspace() or _is_known(line[starts[-1] :] if starts else "", offers.lexicon):
        return
    for start in starts:
        key = key_of(line[start:])
        if len(key) > 2:
            near = [offer for offer in offers.near(key) if of_own or offer.sort not in _OF_OWN]
            yield from ((start, offer) for offer in _fitting(line, start, offers, near))


def _is_open(line: str, lexicon: Lexicon) -> bool:
    """Whether the line ends on a word that a body or a number is to follow: 'on', 'than'."""
    tokens = tokens_of(line, lexicon).tokens
    return bool(tokens) and tokens[-1].kind == "PREP"


def _is_known(word: str, lexicon: Lexicon) -> bool:
    return lexicon.words.knows(word.casefold()) or key_of(word) in lexicon.names


def _begun(typed: str, offers: Offers) -> list[Offer]:
    """Those that begin as typed; words may be run together or set apart only where the phrase has a gap."""
    atoms = atoms_of(typed)
    key = key_of(typed)
    if not key:
        return []
    cuts = set(cuts_of(atoms))
    if not typed[-1].isalnum():
        cuts.add(len(key))
    rows = offers.beginning(key, _WORDY)
    return [offer for offer in rows if not cuts or cuts <= cuts_of(atoms_of(smooth(offer.phrase)[0]))]


def _fitting(line: str, start: int, offers: Offers, rows: list[Offer]) -> list[Offer]:
    """Those that the grammar takes at `start`: own gear first, then what usually comes there, then as they were."""
    if not rows:
        return []
    taken, usual = _expected(line[:start], offers)
    ranks = {sort: rank for rank, sort in enumerate(usual)}
    fit = [offer for offer in rows if _fits(offer, taken) and (offer.sort != "order" or start == 0)]
    return sorted(fit, key=lambda offer: -1 if offer.sort.startswith("my ") else ranks.get(offer.sort, len(ranks)))


def _next(line: str, offers: Offers) -> Iterator[Offer]:
    taken, usual = _expected(line, offers)
    for sort in usual:
        yield from (offer for offer in offers.best.get(sort, ()) if _fits(offer, taken))


def _fits(offer: Offer, taken: Collection[str]) -> bool:
    return offer.sort in _OF_OWN or _TERMINALS.get(offer.sort, offer.sort.upper()) in taken


def _expected(before: str, offers: Offers) -> tuple[Collection[str], tuple[str, ...]]:
    """The terminals that the grammar takes after a text, and the sorts of words that usually come there."""
    if before not in offers.after:
        if len(offers.after) >= _KEPT:
            offers.after.clear()
        offers.after[before] = _worked_out(before, offers.lexicon)
    return offers.after[before]


def _worked_out(before: str, lexicon: Lexicon) -> tuple[Collection[str], tuple[str, ...]]:
    line = tokens_of(before, lexicon)
    tokens = list(shaped(line, frozenset(cue.tells for cue in line.cues)).tokens)
    said = [token for token in settled(line.tokens) if token.kind not in _PASSED_OVER]
    last = said[-1] if said else None
    if last is not None and last.kind in ("PREP", "JOIN"):
        # with nothing behind it, it was taken for a loose word; here something is to come
        kind = "AT" if last.value == "at" else last.kind
        open_end = [*(token for token in tokens if token.column != last.column), last.as_(kind)]
        taken = _taken(open_end)
        if taken:
            return taken, _usual(last, said)
    if last is None and any(token.kind == "DET" for token in line.tokens):
        return _taken(tokens), _USUAL  # 'my ...'
    return _taken(tokens), _usual(last, said)


def _taken(tokens: list[Token]) -> frozenset[str]:
    """Nothing where the tokens themselves do not fit."""
    outcome = parse("question", [*tokens, _Nothing])
    return outcome.accepts if isinstance(outcome, Misfit) and outcome.at == len(tokens) else frozenset()


def _usual(last: Token | None, said: list[Token]) -> tuple[str, ...]:
    if last is None:
        return _NEXT[""]
    if last.kind in ("MOUNT", "FORMAT"):
        on_body = any(token.kind == "PREP" and token.value in ("on", "to") for token in said)
        return _OF_BODY if on_body else _OF_LENS
    return _NEXT.get(last.value if last.kind == "PREP" else last.kind, _USUAL)
