import type { Lettering } from '../design/schema.ts';

export type SignMode = Lettering['make'];

/** Everything that pattern pages say; one table a language, which the plan hands over. */
export interface PatternWords {
  readonly pageOf: (page: number, of: number) => string;
  readonly joins: (name: string) => string;
  readonly at: (x: string, y: string) => string;
  readonly square: { readonly mm: string; readonly in: string };
  readonly print: string;
  /** On the first page of each pattern. */
  readonly caution: string;
  /** Where parts of a pattern have no page. */
  readonly bare: string;
  readonly ruler: { readonly mm: string; readonly in: string };
  readonly testTitle: string;
  readonly test: (length: string) => readonly string[];
  readonly across: (length: string) => string;
  readonly up: (length: string) => string;
  readonly mode: { readonly [M in SignMode]: string };
  /** Of pieces of a stencil that hang on one bridge. */
  readonly onOne: (count: number) => string;
  /** Of the registration holes of several colors. */
  readonly holes: string;
  /** Of those that lie off the board. */
  readonly tabs: (count: number) => string;
  /** Of the lines of `seams`. */
  readonly seams: string;
  readonly guide: { readonly baseline: string; readonly center: string };
  readonly layer: (number: number, of: number, finish: string) => string;
  /** Title of the pages that printed signs share, and of the line to measure on them. */
  readonly prints: string;
  readonly rule: string;
  readonly face: string;
  readonly part: (name: string) => string;
  readonly drilling: {
    readonly title: string;
    /** What is done with the templates. */
    readonly note: string;
    /** At a line that lies on an edge of what is beneath. */
    readonly edge: string;
    /** Of a hole that a screw passes through. */
    readonly through: (bit: string) => string;
    /** Of one that its thread cuts into: by the kind of wood, and how deep. */
    readonly lead: (soft: string, hard: string, deep: string) => string;
    /** Before the places of the middles of all. */
    readonly middle: string;
    /** Where the middle of one lies. */
    readonly place: (name: string, x: string, y: string) => string;
  };
  /** Title of the pages of story sticks. */
  readonly sticks: string;
  /** What is done with their strips. */
  readonly joinSticks: string;
  readonly strip: { readonly [A in 'x' | 'y']: (number: number, of: number) => string };
  readonly tab: string;
  readonly edge: {
    readonly [E in 'low' | 'mid' | 'high' | 'hole']: { readonly x: string; readonly y: string };
  };
  readonly datum: string;
  /** Of further edges at a mark. */
  readonly more: (count: number) => string;
}
