import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { chromium as playwright, type Page } from 'playwright-core';
import { findChromium } from '../setup/find-chromium.mjs';
import { chromiumArgs, openBrowser, type OpenBrowser } from '../setup/open-browser';
import { startServer, type RunningServer } from '../setup/start-server.mjs';
import type { JobSheet } from '@/lib/schema/sheet';
import { timeOf } from '@/lib/text/when';
import {
  desk,
  goToBench,
  head,
  inBook,
  loadExample,
  openBench,
  openJob,
  phone,
  place,
  pressNext,
  reading,
  ready,
  startRings,
} from './bench-story';

// What can go wrong between the finger and the book, each made to happen: nothing missing, nothing twice.

let server: RunningServer;
let chromium: OpenBrowser;

beforeAll(async () => {
  server = await startServer();
  chromium = await openBrowser();
  await loadExample(server);
});

afterAll(async () => {
  await chromium.close();
  await server.remove();
});

/** The outbox may rest up to a minute after a failure. */
const eventually = (look: () => Promise<unknown>) => expect.poll(look, { timeout: 90_000 });
const longMs = 240_000;
const texts = async (mark: string, balloon = '9') =>
  (await inBook(server, mark, balloon)).map(({ text }) => text);

async function log(page: Page, ...figures: string[]): Promise<void> {
  for (const figure of figures) {
    await page.keyboard.type(figure);
    await page.keyboard.press('Enter');
    await eventually(() => reading(page).textContent()).toBe(figure);
  }
}

it(
  'two tabs send what they kept without a network, each entry once',
  async () => {
    const at = { mark: 'P8', balloon: '4' };
    const one = await openBench(server, chromium, at, desk);
    const context = one.page.context();
    const other = await context.newPage();
    await goToBench(server, other, at);
    await context.setOffline(true);
    await log(one.page, '18.091');
    await eventually(() => reading(other).textContent()).toBe('18.091');
    await log(other, '18.092');
    await eventually(() => reading(one.page).textContent()).toBe('18.092');
    await log(one.page, '18.090');
    await eventually(() => unsent(other)).toBe(3);
    await context.setOffline(false);
    await eventually(() => unsent(one.page)).toBe(0);
    await eventually(() => unsent(other)).toBe(0);
    await eventually(() => texts('P8', '4')).toEqual(['18.091', '18.092', '18.090']);
    await one.close();
  },
  longMs,
);

it(
  'two devices on one piece both show all readings of it, whichever was out of reach',
  async () => {
    const one = await openBench(server, chromium, { mark: 'W13', balloon: '9' }, desk);
    const two = await openBench(server, chromium, { mark: 'W13', balloon: '9' }, phone);
    await one.page.context().setOffline(true);
    await log(one.page, '11.991');
    await log(two.page, '11.993');
    await one.page.context().setOffline(false);
    await eventually(() => texts('W13')).toHaveLength(2);
    expect((await texts('W13')).sort()).toEqual(['11.991', '11.993']);
    for (const { page } of [one, two]) {
      // Both measured the same place: it has two readings, and both devices know.
      await eventually(() =>
        page.getByRole('region', { name: 'Reading' }).locator('output').textContent(),
      ).toContain('2 read.');
    }
    await one.close();
    await two.close();
  },
  longMs,
);

it(
  'a reading that comes after a cut of another device and was taken before it is said to both',
  async () => {
    const at = { mark: 'P7', balloon: '4' };
    const one = await openBench(server, chromium, at, desk);
    const two = await openBench(server, chromium, at, phone);
    await one.page.context().setOffline(true);
    await log(one.page, '18.085');
    await two.page.getByRole('button', { name: 'Cut since' }).tap();
    await eventually(() => head(two.page).textContent()).toContain('0 of 6');
    await one.page.context().setOffline(false);
    await eventually(() => texts('P7', '4')).toContain('18.085');
    for (const { page } of [one, two]) {
      await page
        .getByText('18.085 was read before the last cut, by the clocks of the two devices')
        .waitFor();
      await eventually(() => head(page).textContent()).toContain('1 of 6');
    }
    await one.close();
    await two.close();
  },
  longMs,
);

it(
  'a server killed in the middle of a batch has each entry once when it is back',
  async () => {
    const rings = await startRings(server);
    const { page, close } = await openJob(server, chromium, rings, desk);
    await page.getByRole('list', { name: 'Gauges' }).getByRole('button').first().click();
    await page.context().setOffline(true);
    const figures = ['18.004', '18.005', '18.003', '18.004', '18.006', '18.005'];
    for (const mark of ['R1', 'R2', 'R3', 'R4']) {
      await eventually(() => page.title()).toContain(`${mark} `);
      await log(page, ...figures);
      await pressNext(page);
    }
    await eventually(() => unsent(page)).toBe(24);
    // The answer to the batch never comes: the server dies as soon as it has the request.
    const arrived = page.waitForRequest((asked) => asked.url().endsWith('/api/v1/readings'), {
      timeout: 90_000,
    });
    await page.context().setOffline(false);
    await arrived;
    await server.kill();
    await new Promise((done) => setTimeout(done, 500));
    await server.restart();
    await eventually(() => unsent(page)).toBe(0);
    const sheet = await jobSheetOf(rings.jobId);
    const inOrder = sheet.readings.sort((a, b) => a.deviceSeq - b.deviceSeq);
    expect(inOrder.map(({ text }) => text)).toEqual([
      ...figures,
      ...figures,
      ...figures,
      ...figures,
    ]);
    await close();
  },
  longMs,
);

it('a dropped database connection on the device is opened anew, and the reading kept', async () => {
  const { page, close } = await openBench(server, chromium, { mark: 'W15', balloon: '9' }, desk);
  await log(page, '11.990');
  // As a browser that has lost its connection: every use of the handle that is held fails from now on.
  await page.evaluate(() => {
    const transaction = IDBDatabase.prototype.transaction;
    const dead = new WeakSet<IDBDatabase>();
    let armed = true;
    IDBDatabase.prototype.transaction = function (...given) {
      if (armed) dead.add(this);
      armed = false;
      if (dead.has(this)) throw new DOMException('The connection is lost', 'UnknownError');
      return transaction.apply(this, given);
    };
  });
  await log(page, '11.991');
  await eventually(() => texts('W15')).toEqual(['11.990', '11.991']);
  await eventually(() => head(page).textContent()).toContain('in the book');
  await close();
});

it('a screen that slept shows what came meanwhile as soon as it is seen again', async () => {
  const at = { mark: 'W1', balloon: '9' };
  const one = await openBench(server, chromium, at, desk);
  const other = await openBench(server, chromium, at, phone);
  const seen = (state: 'hidden' | 'visible') =>
    other.page.evaluate((now) => {
      Object.defineProperty(document, 'visibilityState', { value: now, configurable: true });
      document.dispatchEvent(new Event('visibilitychange'));
    }, state);
  await seen('hidden');
  const correct = one.page.getByRole('button', { name: 'Void this' });
  await correct.click();
  await eventually(async () => (await inBook(server, 'W1', '9')).at(-1)!.said).toEqual(['void']);
  // Asleep it holds no connection, so that nothing has come.
  await eventually(() => reading(other.page).textContent()).not.toBe('');
  await eventually(() => other.page.locator('main').textContent()).not.toContain('Struck out');
  await seen('visible');
  await eventually(() => other.page.locator('main').textContent()).toContain('Struck out');
  await one.close();
  await other.close();
});

it('a device clock that is an hour off keeps its readings in order, and says so', async () => {
  const context = await chromium.newContext(desk);
  await context.addInitScript(() => {
    const hour = 3_600_000;
    const real = Date.now.bind(Date);
    Date.now = () => real() + hour;
  });
  const page = await context.newPage();
  await goToBench(server, page, { mark: 'W16', balloon: '9' });
  await log(page, '11.990');
  await page.getByText('The clock of this device is more than two minutes off.').waitFor();
  const other = await openBench(server, chromium, { mark: 'W16', balloon: '9' }, desk);
  await eventually(() => reading(other.page).textContent()).toBe('11.990');
  await log(other.page, '11.992');
  await eventually(() => texts('W16')).toEqual(['11.990', '11.992']);
  // The last one of the book is the last one shown, whatever the clocks say.
  await eventually(() => reading(page).textContent()).toBe('11.992');
  const [first] = await inBook(server, 'W16', '9');
  const ahead = Date.parse(first!.deviceTime) - Date.parse(first!.receivedAt);
  expect(ahead).toBeGreaterThan(3_500_000);
  // Whoever looks at it, here or elsewhere, sees by how much.
  const both = [first!.deviceTime, first!.receivedAt].map(timeOf).join(', in the book (.+, )?');
  for (const each of [page, other.page]) {
    await place(each, 0, 0).click();
    const list = each.getByRole('list', { name: 'Readings here' });
    await eventually(() => list.textContent()).toMatch(new RegExp(both));
  }
  await other.close();
  await context.close();
});

describe('a browser killed just after the acknowledgement', () => {
  it(
    'has everything that was acknowledged when its profile is opened again',
    async () => {
      const profile = mkdtempSync(join(tmpdir(), 'fitwright-profile-'));
      try {
        const { jobId } = await startRings(server);
        const logged: string[] = [];
        for (let round = 0; round < 3; round += 1) {
          const first = await startBrowser(profile);
          await first.page.goto(`${server.url}/jobs/${jobId}/bench`);
          await ready(first.page);
          if (round === 0) {
            const gauges = first.page.getByRole('list', { name: 'Gauges' });
            await gauges.getByRole('button').first().click();
          }
          // What the round before left is sent as soon as the page is open. The book says so, not the page,
          // which counts none before it has read its disk.
          await eventually(() => textsOf(jobId)).toEqual(logged);
          await eventually(() => unsent(first.page)).toBe(0);
          await first.page.context().setOffline(true);
          for (let i = 0; i <= round; i += 1) {
            const figure = `18.00${round + i}`;
            await first.page.keyboard.type(figure);
            await first.page.keyboard.press('Enter');
            logged.push(figure);
          }
          await eventually(() => unsent(first.page)).toBe(round + 1);
          await first.kill();
        }
        const last = await startBrowser(profile);
        await last.page.goto(`${server.url}/jobs/${jobId}/bench`);
        await ready(last.page);
        await eventually(() => textsOf(jobId)).toEqual(logged);
        await eventually(() => unsent(last.page)).toBe(0);
        await eventually(() => textsOf(jobId)).toEqual(logged);
        await last.kill();
      } finally {
        rmSync(profile, { recursive: true, force: true, maxRetries: 40, retryDelay: 250 });
      }
    },
    longMs,
  );
});

async function jobSheetOf(jobId: string): Promise<JobSheet> {
  return (await fetch(`${server.url}/api/v1/jobs/${jobId}/sheet`)).json() as Promise<JobSheet>;
}

async function textsOf(jobId: string): Promise<string[]> {
  return (await jobSheetOf(jobId)).readings.map(({ text }) => text);
}

/** How many the page says are kept on this device only; it says so once the disk has them. */
async function unsent(page: Page): Promise<number> {
  const words = await head(page).textContent();
  const found = /(\d+)? ?to send/.exec(words ?? '');
  return found === null ? 0 : Number(found[1] ?? 1);
}

/** A browser of its own process group, to be killed as a power cut would. */
async function startBrowser(profile: string): Promise<{ page: Page; kill: () => Promise<void> }> {
  rmSync(join(profile, 'DevToolsActivePort'), { force: true });
  const words = [...chromiumArgs, '--headless=new', '--remote-debugging-port=0'];
  const child: ChildProcess = spawn(
    findChromium(),
    [...words, `--user-data-dir=${profile}`, 'about:blank'],
    { detached: true, stdio: 'ignore' },
  );
  const ended = new Promise<void>((done) => child.once('close', () => done()));
  let port = '';
  await expect
    .poll(
      () => {
        port = readFileSync(join(profile, 'DevToolsActivePort'), 'utf8').split('\n')[0]!;
        return port;
      },
      { timeout: 20_000 },
    )
    .not.toBe('');
  const browser = await playwright.connectOverCDP(`http://127.0.0.1:${port}`);
  const context = browser.contexts()[0]!;
  return {
    page: await context.newPage(),
    async kill() {
      process.kill(-child.pid!, 'SIGKILL');
      await ended;
      await browser.close().catch(() => undefined);
    },
  };
}
