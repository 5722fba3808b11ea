import type { checkWords as en } from '../en/checks.ts';

/** Words of the checks step. */
export const checkWords: Record<keyof typeof en, string> = {
  'checks.one.error': 'Fallo',
  'checks.one.warning': 'Aviso',
  'checks.one.note': 'Nota',
  'checks.errors': 'Fallos',
  'checks.warnings': 'Avisos',
  'checks.notes': 'Notas',
  'checks.count.error': '{count} {count:fallo|fallos|fallos}',
  'checks.count.warning': '{count} {count:aviso|avisos|avisos}',
  'checks.count.note': '{count} {count:nota|notas|notas}',
  'checks.lead': 'Pulsar una para ver dónde está en el frente.',
  'checks.rules': 'Reglas que no se pueden cumplir',
  'checks.rulesLead':
    'Hasta que se quite una de ellas, las piezas se quedan donde estaban. Nada se pierde: deshacer devuelve una regla.',
  'checks.dropOther': 'Quitar esta: {rule}',
  'checks.fights': 'Choca con',
  'checks.clear': 'Sin problemas. Comprobado:',
  'checks.alike': 'Lo mismo en {count} {count:sitio|sitios|sitios} más.',
  'mend.glue': 'Solo encolar {name}',
  'mend.screws': 'Fijar {name} con tornillos',
  'mend.legs': 'Hacer las patas de {to}',
  'mend.again': 'Se enseña en el dibujo. Pulsar otra vez para aplicarlo.',
  'mend.move': 'Mover {name} {way}',
  'mend.out': 'Apartar {name} de {to}',
  'mend.lay': 'Apoyar {name} en {to}',
  'mend.square': 'Cortar a escuadra el extremo de {name}',
  'mend.stop': 'Hacer que {name} acabe en {to}',
  'mend.cut': 'Cortar {name} en dos en {to} y conservar ambos lados',
  'mend.open': 'Abrir {name} en {to}',
  'mend.shorten.low': 'Acortar {name} {by} por abajo',
  'mend.shorten.high': 'Acortar {name} {by} por arriba',
  'mend.stock': 'Hacer {name} de {to}',
  'mend.rule': 'Quitar la regla',
  'mend.primer': 'Quitar la imprimación',
  'checks.looked': 'Comprobado',
  'checks.did.parts':
    '{count} {count:pieza|piezas|piezas} en el frente, con apoyo, sin chocar entre sí ni con zonas que dejar libres ({keeps})',
  'checks.did.rules': '{count} {count:regla se cumple|reglas se cumplen|reglas se cumplen}',
  'checks.did.pieces':
    '{count} {count:pieza|piezas|piezas} de corte: cada corte al alcance de la sierra, cada largo dentro de su material',
  'checks.did.swing':
    'Cada ángulo del giro: en lo más justo {floor} hasta el suelo, {wall} hasta la pared, {ceiling} hasta el techo',
  'checks.did.load': '{added} de más, {lift} más de fuerza en el extremo libre',
  'checks.did.brads': '{count} puntas y tornillos, todos sin llegar al otro lado de la madera',
  'checks.did.letters':
    '{count} {count:letrero|letreros|letreros}: cada letra está en su tipo y en su tablero',
  'checks.did.paint': '{count} {count:acabado|acabados|acabados}, cada uno con su tamaño de lata',
};
