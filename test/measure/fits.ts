/*
 * How soon a job of 200 bores and 200 pistons, six readings each, stands on the Fits sheet with its table of
 * 40,000 clearances and its best pairing, how soon a new reading has changed them, and how smoothly one moves
 * over the table; in a real Chromium on the built app, beside a job of ten and ten.
 *
 *     npm run measure:fits
 *
 * From the start of the navigation to the frame after the one in which a chosen pair stands in the table, and
 * to the moment in which the table takes keys. "Changed" is from the server's answer to a reading sent from
 * elsewhere to the frame in which the piece's new clearance stands.
 */
import type { Page } from 'playwright-core';
import { buildIfBehind } from '@/lib/command/build.mjs';
import type { JobSheet } from '@/lib/schema/sheet';
import { openBrowser } from '../setup/open-browser';
import { startServer } from '../setup/start-server.mjs';
import { fitsJob } from './fits-job';
import { median } from './median';
import { quantileOf } from './quantile-of';
import { printTable, type Row } from './table';

const rounds = 7;
const counts = [10, 200];
const aims = { shownMs: 1000, changedMs: 1000, framesLeast: 30 };
const scrollMs = 3000;

const rows: Row[] = [];
buildIfBehind();
const server = await startServer();
const chromium = await openBrowser();
try {
  const context = await chromium.newContext({ viewport: { width: 1280, height: 900 } });
  // What runs in the page was compiled for Node, with names the page does not have.
  await context.addInitScript({ content: 'globalThis.__name ??= (named) => named;' });
  await context.addInitScript(watchTasks);
  for (const count of counts) {
    const jobId = await fitsJob(server.url, count);
    const page = await context.newPage();
    const shown: number[] = [];
    const alive: number[] = [];
    const longest: number[] = [];
    for (let round = -1; round < rounds; round += 1) {
      await page.goto(`${server.url}/jobs/${jobId}/fits`, { waitUntil: 'commit' });
      const taken = await page.evaluate(whenShown);
      await rest(1000);
      if (round < 0) continue; // the round before the first warms up
      shown.push(taken.shownMs);
      alive.push(taken.aliveMs);
      longest.push(await page.evaluate(() => window.longestTaskMs));
    }
    const changed = await changes(page, jobId);
    const frames = await scrolled(page);
    const name = `Fits, ${count} bores and ${count} pistons`;
    rows.push(
      {
        what: `${name}: navigation to table and pairing on screen`,
        own: seconds(median(shown)),
        against: `takes keys after ${seconds(median(alive))}; longest task ${median(longest).toFixed(0)} ms`,
        aim: judged(seconds(aims.shownMs), median(alive) <= aims.shownMs),
      },
      {
        what: `${name}: a reading from elsewhere to the new pairing on screen`,
        own: seconds(median(changed.taken)),
        against: `longest of ${changed.taken.length} ${seconds(Math.max(...changed.taken))}; longest task ${changed.longestTaskMs.toFixed(0)} ms`,
        aim: judged(seconds(aims.changedMs), median(changed.taken) <= aims.changedMs),
      },
      {
        what: `${name}: frames a second while the table is scrolled`,
        own: frames.aSecond.toFixed(0),
        against: `longest but 1 in 100 between two ${frames.p99Ms.toFixed(0)} ms`,
        aim: judged(String(aims.framesLeast), frames.aSecond >= aims.framesLeast),
      },
    );
    await page.close();
  }
  printTable(rows);
} finally {
  await chromium.close();
  await server.remove();
}

/** Sends readings of the first piston of the table, each a micron on, and waits for each to be seen. */
async function changes(page: Page, jobId: string) {
  const sheet = (await (
    await fetch(`${server.url}/api/v1/jobs/${jobId}/sheet`)
  ).json()) as JobSheet;
  const last = sheet.readings.findLast(({ pieceId }) => {
    const mark = sheet.pieces.find(({ id }) => id === pieceId)!.mark;
    return mark === 'P1';
  })!;
  await page.evaluate(() => (window.longestTaskMs = 0));
  const taken: number[] = [];
  for (let n = 1; n <= rounds; n += 1) {
    // Past every other reading of the piece, so that each becomes the size that governs.
    const valuePm = last.valuePm + (10 + n) * 1_000_000;
    await page.evaluate(() => {
      window.tableAtFirst = document.querySelector('[role=grid]')!.textContent;
    });
    const answer = await fetch(`${server.url}/api/v1/readings`, {
      method: 'POST',
      headers: {
        'content-type': 'application/json',
        origin: server.url,
        'fitwright-device': crypto.randomUUID(),
      },
      body: JSON.stringify({
        deviceId: crypto.randomUUID(),
        entries: [
          {
            id: crypto.randomUUID(),
            deviceSeq: 1,
            deviceTime: '2026-11-25T10:00:00Z',
            personId: null,
            text: (valuePm / 1e9).toFixed(3),
            unit: last.unit,
            valuePm,
            resolutionPm: last.resolutionPm,
            pieceId: last.pieceId,
            featureId: last.featureId,
            gaugeId: last.gaugeId,
            station: last.station,
            direction: last.direction,
            temperatureMilliC: null,
            heldAs: null,
          },
        ],
      }),
    });
    if (!answer.ok) throw new Error(await answer.text());
    await answer.arrayBuffer();
    const begun = Date.now();
    taken.push((await page.evaluate(whenChanged)) - begun);
    await rest(300);
  }
  return { taken, longestTaskMs: await page.evaluate(() => window.longestTaskMs) };
}

/** Runs in the page: from the start of the navigation to a chosen pair drawn, and to a table that takes keys. */
async function whenShown(): Promise<{ shownMs: number; aliveMs: number }> {
  const frame = () => new Promise((next) => requestAnimationFrame(next));
  const until = async (isSo: () => boolean) => {
    while (!isSo()) await frame();
    await frame();
    return performance.now();
  };
  const grid = () => document.querySelector('[role=grid]');
  const shownMs = await until(
    () => document.querySelector('[role=grid] [data-state=chosen]') !== null,
  );
  const aliveMs = await until(() =>
    Object.keys(grid()!).some((key) => key.startsWith('__reactProps')),
  );
  return { shownMs, aliveMs };
}

/** Runs in the page: the moment of the frame after the table says something else than it did. */
async function whenChanged(): Promise<number> {
  const frame = () => new Promise((next) => requestAnimationFrame(next));
  const grid = document.querySelector('[role=grid]')!;
  while (grid.textContent === window.tableAtFirst) await frame();
  await frame();
  return Date.now();
}

/** Frames a second while the table is scrolled both ways by a little at each frame, as a finger does. */
async function scrolled(page: Page): Promise<{ aSecond: number; p99Ms: number }> {
  const times = await page.evaluate(async (forMs) => {
    const box = document.querySelector('[role=grid]')!.parentElement!;
    const at: number[] = [];
    const begun = performance.now();
    while (performance.now() - begun < forMs) {
      const part = (1 - Math.cos(at.length / 60)) / 2;
      box.scrollTop = part * (box.scrollHeight - box.clientHeight);
      box.scrollLeft = part * (box.scrollWidth - box.clientWidth);
      at.push(await new Promise<number>((next) => requestAnimationFrame(next)));
    }
    return at;
  }, scrollMs);
  const gaps = times.slice(1).map((time, index) => time - times[index]!);
  return {
    aSecond: (1000 * gaps.length) / (times.at(-1)! - times[0]!),
    p99Ms: quantileOf(gaps, 0.99),
  };
}

/** Runs in the page, before anything of it. */
function watchTasks(): void {
  window.longestTaskMs = 0;
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) {
      window.longestTaskMs = Math.max(window.longestTaskMs, duration);
    }
  }).observe({ type: 'longtask', buffered: true });
}

function judged(aim: string, reached: boolean): string {
  return reached ? aim : `${aim}, missed`;
}

function seconds(ms: number): string {
  return `${(ms / 1000).toFixed(2)} s`;
}

function rest(ms: number): Promise<void> {
  return new Promise((done) => setTimeout(done, ms));
}

declare global {
  interface Window {
    longestTaskMs: number;
    tableAtFirst: string | null;
  }
}
