import type { Language } from '../../plan/words/languages.ts';

/** Plural categories in the order of the CLDR tables; a language has some of them. */
const ORDER = ['zero', 'one', 'two', 'few', 'many', 'other'];

const rules = new Map<Language, { readonly of: Intl.PluralRules; readonly categories: readonly string[] }>();

function rulesOf(language: Language) {
  const known = rules.get(language);
  if (known) return known;
  const of = new Intl.PluralRules(language);
  const has = of.resolvedOptions().pluralCategories as readonly string[];
  const made = { of, categories: ORDER.filter((category) => has.includes(category)) };
  rules.set(language, made);
  return made;
}

/** The form of a word that goes with a count, of forms in the order of the language's plural categories. */
export function pluralForm(language: Language, count: number, forms: readonly string[]): string {
  const { of, categories } = rulesOf(language);
  return forms[categories.indexOf(of.select(count))] ?? forms.at(-1) ?? '';
}
