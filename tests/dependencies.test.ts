import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

/**
 * What can be held against the packages without asking a registry: that the lock file takes everything from
 * the registry alone and checks its bytes, and that what is shipped may be shipped.
 */
const ROOT = new URL('../', import.meta.url);
const read = (path: string) => JSON.parse(readFileSync(new URL(path, ROOT), 'utf8'));

interface Locked {
  readonly version: string;
  readonly resolved?: string;
  readonly integrity?: string;
  readonly hasInstallScript?: boolean;
  readonly link?: boolean;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
}

const manifest = read('package.json');
const lock = read('package-lock.json');
const locked = Object.entries(lock.packages as Record<string, Locked>).filter(([path]) => path !== '');
const names = (test: (one: Locked) => boolean) => locked.filter(([, one]) => test(one)).map(([path]) => path);

/** Packages that may run a script while they are installed: both choose a binary for the machine. */
const MAY_RUN = ['node_modules/esbuild', 'node_modules/fsevents'];

/** Licenses under which code and fonts may be passed on with the app, notices kept. */
const SHIPPABLE = ['MIT', 'ISC', '0BSD', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', 'BSL-1.0', 'OFL-1.1'];

describe('the lock file', () => {
  it('is of a form that holds hashes, and of these packages', () => {
    expect(lock.lockfileVersion).toBe(3);
    const { dependencies, devDependencies } = lock.packages[''];
    expect({ dependencies, devDependencies }).toEqual({
      dependencies: manifest.dependencies,
      devDependencies: manifest.devDependencies,
    });
    expect(locked.length).toBeGreaterThan(100);
  });

  it('checks the bytes of every package by a strong hash', () => {
    expect(names((one) => !/^sha512-[A-Za-z0-9+/]{86}==$/.test(one.integrity ?? ''))).toEqual([]);
  });

  it('takes nothing from anywhere but the registry', () => {
    const elsewhere = (one: Locked) =>
      one.link === true ||
      !/^\d/.test(one.version) ||
      !/^(https:\/\/registry\.npmjs\.org\/|$)/.test(one.resolved ?? '');
    expect(names(elsewhere)).toEqual([]);
  });

  it('lets no package run a script while it is installed, but those that are named', () => {
    expect(names((one) => one.hasInstallScript === true).filter((path) => !MAY_RUN.includes(path))).toEqual(
      [],
    );
  });
});

describe('the packages asked for', () => {
  it('are pinned to one version each', () => {
    const asked = Object.entries({ ...manifest.dependencies, ...manifest.devDependencies });
    expect(asked.filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(String(version)))).toEqual([]);
  });

  it('may be passed on, where they are shipped', () => {
    const shipped = locked.filter(([, one]) => one.dev !== true && one.devOptional !== true);
    const installed = shipped.filter(([path]) => existsSync(new URL(`${path}/package.json`, ROOT)));
    expect(installed.length).toBeGreaterThan(40);
    const odd = installed.flatMap(([path]) => {
      const { license } = read(`${path}/package.json`);
      return SHIPPABLE.includes(license) ? [] : [`${path}: ${license}`];
    });
    expect(odd).toEqual([]);
  });

  it('are the versions that are locked', () => {
    const direct = Object.keys({ ...manifest.dependencies, ...manifest.devDependencies });
    const other = direct.filter((name) => {
      const path = `node_modules/${name}`;
      return read(`${path}/package.json`).version !== lock.packages[path].version;
    });
    expect(other).toEqual([]);
  });
});
