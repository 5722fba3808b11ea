import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { tried } from '../../src/editor/document/document.ts';
import { createFollower } from '../../src/editor/state/follower.ts';
import { propose } from '../../src/editor/state/propose.ts';
import { createEditorStore, shownNow } from '../../src/editor/state/store.ts';

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance'] });
});
afterEach(() => {
  vi.useRealTimers();
});

/** A drag of a second at 50 frames, told to a listener that takes `cost` ms each time; how often it is told. */
async function toldIn(cost: number): Promise<{ readonly told: number; readonly last: boolean }> {
  const part = newPart('panel', { id: 'a', name: 'a', box: { x: 100, y: 100, w: 200, h: 300 } });
  const store = createEditorStore({ ...newDesign(), parts: [part] }, 'light');
  const follower = createFollower(store);
  let told = 0;
  follower.subscribe(() => {
    told += 1;
    vi.advanceTimersByTime(cost);
  });
  for (let i = 1; i <= 50; i++) {
    const { edit } = store.getState();
    const item = { ...part, box: { ...part.box, x: 100 + i } };
    const shown = tried(edit, [{ kind: 'replace', list: 'parts', id: 'a', item }], new Set(['a']));
    propose(store, { shown, guides: [], at: { x: 0, y: 0 }, text: '' });
    await vi.advanceTimersByTimeAsync(20);
  }
  const during = told;
  store.setState({ provisional: null });
  return { told: during, last: follower.get() === shownNow(store.getState()) };
}

it('follows a drag ten times a second, less often where following takes long, and at once when it ends', async () => {
  expect(await toldIn(0)).toEqual({ told: 10, last: true });
  // 40 ms each take a tenth of the time every 400 ms.
  const slow = await toldIn(40);
  expect(slow.told).toBeGreaterThanOrEqual(2);
  expect(slow.told).toBeLessThanOrEqual(3);
  expect(slow.last).toBe(true);
});
