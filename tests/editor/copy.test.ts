import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { openDesign, saveDesign } from '../../src/design/open.ts';
import { partsOfRule } from '../../src/design/references.ts';
import type { Design } from '../../src/design/schema.ts';
import { preview, startState } from '../../src/design/state.ts';
import { clipText, copyOf, editsToPaste, readClip } from '../../src/editor/action/copy.ts';

function source(): Design {
  const part = (id: string, x: number) =>
    newPart('panel', { id, name: id.toUpperCase(), box: { x, y: 0, w: 50, h: 60 } });
  return {
    ...newDesign(),
    parts: [part('a', 0), { ...part('b', 100), on: 'a' }, part('c', 300)],
    groups: [{ id: 'pair', name: 'Pair', parts: ['a', 'b'] }],
    rules: [
      { id: 'in', kind: 'same', axis: 'x', parts: ['a', 'b'] },
      { id: 'out', kind: 'same', axis: 'x', parts: ['b', 'c'] },
    ],
  };
}

describe('copy and paste', () => {
  it('takes along the rules and groups that are wholly among what is copied, and no others', () => {
    const clip = copyOf(source(), new Map(), ['pair']);
    expect(clip.parts.map((p) => p.id)).toEqual(['a', 'b']);
    expect(clip.rules.map((r) => r.id)).toEqual(['in']);
    expect(clip.groups.map((g) => g.id)).toEqual(['pair']);
  });

  it('gives everything new ids that hang together as the old ones did, moved by the offset', () => {
    const design = source();
    const clip = readClip(clipText(copyOf(design, new Map(), ['pair'])));
    expect(clip).not.toBeNull();
    if (!clip) return;
    const { edits, ids } = editsToPaste(design, clip, 10, -20);
    const after = preview(startState(design), edits);
    expect(after.parts).toHaveLength(5);
    const [a, b] = after.parts.slice(3);
    expect(a?.box).toEqual({ x: 10, y: -20, w: 50, h: 60 });
    expect(b?.on).toBe(a?.id);
    const rule = after.rules.at(-1);
    expect(rule && partsOfRule(rule)).toEqual([a?.id, b?.id]);
    expect(after.groups.at(-1)?.parts).toEqual([a?.id, b?.id]);
    expect(ids).toEqual([after.groups.at(-1)?.id]);
    const opened = openDesign(saveDesign(after));
    expect(opened.ok && opened.repairs).toEqual([]);
  });

  it('reads nothing but its own kind of text', () => {
    expect(readClip('hello')).toBeNull();
    expect(readClip('{"showfaceParts": 1}')).toBeNull();
    expect(
      readClip('{"showfaceParts": 1, "parts": [{"id": "x"}], "keepClears": [], "rules": [], "groups": []}'),
    ).toBeNull();
  });
});
