import type { PDFContext, PDFRef } from '@cantoo/pdf-lib';
import type { Drawing } from '../../drawing/drawing.ts';
import { textCorners, textsOf } from '../../drawing/walk.ts';
import { boxOfPoints } from '../../geometry/ring.ts';
import type { Box } from '../../geometry/shape.ts';
import { POINTS_PER_MM } from './content.ts';

interface Spot {
  readonly page: number;
  readonly box: Box;
}

/** The texts that mark a place, by its name, and those that lead to one. */
function spotsOf(pages: readonly { readonly drawing: Drawing }[]) {
  const places = new Map<string, Spot>();
  const leading: (Spot & { readonly to: string })[] = [];
  pages.forEach(({ drawing }, page) => {
    for (const placed of textsOf(drawing.items)) {
      const { leadsTo, place } = placed.item;
      if (leadsTo === undefined && place === undefined) continue;
      const spot = { page, box: boxOfPoints(textCorners(placed)) };
      if (place !== undefined && !places.has(place)) places.set(place, spot);
      if (leadsTo !== undefined) leading.push({ ...spot, to: leadsTo });
    }
  });
  return { places, leading };
}

/** Room around a text that answers to a click as well. */
const AROUND = 0.8;

/**
 * Annotations of each page that lead from a text to the place it names, to be shown from its top (ISO 32000-1,
 * 12.5.6.5). Texts that lead to no place in the file stay plain.
 */
export function linksOf(
  context: PDFContext,
  pages: readonly { readonly drawing: Drawing }[],
  refs: readonly PDFRef[],
): PDFRef[][] {
  const { places, leading } = spotsOf(pages);
  const links: PDFRef[][] = pages.map(() => []);
  for (const { page, box, to } of leading) {
    const place = places.get(to);
    const target = place && refs[place.page];
    if (!target) continue;
    const corners = [box.x - AROUND, box.y - AROUND, box.x + box.w + AROUND, box.y + box.h + AROUND];
    const top = (place.box.y + place.box.h + 5) * POINTS_PER_MM;
    const annotation = context.obj({
      Type: 'Annot',
      Subtype: 'Link',
      Rect: corners.map((mm) => mm * POINTS_PER_MM),
      Border: [0, 0, 0],
      // Printed as well as seen: there is nothing to see of it.
      F: 4,
      Dest: [target, 'XYZ', 0, top, 0],
    });
    links[page]?.push(context.register(annotation));
  }
  return links;
}
