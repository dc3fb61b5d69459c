import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { expect, it } from 'vitest';

/** Which folders each folder may import; the longest prefix wins. A new arrow is a decision. */
const mayImport: Record<string, string[]> = {
  'lib/maths': [],
  'lib/units': [],
  'lib/schema': ['lib/units'],
  'lib/rules': ['lib/maths', 'lib/units', 'lib/schema'],
  'lib/text': ['lib/schema', 'lib/units'],
  'lib/http': ['lib/schema', 'lib/text'],
  'lib/store': ['lib/schema', 'lib/rules'],
  'lib/outbox': ['lib/schema', 'lib/rules'],
  'lib/shelf': ['lib/schema'],
  'lib/gauge-port': ['lib/schema'],
  'lib/command': [],
  'app/ui': [
    'lib/maths',
    'lib/units',
    'lib/schema',
    'lib/rules',
    'lib/text',
    'lib/outbox',
    'lib/shelf',
    'lib/gauge-port',
  ],
  app: ['app/ui', 'lib'],
  'app/api': ['app/api', 'lib', 'seed'],
  seed: ['lib/schema', 'lib/store'],
};
const folders = Object.keys(mayImport).sort((a, b) => b.length - a.length);
const folderOf = (file: string) => folders.find((folder) => file.startsWith(`${folder}/`));

it('lets every import follow an arrow', () => {
  const broken = [...sources('lib'), ...sources('app'), ...sources('seed')].flatMap((file) => {
    const home = folderOf(file);
    if (home === undefined) return [`${file} is in no folder that has a line in mayImport`];
    return imports(file)
      .filter((target) => /^(lib|app|test|seed|prisma)\//.test(target))
      .filter((target) => ![home, ...mayImport[home]!].some((to) => target.startsWith(`${to}/`)))
      .map((target) => `${file} may not import ${target}`);
  });
  expect(broken).toEqual([]);
});

it('keeps the maths free of everything but itself', () => {
  const targets = sources('lib/maths').flatMap((file) => imports(file));
  expect(targets.filter((target) => !target.startsWith('lib/maths/'))).toEqual([]);
});

it('sends no schema library to the browser', () => {
  // What runs there is typed by the schemas; what comes in from outside is judged by the server.
  const reached = new Set<string>();
  const zodFrom: string[] = [];
  const follow = (file: string): void => {
    if (reached.has(file)) return;
    reached.add(file);
    for (const target of imports(file, /(?:import|export) type [^;]*;/g)) {
      if (target === 'zod') zodFrom.push(file);
      const found = ['.ts', '.tsx', '/index.ts'].map((end) => target + end).find(existsSync);
      if (found !== undefined) follow(found);
    }
  };
  for (const file of [...sources('app/ui'), ...sources('lib/outbox')]) follow(file);
  expect(reached.size).toBeGreaterThan(400);
  expect(zodFrom).toEqual([]);
});

function sources(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name))
    .filter((name) => /\.(tsx?|mjs)$/.test(name));
}

function imports(file: string, without = /(?!)/g): string[] {
  const text = readFileSync(file, 'utf8').replace(without, '');
  const found = text.matchAll(/(?:from|import)\s*\(?\s*'([^']+)'/g);
  return [...found].map(([, target]) =>
    target!.startsWith('.') ? normalize(join(dirname(file), target!)) : target!.replace(/^@\//, ''),
  );
}
