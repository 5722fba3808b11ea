import type { Design } from '../../../design/schema.ts';
import type { Mm } from '../../../measure/units.ts';

export type OwnStock = Design['stocks'][number];
export type OwnForm = OwnStock['form'];

/** A stock to start from; every figure is there to be replaced by what was measured. */
export function newStock(form: OwnForm, id: string, name: string): OwnStock {
  const lengths = [{ length: 2438.4, price: 0 }];
  switch (form) {
    case 'flat':
      return { form, id, name, material: 'pine', width: 38.1, thickness: 19.05, lengths };
    case 'shaped':
      return {
        form,
        id,
        name,
        material: 'pine',
        width: 38.1,
        thickness: 19.05,
        girth: 70,
        section: chamfered(38.1, 19.05),
        lengths,
      };
    case 'sheet':
      return {
        form,
        id,
        name,
        material: 'plywood',
        thickness: 6.35,
        grain: true,
        sizes: [{ length: 2438.4, width: 1219.2, price: 0 }],
      };
  }
}

/** A plain section for a molding of which only the sizes are known: a rectangle with its outer edge taken off. */
const chamfered = (width: Mm, thickness: Mm) => [
  { x: 0, y: 0 },
  { x: width, y: 0 },
  { x: width, y: thickness / 2 },
  { x: width - thickness / 2, y: thickness },
  { x: 0, y: thickness },
];
