import { isLettered } from '../../design/made.ts';
import type { Design, Part } from '../../design/schema.ts';
import { pick } from '../../list/at.ts';

const TURNS = 4;
const LETTERS = 'NRSAGEBO&K';

/**
 * Edits like the first ones of a person: in turn a letter of the first lettering, of a kind that it has not yet, and a
 * part moved by a millimeter. A planner that has planned them plans the next edit sooner, whatever it is: the engine
 * that runs it has met the code of all stages, and of letters from nothing.
 */
export function practiceOf(design: Design): readonly Design[] {
  const { parts } = design;
  if (parts.length === 0) return [];
  const lettered = parts.find(isLettered);
  const text = lettered?.lettering.lines.map((line) => line.text).join('') ?? '';
  const fresh = [...LETTERS].filter((letter) => !text.includes(letter));
  return Array.from({ length: TURNS }, (_, turn) => {
    const moved = pick(parts, Math.floor((turn * parts.length) / TURNS));
    const { box } = moved;
    const by = withPart(design, { ...moved, box: { ...box, x: box.x + 1 } });
    const letter = fresh[turn];
    return lettered && letter ? [withPart(design, reworded(lettered, letter)), by] : [by];
  }).flat();
}

const withPart = (design: Design, part: Part): Design => ({
  ...design,
  parts: design.parts.map((p) => (p.id === part.id ? part : p)),
});

function reworded<P extends Extract<Part, { lettering: unknown }>>(part: P, letter: string): P {
  const { lettering } = part;
  const lines = lettering.lines.map((line, i) =>
    i === 0 ? { ...line, text: `${letter}${line.text.slice(1)}` } : line,
  );
  return { ...part, lettering: { ...lettering, lines } };
}
