/** What the modules of HarfBuzz have alike, whole and for subsets; all are numbers or addresses in their memory. */
export interface FontModule {
  readonly memory: { readonly buffer: ArrayBuffer };
  readonly malloc: (size: number) => number;
  readonly hb_blob_create: (data: number, size: number, mode: number, user: number, free: number) => number;
  readonly hb_face_create: (blob: number, index: number) => number;
}

/** What is given stays as it is while it is used (`HB_MEMORY_MODE_READONLY`). */
const AS_IT_IS = 1;

/** Lays a font file into the memory of a module, where it stays until it is set free. */
export function faceIn(hb: FontModule, file: Uint8Array) {
  const data = hb.malloc(file.length);
  new Uint8Array(hb.memory.buffer).set(file, data);
  const blob = hb.hb_blob_create(data, file.length, AS_IT_IS, 0, 0);
  return { data, blob, face: hb.hb_face_create(blob, 0) };
}

/** A tag by its four characters in one number, which is what the library calls axes, features and scripts by. */
export const codeOf = (tag: string): number =>
  [...tag].reduce((code, character) => ((code << 8) | character.charCodeAt(0)) >>> 0, 0);
