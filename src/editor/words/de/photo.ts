import type { photoWords as en } from '../en/photo.ts';

/** Words of the photo under the drawing. */
export const photoWords: Record<keyof typeof en, string> = {
  'photo.title': 'Foto unter der Zeichnung',
  'photo.lead':
    'Über einem Foto des Betts zeichnen. Es bleibt auf diesem Gerät und gehört nicht zur Entwurfsdatei.',
  'photo.open': 'Ein Foto öffnen',
  'photo.other': 'Ein anderes Foto',
  'photo.remove': 'Wegnehmen',
  'photo.putBack': 'Das letzte zurückholen',
  'photo.shown': 'Sichtbar',
  'photo.locked': 'Gesperrt',
  'photo.opacity': 'Wie kräftig',
  'photo.modes': 'Das Foto von Hand einrichten',
  'photo.mode.move': 'Schieben',
  'photo.mode.scale': 'Nach einer Länge',
  'photo.mode.straighten': 'Ecken setzen',
  'photo.hint.move': 'Das Foto dorthin ziehen, wo es hingehört.',
  'photo.hint.scale': 'Die zwei Marken auf eine bekannte Länge ziehen, dann diese Länge eintippen.',
  'photo.hint.straighten':
    'Die vier Marken auf die Ecken des Betts im Foto ziehen, dann das Foto entzerrt zeigen.',
  'photo.apart': 'Von Marke zu Marke',
  'photo.straight': 'Nach den Ecken des Betts entzerrt',
  'photo.straightHint': 'Als wäre es genau von vorn aufgenommen.',
  'photo.corner.lowerLeft': 'Untere linke Ecke des Betts',
  'photo.corner.lowerRight': 'Untere rechte Ecke des Betts',
  'photo.corner.upperRight': 'Obere rechte Ecke des Betts',
  'photo.corner.upperLeft': 'Obere linke Ecke des Betts',
  'photo.across': 'Von links im Foto',
  'photo.down': 'Von oben im Foto',
  'photo.noPicture': 'Das ist kein Foto, das hier gelesen werden kann: JPEG, PNG und WebP gehen.',
  'photo.tooManyBytes': 'Es ist größer als {most} MB. Eine kleinere Kopie zeigt hier ebenso viel.',
  'photo.tooManyPixels':
    'Es hat mehr als {most} Millionen Pixel. Eine kleinere Kopie zeigt hier ebenso viel.',
  'photo.damaged': 'Es beginnt wie ein Foto, ließ sich aber nicht zu Ende lesen.',
  'say.photo': 'Das Foto {name} liegt unter der Zeichnung',
};
