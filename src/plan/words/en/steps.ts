import { UNDER_EDGE } from '../../../lettering/painted.ts';
import { type PlanWords, partNames, type Say } from '../words.ts';

export const list = (items: readonly string[]): string =>
  items.length < 3 ? items.join(' and ') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;

const named = (parts: readonly string[], say: Say): string => list(partNames(parts, say));

export const steps: PlanWords['steps'] = {
  prepare: () =>
    'Secure the stowed bed so that it cannot fall open: latch it and brace it as well. Clear the floor below. Clean and scuff the face so that glue and paint hold; test old paint for lead before you sand.',
  'cut-sheets': (parts, say) => `Cut the sheets in the numbered order: ${named(parts, say)}.`,
  'cut-boards': (parts, say) =>
    `Cut the boards one after another, each from its left end as the board pages show it: ${named(parts, say)}. Label each piece as it leaves the saw.`,
  notch: (parts, say) =>
    `Saw out the notches where pieces are halved into each other: ${named(parts, say)}. Try the depth on two offcuts first: laid crosswise, their faces must come level. Clamp the piece, saw to depth stroke beside stroke, and pare the waste with a chisel.`,
  groove: (parts, say) =>
    `Cut the grooves along the sheets, with a router or a circular saw against a clamped straightedge: ${named(parts, say)}. Measure every groove from the lower edge, never from the one before, and try the depth on an offcut first.`,
  'prime-backs': (parts, say) =>
    `Seal the backs with one coat, and the faces that others will cover; leave bare what will be glued: ${named(parts, say)}.`,
  'mask-glue': (parts, say) =>
    `Draw with the story sticks where parts will be glued onto these, and lay tape ${say.length(UNDER_EDGE)} inside the lines: ${named(parts, say)}. The map of bare areas shows where. What is taped stays bare, since glue holds to wood and not to paint, and shows later where each part goes.`,
  'mask-joints': (parts, say) =>
    `Give these all their coats first, in the color of the joints: ${named(parts, say)}. Once it is dry, lay tape as wide as a joint over every joint, the long level ones first, and cut the short ones between them; press the edges down. The pieces are painted over it in the next step: peel the tape while their paint is still soft.`,
  'paint-before': (parts, say) =>
    `Prime and paint flat on the bench, all but the last coat; with all their coats signs, what has painted shapes on it, and what takes one coat only: ${named(parts, say)}. Leave joints bare that will be glued.`,
  'paint-ground': (parts, say) =>
    `Paint on the bed itself, before anything is fastened there: ${named(parts, say)}. Mask borders that no part will cover, and peel all tape before the paint is hard.`,
  mark: () =>
    'Carry the marks onto the face, over the paint where it is painted, from the two datum edges with the story sticks. Never step from mark to mark.',
  'dry-fit': (parts, say) => `Lay out and tape up without glue, and stand back: ${named(parts, say)}.`,
  fix: (parts, say) => `Glue and fasten: ${named(parts, say)}.`,
  'cut-in-place': (parts, say) =>
    `Lay their neighbors in place dry, hold these against them, mark and cut to fit: ${named(parts, say)}.`,
  assemble: (parts, say) =>
    `Glue to each other and to what they lie on in one go, while the glue is wet, and fasten: ${named(parts, say)}. Of halved pieces, the one notched on its face goes down first.`,
  bend: (parts, say) =>
    `Draw the arc, then bend and fasten: ${named(parts, say)}. Start at one end, press the piece to the line little by little, and fasten or clamp it as you go; the other end stays free until it lies on its mark. Keep your face out of the way: a piece that breaks springs back.`,
  'measure-in-place': (parts, say) => `Hold in place, mark, cut to fit and fasten: ${named(parts, say)}.`,
  letter: (parts, say) =>
    `Tape the patterns together, line them up on the centerlines once the paint beneath is dry, and letter: ${named(parts, say)}.`,
  'paint-around-letters': (parts, say) =>
    `Carry outlines and shades over from the pattern, lined up on the centerlines, and paint them on the sign, a little way under the edge of the letters: ${named(parts, say)}. Let them dry before letters are glued on.`,
  'mount-letters': (parts, say) =>
    `Saw the letters along their outlines, paint their faces, lines inside them and sawn edges, and glue them on over the pattern, lined up on the centerlines: ${named(parts, say)}. Leave bare what will be glued.`,
  'mount-print': (parts, say) =>
    `Print these in color, trim them along the line and glue them on from the middle outward: ${named(parts, say)}. Brush glue thin on the board, and clear coat over the print when it is dry; try both on a scrap, since some inks run. In full sun prints fade within months: keep them in the shade, or use pigment ink under a clear coat that holds back ultraviolet light.`,
  'paint-after': (parts, say) => `Fill the brad holes, mask, and paint in place: ${named(parts, say)}.`,
  'last-coat': (parts, say) =>
    `Fill the brad holes, sand, mask what has another color, and give the last coat: ${named(parts, say)}.`,
  'fit-hardware': (parts, say) =>
    `Mount the hardware, its screws in drilled holes: ${named(parts, say)}. Let heads on the mattress side in flush.`,
  'try-swing': () =>
    'With a helper, and nobody in the way, lower the bed slowly through its whole swing. Listen for rubbing; see that the latch still catches and that the lift still holds the added weight.',
};
