import { describe, expect, it } from 'vitest';
import { newDesign } from '../../src/design/defaults.ts';
import { openData } from '../../src/design/open.ts';
import { practiceOf } from '../../src/editor/planning/practice.ts';
import { createPlanner, plan } from '../../src/plan/plan.ts';
import { kiosk, STARTERS, SUPPLIES, starter } from '../plan/starters.ts';

describe('what the worker plans for practice', () => {
  it.each(STARTERS)('are sound designs that differ from %s in one part each', (name) => {
    const design = starter(name);
    const edits = practiceOf(design);
    expect(edits.length).toBeGreaterThanOrEqual(4);
    for (const edited of edits) {
      expect(openData(edited)).toMatchObject({ ok: true, design: edited });
      expect(edited.parts.filter((part, i) => part !== design.parts[i])).toHaveLength(1);
      expect({ ...edited, parts: design.parts }).toEqual(design);
    }
  });

  it('is nothing of an empty bed', () => expect(practiceOf(newDesign())).toEqual([]));

  // Broken off after any step: the edit that came then is planned as from nothing.
  it.each([1, 4])('leaves the next plan as it is, broken off after %i', (steps) => {
    const design = kiosk();
    const planner = createPlanner();
    planner(design, SUPPLIES);
    for (const edited of practiceOf(design).slice(0, steps)) planner(edited, SUPPLIES);
    const [first, ...others] = design.parts;
    const next = { ...design, parts: others };
    expect(first).toBeDefined();
    expect(planner(next, SUPPLIES)).toEqual(plan(next, SUPPLIES));
  });
});
