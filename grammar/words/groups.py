"""Groups of words that readings tell apart by more than their class; which words those are stands in kb/words."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

from engine.base.compact import compact, field

_MOST_KNOWN: Final = 2000  # texts kept with their groups
_BEGINS: Final = "*"  # at the end of a word of a group: all that begins so

SIZE_ASKED: Final = "size-asked"
ADDED: Final = "added"
AMOUNT: Final = "amount"
AMISS: Final = "amiss"
ANGLE: Final = "angle"
ARTICLE: Final = "article"
ASKS: Final = "asks"
WORKED_DOWN: Final = "worked-down"
AWAY: Final = "away"
BECOMING: Final = "becoming"
BEHIND_COUNT: Final = "behind-count"
BEHIND_SHEET: Final = "behind-sheet"
BESIDE_THREAD: Final = "beside-thread"
BAYONET: Final = "bayonet"
BEYOND: Final = "beyond"
BODY_OF_LENS: Final = "body-of-lens"
BEYOND_INFINITY: Final = "beyond-infinity"
BY_MEANS: Final = "by-means"
COME_TO: Final = "come-to"
COVER_GLASS: Final = "cover-glass"
COSTS: Final = "costs"
CRANKED: Final = "cranked"
CROP: Final = "crop"
CUT_IN_PARTS: Final = "cut-in-parts"
CAMERA_BUILD: Final = "camera-build"
CHANGES_OVER: Final = "changes-over"
CLOSES_OR_OPENS: Final = "closes-or-opens"
DEALING: Final = "dealing"
DEPTH_SAID: Final = "depth-said"
DENSITY: Final = "density"
DIFFERS: Final = "differs"
DIAL: Final = "dial"
DOER: Final = "doer"
DRAWN_OUT: Final = "drawn-out"
DRAWS: Final = "draws"
EARLIER: Final = "earlier"
EITHER: Final = "either"
ENDLESS: Final = "endless"
ERA: Final = "era"
EVERYTHING: Final = "everything"
EXCHANGES: Final = "exchanges"
EXTENDS_BY: Final = "extends-by"
FACTOR_NAMED: Final = "factor-named"
FEMALE: Final = "female"
FIGURE: Final = "figure"
FILM_LIKE: Final = "film-like"
FLANGES: Final = "flanges"
FLIPS: Final = "flips"
FOCAL_NAMED: Final = "focal-named"
FOCUSING: Final = "focusing"
FORMAT_HEADED: Final = "format-headed"
FRONT_WIDTH: Final = "front-width"
FRAMES_COUNTED: Final = "frames-counted"
FRAME_NAMED: Final = "frame-named"
FITTING: Final = "fitting"
F_NUMBER: Final = "f-number"
GIVES: Final = "gives"
GOES_ON_FROM: Final = "goes-on-from"
GLASS_LIKE: Final = "glass-like"
GONE: Final = "gone"
GROWN: Final = "grown"
HARMING: Final = "harming"
GREY: Final = "grey"
HOW_IT_MOVES: Final = "how-it-moves"
HEADS_A_BODY: Final = "heads-a-body"
HEADS_A_LENS: Final = "heads-a-lens"
HOLDING: Final = "holding"
HOLDS: Final = "holds"
IMAGE: Final = "image"
INDEX: Final = "index"
INSIDE: Final = "inside"
IN_BETWEEN: Final = "in-between"
IN_PLACE_OF: Final = "in-place-of"
LACKING: Final = "lacking"
JOINED_ON: Final = "joined-on"
LIKE_BEFORE: Final = "like-before"
LENS_SAID: Final = "lens-said"
LEADS_COUNT: Final = "leads-count"
LEADS_SHEET: Final = "leads-sheet"
LEFT_OUT: Final = "left-out"
EDGES_SAID: Final = "edges-said"
DARK_SAID: Final = "dark-said"
LAYERS: Final = "layers"
VIEWED: Final = "viewed"
AS_DUE: Final = "as-due"
SO_LONG: Final = "so-long"
CONTRASTED: Final = "contrasted"
MADE_SURE: Final = "made-sure"
PROVING: Final = "proving"
LIGHT_SAID: Final = "light-said"
LIGHT_CHANGED: Final = "light-changed"
LIKENING: Final = "likening"
LIPPED: Final = "lipped"
LIT: Final = "lit"
LONG_END: Final = "long-end"
LOOKS: Final = "looks"
MADE: Final = "made"
MAGNIFIES: Final = "magnifies"
MATERIAL: Final = "material"
METRIC: Final = "metric"
MIDDLE: Final = "middle"
MOON: Final = "moon"
MORE: Final = "more"
GLAZED: Final = "glazed"
MIRRORED: Final = "mirrored"
NEAREST_ASKED: Final = "nearest-asked"
NEAREST_LED: Final = "nearest-led"
OBJECTIVE_TUBE: Final = "objective-tube"
OFFERED: Final = "offered"
OF_ANY_RING: Final = "of-any-ring"
OF_FILM: Final = "of-film"
OF_PITCH: Final = "of-pitch"
OF_SHAPE: Final = "of-shape"
OF_SIZE: Final = "of-size"
OPENED: Final = "opened"
OPENS: Final = "opens"
OUTER: Final = "outer"
OUTFIT: Final = "outfit"
TALL: Final = "tall"
YEARS: Final = "years"
OWN: Final = "own"
PLATE: Final = "plate"
PUT_ON: Final = "put-on"
PUT_RIGHT: Final = "put-right"
PUT_WHERE: Final = "put-where"
PURPOSE: Final = "purpose"
RATHER: Final = "rather"
REACHES: Final = "reaches"
READS: Final = "reads"
PULLS: Final = "pulls"
READ_OUT: Final = "read-out"
REALLY: Final = "really"
REAR: Final = "rear"
ROUND: Final = "round"
SCALE: Final = "scale"
SCALE_LED: Final = "scale-led"
SCREW: Final = "screw"
SCREW_CRESTS: Final = "screw-crests"
STACKED: Final = "stacked"
SEEN_SHARP: Final = "seen-sharp"
SET_SO: Final = "set-so"
SENSOR_SPEED: Final = "sensor-speed"
SPEED_CALLED: Final = "speed-called"
SEVERAL: Final = "several"
LOOKS_SO: Final = "looks-so"
BARE_SO: Final = "bare-so"
METERED: Final = "metered"
RESULTS: Final = "results"
SIZE_SAID: Final = "size-said"
EACH_OF: Final = "each-of"
VIEW_REACHES: Final = "view-reaches"
OFF_WORSE: Final = "off-worse"
IN_SETS: Final = "in-sets"
UNDERNEATH: Final = "underneath"
UNIT_FEET: Final = "unit-feet"
UNIT_METRES: Final = "unit-metres"
RAISING: Final = "raising"
SHEETS: Final = "sheets"
SIDE: Final = "side"
SINGLE: Final = "single"
SMOOTH: Final = "smooth"
OF_ANY: Final = "of-any"
OPEN_END: Final = "open-end"
SORTS: Final = "sorts"
SHRUNK: Final = "shrunk"
SHUT_END: Final = "shut-end"
SPAN: Final = "span"
TALKS_ON: Final = "talks-on"
STANDS_OUT: Final = "stands-out"
STANDS_IN: Final = "stands-in"
STARS: Final = "stars"
STOPPED_SO: Final = "stopped-so"
STOP_NAMED: Final = "stop-named"
SUFFICES: Final = "suffices"
SWAPS: Final = "swaps"
TAKEN_AWAY: Final = "taken-away"
TAKEN_OFF: Final = "taken-off"
WAS_TAKEN: Final = "was-taken"
THERE_IS: Final = "there-is"
THIN_LED: Final = "thin-led"
TOO_MUCH: Final = "too-much"
TWICE: Final = "twice"
TURNS_ROUND: Final = "turns-round"
VIDEO_TUBE: Final = "video-tube"
WAYS: Final = "ways"
ZOOMED: Final = "zoomed"
ZOOMED_INTO: Final = "zoomed-into"
ZOOMS: Final = "zooms"
WIDE_END: Final = "wide-end"
WITHOUT: Final = "without"
YIELDS: Final = "yields"
FAT: Final = "fat"
COVERING: Final = "covering"
COVER: Final = "cover"
LIGHTS_UP: Final = "lights-up"
ASKED_AHEAD: Final = "asked-ahead"
SHOWS_OR_WOULD: Final = "shows-or-would"
LEADS_LENS: Final = "leads-lens"
PICKED_OUT: Final = "picked-out"
PLATES: Final = "plates"
MADE_UP_OF: Final = "made-up-of"
OWN_OR_ANY: Final = "own-or-any"
LINKS_FIGURE: Final = "links-figure"
FITS_ONTO: Final = "fits-onto"
HOLES: Final = "holes"
TAKES: Final = "takes"
BEARS: Final = "bears"
LIKE_THAT: Final = "like-that"
WHICH_ONE: Final = "which-one"
OPENS_QUESTION: Final = "opens-question"
DENYING: Final = "denying"
LOOKED_AT: Final = "looked-at"
TURNS_SAID: Final = "turns-said"
MACRO_MADE: Final = "macro-made"
LEADS_INTO: Final = "leads-into"
WILL_IT: Final = "will-it"
USED_WITH: Final = "used-with"
PREFERRED: Final = "preferred"
RIM_OF_BUSH: Final = "rim-of-bush"
FARTHEST: Final = "farthest"
SLOWED: Final = "slowed"
LEADS_RATE: Final = "leads-rate"
WE: Final = "we"
DENIAL: Final = "denial"

# every one that is named above must have words
GROUPS: Final = frozenset(
    value for name, value in list(globals().items()) if name[0].isalpha() and name.isupper() and isinstance(value, str)
)


@compact(frozen=False)
class Groups:
    """Which groups a word or phrase is of: by itself, and by what it begins with."""

    words: dict[str, tuple[str, ...]] = field(default_factory=dict)
    begins: dict[str, tuple[str, ...]] = field(default_factory=dict)
    # of texts asked of before
    known: dict[str, tuple[str, ...]] = field(default_factory=dict, compare=False)

    def add(self, group: str, words: Iterable[str]) -> None:
        self.known.clear()
        for word in words:
            table = self.begins if word.endswith(_BEGINS) else self.words
            text = word.casefold().removesuffix(_BEGINS)
            table[text] = (*table.get(text, ()), group)

    def of(self, text: str) -> tuple[str, ...]:
        """The groups of a text as it is typed."""
        found = self.known.get(text)
        if found is None:
            if len(self.known) >= _MOST_KNOWN:
                self.known.clear()  # what is typed in a long talk does not pile up
            folded = text.casefold()
            begins = (groups for begin, groups in self.begins.items() if folded.startswith(begin))
            found = (*self.words.get(folded, ()), *(group for groups in begins for group in groups))
            self.known[text] = found
        return found

    def words_of(self, group: str) -> tuple[str, ...]:
        """The words and phrases of a group, the longest first; those that are told by their beginning left out."""
        return tuple(sorted((word for word, groups in self.words.items() if group in groups), key=len, reverse=True))

    def one_of(self, group: str) -> str:
        """The same as a part of a pattern."""
        return f"(?:{'|'.join(map(re.escape, self.words_of(group))) or '(?!)'})"

    def behind(self, group: str, text: str) -> str:
        """The text behind its first word, where that is one of the group; else the whole."""
        first, _, rest = text.partition(" ")
        return rest if group in self.of(first) else text

    def core(self, text: str, led: str, ends: str) -> str:
        """What is left of a text without the words of the one group that lead it, and of the other that end it."""
        held = re.fullmatch(rf"(?:{self.one_of(led)} )*(.*?)(?: {self.one_of(ends)})*", text)
        return held[1] if held is not None else text

    def __repr__(self) -> str:
        return "Groups(...)"  # they stand in every token, and tell nothing of it


NO_GROUPS: Final = Groups()
