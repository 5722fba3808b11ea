import type { cornerWords as en } from '../en/corners.ts';

/** Words of corners that are set one by one. */
export const cornerWords: Record<keyof typeof en, string> = {
  'tool.path': 'Leistenzug Ecke für Ecke setzen',
  'tool.short.path': 'Leistenzug',
  'corners.title': 'Ecken',
  'corners.hint':
    'Gemessen von unten links am Rahmen des Teils. In der Zeichnung an einer Ecke ziehen, oder an einem Plus für eine neue.',
  'corners.number': 'Ecke',
  'corners.left': 'Von links',
  'corners.bottom': 'Von unten',
  'corners.leftOf': 'Ecke {number}, von links',
  'corners.bottomOf': 'Ecke {number}, von unten',
  'corners.add': 'Eine Ecke nach Ecke {number} einfügen',
  'corners.remove': 'Ecke {number} wegnehmen',
  'corners.closed': 'Geschlossen: die letzte Ecke läuft zur ersten',
  'did.corner': 'Ecke {number} von {name} verschoben',
  'did.addCorner': 'Ecke {number} von {name} eingefügt',
  'did.dropCorner': 'Ecke {number} von {name} weggenommen',
  'say.corner':
    'Ecke {number} ist gesetzt. Die Eingabetaste beendet den Leistenzug; ein Klick auf die erste Ecke schließt ihn.',
  'say.leastCorners': 'Es braucht mindestens {count} Ecken.',
};
