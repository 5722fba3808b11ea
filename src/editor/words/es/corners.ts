import type { cornerWords as en } from '../en/corners.ts';

/** Words of corners that are set one by one. */
export const cornerWords: Record<keyof typeof en, string> = {
  'tool.path': 'Dibujar un recorrido de moldura, esquina a esquina',
  'tool.short.path': 'Trazo',
  'corners.title': 'Esquinas',
  'corners.hint':
    'Medidas desde la esquina inferior izquierda de la caja que las rodea. En el dibujo, tirar de una esquina, de un más para añadir una, o del medio de un lado para curvarlo.',
  'corners.number': 'Esquina',
  'corners.leftOf': 'Esquina {number}, desde la izquierda',
  'corners.bottomOf': 'Esquina {number}, desde abajo',
  'corners.add': 'Añadir una esquina tras la esquina {number}',
  'corners.remove': 'Eliminar la esquina {number}',
  'corners.closed': 'Cerrado: de la última esquina a la primera',
  'corners.one': 'Esquina {number} y el lado que le sigue',
  'corners.side': 'Lado',
  'corners.straight': 'Recto',
  'corners.byRise': 'Arco por su flecha',
  'corners.byRadius': 'Arco por su radio',
  'corners.smooth': 'Suave',
  'corners.rise': 'Flecha',
  'corners.radius': 'Radio',
  'corners.inward': 'Menos de 0 lo curva hacia dentro.',
  'corners.cut': 'Esquina',
  'corners.plain': 'Viva',
  'size.size': 'Tamaño',
  'corners.riseIs': 'Flecha {rise}',
  'did.bow': 'Curvado el lado {number} de {name}',
  'did.bend': 'Cambiada la curva del lado {number} de {name}',
  'did.corner': 'Movida la esquina {number} de {name}',
  'did.addCorner': 'Añadida la esquina {number} de {name}',
  'did.dropCorner': 'Eliminada la esquina {number} de {name}',
  'say.corner':
    'Esquina {number} puesta. Intro acaba el recorrido; una pulsación en la primera esquina lo cierra.',
  'say.bow': 'Lado {number} de {name}: flecha {rise}',
  'say.leastCorners': 'Hacen falta al menos {count} esquinas.',
};
