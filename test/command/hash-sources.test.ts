import { mkdirSync, renameSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { hashSources } from '@/lib/command/hash-sources.mjs';
import { temporaryFolder } from '../setup/temporary-folder';

function sources() {
  const base = temporaryFolder();
  mkdirSync(join(base, 'app/jobs'), { recursive: true });
  writeFileSync(join(base, 'app/page.tsx'), 'page');
  writeFileSync(join(base, 'app/jobs/page.tsx'), 'jobs');
  writeFileSync(
    join(base, 'tsconfig.json'),
    '{ "compilerOptions": { "strict": true }, "include": ["a"] }',
  );
  return { base, hash: () => hashSources(['app', 'tsconfig.json', 'next.config.mjs'], base) };
}

describe('hashSources', () => {
  it('stays the same while names and contents do, whatever the clock says', () => {
    const { base, hash } = sources();
    const before = hash();
    utimesSync(join(base, 'app/page.tsx'), 1, 1);
    expect(hash()).toBe(before);
    expect(before).toMatch(/^[0-9a-f]{64}$/);
  });

  it.each<[string, (base: string) => void]>([
    ['a content changes', (base) => writeFileSync(join(base, 'app/jobs/page.tsx'), 'jobz')],
    ['a file is added', (base) => writeFileSync(join(base, 'app/new.tsx'), '')],
    ['a file goes', (base) => rmSync(join(base, 'app/page.tsx'))],
    [
      'a file is renamed',
      (base) => renameSync(join(base, 'app/page.tsx'), join(base, 'app/p.tsx')),
    ],
    ['a missing file appears', (base) => writeFileSync(join(base, 'next.config.mjs'), '')],
    [
      'two files change places',
      (base) => {
        writeFileSync(join(base, 'app/page.tsx'), 'jobs');
        writeFileSync(join(base, 'app/jobs/page.tsx'), 'page');
      },
    ],
    [
      'a compiler option changes',
      (base) => writeFileSync(join(base, 'tsconfig.json'), '{ "compilerOptions": {} }'),
    ],
  ])('differs when %s', (_, change) => {
    const { base, hash } = sources();
    const before = hash();
    change(base);
    expect(hash()).not.toBe(before);
  });

  it('takes a tsconfig.json that Next has laid out anew for the same', () => {
    const { base, hash } = sources();
    const before = hash();
    const file = join(base, 'tsconfig.json');
    writeFileSync(file, '{\n  "compilerOptions": {"strict": true},\n  "include": ["a", "b"]\n}');
    expect(hash()).toBe(before);
  });
});
