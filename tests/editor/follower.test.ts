import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { tried } from '../../src/editor/document/document.ts';
import { createFollower } from '../../src/editor/state/follower.ts';
import { propose } from '../../src/editor/state/propose.ts';
import { createEditorStore, type EditorState, shownNow } from '../../src/editor/state/store.ts';
import { chanceOf } from '../chance.ts';
import { runs } from '../runs.ts';

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

it('tells of all that changes beside the steps of a drag, of those not, and of its begin and end', () => {
  const part = newPart('panel', { id: 'a', name: 'a', box: { x: 100, y: 100, w: 200, h: 300 } });
  const store = createEditorStore({ ...newDesign(), parts: [part] }, 'light');
  const follower = createFollower(store);
  const at = { x: 0, y: 0 };
  const carried = (x: number) => {
    const item = { ...part, box: { ...part.box, x } };
    return tried(store.getState().edit, [{ kind: 'replace', list: 'parts', id: 'a', item }], new Set(['a']));
  };
  const acts: Record<string, () => void> = {
    step: () => propose(store, { shown: carried(100 + 300 * chance()), guides: [], at, text: '' }),
    typed: () =>
      store.setState(({ hud }) => ({ hud: hud && { ...hud, typed: chance() < 0.5 ? '3' : null } })),
    end: () => store.setState({ provisional: null, hud: null }),
    proposal: () => store.setState({ provisional: { shown: carried(0), guides: [], live: false } }),
    selection: () => store.setState(({ edit }) => ({ edit: { ...edit, selection: [`${chance()}`] } })),
    look: () => store.setState({ look: chance() < 0.5 ? 'tape' : 'color' }),
  };
  const chance = chanceOf(31);
  /** All that something beside a drag may show of the state. */
  const besides = ({ provisional, hud, ...rest }: EditorState) => ({
    ...rest,
    carrying: provisional?.live === true,
    proposed: provisional?.live === true ? null : (provisional?.shown ?? null),
    typed: hud?.typed ? hud : null,
  });
  let known = besides(store.getState());
  let told = 0;
  const stop = follower.besides(() => {
    told++;
    known = besides(store.getState());
  });
  let steps = 0;
  const names = Object.keys(acts);
  for (let i = 0; i < runs(400); i++) {
    // Half of what happens are steps.
    const name = chance() < 0.5 ? 'step' : (names[Math.floor(chance() * names.length)] ?? 'step');
    const [was, before] = [store.getState(), told];
    acts[name]?.();
    expect(known, `${i}: ${name}`).toEqual(besides(store.getState()));
    const free = !was.hud?.typed && !store.getState().hud?.typed;
    if (name !== 'step' || !was.provisional?.live || !free) continue;
    steps++;
    expect(told, `${i}: a step`).toBe(before);
  }
  expect(steps).toBeGreaterThan(runs(400) / 12);
  expect(told).toBeGreaterThan(0);
  stop();
  const last = told;
  acts.end?.();
  acts.look?.();
  expect(told).toBe(last);
});
