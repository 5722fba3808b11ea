/** What new parts are named by: what each is, in small letters, and where it is. */
export const nameWords = {
  'noun.rail': 'rail',
  'noun.stile': 'stile',
  'noun.brace': 'brace',
  'noun.strip': 'strip',
  'noun.frame': 'frame',
  'noun.border': 'border',
  'noun.trim': 'trim',
  'noun.panel': 'panel',
  'noun.door': 'door',
  'noun.sign': 'sign',
  'noun.fitting': 'hardware',
  'noun.painted': 'painted shape',
  'noun.battens': 'battens',
  'noun.row': 'row',

  'place.x.low': 'left',
  'place.x.mid': 'center',
  'place.x.high': 'right',
  'place.y.low': 'bottom',
  'place.y.mid': 'middle',
  'place.y.high': 'top',
  'place.both': '{up} {across}',
  'place.center': 'center',

  'name.at': '{place} {noun}',
  'name.on': '{carrier} {name}',
} as const;
