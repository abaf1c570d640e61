"""What is wanted: the word list's evidence and the leanings of wording, weighed by what the question shows."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from engine.base.compact import compact, field
from grammar.kinds import OUT_OF_SCOPE, WHY
from grammar.numbers.scale_rows import SCALE_MARKS
from grammar.readings.kept_readings import Readings
from grammar.things.cast import Cast
from grammar.things.likened import said_of_itself
from grammar.words.groups import EITHER, FIGURE, HARMING
from grammar.words.lexicon import Lexicon
from grammar.words.tokens import Cue, Line

WHY_ALONE: Final = "why-alone"  # the last sentence is nothing but that word
SCALE_ROW: Final = "scale-row"  # what is told by all the marks of a scale
LEAST: Final = 1.0  # a question whose best intent weighs less than this has not been understood by its evidence
SURE: Final = 0.6  # and one that no evidence speaks for needs wording that leans at least so far one way
REFUSED: Final = 0.75  # how likely a question that no evidence speaks for must be none of ours
SPOKEN: Final = 2.0  # evidence from this weight up speaks for one of ours ...
AGAINST: Final = 0.97  # ... and must be leant against so far
# what a row of marks is told for, where it is not told to be marked anew
_MARKS_FOR_MORE: Final = frozenset(["draw", "card", "past-infinity", "infinity-at"])
_OF_THREAD: Final = frozenset(["thread", "filter_thread"])  # values that tell which thread is meant
_FILTERS: Final = (None, "", "filter")  # pieces that are told by a thread alone
_VERSUS: Final = frozenset(["vs", "versus"])
ADAPTER: Final = "adapter"  # the piece that says nothing more than that there is one
_INTO: Final = frozenset(["in", "on"])  # how a lens is put to a ring that takes it
MOST_BESIDE: Final = 1  # words that say something beside a term, where it is the term that is asked about
FAR_AHEAD: Final = 8.0  # evidence that is so much heavier than the next ...
STRONGLY: Final = 0.9  # ... and wording that must lean so far against it
TELLING: Final = 3.0  # evidence that may outdo wording weighs at least so much
LEANS: Final = 0.5  # wording that leans less far says nothing against the evidence


@compact
class Weighed:
    """Intents by the weight of evidence, the heaviest first, the cues that spoke for each, and how likely each is."""

    ranked: tuple[tuple[str, float], ...]
    spoke: dict[str, tuple[str, ...]]
    likely: dict[str, float] = field(default_factory=dict)
    alone: bool = False  # a few words that no question stands before

    @property
    def best(self) -> str | None:
        """The intent that evidence and wording together make likeliest; None where neither says enough."""
        plainest = self.ranked[0][0] if self.ranked and self.ranked[0][1] >= LEAST else None
        if len(self.likely) == 1:
            return next(iter(self.likely))  # said in the canonical words of one
        if not self.likely or (plainest is not None and plainest not in self.likely):
            return plainest
        top = self._likeliest()
        if plainest is not None:
            told = self.ranked[0][1] >= TELLING
            doubtful = self.likely[top] < (STRONGLY if self._by_far() else LEANS)
            return plainest if told and doubtful else top
        return top if self.likely[top] >= SURE and not self.alone else None

    @property
    def is_plain(self) -> bool:
        """Whether wording and evidence both leave no doubt."""
        best = self.best
        return best is not None and self.likely.get(best, 0.0) >= STRONGLY and self.weight(best) >= SPOKEN

    def _by_far(self) -> bool:
        """Whether the evidence speaks for one intent, and no other comes near."""
        first, second = (*(weight for _, weight in self.ranked[:2]), 0.0, 0.0)[:2]
        return first - second >= FAR_AHEAD

    def _likeliest(self) -> str:
        """The likeliest intent; that a question is none of ours must be plain, by evidence or by its wording."""
        top = max(self.likely, key=self.likely.__getitem__)
        spoken_for = bool(self.ranked) and self.ranked[0][1] >= SPOKEN
        if top == OUT_OF_SCOPE and self.weight(top) < LEAST and self.likely[top] < (AGAINST if spoken_for else REFUSED):
            return max((one for one in self.likely if one != top), key=self.likely.__getitem__)
        return top

    def others(self, least: float) -> tuple[str, ...]:
        """The next likely intents, where none is plainly the one: at most two that are at least so likely."""
        best = self.best
        rows = sorted((-chance, intent) for intent, chance in self.likely.items() if intent != best)
        return tuple(intent for chance, intent in rows[:2] if -chance >= least)

    def weight(self, intent: str) -> float:
        return dict(self.ranked).get(intent, 0.0)


def weigh(features: frozenset[str], lexicon: Lexicon) -> Weighed:
    """The intents that the evidence speaks for. Of equals the one that stands first in the word list wins."""
    totals: dict[str, float] = {}
    spoke: dict[str, list[tuple[float, str]]] = {}
    for evidence in lexicon.words.evidence_on(features):
        if evidence.lacks.isdisjoint(features):
            totals[evidence.intent] = totals.get(evidence.intent, 0.0) + evidence.weight
            if evidence.weight > 0:
                spoke.setdefault(evidence.intent, []).extend((-evidence.weight, one) for one in sorted(evidence.needs))
    ranked = sorted(totals.items(), key=lambda pair: -pair[1])
    return Weighed(tuple(ranked), {intent: tuple(one for _, one in sorted(rows)) for intent, rows in spoke.items()})


def features_of(line: Line, cues: tuple[Cue, ...], cast: Cast, readings: Readings) -> frozenset[str]:
    """Everything about a question that evidence may name: its cues, and which things and values it holds."""
    shown = {cue.tells for cue in cues}
    shown |= {f"{key}-said" for key in readings.values}
    for part in (*cast.lenses, *cast.pieces, *cast.using, *cast.without):
        shown |= set(part.kinds) | set(part.traits)
        if part.piece:
            shown.add(part.piece)
    shown |= _of_things(cast)
    shown |= _of_terms(line)
    shown |= {
        name
        for name, is_so in (
            ("stop-said", readings.f_number is not None or any(part.f_number for part in cast.lenses)),
            ("at-stop", readings.f_number is not None),
            ("two-stops", len(readings.f_numbers) > 1),
            ("stops-told", len(readings.f_numbers) + sum(bool(part.f_number) for part in cast.lenses) > 1),
            ("distance-said", readings.distance_mm is not None),
            ("ordinal", readings.number is not None),
            ("pieces-or", len(cast.pieces) > 1 and any(EITHER in one.groups for one in line.tokens)),
            ("vs-said", any(one.kind == "JOIN" and one.text.casefold() in _VERSUS for one in line.tokens)),
            ("is-itself", said_of_itself(line.tokens) is not None),
            *((name, _bears_scale(shown, readings)) for name in ("remark", SCALE_ROW)),
            ("page-said", readings.values.get("file", "").casefold().endswith((".html", ".htm"))),
            ("limits", bool(readings.limits)),
            ("best", any((one.kind, one.value) == ("LIMIT", "best") for one in line.tokens)),
            ("term", any(one.kind == "term" for one in line.spoken)),
            ("advice", any(one.kind == "advice" for one in line.spoken)),
            ("asked", "?" in line.text),
            ("named-only", not cues and "?" not in line.text and not readings.values),
            (WHY_ALONE, _ends_in_why(line)),
            ("harm-word", any(HARMING in one.groups for one in line.tokens)),
            ("brief", len([token for token in line.tokens if token.kind not in ("STOP", "MARK")]) <= 4),
            ("figure-alone", _asks_a_figure(line, cast, readings)),
            ("short", len([token for token in line.tokens if token.kind not in ("STOP", "MARK")]) <= 8),
            ("one-word", len([token for token in line.tokens if token.kind not in ("STOP", "MARK")]) <= 2),
        )
        if is_so
    }
    return frozenset(shown)


def _ends_in_why(line: Line) -> bool:
    """'the corners go dark in 4:3, not in 16:9. why', '... whats the cause': a sentence that is nothing but that."""
    said = [token for token in line.tokens if token.kind not in ("DET", "FILLER")]
    while said and said[-1].kind == "STOP":
        said.pop()
    parted = [
        at for at, one in enumerate(said) if one.kind == "STOP" or one.text == "," or (one.text == "-" and one.gap)
    ]
    last = said[parted[-1] + 1 :] if parted else []
    if not last:
        return False
    return any(cue.tells == WHY and cue.column <= last[0].column and last[-1].end <= cue.end for cue in line.cues)


def _asks_a_figure(line: Line, cast: Cast, readings: Readings) -> bool:
    """Whether a figure is named of one mount or thread, and nothing of what was measured: 'the bore of PL'."""
    named = [part for part in (*cast.lenses, *cast.bodies) if part.mounts]
    named = named or [part for part in (*cast.bodies, *cast.frames) if part.formats]  # 'flange of a 16 mm camera'
    of_thread = not named and bool(_OF_THREAD & readings.values.keys())
    plain = not any(part.focal or part.zoom for part in named) and set(readings.values) <= _OF_THREAD
    said = [*(one.groups for one in line.tokens), *(one.groups for one in line.spoken)]
    bare = all(part.piece in _FILTERS for part in cast.pieces)
    return plain and bare and (len(named) == 1 or of_thread) and any(FIGURE in groups for groups in said)


def _bears_scale(shown: set[str], readings: Readings) -> bool:
    """Whether a whole row of marks is told, and neither carried or drawn, nor told of where infinity falls."""
    marks = readings.values.get("mark", "").count(",") + 1
    return marks >= SCALE_MARKS and not shown & _MARKS_FOR_MORE


def _of_terms(line: Line) -> set[str]:
    """How the terms of a text stand: two with no more than a join between them, or little else beside them."""
    spans = sorted({(one.column, one.column + len(one.text)) for one in line.spoken if one.kind == "term"})
    spans = [span for span in spans if not any(a <= span[0] and span[1] <= b and (a, b) != span for a, b in spans)]
    shown: set[str] = {"two-terms"} if len(spans) > 1 else set()
    for (_, end), (start, _) in pairwise(spans):
        between = [one for one in line.tokens if end <= one.column < start and one.kind != "MARK"]
        if all(one.kind in ("JOIN", "DET", "FILLER", "STOP", "PREP") for one in between):
            shown.add("terms-beside")
        if any(one.kind == "JOIN" and one.value in ("vs", "or") for one in between):
            shown.add("terms-versus")
    rest = [
        one for one in line.tokens
        if one.kind in ("UNKNOWN", "CUE", "LENS", "BODY", "MOUNT", "NUMBER", "LENGTH", "PIECE", "KIND")
        and not any(a <= one.column < b for a, b in spans)
    ]  # fmt: skip
    if spans and len(rest) <= MOST_BESIDE:
        shown.add("term-alone")
    return shown


def _of_things(cast: Cast) -> set[str]:
    shown: set[str] = set()
    lens_mounts = {mount.ids[0] for part in cast.lenses for mount in part.mounts}
    lens_mounts |= {id_ for part in cast.lenses if not part.mounts for id_ in part.implied[:1]}
    body_mounts = {mount.ids[0] for part in cast.bodies for mount in part.mounts}
    has_lens = bool(lens_mounts) or any(part.named for part in cast.lenses)
    has_body = bool(body_mounts) or any(part.named for part in cast.bodies)
    for name, is_so in (
        ("lens", bool(cast.lenses)),
        ("lens-mount", has_lens),
        ("lenses", len(cast.lenses) > 1),
        ("many-lenses", len(cast.lenses) > 2 or any((part.count or 1) > 2 for part in cast.lenses)),
        ("focal", any(part.focal or part.zoom for part in cast.lenses)),
        ("by-width", any(_is_by_width(mount.text) for part in cast.lenses for mount in part.mounts)),
        ("mount-only", bool(cast.lenses) and all(not part.focal and not part.noun.head for part in cast.lenses)),
        ("body", bool(cast.bodies)),
        ("body-mount", has_body),
        ("bodies", len(cast.bodies) > 1),
        ("many-bodies", len(cast.bodies) > 2),
        ("pair", has_lens and has_body),
        ("into-ring", has_lens and _is_put_into_ring(cast)),
        ("same-mount", bool(lens_mounts & body_mounts)),
        ("piece", bool(cast.pieces)),
        ("pieces", len(cast.pieces) > 1),
        ("piece-length", any(part.thickness for part in cast.pieces)),
        ("piece-pair", any(len(part.mounts) > 1 for part in cast.pieces)),
        ("pieces-join", _do_join(cast)),
        ("factor", any(part.factor for part in cast.pieces)),
        ("steps", any(part.steps for part in cast.pieces)),
        ("format", bool(cast.frames) or any(part.formats for part in cast.bodies)),
        ("formats", len(cast.frames) + sum(bool(part.formats) for part in (*cast.lenses, *cast.bodies)) > 1),
        ("frames-only", len((*cast.frames, *cast.bodies)) > 1 and not (cast.lenses or cast.pieces)),
        ("frame-alone", len((*cast.frames, *cast.bodies)) == 1 and not (cast.lenses or cast.pieces)),
        ("lens-format", any(part.formats for part in cast.lenses)),
        ("body-crop", any(part.crop for part in (*cast.bodies, *cast.frames))),
        ("versus", any(part.noun.join in ("vs", "or") for part in (*cast.lenses, *cast.bodies, *cast.pieces))),
        ("without-piece", bool(cast.without)),
        ("strange", bool(cast.strange) or any(part.strange for part in (*cast.lenses, *cast.bodies))),
        ("thing", bool(cast.lenses or cast.bodies or cast.pieces or cast.frames)),
    ):
        if is_so:
            shown.add(name)
    return shown


def _do_join(cast: Cast) -> bool:
    """'OM-EF and then EF-Z': one ring takes what the one before it ends on, so that they are put together."""
    ends = [(part.mounts[0].ids, part.mounts[-1].ids) for part in cast.pieces if len(part.mounts) > 1]
    return any(set(one[1]) & set(other[0]) and set(one[0]) != set(other[0]) for one, other in pairwise(ends))


def _is_put_into_ring(cast: Cast) -> bool:
    """'a T2 lens in an M42 ring': of a ring that is told by one mount alone, and no body is told."""
    told = [part for part in cast.pieces if part.piece == ADAPTER and len(part.mounts) == 1 and not part.thickness]
    into = any(part.noun.role in _INTO for part in told)
    return into and len(cast.pieces) == 1 and all(part.by_piece for part in cast.bodies)


def _is_by_width(name: str) -> bool:
    """'42 mm screw', 'thread lens, 42 mm': a mount told by no more than how wide its thread is."""
    return name[:1].isdigit() or name.casefold().endswith("mm")
