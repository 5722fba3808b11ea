import type { pagesWords as en } from '../en/pages.ts';

/** Words of the pages step. */
export const pagesWords: Record<keyof typeof en, string> = {
  'pages.tabs': 'Partes del paso de hojas',
  'pages.paper': 'Papel',
  'pages.printer': 'Impresora',
  'pages.none':
    'Todavía nada que imprimir: añadir un letrero, o pedir reglas de trazado o plantillas en Papel.',

  'pages.total': '{pages} {pages:hoja|hojas|hojas}, en {paper}',
  'pages.count': '{pages} {pages:hoja|hojas|hojas}, {rows} × {columns}',
  'pages.size': '{width} × {height}',
  'pages.turned': 'apaisado',
  'pages.page': 'Hoja {name}',
  'pages.open': 'Ampliar la hoja {name} de {title}',
  'pages.picture': 'Hoja {name} de {title} como se imprime',
  'pages.keyMap': 'Cómo se unen las hojas de {title}: {names}',
  'pages.faceMap': 'Dónde caen las hojas de {title} en el frente',
  'pages.previous': 'Hoja anterior',
  'pages.next': 'Hoja siguiente',
  'pages.print':
    'Todas en un PDF: Imprimir y exportar, arriba. Imprimir al 100 % («Tamaño real»), sin «Ajustar a la página».',

  'pages.paperSize': 'Papel',
  'pages.rollWidth': 'Ancho del rollo',
  'pages.margin': 'Márgenes que pide la impresora',
  'pages.margin.left': 'Izquierdo',
  'pages.margin.right': 'Derecho',
  'pages.margin.top': 'Superior',
  'pages.margin.bottom': 'Inferior',
  'pages.join': 'Las hojas se unen',
  'pages.join.overlap': 'Solapadas',
  'pages.join.butt': 'Canto con canto, recortadas',
  'pages.overlap': 'Solape',
  'pages.wholeLetters': 'Dejar cada letra en una hoja si cabe',
  'pages.packet': 'Partes del dosier de taller',
  'pages.packetLead': 'La portada dice lo que falta. La portada y las advertencias están siempre.',
  'pages.also': 'Imprimir también',
  'pages.also.story-sticks': 'Reglas de trazado con todas las marcas',
  'pages.also.face': 'El frente entero a tamaño real',
  'pages.also.parts': 'Contornos de paneles y rótulos con forma',
  'pages.also.drilling': 'Plantillas de taladrado para herrajes',

  'printer.lead':
    'Imprimir la hoja de prueba al 100 % («Tamaño real»), medir las dos reglas de la primera a la última raya y anotar lo leído. Las plantillas salen entonces exactas. Queda en este dispositivo: es cosa de la impresora, no del diseño.',
  'printer.across': 'La regla a lo ancho mide',
  'printer.up': 'La regla a lo alto mide',
  'printer.should': 'Debería medir {length}.',
  'printer.scale': 'Impreso al {percent} % de su tamaño; corregido.',
  'printer.true': 'A tamaño real.',
  'printer.reset': 'Quitar la corrección',
  'printer.save': 'Hoja de prueba (PDF)',
  'printer.saving': 'Escribiendo…',
  'printer.picture': 'Hoja de prueba con una regla de {x} a lo ancho y una de {y} a lo alto',
  'printer.noRoom': 'Los márgenes no dejan sitio para una hoja de prueba en este papel.',
};
