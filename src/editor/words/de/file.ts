import type { FileWords } from '../../../design/fileWords.ts';

const BOUNDS = { least: 'mindestens', more: 'mehr als', most: 'höchstens', less: 'weniger als' } as const;

/** Was zu einer Datei gesagt wird, die sich nicht öffnet oder ausgebessert wurde. */
export const fileWords: FileWords = {
  file: 'Die Datei',
  quoted: (text) => `„${text}“`,
  message: (where, found, expected, todo) => `${where}: gefunden ${found}; erwartet ${expected}. ${todo}`,
  secondId: (list, id, fresh) => `${list}: ein zweites „${id}“ bekam die Kennung „${fresh}“`,
  found: {
    nothing: 'nichts',
    list: (entries) => `eine Liste mit ${entries} Einträgen`,
    object: 'ein Objekt',
    unknownFields: (names) => `das unbekannte Feld ${names}`,
    characters: (count) => `${count} Zeichen`,
    levels: (count) => `${count} Ebenen von Klammern ineinander`,
    noVersion: 'kein Feld „showface“',
    version: (version) => `Formatversion ${version}`,
    otherVersion: (version) => `die Versionsangabe ${version}`,
    end: 'das Ende des Textes',
    place: (what, line, column) => `${what} in Zeile ${line}, Spalte ${column}`,
  },
  expected: {
    type: {
      number: 'eine Zahl',
      string: 'ein Text',
      boolean: 'true oder false',
      array: 'eine Liste',
      object: 'ein Objekt',
      int: 'eine ganze Zahl',
      record: 'ein Objekt',
      tuple: 'eine Liste fester Länge',
      null: 'null',
    },
    form: {
      id: 'eine Kennung aus Buchstaben, Ziffern, Punkten, Binde- und Unterstrichen',
      unreserved: 'eine Kennung, die nicht anderweitig vergeben ist',
      part: 'die Kennung eines Teils (nicht die Front, eine Ebene oder ein Stück einer Reihe)',
      thing:
        'face, eine Ebene (level:rim, level:ledge, level:field oder level:skin), die Kennung eines Teils oder ein Stück einer Reihe als Kennung[Spalte,Zeile]',
      color: 'eine Farbe wie #1e5f74',
      picture: 'eine Kennung der Form picture-1 bis picture-6399',
      base64: 'Buchstaben, Ziffern, + und / (Base64)',
      outline: 'geschlossene Umrisse aus ganzen Zahlen, wie M0 0L10 0L0 10Z',
      own: 'nur Namen von Teilen dieser Datei',
    },
    anyForm: 'eine der Formen, die dieses Feld annimmt',
    textForm: 'ein Text der richtigen Form',
    characters: (bound, limit) => `ein Text mit ${BOUNDS[bound]} ${limit} Zeichen`,
    entries: (bound, limit) => `eine Liste mit ${BOUNDS[bound]} ${limit} Einträgen`,
    number: (bound, limit) => `eine Zahl von ${BOUNDS[bound]} ${limit}`,
    oneOf: (values) => `eines von ${values}`,
    known: (field) => `ein bekanntes ${field}`,
    fields: 'nur Felder dieses Formats',
    most: (limit) => `höchstens ${limit}`,
    design: 'eine Entwurfsdatei, die in diesem Feld ihre Formatversion nennt',
    versions: (last) => `eine Formatversion von 1 bis ${last}`,
    json: 'noch mehr JSON-Text',
  },
  todo: {
    noDesign: 'Das ist keine Entwurfsdatei dieses Werkzeugs.',
    noDesignOrFonts:
      'Das ist keine Entwurfsdatei dieses Werkzeugs, oder ihre geöffneten Schriften sind zu groß.',
    chooseDesign: 'Eine Entwurfsdatei wählen; sie endet auf .json und entsteht beim Speichern.',
    newer:
      'Die Datei stammt von einer neueren Version dieses Werkzeugs: mit jener öffnen. Die Datei blieb unverändert.',
    unknownVersion: 'Keine Version dieses Werkzeugs hat das geschrieben. Die Datei blieb unverändert.',
    damaged: 'Die Datei ist beschädigt oder abgeschnitten: eine Sicherung nehmen oder sie dort ausbessern.',
    takeOut: 'Herausnehmen, oder die Datei mit der Version öffnen, die sie geschrieben hat.',
    addField: 'Das Feld ergänzen.',
    correct: 'Den Wert berichtigen und die Datei erneut öffnen.',
  },
};
