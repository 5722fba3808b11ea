import { checks } from './en/checks.ts';
import { patterns } from './en/patterns.ts';
import { places } from './en/places.ts';
import { rules } from './en/rules.ts';
import { list, steps } from './en/steps.ts';
import type { PlanWords } from './words.ts';

/** American English. */
export const EN: PlanWords = {
  checks,
  rules,
  steps,
  list,
  pieces: (count) => (count === 1 ? '1 piece' : `${count} pieces`),
  shopping: {
    board: 'Boards and moldings',
    sheet: 'Sheets',
    fitting: 'Hardware',
    paint: 'Paint',
    primer: 'Primer',
    brads: 'Brads',
    screws: 'Screws',
    glue: 'Glue',
    tape: 'Masking tape',
    paper: 'Paper',
  },
  spare: (name) => `${name}, spare`,
  places,
  tape: {
    edge: { left: 'upper edge', right: 'lower edge', sawn: 'longest side', overall: 'overall' },
    corner: {
      'long-point': 'long point',
      'short-point': 'short point',
      square: 'square end',
      shoulder: 'shoulder',
      corner: 'corner',
      outermost: 'outermost point',
    },
    along: (edge, from, to) => `${edge}, ${from} to ${to}`,
    onShowFace: (tape) => `${tape}, on the show face`,
    curved: (depth) => `cut this long, then mark the curve from its pattern (${depth} deep)`,
    scribed: (edge, most, where) =>
      `once cut, scribe its ${edge} to the bed: up to ${most} comes off ${where}`,
    scribedAt: {
      start: 'at its left end',
      end: 'at its right end',
      both: 'at both ends',
      from: (start) => `${start} from its left end`,
    },
    bent: (radius) => `cut straight, then bend to a radius of ${radius} inside`,
    read: {
      lead: (measures) => `measured in place: ${measures}`,
      edge: (edge, read, planned) => `${edge} ${read} (planned ${planned})`,
      diagonal: (read) => `diagonal ${read}`,
      follow: (names) => `what follows: ${names}`,
      alone: 'nothing else follows',
    },
  },
  patterns,
};
