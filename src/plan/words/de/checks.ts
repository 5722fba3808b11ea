import type { CheckFigures, PlanWords, Say } from '../words.ts';

/** What would clear a hit: the figures that the sweep found to help. */
function cure(f: CheckFigures, say: Say, otherwise: string): string {
  const ways = [
    f.has('thinner_mm') ? `${say.length(f.number('thinner_mm'))} dünner` : '',
    f.has('shorter_mm') ? `${say.length(f.number('shorter_mm'))} kürzer` : '',
  ].filter((way) => way !== '');
  return ways.length === 0 ? `${otherwise}.` : `${capital(ways.join(' oder '))} machen, oder: ${otherwise}.`;
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** With its article: what is hit (accusative) and what stays clear (dative). */
const HIT_BY: Readonly<Record<string, readonly [hit: string, clear: string]>> = {
  floor: ['den Boden', 'zum Boden'],
  wall: ['die Wand', 'zur Wand'],
  'wall-board': ['die Sockelleiste', 'zur Sockelleiste'],
  ceiling: ['die Decke', 'zur Decke'],
};

const hit = (f: CheckFigures): string => HIT_BY[f.text('what')]?.[0] ?? f.text('what');
const clear = (f: CheckFigures): string => HIT_BY[f.text('what')]?.[1] ?? f.text('what');

const SIDE: Readonly<Record<string, string>> = { left: 'links', right: 'rechts' };

/** `Jeder Stift, der`, `Keine Schraube`; both are said of what the table lists. */
const FASTENER: Readonly<Record<string, Record<'every' | 'none' | 'one', string>>> = {
  brad: { every: 'Jeder Stift, der', none: 'Kein Stift', one: 'Nur ein Stift' },
  screw: { every: 'Jede Schraube, die', none: 'Keine Schraube', one: 'Nur eine Schraube' },
};

const fastener = (f: CheckFigures) =>
  FASTENER[f.text('fastener')] ?? {
    every: f.text('fastener'),
    none: f.text('fastener'),
    one: f.text('fastener'),
  };

/** What the design asks for (accusative) and no table lists. */
const UNKNOWN: Readonly<Record<string, string>> = { brad: 'den Stift', screw: 'die Schraube' };

/** What of the bed has no room, as the check names it. */
const ROOM: Readonly<Record<string, string>> = {
  platform: 'Liegefläche',
  cleats: 'Auflageleisten',
  field: 'Feld',
  legs: 'Füße',
};

/** Was vom Bett gemessen wurde. */
const RECTANGLE: Readonly<Record<string, readonly [of: string, is: string]>> = {
  rim: ['des Rahmens', 'Der Rahmen'],
  field: ['des vertieften Feldes', 'Das vertiefte Feld'],
};
const rectangle = (f: CheckFigures, as: 0 | 1): string => RECTANGLE[f.text('of')]?.[as] ?? f.text('of');
const READING: Readonly<Record<string, string>> = {
  bottom: 'die Breite unten',
  middle: 'die Breite in der Mitte',
  top: 'die Breite oben',
  left: 'die Höhe links',
  right: 'die Höhe rechts',
  rising: 'die Diagonale von unten links',
  falling: 'die Diagonale von oben links',
};
const CORNER: Readonly<Record<string, string>> = {
  'lower-left': 'unten links',
  'lower-right': 'unten rechts',
  'upper-left': 'oben links',
  'upper-right': 'oben rechts',
};

const EDGE: Readonly<Record<string, string>> = {
  bottom: 'Die Unterkante',
  top: 'Die Oberkante',
  left: 'Die linke Kante',
  right: 'Die rechte Kante',
};

/** Was eine Schnur an einer Kante zeigt, wo sie abgelesen wurde. */
function bowed(f: CheckFigures, say: Say): string {
  const upright = f.text('edge') === 'left' || f.text('edge') === 'right';
  const from = upright ? 'von unten' : 'von links';
  const places = { middle: 'in der Mitte', first: `ein Viertel ${from}`, last: `drei Viertel ${from}` };
  return (['first', 'middle', 'last'] as const)
    .flatMap((place) => {
      const mm = f.has(`${place}_mm`) ? f.number(`${place}_mm`) : 0;
      return mm === 0
        ? []
        : `${places[place]} ${say.length(Math.abs(mm))} nach ${mm > 0 ? 'außen' : 'innen'}`;
    })
    .join(', ');
}

/** What shows past a square layout at a corner, or what hangs over there. */
function pastCorner(f: CheckFigures, say: Say): string {
  const low = f.text('corner').startsWith('lower');
  const past = (mm: number, where: string): string =>
    `${where} ${say.length(Math.abs(mm))} ${mm < 0 ? 'über den Rahmen hinaus' : 'Rahmen zu sehen'}`;
  const across = past(f.number('across_mm'), 'an der Seite');
  return `${across}, ${past(f.number('up_mm'), low ? 'unten' : 'oben')}`;
}

const JOINT: Readonly<Record<string, string>> = {
  miter: 'Gehrung',
  butt: 'Stumpfstoß',
  cope: 'Konterprofil',
  'half-lap': 'Überblattung',
};

/** Why a chosen joint is not made, and what to do. */
const NOT_MADE: Readonly<Record<string, string>> = {
  arch: 'Die Segmente eines Bogens knicken zu wenig für etwas anderes als eine Gehrung. Gehrung wählen; die Ecken unten werden am Rahmen selbst eingestellt.',
  'runs-on':
    'Eine Gehrung braucht die Enden beider, und eines läuft am anderen vorbei. Beide in der Ecke enden lassen oder eine andere Verbindung wählen.',
  straight: 'Ihre Enden treffen sich in gerader Linie und werden dort stumpf gestoßen. Stumpfstoß wählen.',
  along: 'Sie liegen aneinander entlang und enden dort nicht. Eines verschieben oder die Wahl zurücknehmen.',
  flat: 'Was durchläuft, ist flach und hat kein Profil; das Ende wird stumpf gestoßen. Stumpfstoß wählen.',
  through: 'Keines der beiden ist das Teil, das durchlaufen soll. Neu wählen, welches durchläuft.',
  covered:
    'Andere Schnitte nehmen das Holz, in dem sie läge. Eines verschieben oder eine andere Verbindung wählen.',
  apart:
    'Sie treffen sich nicht oder nicht auf einer Höhe. Wo sie sich wieder treffen, wird sie gemacht; sonst die Wahl zurücknehmen.',
  overruled: 'Eine andere Wahl für dieselben zwei gilt. Eine der beiden zurücknehmen.',
  'no-strip': 'Nur Leisten und Rahmen des Entwurfs werden verbunden. Die Wahl zurücknehmen.',
};

/** Each message: what is so, with its figure, and what to do about it. */
export const checks: PlanWords['checks'] = {
  'part.off-face': (f, say) =>
    `${say.name(f.part)} ragt ${say.length(f.number('over_mm'))} über die Kante der Front. Verschieben oder kürzen, oder mit Absicht so lassen.`,
  'part.unsupported': (f, say) =>
    `Nur ${say.share(f.number('share'))} der Rückseite von ${say.name(f.part)} liegen auf. Holz unterlegen oder auf eine andere Ebene legen.`,
  'part.overlap': (f, say) =>
    `${say.name(f.part)} und ${say.name(f.other)} nehmen denselben Platz ein (${say.area(f.number('area_m2'))}). Eines verschieben oder auf das andere legen.`,
  'part.keep-clear': (f, say) =>
    `${say.name(f.part)} verdeckt ${say.length(f.number('over_mm'))} der freizuhaltenden Stelle ${say.name(f.text('keep_clear'))}. Wegrücken.`,
  'part.no-size': (f, say) =>
    `${say.name(f.part)} wird ${say.length(f.number('width_mm'))} breit und ${say.length(f.number('height_mm'))} hoch. Platz schaffen oder die Regeln ändern, die das Teil halten.`,
  'part.measures-eased': (f, say) => {
    const [name, asked] = [say.name(f.part), say.length(f.number('asked_mm'))];
    const of = `Der Umriss von ${name} oder von einer Öffnung darin`;
    if (f.text('why') === 'most')
      return `${of} soll ein Maß von ${asked} haben, in seinem Rahmen ist aber nur Platz für ${say.length(f.number('fits_mm'))}: Er ist damit gezeichnet. Den Rahmen größer oder dieses Maß kleiner machen.`;
    if (f.text('why') === 'least')
      return `${of} soll eine Seite mit einem Radius von ${asked} haben, doch unter ${say.length(f.number('fits_mm'))} reicht kein Bogen von Ecke zu Ecke: Sie ist als Halbkreis gezeichnet. Diesen Radius größer oder die Seite kürzer machen.`;
    return `${of} hat in seinem Rahmen keinen Platz für Stich, Radius oder Ecken: Er ist so gezeichnet, wie es passt. Den Rahmen größer oder diese Maße kleiner machen.`;
  },
  'part.unknown-stock': (f, say) =>
    `${say.name(f.part)} verlangt das Material „${f.text('stock')}“, das es nicht gibt oder das nicht die nötige Form hat (Leiste, Profil oder Platte). Anderes Material wählen.`,
  'part.unknown-finish': (f, say) =>
    `${say.name(f.part)} verlangt den Anstrich „${f.text('finish')}“, den der Entwurf nicht hat. Anderen Anstrich wählen.`,
  'part.unknown-support': (f, say) =>
    `${say.name(f.part)} soll auf „${f.text('on')}“ liegen; das ist weder eine Ebene dieser Front noch ein Teil. Wählen, worauf es liegt.`,
  'part.support-cycle': (f, say) =>
    `Diese Teile liegen im Kreis aufeinander: ${f.parts.map(say.name).join(', ')}. Eines davon auf die Front legen.`,
  'part.ripped': (f, say) => {
    const [from, to] = f.text('lies') === 'up' ? ['unten', 'oben'] : ['links', 'rechts'];
    const widths = `${say.name(f.part)} wird keilförmig aufgetrennt: ${from} ${say.length(f.number('from_mm'))} breit, ${to} ${say.length(f.number('to_mm'))}.`;
    const wide = Math.max(f.number('from_mm'), f.number('to_mm')) > f.number('stock_mm');
    return wide
      ? `${widths} Das Material ist nur ${say.length(f.number('stock_mm'))} breit: ein breiteres wählen.`
      : widths;
  },
  'end.not-met': (f, say) => {
    const [part, at] = [say.name(f.part), say.name(f.text('at'))];
    const ends =
      f.number('count') > 1 ? `${f.number('count')} Enden von ${part} sollen` : `Ein Ende von ${part} soll`;
    if (f.text('why') === 'around')
      return `Die Stücke von ${part} sollen an „${f.text('at')}“ enden, das es nicht gibt. Durchlaufen lassen oder wählen, woran sie enden.`;
    if (f.text('why') === 'unknown')
      return `${ends} an „${f.text('at')}“ enden, das es nicht gibt. Wählen, woran es endet, oder einen anderen Schnitt.`;
    if (f.text('why') === 'arc')
      return `${ends} an ${at} enden, liegt aber auf einem Bogen, der im Ganzen gesägt oder gebogen wird und von nichts abgeschnitten werden kann. Die Bögen aus geraden Stücken machen oder den Weg mit einer geraden Seite enden lassen; bis dahin bleibt das Ende wie gezeichnet.`;
    return f.text('why') === 'part'
      ? `${ends} an ${at} enden, träfe es aber nur mit einem Teil der Breite. Eines der beiden verschieben oder einen anderen Schnitt wählen; bis dahin bleibt das Ende wie gezeichnet.`
      : `${ends} an ${at} enden, das nicht vor ihm liegt. Eines der beiden verschieben oder einen anderen Schnitt wählen; bis dahin bleibt das Ende wie gezeichnet.`;
  },
  'rule.impossible': (f, say) =>
    f.text('fights') === ''
      ? `Diese Regel geht nicht auf: ${say.rule(f.text('rule'))}. Das Material oder ein festes Maß steht dagegen: eines davon ändern. Bis dahin bleiben die Teile, wo sie waren.`
      : `Diese Regel geht nicht auf: ${say.rule(f.text('rule'))}. Sie widerspricht: ${f.text('fights').split(' ').map(say.rule).join('; ')}. Eine davon lösen oder ändern; bis dahin bleiben die Teile, wo sie waren.`,
  'rule.unknown-part': (f, say) =>
    `Eine Regel nennt „${f.text('part')}“, das es nicht gibt: ${say.rule(f.text('rule'))}. Regel lösen oder ein anderes Teil nennen.`,
  'rule.gap-negative': (f, say) =>
    `Aus dieser Regel folgen Abstände von ${say.length(f.number('gap_mm'))}: ${say.rule(f.text('rule'))}. Die Teile passen nicht. Eines herausnehmen oder mehr Platz geben.`,
  'rule.gap-over-most': (f, say) =>
    `Aus dieser Regel folgen Abstände von ${say.length(f.number('gap_mm'))}, mehr als die erlaubten ${say.length(f.number('most_mm'))}: ${say.rule(f.text('rule'))}. Ein Teil hinzufügen.`,
  'array.count': (f, say) =>
    `${f.number('count')} Glieder von ${say.name(f.part)} passen nicht in ${say.length(f.number('room_mm'))}. Weniger oder schmalere nehmen.`,
  'run.no-room': (f, say) =>
    `Die Bögen von ${say.name(f.part)} lassen sich auf dieser Seite des Weges nicht aus Material von ${say.length(f.number('across_mm'))} Breite sägen oder biegen: Der engste hat einen Radius von ${say.length(f.number('radius_mm'))}, und die innere Kante hat dort keinen Platz, oder die Kanten zweier Bögen treffen sich an ihrer Ecke nicht. Das Material auf die andere Seite legen, ein schmaleres nehmen oder die Bögen aus geraden Stücken machen.`,
  'run.head-not-flush': (f, say) =>
    `Die Platte für die Bögen von ${say.name(f.part)} ist ${say.length(f.number('head_mm'))} dick, seine Leisten aber ${say.length(f.number('stock_mm'))}: Wo beide sich treffen, liegen sie nicht bündig, und Nägel und Schrauben werden nach den Leisten gewählt. Platte von gleicher Dicke wählen.`,
  'run.bent-tight': (f, say) =>
    `${say.name(f.part)} wird auf einen Radius von ${say.length(f.number('radius_mm'))} gebogen, und die Leiste ist dort ${say.length(f.number('across_mm'))} dick. Trockenes Holz lässt sich etwa auf das 150-Fache seiner Dicke biegen, manches Nadelholz auf das 100-Fache. Leisten von höchstens ${say.length(f.number('most_mm'))} Dicke nehmen, die Innenseite einsägen, den Bogen aus einer Platte sägen oder aus geraden Stücken machen; die Biegung zuerst an einem Reststück versuchen.`,
  'fill.between-stiles': (f, say) =>
    `Die Lamellen von ${say.name(f.part)} stehen bei ${say.angle(f.number('tilt_deg'))} um ${say.length(f.number('out_mm'))} vor und berühren ihren Untergrund nur mit einer Kante: Stifte sind für sie nicht vorgesehen. Auf jeder Seite einen mindestens so dicken Ständer setzen und die Enden der Lamellen daran leimen und stiften, bevor der Rahmen montiert wird.`,
  'fill.starter': (f, say) =>
    `Das unterste Brett von ${say.name(f.part)} hat keines unter sich, an dem es schräg anliegt. Seine Anfangsleiste einschalten, oder zuerst am Fuß eine ${say.length(f.number('thick_mm'))} dicke Leiste hinter dem untersten Brett befestigen.`,
  'fill.uncovered': (f, say) =>
    `Die Deckleisten von ${say.name(f.part)} sind ${say.length(f.number('width_mm'))} breit und liegen zu knapp auf ihren Brettern: Bei Fugen von ${say.length(f.number('gap_mm'))} brauchen sie ${say.length(f.number('need_mm'))}, damit sie auf jeder Seite ${say.length(f.number('lap_mm'))} aufliegen. Breitere Leisten oder engere Fugen wählen.`,
  'bed.no-room': (f, say) =>
    `Die Bettmaße lassen keinen Platz (${ROOM[f.text('what')] ?? f.text('what')}: ${say.length(f.number('size_mm'))}). Nachmessen: Rahmentiefe, Auflageleisten und Liegefläche müssen ineinander passen.`,
  'bed.legs': (f, say) =>
    `Die Füße sind ${say.length(f.number('legs_mm'))} lang, die gesenkte Front steht aber ${say.length(f.number('needed_mm'))} über dem Boden. Fußlänge, Höhe des Drehpunkts und seinen Abstand zur Front prüfen.`,
  'bed.not-closing': (f, say) =>
    `Die Maße ${rectangle(f, 0)} können nicht alle stimmen. Am ehesten falsch ist ${READING[f.text('reading')] ?? f.text('reading')}: gelesen ${say.length(f.number('read_mm'))}, nach den anderen wären es ${say.length(f.number('would_mm'))}. Nachmessen.`,
  'bed.out-of-square': (f, say) =>
    `${rectangle(f, 1)} ist nicht im Winkel: Die Diagonale von ${f.number('longer_mm') > 0 ? 'unten' : 'oben'} links ist um ${say.length(Math.abs(f.number('longer_mm')))} zu lang.`,
  'bed.bowed': (f, say) =>
    `Die Seiten ${rectangle(f, 0)} sind in der Mitte zusammen um ${say.length(Math.abs(f.number('bow_mm')))} nach ${f.number('bow_mm') > 0 ? 'außen' : 'innen'} gebogen. Aus drei Breiten folgt nicht, welche Seite: jede an einer Schnur ablesen. Bis dahin gelten beide als gerade.`,
  'bed.edge': (f, say) => {
    const seen = f.has('shows_mm') ? f.number('shows_mm') : 0;
    const shows = `${say.length(Math.abs(seen))} ${seen < 0 ? 'über den Rahmen hinaus' : 'Rahmen zu sehen'}`;
    return `${EDGE[f.text('edge')] ?? f.text('edge')} ${rectangle(f, 0)} ist gebogen: ${bowed(f, say)}.${f.has('shows_mm') ? ` Das rechtwinklige Layout lässt in ihrer Mitte ${shows}.` : ''}`;
  },
  'bed.datum': (f, say) => {
    const at = (mm: number) => `${say.length(Math.abs(mm))} ${mm < 0 ? 'außerhalb' : 'innerhalb'}`;
    const [low, high] = [at(f.number('low_mm')), at(f.number('high_mm'))];
    return f.text('axis') === 'x'
      ? `Anrisse quer zählen ab einer rechtwinklig gezogenen Linie, nicht ab der linken Kante, die schief läuft: unten ${low}, oben ${high} der Ecke.`
      : `Anrisse hoch zählen ab einer rechtwinklig gezogenen Linie, nicht ab der Unterkante, die schief läuft: links ${low}, rechts ${high} der Ecke.`;
  },
  'bed.corner': (f, say) =>
    `Das rechtwinklige Layout lässt an der Ecke ${CORNER[f.text('corner')] ?? f.text('corner')}: ${pastCorner(f, say)}.`,
  'joint.overlap': (f, say) =>
    f.parts.length > 1
      ? `${say.name(f.part)} und ${say.name(f.other)} liegen ohne Verbindung übereinander (${say.area(f.number('area_m2'))}). Verbindung wählen oder eines verschieben.`
      : `${say.name(f.part)} liegt ohne Verbindung über sich selbst (${say.area(f.number('area_m2'))}). Mehr Platz geben oder schmalere Leiste nehmen.`,
  'joint.not-made': (f, say) => {
    const where =
      f.parts.length > 1
        ? `${say.name(f.part)} und ${say.name(f.other)}`
        : `die Ecken von ${say.name(f.part)}`;
    const places = f.number('count') > 1 ? ` (${f.number('count')} Stellen)` : '';
    return `Für ${where} gewählt, aber nicht gemacht${places}: ${JOINT[f.text('kind')] ?? f.text('kind')}. ${NOT_MADE[f.text('why')] ?? f.text('why')}`;
  },
  'joint.stops': (f, say) =>
    `${say.name(f.part)} endet an ${say.name(f.other)}${f.number('count') > 1 ? ` (${f.number('count')} Enden)` : ''}; was darüber hinaus gezeichnet ist, bis zu ${say.length(f.number('beyond_mm'))}, fällt weg. Soll es hindurchgehen, eine Verbindung für die beiden wählen.`,
  'joint.over-saw': (f, say) =>
    `Eine Gehrung von ${say.angle(f.number('miter_deg'))} an ${say.name(f.part)} übersteigt die ${say.angle(f.number('most_deg'))} der Säge. Das Stück rechtwinklig zum Anschlag an einem geraden Klotz festspannen und die Säge auf ${say.angle(90 - Math.abs(f.number('miter_deg')))} drehen, oder mit der Handsäge nach Riss schneiden.`,
  'joint.bevel-over-saw': (f, say) =>
    `Eine Neigung von ${say.angle(f.number('bevel_deg'))} an ${say.name(f.part)} übersteigt die ${say.angle(f.number('most_deg'))} der Säge. Das Stück hochkant anlegen und die Säge um diesen Winkel drehen, oder von Hand am Anriss schneiden.`,
  'piece.nothing-left': (f, say) => {
    const cut = (side: 'left' | 'right'): string => {
      const other = f.text(`${side}_with`);
      const against = other === '' ? '' : `, an ${say.name(other)}`;
      return `der Schnitt am ${side === 'left' ? 'linken' : 'rechten'} Ende (${say.angle(f.number(`${side}_deg`))}${against})`;
    };
    return `Von ${say.name(f.part)}, ${say.length(f.number('length_mm'))} lang verlegt, bleibt nichts: ${cut('left')} und ${cut('right')} nehmen alles weg. Länger machen, die Enden weniger schräg schneiden oder weglassen.`;
  },
  'piece.too-long': (f, say) =>
    `${say.name(f.part)} braucht ${say.length(f.number('length_mm'))} Länge; ${f.number('longest_mm') > 0 ? `die längste Leiste hat ${say.length(f.number('longest_mm'))}` : 'eine brauchbare Handelslänge ist nicht eingetragen'}. Längere Handelslänge eintragen oder aus zwei Stücken machen.`,
  'piece.too-big': (f, say) =>
    `${say.name(f.part)} misst ${say.length(f.number('width_mm'))} mal ${say.length(f.number('height_mm'))}, mehr als jede Platte dieses Materials. Größere Platte eintragen oder aus zwei Stücken machen.`,
  'piece.too-short': (f, say) =>
    `${say.name(f.part)} hat ein Stück von nur ${say.length(f.number('length_mm'))} Länge. Vom Ende einer langen Leiste schneiden, Hände weit weg vom Blatt, nie lose.`,
  'piece.not-as-read': (f, say) =>
    `${say.name(f.part)} wird wie geplant geschnitten, nicht wie gemessen: Die Enden sind keine einfachen geraden Schnitte, oder kein Stück hat solche Kanten und Diagonale. Neu messen oder das Maß zurücknehmen.`,
  'piece.measured-in-place': (f, say) =>
    `${say.name(f.part)} wird zuerst auf ${say.length(f.number('length_mm'))} geschnitten und vor Ort angepasst.`,
  'cutting.not-proved': (f, say) =>
    `${say.stock(f.text('stock'))}: ${f.number('used')} geplant; mit weniger als ${f.number('lower_bound')} kommt kein Plan aus. Ob es mit weniger als geplant geht, wurde weder gefunden noch ausgeschlossen.`,
  'lettering.missing-glyph': (f, say) =>
    `Die Schrift von ${say.name(f.part)} hat kein ${f.text('characters')}. Andere Schrift oder andere Buchstaben wählen.`,
  'lettering.unknown-font': (f, say) =>
    `Die Schrift „${f.text('font')}“ von ${say.name(f.part)} liegt nicht vor. Andere Schrift wählen.`,
  'lettering.off-sign': (f, say) =>
    f.text('by') === 'path'
      ? `Eine Zeile von ${say.name(f.part)} ist ${say.length(f.number('over_mm'))} länger als der Pfad, an dem sie verläuft. Machen Sie sie kleiner, kürzen Sie sie, oder verlängern Sie den Pfad.`
      : f.text('by') === 'outline'
        ? `Eine Zeile von ${say.name(f.part)} ist ${say.length(f.number('over_mm'))} länger als der Umriss, an dem sie läuft. Machen Sie sie kleiner oder kürzer.`
        : f.text('by') === 'cover'
          ? `Die Beschriftung von ${say.name(f.part)} läuft ${say.length(f.number('over_mm'))} unter das, was auf dem Schild liegt. Kleiner machen oder auf das Schild einpassen.`
          : f.text('by') === 'face'
            ? `Die Beschriftung von ${say.name(f.part)} ragt ${say.length(f.number('over_mm'))} über die Front. Kleiner machen oder hereinrücken.`
            : `Die Beschriftung von ${say.name(f.part)} ragt ${say.length(f.number('over_mm'))} über das Schild. Kleiner machen oder auf das Schild einpassen.`,
  'lettering.crosses': (f, say) => {
    const where = `${f.text('characters')} in ${say.name(f.part)}`;
    if (f.text('by') === 'joint')
      return `Buchstaben laufen über eine Fuge: ${where}. Das Muster zeigt, wo. Erst beschriften, wenn alles befestigt ist; in eine offene Fuge kriecht Farbe.`;
    const told = `Buchstaben laufen über Kanten bis ${say.length(f.number('step_mm'))} hoch: ${where}.`;
    const flat = f.text('make') === 'stencil' || f.text('make') === 'cut-out';
    return flat
      ? `${told} ${f.text('make') === 'stencil' ? 'Eine Schablone' : 'Ein gesägter Buchstabe'} liegt dort nicht flach. Beschriftung verschieben, pausen oder als Lochpause übertragen.`
      : `${told} Das Muster zeigt, wo. In die Ecken drücken und die Umrisse nach Augenmaß weiterführen.`;
  },
  'lettering.no-room': (f, say) =>
    `Die Beschriftung von ${say.name(f.part)} soll in das Schild passen, aber Ränder von ${say.length(f.number('margin_mm'))} lassen keinen Platz: Es sind ${say.length(f.number('lack_mm'))} zu viel. Ränder kleiner oder das Schild größer machen.`,
  'lettering.corner': (f, say) =>
    `Buchstaben von ${say.name(f.part)} stehen über einer scharfen Ecke dessen, woran ihre Zeile verläuft; sie dreht sich unter ihnen um bis zu ${say.angle(f.number('turn_deg'))}: ${f.text('characters')}. Verschieben Sie die Zeile, machen Sie sie kleiner, oder runden Sie die Ecke.`,
  'lettering.photo': (f, say) => {
    const photo = `Das Foto „${f.text('photo')}“ auf ${say.name(f.part)}`;
    switch (f.text('why')) {
      case 'not-printed':
        return `${say.name(f.part)} hat Fotos, wird aber nicht als gedrucktes Schild gemacht: Sie entfallen. Wählen Sie „Farbig gedruckt“ als Machart, oder entfernen Sie sie.`;
      case 'off':
        return `${photo} liegt neben dem Schild: Nichts davon wird gedruckt. Rücken Sie es herein, oder entfernen Sie es.`;
      case 'unknown':
        return `${photo} ist nicht im Entwurf. Öffnen Sie es noch einmal, oder entfernen Sie es vom Schild.`;
      case 'too-many-pixels':
        return `${photo} hat mehr Bildpunkte, als ein Entwurf aufnimmt. Öffnen Sie seine Datei noch einmal: Es wird verkleinert.`;
      case 'kind':
        return `${photo} ist von einer Art, die nicht gedruckt wird, wie sie ist. Öffnen Sie seine Datei noch einmal: Es wird neu gezeichnet.`;
      default:
        return `${photo} ist beschädigt. Öffnen Sie seine Datei noch einmal, oder entfernen Sie es.`;
    }
  },
  'lettering.photo-coarse': (f, say) =>
    `Das Foto „${f.text('photo')}“ auf ${say.name(f.part)} hat in dieser Größe nur ${f.number('dpi')} Bildpunkte je Zoll; unter ${f.number('least')} wirkt es auf Armlänge grob. Machen Sie es kleiner, schneiden Sie weniger ab, oder nehmen Sie ein Foto mit mehr Bildpunkten.`,
  'lettering.script': (f, say) =>
    f.text('why') === 'rules'
      ? `Die Schriftart von ${say.name(f.part)} hat keine Regeln, um ${f.text('characters')} so zu setzen, wie ihre Schrift es will: Sie würde diese Buchstaben nicht verbinden oder ihre Zeichen nicht an ihren Platz setzen. Eine Schriftart wählen, die für die Schrift gemacht ist.`
      : `Was Buchstaben zusammensetzt, ließ sich nicht laden; ${say.name(f.part)} kann noch nicht beschriftet werden. Mit dem Netz verbinden und die Seite neu laden, oder Buchstaben wählen, die allein stehen, und keine Merkmale der Schriftart.`,
  'lettering.low-contrast': (f, say) =>
    `Die Beschriftung von ${say.name(f.part)} hebt sich nur mit einem Kontrast von ${say.number(f.number('ratio'), 1)} zu 1 vom Grund ab; große Buchstaben brauchen mindestens 3 zu 1. Hellere oder dunklere Farbe nehmen.`,
  'stencil.loose-island': (f, say) =>
    `${f.number('count')} Stücke der Schablone von ${say.name(f.part)} fallen heraus. Einen Steg hinzufügen, Buchstaben breiter oder Stege schmaler machen.`,
  'stencil.thin-tongue': (f, say) =>
    `Die Schablone von ${say.name(f.part)} hat eine Zunge von nur ${say.length(f.number('width_mm'))} Breite. Vorsichtig behandeln oder größere Buchstaben nehmen.`,
  'stencil.one-bridge': (f, say) =>
    `${f.number('count')} Inseln der Schablone von ${say.name(f.part)} hängen an einem Steg, allein oder miteinander verbunden${f.number('asked') > 1 ? ': Ein zweiter passt nicht oder ist nicht gesetzt' : ', wie gewünscht'}. Vorsichtig behandeln; der Bogen zeigt sie.`,
  'stencil.letter-lost': (f, say) =>
    `Die Stege in der Schablone von ${say.name(f.part)} decken mehr als die Hälfte von ${f.text('characters')} zu. Schmalere Stege oder größere Buchstaben nehmen.`,
  'stencil.placed-lost': (f, say) =>
    `Von Hand gesetzte Stege in der Schablone von ${say.name(f.part)} gehören zu ${f.number('count')} Inseln, die der Text nicht mehr hat. Sie zählen nicht mehr; wo gewünscht, neu setzen.`,
  'patterns.too-many-pages': (f, say) =>
    f.parts.length > 0
      ? `Die Schablone von ${say.name(f.part)} braucht ${f.number('pages')} Blätter. Auf größerem Papier oder Rolle drucken.`
      : `Die Schablonen brauchen zusammen ${f.number('pages')} Blätter. Auf größerem Papier oder Rolle drucken, oder weniger Schablonen.`,
  'patterns.unknown-paper': (f) =>
    `Das Papier „${f.text('paper')}“ steht nicht in den Tabellen. Ein anderes Papier wählen.`,
  'patterns.no-margin': (f, say) =>
    `Ein Rand des Papiers ist 0, doch kaum ein Drucker druckt bis an die Kante: Linien dort gingen verloren, oder das Blatt würde verkleinert. Den Rand eingeben, den der Drucker frei lässt, ${say.length(f.number('least_mm'))} oder mehr.`,
  'patterns.no-room': (f) =>
    `Die Ränder lassen auf ${f.text('paper')} keinen Platz zum Drucken. Ränder oder Überlappung kleiner machen.`,
  'finish.primer-hides': (f, say) =>
    `${say.finish(f.text('finish'))} lässt das Holz sehen, darunter ist aber eine Grundierung gesetzt, die es verdeckt. Die Grundierung weglassen.`,
  'finish.no-containers': (f, say) =>
    `Für ${say.finish(f.text('finish'))} ist kein Gebinde eingetragen. Gebindegröße wählen.`,
  'fold.hits-floor': (f, say) =>
    `${say.name(f.part)} stößt bei ${say.angle(f.number('angle_deg'))} des Schwenks um ${say.length(f.number('over_mm'))} an den Boden. ${cure(f, say, 'näher an den Drehpunkt rücken')}`,
  'fold.hits-wall': (f, say) =>
    `${say.name(f.part)} stößt bei ${say.angle(f.number('angle_deg'))} des Schwenks um ${say.length(f.number('over_mm'))} an ${hit(f)}. ${cure(f, say, 'den Drehpunkt von der Wand abrücken')}`,
  'fold.hits-ceiling': (f, say) =>
    `${say.name(f.part)} stößt bei ${say.angle(f.number('angle_deg'))} des Schwenks um ${say.length(f.number('over_mm'))} an die Decke. ${cure(f, say, 'auf der Front tiefer setzen')}`,
  'fold.hits-legs': (f, say) =>
    `${say.name(f.part)} steht ${say.length(f.number('over_mm'))} tiefer als die Füße: das Bett läge darauf auf. Dünner machen oder die Füße verlängern.`,
  'fold.hits-side': (f, say) =>
    `${say.name(f.part)} ragt ${say.length(f.number('over_mm'))} in das, was ${SIDE[f.text('side')] ?? f.text('side')} steht. Verschieben oder kürzen.`,
  'fold.tight': (f, say) =>
    `Nur ${say.length(f.number('clear_mm'))} bleiben ${clear(f)} frei, bei ${say.angle(f.number('angle_deg'))} des Schwenks. Böden und Wände sind selten gerade: vor dem Leimen dort nachmessen.`,
  'load.heavy': (f, say) =>
    `Die Front bringt ${say.mass(f.number('added_kg'))} dazu, mehr als die Grenze von ${say.mass(f.number('limit_kg'))}. Dünneres Material nehmen und den Hersteller von Hubbeschlag und Scharnieren fragen, was sie tragen.`,
  'load.lift': (f, say) =>
    `Die Front erhöht die Hebekraft am freien Ende um ${say.force(f.number('lift_n'))}, mehr als die Grenze von ${say.force(f.number('limit_n'))}. Dort oben leichteres Material nehmen oder die Federn nach Angabe des Herstellers einstellen lassen.`,
  'load.no-density': (f, say) =>
    `Für das Material von ${say.stock(f.text('stock'))} ist keine Dichte bekannt; sein Gewicht fehlt. Material dafür wählen.`,
  'fastening.through': (f, say) =>
    `${fastener(f).every} für ${say.name(f.part)} lang genug ist (${say.length(f.number('length_mm'))}), käme hinten heraus; ${say.length(f.number('room_mm'))} Holz sind da. Kürzere besorgen oder leimen.`,
  'fastening.no-brad': (f, say) =>
    `${fastener(f).none} der Tabelle passt für ${say.name(f.part)}: ${say.length(f.number('need_mm'))} müssen greifen, und ${say.length(f.number('room_mm'))} Holz sind da. Leimen und spannen oder mit Holz hinterlegen.`,
  'fastening.lever': (f, say) =>
    `${say.name(f.part)} steht ${say.length(f.number('out_mm'))} vor bei nur ${say.length(f.number('base_mm'))} Höhe und kippt von seinen Stiften: Schrauben nehmen.`,
  'fastening.few': (f, say) =>
    f.number('count') === 0
      ? `${fastener(f).none} findet in ${say.name(f.part)} Platz, weit genug von den Kanten und von allem, was dort schon sitzt. Leimen und zwingen.`
      : `${fastener(f).one} findet in ${say.name(f.part)} Platz, und um ihn herum kann sich das Teil drehen. Auch leimen, und gerade halten, bis der Leim hält.`,
  'fastening.loose-edge': (f, say) =>
    `An einer Kante von ${say.name(f.part)} findet auf ${say.length(f.number('length_mm'))} Länge nichts Halt. Die Kante leimen und zwingen oder ändern, was darunter liegt.`,
  'fastening.nothing-solid': (f, say) =>
    `Hinter ${say.name(f.part)} ist nichts Festes zum Befestigen. Holz hinterlegen.`,
  'fastening.screws': (f, say) =>
    `${say.name(f.part)} wiegt ${say.mass(f.number('mass_kg'))}: schrauben, nicht nur stiften.`,
  'fastening.unknown': (f) =>
    `Der Entwurf verlangt ${UNKNOWN[f.text('fastener')] ?? f.text('fastener')} „${f.text('id')}“, aber keine Tabelle führt das; so lässt sich keine Länge wählen. Aus der Liste wählen.`,
  'order.circle': (f, say) =>
    f.text('why') === 'cope'
      ? `${f.parts.map(say.name).join(', ')} stoßen reihum mit Konterprofil aneinander, keines kann zuerst kommen. Die Schritte befestigen sie einzeln: einen dieser Anschlüsse stumpf stoßen.`
      : `${f.parts.map(say.name).join(', ')} sollen in einem Zug verbunden werden, doch ${f.text('between').split(' ').map(say.name).join(', ')} muss über die einen und unter die anderen. Die Schritte befestigen sie einzeln, von unten: einen dieser Anschlüsse stumpf stoßen oder ändern, was worauf liegt.`,
  'limit.parts': (f, say) =>
    `Mit ${f.parts.length === 1 ? say.name(f.part) : `${f.parts.length} weiteren Teilen`} hätte die Front ${f.number('count')} Teile; mehr als ${f.number('most')} werden nicht geplant, ${f.parts.length === 1 ? 'es bleibt' : 'sie bleiben'} weg. Teile seltener wiederholen oder einige entfernen.`,
  'limit.rules': (f) =>
    `Der Entwurf hat ${f.number('count')} Regeln; bis ${f.number('most')} bleibt das Arbeiten flott.`,
  'limit.letters': (f) =>
    `Die Schilder haben ${f.number('count')} Buchstaben; bis ${f.number('most')} bleibt das Arbeiten flott.`,
};
