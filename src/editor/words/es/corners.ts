import type { cornerWords as en } from '../en/corners.ts';

/** Words of corners that are set one by one. */
export const cornerWords: Record<keyof typeof en, string> = {
  'tool.path': 'Dibujar un recorrido de moldura, esquina a esquina',
  'tool.short.path': 'Trazo',
  'corners.title': 'Esquinas',
  'corners.hint':
    'Medidas desde la esquina inferior izquierda de la caja de la pieza. En el dibujo, tirar de una esquina, o de un más para añadir una.',
  'corners.number': 'Esquina',
  'corners.left': 'Desde la izquierda',
  'corners.bottom': 'Desde abajo',
  'corners.leftOf': 'Esquina {number}, desde la izquierda',
  'corners.bottomOf': 'Esquina {number}, desde abajo',
  'corners.add': 'Añadir una esquina tras la esquina {number}',
  'corners.remove': 'Eliminar la esquina {number}',
  'corners.closed': 'Cerrado: de la última esquina a la primera',
  'did.corner': 'Movida la esquina {number} de {name}',
  'did.addCorner': 'Añadida la esquina {number} de {name}',
  'did.dropCorner': 'Eliminada la esquina {number} de {name}',
  'say.corner':
    'Esquina {number} puesta. Intro acaba el recorrido; una pulsación en la primera esquina lo cierra.',
  'say.leastCorners': 'Hacen falta al menos {count} esquinas.',
};
