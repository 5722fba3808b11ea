import type { featureWords as en } from '../en/features.ts';

/** Features of fonts by their OpenType tags: the editor offers them, the packet tells those that were chosen. */
export const featureWords: Record<keyof typeof en, string> = {
  'letters.feature.set': 'Formatsatz {number}',
  'letters.feature.liga': 'Standardligaturen',
  'letters.feature.dlig': 'Bedingte Ligaturen',
  'letters.feature.hlig': 'Historische Ligaturen',
  'letters.feature.calt': 'Kontextbedingte Varianten',
  'letters.feature.smcp': 'Kapitälchen',
  'letters.feature.c2sc': 'Kapitälchen aus Großbuchstaben',
  'letters.feature.case': 'Zeichen auf Höhe der Großbuchstaben',
  'letters.feature.titl': 'Titelschriftvarianten',
  'letters.feature.swsh': 'Schwungbuchstaben',
  'letters.feature.salt': 'Stilistische Varianten',
  'letters.feature.hist': 'Historische Formen',
  'letters.feature.lnum': 'Versalziffern',
  'letters.feature.onum': 'Mediävalziffern',
  'letters.feature.pnum': 'Proportionale Ziffern',
  'letters.feature.tnum': 'Tabellenziffern',
  'letters.feature.zero': 'Null mit Schrägstrich',
  'letters.feature.frac': 'Brüche',
  'letters.feature.ordn': 'Ordnungszahlen',
};
