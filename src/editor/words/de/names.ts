import type { nameWords as en } from '../en/names.ts';

/** What new parts are named by: what each is, and where it is; the place follows, so that nothing is bent by gender. */
export const nameWords: Record<keyof typeof en, string> = {
  'noun.rail': 'Waagerechte',
  'noun.stile': 'Senkrechte',
  'noun.brace': 'Strebe',
  'noun.strip': 'Leiste',
  'noun.frame': 'Rahmen',
  'noun.border': 'Umrandung',
  'noun.trim': 'Zierleiste',
  'noun.panel': 'Füllung',
  'noun.door': 'Tür',
  'noun.sign': 'Schild',
  'noun.fitting': 'Beschlag',
  'noun.painted': 'Gemalte Form',
  'noun.lettering': 'Beschriftung',
  'noun.battens': 'Leistenreihe',
  'noun.row': 'Reihe',
  'noun.fill': 'Ausfachung',

  'place.x.low': 'links',
  'place.x.mid': 'mittig',
  'place.x.high': 'rechts',
  'place.y.low': 'unten',
  'place.y.mid': 'mittig',
  'place.y.high': 'oben',
  'place.both': '{up} {across}',
  'place.center': 'mittig',

  'name.at': '{noun} {place}',
  'name.on': '{carrier}, {name}',
};
