import { FORMAT_VERSION } from '../limits.ts';

/** One step of migration: takes the plain data of a version and gives that of the next one. */
export type Migration = (data: Readonly<Record<string, unknown>>) => Record<string, unknown>;

/**
 * By the version they start from; a file for each. Format 1 is the first that was ever released, so there
 * is nothing to migrate from yet, and a version below 1 never existed.
 */
const MIGRATIONS: ReadonlyMap<number, Migration> = new Map();

export type Migrated =
  | { readonly ok: true; readonly data: Record<string, unknown>; readonly from: number }
  | {
      readonly ok: false;
      readonly why: 'not-a-design' | 'newer' | 'unknown-version';
      readonly version: unknown;
    };

/** Brings the data of any released version to the current one. Versions from the future are refused. */
export function migrate(data: unknown, migrations = MIGRATIONS, current = FORMAT_VERSION): Migrated {
  if (typeof data !== 'object' || data === null || Array.isArray(data) || !Object.hasOwn(data, 'showface')) {
    return { ok: false, why: 'not-a-design', version: undefined };
  }
  let now = data as Record<string, unknown>;
  const version = now.showface;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return { ok: false, why: 'unknown-version', version };
  }
  if (version > current) return { ok: false, why: 'newer', version };
  for (let v = version; v < current; v++) {
    const step = migrations.get(v);
    if (!step) return { ok: false, why: 'unknown-version', version };
    now = { ...step(now), showface: v + 1 };
  }
  return { ok: true, data: now, from: version };
}
