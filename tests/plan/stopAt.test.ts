import { describe, expect, it } from 'vitest';
import { benchSteps } from '../../src/cutting/atSaw.ts';
import { newPart } from '../../src/design/defaults.ts';
import type { Design, Strip } from '../../src/design/schema.ts';
import type { PaneSay } from '../../src/editor/control/useSay.ts';
import '../../src/editor/words/sawWords.ts';
import { stepSpoken } from '../../src/editor/control/stepName.ts';
import { t } from '../../src/editor/words/t.ts';
import { patternRequests } from '../../src/plan/patternRequests.ts';
import { createPlanner } from '../../src/plan/plan.ts';
import { sayFor } from '../../src/plan/words/say.ts';
import { PLAN_WORDS } from '../../src/plan/words/tables.ts';
import { curveWords } from '../../src/plan/words/tape.ts';
import { scenes } from '../editor/intent/scene.ts';
import { SUPPLIES } from './starters.ts';

/** The strip over an arch of 24 in by a rise of 6 in: R = 381 mm about (508, 838.2), by the sagitta (common geometry). */
const underArch = (right: number): number => 838.2 + Math.sqrt(381 ** 2 - (right - 508) ** 2);

function design(): Design {
  const scene = scenes().find(({ file }) => file.startsWith('s16'));
  if (!scene) throw new Error('no scene');
  const rib: Strip = {
    ...newPart('strip', {
      id: 'rib',
      name: 'Rib',
      box: { x: 577.85, y: 1300, w: 63.5, h: 605 },
      stock: 'pine-1x3',
    }),
    lie: 'up',
    ends: { start: { cut: 'stop', at: 'head' }, end: { cut: 'square' } },
  };
  return { ...scene.design, parts: [...scene.design.parts, rib] };
}

describe('a strip that stops at an arch, through the plan', () => {
  const plan = createPlanner()(design(), SUPPLIES);

  it('is cut from a board as long as its long edge, weighed and fastened within its curve', () => {
    const piece = plan.joinery.pieces.find(({ part }) => part === 'rib');
    expect(piece?.overall).toBeCloseTo(1905 - underArch(641.35), 1);
    expect(piece?.edges.left).toBeCloseTo(1905 - underArch(577.85), 1);
    const cut = plan.cutting.boards.flatMap(({ cuts }) => cuts).find((one) => one.piece === piece?.id);
    expect((cut?.to ?? 0) - (cut?.from ?? 0)).toBeCloseTo(piece?.overall ?? 0, 6);
    const brads = plan.fastening.parts.find(({ part }) => part === 'rib')?.at ?? [];
    expect(brads.length).toBeGreaterThan(2);
    for (const { x, y } of brads) expect(y).toBeGreaterThan(underArch(x));
  });

  it('is told to be cut to its length and marked from its pattern, at the bench and at the saw', () => {
    const piece = plan.joinery.pieces.find(({ part }) => part === 'rib');
    const spoken = (['en', 'de', 'es'] as const).map((language) => {
      const { tape } = PLAN_WORDS[language];
      return piece ? curveWords(piece, tape, { unit: 'mm', fraction: '16' }) : '';
    });
    // Sagitta of the chord from edge to edge: R − √(R² − (c/2)²).
    const chord = Math.hypot(63.5, underArch(577.85) - underArch(641.35));
    const depth = 381 - Math.sqrt(381 ** 2 - (chord / 2) ** 2);
    for (const words of spoken)
      expect(Math.abs(Number.parseFloat(words.match(/[\d.]+ mm/)?.[0] ?? '') - depth)).toBeLessThan(0.11);

    const step = benchSteps(plan.cutting, plan.joinery.pieces).find(
      (one) => one.kind !== 'sheet-cut' && one.piece === piece,
    );
    const say = {
      ...sayFor({ design: plan.design, stocks: plan.stocks, language: 'en' }),
      words: PLAN_WORDS.en,
      short: (mm: number) => `${mm}`,
      measure: { unit: 'mm', fraction: '16' } as const,
    };
    expect(step && stepSpoken(step, new Map(), say as unknown as PaneSay, t)).toContain(spoken[0]);
  });

  it('has its end printed full size, as wide as the strip and with the curve in it', () => {
    const { design: made, face, layout, joinery } = plan;
    const requests = patternRequests({
      ...{ design: made, face, parts: layout.parts, pieces: joinery.pieces, signs: [], sticks: [] },
      ...{ seams: new Map(), measure: { unit: 'mm', fraction: '16' } },
      ...{ fastened: [], tables: plan.tables, words: PLAN_WORDS.en.patterns },
      nameOf: (id) => id,
      finishOf: (id) => id,
    });
    const end = requests.find((one) => one.kind === 'part' && one.name.startsWith('rib'));
    const points = end?.kind === 'part' ? end.region.flatMap(({ outer }) => outer) : [];
    // Start end left: along the piece from its long point, across it from its right edge.
    for (const p of points.filter(({ x }) => x < underArch(577.85) - underArch(641.35) - 0.01))
      expect(p.x).toBeCloseTo(underArch(641.35 - p.y) - underArch(641.35), 0);
    expect(Math.max(...points.map(({ y }) => y))).toBeCloseTo(63.5, 6);
    expect(points.length).toBeGreaterThan(5);
  });
});
