"""Tokens -> tokens of the grammar: what each number belongs to, which words head a description, what is passed over."""

from __future__ import annotations

from typing import Final

from engine.base.compact import compact
from grammar.numbers.bare_numbers import with_numbers_told
from grammar.numbers.bores_said import with_clear_openings
from grammar.numbers.brought_nearer import with_nearer_told
from grammar.numbers.circles_said import with_circles_told
from grammar.numbers.close_stops import with_close_stops
from grammar.numbers.counting import with_kinds_counted
from grammar.numbers.densities import with_density_rows, with_factors_marked, with_marked_densities
from grammar.numbers.depths_wanted import with_depths_wanted
from grammar.numbers.drawn_so_far import with_draws_told, with_pulled_out
from grammar.numbers.ev_speeds import with_ev_at_its_iso
from grammar.numbers.exposure_told import with_fixed_stops
from grammar.numbers.far_lengths import with_far_lengths_apart
from grammar.numbers.fields_wanted import with_fields_wanted
from grammar.numbers.frame_rates import with_rates_told
from grammar.numbers.front_threads import with_front_threads
from grammar.numbers.image_told import with_image_told
from grammar.numbers.lens_in_glass import with_lens_in_glass
from grammar.numbers.lens_stops import with_lens_stops_told
from grammar.numbers.lens_to_focus import with_lens_to_focus
from grammar.numbers.limits_told import limited, under_lens, with_limits_apart
from grammar.numbers.lost_at import with_lost_at
from grammar.numbers.mark_rows import with_mark_rows
from grammar.numbers.measure_commas import without_measure_commas
from grammar.numbers.measures import with_measures_told
from grammar.numbers.motifs import with_motifs_told
from grammar.numbers.moved_by_turns import with_moves_told
from grammar.numbers.multiplied import without_multiplied
from grammar.numbers.near_marks import with_bracketed_marks, with_natives_joined, with_near_marks_told
from grammar.numbers.number_rows import with_lens_of_ring, with_ones_counted, with_sum_of_tube
from grammar.numbers.optics_numbers import with_zoom_ratios
from grammar.numbers.other_pitches import with_other_pitches, with_two_of_a_width
from grammar.numbers.over_or_under import with_over_told
from grammar.numbers.own_sizes import with_own_sizes
from grammar.numbers.picture_numbers import with_pixels_told, with_shapes_told
from grammar.numbers.piece_rows import with_bracketed_told, with_piece_rows
from grammar.numbers.pieces_of_length import with_pieces_of_length
from grammar.numbers.prices import with_prices_told
from grammar.numbers.punched_in import with_punched_in
from grammar.numbers.put_behind import with_tubes_behind
from grammar.numbers.rings_at_hand import with_rings_at_hand
from grammar.numbers.rings_close_up import with_rings_pictured
from grammar.numbers.rings_described import with_rings_described
from grammar.numbers.rings_each_sized import with_rings_sized
from grammar.numbers.rings_to_choose import with_rings_to_choose
from grammar.numbers.rows_of_tubes import with_tubes_picked
from grammar.numbers.rulers_seen import with_rulers_seen
from grammar.numbers.scale_rows import with_scale_rows
from grammar.numbers.screw_widths import with_screw_widths
from grammar.numbers.senses import with_rest_told, with_senses_told
from grammar.numbers.set_to import with_settings
from grammar.numbers.sheet_rows import with_sheet_rows
from grammar.numbers.should_be import with_right_lengths
from grammar.numbers.sides_filled import with_sides_filled
from grammar.numbers.sizes_of_frames import with_sizes_of_frames
from grammar.numbers.squeezes import with_squeezes
from grammar.numbers.stops_behind_glass import with_stops_behind_glass
from grammar.numbers.stops_beside import with_stops_beside
from grammar.numbers.stops_lost import with_stops_lost
from grammar.numbers.sums_of_pieces import with_sums_of_pieces
from grammar.numbers.tails import MODIFIERS, tailed, without_articles
from grammar.numbers.thread_lengths import with_thread_lengths
from grammar.numbers.threads_told import with_threads_told
from grammar.numbers.times_said import with_times_said
from grammar.numbers.turned_ways import with_turned_ways
from grammar.numbers.washers_summed import with_washers_summed
from grammar.numbers.wides_asked_of import with_wides_told
from grammar.numbers.zones import with_zones_told
from grammar.numbers.zooms_bare import with_zooms_named, without_zooming
from grammar.things.asides import without_asides
from grammar.things.bodies_framed import with_bodies_framed
from grammar.things.brackets import with_brackets_told
from grammar.things.close_ups_named import with_close_ups_named
from grammar.things.colons import with_colons_told
from grammar.things.denied import with_denied_told
from grammar.things.engraved_formats import with_formats_engraved
from grammar.things.eras import with_eras_told
from grammar.things.fits_on import with_fits_on
from grammar.things.flanges_of_bodies import with_flanges_of_bodies
from grammar.things.formats import with_formats_told
from grammar.things.frames_apart import with_frames_apart
from grammar.things.frames_covered import with_frames_covered
from grammar.things.group_heads import with_group_heads, with_times_told
from grammar.things.heads_told import headed
from grammar.things.host_first import with_host_first
from grammar.things.hubs_told import with_hubs_told
from grammar.things.inches_set_against import with_inches_set_against
from grammar.things.lens_rows import with_lens_rows
from grammar.things.lens_set_against import with_lens_set_against
from grammar.things.letters import is_row, settled
from grammar.things.likened import without_itself, without_likened
from grammar.things.mount_links import hyphened, linked
from grammar.things.mounts_apart import with_body_ahead, without_difference
from grammar.things.ring_links import with_ring_links
from grammar.things.slr_lenses import with_lenses_of_slrs, with_screw_lenses, with_screwed_kinds
from grammar.things.stack_spellings import with_stacks_spelled
from grammar.things.stacks_told import with_stacks_told
from grammar.things.standins import with_standins
from grammar.things.steps_told import with_steps_told
from grammar.things.told_of import with_told_of
from grammar.things.width_rings import with_width_rings
from grammar.words.groups import HEADS_A_BODY, HEADS_A_LENS
from grammar.words.strangers import with_strangers
from grammar.words.token_kinds import HEADS
from grammar.words.tokens import Line, Token
from grammar.words_told import with_words_told

_CUED: Final = frozenset(["FORMAT", "LENGTH", "NUMBER"])  # 'full frame equivalent', '35mm equivalent', 'be on 35'


@compact
class Shaped:
    """Tokens as the grammar takes them, and the unknown words that were passed over."""

    tokens: tuple[Token, ...]
    skipped: tuple[Token, ...]


def shaped(
    line: Line, told: frozenset[str], hosts: frozenset[str] = frozenset(), never_full: frozenset[str] = frozenset()
) -> Shaped:
    """The tokens of `line` with each in its part.

    `told`: what the cues of the line tell. `hosts`: mounts that, named alone, are those of a body.
    `never_full`: mounts of which no body is of full frame.
    """
    spans = with_words_told(_within_cues(line), told)
    tokens = with_times_told(with_group_heads(with_brackets_told(settled(tuple(without_itself(spans))))))
    tokens = with_rates_told(with_eras_told(with_limits_apart(with_ev_at_its_iso(tokens))))
    tokens = with_width_rings(with_steps_told(tokens), hosts)
    tokens = with_lenses_of_slrs(with_screw_lenses(with_screwed_kinds(with_kinds_counted(tokens))), told)
    tokens = with_rings_pictured(with_tubes_behind(with_pulled_out(without_zooming(tokens), told), told))
    tokens = with_told_of(_ringed([one for token in tokens for one in _named(token)]), hosts)
    tokens = with_over_told(with_body_ahead(tokens, hosts))
    tokens = with_rings_sized(with_ring_links(with_stacks_told(with_stacks_spelled(tokens)), hosts), hosts)
    tokens = with_host_first(
        with_fits_on(with_hubs_told(with_flanges_of_bodies(linked(hyphened(with_denied_told(tokens))))))
    )
    tokens, skipped = with_strangers(with_colons_told(with_clear_openings(tokens)))
    tokens = with_stops_lost(with_lost_at(with_bracketed_marks(tokens, told)))
    tokens = with_factors_marked(with_density_rows(tokens), told)
    tokens = with_rings_described(with_rings_at_hand(with_bracketed_told(tokens), told))
    tokens = with_pixels_told(
        with_shapes_told(
            with_squeezes(
                with_times_said(
                    with_depths_wanted(with_sizes_of_frames(with_close_ups_named(with_lens_in_glass(tokens)))), told
                )
            ),
            told,
        ),
        told,
    )
    tokens = without_asides(with_washers_summed(without_difference(tokens), told))
    tokens = without_likened(without_multiplied(tokens, told))
    tokens = [token for token in with_sides_filled(with_punched_in(tokens)) if token.kind not in ("FILLER", "MARK")]
    tokens = _begun([token.as_("CUE") if token.kind in ("VERB", "SHARE") else token for token in tokens])
    tokens = with_turned_ways(with_draws_told(with_other_pitches(with_pieces_of_length(tokens), told), told), told)
    tokens = with_rulers_seen(tokens)
    tokens = with_motifs_told(with_marked_densities(with_standins(with_prices_told(tokens), hosts), told), told)
    tokens = with_zooms_named(with_zoom_ratios(with_formats_engraved(with_screw_widths(tokens), told)), told)
    tokens = with_inches_set_against(tokens, hosts)
    tokens = with_wides_told(with_formats_told(with_frames_apart(with_front_threads(tokens, told), told), told), told)
    tokens = with_fields_wanted(with_circles_told(with_lens_to_focus(with_frames_covered(tokens)), told), told)
    tokens = with_lens_stops_told(with_stops_behind_glass(tokens), told)
    tokens = with_zones_told(with_stops_beside(tokens, told), line.cues, told)
    tokens = with_own_sizes(with_nearer_told(with_natives_joined(without_measure_commas(tokens))))
    tokens = with_rings_to_choose(with_sums_of_pieces(with_near_marks_told(tokens, told), told), told)
    tokens = with_sheet_rows(with_right_lengths(with_senses_told(tokens, hosts)), told)
    tokens = with_image_told(
        with_tubes_picked(with_piece_rows(with_lens_of_ring(with_ones_counted(with_sum_of_tube(tokens))), told)),
        line.cues, told,
    )  # fmt: skip
    tokens = with_measures_told(with_thread_lengths(with_close_stops(tokens, told)), told)
    tokens = with_moves_told(with_threads_told(tokens), told)
    tokens = with_lens_rows(with_lens_set_against(with_mark_rows(with_scale_rows(tokens, told))), hosts)
    tokens = with_two_of_a_width(with_bodies_framed(tokens, hosts), told)
    tokens = with_far_lengths_apart(with_numbers_told(tokens, told, never_full))
    tokens = limited(without_articles(under_lens(headed(with_rest_told(with_measures_told(tokens), told)))))
    return Shaped(tuple(_joined(_placed(tailed(with_settings(with_fixed_stops(tokens), told), told)))), tuple(skipped))


def _within_cues(line: Line) -> tuple[Token, ...]:
    """'the full frame equivalent': a format that is only part of what is asked is no body's."""
    spans = [(cue.column, cue.end) for cue in line.cues if cue.tells == "equiv"]

    def inside(token: Token) -> bool:
        first, end = own = token.column, token.column + len(token.text) - 1
        return any(start <= first and end <= last and (start, last) != own for start, last in spans)

    letters = [(cue.column + 1, cue.end) for cue in line.cues if cue.tells == "effective-f"]
    terms = (one for one in line.spoken if one.kind == "term" and len(one.text) > 3)
    letters += [(one.column, one.column) for one in terms if not is_row(line.tokens, one.column, len(one.text))]

    def of_stop(token: Token) -> bool:
        """'the real f', 'a T number': the letter is that of a stop, or of a term, and no mount."""
        letter = token.kind in ("LETTER", "MOUNT") and len(token.text) == 1
        return letter and any(start <= token.column <= last for start, last in letters)

    return tuple(
        token.as_("CUE", ids=()) if (token.kind in _CUED and inside(token)) or of_stop(token) else token
        for token in line.tokens
    )


def _named(token: Token) -> list[Token]:
    if token.kind in ("LENS", "BODY", "ADAPTER") and token.ids:
        return [token.as_("NAMED", unit=token.kind.lower())]
    words = token.text.split()
    last = _heads(token, words[-1]) if token.kind in ("KIND", "MOUNT", "FORMAT") and len(words) > 1 else None
    if last is not None:
        column = token.column + len(token.text) - len(words[-1])
        head = Token(last, words[-1], column, listed=token.listed)
        return [token.as_(token.kind, text=token.text[: column - token.column].rstrip()), head]
    first = _heads(token, words[0]) if token.kind == "PREP" and len(words) > 1 else None
    if first is not None:
        rest = token.text[len(words[0]) :].lstrip()  # 'lens for Super 8'
        head = token.as_(first, text=words[0], value="")
        return [head, token.as_("PREP", text=rest, column=token.column + len(token.text) - len(rest))]
    return [token]


def _heads(token: Token, word: str) -> str | None:
    """The kind of head that a word of a token is by itself: 'projector lens', 'F body'."""
    groups = token.listed.of(word)
    return "LENS" if HEADS_A_LENS in groups else "BODY" if HEADS_A_BODY in groups else None


def _ringed(tokens: list[Token]) -> list[Token]:
    """'a T ring', 'EF T-ring': a ring that has its front by its name has that mount before all that describes it."""
    out: list[Token] = []
    for token in tokens:
        front = next((one[1:] for one in token.implies if one.startswith("~")), "") if token.kind == "PIECE" else ""
        if front:
            at = len(out)
            while at and out[at - 1].kind in ("MOUNT", "NUMBER", "LENGTH"):
                at -= 1
            out.insert(at, Token("MOUNT", token.text, token.column, value=front, ids=(front,), listed=token.listed))
        out.append(token)
    return out


def _begun(tokens: list[Token]) -> list[Token]:
    """'hey, 180 with ...', 'so 85 with ...': what only leads in begins no question."""
    at = 0
    while at < len(tokens) and (
        tokens[at].kind == "JOIN" or (tokens[at].kind, tokens[at].text.casefold()) == ("CUE", "so")
    ):
        at += 1
    return tokens[at:]


def _joined(tokens: list[Token]) -> list[Token]:
    """Keep a join only between two descriptions; elsewhere it says nothing."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        if token.kind != "JOIN":
            out.append(token)
            continue
        if at + 1 < len(tokens) and tokens[at + 1].kind == "JOIN":
            continue  # ', and' is one join
        set_apart = len(out) > 1 and out[-2].kind == "AT"
        behind = bool(out) and not set_apart
        ends = behind and (out[-1].kind in HEADS or out[-1].kind in MODIFIERS or out[-1].kind == "TAIL")
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        begins = after is not None and (after.kind in HEADS or after.kind in MODIFIERS or after.kind == "PREP")
        out.append(token if ends and begins else token.as_("CUE"))
    return out


def _placed(tokens: list[Token]) -> list[Token]:
    """Keep a preposition only right before a description."""
    out: list[Token] = []
    for at, token in enumerate(tokens):
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        begins = after is not None and (after.kind in HEADS or after.kind in MODIFIERS)
        linking = out and out[-1].kind == "MOUNT" and after and after.kind == "MOUNT"
        idle = (token.kind == "PREP" and not begins) or (token.kind == "LINK" and not linking)
        out.append(token.as_("CUE") if idle else token)
    return out
