import DxfParser from 'dxf-parser';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Design, Lettering } from '../../src/design/schema.ts';
import { union } from '../../src/geometry/clip.ts';
import { ringsOfPath } from '../../src/geometry/curve.ts';
import { areaOf, boxOf, perimeterOf, transformRegion } from '../../src/geometry/region.ts';
import { boxOfPoints, signedArea } from '../../src/geometry/ring.ts';
import { distanceToSegment } from '../../src/geometry/segment.ts';
import type { Point, Ring } from '../../src/geometry/shape.ts';
import { cyclic } from '../../src/list/at.ts';
import { cutListRows } from '../../src/output/csv/cutList.ts';
import { planFiles } from '../../src/output/files.ts';
import { isLetterOf } from '../../src/plan/letters.ts';
import { plan } from '../../src/plan/plan.ts';
import type { Plan } from '../../src/plan/types.ts';
import { type Vertex, walked } from '../output/bows.ts';
import { LETTERS } from '../output/setWith.ts';
import { kiosk, SUPPLIES } from './starters.ts';

const QUICK = { effort: { nodes: 2000 } };

function lettered(changes: Partial<Lettering>): Design {
  const base = kiosk();
  const parts = base.parts.map((p) =>
    p.kind === 'sign' ? { ...p, lettering: { ...p.lettering, ...changes } } : p,
  );
  return { ...base, parts };
}

async function fileOf(p: Plan, name: string): Promise<string> {
  const bytes = await planFiles(p, LETTERS)
    .find((f) => f.name === name)
    ?.make();
  return new TextDecoder().decode(bytes);
}

interface Polyline {
  type: string;
  layer: string;
  shape?: boolean;
  vertices: Vertex[];
}
const entitiesOf = (dxf: string) => (new DxfParser().parseSync(dxf)?.entities ?? []) as unknown as Polyline[];

describe('cut-out letters', () => {
  let painted: Plan;
  let sawn: Plan;
  beforeAll(() => {
    painted = plan(lettered({ make: 'trace' }), SUPPLIES, QUICK);
    sawn = plan(lettered({ make: 'cut-out' }), SUPPLIES, QUICK);
  });
  const letters = () => sawn.joinery.pieces.filter((p) => isLetterOf('sign', p));

  it('are pieces of the sign’s own sheet, one a letter, with true outlines and a kerf to spare all around', () => {
    expect(letters()).toHaveLength(13);
    const { sheetKerf } = sawn.design.shop;
    const sign = sawn.layout.parts.find((p) => p.id === 'sign');
    letters().forEach((piece, i) => {
      const box = boxOfPoints(piece.outline);
      expect(piece.stock).toBe(sign?.stock);
      expect([piece.length, piece.width]).toEqual([box.w, box.h].map((side) => expect.closeTo(side, 9)));
      expect(piece.overall - box.w).toBeCloseTo(2 * sheetKerf, 9);
      const area = [piece.outline, ...piece.holes].reduce((sum, ring) => sum + signedArea(ring), 0);
      expect(area).toBeCloseTo(areaOf(sawn.signs[0]?.cutOuts[i]?.region ?? []), 6);
      expect(piece.z0).toBe(sign?.z1);
    });
  });

  it('bear marks that no other kind of piece has, and stand in the cut list', () => {
    const marks = new Map<string, Set<string>>();
    for (const { label, stock } of sawn.joinery.pieces) {
      marks.set(label, (marks.get(label) ?? new Set()).add(stock));
    }
    expect([...marks.values()].every((stocks) => stocks.size === 1)).toBe(true);
    // HARBOR TICKETS has R and T twice: eleven kinds.
    expect(new Set(letters().map((p) => p.label)).size).toBe(11);
    const listed = cutListRows(sawn).map((row) => row[2]);
    expect(listed).toContain(`${sawn.layout.parts.find((p) => p.id === 'sign')?.name} H`);
  });

  it('are laid on sheets once each, as whole blanks', () => {
    const placed = sawn.cutting.sheets.flatMap((s) => s.placements);
    for (const piece of letters()) {
      const own = placed.filter((p) => p.piece === piece.id);
      expect(own).toHaveLength(1);
      const sides = [own[0]?.w ?? 0, own[0]?.h ?? 0].sort((a, b) => a - b);
      const kerf = sawn.design.shop.sheetKerf;
      const want = [piece.length + 2 * kerf, piece.width + 2 * kerf].sort((a, b) => a - b);
      expect(sides).toEqual(want.map((side) => expect.closeTo(side, 6)));
    }
  });

  it('weigh area times thickness times density, and take half their outlines in beads of glue', () => {
    const stock = sawn.stocks.get(letters()[0]?.stock ?? '');
    const density = sawn.tables.materials.find((m) => m.id === stock?.material)?.density ?? Number.NaN;
    const area = letters().reduce((sum, p) => sum + areaOf(p.placed), 0);
    const byPart = (p: Plan) =>
      p.load.byPart.filter((l) => l.part === 'sign').reduce((sum, l) => sum + l.mass, 0);
    // What the paint on their edges adds, 0.75 kg a liter when dry, as the load room tells.
    const wet = (p: Plan) => p.finish.onParts.find((one) => one.part === 'sign')?.liters ?? Number.NaN;
    const wood = (area * (stock?.thickness ?? 0) * density) / 1e9;
    expect(wet(sawn)).toBeGreaterThan(wet(painted));
    expect(byPart(sawn) - byPart(painted)).toBeCloseTo(wood + 0.75 * (wet(sawn) - wet(painted)), 6);
    expect(sawn.fastening.glue).toBeGreaterThan(painted.fastening.glue);
    const stands = Math.max(...sawn.joinery.pieces.map((p) => p.z1));
    expect(stands).toBeGreaterThanOrEqual(letters()[0]?.z1 ?? Number.NaN);
  });

  it('are painted on their sawn edges: perimeter times thickness', () => {
    const color = (p: Plan) => {
      const part = p.layout.parts.find((one) => one.id === 'sign');
      const finish = part?.kind === 'sign' ? part.lettering.finish : '';
      return p.finish.uses.find((use) => use.finish === finish);
    };
    const walls = letters().reduce((sum, p) => sum + perimeterOf(p.placed) * p.thickness, 0);
    expect((color(sawn)?.edge ?? 0) - (color(painted)?.edge ?? 0)).toBeCloseTo(walls / 1e6, 7);
    expect(color(sawn)?.face).toBeCloseTo(color(painted)?.face ?? Number.NaN, 7);
    const acts = (p: Plan) => p.marks.steps.map((step) => step.act);
    expect(acts(sawn)).toContain('mount-letters');
    expect(acts(sawn)).not.toContain('letter');
    expect(acts(painted)).not.toContain('mount-letters');
  });

  it('may be of another sheet, which is bought then; what is no sheet is told', () => {
    const sheets = [...SUPPLIES.tables.stocks].filter((s) => s.form === 'sheet' && s.sizes.length > 0);
    const other = sheets.find((s) => !painted.joinery.pieces.some((p) => p.stock === s.id));
    const p = plan(lettered({ make: 'cut-out', stock: other?.id ?? '' }), SUPPLIES, QUICK);
    expect(p.shopping.some((l) => l.kind === 'sheet' && l.item === other?.id)).toBe(true);
    const wrong = plan(lettered({ make: 'cut-out', stock: 'pine-1x2' }), SUPPLIES, QUICK);
    expect(wrong.checks).toContainEqual({
      code: 'part.unknown-stock',
      severity: 'error',
      parts: ['sign'],
      figures: { stock: 'pine-1x2' },
    });
  });

  it('go to the machine as closed paths alone, the very letters unmirrored, nested without a touch', async () => {
    const dxf = await fileOf(sawn, 'sign-sign-mm.dxf');
    const found = entitiesOf(dxf);
    expect(new Set(found.map((e) => `${e.type} ${e.layer} ${e.shape}`))).toEqual(
      new Set(['POLYLINE CUT true']),
    );
    expect(dxf).toContain('other curves are polylines within 0.05 mm.');
    const rings = found.map((e) => walked(e.vertices));
    const outer = rings.filter((ring) => signedArea(ring) > 0);
    expect(outer).toHaveLength(13);
    const net = rings.reduce((sum, ring) => sum + signedArea(ring), 0);
    const ink = letters().reduce((sum, p) => sum + areaOf(p.placed), 0);
    // The file writes places to a tenth of a micrometer.
    expect(Math.abs(net - ink)).toBeLessThan(1);
    expect(areaOf(union(outer.map((ring) => [{ outer: ring, holes: [] }])))).toBeCloseTo(
      outer.reduce((sum, ring) => sum + signedArea(ring), 0),
      1,
    );
    const kerf = sawn.design.shop.sheetKerf;
    outer.forEach((a, i) => {
      for (const b of outer.slice(i + 1)) {
        const [p, q] = [boxOfPoints(a), boxOfPoints(b)];
        const apart = Math.max(q.x - p.x - p.w, p.x - q.x - q.w, q.y - p.y - p.h, p.y - q.y - q.h);
        expect(apart).toBeGreaterThan(3 * kerf - 0.001);
      }
    });
    // A letter laid over its nested twin, turned or not, covers it: mirrored ones would not.
    const first = letters()[2];
    const want = boxOf(first?.placed ?? []);
    const place = sawn.cutting.sheets.flatMap((s) => s.placements).find((p) => p.piece === first?.id);
    const ring = outer.find((r) => {
      const box = boxOfPoints(r);
      return place && Math.abs(box.x - place.x - kerf) < 0.01 && Math.abs(box.y - place.y - kerf) < 0.01;
    });
    const box = boxOfPoints(ring ?? []);
    const back = transformRegion([{ outer: ring ?? [], holes: [] }], (p) =>
      place?.turned
        ? { x: (want?.x ?? 0) + p.y - box.y, y: (want?.y ?? 0) + box.x + box.w - p.x }
        : { x: (want?.x ?? 0) + p.x - box.x, y: (want?.y ?? 0) + p.y - box.y },
    );
    const solid = (first?.placed ?? []).map(({ outer: o }) => ({ outer: o, holes: [] }));
    expect(areaOf(union([back, solid])) - areaOf(solid)).toBeLessThan(1);
  });

  it('show the sheet around them on a layer of its own in the SVG', async () => {
    const svg = await fileOf(sawn, 'sign-sign.svg');
    expect(svg).toContain('data-layer="GUIDES"');
    expect(svg).toContain('data-layer="CUT"');
    expect(svg).toContain('other curves polylines within 0.05 mm');
    const cut = svg.slice(svg.indexOf('data-layer="CUT"'));
    for (const [, d] of cut.matchAll(/ d="([^"]*)"/g)) expect(d).toMatch(/^M[^M]*Z$/);
  });
});

describe('stencils for a machine', () => {
  it('are closed paths alone: openings to cut, and the sheet’s edge by itself', async () => {
    const p = plan(lettered({ make: 'stencil' }), SUPPLIES, QUICK);
    const found = entitiesOf(await fileOf(p, 'sign-sign-mm.dxf'));
    const sheet = p.signs[0]?.stencils?.layers[0]?.stencil.sheet ?? [];
    expect(found.every((e) => e.type === 'POLYLINE' && e.shape)).toBe(true);
    expect(found.filter((e) => e.layer.startsWith('CUT_'))).toHaveLength(
      sheet.flatMap((s) => s.holes).length,
    );
    expect(found.filter((e) => e.layer.startsWith('EDGE_'))).toHaveLength(1);
    expect(found.some((e) => e.layer === 'GUIDES')).toBe(false);
  });

  const farthest = (points: readonly Point[], rings: readonly Ring[]) =>
    Math.max(
      ...points.map((p) =>
        Math.min(
          ...rings.flatMap((ring) => ring.map((a, i) => distanceToSegment(p, a, cyclic(ring, i + 1)))),
        ),
      ),
    );

  it('keep each color on a layer of its own, with its registration holes as arcs and the edge of its sheet', async () => {
    const colors = kiosk().finishes.slice(0, 3);
    const [under, around, letters] = colors.map(({ id }) => id);
    if (!under || !around || !letters) throw new Error('three finishes');
    const p = plan(
      lettered({
        make: 'stencil',
        finish: letters,
        outline: { width: 3, finish: around },
        shade: { kind: 'block', angle: -45, distance: 6, finish: under },
      }),
      SUPPLIES,
      QUICK,
    );
    const set = p.signs[0]?.stencils;
    if (!set) throw new Error('stencils');
    const found = entitiesOf(await fileOf(p, 'sign-sign-mm.dxf'));
    const layerOf = (word: string, finish: string) => {
      const name = colors.find(({ id }) => id === finish)?.name ?? '';
      return `${word}_${name.toUpperCase().replaceAll(' ', '_')}`;
    };
    expect(new Set(found.map((e) => e.layer))).toEqual(
      new Set(set.layers.flatMap(({ finish }) => [layerOf('CUT', finish), layerOf('EDGE', finish)])),
    );
    const radius = boxOfPoints(set.holes[0]?.outer ?? []).w / 2;
    for (const { finish, stencil } of set.layers) {
      const own = found.filter((e) => e.layer === layerOf('CUT', finish));
      const [edge, ...more] = found.filter((e) => e.layer === layerOf('EDGE', finish));
      expect(more).toEqual([]);
      const cut = own.map((e) => Math.abs(signedArea(walked(e.vertices)))).reduce((a, b) => a + b, 0);
      const sheet = Math.abs(signedArea(walked(edge?.vertices ?? [])));
      // Chords of the plan stray by 0.05 mm from circles that the file has as arcs.
      expect(Math.abs(sheet - cut - areaOf(stencil.sheet))).toBeLessThan(4 * 2 * Math.PI * radius * 0.05);
      // Where the four pins go: circles by two or three arcs, equally placed in the sheet of every color.
      const round = own.filter((e) => e.vertices.every(({ bulge }) => (bulge ?? 0) !== 0));
      expect(round).toHaveLength(4);
      const corner = boxOfPoints(edge?.vertices ?? []);
      for (const [i, e] of round.entries()) {
        const outline = walked(e.vertices, 500);
        expect(Math.abs(signedArea(outline))).toBeCloseTo(Math.PI * radius ** 2, 2);
        const hole = boxOfPoints(set.holes[i]?.outer ?? []);
        expect(boxOfPoints(outline).x - corner.x).toBeCloseTo(hole.x - set.sheet.x, 1);
        expect(boxOfPoints(outline).y - corner.y).toBeCloseTo(hole.y - set.sheet.y, 1);
      }
    }
    // An SVG file tells them apart by the color of their lines too.
    const svg = await fileOf(p, 'sign-sign.svg');
    const strokes = set.layers.map(({ finish }) => {
      const name = colors.find(({ id }) => id === finish)?.name;
      return / stroke="([^"]*)"/.exec(svg.slice(svg.indexOf(`data-layer="CUT ${name}"`)))?.[1];
    });
    expect(new Set(strokes).size).toBe(3);
  });

  it('are as near to the true outlines of the font as both files say', async () => {
    // None of these letters has an island, so that no bar stands in their way.
    const p = plan(lettered({ make: 'stencil', lines: [{ text: 'SUCH' }] }), SUPPLIES, QUICK);
    const [sign] = p.signs;
    const dxf = await fileOf(p, 'sign-sign-mm.dxf');
    const told = /^999\nArcs are arcs; other curves are polylines within ([\d.]+) mm\.$/m.exec(dxf)?.[1];
    expect(await fileOf(p, 'sign-sign.svg')).toContain(
      `arcs are arcs, other curves polylines within ${told} mm`,
    );
    const { x, y } = sign?.stencils?.sheet ?? { x: 0, y: 0 };
    const truth = (sign?.lettered.glyphs ?? []).flatMap(({ path }) =>
      ringsOfPath(path, 0.001).map((ring) => ring.map((q) => ({ x: q.x - x, y: q.y - y }))),
    );
    const cut = entitiesOf(dxf).flatMap((e) => (e.layer.startsWith('CUT_') ? [walked(e.vertices)] : []));
    expect(cut).toHaveLength(4);
    expect(truth).toHaveLength(4);
    expect(farthest(truth.flat(), cut)).toBeLessThan(Number(told) + 0.001);
    expect(farthest(cut.flat(), truth)).toBeLessThan(Number(told) + 0.001);
  });
});
