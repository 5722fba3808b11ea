import { strFromU8, unzipSync } from 'fflate';
import { MOST_CHARACTERS } from '../../design/limits.ts';

/**
 * The text of the design in a file that everything was exported into: of the JSON files that lie in it on their own the
 * one of the shortest name, which the others are named after. Null where there is none. Nothing that says it is larger
 * than a design is unfolded, and of what is larger than it says no more than that.
 */
export function designIn(zip: Uint8Array): string | null {
  const names: string[] = [];
  unzipSync(zip, {
    filter: ({ name, originalSize }) => {
      if (/^[^/\\]+\.json$/.test(name) && originalSize <= 4 * MOST_CHARACTERS) names.push(name);
      return false;
    },
  });
  const [shortest] = names.sort((a, b) => a.length - b.length);
  if (shortest === undefined) return null;
  const { [shortest]: bytes } = unzipSync(zip, { filter: ({ name }) => name === shortest });
  return bytes ? strFromU8(bytes) : null;
}
