/*
 * How soon a long run is drawn, how smoothly one moves along it, and what it costs the server: for 100, 10,000
 * and 100,000 measured pieces, in a real Chromium on the built app.
 *
 *     npm run measure:runs
 *
 * From the start of the navigation to the frame in which the chart stands painted: the page marks its drawn
 * chart, and the next frame but one is waited for. Frames are counted while the chart is dragged at each frame.
 */
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { buildIfBehind } from '@/lib/command/build.mjs';
import { migrate } from '@/lib/command/migrate.mjs';
import { root } from '@/lib/command/root.mjs';
import { closeStore } from '@/lib/store/client';
import { fillLongRun } from '../setup/long-run';
import { openBrowser } from '../setup/open-browser';
import { startServer } from '../setup/start-server.mjs';
import { median } from './median';
import { printTable, type Row } from './table';

const rounds = 7;
const lengths = [100, 10_000, 100_000];
const drawnMsMost = 1000;
const framesLeast = 30;
const panMs = 3000;

mkdirSync(join(root, 'test/.out'), { recursive: true });
const folder = mkdtempSync(join(root, 'test/.out/measure-'));
const rows: Row[] = [];
try {
  buildIfBehind();
  let hundred: number | null = null;
  for (const pieces of lengths) {
    const url = `file:${join(mkdtempSync(join(folder, 'notebook-')), 'fitwright.db')}`;
    await closeStore();
    process.env['DATABASE_URL'] = url;
    await migrate(url);
    const { runId } = await fillLongRun(pieces);
    await closeStore();
    const server = await startServer({ databaseUrl: url });
    const chromium = await openBrowser();
    const name = `run of ${pieces.toLocaleString('en-GB')} pieces`;
    try {
      const idle = residentBytes(server.pid);
      const series = `${server.url}/api/v1/runs/${runId}/series`;
      const server1 = await timed(async () => void (await (await fetch(series)).arrayBuffer()));
      hundred ??= server1;
      const grown = residentBytes(server.pid) - idle;
      const context = await chromium.newContext({ viewport: { width: 1280, height: 900 } });
      // What runs in the page was compiled for Node, with names the page does not have.
      await context.addInitScript({ content: 'globalThis.__name ??= (named) => named;' });
      const page = await context.newPage();
      const drawn: number[] = [];
      for (let round = -1; round < rounds; round += 1) {
        await page.goto(`${server.url}/runs/${runId}`, { waitUntil: 'commit' });
        const ms = await page.evaluate(whenDrawn);
        if (round >= 0) drawn.push(ms); // the round before the first warms up
      }
      const frames = await panned(page);
      const ms = median(drawn);
      rows.push(
        {
          what: `${name}: navigation to the drawn chart`,
          own: `${(ms / 1000).toFixed(2)} s`,
          against: '',
          aim: `${drawnMsMost / 1000} s${ms <= drawnMsMost ? '' : ', missed'}`,
        },
        {
          what: `${name}: frames a second while moving along it`,
          own: frames.toFixed(0),
          against: '',
          aim: `${framesLeast}${frames >= framesLeast ? '' : ', missed'}`,
        },
        {
          what: `${name}: its columns from the server`,
          own: `${server1.toFixed(1)} ms, ${(grown / 1e6).toFixed(0)} MB more`,
          against: pieces === lengths[0] ? '' : `100 pieces ${hundred.toFixed(1)} ms`,
          aim: pieces === lengths[0] ? '' : growth(server1 / hundred, pieces / lengths[0]!),
        },
      );
    } finally {
      await chromium.close();
      await server.remove();
    }
  }
  printTable(rows);
} finally {
  await closeStore();
  rmSync(folder, { recursive: true });
}

function growth(times: number, points: number): string {
  const aim = `${times.toFixed(0)} times as long for ${points} times the points`;
  return times <= points ? aim : `${aim}, missed`;
}

async function timed(work: () => Promise<void>): Promise<number> {
  const taken: number[] = [];
  for (let round = -1; round < rounds; round += 1) {
    const begun = performance.now();
    await work();
    if (round >= 0) taken.push(performance.now() - begun);
  }
  return median(taken);
}

/** Ms from the start of the navigation to the frame after the one that drew the chart; runs in the page. */
function whenDrawn(): Promise<number> {
  return new Promise((done) => {
    const look = () => {
      const isDrawn = document.querySelector('[data-drawn] canvas') !== null;
      if (!isDrawn) return void requestAnimationFrame(look);
      requestAnimationFrame(() => requestAnimationFrame(() => done(performance.now())));
    };
    look();
  });
}

/** Frames a second while the chart, looked at nearer, is dragged a little at each frame. */
async function panned(page: Page): Promise<number> {
  await page.locator('[data-drawn] canvas').waitFor();
  await page.locator('[data-drawn]').focus();
  for (let i = 0; i < 2; i += 1) await page.keyboard.press('+');
  return page.evaluate(async (forMs) => {
    const box = document.querySelector<HTMLElement>('[data-drawn]')!;
    const rect = box.getBoundingClientRect();
    const y = rect.top + 200;
    const fire = (type: string, x: number) =>
      box.querySelector('canvas')!.dispatchEvent(
        new PointerEvent(type, {
          pointerId: 1,
          clientX: x,
          clientY: y,
          bubbles: true,
          isPrimary: true,
        }),
      );
    box.setPointerCapture = () => undefined;
    fire('pointerdown', rect.left + 600);
    let frames = 0;
    const begun = performance.now();
    while (performance.now() - begun < forMs) {
      // There and back again, so that the end of the run does not stop it.
      fire('pointermove', rect.left + 600 + 200 * Math.sin(frames / 20));
      await new Promise((next) => requestAnimationFrame(next));
      frames += 1;
    }
    return (1000 * frames) / (performance.now() - begun);
  }, panMs);
}

function residentBytes(pid: number): number {
  const text = readFileSync(`/proc/${pid}/status`, 'utf8');
  return 1024 * Number(/^VmRSS:\s+(\d+)/m.exec(text)?.[1] ?? 0);
}
