import type { nameWords as en } from '../en/names.ts';

/** What new parts are named by: what each is, and where it is; the place follows and bends with nothing. */
export const nameWords: Record<keyof typeof en, string> = {
  'noun.rail': 'travesaño',
  'noun.stile': 'montante',
  'noun.brace': 'riostra',
  'noun.strip': 'listón',
  'noun.frame': 'marco',
  'noun.border': 'cerco',
  'noun.trim': 'moldura',
  'noun.panel': 'panel',
  'noun.fill': 'relleno',
  'noun.door': 'puerta',
  'noun.sign': 'letrero',
  'noun.fitting': 'herraje',
  'noun.painted': 'forma pintada',
  'noun.lettering': 'rótulo',
  'noun.battens': 'listones',
  'noun.row': 'fila',

  'place.x.low': 'a la izquierda',
  'place.x.mid': 'al centro',
  'place.x.high': 'a la derecha',
  'place.y.low': 'abajo',
  'place.y.mid': 'a media altura',
  'place.y.high': 'arriba',
  'place.both': '{up} {across}',
  'place.center': 'al centro',

  'name.at': '{noun} {place}',
  'name.on': '{carrier}, {name}',
};
