import type { Hardware, Stock } from '../../materials/types.ts';
import type { LengthUnit } from '../../measure/style.ts';
import type { Mm } from '../../measure/units.ts';
import type { Finish } from '../schema.ts';

/** What may be asked of an assembly. */
export type Question =
  | { readonly is: 'count'; readonly least: number; readonly most: number }
  | { readonly is: 'length'; readonly least: Mm; readonly most: Mm }
  | { readonly is: 'choice'; readonly of: readonly string[] }
  | { readonly is: 'yes' }
  | { readonly is: 'stock'; readonly form: Stock['form'] }
  /** Null: left bare. */
  | { readonly is: 'finish' };

/** A question that counts only where another choice is so, or is none of some. */
export type Asked = Question & {
  readonly where?: { readonly field: string; readonly is: readonly unknown[] };
};

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
