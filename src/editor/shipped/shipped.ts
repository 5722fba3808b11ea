import brads from '../../../assets/materials/brads.json';
import containers from '../../../assets/materials/containers.json';
import fonts from '../../../assets/materials/fonts.json';
import glues from '../../../assets/materials/glues.json';
import hardware from '../../../assets/materials/hardware.json';
import materials from '../../../assets/materials/materials.json';
import mattresses from '../../../assets/materials/mattresses.json';
import papers from '../../../assets/materials/papers.json';
import screws from '../../../assets/materials/screws.json';
import stocks from '../../../assets/materials/stocks.json';
import tapes from '../../../assets/materials/tapes.json';
import type { Tables } from '../../materials/types.ts';
import type { Language } from '../../plan/words/languages.ts';
import { tablesIn } from '../../plan/words/tableNames.ts';

/** The tables that come with the tool, as they are shipped. */
const SHIPPED = {
  materials,
  stocks,
  brads,
  screws,
  containers,
  glues,
  tapes,
  papers,
  mattresses,
  hardware,
  fonts,
} as Tables;

const named = new Map<Language, Tables>();

/** The tables named in a language; the same object every time, since plans are remembered by identity. */
export function tablesFor(language: Language): Tables {
  const known = named.get(language);
  if (known) return known;
  const tables = tablesIn(language, SHIPPED);
  named.set(language, tables);
  return tables;
}
