/** Words of the export menu. */
export const exportWords = {
  'export.all': 'Everything, in one file (ZIP)',
  'export.packet': 'Shop packet (PDF)',
  'export.patterns': 'Full-size patterns (PDF)',
  'export.cutList': 'Cut list (CSV)',
  'export.paint': 'Paint by finish (CSV)',
  'export.shopping': 'Shopping list (CSV)',
  'export.picture': 'Picture of the face (PNG)',
  'export.face': 'Face (SVG picture, DXF outlines)',
  'export.signs': 'Signs for CNC, laser or cutter (SVG, DXF)',
  'export.plan': 'Whole plan (JSON)',
  'export.waiting': '{name}: working out the plan of the design as it is now…',
  'export.working': '{name}: writing {done} of {of}…',
  'export.stopped': '{name} was not written.',
  'export.noPlan': '{name} was not written: there is no plan of the design as it is now.',
  'export.died':
    'what writes it ended by itself, perhaps for want of memory. Close other pages and try again.',
  'export.script': 'what writes it could not be loaded. Try again when the connection is back.',
  'export.doubtTitle': 'These errors forbid a plan',
  'export.doubt':
    '{name}: what is cut or bought by it may be wrong. The command writes nothing of a design with errors.',
  'export.anyway': 'Write it anyway',
  'export.toChecks': 'Go to the checks',
  'export.failed': '{name} could not be written: {why}',
} as const;
