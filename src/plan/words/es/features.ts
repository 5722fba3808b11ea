import type { featureWords as en } from '../en/features.ts';

/** Features of fonts by their OpenType tags: the editor offers them, the packet tells those that were chosen. */
export const featureWords: Record<keyof typeof en, string> = {
  'letters.feature.set': 'Conjunto estilístico {number}',
  'letters.feature.liga': 'Ligaduras normales',
  'letters.feature.dlig': 'Ligaduras discrecionales',
  'letters.feature.hlig': 'Ligaduras históricas',
  'letters.feature.calt': 'Alternativas contextuales',
  'letters.feature.smcp': 'Versalitas',
  'letters.feature.c2sc': 'Versalitas a partir de mayúsculas',
  'letters.feature.case': 'Signos a la altura de las mayúsculas',
  'letters.feature.titl': 'Formas de titular',
  'letters.feature.swsh': 'Letras con rasgo',
  'letters.feature.salt': 'Alternativas estilísticas',
  'letters.feature.hist': 'Formas históricas',
  'letters.feature.lnum': 'Cifras alineadas',
  'letters.feature.onum': 'Cifras de estilo antiguo',
  'letters.feature.pnum': 'Cifras proporcionales',
  'letters.feature.tnum': 'Cifras tabulares',
  'letters.feature.zero': 'Cero tachado',
  'letters.feature.frac': 'Fracciones',
  'letters.feature.ordn': 'Ordinales',
};
