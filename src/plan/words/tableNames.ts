import type { Stock, Tables } from '../../materials/types.ts';
import { names as german, inch as germanInch } from './de/names.ts';
import { names as spanish, inch as spanishInch } from './es/names.ts';
import { LANGUAGES, type Language } from './languages.ts';

const PHRASES: Readonly<Record<Language, readonly (readonly [english: string, own: string])[]>> = {
  en: [],
  de: german,
  es: spanish,
};

/** What an inch is called where sizes without a word are not read as inches. */
const INCH: Readonly<Record<Language, string | null>> = { en: null, de: germanInch, es: spanishInch };

/** Lists whose names are words; beds and fonts go by the names of their trade. */
const NAMED = [
  'materials',
  'stocks',
  'brads',
  'screws',
  'containers',
  'glues',
  'tapes',
  'papers',
  'hardware',
] as const;

/** A table's name in a language: its words exchanged, its decimals in the language's notation. */
export function nameIn(language: Language, name: string): string {
  const worded = PHRASES[language].reduce((text, [english, own]) => text.replace(english, own), name);
  return worded.replace(/(\d)\.(\d)/g, `$1${LANGUAGES[language].notation.decimalMark}$2`);
}

const isMetric = (stock: Stock): boolean => / mm\b/.test(stock.name);

/** A stock's name with its unit: `Kiefer 1 x 3` is neither a length nor a name to who measures in millimeters. */
const withUnit = (stock: Stock, inch: string): Stock =>
  isMetric(stock) ? stock : { ...stock, name: stock.name.replace(/\d[\d/ x]*(?=,|$)/, `$& ${inch}`) };

/** Stock that is sold by millimeters before stock sold by inches, otherwise in the table's order. */
const metricFirst = (stocks: readonly Stock[]): readonly Stock[] => [
  ...stocks.filter(isMetric),
  ...stocks.filter((stock) => !isMetric(stock)),
];

/**
 * The tables that come with the tool, their entries named in a language; stock in the order in which who speaks it
 * is likely to buy it. Everything else is as it was.
 */
export function tablesIn(language: Language, tables: Tables): Tables {
  if (PHRASES[language].length === 0) return tables;
  const named = NAMED.map((list) => [
    list,
    tables[list].map((entry) => ({ ...entry, name: nameIn(language, entry.name) })),
  ]);
  const own = { ...tables, ...(Object.fromEntries(named) as Partial<Tables>) };
  const inch = INCH[language];
  return inch === null ? own : { ...own, stocks: metricFirst(own.stocks.map((s) => withUnit(s, inch))) };
}
