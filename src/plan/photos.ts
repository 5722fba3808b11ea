import type { Check } from '../check/check.ts';
import { BLEED } from '../design/defaults.ts';
import type { Design, Photo } from '../design/schema.ts';
import { boxesMeet } from '../geometry/region.ts';
import type { Box } from '../geometry/shape.ts';
import type { KeptResults } from '../layout/kept.ts';
import type { LaidLetters } from '../layout/laid.ts';
import { faultOf } from '../lettering/photo/fault.ts';
import { LEAST_DPI, type PlacedPhoto, placedPhoto } from '../lettering/photo/placed.ts';
import { bytesOfBase64 } from './base64.ts';

/** The photos of a sign where they lie, and what is wrong with them. */
interface LyingPhotos {
  readonly placed: readonly PlacedPhoto[];
  readonly checks: readonly Check[];
}

const NONE: LyingPhotos = { placed: [], checks: [] };

/**
 * The photos on a printed sign, in its coordinates.
 *
 * Checks: `lettering.photo`, an error where a photo is unknown or its bytes are no photo that can be printed, a warning where it
 * lies beside the board, a note where the sign is not printed; `lettering.photo-coarse` (warning), under `LEAST_DPI`.
 *
 * @param board box of the board, in the sign's coordinates
 */
export function photosOn(
  { id, lettering, box: { w, h } }: LaidLetters,
  board: Box | null,
  known: Design['photos'] = [],
  results: KeptResults,
): LyingPhotos {
  const { photos = [], make, margin, bleed = BLEED } = lettering;
  if (photos.length === 0) return NONE;
  const told = (severity: Check['severity'], why: string, photo: string): Check => ({
    ...{ code: 'lettering.photo', severity, parts: [id], figures: { photo, why } },
  });
  if (make !== 'printed') return { placed: [], checks: [told('note', 'not-printed', '')] };
  const placed: PlacedPhoto[] = [];
  const checks: Check[] = [];
  for (const lying of photos) {
    const photo = known.find((one) => one.id === lying.photo);
    const fault = photo ? faultIn(photo, results) : 'unknown';
    if (!photo || fault !== null) {
      checks.push(told('error', fault ?? 'unknown', photo?.name || lying.photo));
      continue;
    }
    const on = board ?? { x: 0, y: 0, w, h };
    const one = placedPhoto(photo, lying, on, { bleed, margin });
    placed.push(one);
    if (!boxesMeet(one.shown, on)) checks.push(told('warning', 'off', photo.name || photo.id));
    const dpi = Math.floor(one.dpi);
    if (dpi < LEAST_DPI) {
      const figures = { photo: photo.name || photo.id, dpi, least: LEAST_DPI };
      checks.push({ code: 'lettering.photo-coarse', severity: 'warning', parts: [id], figures });
    }
  }
  return { placed, checks };
}

const faultIn = (photo: Photo, results: KeptResults) =>
  results.of(photo, 'fault', [], () => faultOf(bytesOfBase64(photo.data), photo));
