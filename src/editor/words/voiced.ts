import { t } from './t.ts';

const INCHES = /(\d+(?: \d+\/\d+|\/\d+|[.,]\d+)?)"/g;
const FEET = /(\d+)'(?= ?\d|(?!\w))/g;

/** A text as a voice reads it: a screen reader says “quote” for an inch mark, or nothing. */
export const voiced = (text: string): string =>
  text
    .replace(FEET, (_, count: string) => `${count} ${t(count === '1' ? 'voice.foot' : 'voice.feet')}`)
    .replace(INCHES, (_, count: string) => `${count} ${t(isOne(count) ? 'voice.inch' : 'voice.inches')}`);

/** “1 inch” and “3/4 inch”, but “1 1/2 inches”. */
const isOne = (count: string): boolean => count === '1' || /^\d+\/\d+$/.test(count);
