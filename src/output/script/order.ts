import { directed } from '../../lettering/shaping/bidi.ts';
import { pick } from '../../list/at.ts';

const RIGHT_TO_LEFT = /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}]/u;

/**
 * The characters of a line in the order in which they stand from left to right: the Unicode Bidirectional
 * Algorithm (UAX 9), in a line that runs from the left as the packet's languages do. Brackets in stretches that run to the left are mirrored.
 */
export function fromLeft(text: string): string {
  if (!RIGHT_TO_LEFT.test(text)) return text;
  const chars = [...text];
  const { order, mirrored } = directed(chars, 'ltr');
  return order.map((i) => mirrored.get(i) ?? pick(chars, i)).join('');
}
