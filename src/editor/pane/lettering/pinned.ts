import type { AxisPlace } from '../../../lettering/font/faces.ts';
import { codeOf, type FontModule, faceIn } from '../../../lettering/shaping/module.ts';

/** What of the library's module is called; all are numbers or addresses in its memory. */
interface Subsetter extends FontModule {
  readonly _initialize: () => void;
  readonly hb_blob_get_data: (blob: number, size: number) => number;
  readonly hb_blob_get_length: (blob: number) => number;
  readonly hb_face_reference_blob: (face: number) => number;
  readonly hb_subset_input_create_or_fail: () => number;
  readonly hb_subset_input_keep_everything: (input: number) => void;
  readonly hb_subset_input_pin_axis_location: (
    input: number,
    face: number,
    axis: number,
    value: number,
  ) => number;
  readonly hb_subset_or_fail: (face: number, input: number) => number;
}

/**
 * A variable font at one place of its axes as a plain font, by HarfBuzz: outlines, widths and kerning are those of that
 * place. Null where it cannot be made. The module goes with its memory, so that nothing is set free.
 *
 * @param module the library's `harfbuzz-subset.wasm`
 */
export async function pinned(
  file: Uint8Array,
  at: readonly AxisPlace[],
  module: BufferSource,
): Promise<Uint8Array | null> {
  const { instance } = await WebAssembly.instantiate(module);
  const hb = instance.exports as unknown as Subsetter;
  hb._initialize();
  const { face } = faceIn(hb, file);
  const input = hb.hb_subset_input_create_or_fail();
  if (input === 0) return null;
  hb.hb_subset_input_keep_everything(input);
  for (const { axis, value } of at) hb.hb_subset_input_pin_axis_location(input, face, codeOf(axis), value);
  const made = hb.hb_subset_or_fail(face, input);
  if (made === 0) return null;
  const blob = hb.hb_face_reference_blob(made);
  const start = hb.hb_blob_get_data(blob, 0);
  const length = hb.hb_blob_get_length(blob);
  return length === 0 ? null : new Uint8Array(hb.memory.buffer).slice(start, start + length);
}
