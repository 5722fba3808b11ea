import { codeOf, type FontModule, faceIn } from './module.ts';
import type { Run } from './runs.ts';
import type { ChosenFeature } from './shape.ts';

/** What of the library's module is called; all are numbers or addresses in its memory. */
interface Library extends FontModule {
  readonly memory: { readonly buffer: ArrayBuffer; readonly grow: (pages: number) => number };
  readonly __wasm_call_ctors: () => void;
  readonly free: (at: number) => void;
  readonly hb_blob_destroy: (blob: number) => void;
  readonly hb_face_destroy: (face: number) => void;
  readonly hb_font_create: (face: number) => number;
  readonly hb_font_destroy: (font: number) => void;
  readonly hb_buffer_create: () => number;
  readonly hb_buffer_reset: (buffer: number) => void;
  readonly hb_buffer_add_codepoints: (
    buffer: number,
    text: number,
    length: number,
    from: number,
    count: number,
  ) => void;
  readonly hb_buffer_guess_segment_properties: (buffer: number) => void;
  readonly hb_buffer_set_script: (buffer: number, script: number) => void;
  readonly hb_buffer_set_direction: (buffer: number, direction: number) => void;
  readonly hb_buffer_set_flags: (buffer: number, flags: number) => void;
  readonly hb_shape: (font: number, buffer: number, features: number, count: number) => void;
  readonly hb_buffer_get_length: (buffer: number) => number;
  readonly hb_buffer_get_glyph_infos: (buffer: number, length: number) => number;
  readonly hb_buffer_get_glyph_positions: (buffer: number, length: number) => number;
}

/** What the module asks for of what it runs in. */
interface Surroundings {
  readonly [module: string]: Readonly<Record<string, (...numbers: number[]) => number>>;
}

/** A glyph in the place of some characters of a line, in font units. */
export interface ShapedGlyph {
  readonly glyph: number;
  /** Index of the first character that it stands for. */
  readonly cluster: number;
  readonly advance: number;
  readonly x: number;
  readonly y: number;
}

/** Sets a run of a line in one font. */
export type RunShaper = (
  line: readonly number[],
  run: Run,
  features: readonly ChosenFeature[],
) => ShapedGlyph[];

const PAGE = 65536;
/** `HB_DIRECTION_LTR` and `_RTL`, `HB_FEATURE_GLOBAL_END`. */
const LTR = 4;
const RTL = 5;
const TO_THE_END = 0xffffffff;
/** `HB_BUFFER_FLAG_BOT`, `_EOT`, `_REMOVE_DEFAULT_IGNORABLES`. */
const FLAGS = { begins: 1, ends: 2, leaveOutUnseen: 8 };
/** Sizes of `hb_feature_t`, `hb_glyph_info_t` and `hb_glyph_position_t`. */
const FEATURE_SIZE = 16;
const GLYPH_SIZE = 20;
/** Fonts that are held in the module's memory; the one that was used longest ago makes room. */
const MOST_HELD = 8;

/** What a font takes up in the module. */
interface Held {
  readonly data: number;
  readonly blob: number;
  readonly face: number;
  readonly font: number;
}

/**
 * Shaping by HarfBuzz: its module without anything beside it. It works in font units, and gives the same for the same
 * text, font and features wherever it runs.
 *
 * @param instantiate makes an instance of the library's `harfbuzz.wasm` and gives its exports
 */
export function harfBuzz(
  instantiate: (imports: Surroundings) => unknown,
): (file: () => Uint8Array) => RunShaper {
  const hb = started(instantiate);
  const buffer = hb.hb_buffer_create();
  const held = new Map<() => Uint8Array, Held>();
  const fontOf = (file: () => Uint8Array): number => {
    const known = held.get(file) ?? opened(hb, file());
    held.delete(file);
    held.set(file, known);
    const [oldest] = held;
    if (oldest && held.size > MOST_HELD) {
      closed(hb, oldest[1]);
      held.delete(oldest[0]);
    }
    return known.font;
  };
  return (file) => (line, run, features) => {
    const font = fontOf(file);
    hb.hb_buffer_reset(buffer);
    filled(hb, buffer, line, run);
    const told = hb.malloc(FEATURE_SIZE * Math.max(1, features.length));
    const ends = ({ from = 0, count }: ChosenFeature) => (count === undefined ? TO_THE_END : from + count);
    write(
      hb,
      told,
      features.flatMap((one) => [codeOf(one.tag), one.value, one.from ?? 0, ends(one)]),
    );
    hb.hb_shape(font, buffer, told, features.length);
    hb.free(told);
    return glyphsIn(hb, buffer);
  };
}

function started(instantiate: (imports: Surroundings) => unknown): Library {
  const made: { library?: Library } = {};
  const stop = () => {
    throw new Error('the shaping library stopped');
  };
  const imports: Surroundings = {
    wasi_snapshot_preview1: { proc_exit: stop },
    env: {
      _abort_js: stop,
      _emscripten_runtime_keepalive_clear: () => 0,
      _setitimer_js: () => 0,
      emscripten_resize_heap: (size = 0) => {
        const { memory } = made.library ?? stop();
        memory.grow(Math.ceil((size - memory.buffer.byteLength) / PAGE));
        return 1;
      },
    },
  };
  made.library = instantiate(imports) as Library;
  made.library.__wasm_call_ctors();
  return made.library;
}

function opened(hb: Library, file: Uint8Array): Held {
  const there = faceIn(hb, file);
  return { ...there, font: hb.hb_font_create(there.face) };
}

function closed(hb: Library, { data, blob, face, font }: Held): void {
  hb.hb_font_destroy(font);
  hb.hb_face_destroy(face);
  hb.hb_blob_destroy(blob);
  hb.free(data);
}

/** The run with the line around it: letters join to what stands there too. */
function filled(hb: Library, buffer: number, line: readonly number[], run: Run): void {
  const text = hb.malloc(4 * line.length);
  write(hb, text, line);
  hb.hb_buffer_add_codepoints(buffer, text, line.length, run.from, run.count);
  hb.free(text);
  hb.hb_buffer_guess_segment_properties(buffer);
  if (run.script !== null) hb.hb_buffer_set_script(buffer, codeOf(run.script));
  hb.hb_buffer_set_direction(buffer, run.rightToLeft ? RTL : LTR);
  const begins = run.from === 0 ? FLAGS.begins : 0;
  const ends = run.from + run.count === line.length ? FLAGS.ends : 0;
  hb.hb_buffer_set_flags(buffer, begins | ends | FLAGS.leaveOutUnseen);
}

function write(hb: Library, at: number, numbers: readonly number[]): void {
  const view = new DataView(hb.memory.buffer);
  for (const [i, number] of numbers.entries()) view.setUint32(at + 4 * i, number, true);
}

function glyphsIn(hb: Library, buffer: number): ShapedGlyph[] {
  const count = hb.hb_buffer_get_length(buffer);
  const infos = hb.hb_buffer_get_glyph_infos(buffer, 0);
  const positions = hb.hb_buffer_get_glyph_positions(buffer, 0);
  const view = new DataView(hb.memory.buffer);
  return Array.from({ length: count }, (_, i) => {
    const [info, position] = [infos + GLYPH_SIZE * i, positions + GLYPH_SIZE * i];
    return {
      glyph: view.getUint32(info, true),
      cluster: view.getUint32(info + 8, true),
      advance: view.getInt32(position, true),
      x: view.getInt32(position + 8, true),
      y: view.getInt32(position + 12, true),
    };
  });
}
