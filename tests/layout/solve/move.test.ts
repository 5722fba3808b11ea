import { describe, expect, it } from 'vitest';
import type { Edge, Rule } from '../../../src/design/schema.ts';
import { whatMoved } from '../../../src/layout/compare.ts';
import { settled } from '../../../src/layout/settle.ts';
import { at, boxOfPart, design, lay, panel, plainFace, strip } from '../sample.ts';

const low = (of: string): Edge => ({ of, side: 'low' });
const high = (of: string): Edge => ({ of, side: 'high' });
const follow: Rule = { id: 'r', kind: 'set', axis: 'x', edge: low('b'), from: high('a'), distance: 10 };

describe('an edit moves as little as possible', () => {
  const parts = [
    panel('a', at(100, 0, 50, 50)),
    panel('b', at(160, 0, 60, 50)),
    panel('c', at(700, 0, 60, 50)),
  ];

  it('what a rule sets follows, what it is set from stays', () => {
    const wider = lay(design(parts, [{ ...follow, distance: 25 }]));
    expect(boxOfPart(wider, 'a').x).toBe(100);
    expect(boxOfPart(wider, 'b')).toEqual(at(175, 0, 60, 50));
  });

  it('the leader takes its followers along', () => {
    const moved = lay(design([{ ...parts[0]!, box: at(220, 0, 50, 50) }, ...parts.slice(1)], [follow]));
    expect(boxOfPart(moved, 'b')).toEqual(at(280, 0, 60, 50));
    expect(boxOfPart(moved, 'c')).toEqual(at(700, 0, 60, 50));
  });

  it('a follower in the hand takes its leader along, and stays there when the hand lets go', () => {
    const dragged = design([parts[0]!, { ...parts[1]!, box: at(400, 0, 60, 50) }, parts[2]!], [follow]);
    const inHand = lay(dragged, { held: new Set(['b']) });
    expect(boxOfPart(inHand, 'b').x).toBe(400);
    expect(boxOfPart(inHand, 'a').x).toBe(340);
    const boxes = new Map(settled(dragged, inHand).map(({ part, box }) => [part, box]));
    expect([...boxes.keys()]).toEqual(['a']);
    const released = design(
      dragged.parts.map((p) => ({ ...p, box: boxes.get(p.id) ?? p.box })),
      [follow],
    );
    expect(lay(released).boxes).toEqual(inHand.boxes);
  });

  it('a locked part stays even in the hand of another', () => {
    const dragged = design(
      [
        { ...parts[0]!, locked: true },
        { ...parts[1]!, box: at(400, 0, 60, 50) },
      ],
      [follow],
    );
    const layout = lay(dragged, { held: new Set(['b']) });
    expect(boxOfPart(layout, 'a').x).toBe(100);
    expect(boxOfPart(layout, 'b').x).toBe(160);
  });

  it('is rather moved than stretched, and stretched where it runs between two that stay', () => {
    const both: Rule[] = [
      follow,
      { id: 's', kind: 'set', axis: 'x', edge: high('b'), from: low('c'), distance: -10 },
    ];
    expect(boxOfPart(lay(design(parts, both)), 'b')).toEqual(at(160, 0, 530, 50));
    expect(boxOfPart(lay(design(parts, both)), 'c').x).toBe(700);
    expect(boxOfPart(lay(design(parts, both.slice(1))), 'b')).toEqual(at(630, 0, 60, 50));
  });

  it('wider stock grows about its center line', () => {
    const layout = lay(design([strip('s', at(100, 0, 40, 500), 'up', 'board')]));
    expect(boxOfPart(layout, 's')).toEqual(at(75, 0, 90, 500));
  });
});

describe('what a change of the bed moves', () => {
  it('names what moved and what was resized, and by how much', () => {
    const parts = [
      panel('a', at(0, 0, 100, 50)),
      panel('b', at(900, 0, 100, 50)),
      panel('c', at(400, 0, 100, 50)),
      panel('m', at(100, 0, 800, 50)),
    ];
    const rules: Rule[] = [
      { id: '1', kind: 'set', axis: 'x', edge: high('b'), from: high('face'), distance: 0 },
      {
        id: '2',
        kind: 'between',
        axis: 'x',
        part: 'm',
        low: high('a'),
        high: low('b'),
        insetLow: 0,
        insetHigh: 0,
      },
    ];
    const before = lay(design(parts, rules));
    const after = lay(design([...parts.slice(0, 2), parts[3]!, panel('n', at(0, 0, 5, 5))], rules), {
      face: plainFace(990),
    });
    expect(whatMoved(before, after)).toEqual([
      {
        part: 'b',
        what: 'moved',
        before: at(900, 0, 100, 50),
        after: at(890, 0, 100, 50),
        by: { x: -10, y: 0 },
        grown: { w: 0, h: 0 },
      },
      {
        part: 'm',
        what: 'resized',
        before: at(100, 0, 800, 50),
        after: at(100, 0, 790, 50),
        by: { x: -5, y: 0 },
        grown: { w: -10, h: 0 },
      },
      {
        part: 'n',
        what: 'added',
        before: null,
        after: at(0, 0, 5, 5),
        by: { x: 0, y: 0 },
        grown: { w: 0, h: 0 },
      },
      {
        part: 'c',
        what: 'gone',
        before: at(400, 0, 100, 50),
        after: null,
        by: { x: 0, y: 0 },
        grown: { w: 0, h: 0 },
      },
    ]);
    expect(whatMoved(before, before)).toEqual([]);
  });
});
