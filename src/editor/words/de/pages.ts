import type { pagesWords as en } from '../en/pages.ts';

/** Words of the pages step. */
export const pagesWords: Record<keyof typeof en, string> = {
  'pages.tabs': 'Abschnitte der Blätter',
  'pages.paper': 'Papier',
  'pages.printer': 'Drucker',
  'pages.none':
    'Noch nichts zu drucken: ein Schild hinzufügen oder unter Papier Anreißlatten oder Schablonen verlangen.',

  'pages.total': '{pages} {pages:Blatt|Blätter}, auf {paper}',
  'pages.count': '{pages} {pages:Blatt|Blätter}, {rows} × {columns}',
  'pages.size': '{width} × {height}',
  'pages.turned': 'Querformat',
  'pages.page': 'Blatt {name}',
  'pages.open': 'Blatt {name} von {title} größer zeigen',
  'pages.picture': 'Blatt {name} von {title}, wie es gedruckt wird',
  'pages.keyMap': 'Wie die Blätter von {title} zusammengehören: {names}',
  'pages.faceMap': 'Wo die Blätter von {title} auf der Front liegen',
  'pages.previous': 'Voriges Blatt',
  'pages.next': 'Nächstes Blatt',
  'pages.print': 'Alle als ein PDF: Drucken & Export, oben. Mit 100 % drucken, nicht anpassen.',

  'pages.paperSize': 'Papier',
  'pages.rollWidth': 'Rollenbreite',
  'pages.margin': 'Ränder, die der Drucker braucht',
  'pages.margin.left': 'Links',
  'pages.margin.right': 'Rechts',
  'pages.margin.top': 'Oben',
  'pages.margin.bottom': 'Unten',
  'pages.join': 'Blätter stoßen',
  'pages.join.overlap': 'Überlappend',
  'pages.join.butt': 'Kante an Kante, beschnitten',
  'pages.overlap': 'Überlappung',
  'pages.wholeLetters': 'Jeden Buchstaben auf einem Blatt halten, wo er passt',
  'pages.packet': 'Teile der Werkstattmappe',
  'pages.packetLead':
    'Das Deckblatt nennt, was weggelassen ist. Deckblatt und Warnhinweise sind immer dabei.',
  'pages.also': 'Außer den Schildern drucken',
  'pages.also.story-sticks': 'Anreißlatten mit allen Anrissen',
  'pages.also.face': 'Die ganze Front, 1 : 1',
  'pages.also.parts': 'Umrisse geformter Füllungen und Schilder',
  'pages.also.drilling': 'Bohrschablonen für Beschläge',

  'printer.lead':
    'Das Testblatt mit 100 % drucken, beide Lineale vom ersten bis zum letzten Strich messen und das Abgelesene eingeben. Danach sind die Schablonen maßhaltig. Der Wert bleibt auf diesem Gerät: er gehört zum Drucker, nicht zum Entwurf.',
  'printer.across': 'Lineal quer zeigt',
  'printer.up': 'Lineal hoch zeigt',
  'printer.should': 'Es soll {length} zeigen.',
  'printer.scale': 'Druckt {percent} % der wahren Größe; ausgeglichen.',
  'printer.true': 'Maßhaltig.',
  'printer.reset': 'Ausgleich aufheben',
  'printer.save': 'Testblatt (PDF)',
  'printer.saving': 'Schreibe…',
  'printer.picture': 'Testblatt für den Drucker mit einem Lineal von {x} quer und einem von {y} hoch',
  'printer.noRoom': 'Die Ränder lassen auf diesem Papier keinen Platz für ein Testblatt.',
};
