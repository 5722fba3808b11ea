import { z } from 'zod';
import type { Box, Point, Polygon, Region } from '../../geometry/shape.ts';

/** What stands under a name of a file: what it may be, and how it is read from what it is told of. */
export interface Field<S> {
  /** Made where it is asked for: a file is written without it. */
  readonly schema: () => z.ZodType;
  /** Undefined where the file has nothing under the name. */
  readonly of: (source: S) => unknown;
}
export type Fields<S> = Readonly<Record<string, Field<S>>>;

/** A schema with a sentence for who reads it, where there is one. */
const told = (schema: z.ZodType, description?: string): z.ZodType =>
  description === undefined ? schema : schema.meta({ description });

/** A figure in a unit that its schema names; -0 is 0, so that bytes do not depend on the sign of nothing. */
const figure =
  (unit: string, rounded: (value: number) => number) =>
  <S>(of: (source: S) => number, description?: string): Field<S> => ({
    schema: () => told(z.number().meta({ unit }), description),
    of: (source) => rounded(of(source)) + 0,
  });
const to = (steps: number) => (value: number) => Math.round(value * steps) / steps;

/** To the micrometer. */
export const mm = figure('mm', to(1000));
export const deg = figure('deg', to(10_000));
export const money = figure('currency of the design', to(100));
/** Any other to the millionth, and one that is as the tables have it. */
export const measured = (unit: string) => figure(unit, to(1e6));
export const listed = (unit: string) => figure(unit, (value) => value);

export const count = <S>(of: (source: S) => number): Field<S> => ({
  schema: () => z.number().int().min(0),
  of,
});
export const text = <S>(of: (source: S) => string, description?: string): Field<S> => ({
  schema: () => told(z.string(), description),
  of,
});
export const flag = <S>(of: (source: S) => boolean): Field<S> => ({ schema: () => z.boolean(), of });
export const oneOf = <const L extends readonly string[], S>(
  values: L,
  of: (source: S) => L[number],
  description?: string,
): Field<S> => ({ schema: () => told(z.enum(values), description), of });

/** Fields of their own under one name. */
export function record<S>(fields: Fields<S>): Field<S> {
  const all = Object.entries(fields);
  return {
    schema: () => z.strictObject(Object.fromEntries(all.map(([name, { schema }]) => [name, schema()]))),
    of: (source) => Object.fromEntries(all.map(([name, { of }]) => [name, of(source)])),
  };
}

/** A field of something that the source has. */
export const via = <S, T>(
  from: (source: S) => T,
  { schema, of }: Field<T>,
  description?: string,
): Field<S> => ({ schema: () => told(schema(), description), of: (source) => of(from(source)) });

export const nullable = <S, T>(
  from: (source: S) => T | null,
  { schema, of }: Field<T>,
  description?: string,
): Field<S> => ({
  schema: () => told(schema().nullable(), description),
  of: (source) => {
    const value = from(source);
    return value === null ? null : of(value);
  },
});

export const optional = <S, T>(
  from: (source: S) => T | undefined,
  { schema, of }: Field<T>,
  description?: string,
): Field<S> => ({
  schema: () => told(schema().optional(), description),
  of: (source) => {
    const value = from(source);
    return value === undefined ? undefined : of(value);
  },
});

export const list = <S, T>(
  from: (source: S) => readonly T[],
  { schema, of }: Field<T>,
  description?: string,
): Field<S> => ({
  schema: () => told(z.array(schema()), description),
  of: (source) => from(source).map(of),
});

/** A list of so many. */
export const row = <S, T>(
  length: number,
  from: (source: S) => readonly T[],
  { schema, of }: Field<T>,
  description?: string,
): Field<S> => ({
  schema: () => told(z.array(schema()).length(length), description),
  of: (source) => from(source).map(of),
});

export const pair = <S, T>(
  from: (source: S) => readonly [T, T],
  { schema, of }: Field<T>,
  description?: string,
): Field<S> => ({
  schema: () => told(z.tuple([schema(), schema()]), description),
  of: (source) => from(source).map(of),
});

/** What is a figure or a text by itself, in lists and where it may be missing. */
export const A_LENGTH = mm((value: number) => value);
export const A_TEXT = text((value: string) => value);
export const A_COUNT = count((value: number) => value);

export const point: Field<Point> = pair(({ x, y }) => [x, y], A_LENGTH, 'x to the right, y up');
export const ring = list((points: readonly Point[]) => points, point);
export const region = list(
  (polygons: Region) => polygons,
  record<Polygon>({ outer: via(({ outer }) => outer, ring), holes: list(({ holes }) => holes, ring) }),
);
export const box: Fields<Box> = {
  x_mm: mm(({ x }) => x),
  y_mm: mm(({ y }) => y),
  width_mm: mm(({ w }) => w),
  height_mm: mm(({ h }) => h),
};

/** Fields of what the source has, among its own. */
export const within = <S, T>(from: (source: S) => T, fields: Fields<T>): Fields<S> =>
  Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, via(from, field)]));
export const boxIn = <S>(from: (source: S) => Box): Fields<S> => within(from, box);
