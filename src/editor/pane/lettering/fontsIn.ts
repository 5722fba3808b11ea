import { type Face, facesIn } from '../../../lettering/font/faces.ts';
import { type FontReason, readFont } from '../../../lettering/font.ts';

export type FontsIn =
  | { readonly ok: true; readonly fonts: readonly Face[] }
  | { readonly ok: false; readonly reason: FontReason };

/** The fonts of a file that can be set in; the reason of the first where none can. */
export function fontsIn(bytes: Uint8Array): FontsIn {
  const found = facesIn(bytes);
  if (!found.ok) return found;
  const fonts: Face[] = [];
  let refused: FontReason = { code: 'not-a-font' };
  for (const [i, face] of found.faces.entries()) {
    const read = readFont(face.file, face.name);
    if (read.ok) fonts.push(face);
    else if (i === 0) refused = read.reason;
  }
  return fonts.length > 0 ? { ok: true, fonts } : { ok: false, reason: refused };
}
