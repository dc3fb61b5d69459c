/*
 * How long the heavy mathematics takes: medians over several runs, beside numpy and scipy doing the
 * same work on the same data in the same run, where python3 with both is at hand.
 *
 *     npm run measure:maths
 *
 * Both sides give a check value that has to agree; a disagreement is printed and ends with status 1.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { leastTotal } from '@/lib/maths/assignment/least-total';
import { pairPieces } from '@/lib/maths/assignment/pair-pieces';
import { sortedPairs } from '@/lib/maths/assignment/sorted-pairs';
import { individualsLimits } from '@/lib/maths/control/individuals-limits';
import { patternRules } from '@/lib/maths/control/pattern-rules';
import type { Distribution } from '@/lib/maths/metrology/distribution';
import { monteCarlo } from '@/lib/maths/metrology/monte-carlo';
import { mean } from '@/lib/maths/statistics/mean';
import { standardDeviation } from '@/lib/maths/statistics/standard-deviation';
import { parseLength } from '@/lib/units/parse-length';
import { seededDraws } from './seeded-draws';
import { printTable, type Row } from './table';

type Measure = {
  name: string;
  rounds: number;
  /** Does the work once and gives a value that tells whether it was done right. */
  run: () => number;
  /** Pieces of work in one run; times are shown for one of them. */
  times?: number;
  /** The same for numpy and scipy, by the names of maths.py; left out where they have no equal. */
  twin?: { kind: string; arguments: unknown[] };
  /** Aimed at: at most so many times as long as the twin, or at most so long. */
  aim: { times: number } | { ms: number };
  /** How far the two check values may be apart, relative to their size. */
  agreesTo?: number;
};

const folder = mkdtempSync(join(tmpdir(), 'measure-'));
try {
  const measures = [
    meanAndSd(),
    clearancePairing(500),
    clearancePairing(1000),
    clearancePairing(500, 10),
    clearancePairing(1000, 10),
    randomAssignment(500),
    randomAssignment(1000),
    chainDraws(),
    chartAndRules(),
    typedLine(),
  ];
  const theirs = twins(measures);
  const rows = measures.map((measure) => row(measure, theirs?.[measure.name]));
  printTable(rows.map(({ shown }) => shown));
  if (theirs === undefined) console.log('\npython3 with numpy and scipy was not found.');
  if (rows.some((one) => one.apart)) process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true });
}

function meanAndSd(): Measure {
  const draws = seededDraws(1);
  const values = Float64Array.from({ length: 1e6 }, () => 25 + draws.normal() / 1000);
  return {
    name: 'mean and standard deviation of 10^6',
    aim: { times: 1 },
    rounds: 11,
    run: () => mean(values) + standardDeviation(values),
    twin: { kind: 'mean_and_sd', arguments: [kept('values', values)] },
  };
}

/** With `barredEvery`, of every so many pairs in the order of their sizes one is forbidden. */
function clearancePairing(size: number, barredEvery = Infinity): Measure {
  const draws = seededDraws(size);
  const boresPm = Array.from({ length: size }, () => pm(20.02 + draws.normal() * 0.004));
  const shaftsPm = Array.from({ length: size }, () => pm(19.99 + draws.normal() * 0.004));
  // Limits so wide that every pair is legal, as in the matrix of the twin.
  const question = { boresPm, shaftsPm, minPm: pm(-5), maxPm: pm(5), aimPm: pm(0.03) };
  const sizes = Float64Array.from([...boresPm, ...shaftsPm]);
  const forbidden = sortedPairs(boresPm, shaftsPm).filter((_, k) => k % barredEvery === 0 && k > 0);
  const barred = forbidden.length > 0 ? `, ${forbidden.length} forbidden` : '';
  return {
    name: `pairing ${size} with ${size} by clearance${barred}`,
    aim: { times: 1 },
    rounds: 5,
    run: () => pairPieces({ ...question, forbidden, purpose: 'closest' }).sumOffPm,
    twin: {
      kind: 'clearances',
      arguments: [kept(`sizes-${size}`, sizes), size, question.aimPm, forbidden],
    },
  };
}

function randomAssignment(size: number): Measure {
  const draws = seededDraws(size + 1);
  const costs = Float64Array.from({ length: size * size }, () => Math.floor(1e6 * draws.uniform()));
  return {
    name: `assignment ${size} x ${size}, random costs`,
    aim: { times: 2 },
    rounds: 5,
    run: () => leastTotal({ rows: size, columns: size, costs }).total,
    twin: { kind: 'assignment', arguments: [kept(`costs-${size}`, costs), size] },
  };
}

function chainDraws(): Measure {
  // A length between shoulders: three pieces measured, three to be made, mm.
  const links: [coefficient: number, spread: Distribution][] = [
    [1, { shape: 'normal', mean: 84.012, sd: 0.002 }],
    [-1, { shape: 'normal', mean: 25.004, sd: 0.0015 }],
    [-1, { shape: 'normal', mean: 12.498, sd: 0.001 }],
    [-1, { shape: 'rectangular', low: 29.98, high: 30 }],
    [-1, { shape: 'rectangular', low: 7.99, high: 8.01 }],
    [-1, { shape: 'rectangular', low: 7.99, high: 8.01 }],
  ];
  const coefficients = links.map(([coefficient]) => coefficient);
  const spreads = links.map(([, spread]) => spread);
  const closing = (values: readonly number[]) => {
    let sum = 0;
    for (let i = 0; i < values.length; i += 1) sum += coefficients[i]! * values[i]!;
    return sum;
  };
  const [draws, seed, coverage] = [1e6, 1, 0.95];
  return {
    name: 'Monte Carlo of a chain of 6 links, 10^6 draws',
    aim: { times: 3 },
    rounds: 5,
    run: () => {
      const { u, shortest, symmetric } = monteCarlo(closing, spreads, {
        draws,
        seed,
        coverage,
      });
      return u + shortest.high - shortest.low + symmetric.high - symmetric.low;
    },
    twin: { kind: 'chain', arguments: [links, draws, seed, coverage] },
    // Other draws: 10^6 of them leave u and the widths to about a thousandth.
    agreesTo: 2e-3,
  };
}

function chartAndRules(): Measure {
  const draws = seededDraws(7);
  let wander = 0;
  const values = Float64Array.from({ length: 1e5 }, () => {
    wander = 0.7 * wander + draws.normal();
    return 25 + wander / 1000;
  });
  const readings = [...values];
  return {
    name: 'chart limits and all pattern rules on 10^5 points',
    aim: { ms: 50 },
    rounds: 11,
    run: () => {
      const { mean: centre, sigma } = individualsLimits({ values: readings });
      const found = Object.values(patternRules(readings, centre, sigma));
      return found.reduce((sum, list) => sum + list.length, 0);
    },
    twin: { kind: 'chart', arguments: [kept('chart', values)] },
    agreesTo: 0,
  };
}

function typedLine(): Measure {
  const lines = ['24.987', '24,987 mm', '.9837in', '1 1/4"', '-3 thou', '+0.02', '18 um', '0.5000'];
  const setting = { decimal: '.', unit: 'mm', nominalPm: 25_000_000_000 } as const;
  const times = 80_000;
  return {
    name: 'a typed line',
    aim: { ms: 0.002 },
    rounds: 11,
    times,
    run: () => {
      let understood = 0;
      for (let i = 0; i < times; i += 1) {
        if (parseLength(lines[i % lines.length]!, setting).kind === 'length') understood += 1;
      }
      return understood;
    },
  };
}

/** Writes data for the twin and gives the name it is kept under. */
function kept(name: string, values: Float64Array): string {
  writeFileSync(join(folder, name), values);
  return name;
}

function pm(mm: number): number {
  return Math.round(mm * 1e9);
}

type Found = Record<string, [medianMs: number, check: number]>;

function twins(measures: readonly Measure[]): Found | undefined {
  const work = measures.flatMap(({ name, rounds, twin }) =>
    twin === undefined ? [] : [{ name, rounds, ...twin }],
  );
  writeFileSync(join(folder, 'work.json'), JSON.stringify(work));
  const hasBoth = spawnSync('python3', ['-c', 'import numpy, scipy']).status === 0;
  if (!hasBoth) return undefined;
  const script = fileURLToPath(new URL('./maths.py', import.meta.url));
  const done = spawnSync('python3', [script, folder], { encoding: 'utf8' });
  if (done.status !== 0) throw new Error(`maths.py failed: ${done.stderr}`);
  return JSON.parse(done.stdout) as Found;
}

function row(measure: Measure, twin: Found[string] | undefined): { shown: Row; apart: boolean } {
  const { name, rounds, run, times = 1, agreesTo = 1e-9 } = measure;
  let check = run();
  const taken = Array.from({ length: rounds }, () => {
    const start = performance.now();
    check = run();
    return performance.now() - start;
  });
  const ours = taken.sort((a, b) => a - b)[rounds >> 1]! / times;
  const theirs = twin === undefined ? null : twin[0] / times;
  const against = theirs === null ? '' : `numpy and scipy ${asTime(theirs)}`;
  const aim = aimWords(measure.aim, ours, theirs);
  const shown = { what: name, own: asTime(ours), against, aim };
  if (twin === undefined) return { shown, apart: false };
  const wanted = twin[1];
  const apart = !(Math.abs(check - wanted) <= agreesTo * Math.abs(wanted));
  if (apart) console.error(`${name}: got ${check}, numpy and scipy ${wanted}`);
  return { shown, apart };
}

function aimWords(aim: Measure['aim'], ours: number, theirs: number | null): string {
  if ('ms' in aim) return `${asTime(aim.ms)}${ours <= aim.ms ? '' : ', missed'}`;
  if (theirs === null) return `${aim.times} as long`;
  const ratio = ours / theirs;
  return `${ratio.toFixed(2)} as long, aim ${aim.times}${ratio <= aim.times ? '' : ', missed'}`;
}

function asTime(ms: number): string {
  return ms < 0.1 ? `${(1000 * ms).toFixed(2)} µs` : `${ms.toFixed(ms < 10 ? 2 : 0)} ms`;
}
