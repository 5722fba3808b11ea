import type { swingWords as en } from '../en/swing.ts';

/** Words of the side view of the swing. */
export const swingWords: Record<keyof typeof en, string> = {
  'swing.title': 'El giro, de lado',
  'swing.picture':
    'Vista de lado de la cama bajada {angle}, con pared, suelo y techo. Piezas que tocan por el camino: {hits}.',
  'swing.play': 'Ver el giro',
  'swing.stop': 'Parar',
  'swing.next': 'Posición siguiente',
  'swing.worst': 'Posición más justa',
  'swing.stowed': 'Plegada',
  'swing.lowered': 'Abierta',
  'swing.clear': 'Espacio mínimo en todo el giro',
  'swing.to': 'Hasta',
  'swing.room': 'Espacio',
  'swing.by': 'Lo más cercano',
  'swing.floor': 'Suelo',
  'swing.wall': 'Pared',
  'swing.wallBoard': 'Rodapié',
  'swing.space': 'Suelo libre que necesita, desde la pared',
  'swing.showAt': 'Mostrarla a {angle}',
  'swing.hits': 'Toca por el camino',
  'swing.over': 'De más',
  'swing.left': 'lo que hay a la izquierda',
  'swing.right': 'lo que hay a la derecha',
  'swing.noHits': 'Nada toca suelo, pared, rodapié, techo, patas ni vecinos en ningún ángulo.',
  'swing.reach': 'Tiradores y cierres sobre el suelo',
};
