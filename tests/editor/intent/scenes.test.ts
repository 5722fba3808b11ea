import { describe, expect, it } from 'vitest';
import { benchOf, perform } from './hand.ts';
import { faults, laterFaults, scenes } from './scene.ts';

describe('what a hand means', () => {
  const all = scenes();
  it.each(all.map((s) => [s.file, s] as const))('%s', (_, scene) => {
    const store = benchOf(scene.design);
    const ids = new Map<string, string>();
    for (const { gesture, after } of scene.steps) {
      const id = perform(store, gesture, ids);
      if (gesture.makes) ids.set(gesture.makes, id);
      expect(faults(scene, store.getState().edit.design, after, ids)).toEqual([]);
    }
    expect(laterFaults(scene, store.getState().edit.design, ids)).toEqual([]);
  });
});
