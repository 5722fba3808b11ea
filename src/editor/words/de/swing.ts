import type { swingWords as en } from '../en/swing.ts';

/** Words of the side view of the swing. */
export const swingWords: Record<keyof typeof en, string> = {
  'swing.title': 'Der Schwenk von der Seite',
  'swing.picture':
    'Seitenansicht des um {angle} gesenkten Betts, mit Wand, Boden und Decke. Teile, die unterwegs anstoßen: {hits}.',
  'swing.play': 'Schwenk abspielen',
  'swing.stop': 'Anhalten',
  'swing.next': 'Nächste Stellung',
  'swing.worst': 'Engste Stellung',
  'swing.stowed': 'Hochgeklappt',
  'swing.lowered': 'Unten',
  'swing.clear': 'Kleinster Abstand im ganzen Schwenk',
  'swing.to': 'Zu',
  'swing.room': 'Abstand',
  'swing.by': 'Am nächsten',
  'swing.floor': 'Boden',
  'swing.wall': 'Wand',
  'swing.wallBoard': 'Sockelleiste',
  'swing.space': 'Nötige Bodenfläche ab Wand',
  'swing.showAt': 'Bei {angle} zeigen',
  'swing.hits': 'Unterwegs stößt an',
  'swing.over': 'Zu weit um',
  'swing.left': 'was links steht',
  'swing.right': 'was rechts steht',
  'swing.noHits': 'Bei keinem Winkel stößt etwas an Boden, Wand, Sockelleiste, Decke, Füße oder Nachbarn.',
  'swing.reach': 'Griffe und Verriegelungen über dem Boden',
};
