import type { Mm } from '../measure/units.ts';

// Limits and lists of the format that more than its schema asks for, without the library for schemas.

/** The format version that this build writes. */
export const FORMAT_VERSION = 1;

/** Longest file that is read, in characters: two thousand parts with opened fonts stay well below. */
export const MOST_CHARACTERS = 64_000_000;

/** Twenty meters: no room holds more, and every stage stays quick within it. */
export const FARTHEST: Mm = 20_000;

/** Corners that are set one by one: an outline keeps at least three, an open path two. */
export const leastCorners = (closed: boolean): number => (closed ? 3 : 2);
export const MOST_CORNERS = 200;
/** A corner that is stepped has three sides in its place; a path cut on one of them meets that one twice. */
export const MOST_SIDES = 4 * MOST_CORNERS + 1;

/** A handle of a smooth side stands no farther off than so many times the box around the corners. */
export const FARTHEST_HANDLE = 20;

/** Edges of a bed bow by less than two inches; our own choice, no source. */
export const FARTHEST_BOW: Mm = 50;

/** Straight segments that an arch or bow is made of where nothing is said. Our own choice. */
export const USUAL_SEGMENTS = 6;

/** Lower letters can neither be cut nor read; and their outlines drown in the tolerances. */
export const LEAST_CAP_HEIGHT: Mm = 1;

/** A picture is so many units high. */
export const PICTURE_HEIGHT = 10_000;
/** Colors that a picture has at most; more are merged when it is opened. */
export const MOST_PICTURE_COLORS = 8;

/** Photos that a design has at most, and base64 characters and pixels of each: all of them stay within a file. */
export const MOST_PHOTOS = 12;
export const MOST_PHOTO = 4_000_000;
export const MOST_PHOTO_PIXELS = 16_000_000;

export const LEVEL_IDS = ['rim', 'ledge', 'field', 'skin'] as const;

export const EVEN_MODES = ['gaps', 'flush', 'half', 'centers', 'most'] as const;

/** Sections of the packet that may be left out; cover and cautions never are. */
export const PACKET_SECTIONS = [
  'steps',
  'elevation',
  'layers',
  'pieceMarks',
  'shopping',
  'cutList',
  'boards',
  'sheets',
  'saw',
  'joints',
  'bench',
  'paint',
  'lettering',
  'marks',
  'places',
  'maps',
  'fastening',
  'swing',
  'load',
] as const;
export type PacketSection = (typeof PACKET_SECTIONS)[number];

/** Forms of one letter that are offered, of each feature of its font. */
export const MOST_FORMS = 99;
