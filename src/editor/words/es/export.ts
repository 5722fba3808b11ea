import type { exportWords as en } from '../en/export.ts';

/** Words of the export menu. */
export const exportWords: Record<keyof typeof en, string> = {
  'export.all': 'Todo, en un archivo (ZIP)',
  'export.onePage': 'Una página para enseñar (PDF)',
  'export.packet': 'Dosier de taller (PDF)',
  'export.patterns': 'Plantillas a tamaño real (PDF)',
  'export.labels': 'Etiquetas para las piezas (PDF)',
  'export.cutList': 'Lista de corte (CSV)',
  'export.paint': 'Pintura por acabado (CSV)',
  'export.shopping': 'Lista de compra (CSV)',
  'export.lists': 'Precios y lo que hay en el taller (CSV)',
  'export.picture': 'Imagen del frente (PNG)',
  'export.room': 'Cama en una habitación, a escala (SVG)',
  'export.face': 'Imagen del frente a tamaño real (SVG)',
  'export.outlines': 'Contornos del frente (SVG, DXF)',
  'export.signs': 'Letreros para fresadora, láser o plóter (SVG, DXF)',
  'export.plan': 'Plan completo (JSON)',
  'export.waiting': '{name}: calculando el plan del diseño como está ahora…',
  'export.working': '{name}: escribiendo {done} de {of}…',
  'export.stopped': '{name} no se escribió.',
  'export.noPlan': '{name} no se escribió: no hay plan del diseño como está ahora.',
  'export.died':
    'el programa que escribe se paró solo, quizá sin memoria. Cerrar otras páginas y probar de nuevo.',
  'export.script': 'el programa que escribe no se pudo cargar. Probar de nuevo cuando vuelva la conexión.',
  'export.doubtTitle': 'Corregir antes estos fallos',
  'export.doubt':
    '{name}: lo que se corte o compre con ello puede estar mal. La orden no escribe nada de un diseño con fallos.',
  'export.anyway': 'Escribirlo de todos modos',
  'export.toChecks': 'Ir a las comprobaciones',
  'export.failed': '{name} no se pudo escribir: {why}',
  'export.share': 'Compartir imagen y página…',
  'share.title': 'Compartir',
  'share.lead': 'La imagen y la página van a donde elija ahora; antes no va nada a ningún sitio.',
  'share.now': 'Elegir dónde',
  'share.failed': 'No compartido: {why}',
};
