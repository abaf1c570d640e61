"""The reading of a question as one plain sentence in canonical words, so that a misreading shows."""

from __future__ import annotations

import re
from typing import Final

from engine.base.units import MM_PER_FOOT
from grammar.echo.telling_own import sentence
from grammar.echo.telling_sought import sought_sentence
from grammar.echo.thing_words import NameOf, limit_words, mount_words, thing_words
from grammar.kinds import (
    CARD,
    CHAIN,
    COVERAGE,
    CROP_EQUIVALENT,
    DEFINITION,
    DRAW,
    FOCUS_VERDICT,
    LIST_FITS,
    LOOK_ALIKE,
    MACRO_DISTANCE,
    WHY,
)
from grammar.numbers.motifs import MOTIF
from grammar.numbers.scale_rows import SCALE_MARKS
from grammar.questions import ALL, BODY_OFF, MODE, OFF, REFIT, TO_ITS_OWN, Question, Thing

_ARTICLE: Final = re.compile(r"\ba ([A-Za-z0-9]\S*)")

_LIGHTS: Final = {
    "full-sun": "full sun", "open-shade": "open shade", "hazy-sun": "hazy sun", "snow-in-sun": "snow",
    "bright-cloud": "bright cloud", "bright-street": "bright street", "dim-street": "dim street",
    "full-moon": "full moon", "room": "lit room", "deep-shade": "deep shade", "dim-room": "dim room",
    "window": "window light", "starry-sky": "starry sky",
}  # fmt: skip
# key of a value -> how it is said after the rest; those not listed are said as they stand
_SAID: Final = {
    "nominal": "should be {}", "squeeze": "{} squeeze",
    "iso": "ISO {}", "frame_rate": "{} fps", "turns": "{} turns", "stops": "{} stops", "price": "{} dollars",
    "mark": "infinity at the {} mark", "thickness": "{} thick", "bore": "{} bore", "throat": "throat of {}",
    "rear_reach": "{} behind the flange", "clear_depth": "{} clear depth",
    "travel": "{} of travel", "flange_to_image": "{} flange to image", "extension": "{} of extension",
    "brighter": "{} stops brighter", "infinity_setting": "infinity at {} of the helicoid",
    "came_out": "{} behind the filter",
    "circle": "{} image circle", "diagonal": "{} diagonal", "magnification": "magnification {}:1", "weight": "{}",
    "light": "{}", "shutter": "{}",
    "factor": "{}", "thread": "thread {}", "crop": "{} crop", "close_focus": "{} native", "aperture": "{}",
    "and_number": "and #{}", "zoom": "{}", "barrel": "{} barrel", "target": "{}", "angle": "{} degrees",
    "field": "{} of field", "at_hand": "{} at hand", "total": "to make {}", "spigot": "left out spigot {}",
    "transmission": "{} %", "pitch": "pitch {}", "shift": "{} of shift", "blur": "{} of blur", "file": "as {}",
    "pixels": "{}", "readings": "readings {}", "registers": "registers {}", "glass": "{} of glass",
    "thread_length": "{} of thread", "socket": "socket {}", "layer": "sheet of {}", "sheets": "washers {}",
    "area": "{} frame", "variable": "{}", "stock": "{} of stock", "front_glass": "{} in front of the glass",
    "front_principal": "{} before its front principal plane", "zone": "sharp from {}",
    "filter_thread": "front threads of {}", "filter_size": "filter of {}", "sides": "to fill the frame with a print {}",
    "image_size": "{} on the sensor", "ring_choice": "choice of {}", "factor_taken": "taken for {}",
    "body_register": "{} register of the body", "na": "NA {}", "tilt": "{} thicker at one side",
}  # fmt: skip


_OPENINGS: Final = {
    "exposure-nd": "which ND filter", "depth-of-field": "depth of field", "compare": "which is better",
    "gear-setting": "which camera setting", "identify-mount": "identify the mount",
    "shim-calibration": "how thick a shim", "diy-dimension": "dimensions of a ring to make",
    "buy-plan": "what to buy", "hazard": "is it safe", "out-of-scope": "not about mounting a lens",
}  # fmt: skip
# how the sentences below begin that only one intent begins with, and what must follow somewhere
_BEGUN: Final = (
    ("chain", "how do i get ", " lens"), ("focus-verdict", "can ", " reach infinity"),
    ("macro-distance", "how close does ", " focus"), ("coverage", "does ", " cover "),
    ("crop-equivalent", "what is the full frame equivalent of ", ""), ("list-fits", "what fits ", ""),
    ("list-fits", "which bodies take ", ""), ("why", "how sure is it ", ""), ("look-alike", "what looks like ", ""),
)  # fmt: skip
_THINGS: Final = ("a ", "an ", "my ", "2 ", "3 ", "4 ", "5 ", "6 ", "7 ", "8 ", "9 ")
# no topic of a reason holds these
_ASKING: Final = frozenset(
    ["is", "are", "was", "does", "do", "did", "can", "cant", "will", "wont", "my", "the", "a", "i"]
)  # fmt: skip
_AFTER: Final = (" (", " for ", " with ", ",")


def said_back(text: str) -> str | None:
    """The intent of a text that begins as the canonical sentence of one does; None where it does not."""
    line = text.casefold().strip()
    for intent, begun, then in _BEGUN:
        rest = line.removeprefix(begun)
        if rest != line and then in rest and (not then or rest.startswith(_THINGS)):
            return intent
    topic, said, rest = line.removeprefix("why").partition(" for ")
    if line.startswith("why ") and said and rest.startswith(_THINGS) and not _ASKING & set(topic.split()):
        return "why"
    for intent, opening in _OPENINGS.items():
        rest = line.removeprefix(opening.casefold())
        if rest != line and (not rest or rest.startswith(_AFTER)):
            return intent
    return None


def canonical(question: Question, name_of: NameOf) -> str:
    """One sentence that `read` reads back to the same question. `name_of`: (kind, id) -> the name to show."""
    if question.taught is not None and question.intent in ("teach", "forget"):
        told = sentence(question.taught, question.intent == "forget", name_of)
        return _ARTICLE.sub(_article, " ".join(told.split()))
    if question.sought is not None:
        return _ARTICLE.sub(_article, " ".join(sought_sentence(question, name_of).split()))
    say = _Sayer(question, name_of)
    return _ARTICLE.sub(_article, " ".join(say.sentence().split()))


def _article(match: re.Match[str]) -> str:
    """'an' where the next word is spoken with a vowel first: 'an F-mount lens', 'an 85 mm'."""
    word = match.group(1)
    spelled = len(word) < 2 or not word[1].islower()
    vowel = word[0] in "AEFHILMNORSX" if spelled and word[0].isupper() else word[0].casefold() in "aeio"
    vowel = vowel or word.casefold().startswith("un") or word.startswith("8") or word in ("11", "18")
    return f"{'an' if vowel else 'a'} {word}"


class _Sayer:
    """Says one question."""

    def __init__(self, question: Question, name_of: NameOf) -> None:
        self.question, self.name_of = question, name_of

    def sentence(self) -> str:
        question = self.question
        body = self._opening() + self._pieces()
        rest = [*self._settings(), *limit_words(question.limits, self.name_of)]
        if question.intent == CHAIN and question.topic == "remedy":
            rest.append("what would fix it")
        if body.endswith(" ") and rest:
            body, *rest = body + rest[0], *rest[1:]  # 'what is 17.526', of which nothing is named
        return ", ".join([body, *rest])

    def _opening(self) -> str:
        question, lens, body = self.question, self._lenses(), self._bodies()
        on = f" on {body}" if body else ""
        intent = question.intent
        if intent == "all-on-all":
            return "all my lenses on all my bodies"
        if intent == CHAIN:
            return f"how do I get {lens or 'a lens'}{on}"
        if intent == FOCUS_VERDICT:
            return f"can {lens or 'a lens'} reach infinity{on}"
        if intent == MACRO_DISTANCE:
            where = on or (f" on {self._formats()}" if self._formats() else "")
            return f"how close does {lens or 'a lens'} focus{where}"
        if intent == COVERAGE:
            where = f"{body}{self._part()}" if body else self._formats()
            return f"does {lens or 'a lens'} cover {where or 'the frame'}"
        if intent == CROP_EQUIVALENT:
            where = f"{on}{self._part()}" if on else f" on {self._formats()}" if self._formats() else ""
            return f"what is the full frame equivalent of {lens or 'a lens'}{where}"
        if intent == DRAW:
            return f"draw {_drawn(question.topic)}{lens or 'a lens'}{on}"
        if intent == CARD:
            return self._card(lens, on)
        if intent == WHY:
            return self._why() + (f" for {lens}{on}" if lens else on)
        if intent == LIST_FITS:
            return f"what fits {body}" if body and not lens else f"which bodies take {lens or 'this lens'}{on}"
        if intent == LOOK_ALIKE:
            names = [self._named(thing) for thing in (*question.lenses, *question.things)]
            return (
                f"is {names[0]} the same as {' and '.join(names[1:])}"
                if len(names) > 1
                else f"what looks like {' '.join(names)}"
            )
        if intent == DEFINITION:
            names = [self._named(thing) for thing in (*question.things, *question.lenses)]
            return f"what is {' and '.join(names) or question.topic or ''}"
        return self._plain_opening(lens, on)

    def _plain_opening(self, lens: str, on: str) -> str:
        question = self.question
        every = (question.said(ALL) or "").split(", ")
        lens = "all my lenses" if "lenses" in every else lens
        on = " on all my bodies" if "bodies" in every else on
        opening = _OPENINGS.get(question.intent, question.intent.replace("-", " "))
        topic = (
            f" ({question.topic.replace('-', ' ')})"
            if question.topic and question.topic not in opening.casefold()
            else ""
        )
        formats = f" with {self._formats()}" if self._formats() else ""
        return f"{opening}{topic}" + (f" for {lens}{on}" if lens else on) + formats

    def _card(self, lens: str, on: str) -> str:
        every = (self.question.said(ALL) or "").split(", ")
        whose = "all my lenses" if "lenses" in every else lens or "a lens"
        on = f"{on} on all my bodies" if "bodies" in every else on
        return f"{'cards' if every != [''] else 'card'} for {whose}{on}{' in feet' if self.question.feet else ''}"

    def _why(self) -> str:
        topic = self.question.topic
        if topic == "not":
            return "why not infinity"
        if topic == "sure":
            return f"how sure is it of chain #{self.question.number}" if self.question.number else "how sure is it"
        number = f" of chain #{self.question.number}" if self.question.number else ""
        return (
            f"why {topic.removesuffix('_mm').replace('_', ' ').replace('-', ' ')}{number}" if topic else f"why{number}"
        )

    def _lenses(self) -> str:
        return " and ".join(thing_words(thing, "lens", self.name_of) for thing in self.question.lenses)

    def _bodies(self) -> str:
        return " and ".join(thing_words(thing, "body", self.name_of) for thing in self.question.bodies)

    def _between_pieces(self) -> str:
        """Glass to choose from is not put one behind the other: '1.4x or 2x'."""
        factors = [thing.factor for thing in self.question.adapters]
        either = len(factors) > 1 and None not in factors and self.question.mentions("either-or")
        return " or " if either else " and "

    def _formats(self) -> str:
        return " and ".join(
            self.name_of("format", thing.id) for thing in self.question.things if thing.kind == "format" and thing.id
        )

    def _part(self) -> str:
        """What of a body's sensor is used: a format told beside it."""
        own = {body.format for body in self.question.bodies}
        others = any(thing.id not in own for thing in self.question.frames)
        as_mode = self.question.mentions("as-mode") or self.question.said(MODE) is not None
        return f" in {self._formats()}" if others and as_mode else ""

    def _named(self, thing: Thing) -> str:
        return mount_words(thing, self.name_of) if thing.kind == "mount" else thing_words(thing, "", self.name_of)

    def _motif(self, id_: str) -> str:
        """What shall fill the frame, by name; a frame of film by its format."""
        name, film = self.name_of("motif", id_), self.name_of("format", id_)
        return f"to fill the frame with a {name if name != id_ or film == id_ else f'{film} negative'}"

    def _pieces(self) -> str:
        words = [thing_words(thing, "adapter", self.name_of) for thing in self.question.adapters]
        return f" with {self._between_pieces().join(words)}" if words else ""

    def _settings(self) -> list[str]:
        question = self.question
        out = []
        first = question.lenses[0] if question.lenses else None
        own = first.f_number if first is not None and first.kind != "lens" else None  # said with the lens
        if question.f_number is not None and question.f_number != own:
            out.append(f"at f/{question.f_number:g}")
        if question.distance_mm is not None:
            out.append(f"at {_length(question.distance_mm)}")
        if question.number is not None and question.intent != WHY:
            out.append(f"#{question.number}")
        if question.feet and question.intent == DRAW:
            out.append("in feet")
        for key, text in question.values:
            if key in (ALL, BODY_OFF, MODE, REFIT):
                continue
            said = _LIGHTS.get(text, text) if key in ("light", "other_light") else text
            if key == "mark" and question.intent == DRAW:
                out.append(f"marks at {_marks(text, question.feet)}")
                continue
            if key == "mark" and text.count(",") + 1 >= SCALE_MARKS and _bears_scale(question):
                out.append(f"marked {_marks(text, question.feet)}")
                continue
            text_said = _SAID.get(key, "{}")
            if key == OFF:
                continue
            if key == TO_ITS_OWN:
                out.append("each on its own")
                continue
            if key == "mark" and question.topic == "remark":
                text_said = "the {} mark"  # what it means, and no place of infinity
            if key == MOTIF:
                out.append(self._motif(text))
                continue
            if key == "thickness" and question.off_word:
                text_said = f"{{}} {question.off_word}"
            out.append(text_said.format(said))
        return out


def _drawn(topic: str | None) -> str:
    return f"the {topic} of " if topic else ""


def _bears_scale(question: Question) -> bool:
    """Whether the marks told are those of the ring, and not where infinity falls on several lenses."""
    return question.topic == "remark" or question.intent == CARD


def _marks(text: str, feet: bool) -> str:
    """Marks as the ring bears them: in feet where feet were spoken."""
    sizes = [float(one.removesuffix(" mm")) for one in text.split(", ")]
    return ", ".join(f"{size / MM_PER_FOOT:.4g} ft" if feet else f"{size / 1000:g} m" for size in sizes)


def _length(value: float) -> str:
    return f"{value / 1000:g} m" if value >= 1000 else f"{value:g} mm"
