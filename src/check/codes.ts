/**
 * Every kind of check there is. The wording of each stands in `plan/words/`; both tables are typed by
 * this list, so a code without words does not compile. Figures each code carries are named beside it.
 */
export const CHECK_CODES = [
  // layout
  'part.off-face', // over_mm
  'part.unsupported', // share (0..1 of the underside that lies on something), need
  'part.overlap', // area_m2
  'part.keep-clear', // keep_clear (id), reason, over_mm
  'part.no-size', // width_mm, height_mm
  'part.measures-eased', // of its outline, an opening or its path: why (most, least: of one measure; together), asked_mm, fits_mm
  'part.unknown-stock', // stock
  'part.unknown-finish', // finish
  'part.unknown-support', // on
  'part.support-cycle', // parts in the cycle
  'part.ripped', // lies (up, across), from_mm, to_mm (its widths at the lower or left end and at the other), stock_mm
  'end.not-met', // at (what it is to stop at), why (nowhere, part: of its width, arc: sawn or bent in one, unknown; around: unknown to the pieces of a fill), count (ends)
  'rule.impossible', // rule, fights (ids of the rules it fights, with spaces between)
  'rule.unknown-part', // rule, part
  'rule.gap-negative', // rule, gap_mm
  'rule.gap-over-most', // rule, gap_mm, most_mm
  'array.count', // count, room_mm
  'run.no-room', // radius_mm (of its tightest arc), across_mm (of its stock)
  'run.head-not-flush', // head_mm, stock_mm (thickness of each)
  'run.bent-tight', // radius_mm (of the inner edge), across_mm (thickness that is bent), most_mm (that bends so far)
  'fill.between-stiles', // out_mm (of the face), tilt_deg
  'fill.starter', // thick_mm (of its boards)
  'fill.uncovered', // width_mm (of the battens), need_mm, gap_mm, lap_mm
  // bed
  'bed.no-room', // what, size_mm
  'bed.legs', // legs_mm, needed_mm
  'bed.not-closing', // of (rim, field), reading, read_mm, would_mm
  'bed.out-of-square', // of, longer_mm (the diagonal from the lower left; less than 0: the one from the upper left)
  'bed.bowed', // of, bow_mm (both upright edges together; less than 0: in)
  'bed.edge', // of, edge (bottom, right, top, left), first_mm, middle_mm, last_mm (those that were read; less than 0: in), shows_mm (half way beside a square layout; less than 0: hangs over)
  'bed.datum', // axis, low_mm, high_mm (in from the edge at both ends; less than 0: beyond it)
  'bed.corner', // corner, across_mm, up_mm (less than 0: hangs over)
  // joinery and cutting
  'joint.overlap', // area_m2
  'joint.not-made', // kind, why (see joinery/chosen.ts), count (places)
  'joint.stops', // count (ends), beyond_mm (the most that is left out)
  'joint.over-saw', // miter_deg, most_deg
  'joint.bevel-over-saw', // bevel_deg, most_deg
  'piece.nothing-left', // length_mm, left_deg, left_with, right_deg, right_with
  'piece.too-long', // piece, length_mm, longest_mm
  'piece.too-big', // piece, width_mm, height_mm
  'piece.too-short', // length_mm
  'piece.not-as-read', //
  'piece.measured-in-place', // length_mm
  'cutting.not-proved', // stock, used, lower_bound, cost, lower_cost
  // lettering and patterns
  'lettering.missing-glyph', // sign, characters
  'lettering.unknown-font', // font
  'lettering.off-sign', // over_mm, by (edge: past the board; face: past the face; cover: under what lies on it; outline, path: longer than what it runs along)
  'lettering.crosses', // characters, by (edge, joint), step_mm, make
  'lettering.no-room', // lack_mm (over what there is), margin_mm
  'lettering.corner', // characters, turn_deg (the most)
  'lettering.photo', // photo (its name), why (unknown, damaged, kind, too-many-pixels; off: beside the board; not-printed)
  'lettering.photo-coarse', // photo, dpi, least
  'lettering.script', // sign, characters, why: rules | unloaded
  'lettering.low-contrast', // ratio
  'stencil.loose-island', // count
  'stencil.thin-tongue', // width_mm
  'stencil.one-bridge', // count, asked
  'stencil.letter-lost', // characters
  'stencil.placed-lost', // count
  'patterns.too-many-pages', // pages
  'patterns.no-room', // paper
  'patterns.unknown-paper', // paper
  'patterns.no-margin', // least_mm
  // finish
  'finish.no-containers', // finish
  'finish.primer-hides', // finish
  // fold, load, fastening
  'fold.hits-floor', // over_mm, angle_deg, what, thinner_mm and shorter_mm where they would do
  'fold.hits-wall', // over_mm, angle_deg, what, thinner_mm and shorter_mm where they would do; what is wall or wall-board
  'fold.hits-ceiling', // over_mm, angle_deg, what, thinner_mm and shorter_mm where they would do
  'fold.hits-legs', // over_mm
  'fold.hits-side', // over_mm, side
  'fold.tight', // clear_mm, angle_deg, what (floor, wall, wall-board, ceiling)
  'load.heavy', // added_kg, limit_kg
  'load.lift', // lift_n, limit_n
  'load.no-density', // stock
  'fastening.through', // length_mm, room_mm, fastener (brad or screw)
  'fastening.no-brad', // room_mm, need_mm, fastener (brad or screw)
  'fastening.nothing-solid', //
  'fastening.few', // count (0 or 1), fastener (brad or screw)
  'fastening.loose-edge', // length_mm
  'fastening.screws', // mass_kg
  'fastening.lever', // mass_kg, out_mm, base_mm
  'fastening.unknown', // fastener (brad or screw), id
  // order of work
  'order.circle', // why (cope, or between: joined over and under others), between (their ids, with spaces)
  // size limits
  'limit.parts', // count, most
  'limit.rules', // count, most
  'limit.letters', // count, most
] as const;

export type CheckCode = (typeof CHECK_CODES)[number];
