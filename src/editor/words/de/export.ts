import type { exportWords as en } from '../en/export.ts';

/** Words of the export menu. */
export const exportWords: Record<keyof typeof en, string> = {
  'export.all': 'Alles in einer Datei (ZIP)',
  'export.onePage': 'Eine Seite zum Zeigen (PDF)',
  'export.packet': 'Werkstattmappe (PDF)',
  'export.patterns': 'Schablonen 1 : 1 (PDF)',
  'export.labels': 'Etiketten für die Stücke (PDF)',
  'export.cutList': 'Zuschnittliste (CSV)',
  'export.paint': 'Farbe nach Anstrich (CSV)',
  'export.shopping': 'Einkaufsliste (CSV)',
  'export.lists': 'Preise, und was vorhanden ist (CSV)',
  'export.picture': 'Bild der Front (PNG)',
  'export.room': 'Bett im Raum, als Maßstab (SVG)',
  'export.face': 'Bild der Front in voller Größe (SVG)',
  'export.outlines': 'Umrisse der Front (SVG, DXF)',
  'export.signs': 'Schilder für CNC und Plotter (SVG, DXF)',
  'export.plan': 'Ganzer Plan (JSON)',
  'export.waiting': '{name}: der Plan für den jetzigen Entwurf wird berechnet…',
  'export.working': '{name}: {done} von {of} wird geschrieben…',
  'export.stopped': '{name} wurde nicht geschrieben.',
  'export.noPlan': '{name} wurde nicht geschrieben: für den jetzigen Entwurf gibt es keinen Plan.',
  'export.died':
    'was schreibt, endete von selbst, vielleicht aus Mangel an Speicher. Andere Seiten schließen und erneut versuchen.',
  'export.script': 'was schreibt, ließ sich nicht laden. Erneut versuchen, wenn die Verbindung wieder steht.',
  'export.doubtTitle': 'Diese Fehler lassen keinen Plan zu',
  'export.doubt':
    '{name}: was danach gesägt oder gekauft wird, kann falsch sein. Der Befehl schreibt nichts von einem Entwurf mit Fehlern.',
  'export.anyway': 'Trotzdem schreiben',
  'export.toChecks': 'Zu den Prüfungen',
  'export.failed': '{name} konnte nicht geschrieben werden: {why}',
  'export.share': 'Bild und Seite weitergeben …',
  'share.title': 'Weitergeben',
  'share.lead': 'Bild und Seite gehen dorthin, wo Sie gleich wählen; vorher geht nichts irgendwohin.',
  'share.now': 'Ziel wählen',
  'share.failed': 'Nicht weitergegeben: {why}',
};
