import type { PatternWords } from '../../../patterns/words.ts';

/** What pattern pages say. */
export const patterns: PatternWords = {
  pageOf: (page: number, of: number) => `Page ${page} of ${of}`,
  joins: (name: string) => `joins ${name}`,
  at: (x: string, y: string) => `lower left at ${x}, ${y}`,
  square: { mm: '50 mm square: measure me', in: '2 in square: measure me' },
  caution: 'Decoration, not structure: heed the packet’s cautions.',
  bare: 'No page where only the edge is.',
  print: 'Print at 100%, no fitting.',
  ruler: { mm: 'mm', in: 'in' },
  testTitle: 'Printer test page',
  test: (length: string) => [
    'Print this page at 100%, without fitting or scaling, on the paper you will use.',
    `Measure both rulers from the first to the last line. Each should be ${length} long.`,
    'Enter what you read: across in the first field, up in the second. The patterns are then drawn to come out true.',
  ],
  across: (length: string) => `across: ${length}`,
  up: (length: string) => `up: ${length}`,
  mode: {
    trace: 'trace the outlines',
    pounce: 'pounce: prick every dot, tape it up, dab chalk or charcoal through',
    stencil: 'stencil: cut away inside the outlines',
    mirrored: 'mirrored: transfer face down',
    'cut-out': 'cut out the letters',
    printed:
      'printed: trim along the line, tiles at their marks on the left and below, each laid over the one before',
  },
  onOne: (count: number) => `marked 1: on one bridge, handle gently (${count})`,
  holes: 'lay every color on the round holes’ marks',
  tabs: (count: number) =>
    `${count === 1 ? '1 hole' : `${count} holes`} off the board: tape a scrap as thick to its edge there`,
  guide: { baseline: 'baseline', center: 'center' },
  seams: 'long dashes: edges and joints beneath',
  layer: (number: number, of: number, finish: string) => `color ${number} of ${of}: ${finish}`,
  prints: 'Printed signs',
  rule: 'The line at the right is 50 mm (1 31/32 in) long.',
  face: 'Whole face',
  part: (name: string) => `Template: ${name}`,
  more: (count) => `and ${count} more`,
  sticks: 'Story sticks',
  joinSticks: 'Cut the strips apart. Lay each tab under the strip before it, line on line, and tape.',
  strip: {
    x: (number, of) => `Across from the left edge, ${number} of ${of}`,
    y: (number, of) => `Up from the bottom edge, ${number} of ${of}`,
  },
  tab: 'tab',
  edge: {
    low: { x: 'left', y: 'bottom' },
    mid: { x: 'middle', y: 'middle' },
    high: { x: 'right', y: 'top' },
    hole: { x: 'hole', y: 'hole' },
  },
  datum: 'datum: 0 here',
};
