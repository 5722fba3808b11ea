import type { cornerWords as en } from '../en/corners.ts';

/** Words of corners that are set one by one. */
export const cornerWords: Record<keyof typeof en, string> = {
  'tool.path': 'Leistenzug Ecke für Ecke setzen',
  'tool.short.path': 'Leistenzug',
  'corners.title': 'Ecken',
  'corners.hint':
    'Gemessen von unten links am Rahmen um sie. In der Zeichnung an einer Ecke ziehen, an einem Plus für eine neue, oder an der Mitte einer Seite, um sie zu biegen.',
  'corners.number': 'Ecke',
  'corners.leftOf': 'Ecke {number}, von links',
  'corners.bottomOf': 'Ecke {number}, von unten',
  'corners.add': 'Eine Ecke nach Ecke {number} einfügen',
  'corners.remove': 'Ecke {number} wegnehmen',
  'corners.closed': 'Geschlossen: die letzte Ecke läuft zur ersten',
  'corners.one': 'Ecke {number} und die Seite danach',
  'corners.side': 'Seite',
  'corners.straight': 'Gerade',
  'corners.byRise': 'Bogen mit Stichhöhe',
  'corners.byRadius': 'Bogen mit Radius',
  'corners.smooth': 'Geschwungen',
  'corners.rise': 'Stichhöhe',
  'corners.radius': 'Bogenradius',
  'corners.inward': 'Unter 0 biegt sie sich nach innen.',
  'corners.cut': 'Ecke',
  'corners.plain': 'Einfach',
  'size.size': 'Größe',
  'corners.riseIs': 'Stichhöhe {rise}',
  'did.bow': 'Seite {number} von {name} gebogen',
  'did.bend': 'Schwung der Seite {number} von {name} geändert',
  'did.corner': 'Ecke {number} von {name} verschoben',
  'did.addCorner': 'Ecke {number} von {name} eingefügt',
  'did.dropCorner': 'Ecke {number} von {name} weggenommen',
  'say.corner':
    'Ecke {number} ist gesetzt. Die Eingabetaste beendet den Leistenzug; ein Klick auf die erste Ecke schließt ihn.',
  'say.bow': 'Seite {number} von {name}: Stichhöhe {rise}',
  'say.leastCorners': 'Es braucht mindestens {count} Ecken.',
};
