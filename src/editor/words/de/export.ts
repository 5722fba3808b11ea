import type { exportWords as en } from '../en/export.ts';

/** Words of the export menu. */
export const exportWords: Record<keyof typeof en, string> = {
  'export.packet': 'Werkstattmappe (PDF)',
  'export.patterns': 'Schablonen 1 : 1 (PDF)',
  'export.cutList': 'Zuschnittliste (CSV)',
  'export.shopping': 'Einkaufsliste (CSV)',
  'export.picture': 'Bild der Front (PNG)',
  'export.face': 'Umrisse der Front (SVG, DXF)',
  'export.signs': 'Schilder für Maschinen (SVG, DXF)',
  'export.plan': 'Ganzer Plan (JSON)',
  'export.working': 'Schreibe {done} von {of}',
  'export.failed': '{name} konnte nicht geschrieben werden: {why}',
};
