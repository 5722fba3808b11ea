import type { PatternWords } from '../../../patterns/words.ts';

/** What pattern pages say. */
export const patterns: PatternWords = {
  pageOf: (page, of) => `Blatt ${page} von ${of}`,
  joins: (name) => `Anschluss ${name}`,
  at: (x, y) => `links unten bei ${x}, ${y}`,
  square: { mm: 'Quadrat 50 mm: nachmessen', in: 'Quadrat 2 in: nachmessen' },
  caution: 'Verkleidung, kein Tragwerk: Warnungen der Mappe beachten.',
  bare: 'Wo nur der Rand ist, kein Blatt.',
  print: 'Mit 100 % drucken, nicht anpassen.',
  ruler: { mm: 'mm', in: 'in' },
  testTitle: 'Testblatt für den Drucker',
  test: (length) => [
    'Dieses Blatt mit 100 % drucken, ohne Anpassen oder Skalieren, auf dem Papier, das verwendet wird.',
    `Beide Lineale vom ersten bis zum letzten Strich messen. Jedes soll ${length} lang sein.`,
    'Das Abgelesene eingeben: quer ins erste Feld, hoch ins zweite. Danach kommen die Schablonen maßhaltig heraus.',
  ],
  across: (length) => `quer: ${length}`,
  up: (length) => `hoch: ${length}`,
  mode: {
    trace: 'Umrisse nachziehen',
    pounce: 'Lochpause: jeden Punkt durchstechen, anheften, Kreide oder Kohle durchtupfen',
    stencil: 'Schablone: innerhalb der Umrisse ausschneiden',
    mirrored: 'gespiegelt: mit der Schrift nach unten übertragen',
    'cut-out': 'Buchstaben ausschneiden',
    printed:
      'gedruckt: an der Linie beschneiden, Blätter links und unten an den Marken, jedes über das vorige',
  },
  onOne: (count) => `mit 1 bezeichnet: an einem Steg, vorsichtig behandeln (${count})`,
  holes: 'jede Farbe nach den runden Löchern auflegen',
  tabs: (count) =>
    `${count === 1 ? '1 Loch' : `${count} Löcher`} neben der Tafel: dort gleich dicken Abschnitt an die Kante kleben`,
  guide: { baseline: 'Grundlinie', center: 'Mitte' },
  seams: 'lange Striche: Kanten und Fugen darunter',
  layer: (number, of, finish) => `Farbe ${number} von ${of}: ${finish}`,
  prints: 'Gedruckte Schilder',
  rule: 'Die Linie rechts ist 50 mm lang.',
  face: 'Ganze Front',
  part: (name) => `Schablone: ${name}`,
  more: (count) => `und ${count} weitere`,
  sticks: 'Anreißlatten',
  joinSticks: 'Streifen trennen. Jede Lasche unter den Streifen davor legen, Linie auf Linie, und kleben.',
  strip: {
    x: (number, of) => `Quer ab linker Kante, ${number} von ${of}`,
    y: (number, of) => `Hoch ab Unterkante, ${number} von ${of}`,
  },
  tab: 'Lasche',
  edge: {
    low: { x: 'links', y: 'unten' },
    mid: { x: 'Mitte', y: 'Mitte' },
    high: { x: 'rechts', y: 'oben' },
    hole: { x: 'Loch', y: 'Loch' },
  },
  datum: 'Bezugskante: hier 0',
};
