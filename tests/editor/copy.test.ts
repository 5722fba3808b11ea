import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { openDesign } from '../../src/design/open.ts';
import { partsOfRule } from '../../src/design/references.ts';
import { saveDesign } from '../../src/design/save.ts';
import type { Design } from '../../src/design/schema.ts';
import { preview, startState } from '../../src/design/state.ts';
import { clipText, copyOf, editsToPaste, readClip } from '../../src/editor/edit/copy.ts';
import { pngPhoto } from '../lettering/photos.ts';

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

  it('brings photos of its signs into another design, under an id of their own where that is taken', () => {
    const [one, other] = [1, 2].map((shade) => pngPhoto('photo-1', 2, 2, () => [90 * shade, 0, 0]));
    if (!one || !other) throw new Error('no photos');
    const sign = newPart('sign', { id: 'a', name: 'A', box: { x: 0, y: 0, w: 200, h: 100 } });
    const lying = { photo: 'photo-1', fit: 'cover', width: 10, shift: { x: 0, y: 0 } } as const;
    const lettering = { ...sign.lettering, make: 'printed' as const, photos: [lying] };
    const from: Design = { ...newDesign(), parts: [{ ...sign, lettering }], photos: [one] };
    const clip = readClip(clipText(copyOf(from, new Map(), ['a'])));
    if (!clip) throw new Error('no clip');
    const photosAfter = (design: Design) => {
      const after = preview(startState(design), editsToPaste(design, clip, 0, 0).edits);
      const pasted = after.parts.at(-1);
      const ids = pasted?.kind === 'sign' ? pasted.lettering.photos?.map(({ photo }) => photo) : [];
      expect(openDesign(saveDesign(after)).ok).toBe(true);
      return [after.photos, ids];
    };
    expect(photosAfter(newDesign())).toEqual([[one], ['photo-1']]);
    expect(photosAfter({ ...newDesign(), photos: [one] })).toEqual([[one], ['photo-1']]);
    expect(photosAfter({ ...newDesign(), photos: [other] })).toEqual([
      [other, { ...one, id: 'photo-2' }],
      ['photo-2'],
    ]);
  });

  it('carries chosen joints between its parts, and with parts that stay where it still meets them', () => {
    const plain = source();
    const design: Design = {
      ...plain,
      joints: [
        { id: 'j1', parts: ['a', 'b'], kind: 'butt', through: 'b' },
        { id: 'j2', parts: ['b', 'c'], kind: 'half-lap' },
      ],
    };
    const clip = copyOf(design, new Map(), ['pair'], 'here');
    const near = preview(startState(design), editsToPaste(design, clip, 180, 10, { id: 'here' }).edits);
    const [a, b] = near.parts.slice(3).map((p) => p.id);
    expect(near.joints.slice(2).map(({ parts, kind, through }) => [...parts, kind, through])).toEqual([
      [a, b, 'butt', b],
      [b, 'c', 'half-lap', undefined],
    ]);
    // Away from it, or in another design that has a part of that name, only the joint between the two is left.
    const far = preview(startState(design), editsToPaste(design, clip, 900, 10, { id: 'here' }).edits);
    const other = preview(startState(plain), editsToPaste(plain, clip, 180, 10, { id: 'there' }).edits);
    expect(far.joints).toHaveLength(3);
    expect(other.joints).toHaveLength(1);
  });

  it('brings finishes, stocks and fonts into another design, under another id where that is taken', () => {
    const [first] = newDesign().finishes;
    if (!first) throw new Error('a new design has a finish');
    const font = { id: 'mine', name: 'Mine', data: 'AA==' };
    const part = newPart('sign', {
      id: 's',
      name: 'Sign',
      box: { x: 0, y: 0, w: 50, h: 60 },
      finish: 'teal',
    });
    const lettering = { ...part.lettering, font: 'own:mine', finish: first.id };
    const from: Design = {
      ...newDesign(),
      finishes: [
        { ...first, color: '#112233' },
        { ...first, id: 'teal', name: 'Teal' },
      ],
      fonts: [font],
      parts: [{ ...part, lettering }],
    };
    const clip = readClip(clipText(copyOf(from, new Map(), ['s'], 'there')));
    if (!clip) throw new Error('unread');
    const target: Design = { ...newDesign(), finishes: [first] };
    const after = preview(startState(target), editsToPaste(target, clip, 0, 0, { id: 'here' }).edits);
    const pasted = after.parts.at(-1);
    const finish = (id: string | null) => after.finishes.find((f) => f.id === id);
    expect(finish(pasted?.finish ?? null)?.name).toBe('Teal');
    expect(pasted?.kind === 'sign' && finish(pasted.lettering.finish)?.color).toBe('#112233');
    expect(finish(first.id)?.color).toBe(first.color);
    expect(after.fonts).toEqual([font]);
    const opened = openDesign(saveDesign(after));
    expect(opened.ok && opened.repairs).toEqual([]);
    // Pasted once more, nothing is brought a second time but what has to have another id.
    const home = preview(startState(from), editsToPaste(from, clip, 0, 0, { id: 'there' }).edits);
    expect(home.finishes).toEqual(from.finishes);
  });

  it('reads nothing but its own kind of text', () => {
    expect(readClip('hello')).toBeNull();
    expect(readClip('{"showfaceParts": 1}')).toBeNull();
    expect(
      readClip('{"showfaceParts": 1, "parts": [{"id": "x"}], "keepClears": [], "rules": [], "groups": []}'),
    ).toBeNull();
  });
});
