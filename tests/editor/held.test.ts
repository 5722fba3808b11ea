import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newDesign } from '../../src/design/defaults.ts';
import type { Touch } from '../../src/editor/gesture/gesture.ts';
import { Held } from '../../src/editor/gesture/held.ts';
import { createEditorStore } from '../../src/editor/state/store.ts';

const touch = (x: number, y: number): Touch => ({
  px: { x, y },
  face: { x, y: -y },
  shift: false,
  free: false,
  touch: false,
});

function held() {
  const told: string[] = [];
  const gesture = {
    move: ({ px }: Touch) => told.push(`move ${px.x},${px.y}`),
    end: () => told.push('end'),
    cancel: () => told.push('cancel'),
    typed: (mm: number) => told.push(`typed ${mm}`),
  };
  const store = createEditorStore(newDesign(), 'light');
  return { told, held: new Held(store, gesture, touch(0, 0)) };
}

const key = (name: string) =>
  ({ key: name, preventDefault: () => {}, stopPropagation: () => {} }) as unknown as KeyboardEvent;

describe('a gesture in hand', () => {
  it('ends where it was let go, whatever moves the page was told of', () => {
    const at = fc.tuple(fc.integer({ min: -500, max: 500 }), fc.integer({ min: -500, max: 500 }));
    fc.assert(
      fc.property(fc.array(at, { maxLength: 6 }), at, (moves, [x, y]) => {
        const { told, held: one } = held();
        for (const [mx, my] of moves) one.move(touch(mx, my));
        one.end(touch(x, y));
        const places = told.filter((line) => line.startsWith('move'));
        const last = places.at(-1) ?? 'move 0,0';
        expect(last).toBe(`move ${x},${y}`);
        expect(told.at(-1)).toBe('end');
      }),
    );
  });

  it('is a click where nothing moved', () => {
    const { told, held: one } = held();
    one.end(touch(0, 0));
    expect(told).toEqual(['end']);
  });

  it('takes a typed measure instead of the pointer, and Enter ends it', () => {
    const { told, held: one } = held();
    one.move(touch(30, 0));
    expect(one.key(key('2'))).toBe(false);
    one.move(touch(60, 0));
    one.key(key('5'));
    one.key(key('Backspace'));
    expect(one.key(key('Enter'))).toBe(true);
    expect(told).toEqual(['move 30,0', 'typed 50.8', 'typed 635', 'typed 50.8', 'end']);
  });

  it('leaves no trace after Escape, and lets other keys pass', () => {
    const { told, held: one } = held();
    one.move(touch(30, 0));
    expect(one.key(key('Tab'))).toBe(false);
    expect(one.key(key('Escape'))).toBe(true);
    expect(told).toEqual(['move 30,0', 'cancel']);
  });
});
