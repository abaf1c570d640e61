"""'SLR 50s', 'an old slr 35/2.8 on Z', 'a 50 off a film SLR': the kind of camera tells whose lens it is."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import OF_ANY, SCREW
from grammar.words.tokens import Token, is_plural

_BY_SCREW: Final = "screw:"  # how what a kind of lens implies begins: the mount that such a lens has by a screw
_OF_ONE_LENS: Final = frozenset(
    ["COMBO", "LENGTH", "NUMBER", "FNUM", "LENS", "DET", "FILLER", "JOIN", "LETTER", "TRAIT", "MARK", "MOUNTWORD"]
)
_ENDS: Final = frozenset(["JOIN", "STOP", "PREP", "LENS", "DET", "MARK"])
_WITH: Final = "with"
_NOT: Final = frozenset(["no", "not", "without"])
_MOUNT: Final = "mount"
_SLR: Final = "slr"
_NAMES: Final = frozenset(["MOUNT", "LETTER"])
_PASSED: Final = frozenset(["DET", "FILLER", "LETTER"])
_PUT: Final = frozenset(["on", "to", "for", "in", "onto"])  # before a body that a lens goes on
_TAKEN: Final = frozenset(["from", "off"])
_LEADS: Final = frozenset(["DET", "CUE", "FILLER", "STOP", "VERB", "JOIN"])  # before a lens of which nothing is told
_LEAST_WITH_SCREW: Final = 20.0  # mm
_TOLD_BY: Final = frozenset(["MOUNT", "THREAD", "PITCH", "MEASURE"])
_FILM: Final = 35.0  # mm
_FOCALS: Final = (12.0, 600.0)  # mm
_EXPOSED: Final = frozenset(["exposure", "nd", "shutter-speed"])
_WITH_UNIT: Final = frozenset(["COMBO", "LENGTH"])


def with_lenses_of_slrs(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The focal length before the word for the camera, and behind it that it is a lens."""
    tokens = _with_mounts_behind_slr(tokens)
    tokens = _with_mounts_of_slrs([_without_camera(tokens, at, told) for at in range(len(tokens))])
    tokens = _without_film(tokens)
    for at, token in enumerate(tokens):
        if token.kind != "BODY" or token.value != _SLR or " body" in token.text.casefold():
            continue
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        head = Token("LENS", "lens", token.column)
        if after is not None and _is_focal(after, told) and not _is_put_on(tokens, at):
            return [*tokens[:at], _as_focal(after), token, head, *tokens[at + 2 :]]
        lens = _taken_off(tokens, at)
        if lens is not None and tokens[lens].kind == "LENS" and (lens == 0 or tokens[lens - 1].kind in _LEADS):
            return [*tokens[:lens], token, tokens[lens], *tokens[at + 1 :]]  # 'a lens off an SLR'
        if lens is not None and _is_focal(tokens[lens], told):
            return [*tokens[:lens], _as_focal(tokens[lens]), token, head, *tokens[at + 1 :]]
    return tokens


def _without_film(tokens: list[Token]) -> list[Token]:
    """'normal 35mm SLR lens', '35mm SLR lenses', 'off a 35mm SLR': the width of its film, and no focal length."""
    for at in range(len(tokens) - 1):
        film, camera = tokens[at], tokens[at + 1]
        after = tokens[at + 2] if at + 2 < len(tokens) else None
        if film.kind != "LENGTH" or film.numbers != (_FILM,) or camera.kind != "BODY" or camera.value != _SLR:
            continue
        before = [
            one for one in tokens[max(0, at - 2) : at] if one.kind not in ("DET", "LETTER") or OF_ANY in one.groups
        ]
        off = bool(before) and before[-1].kind == "PREP" and before[-1].value in _TAKEN
        any_of_them = bool(before) and OF_ANY in before[-1].groups
        if off or any_of_them or (after is not None and after.kind == "LENS" and is_plural(after)):
            return [*tokens[:at], *tokens[at + 1 :]]
    return tokens


def _with_mounts_of_slrs(tokens: list[Token]) -> list[Token]:
    """'Z body: OM, R slr and MD': in a row of mounts the word only tells which mount of that name the lens has."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        out.append(token)
        whole = token.kind == "MOUNT" and token.text.casefold().endswith(f" {_SLR}")
        named = at > 0 and tokens[at - 1].kind in _NAMES and token.kind == "BODY" and token.text.casefold() == _SLR
        first = at if whole else at - 1
        listed = _is_listed(tokens, first - 1, -1) or _is_listed(tokens, at + 1, 1)
        rings = any(one.kind == "PIECE" for one in tokens[max(0, first - 3) : first])  # 'rings for R slr, K on E'
        single = first > 0 and tokens[first - 1].kind == "DET"  # 'a Z body, a K slr and OM lenses' has two bodies
        if (whole or named) and listed and not single and (rings or not _is_put_on(tokens, first)):
            out.append(Token("LENS", "lens", token.column))
    return out


def _with_mounts_behind_slr(tokens: list[Token]) -> list[Token]:
    """'C/Y, M42 and the SLR R bayonet': in a row of mounts it tells which of that name is meant, ahead as behind."""
    for at in range(2, len(tokens) - 1):
        camera, mount = tokens[at], tokens[at + 1]
        first = at - (tokens[at - 1].kind == "DET")
        joined = first > 1 and tokens[first - 1].kind == "JOIN" and tokens[first - 2].kind in _NAMES
        if camera.kind == "BODY" and camera.text.casefold() == _SLR and mount.kind in _NAMES and joined:
            return [*tokens[:first], mount, camera, *tokens[at + 2 :]]
    return tokens


def _is_listed(tokens: list[Token], at: int, step: int) -> bool:
    """Whether a join stands there and another mount beyond it."""
    row = [one for one in tokens[max(0, at + min(step * 2, 0)) : at + 1 + max(step * 3, 0)] if one.kind != "DET"]
    row = row if step > 0 else row[::-1]
    joined = len(row) > 1 and (row[0].kind == "JOIN" or row[0].text == "/") and row[1].kind in _NAMES
    bodies = step > 0 and any(one.kind == "BODY" and is_plural(one) for one in row[2:])  # 'R slr and K bodies'
    return joined and not bodies


def _without_camera(tokens: list[Token], at: int, told: frozenset[str]) -> Token:
    """'M39 SLR 50/3.5 on Z': a mount whose name ends in that of its camera, beside a focal length, tells the lens."""
    token, words = tokens[at], tokens[at].text.split()
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    camera = token.kind == "MOUNT" and len(words) > 1 and words[-1].casefold() == _SLR
    beside = [one for one in (after, tokens[at - 1] if at else None) if one is not None]
    lens = camera and any(_is_focal(one, told) for one in beside) and not _is_put_on(tokens, at)
    return token.as_("MOUNT", text=" ".join(words[:-1])) if lens else token


def _is_focal(token: Token, told: frozenset[str]) -> bool:
    if token.kind == "SHUTTER":
        whole = token.text[:-1].isdigit() and token.text[-1:] == "s" and not told & _EXPOSED
    else:
        whole = token.kind in _WITH_UNIT or (token.kind == "NUMBER" and token.text.isdecimal())
    return whole and token.unit in ("", "mm", "s") and _FOCALS[0] <= token.numbers[0] <= _FOCALS[1]


def _as_focal(token: Token) -> Token:
    return token if token.kind in _WITH_UNIT else token.as_("LENGTH", unit="mm", value="")


def _is_put_on(tokens: list[Token], at: int) -> bool:
    """'on my SLR, 50 mm': there it is the body."""
    before = [one for one in tokens[max(0, at - 4) : at] if one.kind not in _PASSED]
    return bool(before) and before[-1].kind == "PREP" and before[-1].value in _PUT


def _taken_off(tokens: list[Token], at: int) -> int | None:
    """Where the number stands of a lens that is told to be off such a camera: '50s from film SLRs'."""
    place = at - 1
    while place > 0 and tokens[place].kind in _PASSED:
        place -= 1
    off = place > 0 and tokens[place].kind == "PREP" and tokens[place].value in _TAKEN
    return place - 1 if off else None


def with_screwed_kinds(tokens: list[Token]) -> list[Token]:
    """'screw 35/3.5 rangefinder lens', 'rangefinder 50, screw mount': the kind with its screw tells the mount."""
    kind = next((at for at, one in enumerate(tokens) if one.kind == "KIND" and _by_screw(one)), None)
    screw = next((at for at, one in enumerate(tokens) if one.kind == "MOUNTWORD" and SCREW in one.groups), None)
    if kind is None or screw is None or not _is_said_of(tokens, screw, kind):
        return tokens
    rest = [one for at, one in enumerate(tokens) if at != screw]
    rest[kind - (screw < kind)] = tokens[kind].as_("MOUNT", ids=_by_screw(tokens[kind]), implies=())
    return rest


def with_screw_lenses(tokens: list[Token]) -> list[Token]:
    """'my 400 screw mount sits on EF', 'screw 50 on F': of no told width, beside a focal length and put on a body."""
    for at, token in enumerate(tokens):
        if token.kind != "MOUNTWORD" or not _by_screw(token) or not _goes_on(tokens[at + 1 :]):
            continue
        before, after = tokens[at - 1] if at else None, tokens[at + 1] if at + 1 < len(tokens) else None
        ahead = before is not None and not before.unit  # 'a 44 mm screw' tells the width of a screw
        beside = [one for one in ((before if ahead else None), after) if one is not None and _is_lens_length(one)]
        told = any(one is not None and one.kind in _TOLD_BY for one in (before, after))
        if len(beside) == 1 and not told:
            return [
                one.as_("MOUNT", ids=_by_screw(one), implies=())
                if n == at
                else _as_focal(one) if one is beside[0] else one
                for n, one in enumerate(tokens)
            ]  # fmt: skip
    return tokens


def _goes_on(tokens: list[Token]) -> bool:
    """Whether it is put on a body that is named behind."""
    kinds = [(one.kind, one.value) for one in tokens if one.kind not in _PASSED]
    return any(
        kind == "PREP" and value in _PUT and kinds[n + 1][0] in ("MOUNT", "BODY", "LETTER")
        for n, (kind, value) in enumerate(kinds[:-1])
    )


def _is_lens_length(token: Token) -> bool:
    if token.kind == "COMBO":
        return True
    whole = token.kind in ("NUMBER", "LENGTH") and token.unit in ("", "mm") and len(token.numbers) == 1
    return whole and _LEAST_WITH_SCREW <= token.numbers[0] <= _FOCALS[1]


def _by_screw(kind: Token) -> tuple[str, ...]:
    return tuple(one.removeprefix(_BY_SCREW) for one in kind.implies if one.startswith(_BY_SCREW))


def _is_said_of(tokens: list[Token], screw: int, kind: int) -> bool:
    """Whether the screw is that of the lens of this kind, and not told by its width or name, or denied."""
    first, last = sorted((screw, kind))
    before, after = tokens[screw - 1] if screw else None, tokens[screw + 1] if screw + 1 < len(tokens) else None
    if any(one.kind not in _OF_ONE_LENS and one.value != _WITH for one in tokens[first + 1 : last]):
        return False
    if before is not None and (before.kind in ("MOUNT", "THREAD") or before.text.casefold() in _NOT):
        return False
    if screw < kind:
        return before is None or before.kind not in ("LENGTH", "NUMBER")
    sized = before is not None and before.kind in ("LENGTH", "NUMBER", "FNUM")
    named = _MOUNT in tokens[screw].text.casefold()
    return named or (not sized and (after is None or after.kind in _ENDS))
