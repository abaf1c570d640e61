"""What is told by the words as they stand, before any description is linked: spans, pupils, tubes on each, ends."""

from __future__ import annotations

from grammar.numbers.barrels_told import with_barrels_told
from grammar.numbers.bodies_by_register import with_bodies_by_register
from grammar.numbers.counting import with_holds_counted
from grammar.numbers.either_tube import with_either_tube
from grammar.numbers.engraved_ratios import with_engraved_ratios
from grammar.numbers.factors_of_reducers import with_factors_of_reducers
from grammar.numbers.far_lengths import with_farthest_led
from grammar.numbers.filters_owned import with_filters_owned
from grammar.numbers.flange_spans import with_flange_spans_told
from grammar.numbers.focal_numbers import with_focals_named
from grammar.numbers.free_depths import with_free_depths
from grammar.numbers.from_sensor import with_subject_from_sensor
from grammar.numbers.glass_index import with_glass_by_index
from grammar.numbers.image_behind import with_image_behind
from grammar.numbers.lens_stops import with_other_stop
from grammar.numbers.metal_off import with_metal_off
from grammar.numbers.native_speeds import with_native_speeds
from grammar.numbers.optics_numbers import with_factors_in
from grammar.numbers.pupils import with_pupils_told
from grammar.numbers.rears_told import with_rears_told
from grammar.numbers.rings_by_build import with_rings_by_build
from grammar.numbers.rows_of_tubes import with_lens_before_tubes
from grammar.numbers.shims_gone import with_shims_gone
from grammar.numbers.spread_told import with_spread_told
from grammar.numbers.sums_of_pieces import with_taken_lengths
from grammar.numbers.tilts_told import with_tilts_told
from grammar.numbers.tubes_counted_off import with_tubes_counted_off
from grammar.numbers.tubes_each import with_tubes_on_each
from grammar.things.at_each_end import with_ends_told
from grammar.things.before_short import without_before
from grammar.things.bodies_named_behind import with_bodies_named_behind
from grammar.things.enough_for import with_enough_for
from grammar.things.lens_behind_ring import with_lens_behind
from grammar.things.lens_on_bellows import with_lens_on_bellows
from grammar.things.pieces_of_mounts import with_pieces_of_mounts
from grammar.things.pieces_said_again import with_pieces_said_again
from grammar.things.rings_claimed import with_rings_claimed
from grammar.things.saying_of import with_sayings_parted
from grammar.things.small_words import with_small_words
from grammar.things.tubes_joined import with_tubes_joined
from grammar.things.turned_lens import with_turned_lens
from grammar.words.tokens import Token


def with_words_told(words: tuple[Token, ...], told: frozenset[str]) -> list[Token]:
    """The words of a line with what they tell of one another in its part.

    `told`: what the cues of the line tell.
    """
    out = with_sayings_parted(list(with_small_words(tuple(with_tubes_joined(without_before(words))))))
    out = with_engraved_ratios(out, told)
    out = with_factors_of_reducers(with_image_behind(with_free_depths(with_bodies_named_behind(out))))
    out = with_factors_in(with_glass_by_index(with_farthest_led(with_focals_named(with_pupils_told(out)))))
    out = with_lens_before_tubes(
        with_taken_lengths(with_holds_counted(with_tubes_on_each(with_lens_behind(with_tubes_counted_off(out)))))
    )
    out = with_rears_told(with_turned_lens(with_barrels_told(with_rings_by_build(with_bodies_by_register(out)))))
    out = with_filters_owned(with_metal_off(with_pieces_of_mounts(with_pieces_said_again(out))))
    out = with_either_tube(with_rings_claimed(with_other_stop(with_native_speeds(out)), told), told)
    spans = with_flange_spans_told(with_subject_from_sensor(with_enough_for(out)), told)
    return with_lens_on_bellows(with_shims_gone(with_ends_told(with_tilts_told(with_spread_told(spans)))))
