import { panelsNear, spread } from '../../../src/layout/rule/spacing.ts';
import { printed, type Row, type Section } from '../table.ts';

const gap = (span: number, size: number, count: number): number =>
  spread(span, size, { mode: 'gaps', count }).gap;

function rows(): Row[] {
  const katz = 'G. Katz, “Wainscoting layout”, garymkatz.com';
  const wrong = gap(75, 2, 15);
  return [
    {
      check: '13 members of 1 1/2 in 72 in: gap',
      source: 'ehow.com/how_6210555',
      expected: 3.75,
      found: gap(72, 1.5, 13),
    },
    {
      check: '10 members of 1 1/2 in 52 in: gap',
      source: 'ironfurnit.blogspot.com 2011-11 (last division computed)',
      expected: 3.3636,
      found: gap(52, 1.5, 10),
      tolerance: printed(4),
    },
    {
      check: 'wall of 96 in, stiles of 3, panels near 10: panels',
      source: katz,
      expected: 7,
      found: panelsNear(96, 3, 10),
    },
    {
      check: 'the same with 8 stiles: panel, in',
      source: `${katz} (last figure computed)`,
      expected: 10.2857,
      found: spread(96, 3, { mode: 'flush', count: 8 }).gap,
      tolerance: printed(4),
    },
    {
      check: '15 members of 2 in 75 in: gap',
      source: '(75 - 30)/16, worked by hand',
      expected: 2.8125,
      found: wrong,
    },
    {
      check: 'the same, which a page prints as 3: is that so?',
      source: 'ehow.co.uk/how_5806309, a published wrong answer',
      expected: 'wrong',
      found: Math.abs(wrong - 3) < printed(1) ? 'right' : 'wrong',
    },
  ];
}

export const division: Section = { number: 12, title: 'Even division', rows };
