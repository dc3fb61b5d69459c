import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { isInstalled } from '@/lib/command/install.mjs';
import { temporaryFolder } from '../setup/temporary-folder';

type Packages = Record<string, { version: string; integrity?: string; optional?: boolean }>;

function project(locked: Packages, present: Packages | undefined): string {
  const folder = temporaryFolder();
  writeFileSync(join(folder, 'package-lock.json'), JSON.stringify({ packages: locked }));
  if (present !== undefined) {
    mkdirSync(join(folder, 'node_modules'));
    const note = join(folder, 'node_modules/.package-lock.json');
    writeFileSync(note, JSON.stringify({ packages: present }));
  }
  return folder;
}

const own = { '': { version: '1.0.0' } };
const a = { 'node_modules/a': { version: '1.0.0', integrity: 'sha512-a' } };

describe('isInstalled', () => {
  it('is true when node_modules holds what the lock file says', () => {
    expect(isInstalled(project({ ...own, ...a }, a))).toBe(true);
  });

  it('does not miss what is optional, made for other machines', () => {
    const other = { 'node_modules/b': { version: '1.0.0', optional: true } };
    expect(isInstalled(project({ ...own, ...a, ...other }, a))).toBe(true);
  });

  it.each<[string, Packages | undefined]>([
    ['there is no node_modules', undefined],
    ['a package is missing', {}],
    ['a version differs', { 'node_modules/a': { version: '1.0.1', integrity: 'sha512-a' } }],
    ['the content differs', { 'node_modules/a': { version: '1.0.0', integrity: 'sha512-b' } }],
  ])('is false when %s', (_, present) => {
    expect(isInstalled(project({ ...own, ...a }, present))).toBe(false);
  });

  it('is true for the packages these tests run with', () => {
    expect(isInstalled()).toBe(true);
  });
});
