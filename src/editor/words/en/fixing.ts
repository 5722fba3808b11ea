/** Words of the fixing step. */
export const fixingWords = {
  'fixing.tabs': 'Parts of the fastening step',
  'fixing.order': 'Order of work',
  'fixing.fasteners': 'Brads & screws',
  'fixing.marks': 'Marks',
  'fixing.weight': 'Weight',

  'order.lead': 'Check off each step as it is done. What is done is kept with the design.',
  'order.count': '{done} of {all} done',

  'brads.settings': 'What you drive',
  'brads.lengths': 'Brad lengths on hand',
  'brads.lengthsHint': 'None checked: every length of the table counts.',
  'brads.spacing': 'Spacing',
  'brads.fromEdge': 'From ends and edges',
  'brads.shortOfFar': 'Short of the far side',
  'brads.bite': 'Least bite',
  'brads.screwOver': 'Screws for parts over',
  'brads.map': 'Where they go',
  'brads.mapPicture': '{count} brads and screws on the face',
  'brads.front': 'from the front',
  'brads.back': 'from behind',
  'brads.use': 'Total',
  'brads.glue': 'Glue: {volume} in beads.',
  'brads.table': 'Part by part',
  'brads.part': 'Part',
  'brads.from': 'Driven',
  'brads.none': 'Nothing to fasten yet.',
  'brads.biteOf': 'Bite',

  'marks.lead':
    'All marks run from one datum and are rounded there, never chained: carry them over with a story stick.',
  'marks.x': 'Across, from the left edge',
  'marks.y': 'Up, from the bottom edge',
  'marks.at': 'At',
  'marks.edges': 'Edges here',
  'marks.edge.x.low': 'left of {name}',
  'marks.edge.x.mid': 'middle of {name}',
  'marks.edge.x.high': 'right of {name}',
  'marks.edge.x.hole': 'hole of {name}',
  'marks.edge.y.low': 'bottom of {name}',
  'marks.edge.y.mid': 'middle of {name}',
  'marks.edge.y.high': 'top of {name}',
  'marks.edge.y.hole': 'hole of {name}',
  'marks.none': 'No marks yet.',

  'load.added': 'The face adds',
  'load.bare': 'The bare bed weighs',
  'load.liftAdded': 'More to lift at the far edge',
  'load.liftBare': 'The bare bed there',
  'load.moment': 'Added moment, bed lowered',
  'load.center': 'Center of gravity',
  'load.centerAt': '{x} from the left, {y} from the bottom, {z}',
  'load.mapPicture': 'The face with the center of gravity of what is added',
  'load.curve': 'Moment about the pivot through the swing',
  'load.curvePicture':
    'From stowed to lowered the moment of the bare bed goes from {bareStowed} to {bareLowered}, that of the face from {addedStowed} to {addedLowered}.',
  'load.angle': 'Lowered by',
  'load.seriesAdded': 'the face',
  'load.seriesBare': 'the bare bed',
  'load.table': 'As a table',
  'load.limits': 'Warn me over',
  'load.warnAdded': 'Added weight',
  'load.warnLift': 'Added lift',
  'load.byPart': 'Heaviest parts',
  'load.estimate':
    'Weights come from densities and sizes: an estimate. The bare bed’s pull without springs is shown beside it; what springs or struts carry is for their manufacturer to say.',

  'caution.wood':
    'MDF dust is harmful, and so is noise: use dust collection, and wear a mask and eye and ear protection.',
  'caution.saw':
    'Eye and ear protection on, guard in place, hands clear of the blade. Let it stop before you reach in.',
  'caution.swing':
    'Swing the bare bed slowly with a helper first: hinges and edges pinch. Keep children and pets out of the way.',
  'caution.weight':
    'More weight can bring the bed down. Have lift, hinges and latch set for it before anyone lies under it.',
  'caution.fastening':
    'Latch and brace the stowed bed before you work on it. Look for wires and pipes before you drive into a wall.',
  'caution.pages':
    'Measure the printed square before you cut: a pattern printed at the wrong size spoils the work.',

  'caution.export':
    'What is printed plans decoration, not structure: hinges, lift, latch and anchoring follow the hardware manufacturer. Print patterns at 100%.',
  'caution.putAway': 'Put this caution away',

  'caution.title': 'Before anybody lies under it',
  'caution.anchor':
    'Anchor the bed into the studs with the fasteners that the hardware manufacturer specifies. Decoration adds weight: ask the manufacturer whether hinges, lift and anchors carry it.',
  'caution.latch':
    'Fit a positive latch that holds the bed up without a hand on it, and try it with the added weight.',
  'caution.children':
    'Keep children and pets away from the swing. Lower and raise it with a clear view of the floor.',
  'caution.protect':
    'Wear eye and ear protection at the saw and a dust mask for sanding. MDF dust is harmful.',
  'caution.lead': 'Paint from before 1978 may hold lead: test before you sand or scrape.',
  'caution.codes':
    'Local codes come first. For wiring, structure, and wherever your place asks for one, call a licensed contractor. This tool plans decoration, not structure.',
};
