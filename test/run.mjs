// Everything that proves the program, in one command: `npm test`. Needs Node and npm, nothing else
// beforehand. Stages can be named: `node test/run.mjs types unit`.
import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { generateIfBehind } from '../lib/command/generate.mjs';
import { installIfBehind } from '../lib/command/install.mjs';
import { requireNode } from '../lib/command/require-node.mjs';
import { root } from '../lib/command/root.mjs';
import { runAsCommand } from '../lib/command/run-as-command.mjs';
import { Refusal } from '../lib/command/refusal.mjs';
import { failedTitles, vitestCounts } from './setup/vitest-counts.mjs';

/** A stage that takes so long hangs. */
const longestMs = 20 * 60_000;
const results = join(root, 'test/.out/counts');
const onPostgresql = { TEST_DATABASE: 'postgresql' };
const onSqlite = { TEST_DATABASE: 'sqlite' };

/**
 * @typedef {object} Stage
 * @property {string} name
 * @property {string[][]} commands scripts below node_modules or the project folder, with their words
 * @property {Record<string, string>} [env]
 * @property {'one' | 'vitest' | 'closing line'} counts how many checks it stands for: one, as many as
 *   vitest notes, or as many as its last line `N passed, N failed` says
 * @property {string} [needs] an earlier stage without which it cannot run
 */

/** @type {Stage[]} */
const stages = [
  {
    name: 'types',
    commands: [
      ['node_modules/next/dist/bin/next', 'typegen'],
      ['node_modules/typescript/bin/tsc', '--noEmit', '-p', '.'],
    ],
    counts: 'one',
  },
  {
    name: 'lint',
    commands: [['node_modules/oxlint/bin/oxlint', '--deny-warnings']],
    counts: 'one',
  },
  {
    name: 'format',
    commands: [['node_modules/prettier/bin/prettier.cjs', '--check', '.']],
    counts: 'one',
  },
  { name: 'unit', commands: vitest('unit', 'vitest.config.ts'), counts: 'vitest' },
  {
    name: 'reference',
    commands: [['node_modules/tsx/dist/cli.mjs', 'test/reference-check/run.ts']],
    counts: 'closing line',
  },
  ...onBoth('store', 'vitest.store.config.ts'),
  { name: 'build', commands: [['lib/command/build.mjs']], counts: 'one' },
  ...onBoth('api', 'vitest.api.config.ts', 'build'),
  ...onBoth('journeys', 'vitest.journeys.config.ts', 'build'),
];

await runAsCommand(import.meta.url, main);

async function main() {
  requireNode();
  const wanted = chosen(process.argv.slice(2));
  installIfBehind();
  generateIfBehind();
  // A note left by an earlier run must not be counted again.
  rmSync(results, { recursive: true, force: true });
  mkdirSync(results, { recursive: true });
  const done = [];
  for (const stage of wanted) {
    const begun = Date.now();
    console.log(`\n== ${stage.name}`);
    const missing = done.find(({ name, failed }) => name === stage.needs && failed > 0);
    const counts = missing === undefined ? await run(stage) : notRun(stage);
    done.push({ name: stage.name, seconds: (Date.now() - begun) / 1000, ...counts });
  }
  report(done);
  process.exit(sum(done, 'failed') > 0 ? 1 : 0);
}

function chosen(names) {
  const unknown = names.find((name) => !stages.some((stage) => isNamed(stage, name)));
  if (unknown !== undefined) {
    const known = stages.map(({ name }) => name).join(', ');
    throw new Refusal(`There is no stage ${unknown}. The stages are: ${known}.`);
  }
  if (names.length === 0) return stages;
  return stages.filter((stage) => names.some((name) => isNamed(stage, name)));
}

/** `store` names both `store on sqlite` and `store on postgresql`. */
function isNamed(stage, name) {
  return stage.name === name || stage.name.startsWith(`${name} on `);
}

/** @returns {Promise<{ passed: number, failed: number }>} */
async function run(stage) {
  let output = '';
  let isClean = true;
  for (const command of stage.commands) {
    const ended = await runOne(command, stage.env);
    output += ended.output;
    isClean &&= ended.code === 0;
    if (!isClean) break;
  }
  if (stage.counts === 'one') return isClean ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
  const counts =
    stage.counts === 'vitest' ? vitestCounts(read(resultOf(stage.name))) : closingLine(output);
  // Ended badly with no test to blame, or well with no test run: either is a failure of its own.
  const isUnexplained = (!isClean && counts.failed === 0) || counts.passed + counts.failed === 0;
  return isUnexplained ? { ...counts, failed: counts.failed + 1 } : counts;
}

/** @returns {Promise<{ code: number | null, output: string }>} */
function runOne([script, ...words], env = {}) {
  const { DATABASE_URL: _, PORT: __, NODE_ENV: ___, ...inherited } = process.env;
  return new Promise((done) => {
    const child = spawn(process.execPath, [join(root, script), ...words], {
      cwd: root,
      env: { ...inherited, NEXT_TELEMETRY_DISABLED: '1', ...env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let output = '';
    child.stdout.setEncoding('utf8').on('data', (text) => {
      output += text;
      process.stdout.write(text);
    });
    child.stderr.pipe(process.stderr, { end: false });
    const pass = (signal) => child.kill(signal);
    const timer = setTimeout(() => {
      console.error(`Stopped after ${longestMs / 60_000} minutes.`);
      child.kill('SIGKILL');
    }, longestMs);
    process.once('SIGTERM', pass);
    child.once('close', (code) => {
      clearTimeout(timer);
      process.off('SIGTERM', pass);
      done({ code, output });
    });
  });
}

function notRun(stage) {
  console.log(`Cannot run: it needs ${stage.needs}, which failed.`);
  return { passed: 0, failed: 1 };
}

function report(done) {
  for (const name of done.filter(({ failed }) => failed > 0).map((one) => one.name)) {
    for (const title of failedTitles(read(resultOf(name))))
      console.log(`failed in ${name}: ${title}`);
  }
  console.log('\n== all');
  for (const { name, passed, failed, seconds } of done) {
    const verdict = failed === 0 ? 'ok  ' : 'FAIL';
    console.log(`${verdict} ${name}: ${passed} good, ${failed} bad, ${seconds.toFixed(0)} s`);
  }
  console.log(`${sum(done, 'passed')} passed, ${sum(done, 'failed')} failed`);
}

function sum(done, key) {
  return done.reduce((total, counts) => total + counts[key], 0);
}

function closingLine(output) {
  const last = [...output.matchAll(/^(\d+) passed, (\d+) failed$/gm)].at(-1);
  return { passed: Number(last?.[1] ?? 0), failed: Number(last?.[2] ?? 0) };
}

function onBoth(name, config, needs) {
  return [onSqlite, onPostgresql].map((env) => {
    const full = `${name} on ${env.TEST_DATABASE}`;
    const stage = { name: full, commands: vitest(full, config), env, counts: 'vitest' };
    return needs === undefined ? stage : { ...stage, needs };
  });
}

function vitest(name, config) {
  const file = resultOf(name);
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${file}`];
  return [['node_modules/vitest/vitest.mjs', 'run', '-c', `test/${config}`, ...reporters]];
}

function resultOf(name) {
  return join(results, `${name.replaceAll(' ', '-')}.json`);
}

/** What vitest noted, or undefined if it ended before it could. */
function read(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return undefined;
  }
}
