import type { Stock } from '../materials/types.ts';
import type { Design } from './schema.ts';

/** A stock of the tables as one of the design's own, under the same id: it then takes its place. */
export function ownCopy(stock: Stock): Design['stocks'][number] {
  const { form, id, name, material } = stock;
  switch (form) {
    case 'flat': {
      const { width, thickness, lengths } = stock;
      return { form, id, name, material, width, thickness, lengths };
    }
    case 'shaped': {
      const { width, thickness, girth, section, lengths } = stock;
      return {
        form,
        id,
        name,
        material,
        width,
        thickness,
        girth,
        section: section.map(({ x, y }) => ({ x, y })),
        lengths,
        ...(stock.spring === undefined ? {} : { spring: stock.spring }),
        ...(stock.boardWidth === undefined ? {} : { boardWidth: stock.boardWidth }),
      };
    }
    case 'sheet':
      return { form, id, name, material, thickness: stock.thickness, grain: stock.grain, sizes: stock.sizes };
  }
}
