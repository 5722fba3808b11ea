/** Words of the export menu. */
export const exportWords = {
  'export.packet': 'Packet for the shop (PDF)',
  'export.patterns': 'Full-size patterns (PDF)',
  'export.cutList': 'Cut list (CSV)',
  'export.shopping': 'Shopping list (CSV)',
  'export.picture': 'Picture of the face (PNG)',
  'export.face': 'Outlines of the face (SVG, DXF)',
  'export.signs': 'Signs for a machine (SVG, DXF)',
  'export.plan': 'Whole plan (JSON)',
  'export.working': 'Writing {done} of {of}',
  'export.failed': '{name} could not be written: {why}',
} as const;
