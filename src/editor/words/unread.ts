import type { Expected, FOUND } from '../../measure/token.ts';
import type { Language } from '../../plan/words/languages.ts';
import { spoken } from './t.ts';

type Unread = Expected | (typeof FOUND)[number];

const GERMAN: Readonly<Record<Unread, string>> = {
  'no more than 200 characters': 'höchstens 200 Zeichen',
  'a sign (+ - * /), a unit or the end': 'ein Rechenzeichen (+ - * /), eine Einheit oder das Ende',
  'a length': 'eine Länge',
  'a number': 'eine Zahl',
  'a number, a unit or a sign': 'eine Zahl, eine Einheit oder ein Rechenzeichen',
  'a number, or a unit: in, ft, mm, cm or m': 'eine Zahl, oder eine Einheit: mm, cm, m, in oder ft',
  'a number other than 0 below a fraction': 'eine Zahl außer 0 unter dem Bruchstrich',
  'a number other than 0 to divide by': 'eine Zahl außer 0 als Teiler',
  'a number without unit to divide by': 'eine Zahl ohne Einheit als Teiler',
  'a number without unit to multiply by': 'eine Zahl ohne Einheit als Faktor',
  'a fraction less than 1 behind a whole number': 'ein Bruch unter 1 hinter einer ganzen Zahl',
  'a decimal point': 'ein Komma mit einer, zwei oder mehr als drei Stellen dahinter',
  'thousands written close, such as 1200, or one decimal mark, such as 1.2':
    'Tausender ohne Zeichen, etwa 1200, oder ein einziges Komma, etwa 1,2',
  'a closing parenthesis': 'eine schließende Klammer',
  'one unit only': 'nur eine Einheit',
  'two lengths to add or take away': 'zwei Längen zum Zusammenzählen oder Abziehen',
  'the end': 'das Ende',
  'a number without unit': 'eine Zahl ohne Einheit',
  'a number beyond measure': 'eine maßlose Zahl',
};

const SPANISH: Readonly<Record<Unread, string>> = {
  'no more than 200 characters': 'no más de 200 caracteres',
  'a sign (+ - * /), a unit or the end': 'un signo (+ - * /), una unidad o el final',
  'a length': 'un largo',
  'a number': 'un número',
  'a number, a unit or a sign': 'un número, una unidad o un signo',
  'a number, or a unit: in, ft, mm, cm or m': 'un número, o una unidad: mm, cm, m, in o ft',
  'a number other than 0 below a fraction': 'un número distinto de 0 bajo la fracción',
  'a number other than 0 to divide by': 'un número distinto de 0 entre el que dividir',
  'a number without unit to divide by': 'un número sin unidad entre el que dividir',
  'a number without unit to multiply by': 'un número sin unidad por el que multiplicar',
  'a fraction less than 1 behind a whole number': 'una fracción menor que 1 tras un número entero',
  'a decimal point': 'una coma con una, dos o más de tres cifras detrás',
  'thousands written close, such as 1200, or one decimal mark, such as 1.2':
    'millares sin separar, como 1200, o una sola coma, como 1,2',
  'a closing parenthesis': 'un paréntesis de cierre',
  'one unit only': 'una sola unidad',
  'two lengths to add or take away': 'dos largos que sumar o restar',
  'the end': 'el final',
  'a number without unit': 'un número sin unidad',
  'a number beyond measure': 'un número desmedido',
};

/** What the reader of measures says, by language; its own words are English. */
const UNREAD: Readonly<Record<Language, Readonly<Record<string, string>>>> = {
  en: {},
  de: GERMAN,
  es: SPANISH,
};

/** What was found or expected in a measure, in the language on screen; pieces of the text stay as typed. */
export const unreadWords = (text: string): string =>
  Object.hasOwn(UNREAD[spoken()], text) ? (UNREAD[spoken()][text] ?? text) : text;
