import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newPart } from '../../src/design/defaults.ts';
import { applyEdit, type Edit } from '../../src/design/edit/edit.ts';
import type { Design } from '../../src/design/schema.ts';
import { planJson } from '../../src/output/json/planJson.ts';
import { createPlanner, type PlanOptions, plan } from '../../src/plan/plan.ts';
import type { Plan } from '../../src/plan/types.ts';
import { EN } from '../../src/plan/words/en.ts';
import { sayFor } from '../../src/plan/words/say.ts';
import { checkMessage, stepSentence } from '../../src/plan/words/words.ts';
import { runs } from '../runs.ts';
import { kiosk, planOf, STARTERS, SUPPLIES, starter } from './starters.ts';

/** Few search steps: these tests ask whether plans agree, not how good the cutting is. */
const QUICK: PlanOptions = { effort: { nodes: 2000 } };

function json(p: Plan): string {
  const say = sayFor(p);
  return planJson(p, {
    check: (c) => checkMessage(c, EN, say),
    step: (s) => stepSentence(s, EN, say),
  });
}

describe('the starters', () => {
  it.each(STARTERS)('%s plans without an error or a warning', (name) => {
    const p = planOf(name);
    expect(p.checks.filter((c) => c.severity !== 'note')).toEqual([]);
    expect(p.layout.rules.every((r) => r.holds)).toBe(true);
    const makes = new Map(
      p.layout.parts.flatMap((part) => ('lettering' in part ? [[part.id, part.lettering.make]] : [])),
    );
    const stenciled = p.signs.filter(({ id }) => makes.get(id) === 'stencil');
    expect(stenciled.every((s) => s.stencils?.layers.every((l) => l.stencil.loose === 0))).toBe(true);
  });

  it('the kiosk needs no explanation at all: not even a note', () => {
    expect(planOf('harbor-ticket-kiosk').checks).toEqual([]);
  });

  it.each(STARTERS)('%s follows a bed that turned out 3/8 in narrower and 1/4 in longer', (name) => {
    const d = starter(name);
    const bed = {
      ...d.bed,
      mattress: {
        ...d.bed.mattress,
        width: d.bed.mattress.width - 9.525,
        length: d.bed.mattress.length + 6.35,
      },
    };
    const p = plan({ ...d, bed }, SUPPLIES, QUICK);
    expect(p.layout.rules.every((r) => r.holds)).toBe(true);
    expect(p.checks.filter((c) => c.severity === 'error')).toEqual([]);
  });
});

describe('a plan', () => {
  it('is the same byte for byte every time', () => {
    expect(json(plan(kiosk(), SUPPLIES, QUICK))).toBe(json(plan(structuredClone(kiosk()), SUPPLIES, QUICK)));
  });

  it('holds every field of the contract', () => {
    const data = JSON.parse(json(planOf('harbor-ticket-kiosk'))) as Record<string, never>;
    const keys: Record<string, readonly string[]> = {
      parts: ['id', 'name', 'kind', 'outline_mm', 'z_mm'],
      pieces: [
        'id',
        'part',
        'label',
        'stock',
        'length_mm',
        'measured',
        'edges_mm',
        'overall_mm',
        'outline_mm',
        'width_mm',
        'thickness_mm',
        'ends',
        'fit',
        'quantity',
      ],
      boards: ['stock', 'length_mm', 'owned', 'cuts', 'offcut_mm', 'cost'],
      boards_bound: ['stock', 'used', 'lower_bound', 'proved'],
      sheets: ['stock', 'size_mm', 'placements', 'sequence'],
      finishes: ['finish', 'face_m2', 'edge_m2', 'coats', 'volume_l', 'buy', 'left_l', 'tape_m'],
      lettering: ['sign', 'text', 'font', 'cap_height_mm', 'ink_mm2', 'width_mm', 'bridges', 'islands_loose'],
      patterns: ['for', 'paper', 'rows', 'columns', 'pages'],
      marks: ['datum', 'axis', 'at_mm', 'part', 'edge'],
      fastening: ['part', 'how', 'length_mm', 'at_mm'],
      steps: ['number', 'act', 'parts'],
      shopping: ['kind', 'name', 'count', 'price'],
    };
    for (const [list, fields] of Object.entries(keys)) {
      const rows = data[list] as unknown as Record<string, unknown>[];
      expect(rows.length, list).toBeGreaterThan(0);
      for (const field of fields) expect(Object.keys(rows[0] ?? {}), `${list}[]`).toContain(field);
    }
    expect(data).toMatchObject({
      face: { width_mm: 1054.1, height_mm: 1981.2 },
      load: { added_kg: expect.any(Number), center_mm: expect.any(Array), moment_nm: expect.any(Number) },
      fold: { floor_clear_mm: expect.any(Number), floor_space_mm: expect.any(Number), hits: [] },
    });
  });

  it('cuts every piece exactly once, and the rows of the file add up to the cuts', () => {
    for (const name of STARTERS) {
      const p = planOf(name);
      const cut = [
        ...p.cutting.boards.flatMap((b) => b.cuts.map((c) => c.piece)),
        ...p.cutting.sheets.flatMap((s) => s.placements.map((c) => c.piece)),
      ];
      expect([...cut].sort()).toEqual(p.joinery.pieces.map((piece) => piece.id).sort());
      const data = JSON.parse(json(p)) as { pieces: { quantity: number }[] };
      expect(data.pieces.reduce((sum, row) => sum + row.quantity, 0)).toBe(cut.length);
    }
  });

  it('names the font, the glyphs, the stock and the finish that are not there', () => {
    const d = kiosk();
    const parts = d.parts.map((p) => {
      if (p.kind === 'sign') return { ...p, lettering: { ...p.lettering, lines: [{ text: 'HARBOR 票' }] } };
      if (p.id === 'plinth' && p.kind === 'strip') return { ...p, stock: 'driftwood', finish: 'tar' };
      return p;
    });
    const p = plan({ ...d, parts }, SUPPLIES, QUICK);
    const messages = p.checks.map((c) => checkMessage(c, EN, sayFor(p)));
    expect(messages.some((m) => m.startsWith('The font of Sign has no') && m.includes('票'))).toBe(true);
    expect(messages.some((m) => m.includes('Plinth asks for the stock “driftwood”'))).toBe(true);
    expect(messages.some((m) => m.includes('Plinth asks for the finish “tar”'))).toBe(true);
    expect(p.checks.filter((c) => c.code === 'lettering.missing-glyph')[0]?.severity).toBe('error');
  });
});

describe('a remembering planner', () => {
  it('gives the same objects again while nothing changed, and only what follows from a change', () => {
    const planner = createPlanner();
    const d = kiosk();
    const first = planner(d, SUPPLIES, QUICK);
    const renamed = planner({ ...d, name: 'Other name' }, SUPPLIES, QUICK);
    expect(renamed.cutting).toBe(first.cutting);
    expect(renamed.finish).toBe(first.finish);
    const finishes = d.finishes.map((f, i) => (i === 0 ? { ...f, color: '#114455' } : f));
    const recolored = planner({ ...d, finishes }, SUPPLIES, QUICK);
    expect(recolored.cutting).toBe(first.cutting);
    expect(recolored.joinery).toBe(first.joinery);
    expect(recolored.finish).not.toBe(first.finish);
  });

  it('plans as from nothing after any sequence of edits', () => {
    const edit = fc.oneof(
      fc.double({ min: 10, max: 900, noNaN: true }).map(
        (x): Edit => ({
          kind: 'insert',
          list: 'parts',
          item: newPart('strip', { id: `s${Math.round(x)}`, name: 'S', box: { x, y: x, w: 120, h: 38 } }),
        }),
      ),
      fc.nat(40).map((n): Edit => ({ kind: 'remove', list: 'rules', id: `r${n}` })),
      fc
        .constantFrom('pull-left', 'astragal', 'sign')
        .map((id): Edit => ({ kind: 'remove', list: 'parts', id })),
      fc
        .double({ min: 4, max: 9, noNaN: true })
        .map((boardKerf): Edit => ({ kind: 'set', field: 'shop', value: { ...kiosk().shop, boardKerf } })),
      fc.double({ min: -20, max: 20, noNaN: true }).map((by): Edit => {
        const { bed } = kiosk();
        return {
          kind: 'set',
          field: 'bed',
          value: { ...bed, mattress: { ...bed.mattress, width: bed.mattress.width + by } },
        };
      }),
      fc.string({ maxLength: 5 }).map((name): Edit => ({ kind: 'set', field: 'name', value: name })),
    );
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 5 }), (edits) => {
        const planner = createPlanner();
        let d: Design = kiosk();
        planner(d, SUPPLIES, QUICK);
        for (const e of edits) {
          const done = applyEdit(d, e);
          if (done.ok) d = done.design;
          planner(d, SUPPLIES, QUICK);
        }
        expect(json(planner(d, SUPPLIES, QUICK))).toBe(json(plan(d, SUPPLIES, QUICK)));
      }),
      { numRuns: runs(2) },
    );
  });

  it('throws out of a plan that nobody wants any more, and remembers nothing half done', () => {
    const planner = createPlanner();
    let asked = 0;
    expect(() => planner(kiosk(), SUPPLIES, { ...QUICK, cancelled: () => ++asked > 5 })).toThrow();
    expect(json(planner(kiosk(), SUPPLIES, QUICK))).toBe(json(plan(kiosk(), SUPPLIES, QUICK)));
  });
});
