import type { Mm } from '../../measure/units.ts';
import type { Axis, Edge } from '../field.ts';

/** `follow` takes its place from `lead`, unless something stronger holds it. */
export type Role = 'lead' | 'follow';

/** What one field of a rule is. From the slots follows how a rule is named, renamed, left, followed and shown. */
export type Slot<F> =
  | {
      readonly is: 'edge';
      readonly role: Role;
      /** The person may choose the other edge of the same thing. */
      readonly turns?: true;
      /** What it is held by: where that is carried along, the rule goes on holding. */
      readonly by?: F;
    }
  | { readonly is: 'part'; readonly role: Role; readonly by?: F }
  | {
      readonly is: 'parts';
      /** `share`: the others follow the first. */
      readonly role: 'follow' | 'share';
      /** With fewer the rule says nothing. */
      readonly least: 1 | 2;
      /** Numbers that belong to the parts one by one. */
      readonly beside?: F;
      /** What carrying some of them off leaves: a rule of the others, nothing, or all of it. */
      readonly carried: 'others' | 'nothing' | 'all';
    }
  /** The face, a level, or a part that others lie in. */
  | { readonly is: 'thing' }
  | {
      readonly is: 'measure';
      readonly least: Mm;
      /** Whether it is measured anew where a hand puts the part. */
      readonly follows?: true;
      /** The only measure or choice of its rule needs no name beside it. */
      readonly quiet?: true;
      /** It counts where a choice is so, and begins with a value there. */
      readonly where?: { readonly field: F; readonly is: string; readonly start: Mm };
    }
  | { readonly is: 'choice'; readonly of: readonly string[] }
  | { readonly is: 'plain' };

/** The room that a rule keeps along an axis, from the last of some edges to the first of others. */
export interface Room {
  readonly key: string;
  readonly axis: Axis;
  readonly from: readonly Edge[];
  readonly to: readonly Edge[];
  /** The measure that it is; none where it follows from other things. */
  readonly measure?: string;
}

/** A kind of rule but for its equations and its words. */
export interface RuleShape<R> {
  /** It holds along both axes, whatever its own. */
  readonly both?: true;
  /**
   * What pulling one edge of a part does to it: it ends where it holds that `edge`, it holds the other end alone
   * (`half`), it lets the part go as when it is carried (`block`), or it stays, since it says where the parts are
   * (`place`) or how large (`size`).
   */
  readonly pulled: 'edge' | 'half' | 'block' | 'place' | 'size';
  /** It would press an array to the size of one part. */
  readonly squeezes?: true;
  readonly slots: {
    readonly [K in Exclude<keyof R & string, 'id' | 'kind' | 'axis'>]-?: Slot<keyof R & string>;
  };
  /** How its rooms are drawn: each as a distance, or as gaps that go together; not at all where there are none. */
  readonly drawn?: 'distance' | 'gap';
  /** The rooms that it keeps beside a part which follows it. */
  rooms?(rule: R, part: string): readonly Room[];
  /** Of a margin all around: what it says along an axis, and what across it. */
  split?(rule: R, axis: Axis): { readonly along: object; readonly across: object };
  /** What it says of one end alone. */
  half?(rule: R, side: 'low' | 'high'): object;
}
