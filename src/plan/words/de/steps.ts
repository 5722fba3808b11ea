import { UNDER_EDGE } from '../../../lettering/painted.ts';
import { type PlanWords, partNames, type Say } from '../words.ts';

export const list = (items: readonly string[]): string =>
  items.length < 3 ? items.join(' und ') : `${items.slice(0, -1).join(', ')} und ${items.at(-1)}`;

const named = (parts: readonly string[], say: Say): string => list(partNames(parts, say));

export const steps: PlanWords['steps'] = {
  prepare: () =>
    'Das hochgeklappte Bett gegen Herunterfallen sichern: verriegeln und zusätzlich abstützen. Den Boden darunter freiräumen. Die Front reinigen und anschleifen, damit Leim und Farbe halten; alte Farbe vor dem Schleifen auf Blei testen.',
  'cut-sheets': (parts, say) => `Platten in der Reihenfolge der Nummern zuschneiden: ${named(parts, say)}.`,
  'cut-boards': (parts, say) =>
    `Leisten der Reihe nach zuschneiden, jede von links, wie die Leistenblätter es zeigen: ${named(parts, say)}. Jedes Stück gleich nach dem Schnitt beschriften.`,
  notch: (parts, say) =>
    `Ausblattungen aussägen, wo Stücke ineinander greifen: ${named(parts, say)}. Die Tiefe zuerst an zwei Reststücken probieren: Gekreuzt müssen ihre Flächen bündig liegen. Das Stück festspannen, Schnitt neben Schnitt auf Tiefe sägen und den Rest ausstechen.`,
  groove: (parts, say) =>
    `Nuten längs in die Platten fräsen oder sägen, an einer festgespannten Führungsschiene: ${named(parts, say)}. Jede Nut von der Unterkante aus messen, nie von der vorigen, und die Tiefe zuerst an einem Reststück probieren.`,
  'prime-backs': (parts, say) =>
    `Rückseiten und Flächen, die später verdeckt sind, mit einem Anstrich versiegeln; Leimflächen roh lassen: ${named(parts, say)}.`,
  'mask-glue': (parts, say) =>
    `Mit den Anreißlatten anreißen, wo auf diese Teile etwas geleimt wird, und ${say.length(UNDER_EDGE)} innerhalb der Linien abkleben: ${named(parts, say)}. Der Plan der rohen Flächen zeigt, wo. Was abgeklebt ist, bleibt roh, denn Leim hält auf Holz und nicht auf Farbe, und zeigt später, wohin jedes Teil kommt.`,
  'mask-joints': (parts, say) =>
    `Diesen zuerst alle Anstriche in der Farbe der Fugen geben: ${named(parts, say)}. Nach dem Trocknen Malerkrepp in Fugenbreite über jede Fuge kleben, die langen waagerechten zuerst, die kurzen dazwischen zuschneiden; die Kanten andrücken. Darüber werden im nächsten Schritt die Steine gestrichen: Das Malerkrepp abziehen, solange deren Farbe noch weich ist.`,
  'paint-before': (parts, say) =>
    `Liegend auf der Bank grundieren und streichen, bis auf den letzten Anstrich; mit allen Anstrichen Schilder, Teile mit aufgemalten Formen und was nur einen Anstrich bekommt: ${named(parts, say)}. Stöße roh lassen, die geleimt werden.`,
  'paint-ground': (parts, say) =>
    `Auf dem Bett selbst streichen, bevor dort etwas befestigt wird: ${named(parts, say)}. Ränder abkleben, die kein Teil verdeckt, und alles Malerkrepp abziehen, bevor die Farbe hart ist.`,
  mark: () =>
    'Anrisse, wo gestrichen ist über die Farbe, mit den Anreißlatten ab den beiden Bezugskanten auf die Front übertragen. Nie von Anriss zu Anriss messen.',
  'dry-fit': (parts, say) =>
    `Ohne Leim auflegen, mit Malerkrepp halten und von Weitem ansehen: ${named(parts, say)}.`,
  fix: (parts, say) => `Leimen und befestigen: ${named(parts, say)}.`,
  'cut-in-place': (parts, say) =>
    `Die Nachbarn trocken auflegen, daran anhalten, anreißen und passend schneiden: ${named(parts, say)}.`,
  assemble: (parts, say) =>
    `In einem Zug miteinander und mit dem Untergrund verleimen, solange der Leim nass ist, und befestigen: ${named(parts, say)}. Bei Überblattungen kommt zuerst, was auf der Sichtseite ausgeklinkt ist.`,
  bend: (parts, say) =>
    `Den Bogen anreißen, dann biegen und befestigen: ${named(parts, say)}. An einem Ende anfangen, das Stück nach und nach an die Linie drücken und dabei befestigen oder festzwingen; das andere Ende bleibt frei, bis es auf seinem Riss liegt. Gesicht weghalten: Was bricht, schnellt zurück.`,
  'measure-in-place': (parts, say) =>
    `Anhalten, anreißen, passend schneiden und befestigen: ${named(parts, say)}.`,
  letter: (parts, say) =>
    `Schablonen zusammenkleben, nach den Mittellinien auflegen, sobald die Farbe darunter trocken ist, und beschriften: ${named(parts, say)}.`,
  'paint-around-letters': (parts, say) =>
    `Konturen und Schatten von dem nach den Mittellinien aufgelegten Muster übertragen und auf das Schild malen, ein Stück weit bis unter den Rand der Buchstaben: ${named(parts, say)}. Trocknen lassen, bevor Buchstaben aufgeleimt werden.`,
  'mount-letters': (parts, say) =>
    `Buchstaben am Umriss aussägen, Flächen, Innenlinien und Sägekanten streichen und über dem nach den Mittellinien aufgelegten Muster aufleimen: ${named(parts, say)}. Leimflächen roh lassen.`,
  'mount-print': (parts, say) =>
    `In Farbe drucken, an der Linie beschneiden und von der Mitte nach außen aufkleben: ${named(parts, say)}. Leim dünn aufs Brett streichen, Klarlack auf den trockenen Druck; beides an einem Rest versuchen, denn manche Tinte verläuft. In voller Sonne bleichen Drucke in Monaten aus: in den Schatten hängen oder mit Pigmenttinte drucken und einen Klarlack nehmen, der ultraviolettes Licht abhält.`,
  'paint-after': (parts, say) =>
    `Nagellöcher spachteln, abkleben und an Ort und Stelle streichen: ${named(parts, say)}.`,
  'last-coat': (parts, say) =>
    `Nagellöcher spachteln, schleifen, andere Farben abkleben und den letzten Anstrich streichen: ${named(parts, say)}.`,
  'fit-hardware': (parts, say) =>
    `Löcher vorbohren und Beschläge anschrauben: ${named(parts, say)}. Köpfe auf der Seite der Matratze bündig versenken.`,
  'try-swing': () =>
    'Zu zweit, niemand im Weg: das Bett langsam durch den ganzen Schwenk senken. Auf Schleifen horchen; prüfen, ob die Verriegelung noch einrastet und der Hubbeschlag das Mehrgewicht noch hält.',
};
