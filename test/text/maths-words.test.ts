import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { root } from '@/lib/command/root.mjs';
import { mathsNeeds, mathsWords, sharedNeeds } from '@/lib/text/maths-words';

const folder = join(root, 'lib/maths');
const source = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => readFileSync(join(folder, name), 'utf8'))
  .join('\n');
const found = (pattern: RegExp) => [
  ...new Set([...source.matchAll(pattern)].map(([, word]) => word!)),
];

describe('mathsWords', () => {
  it('has a sentence for every code that stands in lib/maths as it is', () => {
    const codes = found(/'([a-z0-9-]+\/[a-z0-9-]+)'/g);
    expect(codes.length).toBeGreaterThan(100);
    expect(codes.filter((code) => mathsWords(code) === null)).toEqual([]);
  });

  it('has a sentence for every reason that a shared guard puts behind a file name', () => {
    const reasons = found(/\$\{(?:file|code)\}\/([a-z-]+)`/g);
    const refused = found(/\brefuse\('([a-z-]+)'/g);
    const parts = found(/requirePart\([^)]*?'([a-z]+)',[^,)]*\)/g);
    expect(reasons.length).toBeGreaterThan(15);
    const all = [...reasons, ...refused, ...parts];
    expect(all.filter((reason) => mathsWords(`quantile/${reason}`) === null)).toEqual([]);
  });

  it('keeps no sentence that nothing throws', () => {
    const codes = new Set(found(/'([a-z0-9-]+\/[a-z0-9-]+)'/g));
    expect(Object.keys(mathsNeeds).filter((code) => !codes.has(code))).toEqual([]);
    const isSaid = (reason: string) => new RegExp(`[/'"]${reason}[\`'"]`).test(source);
    expect(Object.keys(sharedNeeds).filter((reason) => !isSaid(reason))).toEqual([]);
  });

  it('says what was being worked out and what that needs', () => {
    expect(mathsWords('dial-setting/dial')).toBe(
      'Working out what to put on the dial needs a division and a fine-feed ratio above zero; a figure here does not give that.',
    );
    expect(mathsWords('pair-clearance/picometres')).toBe(
      'Working out the pair clearance needs whole picometres; a figure here does not give that.',
    );
    expect(mathsWords('nobody/knows-this')).toBeNull();
  });
});
