/*
 * Every figure README claims, in one table: runs the parts one after the other, since they would be in each
 * other's way, and prints what they found.
 *
 *     npm run measure
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from '@/lib/command/root.mjs';
import { printTable, type Row } from './table';

const parts = ['start', 'bench', 'fits', 'runs', 'store', 'maths'];

const folder = mkdtempSync(join(tmpdir(), 'measure-'));
try {
  const file = join(folder, 'rows');
  for (const part of parts) {
    const words = ['node_modules/tsx/dist/cli.mjs', `test/measure/${part}.ts`];
    const env = { ...process.env, MEASURE_ROWS: file };
    const { status } = spawnSync(process.execPath, words, { cwd: root, env, stdio: 'inherit' });
    if (status === 0) continue;
    console.error(`The part ${part} failed; its figures are missing below.`);
    process.exitCode = 1;
  }
  const lines = existsSync(file) ? readFileSync(file, 'utf8').trim().split('\n') : [];
  printTable(lines.map((line) => JSON.parse(line) as Row));
} finally {
  rmSync(folder, { recursive: true });
}
