import type { fixingWords as en } from '../en/fixing.ts';

/** Words of the fixing step. */
export const fixingWords: Record<keyof typeof en, string> = {
  'fixing.tabs': 'Abschnitte der Montage',
  'fixing.order': 'Arbeitsfolge',
  'fixing.fasteners': 'Stifte & Schrauben',
  'fixing.marks': 'Anrisse',
  'fixing.weight': 'Gewicht',

  'order.lead': 'Jeden erledigten Schritt abhaken. Was getan ist, bleibt beim Entwurf.',
  'order.count': '{done} von {all} erledigt',

  'brads.settings': 'Womit befestigt wird',
  'brads.lengths': 'Vorhandene Stiftlängen',
  'brads.lengthsHint': 'Nichts angehakt: alle Längen der Tabelle gelten.',
  'brads.spacing': 'Abstand',
  'brads.fromEdge': 'Von Enden und Kanten',
  'brads.shortOfFar': 'Vor der Rückseite enden',
  'brads.bite': 'Greift mindestens',
  'brads.screwOver': 'Schrauben ab',
  'brads.map': 'Wo sie sitzen',
  'brads.mapPicture': '{count} Stifte und Schrauben auf der Front',
  'brads.front': 'von vorn',
  'brads.back': 'von hinten',
  'brads.use': 'Zusammen',
  'brads.glue': 'Leim: {volume} in Raupen.',
  'brads.table': 'Teil für Teil',
  'brads.part': 'Teil',
  'brads.from': 'Eingetrieben',
  'brads.none': 'Noch nichts zu befestigen.',
  'brads.biteOf': 'Greift',

  'marks.lead':
    'Alle Anrisse zählen ab einer Bezugskante und sind dort gerundet, nie aneinandergereiht: mit der Anreißlatte übertragen.',
  'marks.x': 'Quer, ab linker Kante',
  'marks.y': 'Hoch, ab Unterkante',
  'marks.at': 'Bei',
  'marks.edges': 'Kanten dort',
  'marks.edge.x.low': '{name} links',
  'marks.edge.x.mid': '{name} Mitte',
  'marks.edge.x.high': '{name} rechts',
  'marks.edge.x.hole': 'Loch von {name}',
  'marks.edge.y.low': '{name} unten',
  'marks.edge.y.mid': '{name} Mitte',
  'marks.edge.y.high': '{name} oben',
  'marks.edge.y.hole': 'Loch von {name}',
  'marks.none': 'Noch keine Anrisse.',

  'load.added': 'Gewicht der Front',
  'load.bare': 'Bett ohne Front',
  'load.liftAdded': 'Mehr Hebekraft am freien Ende',
  'load.liftBare': 'Bett ohne Front dort',
  'load.moment': 'Mehr Moment, Bett unten',
  'load.center': 'Schwerpunkt',
  'load.centerAt': '{x} von links, {y} von unten, {z}',
  'load.mapPicture': 'Die Front mit dem Schwerpunkt dessen, was dazukommt',
  'load.curve': 'Moment um den Drehpunkt über den Schwenk',
  'load.curvePicture':
    'Von hochgeklappt bis unten geht das Moment des Betts ohne Front von {bareStowed} bis {bareLowered}, das der Front von {addedStowed} bis {addedLowered}.',
  'load.angle': 'Gesenkt um',
  'load.seriesAdded': 'die Front',
  'load.seriesBare': 'Bett ohne Front',
  'load.table': 'Als Tabelle',
  'load.limits': 'Warnen ab',
  'load.warnAdded': 'Mehrgewicht',
  'load.warnLift': 'Mehr Hebekraft',
  'load.byPart': 'Schwerste Teile',
  'load.estimate':
    'Gewichte kommen aus Dichten und Maßen: ein Schätzwert. Daneben steht der Zug des Betts ohne Federn; was Federn oder Dämpfer tragen, sagt ihr Hersteller.',

  'caution.wood': 'MDF-Staub ist schädlich, Lärm auch: absaugen, Maske, Brille und Gehörschutz tragen.',
  'caution.saw':
    'Brille und Gehörschutz auf, Schutzhaube zu, Hände weg vom Blatt. Stillstand abwarten, bevor jemand hineingreift.',
  'caution.swing':
    'Das leere Bett zuerst langsam und zu zweit schwenken: Scharniere und Kanten quetschen. Kinder und Tiere fernhalten.',
  'caution.weight':
    'Mehr Gewicht kann das Bett fallen lassen. Hubbeschlag, Scharniere und Verriegelung darauf einstellen, bevor jemand darunter liegt.',
  'caution.fastening':
    'Das hochgeklappte Bett verriegeln und abstützen, bevor daran gearbeitet wird. Vor dem Bohren in die Wand nach Leitungen suchen.',
  'caution.pages':
    'Vor dem Schneiden das gedruckte Quadrat messen: ein falsch großes Muster verdirbt die Arbeit.',

  'caution.export':
    'Gedruckt wird Verkleidung geplant, kein Tragwerk: Scharniere, Hubbeschlag, Verriegelung und Verankerung nach Angabe des Beschlagherstellers. Schablonen mit 100 % drucken.',
  'caution.putAway': 'Hinweis ausblenden',

  'caution.title': 'Bevor jemand darunter liegt',
  'caution.anchor':
    'Das Bett in der tragenden Wand verankern (Mauerwerk: geeignete Dübel; Ständerwand: in den Ständern), mit den Befestigungen, die der Hersteller der Beschläge nennt. Die Verkleidung macht schwerer: beim Hersteller fragen, ob Scharniere, Hubbeschlag und Anker das tragen.',
  'caution.latch':
    'Eine Verriegelung einbauen, die das Bett ohne Hand oben hält, und mit dem Mehrgewicht erproben.',
  'caution.children':
    'Kinder und Tiere vom Schwenkbereich fernhalten. Nur mit freier Sicht auf den Boden senken und heben.',
  'caution.protect':
    'An der Säge Schutzbrille und Gehörschutz tragen, beim Schleifen Staubmaske. MDF-Staub ist schädlich.',
  'caution.lead': 'Alte Anstriche können Blei enthalten: vor dem Schleifen oder Kratzen testen.',
  'caution.codes':
    'Örtliche Vorschriften gehen vor. Für Elektrik, Tragwerk und wo es verlangt ist, einen Fachbetrieb holen. Dieses Werkzeug rechnet Verkleidung, kein Tragwerk.',
};
