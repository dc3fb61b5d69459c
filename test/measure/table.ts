import { appendFileSync } from 'node:fs';
import { cpus } from 'node:os';

/** One figure: what was measured, what it is held against in the same run, and whether the aim was reached. */
export type Row = {
  what: string;
  own: string;
  /** What it is held against, with its figure; empty where there is nothing to hold it against. */
  against: string;
  /** The aim with the ratio reached, where there is one; a missed one says so. */
  aim: string;
};

/**
 * Prints figures as a table, under the machine they were measured on. `npm run measure` gives each part a
 * file in MEASURE_ROWS to add its figures to, and prints them all in one table at its end.
 */
export function printTable(rows: readonly Row[]): void {
  const model = cpus()[0]?.model ?? 'unknown processor';
  console.log(`\n${model}, ${cpus().length} cores, node ${process.version}\n`);
  console.log('| what | Fitwright | held against | aim |');
  console.log('| --- | ---: | --- | --- |');
  for (const { what, own, against, aim } of rows) {
    console.log(`| ${what} | ${own} | ${against} | ${aim} |`);
  }
  const file = process.env['MEASURE_ROWS'];
  if (file !== undefined)
    appendFileSync(file, rows.map((row) => `${JSON.stringify(row)}\n`).join(''));
}
