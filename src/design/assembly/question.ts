import type { Hardware, Stock } from '../../materials/types.ts';
import type { LengthUnit } from '../../measure/style.ts';
import type { Mm } from '../../measure/units.ts';
import type { Finish } from '../schema.ts';

/** How large an assembly is. */
export interface Size {
  readonly w: Mm;
  readonly h: Mm;
}

/** What may be asked of an assembly. */
export type Question =
  | { readonly is: 'count'; readonly least: number; readonly most: number }
  | { readonly is: 'length'; readonly least: Mm; readonly most: Mm }
  | { readonly is: 'choice'; readonly of: readonly string[] }
  | { readonly is: 'yes' }
  | { readonly is: 'stock'; readonly form: Stock['form'] }
  /** Null: left bare. */
  | { readonly is: 'finish' };

/** Where a question counts: only where another is answered so. */
interface Where {
  readonly field: string;
  readonly is: readonly unknown[];
}

/** A question with the answer by rule for a space of some size. */
export type Asked = Question & {
  readonly where?: Where | undefined;
  readonly first: Rule<Answer>;
};

/** What is answered by rule in a space of some size. */
type Rule<V> = (size: Size, has: Supplies) => V;

export type Questions = Readonly<Record<string, Asked>>;

/** An answer as a design keeps it. */
export type Answer = number | string | boolean | null;
export type Kept = Readonly<Record<string, Answer>>;

type AnswerTo<Q extends Question> = Q extends { is: 'count' | 'length' }
  ? number
  : Q extends { is: 'choice'; of: readonly (infer C)[] }
    ? C
    : Q extends { is: 'yes' }
      ? boolean
      : Q extends { is: 'stock' }
        ? string
        : string | null;

/** The answers to some questions. */
export type Answers<Q extends Questions> = { readonly [K in keyof Q]: AnswerTo<Q[K]> };

/** What a design has to make things of. */
export interface Supplies {
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly hardware: readonly Hardware[];
  readonly finishes: readonly Finish[];
  readonly unit: LengthUnit;
}

/** What is answered at first: always the same, or by rule. */
type By<V> = V | Rule<V>;
const by = <V extends Answer>(first: By<V>): Rule<V> => (typeof first === 'function' ? first : () => first);

const within = (least: number, most: number, first: By<number>) => {
  const found = by(first);
  return (...space: Parameters<Rule<number>>) => Math.min(most, Math.max(least, found(...space)));
};

/** How many: the nearest number that is allowed to what the rule comes to. */
export const count = (least: number, most: number, first: By<number>, where?: Where) => {
  const found = within(least, most, first);
  const whole: Rule<number> = (...space) => Math.round(found(...space));
  return { is: 'count', least, most, where, first: whole } as const;
};

/** How long: the rule holds within what is allowed. */
export const length = (least: Mm, most: Mm, first: By<Mm>, where?: Where) =>
  ({ is: 'length', least, most, where, first: within(least, most, first) }) as const;

/** One of some, which a plan names; yes or no; a stock of a form. */
export const choice = <const C extends string>(of: readonly C[], first: By<NoInfer<C>>) =>
  ({ is: 'choice', of, first: by(first) }) as const;

export const yes = (first: By<boolean>) => ({ is: 'yes', first: by(first) }) as const;

export const stock = <F extends Stock['form']>(form: F, first: By<string>, where?: Where) =>
  ({ is: 'stock', form, where, first: by(first) }) as const;

/** The same questions of each of two halves beside each other. */
export const inHalfOf = <Q extends Questions>(questions: Q): Q =>
  Object.fromEntries(
    Object.entries(questions).map(([name, question]) => {
      const first: Rule<Answer> = ({ w, h }, has) => question.first({ w: w / 2, h }, has);
      return [name, { ...question, first }];
    }),
  ) as Q;

/** What lies on fields, and the fields: in the second finish of the design and in its first. */
export const FINISH = {
  is: 'finish',
  first: (_: Size, { finishes }: Supplies) => (finishes[1] ?? finishes[0])?.id ?? null,
} as const;
export const FIELD = {
  is: 'finish',
  first: (_: Size, { finishes }: Supplies) => finishes[0]?.id ?? null,
} as const;

/** Whether an answer is one that the question allows. */
export function isAnswer(question: Question, answer: Answer | undefined, has: Supplies): answer is Answer {
  switch (question.is) {
    case 'count':
    case 'length': {
      const whole = question.is === 'length' || Number.isInteger(answer);
      return typeof answer === 'number' && whole && answer >= question.least && answer <= question.most;
    }
    case 'choice':
      return typeof answer === 'string' && question.of.includes(answer);
    case 'yes':
      return typeof answer === 'boolean';
    case 'stock':
      return typeof answer === 'string' && has.stocks.get(answer)?.form === question.form;
    case 'finish':
      return answer === null || has.finishes.some(({ id }) => id === answer);
  }
}

/** Whether a question counts, as the others are answered. */
export const isAsked = (question: Asked, answers: Kept): boolean =>
  question.where?.is.includes(answers[question.where.field]) ?? true;
