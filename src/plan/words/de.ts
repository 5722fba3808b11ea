import { checks } from './de/checks.ts';
import { patterns } from './de/patterns.ts';
import { places } from './de/places.ts';
import { rules } from './de/rules.ts';
import { list, steps } from './de/steps.ts';
import type { PlanWords } from './words.ts';

/** German. */
export const DE: PlanWords = {
  checks,
  rules,
  steps,
  list,
  pieces: (count) => `${count} Stück`,
  shopping: {
    board: 'Leisten und Profile',
    sheet: 'Platten',
    fitting: 'Beschläge',
    paint: 'Farbe',
    primer: 'Grundierung',
    brads: 'Stifte',
    screws: 'Schrauben',
    glue: 'Leim',
    tape: 'Malerkrepp',
    paper: 'Papier',
  },
  spare: (name) => `${name}, Reserve`,
  places,
  tape: {
    edge: { left: 'Oberkante', right: 'Unterkante', sawn: 'längste Seite', overall: 'über alles' },
    corner: {
      'long-point': 'lange Spitze',
      'short-point': 'kurze Spitze',
      square: 'rechtwinkliges Ende',
      shoulder: 'Schulter',
      corner: 'Ecke',
      outermost: 'äußerster Punkt',
    },
    along: (edge, from, to) => `${edge}, ${from} bis ${to}`,
    onShowFace: (tape) => `${tape}, auf der Sichtseite`,
    curved: (depth) => `so lang schneiden, dann die Rundung nach der Schablone anreißen (${depth} tief)`,
    scribed: (edge, most, where) =>
      `nach dem Schneiden die ${edge} am Bett anreißen und hobeln: bis ${most} fällt weg, ${where}`,
    scribedAt: {
      start: 'am linken Ende',
      end: 'am rechten Ende',
      both: 'an beiden Enden',
      from: (start) => `${start} vom linken Ende`,
    },
    bent: (radius) => `gerade ablängen, dann biegen: Radius innen ${radius}`,
    read: {
      lead: (measures) => `vor Ort gemessen: ${measures}`,
      edge: (edge, read, planned) => `${edge} ${read} (geplant ${planned})`,
      diagonal: (read) => `Diagonale ${read}`,
      follow: (names) => `danach richten sich: ${names}`,
      alone: 'sonst ändert sich nichts',
    },
  },
  patterns,
};
