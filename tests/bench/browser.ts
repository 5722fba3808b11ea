import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { build, preview } from 'vite';
import { readSupplies } from '../../src/command/supplies.ts';
import { DEFAULT_BED, newDesign, newPart } from '../../src/design/defaults.ts';
import { saveDesign } from '../../src/design/save.ts';
import type { Design, Part, Rule } from '../../src/design/schema.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { practiceOf } from '../../src/editor/planning/practice.ts';
import type { Box } from '../../src/geometry/shape.ts';
import { createPlanner } from '../../src/plan/plan.ts';
import { findBrowser, launch } from '../browser/chrome.ts';
import { firstFrame } from '../browser/firstFrame.ts';
import { starter } from '../plan/starters.ts';
import type { BenchRow } from './row.ts';

/**
 * Frames of the built tool in a browser, against bare Konva nodes of the same number in the same browser, while
 * something is dragged a little further in each, with nothing else to wait for (the frame rate is not limited): the
 * processor time of the page's main thread, which other work on the machine does not lengthen as it does a frame.
 */
const SIZES = [50, 500, 2000] as const;
const RULED = 500;
/** A fill of this many boards, which move all at once. */
const BOARDS = { across: 20, up: 15 } as const;
const FRAMES = 90;
const WARM_UP = 15;
const TURNS = 4;
const VIEWPORT = { width: 1440, height: 900 };
const UNLIMITED = ['--disable-frame-rate-limit', '--disable-gpu-vsync'];

/** Strips in rows and columns; `ruled`: each one stands off its left neighbor and off the one below it. */
function grid(count: number, ruled: boolean): Design {
  const columns = Math.ceil(Math.sqrt(count));
  const id = (c: number, r: number) => `p${r}-${c}`;
  const places = Array.from({ length: count }, (_, i) => ({ c: i % columns, r: Math.floor(i / columns) }));
  const parts = places.map(({ c, r }) => ({
    ...newPart('strip', {
      id: id(c, r),
      name: `Strip ${r}, ${c}`,
      box: { x: 200 + 60 * c, y: 200 + 100 * r, w: 38.1, h: 70 },
      stock: 'pine-1x2',
      finish: 'trim',
    }),
    lie: 'up' as const,
    length: 70,
  }));
  const off = (axis: 'x' | 'y', c: number, r: number, before: string | null, from: number): Rule => ({
    id: `${axis}${id(c, r)}`,
    kind: 'set',
    axis,
    edge: { of: id(c, r), side: 'low' },
    from: before ? { of: before, side: 'high' } : { of: 'face', side: 'low' },
    distance: before ? (axis === 'x' ? 21.9 : 30) : from,
  });
  const rules = places.flatMap(({ c, r }) => [
    off('x', c, r, c > 0 ? id(c - 1, r) : null, 200),
    off('y', c, r, r > 0 ? id(c, r - 1) : null, 200),
  ]);
  const rows = Math.ceil(count / columns);
  const bed = {
    ...DEFAULT_BED,
    mattress: { width: 400 + 60 * columns, length: 400 + 100 * rows, thickness: 127 },
    ceiling: 20_000,
  };
  return { ...newDesign(bed, 'Bench'), parts, rules: ruled ? rules : [] };
}

/** One fill of boards laid in courses, end to end. */
function boards(): Design {
  const [w, h] = [100 * BOARDS.across, 38.1 * BOARDS.up];
  const fill = {
    ...newPart('fill', { id: 'fill', name: 'Boards', box: { x: 200, y: 200, w, h }, stock: 'pine-1x2' }),
    pattern: { form: 'courses', length: 100, bond: 'stacked' } as const,
    angle: 0,
    start: 'low' as const,
  };
  const bed = { ...DEFAULT_BED, mattress: { width: 2400, length: 1100, thickness: 127 }, ceiling: 20_000 };
  return { ...newDesign(bed, 'Bench'), parts: [fill as Part] };
}

/** Milliseconds of a frame: processor time of the main thread, and from one frame to the next. */
interface Frames {
  readonly work: number;
  readonly median: number;
  readonly worst: number;
}

/** What frames of a page take: `drag` gives the times from one to the next. */
async function framesOf(page: Page, drag: () => Promise<readonly number[]>): Promise<Frames> {
  // A page that is behind another one draws no frames.
  await page.bringToFront();
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  const worked = async (): Promise<number> => {
    const { metrics } = await session.send('Performance.getMetrics');
    return metrics.find(({ name }) => name === 'TaskDuration')?.value ?? 0;
  };
  const before = await worked();
  const times = await drag();
  const work = (1000 * ((await worked()) - before)) / times.length;
  await session.detach();
  const sorted = times.slice(WARM_UP).sort((a, b) => a - b);
  return { work, median: sorted[Math.floor(sorted.length / 2)] ?? 0, worst: sorted.at(-1) ?? 0 };
}

const SLOWEST: Frames = {
  work: Number.POSITIVE_INFINITY,
  median: Number.POSITIVE_INFINITY,
  worst: Number.POSITIVE_INFINITY,
};
const quicker = (a: Frames, b: Frames): Frames => ({
  work: Math.min(a.work, b.work),
  median: Math.min(a.median, b.median),
  worst: Math.min(a.worst, b.worst),
});

/** Opens a design in the tool and waits until all that follows from it has come. */
async function lay(page: Page, design: Design): Promise<void> {
  await page.bringToFront();
  await page.evaluate((text) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], 'bench.json', { type: 'application/json' }));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, cancelable: true }));
  }, saveDesign(design));
  await page.locator('.canvas canvas').first().waitFor();
  // The plan and what it draws come from the worker; their arrival is no part of a drag.
  const rail = page.getByRole('navigation');
  await rail.getByRole('button', { name: 'Checks' }).click();
  await page.locator('.job-pane[aria-busy="false"]').waitFor({ timeout: 120_000 });
  await rail.getByRole('button', { name: 'Layout' }).click();
  await page.locator('.stocks').waitFor();
  // Without a limit of frames a page may never call itself idle.
  await page.evaluate(() => new Promise((done) => requestIdleCallback(done, { timeout: 3000 })));
}

/** Drags the first strip in the tool by a pixel or so each frame, and lets it go where it was by Escape. */
async function dragInTool(page: Page, design: Design): Promise<number[]> {
  const box = design.parts[0]?.box;
  if (!box) throw new Error('nothing to drag');
  return page.evaluate(
    async ({ at, frames }) => {
      const canvas = document.querySelector<HTMLElement>('.canvas');
      if (!canvas) throw new Error('no drawing');
      const { scale, left, base } = canvas.dataset;
      const rect = canvas.getBoundingClientRect();
      const start = {
        x: rect.x + Number(left) + at.x * Number(scale),
        y: rect.y + Number(base) - at.y * Number(scale),
      };
      const send = (type: string, dx: number, dy: number) =>
        canvas.dispatchEvent(
          new PointerEvent(type, {
            bubbles: true,
            cancelable: true,
            pointerId: 1,
            pointerType: 'mouse',
            isPrimary: true,
            button: type === 'pointermove' ? -1 : 0,
            buttons: type === 'pointerup' ? 0 : 1,
            clientX: start.x + dx,
            clientY: start.y + dy,
          }),
        );
      // As a key comes: to what has the focus, which the press gave to the drawing.
      const pressEscape = () =>
        canvas.dispatchEvent(
          new KeyboardEvent('keydown', { key: 'Escape', bubbles: true, cancelable: true }),
        );
      // A made-up pointer cannot be captured.
      canvas.setPointerCapture = () => {};
      const frame = () => new Promise<number>((resolve) => requestAnimationFrame(resolve));
      const found: number[] = [];
      send('pointerdown', 0, 0);
      await frame();
      let last = performance.now();
      for (let i = 0; i < frames; i++) {
        send('pointermove', 8 + Math.sin(i / 9) * 40, -8 + Math.cos(i / 7) * 30);
        await frame();
        const now = performance.now();
        found.push(now - last);
        last = now;
      }
      pressEscape();
      send('pointerup', 0, 0);
      return found;
    },
    { at: { x: box.x + box.w / 2, y: box.y + box.h / 2 }, frames: FRAMES },
  );
}

/** What bare Konva is to draw: where the parts are, how many of them the hand holds, and how large the picture is. */
interface Bare {
  readonly boxes: readonly Box[];
  readonly held: number;
  readonly size: { readonly width: number; readonly height: number };
  /** With what the tool shows besides: shadows, and over the parts the outline and three figures on plates. */
  readonly dressed: boolean;
}

/** As many bare rectangles with fill and edge on one layer; those in the hand move and all are drawn again each frame. */
async function dragBare(page: Page, bare: Bare): Promise<number[]> {
  return page.evaluate(
    async ({ boxes, held, size, dressed, frames }) => {
      // biome-ignore lint/suspicious/noExplicitAny: the library as a plain script
      const { Konva } = window as any;
      const holder = document.createElement('div');
      document.body.replaceChildren(holder);
      const stage = new Konva.Stage({ container: holder, ...size, listening: false });
      const layer = new Konva.Layer({ listening: false });
      const over = new Konva.Layer({ listening: false });
      stage.add(layer);
      if (dressed) stage.add(over);
      const right = Math.max(...boxes.map((b) => b.x + b.w)) + 200;
      const top = Math.max(...boxes.map((b) => b.y + b.h)) + 200;
      const scale = Math.min((size.height - 176) / top, (size.width - 176) / right);
      const onScreen = (b: Box) => ({
        x: b.x * scale,
        y: (top - b.y - b.h) * scale,
        width: b.w * scale,
        height: b.h * scale,
      });
      const hand = new Konva.Group();
      boxes.forEach((b, i) => {
        const place = onScreen(b);
        const into = i < held ? hand : layer;
        const shade = { ...place, x: place.x + 1.2, y: place.y + 1.2, fill: '#120c03', opacity: 0.28 };
        if (dressed) into.add(new Konva.Rect({ ...shade, perfectDrawEnabled: false }));
        const edge = { fill: '#2f4a4f', stroke: '#22190a', strokeWidth: 1.1, perfectDrawEnabled: false };
        into.add(new Konva.Rect({ ...place, ...edge }));
      });
      layer.add(hand);
      const around = onScreen(boxes[0] as Box);
      const above = new Konva.Group();
      above.add(new Konva.Rect({ ...around, stroke: '#0b63ce', strokeWidth: 2 }));
      const texts = ['2 3/4"', '1 1/2"', '2 1/4" to the left'].map((text, i) => {
        const label = new Konva.Label({ x: around.x + 60 * i, y: around.y - 30 });
        label.add(new Konva.Tag({ fill: '#ffffff', cornerRadius: 2 }));
        const written = new Konva.Text({ text, fontSize: 14, padding: 4, fill: '#22190a' });
        label.add(written);
        above.add(label);
        return written;
      });
      over.add(above);
      const frame = () => new Promise<number>((resolve) => requestAnimationFrame(resolve));
      const found: number[] = [];
      await frame();
      let last = performance.now();
      for (let i = 0; i < frames; i++) {
        const to = { x: 8 + Math.sin(i / 9) * 40, y: -8 + Math.cos(i / 7) * 30 };
        hand.position(to);
        layer.batchDraw();
        if (dressed) {
          above.position(to);
          // The last figure says how far it went.
          texts.at(-1)?.text(`${to.x.toFixed(2)}" to the left`);
          over.batchDraw();
        }
        await frame();
        const now = performance.now();
        found.push(now - last);
        last = now;
      }
      stage.destroy();
      return found;
    },
    { ...bare, frames: FRAMES },
  );
}

async function pageOn(browser: Browser, address: string | null): Promise<Page> {
  const context = await browser.newContext({ viewport: VIEWPORT, reducedMotion: 'reduce' });
  // The runner names functions by a helper that the page does not have.
  await context.addInitScript('globalThis.__name = (f) => f');
  const page = await context.newPage();
  if (address) {
    await page.goto(address);
    await page.locator('.first-card').first().waitFor();
  } else {
    await page.goto('about:blank');
    await page.addScriptTag({
      path: fileURLToPath(new URL('../../node_modules/konva/konva.min.js', import.meta.url)),
    });
  }
  return page;
}

/** A frame of the tool against the same picture by bare Konva; the note tells of its parts by themselves too. */
async function frameRow(browser: Browser, app: string, design: Design, name: string): Promise<BenchRow> {
  const laid = shownFrom(design).layout.parts;
  const [first] = design.parts;
  const held = laid.filter(({ part }) => part === first?.id).length;
  const tool = await pageOn(browser, app);
  await lay(tool, design);
  const size = await tool.evaluate(() => {
    const { clientWidth: width, clientHeight: height } = document.querySelector('.canvas') as HTMLElement;
    return { width, height };
  });
  const bare = await pageOn(browser, null);
  const given = { boxes: laid.map(({ box }) => box), held, size };
  let [ours, same, plain] = [SLOWEST, SLOWEST, SLOWEST];
  // In turn, and the least of each: whatever else the machine does only adds time.
  for (let turn = 0; turn < TURNS; turn++) {
    ours = quicker(ours, await framesOf(tool, () => dragInTool(tool, design)));
    // Each drag begins by selecting what it takes; that is let go where no time is taken.
    await tool.keyboard.press('Escape');
    await tool.locator('.stocks').waitFor();
    same = quicker(same, await framesOf(bare, () => dragBare(bare, { ...given, dressed: true })));
    plain = quicker(plain, await framesOf(bare, () => dragBare(bare, { ...given, dressed: false })));
  }
  await tool.context().close();
  await bare.context().close();
  const ms = ({ work, median, worst }: Frames) =>
    `${work.toFixed(1)} ms of work, ${median.toFixed(1)} ms long (worst ${worst.toFixed(0)})`;
  const parts = `parts alone ${plain.work.toFixed(1)} ms, ratio ${(ours.work / plain.work).toFixed(2)}`;
  return {
    name,
    size: laid.length,
    ratio: ours.work / same.work,
    against: 'the same picture of bare Konva nodes, all redrawn',
    note: `${design.rules.length} rules; a frame of the tool ${ms(ours)}, bare ${ms(same)}; ${parts}`,
  };
}

/** Edits whose time is taken, after some that are not. */
const EDITS = { first: 3, counted: 9 } as const;

/** From the press of an arrow key on a selected part to the frame that shows the numbers of the plan that follows. */
async function keyToNumbers(page: Page, design: Design, name: string): Promise<number> {
  await lay(page, design);
  await page.getByRole('treeitem', { name }).first().click();
  await page.getByRole('navigation').getByRole('button', { name: 'Wood' }).click();
  await page.locator('.job-pane[aria-busy="false"]').waitFor();
  const times = await page.evaluate(async (edits) => {
    const [canvas, pane] = ['.canvas', '.job-pane'].map((of) => document.querySelector<HTMLElement>(of));
    if (!canvas || !pane) throw new Error('no drawing, or no pane');
    const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
    const busy = (expected: boolean) =>
      new Promise<void>((resolve) => {
        const is = () => (pane.ariaBusy === 'true') === expected;
        if (is()) return resolve();
        new MutationObserver((_, watching) => {
          if (!is()) return;
          watching.disconnect();
          resolve();
        }).observe(pane, { attributes: true });
      });
    const found: number[] = [];
    canvas.focus();
    for (let i = 0; i < edits; i++) {
      await new Promise((done) => requestIdleCallback(done, { timeout: 500 }));
      const before = performance.now();
      const key = i % 2 === 0 ? 'ArrowRight' : 'ArrowLeft';
      canvas.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
      await busy(true);
      await busy(false);
      await frame();
      found.push(performance.now() - before);
    }
    return found;
  }, EDITS.first + EDITS.counted);
  const sorted = times.slice(EDITS.first).sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

/** The way of an edit through the page, its worker and back against the plan alone, in this process. */
async function editRow(browser: Browser, app: string, design: Design, id: string): Promise<BenchRow> {
  const part = design.parts.find((one) => one.id === id);
  if (!part) throw new Error(`no part is called ${id}`);
  const page = await pageOn(browser, app);
  const shown = await keyToNumbers(page, design, part.name);
  await page.context().close();
  const supplies = readSupplies(design);
  const planner = createPlanner();
  for (const edited of [design, ...practiceOf(design)]) planner(edited, supplies);
  const alone = Array.from({ length: EDITS.first + EDITS.counted }, (_, i) => {
    const box = { ...part.box, x: part.box.x + (i % 2) };
    const parts = design.parts.map((one) => (one.id === id ? { ...one, box } : one)) as Part[];
    const before = performance.now();
    planner({ ...design, parts }, supplies);
    return performance.now() - before;
  }).slice(EDITS.first);
  const least = alone.sort((a, b) => a - b)[Math.floor(alone.length / 2)] ?? 0;
  return {
    name: 'from a key to fresh numbers',
    size: design.parts.length,
    ratio: shown / least,
    against: 'the plan alone, in Node',
    note: `${Math.round(shown)} ms in the page, ${Math.round(least)} alone`,
  };
}

/** Everything that comes before a starter can be clicked, packed as a server sends it, against all of the tool. */
async function firstFrameRow(browser: Browser, app: string, folder: string): Promise<BenchRow> {
  const context = await browser.newContext({ viewport: VIEWPORT, serviceWorkers: 'block' });
  const { before, type, files } = await firstFrame(await context.newPage(), app);
  await context.close();
  const all = (readdirSync(folder, { recursive: true }) as string[])
    .map((file) => join(folder, file))
    .filter((file) => statSync(file).isFile())
    .reduce((sum, file) => sum + gzipSync(readFileSync(file)).length, 0);
  const kB = (bytes: number) => `${Math.round(bytes / 1000)} kB`;
  return {
    name: 'bytes before the first usable frame',
    size: files,
    ratio: before / all,
    against: 'all files of the tool',
    note: `${kB(before)} of ${kB(all)}, gzip, and ${kB(type)} of type that its frame asks for; size counts files`,
  };
}

export async function bench(): Promise<BenchRow[]> {
  const configFile = fileURLToPath(new URL('../../vite.config.ts', import.meta.url));
  const outDir = mkdtempSync(join(tmpdir(), 'showface-bench-'));
  await build({ configFile, logLevel: 'error', build: { outDir, emptyOutDir: true, sourcemap: false } });
  const server = await preview({
    configFile,
    logLevel: 'error',
    build: { outDir },
    preview: { port: 0, strictPort: false, host: '127.0.0.1', open: false },
  });
  const app = server.resolvedUrls?.local[0];
  if (!app) throw new Error('The preview server told no address.');
  const browser = await launch(await findBrowser(), UNLIMITED);
  try {
    const rows: BenchRow[] = [await firstFrameRow(browser, app, outDir)];
    for (const size of SIZES) {
      rows.push(await frameRow(browser, app, grid(size, false), 'frame of a drag'));
    }
    rows.push(await frameRow(browser, app, grid(RULED, true), 'frame of a drag under rules'));
    rows.push(await frameRow(browser, app, boards(), 'frame of a drag of a filled shape'));
    rows.push(await editRow(browser, app, starter('harbor-ticket-kiosk'), 'counter'));
    return rows;
  } finally {
    await browser.close();
    await server.close();
    rmSync(outDir, { recursive: true, force: true });
  }
}
