import type { PatternWords } from '../../../patterns/words.ts';

/** What pattern pages say. */
export const patterns: PatternWords = {
  pageOf: (page, of) => `Hoja ${page} de ${of}`,
  joins: (name) => `se une a ${name}`,
  at: (x, y) => `esquina inferior izquierda en ${x}, ${y}`,
  square: { mm: 'cuadrado de 50 mm: medirlo', in: 'cuadrado de 2 in: medirlo' },
  caution: 'Decoración, no estructura: leer las precauciones del dosier.',
  bare: 'Donde solo hay borde, no hay hoja.',
  print: 'Imprimir al 100 %, sin ajustar.',
  ruler: { mm: 'mm', in: 'in' },
  testTitle: 'Hoja de prueba de la impresora',
  test: (length) => [
    'Imprimir esta hoja al 100 %, sin ajustar ni escalar, en el papel que se vaya a usar.',
    `Medir ambas reglas de la primera a la última raya. Cada una debe medir ${length}.`,
    'Anotar lo leído: a lo ancho en la primera casilla, a lo alto en la segunda. Las plantillas salen entonces a tamaño real.',
  ],
  across: (length) => `a lo ancho: ${length}`,
  up: (length) => `a lo alto: ${length}`,
  mode: {
    trace: 'calcar los contornos',
    pounce: 'estarcido: picar cada punto, fijar la hoja con cinta y pasar la muñequilla con tiza o carbón',
    stencil: 'plantilla calada: recortar por dentro de los contornos',
    mirrored: 'en espejo: transferir boca abajo',
    'cut-out': 'recortar las letras',
    printed:
      'impreso: recortar por la línea, las hojas por las marcas de la izquierda y de abajo, cada una sobre la anterior',
  },
  onOne: (count) => `marcadas con 1: con un solo puente, tratar con cuidado (${count})`,
  holes: 'colocar cada color por los agujeros redondos',
  tabs: (count) =>
    `${count === 1 ? '1 agujero' : `${count} agujeros`} fuera del tablero: pegar ahí al canto un recorte igual de grueso`,
  guide: { baseline: 'línea base', center: 'eje' },
  seams: 'trazos largos: cantos y juntas debajo',
  layer: (number, of, finish) => `color ${number} de ${of}: ${finish}`,
  prints: 'Rótulos impresos',
  rule: 'La línea de la derecha mide 50 mm.',
  face: 'Frente entero',
  part: (name) => `Plantilla: ${name}`,
  more: (count) => `y ${count} más`,
  drilling: {
    title: 'Plantillas de taladrado',
    note: 'Recorte. Pegue por las líneas de centro, las gruesas sobre cantos de la madera, papel doblado. Mire antes detrás. Marque las cruces y taladre a escuadra, con tope de broca.',
    edge: 'canto de la madera',
    through: (bit) => `Taladre con ${bit} de lado a lado, con un retal sujeto detrás`,
    lead: (soft, hard, deep) =>
      `Taladre con ${soft} en madera blanda, ${hard} en madera dura o tablero, a ${deep} de profundidad`,
    middle: 'Centro, desde la izquierda y desde abajo del frente:',
    place: (name, x, y) => `${name}: ${x} a lo ancho, ${y} a lo alto`,
  },
  sticks: 'Reglas de trazado',
  joinSticks: 'Separar las tiras. Meter cada pestaña bajo la tira anterior, línea sobre línea, y pegar.',
  strip: {
    x: (number, of) => `A lo ancho desde el canto izquierdo, ${number} de ${of}`,
    y: (number, of) => `Hacia arriba desde el canto inferior, ${number} de ${of}`,
  },
  tab: 'pestaña',
  edge: {
    low: { x: 'izquierda', y: 'abajo' },
    mid: { x: 'centro', y: 'centro' },
    high: { x: 'derecha', y: 'arriba' },
    hole: { x: 'agujero', y: 'agujero' },
  },
  datum: 'referencia: aquí 0',
};
