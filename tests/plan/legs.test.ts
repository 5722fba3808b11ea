import { describe, expect, it } from 'vitest';
import { openData } from '../../src/design/open.ts';
import type { Design } from '../../src/design/schema.ts';
import { plan } from '../../src/plan/plan.ts';
import type { Plan } from '../../src/plan/types.ts';
import { EN } from '../../src/plan/words/en.ts';
import { sayFor } from '../../src/plan/words/say.ts';
import { checkMessage } from '../../src/plan/words/words.ts';
import { layoutOf } from '../editor/laid.ts';
import { kiosk, SUPPLIES } from './starters.ts';

const QUICK = { effort: { nodes: 200 } };
const withLegs = (legs: Partial<Design['bed']['legs']>): Design => {
  const design = kiosk();
  return { ...design, bed: { ...design.bed, legs: { ...design.bed.legs, ...legs } } };
};

describe('legs that stand on the face', () => {
  const design = withLegs({ where: 'on-face', fromSide: 20, fromEnd: 20 });
  const made = plan(design, SUPPLIES, QUICK);
  const covered = made.checks.filter((c) => c.code === 'part.keep-clear');

  it('are told when parts cover their places, each by its name', () => {
    const messages = covered.map((c) => checkMessage(c, EN, sayFor(made)));
    expect(messages.some((m) => m.includes('keep-clear Left leg'))).toBe(true);
    expect(messages.some((m) => m.includes('keep-clear Right leg'))).toBe(true);
    expect(covered.every((c) => c.severity === 'error' && c.figures.reason === 'leg')).toBe(true);
  });

  it('take no brads, where there were some', () => {
    const legs = made.keepClears.filter((k) => k.id.startsWith('bed:')).map((k) => k.box);
    expect(legs).toHaveLength(2);
    const onLegs = ({ fastening }: Plan) =>
      fastening.parts
        .flatMap((p) => p.at)
        .filter((p) => legs.some((b) => p.x > b.x && p.x < b.x + b.w && p.y > b.y && p.y < b.y + b.h));
    expect(onLegs(plan(kiosk(), SUPPLIES, QUICK)).length).toBeGreaterThan(0);
    expect(onLegs(made)).toEqual([]);
  });

  it('are seen the same by the canvas as by the plan', () => {
    expect(layoutOf(design).checks).toEqual(made.layout.checks);
  });
});

describe('legs beside the face', () => {
  it('need no place, wherever they are set back to', () => {
    const made = plan(withLegs({ fromSide: 20, fromEnd: 20 }), SUPPLIES, QUICK);
    expect(made.keepClears).toEqual(kiosk().keepClears);
    expect(made.checks.filter((c) => c.code === 'part.keep-clear')).toEqual([]);
  });

  it('are what a file means that does not say', () => {
    const { where, ...legs } = kiosk().bed.legs;
    expect(where).toBe('beside');
    const opened = openData({ ...kiosk(), bed: { ...kiosk().bed, legs } });
    expect(opened.ok && opened.design.bed.legs.where).toBe('beside');
  });
});
