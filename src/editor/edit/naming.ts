import type { Edit } from '../../design/edit/edit.ts';
import { replacing } from '../../design/edit/make.ts';
import type { Axis, Part } from '../../design/schema.ts';
import { boxArea, surrounds } from '../../geometry/box.ts';
import type { Box } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { boxIn } from '../../layout/boxIn.ts';
import { partOf } from '../../layout/reference.ts';
import { otherAxis } from '../../layout/span.ts';
import type { Shown } from '../document/shown.ts';
import { t, type WordKey } from '../words/t.ts';
import { numberedName } from './ids.ts';
import {
  inReadingOrder,
  NOUNS,
  type Noun,
  nounOf,
  type Place,
  tellingAxis,
  type Whereabouts,
  whereIn,
} from './whereabouts.ts';

/** More parts alike than this are counted where the places of some are the same. */
const FEW = 3;
/** What lies on more of the face than this is told by where it is on the face: so large a part is its ground. */
const GROUND = 0.5;
/** A frame is that of a part in it that takes up this much of it. */
const FRAMED = 0.5;
/** Names longer than this are not repeated in those of what lies on them. */
const SHORT = 40;

/** A part to be named. */
export interface Unnamed {
  readonly id: string;
  /**
   * Made anew where a hand meant it, or by a key, which puts it in the middle whatever is meant: that place is not
   * told. Else it is a copy, and has the name of what it is a copy of.
   */
  readonly made?: 'here' | 'anywhere';
  /** The axis along which it is a mirror image. */
  readonly mirrored?: Axis | undefined;
}

/**
 * The edits that name parts of a design by what each is and where: “Left door”, “Left door top rail”. Names that a
 * person gave, which copies bring along, are kept: turned in a mirror image, counted where they are taken. No two
 * names are alike.
 */
export function namesFor(shown: Shown, unnamed: readonly Unnamed[]): Edit[] {
  const names = new Naming(shown, unnamed);
  const { design } = shown;
  return unnamed.flatMap(({ id }): Edit[] => {
    const part = design.parts.find((one) => one.id === id);
    const name = names.of(id);
    return part && name !== part.name ? [replacing('parts', { ...part, name })] : [];
  });
}

/** A name that was made of a noun and a place, or could have been. */
function nounIn(name: string, carriers: readonly string[]): Noun | null {
  const told = name.toLowerCase().replace(/ \d+$/, '');
  for (const noun of NOUNS) {
    for (const place of [null, ...PLACES]) {
      const plain = placed(noun, place);
      if (told === plain.toLowerCase()) return noun;
      if (!told.endsWith(plain.toLowerCase())) continue;
      if (carriers.some((carrier) => told === onCarrier(carrier, plain).toLowerCase())) return noun;
    }
  }
  return null;
}

const ENDS = ['low', 'mid', 'high'] as const;
const PLACES: readonly Whereabouts[] = [null, ...ENDS]
  .flatMap((x) => [null, ...ENDS].map((y): Whereabouts => ({ x, y })))
  .filter(({ x, y }) => x !== null || y !== null);

/** A noun at a place, as it stands within a name. */
function placed(noun: Noun, at: Whereabouts | null): string {
  const word = t(`noun.${noun}`);
  const place = at ? placeWords(at) : '';
  return place === '' ? word : t('name.at', { place, noun: word });
}

function placeWords({ x, y }: Whereabouts): string {
  if (x === 'mid' && y === 'mid') return t('place.center');
  const word = (axis: Axis, place: Place): string => (place ? t(`place.${axis}.${place}` as WordKey) : '');
  const [up, across] = [word('y', y), word('x', x)];
  return up && across ? t('place.both', { up, across }) : up || across;
}

const onCarrier = (carrier: string, name: string): string => t('name.on', { carrier, name });

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A part that is named by what it is and where. */
interface Told {
  readonly id: string;
  readonly noun: Noun;
  readonly box: Box;
  /** What its name begins with: the part that it lies on or frames; null: it is told by its place on the face. */
  readonly carrier: string | null;
  /** Nouns with places that tell it, the shortest first. */
  readonly ways: readonly string[];
}

/** By what it is alone. */
const untold = ({ id, box }: Part, noun: Noun): Told => ({
  id,
  noun,
  box,
  carrier: null,
  ways: [placed(noun, null)],
});

/** Names parts one by one, what they lie on before them. */
class Naming {
  private readonly parts: ReadonlyMap<string, Part>;
  private readonly waiting: Map<string, Unnamed>;
  private readonly told = new Map<string, Told>();
  private readonly given = new Map<string, string>();
  private readonly taken = new Set<string>();
  private readonly boxes: ReadonlyMap<string, Box>;
  private readonly face: Box;

  constructor({ design, layout, face }: Shown, unnamed: readonly Unnamed[]) {
    this.parts = new Map(design.parts.map((part) => [part.id, part]));
    this.waiting = new Map(unnamed.map((one) => [one.id, one]));
    for (const part of design.parts) if (!this.waiting.has(part.id)) this.taken.add(part.name.toLowerCase());
    this.boxes = layout.boxes;
    this.face = { x: 0, y: 0, w: face.width, h: face.height };
    const known = [...new Set(design.parts.map((part) => part.name))];
    for (const { id, made } of unnamed) {
      const part = this.parts.get(id);
      if (!part) continue;
      const noun = made ? nounOf(part, this.boxOf(part), this.face) : nounIn(part.name, known);
      if (noun) this.told.set(id, made === 'anywhere' ? untold(part, noun) : this.tell(part, noun));
    }
  }

  of(id: string): string {
    const wanted = this.waiting.get(id);
    if (wanted) {
      const told = this.told.get(id);
      if (told) this.nameAlike(told);
      else this.give(wanted.id, this.kept(wanted));
    }
    return this.given.get(id) ?? this.parts.get(id)?.name ?? id;
  }

  private give(id: string, name: string): void {
    this.waiting.delete(id);
    this.given.set(id, name);
    this.taken.add(name.toLowerCase());
  }

  /** A name that a person gave to what this is a copy of. */
  private kept({ id, mirrored }: Unnamed): string {
    const own = this.parts.get(id)?.name ?? id;
    const name = mirrored ? onOtherSide(own, mirrored) : own;
    if (!this.taken.has(name.toLowerCase())) return name;
    const plain = name.replace(/ \d+$/, '');
    return numberedName(this.taken, plain, this.taken.has(plain.toLowerCase()) ? 2 : 1);
  }

  /** Names all that are alike at once: each by its place, or in reading order by number. */
  private nameAlike({ noun, carrier }: Told): void {
    const alike = [...this.told.values()].filter(
      (one) => one.noun === noun && one.carrier === carrier && this.waiting.has(one.id),
    );
    // Taken out first: what lies on each other in a ring is not asked for again.
    for (const { id } of alike) this.waiting.delete(id);
    const before = carrier === null ? '' : this.of(carrier);
    const full = (name: string) => capital(before === '' ? name : onCarrier(before, name));
    const way = telling(alike);
    if (way === null) alike.sort((a, b) => inReadingOrder(a.box, b.box));
    for (const one of alike) {
      if (way === null) this.give(one.id, numberedName(this.taken, full(placed(noun, null)), 1));
      else {
        const ways = one.ways.slice(Math.min(way, one.ways.length - 1)).map(full);
        const free = ways.find((name) => !this.taken.has(name.toLowerCase()));
        this.give(one.id, free ?? numberedName(this.taken, ways[0] ?? full(placed(noun, null)), 2));
      }
    }
  }

  private boxOf(part: Part): Box {
    return boxIn(this.boxes, part);
  }

  private tell(part: Part, noun: Noun): Told {
    const box = this.boxOf(part);
    const carrier = this.carrierOf(part, box);
    const within = carrier ? this.boxOf(carrier) : this.face;
    const at = whereIn(box, within);
    const axis = tellingAxis(part, noun, box, within);
    const first = at[axis] === null ? otherAxis(axis) : axis;
    const isCentered = at.x === 'mid' && at.y === 'mid' && part.kind !== 'strip';
    const one: Whereabouts = isCentered ? at : { x: null, y: null, [first]: at[first] };
    // One thing on another needs no place; bars have one, as a rail of a door has.
    const places = carrier && part.kind !== 'strip' ? [null, one, at] : [one, at];
    const ways = [...new Set(places.map((place) => placed(noun, place)))];
    return { id: part.id, noun, box, carrier: carrier?.id ?? null, ways };
  }

  /** The part that another's name begins with: what it frames, or lies on. */
  private carrierOf(part: Part, box: Box): Part | null {
    const isTelling = (one: Part | undefined): one is Part =>
      one !== undefined &&
      // A panel on a panel is told by its place: “panel panel” tells nothing.
      one.kind !== part.kind &&
      (this.waiting.has(one.id) || one.name.length <= SHORT) &&
      boxArea(this.boxOf(one)) <= GROUND * boxArea(this.face);
    if (part.kind === 'run') {
      const framed = [...this.parts.values()].filter((one) => {
        const inner = this.boxOf(one);
        return (
          isTelling(one) && surrounds(box, inner, SAME_LENGTH) && boxArea(inner) >= FRAMED * boxArea(box)
        );
      });
      const [largest] = framed.sort((a, b) => boxArea(this.boxOf(b)) - boxArea(this.boxOf(a)));
      if (largest) return largest;
    }
    const under = this.parts.get(partOf(part.on) ?? '');
    return isTelling(under) ? under : null;
  }
}

/** The way by which all of many parts are told apart; the shortest for a few, null where they have to be counted. */
function telling(alike: readonly Told[]): number | null {
  if (alike.length <= FEW) return 0;
  const isTelling = (way: number) =>
    new Set(alike.map(({ ways }) => ways[Math.min(way, ways.length - 1)])).size === alike.length;
  return [0, 1, 2].find(isTelling) ?? null;
}

/** Words for sides, by what is turned about: beginnings of words that are bent, and whole words. */
const SIDES = {
  x: [['side.left', 'side.right', '']],
  y: [
    ['side.upper', 'side.lower', ''],
    ['side.top', 'side.bottom', '(?!\\p{L})'],
  ],
} as const satisfies Readonly<Record<Axis, readonly (readonly [WordKey, WordKey, string])[]>>;

/** The name of a mirror image: what was left is right in it, what was upper is lower. */
function onOtherSide(name: string, axis: Axis): string {
  return SIDES[axis].reduce((turned, [a, b, end]) => {
    const [one, other] = [t(a), t(b)];
    return turned.replace(new RegExp(`(?<!\\p{L})(${one}|${other})${end}`, 'giu'), (word) => {
      const to = word.toLowerCase() === one ? other : one;
      return word.charAt(0) === word.charAt(0).toLowerCase() ? to : capital(to);
    });
  }, name);
}
