import type { checkWords as en } from '../en/checks.ts';

/** Words of the checks step. */
export const checkWords: Record<keyof typeof en, string> = {
  'checks.one.error': 'Fehler',
  'checks.one.warning': 'Warnung',
  'checks.one.note': 'Hinweis',
  'checks.errors': 'Fehler',
  'checks.warnings': 'Warnungen',
  'checks.notes': 'Hinweise',
  'checks.count.error': '{count} Fehler',
  'checks.count.warning': '{count} {count:Warnung|Warnungen}',
  'checks.count.note': '{count} {count:Hinweis|Hinweise}',
  'checks.lead': 'Anklicken zeigt die Stelle auf der Front.',
  'checks.rules': 'Regeln, die nicht aufgehen',
  'checks.rulesLead':
    'Bis eine davon gelöst ist, bleiben die Teile, wo sie zuletzt lagen. Nichts ist verloren: Rückgängig bringt eine Regel wieder.',
  'checks.dropOther': 'Diese lösen: {rule}',
  'checks.fights': 'Widerspricht',
  'checks.clear': 'Nichts zu beheben. Geprüft wurde:',
  'checks.alike': 'So ist es an {count} weiteren {count:Stelle|Stellen}.',
  'mend.glue': '{name} nur kleben',
  'mend.screws': '{name} mit Schrauben befestigen',
  'mend.legs': 'Füße {to} lang machen',
  'mend.shorten.low': '{name} unten um {by} kürzen',
  'mend.shorten.high': '{name} oben um {by} kürzen',
  'mend.stock': '{name} aus {to} machen',
  'mend.rule': 'Die Regel entfernen',
  'mend.primer': 'Die Grundierung weglassen',
  'mend.again': 'In der Zeichnung gezeigt. Noch einmal drücken übernimmt es.',
  'mend.move': '{name} verschieben: {way}',
  'mend.out': '{name} von {to} wegschieben',
  'mend.lay': '{name} auf {to} legen',
  'mend.square': '{name} dort gerade ablängen',
  'mend.stop': '{name} an {to} enden lassen',
  'mend.cut': '{name} an {to} teilen und beide Seiten behalten',
  'mend.open': '{name} an {to} auftrennen',
  'checks.looked': 'Geprüft',
  'checks.did.parts':
    '{count} {count:Teil|Teile} auf der Front, aufliegend, frei voneinander und von Stellen zum Freihalten ({keeps})',
  'checks.did.rules': '{count} {count:Regel geht|Regeln gehen} auf',
  'checks.did.pieces':
    '{count} {count:Stück|Stücke}: jeder Schnitt für die Säge machbar, jede Länge im Handelsmaß',
  'checks.did.swing':
    'Jeder Winkel des Schwenks: an der engsten Stelle {floor} zum Boden, {wall} zur Wand, {ceiling} zur Decke',
  'checks.did.load': '{added} dazu, {lift} mehr Hebekraft am freien Ende',
  'checks.did.brads': '{count} Stifte und Schrauben, jede endet vor der Rückseite des Holzes',
  'checks.did.letters':
    '{count} {count:Schild|Schilder}: jeder Buchstabe ist in der Schrift und auf dem Schild',
  'checks.did.paint': '{count} {count:Anstrich|Anstriche}, für jeden ein Gebinde',
};
