"""Everything that can be made out of a question on its own: its phrases, things, readings and likely intents."""

from __future__ import annotations

from typing import Final

from engine.base.compact import compact, replace
from grammar.echo.echo import said_back
from grammar.intents import SCALE_ROW, WHY_ALONE, Weighed, features_of, weigh
from grammar.kinds import HAZARD, WHY
from grammar.leanings import lean, wording_of
from grammar.numbers.sensor_plates import with_plates_told
from grammar.parsing import parse
from grammar.readings.kept_readings import Readings
from grammar.readings.readings import GLASS_OUT, readings_of
from grammar.shaping import Shaped, shaped
from grammar.shifting import Misfit
from grammar.things.cast import Cast
from grammar.things.named_first import told_behind
from grammar.things.phrases import Phrase, phrases_of
from grammar.things.relatives import with_relatives_apart
from grammar.things.roles import cast_of
from grammar.things.turned_about import turned_about
from grammar.words.groups import OWN
from grammar.words.lexicon import Lexicon
from grammar.words.mentioned import Mention, mentioned
from grammar.words.subjects import Match
from grammar.words.tokens import Cue, Line, Token, tokens_of

ABOUT: Final = 7.0  # what shares as much with a text as two rare words of one phrase is about the same
SURELY: Final = 12.0
BY_FAR: Final = 6.0
_AHEAD: Final = 0.5  # where the settings of an exposure are told, 'sun 1/50 filter', it is that
CLEARLY: Final = 3.0  # where the settings of an exposure are told
PLAINLY: Final = 25.0  # and what shares so much, by most of its words, is about nothing else
MOST_OF: Final = 0.6
# the likeness from which a text that holds a whole phrase of an advice is about it
LIKE: Final = 13.0
WHOLLY: Final = 0.9
_HALF: Final = 0.51  # of the words of a text that a danger shares, where that only names gear
_IDLE: Final = frozenset(["held", "adding", "films"])  # cues that ask nothing
FAR_LIMIT: Final = "far-limit"  # a phrase that is mentioned
STOPS_AT: Final = "stops-at"  # the cue that it is
SHOWN_STOP: Final = "shown-stop"  # a phrase of a stop that a body shows, which is none where it is nought
# what is mentioned, and what that is heard as
HEARD_AS: Final = {
    FAR_LIMIT: STOPS_AT, SHOWN_STOP: "no-aperture-data", "put-so": "put-so", "fits-so": "fits-so",
    "metered-outside": "metered-outside", "part-asked": "part-asked", "part-named": "part-named",
    "which-stop-set": "which-stop-set", "sun-kept-off": "sun-kept-off", "what-lens-now": "what-lens-now",
    "stop-asked": "stop-asked", "on-a-cable": "on-a-cable", "how-held": "how-held", "best-stop": "best-stop",
    "no-focusing": "no-focusing", "shoots-at-all": "shoots-at-all",
    "far-subject": "far-asked", "wants-blur": "wants-blur", "back-blurred": "back-blurred",
    "how-many-frames": "how-many-frames", "films-lit": "films-lit", "films": "films",
    "deepest-of": "deepest-of", "thinnest-of": "deepest-of",
    "at-the-sun": "at-the-sun", "laid-in-sun": "laid-in-sun", "stops-down": "stops-down", "far-scene": "far-scene",
    "star-trails": "star-trails", "rest-of-ring": "rest-of-ring", "any-trick": "any-trick", "iris-asked": "iris-asked",
    "will-not-come-off": "stuck", "stays-as-long": "stays-as-long", "iso-asked": "iso-asked",
    "far-away-scene": "far-away-scene", "between-asked": "between-asked", "same-said": "same-said",
    "wondered-at": "wondered-at", "drawn-to-film": "drawn-to-film", "light-to-give": "light-to-give",
    "word-asked": "word-asked", "mount-called": "mount-called",
    "iris-idle": "iris-idle", "which-is-mine": "which-is-mine", "which-to-blame": "which-to-blame",
    "proof-asked": "proof-asked",
    "moved-out-asked": "moved-out-asked", "span-to-near": "span-to-near", "piece-taken-off": "off-again",
    "back-clears": "touch", "tips-it-over": "weight", "frames-asked": "match",
}  # fmt: skip
# what is listened for where it stands, in a turn that is no question yet
LISTENED: Final = frozenset(HEARD_AS) | {
    "too", "ring-amiss-by", "ring-and-shim", "under-it", "stops-lighter", "stops-darker", "native-said",
    "to-look-alike", "scene-asked", "turned-in-front", "onto-its-front", "behind-the-other", "on-top-of-it",
    "adds-to-it", "counted-or-none", "turned-back", "turned-back-lead", "glass-denied", "glass-within",
    "within-taken-out", "stop-of-number",
    "number-becomes", "its-worth",
}  # fmt: skip
OF_NOTHING: Final = "of-nothing"  # that no word of it says anything of a subject: 'how do i know', 'what could that be'
_FAR_LOST: Final = frozenset(["infinity", "lose"])  # 'do i lose infinity with two rings stacked' fears for focus alone
_ONE_RING: Final = "one-ring"
_GLASS_DENIED, _PLAIN_PIECE = "glass-denied", "plain-piece"
_TAKEN_OUT = frozenset(["glass-within", "within-taken-out"])  # 'it has a lens in it, can I unscrew that'
_STOPS: Final = frozenset(["FNUM", "COMBO"])
_BARE_NUMBER: Final = "numbers-said"  # of anything at all
_OURS: Final = frozenset(["thing", "term", "advice", "talking", "ordinal", "limits", "infinity", "focus"])
_SET: Final = frozenset(["shutter-said", "iso-said", "frame_rate-said", "angle-said"])  # settings of an exposure
_NAMING: Final = frozenset(["TRAIT", "KIND", "PIECE", "LIMIT", "MOUNT", "FORMAT", "MEASURE", "MOTIF", "LIGHT", "COMBO"])


@compact
class Heard:
    line: Line
    cues: tuple[Cue, ...]
    shape: Shaped
    phrases: list[Phrase]
    cast: Cast
    readings: Readings
    features: frozenset[str]
    weighed: Weighed
    by_itself: Weighed | None = None  # the same, as if no question stood before; None where none does
    mentioned: tuple[Mention, ...] = ()  # what of `LISTENED` stands in the text

    @property
    def alone(self) -> Weighed:
        """What the text asks by itself, whatever was asked before."""
        return self.by_itself if self.by_itself is not None else self.weighed

    @property
    def text(self) -> str:
        return self.line.text

    def tells(self, cue: str) -> bool:
        return cue in self.features

    def led_by(self, token: Token) -> Token | None:
        """The token that stands right before one; None before the first."""
        return next((one for one in reversed(self.line.tokens) if one.column < token.column), None)

    def is_owned(self, token: Token) -> bool:
        """'my 50': whether the word before it tells whose it is."""
        led = self.led_by(token)
        return led is not None and OWN in led.groups

    def as_typed(self, typed: Heard) -> Heard:
        """The same with the text as it was typed, whatever it was read as."""
        return replace(self, line=replace(self.line, text=typed.text), mentioned=typed.mentioned)

    def places(self, key: str) -> tuple[Mention, ...]:
        """Where in the text phrases of the key stand, of those that a turn listens for."""
        return tuple(one for one in self.mentioned if one.key == key)


def hear(text: str, lexicon: Lexicon, before: str = "", aside: str = "") -> Heard:
    """What a text says on its own. `before`: the intent of a question that it may lean on; `aside`: that between."""
    line = tokens_of(text, lexicon)
    cues = _free(line)
    told = frozenset([*(cue.tells for cue in cues), f"after-{before}"])
    shape = shaped(
        with_relatives_apart(with_plates_told(line, lexicon.words.mentions)), told, lexicon.hosts, lexicon.never_full
    )
    tree = parse("question", shape.tokens)
    assert not isinstance(tree, Misfit), f"tokens that no rule takes: {shape.tokens}"
    phrases = phrases_of(tree, text)
    cast = cast_of(phrases, lexicon.hosts, told)
    cast.never_full, cast.threaded, cast.by_trait = lexicon.never_full, lexicon.threaded, lexicon.by_trait
    cast.without = [] if _ONE_RING in told else cast.without  # 'is there no ring that does both' leaves none away
    turned_about(cast)
    told_behind(cast)
    mentions = mentioned(text, lexicon.words.mentions, LISTENED)
    readings = readings_of(phrases, cast, told | _glass_denied(mentions))
    nearest = lexicon.subjects.nearest(text)
    advised = _advised(None if _is_only_named(line, cues, cast, nearest) else nearest)
    alone = features_of(line, cues, cast, readings) | advised | _seen_to_end(mentions)
    alone |= {f"named-{lexicon.subjects.asked_of.get(one.id, '')}" for one in line.spoken if one.kind == "advice"}
    alone |= frozenset() if lexicon.subjects.vocabulary.words_of(text) else {OF_NOTHING}
    talked = frozenset({"talking", f"after-{before}", f"after-{aside}"} if before else ())
    features = alone | talked | _foreign(line, alone | talked, lexicon)
    weighed = _weighed(line, features, nearest, lexicon, before)
    by_itself = _weighed(line, alone | _foreign(line, alone, lexicon), nearest, lexicon) if before else None
    return Heard(line, cues, shape, phrases, cast, readings, features, weighed, by_itself, mentions)


def _weighed(
    line: Line, features: frozenset[str], nearest: Match | None, lexicon: Lexicon, before: str = ""
) -> Weighed:
    """What the text asks, by evidence and by wording; after which intent."""
    text, weighed = line.text, weigh(features, lexicon)
    outweighed = _by_far(weighed, _AHEAD) not in (None, HAZARD) and bool(features & _SET)
    outweighed = outweighed or features >= _FAR_LOST
    warned = _warned_of(nearest, weighed) if "pair" not in features and not outweighed else None
    plainly = said_back(text) or warned
    if plainly is None and SCALE_ROW in features:
        plainly = _by_far(weighed)  # who tells every mark of a scale mostly wants them all marked anew
    if plainly is None and WHY_ALONE in features:
        plainly = WHY  # whatever was told before that word is what wants a reason
    likely = (
        {plainly: 1.0} if plainly is not None else lean(wording_of(line, features, before), dict(weighed.ranked), text)
    )
    alone = plainly is None and not before and "brief" in features
    return replace(weighed, likely=likely, alone=alone)


def _seen_to_end(mentions: tuple[Mention, ...]) -> frozenset[str]:
    """That nothing is sharp beyond a distance, that a thing is put on, that no stop is shown: in whatever order."""
    found = (one for one in mentions if one.key != SHOWN_STOP or not one.number)
    return frozenset(HEARD_AS[one.key] for one in found if one.key in HEARD_AS)


def _glass_denied(mentions: tuple[Mention, ...]) -> frozenset[str]:
    """'no correcting lens', 'an empty ring': the ring is told as plain, in however many words."""
    keys = {one.key for one in mentions}
    taken_out = frozenset([_PLAIN_PIECE, GLASS_OUT] if keys >= _TAKEN_OUT else ())
    return taken_out | frozenset([_PLAIN_PIECE] if _GLASS_DENIED in keys else ())


def _advised(nearest: Match | None) -> set[str]:
    """The kind of question that the advice nearest to the text answers, and whether it is surely about the same."""
    if nearest is None or nearest.score < ABOUT or nearest.asked == "other":
        return set()
    asked = nearest.asked
    surely = {f"surely-{asked}"} if nearest.score >= SURELY else set()
    return {f"about-{asked}"} | surely | ({f"wholly-{asked}"} if _is_whole(nearest) else set())


def _is_only_named(line: Line, cues: tuple[Cue, ...], cast: Cast, nearest: Match | None) -> bool:
    """'found a brass lens from a film projector, 100mm f2': gear is told of, nothing is asked, and few words are shared
    with a danger."""
    if nearest is None or nearest.asked != HAZARD or nearest.part >= _HALF or "?" in line.text:
        return False
    told = any(part.focal or part.has_mount for part in (*cast.lenses, *cast.bodies))
    return told and all(cue.tells in _IDLE for cue in cues)


def _is_whole(nearest: Match) -> bool:
    """Whether a text holds a whole phrase of an advice, and little else."""
    return nearest.part >= MOST_OF and nearest.held >= WHOLLY and nearest.likeness >= LIKE


def _warned_of(nearest: Match | None, weighed: Weighed) -> str | None:
    """The kind of question where most of the words are those of one danger, however it is asked.

    A phrase of a danger that is held whole says so only where the evidence speaks for nothing else.
    """
    if nearest is None or nearest.asked != HAZARD or nearest.part < MOST_OF:
        return None
    whole = _is_whole(nearest) and _by_far(weighed, CLEARLY) in (None, HAZARD)
    return HAZARD if nearest.score >= PLAINLY or whole else None


def _by_far(weighed: Weighed, apart: float = BY_FAR) -> str | None:
    """The intent that the evidence speaks for by far; None where another comes near."""
    first, second = (*weighed.ranked[:2], ("", 0.0), ("", 0.0))[:2]
    return first[0] if first[1] - second[1] >= apart else None


def _foreign(line: Line, features: frozenset[str], lexicon: Lexicon) -> set[str]:
    """Whether a text names nothing of the trade, and has a word that neither the language nor any advice knows."""
    told = {one for one in features if one.endswith("-said")}
    told -= {_BARE_NUMBER} if "brief" not in features else set()  # a name and a number may be a lens nobody knows
    if features & _OURS or told:
        return set()
    strange = (one for one in line.tokens if one.kind == "UNKNOWN" and one.text.isalpha() and len(one.text) > 2)
    return {"foreign"} if any(not lexicon.subjects.knows(one.text) for one in strange) else set()


def _names(token: Token) -> bool:
    """Whether its words are a name, of which none asks anything by itself: 'full frame' in that of a body."""
    return token.kind in _NAMING or bool(token.ids) or token.kind in _STOPS  # 'f0' of 'f0.95' shows nothing


def _free(line: Line) -> tuple[Cue, ...]:
    """The cues but for those that are only a part of a longer name: 'iris' of 'fixed iris' asks nothing."""
    spans = [(token.column, token.column + len(token.text) - 1) for token in line.tokens if _names(token)]
    # 'flange to picture of the house' asks for no picture
    measured = [(token.column, token.column + len(token.text)) for token in line.tokens if token.kind == "MEASURE"]
    return tuple(
        cue
        for cue in line.cues
        if not any(start < cue.column < end < cue.end for start, end in measured)
        and not any(
            start <= cue.column and cue.end <= end and (start, end) != (cue.column, cue.end) for start, end in spans
        )
    )
