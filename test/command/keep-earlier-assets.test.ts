import {
  existsSync,
  mkdirSync,
  readFileSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { keepEarlierAssets } from '@/lib/command/keep-earlier-assets.mjs';
import { temporaryFolder } from '../setup/temporary-folder';

const daySeconds = 86_400;

/** Seconds since 1970. */
function ago(days: number): number {
  return Date.now() / 1000 - days * daySeconds;
}

/** What a build does to the folder: everything but the cache goes, and new assets come. */
function build(next: string, names: string[]) {
  const keep = keepEarlierAssets(next);
  rmSync(join(next, 'static'), { recursive: true, force: true });
  mkdirSync(join(next, 'static/chunks'), { recursive: true });
  for (const name of names) writeFileSync(join(next, 'static/chunks', name), `new ${name}`);
  keep();
}

describe('keepEarlierAssets', () => {
  it('keeps the parts of the two builds before, which open pages may still ask for', () => {
    const next = temporaryFolder();
    build(next, ['a.js', 'shared.js']);
    build(next, ['b.js', 'shared.js']);
    build(next, ['c.js', 'shared.js']);
    for (const name of ['a.js', 'b.js', 'c.js', 'shared.js']) {
      expect(readFileSync(join(next, 'static/chunks', name), 'utf8')).toBe(`new ${name}`);
    }
  });

  it('drops what no build of the last thirty days has made, and keeps what one has', () => {
    const next = temporaryFolder();
    build(next, ['old.js', 'recent.js']);
    utimesSync(join(next, 'static/chunks/old.js'), ago(31), ago(31));
    utimesSync(join(next, 'static/chunks/recent.js'), ago(29), ago(29));
    build(next, ['new.js']);
    expect(existsSync(join(next, 'static/chunks/old.js'))).toBe(false);
    expect(existsSync(join(next, 'cache/earlier-assets/chunks/old.js'))).toBe(false);
    expect(existsSync(join(next, 'static/chunks/recent.js'))).toBe(true);
  });

  it('counts the days from the last build that made a part, not the first', () => {
    const next = temporaryFolder();
    build(next, ['same.js']);
    utimesSync(join(next, 'static/chunks/same.js'), 1, 1);
    build(next, ['same.js']);
    build(next, ['other.js']);
    expect(existsSync(join(next, 'static/chunks/same.js'))).toBe(true);
    utimesSync(join(next, 'static/chunks/other.js'), ago(29), ago(29));
    build(next, ['other.js']);
    const madeAt = statSync(join(next, 'static/chunks/other.js')).mtimeMs / 1000;
    expect(madeAt).toBeGreaterThan(ago(1));
  });
});
