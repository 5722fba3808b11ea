import { checks } from './es/checks.ts';
import { patterns } from './es/patterns.ts';
import { places } from './es/places.ts';
import { rules } from './es/rules.ts';
import { list, steps } from './es/steps.ts';
import type { PlanWords } from './words.ts';

/** Spanish. */
export const ES: PlanWords = {
  checks,
  rules,
  steps,
  list,
  pieces: (count) => (count === 1 ? '1 unidad' : `${count} unidades`),
  shopping: {
    board: 'Listones y molduras',
    sheet: 'Tableros',
    fitting: 'Herrajes',
    paint: 'Pintura',
    primer: 'Imprimación',
    brads: 'Puntas',
    screws: 'Tornillos',
    glue: 'Cola',
    tape: 'Cinta de pintor',
    paper: 'Papel',
  },
  spare: (name) => `${name}, de reserva`,
  places,
  tape: {
    edge: { left: 'canto superior', right: 'canto inferior', sawn: 'lado más largo', overall: 'en total' },
    corner: {
      'long-point': 'punta larga',
      'short-point': 'punta corta',
      square: 'extremo a escuadra',
      shoulder: 'hombro',
      corner: 'esquina',
      outermost: 'punto más saliente',
    },
    along: (edge, from, to) => `${edge}, de ${from} a ${to}`,
    onShowFace: (tape) => `${tape}, en la cara vista`,
    curved: (depth) => `cortar a esta longitud y marcar la curva con su plantilla (${depth} de hondo)`,
    scribed: (edge, most, where) =>
      `una vez cortado, ajustar el ${edge} a la cama trazando y cepillando: se quita hasta ${most} ${where}`,
    scribedAt: {
      start: 'en el extremo izquierdo',
      end: 'en el extremo derecho',
      both: 'en los dos extremos',
      from: (start) => `a ${start} del extremo izquierdo`,
    },
    bent: (radius) => `cortar recto y después curvar: radio interior ${radius}`,
    read: {
      lead: (measures) => `medido en su sitio: ${measures}`,
      edge: (edge, read, planned) => `${edge} ${read} (previsto ${planned})`,
      diagonal: (read) => `diagonal ${read}`,
      follow: (names) => `lo siguen: ${names}`,
      alone: 'nada más cambia',
    },
  },
  patterns,
};
