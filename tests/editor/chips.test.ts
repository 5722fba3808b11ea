import fc from 'fast-check';
import { expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { type Chip, chipBox, gripOf, keptClear, placeChips } from '../../src/editor/canvas/chips.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { dimensionOnScreen } from '../../src/editor/drawing/dimensions.ts';
import { sceneOf } from '../../src/editor/drawing/scene.ts';
import { toScreen } from '../../src/editor/state/store.ts';
import '../../src/editor/words/deskWords.ts';
import type { Box } from '../../src/geometry/shape.ts';
import { runs } from '../runs.ts';

const meet = (a: Box, b: Box) =>
  Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x) > 1e-9 &&
  Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y) > 1e-9;
const middle = ({ from, to }: Chip) => ({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });

it('figures stay in the middle of their lines where nothing is, and keep clear of few lines and a thin part', () => {
  const place = fc.integer({ min: 0, max: 600 });
  const chip = fc.record({ x: place, y: place, long: fc.integer({ min: 20, max: 200 }), up: fc.boolean() });
  fc.assert(
    fc.property(fc.array(chip, { minLength: 1, maxLength: 4 }), place, place, (lines, x, y) => {
      const chips = lines.map(
        (line): Chip => ({
          from: line,
          to: line.up ? { x: line.x, y: line.y + line.long } : { x: line.x + line.long, y: line.y },
          axis: line.up ? 'y' : 'x',
          text: '24 1/2"',
          fixed: false,
        }),
      );
      const thin = { x, y, w: 18, h: 300 };
      const found = placeChips(chips, [thin]);
      const boxes = found.map((at) => chipBox('24 1/2"', at));
      boxes.forEach((box, i) => {
        expect(meet(box, thin)).toBe(false);
        expect(boxes.filter((other, j) => i !== j && meet(box, other))).toEqual([]);
      });
      const own = chips.map((one) => chipBox(one.text, middle(one)));
      if (own.every((a, i) => !meet(a, thin) && own.every((b, j) => i === j || !meet(a, b))))
        expect(found).toEqual(chips.map(middle));
    }),
    { numRuns: runs(300) },
  );
});

it('the dimension of the face stays where it is, and the others keep clear of it', () => {
  const line = { from: { x: 0, y: 50 }, to: { x: 100, y: 50 }, axis: 'x', text: '41 1/2"' } as const;
  const [own, face] = placeChips(
    [
      { ...line, fixed: false },
      { ...line, fixed: true },
    ],
    [],
  );
  expect(face).toEqual({ x: 50, y: 50 });
  expect(own && face && meet(chipBox(line.text, own), chipBox(line.text, face))).toBe(false);
});

it('figures of an opening leave its handles free for a finger, on a narrow screen too', () => {
  const share = fc.double({ min: 0.1, max: 0.3, noNaN: true });
  const rooms = fc.record({ left: share, right: share, bottom: share, top: share });
  const form = fc.constantFrom({ form: 'rectangle' }, { form: 'arched', rise: 90 }, {
    form: 'round',
  } as const);
  fc.assert(
    fc.property(rooms, form, fc.double({ min: 0.19, max: 1, noNaN: true }), (room, shape, scale) => {
      // A face 41 1/2 in wide is drawn 204 pixels wide on a page of 390, at 0.19 px for each mm.
      const box = { x: 200, y: 400, w: 650, h: 1000 };
      const margin = {
        ...{ left: room.left * box.w, right: room.right * box.w },
        ...{ bottom: room.bottom * box.h, top: room.top * box.h },
      };
      const panel = newPart('panel', { id: 'board', name: 'Board', box });
      const shown = shownFrom({
        ...newDesign(),
        parts: [{ ...panel, openings: [{ id: 'window', shape, margin }] }],
      });
      const view = { scale, x: 80, y: 2100 * scale };
      const none = { corner: null, member: null, carrying: false };
      const scene = sceneOf(shown, { ...none, selection: ['board'], opening: 'window', view });
      expect(scene.handles.length).toBeGreaterThanOrEqual(8);
      const chips = scene.dimensions.map((d): Chip => {
        const { from, to } = dimensionOnScreen(d, (p) => toScreen(view, p));
        return { from, to, axis: d.axis, text: '24 11/16"', fixed: false };
      });
      const kept = keptClear(shown.layout, new Set(['board']), scene.handles, view);
      const figures = placeChips(chips, kept).map((at) => chipBox('24 11/16"', at));
      expect(figures).toHaveLength(6);
      for (const { px } of scene.handles)
        expect(figures.filter((figure) => meet(figure, gripOf(px)))).toEqual([]);
    }),
    { numRuns: runs(200) },
  );
});

it('figures and lines of a sign keep off the corners that its words run along, on a narrow screen too', () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  const box = fc.record({
    x: fc.double({ min: 0, max: 300, noNaN: true }),
    y: fc.double({ min: 800, max: 900, noNaN: true }),
    right: fc.double({ min: 850, max: 950, noNaN: true }),
    h: fc.double({ min: 200, max: 400, noNaN: true }),
  });
  const path = fc.array(fc.record({ u: share, v: share }), { minLength: 4, maxLength: 6 });
  fc.assert(
    fc.property(box, path, fc.double({ min: 0.19, max: 0.4, noNaN: true }), (at, way, scale) => {
      // It reaches near the face's own height, so that its height has to go elsewhere.
      const sign = newPart('sign', { id: 'sign', name: 'Sign', box: { ...at, w: at.right - at.x } });
      const lettering = { ...sign.lettering, along: 'path' as const, path: way };
      const shown = shownFrom({ ...newDesign(), parts: [{ ...sign, lettering }] });
      const view = { scale, x: 80, y: 2100 * scale };
      const none = { corner: null, opening: null, member: null, carrying: false };
      const scene = sceneOf(shown, { ...none, selection: ['sign'], view });
      const chips = scene.dimensions.map((d): Chip => {
        const { from, to } = dimensionOnScreen(d, (p) => toScreen(view, p));
        return { from, to, axis: d.axis, text: '24 11/16"', fixed: false };
      });
      const kept = keptClear(shown.layout, new Set(['sign']), scene.handles, view);
      const figures = placeChips(chips, kept).map((middleOf) => chipBox('24 11/16"', middleOf));
      expect(figures).toHaveLength(2);
      const corners = scene.handles.filter(({ act }) => act.kind !== 'resize');
      expect(corners.length).toBeGreaterThanOrEqual(way.length);
      for (const { px } of scene.handles)
        expect(figures.filter((figure) => meet(figure, gripOf(px)))).toEqual([]);
      // Lines are as thin as a hair: what they must not do is run through a corner.
      for (const { px } of corners)
        for (const { from, to, axis } of chips)
          expect(axis === 'y' && Math.abs(from.x - px.x) < 9 && (from.y - px.y) * (to.y - px.y) < 0).toBe(
            false,
          );
    }),
    { numRuns: runs(200) },
  );
});
