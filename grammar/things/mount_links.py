"""The two mounts of one adapter are linked: 'M42-E', 'd to c ring', 'm42 mft ring'."""

from __future__ import annotations

from grammar.things.standins import STANDIN
from grammar.words.groups import SUFFICES, WILL_IT
from grammar.words.tokens import Token, is_plural

_RING = "adapter"  # the value of words for a ring


def _asks_will(before: list[Token]) -> bool:
    """Whether the mount before it stands right behind 'will' or the like, so that no lens goes ahead of it there."""
    ahead = [token for token in before if token.kind != "DET"][-2:]
    return len(ahead) == 2 and WILL_IT in ahead[0].groups


def hyphened(tokens: list[Token]) -> list[Token]:
    """'d-to-c': the hyphens make the 'to' a link between two mounts."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        around = [tokens[one] for one in (at - 1, at + 1) if 0 <= one < len(tokens)]
        if token.text == "-" and any(one.kind == "PREP" and one.value == "to" for one in around):
            continue
        if token.text == "/" and not token.gap and out and out[-1].kind == "PREP":
            continue  # 'w/ a 2x'
        if token.kind == "PREP" and token.value == "to" and any(one.text == "-" for one in around):
            token = token.as_("MARK", text="-")
        out.append(token)
    return out


def linked(tokens: list[Token]) -> list[Token]:
    """'M42-E', 'd to c ring', 'm42 mft ring': the two mounts of one adapter are linked."""
    out: list[Token] = []
    tokens = [token.as_("MOUNT") if _next_to_link(tokens, at) else token for at, token in enumerate(tokens)]
    for at, token in enumerate(tokens):
        before = next((one for one in reversed(out) if one.text != "-"), None)
        after = next((one for one in tokens[at + 1 :] if one.text != "-"), None)
        if before is not None and after is not None and before.kind == after.kind == "MOUNT":
            if token.text == "-" or _slashed(tokens, at):
                out.append(token.as_("LINK"))
                continue
            if _is_ring_for(token, out) and not (at + 2 < len(tokens) and tokens[at + 2].kind == "BODY"):
                del out[-2]
                out.append(token.as_("LINK"))
                continue
            if token.kind == "PREP" and token.value == "to" and not _ends_list(out) and _of_piece(tokens, at, out):
                out.append(token.as_("LINK"))
                continue
        out.append(token)
        if [one.kind for one in tokens[at : at + 3]] == ["MOUNT", "MOUNT", "PIECE"]:
            out.append(token.as_("LINK"))
    return out


def _is_ring_for(token: Token, before: list[Token]) -> bool:
    """'a ring for d>c': what it leads from and to, and no body that it is for."""
    led = before[-3:]
    ring = [one.kind for one in led] == ["PIECE", "PREP", "MOUNT"] and led[1].value == "for" and led[0].value == _RING
    return ring and (token.kind, token.value, token.text) == ("PREP", "to", ">")


def _ends_list(before: list[Token]) -> bool:
    """'PK, MD and FD to X ring': the last of several lenses, which all go where it goes."""
    kinds = [token.kind for token in before[-4:]]
    listed = kinds[-3:] == ["MOUNT", "JOIN", "MOUNT"]
    listed = listed and not {*before[-1].ids} & {*before[-3].ids}  # '50 1.8 SR, SR to X ring' is a lens and its ring
    return listed and (len(kinds) < 4 or kinds[0] not in ("PREP", "LINK"))


def _next_to_link(tokens: list[Token], at: int) -> bool:
    """'4/3 to mft ring': a fraction that is the name of a mount too, beside what may link two mounts."""
    token = tokens[at]
    if token.kind != "FRACTION" or token.implies[:1] != ("mount",):
        return False
    around = [tokens[one] for one in (at - 1, at + 1) if 0 <= one < len(tokens)]
    return any(one.text == "-" or (one.kind == "PREP" and one.value == "to") for one in around)


def _of_piece(tokens: list[Token], at: int, before: list[Token]) -> bool:
    behind = tokens[at + 2] if at + 2 < len(tokens) else None
    if behind is not None and STANDIN in behind.implies and any(token.kind == "PIECE" for token in before):
        return True  # 'the LTM to M ring and an M to Z one'
    rest = tokens[at + 2 : at + 4]
    if rest and SUFFICES in rest[0].groups and _asks_will(before):
        return True  # 'M39, 44 mm: will LTM to X do?'
    following = [token for token in tokens[at + 2 :] if token.kind not in ("FILLER", "UNKNOWN", "LETTER")][:2]
    if any(token.kind == "PIECE" for token in following[:1]):
        return True
    if (
        len(following) > 1
        and following[0].kind in ("LENGTH", "KIND", "TIMES", "MOUNTWORD")
        and following[1].kind == "PIECE"
    ):
        return True
    ahead = [token for token in before if token.kind not in ("FILLER", "UNKNOWN", "DET")][-2:]
    return len(ahead) == 2 and ahead[0].kind == "PIECE" and not any(token.kind == "BODY" for token in following)


def _slashed(tokens: list[Token], at: int) -> bool:
    """'the FD/E ring', 'my ring M42/E', 'an M42/EF one': of one ring, written together; 'FD/M42 rings' are two."""
    if tokens[at].text != "/" or tokens[at].gap or tokens[at + 1].gap:
        return False
    ring = tokens[at + 2] if at + 2 < len(tokens) else None
    if ring is not None and STANDIN in ring.implies:
        return True
    if ring is not None and ring.kind == "PIECE" and not is_plural(ring):
        return True
    ahead = tokens[at - 2] if at > 1 else None
    return ahead is not None and ahead.kind == "PIECE" and ahead.value == _RING and not is_plural(ahead)
