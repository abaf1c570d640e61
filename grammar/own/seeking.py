"""Reads a question about all of one's own gear: 'which of my lenses cover the dory and reach infinity, widest first?'.

Conditions and orders are phrases of the word list; what is left of the line (bodies, lenses, limits) is read as in any
other question.
"""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard, hear
from grammar.own.demanding import Clauses, clauses_of
from grammar.own.placing import anywhere, joined, placed, the_others
from grammar.own.sifting import Mark, Opened, blanked, marks_of, mended, opened
from grammar.questions import Demand, Limits, Question, Sought, Thing, Unread
from grammar.readings.readings import limits_of
from grammar.things.casting import Part
from grammar.words.atoms import Runs, atoms_of, smooth
from grammar.words.lexicon import Lexicon
from grammar.words.tokens import tokens_of

_ASKS: Final = (
    "a condition, such as 'cover the dory', 'reach infinity' or 'focus closer than 30 cm', or an order, such as "
    "'widest first' or 'by weight'"
)
# cues that tell nothing beside conditions and orders
_IDLE: Final = frozenset(
    ["which", "what", "where", "how", "can", "will", "get", "fit-q", "fits", "takes", "right", "ok", "list-all",
     "or-not", "own-iris", "what-is", "body-mount", "plan", "remedy", "focus", "better", "means", "all", "cheap",
     "need-adapter", "good", "buy", "still", "reach"]
)  # fmt: skip
# numbers that only a condition can be about
_NUMBERS: Final = frozenset(["RATIO", "TIMES", "LENGTH", "WEIGHT", "PERCENT", "RANGE"])
_STRONG: Final = 2.5  # the weight from which a fragment asks something of its own
_BESIDE_BOUND: Final = 1  # word that may stand beside a bound: 'and under 500 g'
_SEVERAL: Final = 2
_LISTED: Final = frozenset(["MOUNT", "LETTER", "JOIN", "LENS", "STOP", "DET", "PREP", "MARK", "FILLER"])
_FAR: Final = ("infinity", "macro-only")
WORKS: Final = ("verdict", "isnt", "unusable")


def sought(text: str, lexicon: Lexicon, before: Question | None = None) -> Question | Unread | None:
    """The question, or why it could not be read; None where the text asks something else."""
    line, columns = lexicon.words.spelled.in_figures(*smooth(text))
    runs = Runs(line, atoms_of(line))
    leaning = before is not None and before.sought is not None
    opening = opened(runs, marks_of(runs, lexicon), lexicon)
    if (opening is None and not leaning) or _lists_them(text, lexicon):
        return None
    runs = mended(runs, lexicon)
    marks = marks_of(runs, lexicon)
    opening = opened(runs, marks, lexicon)
    return _Seeker(text, columns, runs, marks, opening, lexicon, before).read()


def _lists_them(text: str, lexicon: Lexicon) -> bool:
    """'which of my mounts go on EF: FD, K, OM', 'my lenses (FD, K)': behind a colon or in brackets stands which."""
    for rest in (text.partition(":")[2], text.partition("(")[2].partition(")")[0]):
        tokens = tokens_of(rest, lexicon).tokens if rest else ()
        names = [token for token in tokens if token.kind in ("MOUNT", "LETTER") and token.ids]
        if len(names) >= _SEVERAL and all(token.kind in _LISTED for token in tokens):
            return True
    return False


class _Seeker:
    """One line that may ask about all of one's own gear."""

    def __init__(
        self,
        text: str,
        columns: tuple[int, ...],
        runs: Runs,
        marks: list[Mark],
        opening: Opened | None,
        lexicon: Lexicon,
        before: Question | None,
    ) -> None:
        self.text, self.columns, self.runs, self.lexicon, self.before = text, columns, runs, lexicon, before
        self.opening = opening
        self.marks = [mark for mark in marks if opening is None or not self._opens(mark, opening)]

    @staticmethod
    def _opens(mark: Mark, opening: Opened) -> bool:
        within = opening.at <= mark.at < opening.after and mark.does != "first"
        return within and not (opening.described and opening.described[0] <= mark.at < opening.described[1])

    def read(self) -> Question | Unread | None:
        found = clauses_of(self.text, self.columns, self.runs, self._clausal(), self.lexicon)
        if isinstance(found, Unread):
            if self.opening is None:
                return the_others(self.before, self.marks, self.runs, self.text)
            plain = not self.opening.weak or self._is_relative(self.opening)
            return found if plain else None
        spans = [*found.spans, *self._opening_spans()]
        heard = hear(
            blanked(self.runs, spans, self.text, self.columns), self.lexicon, self.before.intent if self.before else ""
        )
        if self.opening is None:
            return self._leant(found, heard)
        if self.opening.compared:
            return self._question(heard, "compare", Sought(self.opening.of))
        if found.order is None and not found.any_of and self._is_all_on_all(heard):
            return self._question(heard, "all-on-all", Sought("lenses"))
        return self._sought(found, heard, self.opening)

    def _clausal(self) -> list[Mark]:
        """The marks that conditions and orders are made of."""
        return [
            mark
            for mark in self.marks
            if mark.does not in ("of", "out", "which", "mine", "my", "show", "compare", "that", "each")
        ]

    def _opening_spans(self) -> list[tuple[int, int]]:
        spans = [(mark.at, mark.after) for mark in self.marks if mark.does in ("those", "show", "compare", "each")]
        if self.opening is None:
            return spans
        first, after, described = self.opening.at, self.opening.after, self.opening.described
        return [*spans, *([(first, described[0])] if described else [(first, after)])]

    def _is_all_on_all(self, heard: Heard) -> bool:
        """'all my lenses on all my bodies', or on one: asked of the whole without any condition."""
        assert self.opening is not None
        on_own = any(mark.does == "my" and mark.at >= self.opening.after for mark in self.marks)
        bodies = [part for part in heard.cast.bodies if not part.is_bare]
        mine = self.opening.of == "lenses" and self.opening.weak and self.opening.described is None
        starts = (
            not any(mark.does in ("of", "out") for mark in self.marks) and self.runs.atoms[self.opening.at].text != "do"
        )
        every = any(part.noun.heads == "BODY" and part.is_bare for part in heard.cast.bodies)
        return mine and starts and (on_own or every or bool(bodies)) and not heard.cast.lenses

    def _sought(self, found: Clauses, heard: Heard, opening: Opened) -> Question | Unread | None:
        if opening.weak and not (self._is_relative(opening) if found.any_of else found.order):
            return None
        problem = self._left_over(heard)
        if problem is not None:
            return None if opening.weak else problem
        groups = self._with_mounts(found.any_of, heard, opening)
        if opening.of == "adapters":
            # what a ring fits is told by its two mounts; how far lenses focus on it is asked of those
            kept = (tuple(demand for demand in group if demand.quantity != "verdict" or demand.word in _FAR)
                    for group in groups)  # fmt: skip
            groups = tuple(group for group in kept if group)
        bodies, roles = self._bodies(heard, found, opening)
        if not groups and found.order is None:
            limited = heard.readings.limits or bodies or heard.cast.lenses
            if not limited:
                return self._nothing_asked(opening)
            if opening.of != "adapters":
                groups = ((Demand(*WORKS[:2], word=WORKS[2], says="work"),),)
        if not any(mark.does == "each" for mark in self.marks):
            groups = placed(groups, found, bodies, heard)
        seeking = Sought(opening.of, groups, found.order)
        question = self._question(heard, "which-own", seeking, bodies)
        return question.with_(lenses=roles, feet=question.feet or found.feet)

    def _bodies(self, heard: Heard, found: Clauses, opening: Opened) -> tuple[list[Part], tuple[Thing, ...]]:
        """The bodies spoken of, and the lenses: a mount alone behind a condition is that of a body."""
        bodies, lenses = [part for part in heard.cast.bodies if part.named or not self._describes(part, opening)], []
        takes = [self.columns[self.runs.atoms[mark.at].start] for mark in self.marks if mark.does == "takes"]
        for part in heard.cast.lenses:
            bare = part.was_mount and (part.noun.head is None or part.noun.heads == "MOUNTWORD")
            taken = opening.of == "adapters" and any(column < part.noun.column for column in takes)
            if part.is_bare or self._describes(part, opening):
                continue
            if bare and part.noun.heads != "MOUNTWORD" and not taken:
                bodies.append(part)
            elif part.named is not None or opening.of != "lenses":
                lenses.append(part)
        bodies.sort(key=lambda part: part.noun.column)
        than = {demand.than.column for group in found.any_of for demand in group if demand.than is not None}
        things = [part.thing() for part in lenses]
        return bodies, tuple(thing for thing in things if thing.column not in than)

    def _describes(self, part: Part, opening: Opened) -> bool:
        """Whether it stands between 'which of my' and the lenses that are asked about: 'which of my C mounts'."""
        if opening.described is None or not part.mounts:
            return False
        first, after = opening.described
        begin, end = self.columns[self.runs.atoms[first].start], self.columns[self.runs.atoms[after - 1].end - 1]
        return begin <= part.noun.column <= end

    def _with_mounts(
        self, groups: tuple[tuple[Demand, ...], ...], heard: Heard, opening: Opened
    ) -> tuple[tuple[Demand, ...], ...]:
        """'which of my C-mount lenses', 'have an M42 mount': the mount told of a lens is a condition."""
        if opening.of != "lenses":
            return groups
        more: list[Demand] = []
        bodies = [part for part in heard.cast.bodies if self._describes(part, opening)]
        for part in (*heard.cast.lenses, *bodies):
            headed = part.noun.heads in ("LENS", "MOUNTWORD") or not part.was_mount or self._describes(part, opening)
            if part.mounts and headed and (part.named is None or self._describes(part, opening)):
                more.append(Demand("lens_mount", "is", word=part.mounts[0].ids[0]))
            if part.focal is not None and part.named is None:
                more.append(Demand("focal_length_mm", "is", part.focal))
        groups = groups or ((),) if more else groups
        return tuple((*group, *more) for group in groups)

    def _question(self, heard: Heard, intent: str, seeking: Sought, bodies: list[Part] | None = None) -> Question:
        parts = heard.cast.bodies if bodies is None else bodies
        for part in parts:
            part.sort = "body"
        return Question(
            self.text, intent, (), tuple(part.thing() for part in parts if not part.is_bare),
            tuple(part.thing() for part in heard.cast.pieces), _formats(heard), limits_of(heard.readings),
            heard.readings.f_number, None, feet=heard.readings.feet, sought=seeking,
        )  # fmt: skip

    def _is_relative(self, opening: Opened) -> bool:
        """'my lenses that cover m43', 'my lenses under 1 kg'; 'my lenses go past infinity' asks nothing of each."""
        after = opening.after
        while after < len(self.runs.atoms) and not self.runs.atoms[after].is_word:
            after += 1  # 'of all my glass, which ...'
        relative = ("that", "which", "bound", "between")
        return any(mark.does in relative and mark.at in (opening.after, after) for mark in self.marks)

    def _left_over(self, heard: Heard) -> Unread | None:
        """The first word that is neither condition nor order nor thing: nothing that was asked is passed over."""
        cues = {cue.column for cue in heard.cues if cue.tells not in _IDLE}
        for token in heard.line.tokens:
            if token.kind == "UNKNOWN" or (token.kind == "CUE" and token.column in cues):
                near = self._nearest(token.text)
                return Unread(self.text, token.column, token.text, _ASKS, near)
            if token.kind in _NUMBERS and heard.readings.values:
                return Unread(self.text, token.column, token.text, _ASKS)
        return None

    def _nearest(self, word: str) -> str | None:
        from grammar.words.nearest import nearest_keys

        table = self.lexicon.words.sifting
        near = nearest_keys(word.casefold(), table)
        return table[near[0]][0] if near else next(iter(self.lexicon.nearest(word, ("body", "lens", "mount"))), None)

    def _nothing_asked(self, opening: Opened) -> Unread:
        atoms = self.runs.atoms
        after = min(opening.after, len(atoms) - 1)
        rest = self.text[self.columns[atoms[after].start] - 1 :].strip(" ?.!")
        column = self.columns[atoms[after].start] if opening.after < len(atoms) else len(self.text.rstrip()) + 1
        return Unread(self.text, column, rest or "nothing more", _ASKS)

    def _is_bound_alone(self, found: Clauses) -> bool:
        """Whether nothing is told but a bound with its number: it is one more condition, whatever it leans to."""
        words = sum(atom.is_word for atom in self.runs.atoms)
        taken = sum(atom.is_word for first, after in found.spans for atom in self.runs.atoms[first:after])
        return bool(found.any_of) and words - taken <= _BESIDE_BOUND

    def _leant(self, found: Clauses, heard: Heard) -> Question | Unread | None:
        """A fragment after such a question: other bodies, another order, further conditions, or why one is not among
        them."""
        before = self.before
        assert before is not None
        assert before.sought is not None
        named = [part for part in heard.cast.lenses if part.named is not None]
        told = before.sought
        if named and any(mark.does == "why" for mark in self.marks) and not found.any_of:
            about = tuple(part.thing() for part in named[:1])
            return before.with_(text=self.text, lenses=about, follows=True, sought=replace(told, why=True))
        weighed = heard.weighed
        strong = weighed.best is not None and weighed.weight(weighed.best) >= _STRONG
        limited = bool(heard.readings.limits) and not heard.cues  # 'without glass'
        strong = strong and not limited and not self._is_bound_alone(found)  # 'and under half a kilo?'
        bodies, _ = self._bodies(heard, found, Opened(told.of, 0, 0))
        changed = bool(found.any_of or found.order or bodies or heard.readings.limits or heard.cast.frames)
        if named or strong or not changed or any(not part.is_bare and part not in bodies for part in heard.cast.lenses):
            return None
        if any(token.kind == "UNKNOWN" for token in heard.line.tokens) or heard.readings.number is not None:
            return None
        groups = joined(told.any_of, found.any_of)
        groups = placed(anywhere(groups) if bodies or heard.cast.frames else groups, found, bodies, heard)
        question = self._question(heard, before.intent, replace(told, any_of=groups, order=found.order or told.order,
                                                                why=False), bodies)  # fmt: skip
        moved = bool(bodies or heard.cast.frames)
        return question.with_(
            bodies=question.bodies if moved else before.bodies,
            things=question.things if moved else before.things,
            lenses=() if told.why else before.lenses,
            adapters=question.adapters or before.adapters,
            limits=question.limits if question.limits != Limits() else before.limits,
            f_number=question.f_number if question.f_number is not None else before.f_number,
            feet=question.feet or found.feet or before.feet,
            follows=True,
        )


def _formats(heard: Heard) -> tuple[Thing, ...]:
    return tuple(part.thing() for part in heard.cast.frames if part.formats)
