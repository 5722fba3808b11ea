import { vi } from 'vitest';
import type { Palette } from '../../src/editor/drawing/palette.ts';
import type { Pen } from '../../src/editor/drawing/pen.ts';
import type { Point } from '../../src/geometry/shape.ts';

/** What came out of one stroke or filling, in pixels of the screen, after all that moved and scaled the pen. */
export interface Mark {
  readonly does: 'stroke' | 'fill';
  readonly paths: readonly (readonly Point[])[];
  readonly color: unknown;
  /** Of the line; of a filling that nothing shows through infinite, of another zero. */
  readonly width: number;
  readonly dash: readonly number[];
  readonly alpha: number;
  /** What the pen was held within. */
  readonly within: readonly (readonly Point[])[] | null;
}

export interface Written {
  readonly text: string;
  readonly at: Point;
  /** Degrees that its base line is turned by, counterclockwise. */
  readonly turned: number;
}

export interface Pasted {
  readonly image: unknown;
  /** Its left upper, right upper, right lower and left lower corner. */
  readonly corners: readonly Point[];
  readonly alpha: number;
}

/** Paths as a canvas makes them; a whole circle is told by the four points farthest out. */
class Trace {
  readonly paths: Point[][] = [];
  protected place(p: Point): Point {
    return p;
  }
  moveTo(x: number, y: number): void {
    this.paths.push([this.place({ x, y })]);
  }
  lineTo(x: number, y: number): void {
    const path = this.paths.at(-1);
    if (path) path.push(this.place({ x, y }));
    else this.moveTo(x, y);
  }
  bezierCurveTo(_a: number, _b: number, _c: number, _d: number, x: number, y: number): void {
    this.lineTo(x, y);
  }
  arc(x: number, y: number, r: number, from: number, to: number): void {
    for (let i = 0; i <= 4; i++) {
      const angle = from + ((to - from) * i) / 4;
      const [px, py] = [x + r * Math.cos(angle), y + r * Math.sin(angle)];
      if (i === 0) this.moveTo(px, py);
      else this.lineTo(px, py);
    }
  }
  rect(x: number, y: number, w: number, h: number): void {
    this.moveTo(x, y);
    this.lineTo(x + w, y);
    this.lineTo(x + w, y + h);
    this.lineTo(x, y + h);
  }
  roundRect(x: number, y: number, w: number, h: number): void {
    this.rect(x, y, w, h);
  }
  closePath(): void {}
}

/** Scale and shift along the axes, and a turn: all that the painters ask of a pen. */
interface Way {
  readonly sx: number;
  readonly sy: number;
  readonly at: Point;
  readonly turn: number;
}

const along = ({ sx, sy, at, turn }: Way, { x, y }: Point): Point => ({
  x: at.x + Math.cos(turn) * sx * x - Math.sin(turn) * sy * y,
  y: at.y + Math.sin(turn) * sx * x + Math.cos(turn) * sy * y,
});

const START = {
  fillStyle: '' as unknown,
  strokeStyle: '' as unknown,
  lineWidth: 1,
  globalAlpha: 1,
  font: '',
  lineJoin: 'miter',
  dash: [] as readonly number[],
  within: null as Mark['within'],
  way: { sx: 1, sy: 1, at: { x: 0, y: 0 }, turn: 0 } as Way,
};

/** A pen that writes down what comes out of it. */
class Recorder extends Trace {
  readonly marks: Mark[] = [];
  readonly texts: Written[] = [];
  readonly pictures: Pasted[] = [];
  /** Boxes that were wiped. */
  readonly wiped: Point[][] = [];
  #now = { ...START };
  readonly #saved: (typeof START)[] = [];

  protected override place(p: Point): Point {
    return along(this.#now.way, p);
  }
  #note(does: Mark['does'], drawn: readonly (readonly Point[])[]): void {
    const { fillStyle, strokeStyle, lineWidth, globalAlpha: alpha, dash, within, way } = this.#now;
    const size = Math.abs(way.sx);
    const width = does === 'stroke' ? lineWidth * size : alpha === 1 ? Number.POSITIVE_INFINITY : 0;
    const color = does === 'stroke' ? strokeStyle : fillStyle;
    const paths = drawn.map((path) => [...path]);
    this.marks.push({ does, paths, color, width, dash: dash.map((d) => d * size), alpha, within });
  }
  #placed(path: unknown): readonly (readonly Point[])[] {
    return path instanceof Trace
      ? path.paths.map((one) => one.map((p) => along(this.#now.way, p)))
      : this.paths;
  }
  #box(x: number, y: number, w: number, h: number): Point[] {
    const box = new Trace();
    box.rect(x, y, w, h);
    return box.paths.flat().map((p) => along(this.#now.way, p));
  }

  beginPath(): void {
    this.paths.length = 0;
  }
  stroke(path?: unknown): void {
    this.#note('stroke', this.#placed(path));
  }
  fill(path?: unknown): void {
    this.#note('fill', this.#placed(path));
  }
  clip(path?: unknown): void {
    this.#now.within = this.#placed(path).map((one) => [...one]);
  }
  fillRect(x: number, y: number, w: number, h: number): void {
    this.#note('fill', [this.#box(x, y, w, h)]);
  }
  strokeRect(x: number, y: number, w: number, h: number): void {
    this.#note('stroke', [this.#box(x, y, w, h)]);
  }
  clearRect(x: number, y: number, w: number, h: number): void {
    this.wiped.push(this.#box(x, y, w, h));
  }
  save(): void {
    this.#saved.push({ ...this.#now });
  }
  restore(): void {
    this.#now = this.#saved.pop() ?? this.#now;
  }
  translate(x: number, y: number): void {
    this.#now.way = { ...this.#now.way, at: along(this.#now.way, { x, y }) };
  }
  scale(x: number, y: number): void {
    const { way } = this.#now;
    this.#now.way = { ...way, sx: way.sx * x, sy: way.sy * y };
  }
  rotate(angle: number): void {
    const { way } = this.#now;
    this.#now.way = { ...way, turn: way.turn + angle };
  }
  setLineDash(dash: readonly number[]): void {
    this.#now.dash = dash;
  }
  fillText(text: string, x: number, y: number): void {
    const { way } = this.#now;
    this.texts.push({ text, at: along(way, { x, y }), turned: (-way.turn * 180) / Math.PI });
  }
  measureText(text: string): { width: number } {
    return { width: 6 * text.length };
  }
  createLinearGradient() {
    return { addColorStop: () => {} };
  }
  drawImage(image: unknown, ...to: readonly number[]): void {
    const [x = 0, y = 0, w = 0, h = 0] = to.slice(-4);
    this.pictures.push({ image, corners: this.#box(x, y, w, h), alpha: this.#now.globalAlpha });
  }

  /** As the painters see it: what a pen is set to is set by name. */
  get pen(): Pen {
    const target = this as unknown as Record<string | symbol, unknown>;
    return new Proxy(target, {
      get: (_, name) => {
        if (name in this.#now) return this.#now[name as 'font'];
        const act = target[name];
        return typeof act === 'function' ? act.bind(this) : act;
      },
      set: (_, name, value) => {
        if (!(name in this.#now)) throw new Error(`no pen is set by ${String(name)}`);
        Object.assign(this.#now, { [name]: value });
        return true;
      },
    }) as unknown as Pen;
  }
}

/** A new pen that writes down what comes out of it, on a page that can be asked for paths and pictures. */
export function recorder(): Recorder {
  vi.stubGlobal('Path2D', Trace);
  vi.stubGlobal('document', {
    fonts: { status: 'loaded' },
    createElement: () => {
      const inside = new Recorder();
      return { width: 0, height: 0, inside, getContext: () => inside.pen };
    },
  });
  return new Recorder();
}

/** What was drawn on a picture out of sight that a pen then pasted. */
export const insideOf = (image: unknown): Recorder => (image as { readonly inside: Recorder }).inside;

/** Colors that bear their names. */
export const NAMED = new Proxy({}, { get: (_, name) => String(name) }) as Palette;
