import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { BrowserContext, BrowserContextOptions, Page } from 'playwright-core';
import { openBrowser, type OpenBrowser } from '../setup/open-browser';
import { startServer, type RunningServer } from '../setup/start-server.mjs';
import { measure, sheetAt, startPins } from './runs-story';
import { desk, goToBench, head, inBook, loadExample, phone, reading, ready } from './bench-story';

// The notebook is out of reach: the app opens all the same, takes readings, and nothing is lost or doubled.

let server: RunningServer;
let chromium: OpenBrowser;
const exampleJob = '0195920c-0000-7000-8001-000000000001';

beforeAll(async () => {
  server = await startServer();
  chromium = await openBrowser();
  await loadExample(server);
});

afterAll(async () => {
  // A cut network is reported by the browser itself; nothing else may be.
  const isCut = (fault: string) =>
    /ERR_INTERNET_DISCONNECTED|ERR_CONNECTION_REFUSED|Failed to fetch/.test(fault);
  expect(chromium.faults.filter((fault) => !isCut(fault))).toEqual([]);
  await chromium.close();
  await server.remove();
});

/** Looks again until it is so; the outbox may be resting up to a minute after a cut. */
const eventually = (look: () => Promise<unknown>) => expect.poll(look, { timeout: 90_000 });

const withWorker = (options: BrowserContextOptions) =>
  chromium.newContext({ ...options, serviceWorkers: 'allow' });

/** Opens a Bench with the network, until the app and the job are on the device. */
async function openOnce(
  context: BrowserContext,
  at: { mark: string; balloon: string },
): Promise<Page> {
  const page = await context.newPage();
  await goToBench(server, page, at);
  await onDevice(page);
  return page;
}

async function onDevice(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await expect.poll(() => page.evaluate(countShelved), { timeout: 20_000 }).toBe(1);
}

/** How many jobs this device has a copy of; runs in the page. */
async function countShelved(): Promise<number> {
  const databases = await indexedDB.databases();
  // Opening one that is not there would make it, empty.
  if (!databases.some(({ name }) => name === 'fitwright-shelf')) return 0;
  return new Promise((found, failed) => {
    const opening = indexedDB.open('fitwright-shelf');
    opening.addEventListener('error', failed);
    opening.addEventListener('success', () => {
      const counting = opening.result.transaction('jobs').objectStore('jobs').count();
      counting.addEventListener('success', () => {
        opening.result.close();
        found(counting.result);
      });
    });
  });
}

async function log(page: Page, ...figures: string[]): Promise<void> {
  for (const figure of figures) {
    await page.keyboard.type(figure);
    await page.keyboard.press('Enter');
    await eventually(() => reading(page).textContent()).toBe(figure);
  }
}

describe('a cold start without a network', () => {
  it('opens a job opened before, logs, takes back, shows sizes and targets, and all of it gets into the book', async () => {
    const context = await withWorker(phone);
    const first = await openOnce(context, { mark: 'P7', balloon: '4' });
    // Kept after the sheet was put down: it is found among this device's own copies.
    await log(first, '18.084');
    await eventually(() => head(first).textContent()).toContain('in the book');
    await first.close();
    await context.setOffline(true);

    const page = await context.newPage();
    await page.goto(`${server.url}/`);
    await page.getByRole('heading', { name: 'On this device' }).waitFor();
    await page.getByRole('link', { name: 'Bench' }).click();
    await ready(page);
    await eventually(() => page.title()).toContain('P7 ');
    await eventually(() => reading(page).textContent()).toBe('18.084');
    await eventually(() => page.locator('main').textContent()).toContain('Make P7 to L7');

    await log(page, '18.085', '18.086');
    await eventually(() => head(page).textContent()).toContain('Kept on this phone. 2 to send.');
    await page.getByRole('button', { name: 'Void this' }).tap();
    await eventually(() => head(page).textContent()).toContain('3 to send');
    await eventually(() => page.locator('main').textContent()).toContain('So far');

    await context.setOffline(false);
    await eventually(() => head(page).textContent()).toContain('in the book');
    const booked = (await inBook(server, 'P7', '4')).slice(-3);
    expect(booked.map(({ text, said }) => [text, said])).toEqual([
      ['18.084', []],
      ['18.085', []],
      ['18.086', ['void']],
    ]);
    await context.close();
  });

  it('opens the Cut screen of a piece, and says what to take off it', async () => {
    const context = await withWorker(phone);
    const first = await openOnce(context, { mark: 'P7', balloon: '4' });
    // The scripts of the Cut screen come once nothing else is to be done.
    await first.getByRole('button', { name: /Next cut/ }).tap();
    await eventually(() => first.title()).toContain('Cut P7');
    const address = first.url();
    expect(new URL(address).pathname).toMatch(/\/cut$/);
    await first.close();
    await context.setOffline(true);
    const page = await context.newPage();
    await page.goto(address);
    await eventually(() => page.title()).toContain('Cut P7');
    await eventually(() => page.locator('main').textContent()).toContain('to 18.000');
    await context.close();
  });

  it('hides what is measured unseen from the first moment on', async () => {
    const context = await withWorker(phone);
    await context.addInitScript(() => {
      const seen = () => /18\.08/.test(document.body?.innerText ?? '');
      new MutationObserver(() => {
        if (seen()) (window as { wasSeen?: boolean }).wasSeen = true;
      }).observe(document, { childList: true, subtree: true, characterData: true });
    });
    const first = await openOnce(context, { mark: 'P7', balloon: '4' });
    await expect
      .poll(() => first.evaluate(() => (window as { wasSeen?: boolean }).wasSeen))
      .toBe(true);
    await first.getByRole('button', { name: 'more of this device' }).tap();
    await first.getByText('every place of a feature').tap();
    const address = first.url();
    await first.close();
    await context.setOffline(true);
    const page = await context.newPage();
    await page.goto(address);
    await ready(page);
    await eventually(() => reading(page).textContent()).toMatch(/^\d of 6$/);
    await expect
      .poll(() => page.evaluate(() => (window as { wasSeen?: boolean }).wasSeen))
      .toBeUndefined();
    await context.close();
  });

  it('opens the board and the fits of that job, and says of other sheets that they need the notebook', async () => {
    const context = await withWorker(desk);
    const first = await openOnce(context, { mark: 'P7', balloon: '4' });
    await first.close();
    await context.setOffline(true);
    const page = await context.newPage();
    await page.goto(`${server.url}/jobs/${exampleJob}/board`);
    await page.getByRole('row', { name: /L1 / }).first().waitFor();
    await page.getByRole('link', { name: /Fits/ }).click();
    await page.getByRole('heading', { name: 'Power piston in liner' }).waitFor();
    await page.getByRole('link', { name: /Runs/ }).click();
    await page.getByRole('heading', { name: 'Crank web, boss outside' }).waitFor();
    await page.goto(`${server.url}/settings`);
    await page.getByText('this sheet needs it').waitFor();
    await page.goto(`${server.url}/jobs/0195920c-0000-7000-8001-00000000ffff/board`);
    await page.getByText('never opened on this device').waitFor();
    await context.close();
  });
});

it('an event noted without a network is seen at once, waits on the device, is sent once, and is struck out the same way', async () => {
  const pins = await startPins(server);
  await measure(server, pins, [-12, -11, -10, -10, -8, -7, -6, -6]);
  const thumb = await (await chromium.newContext(phone)).newPage();
  await thumb.goto(`${server.url}/jobs/${pins.jobId}/bench?feature=${pins.featureId}`);
  await ready(thumb);
  const row = thumb.getByRole('region', { name: 'Note an event' });
  await row.getByText('After Q8').waitFor();
  await thumb.context().setOffline(true);
  await row.getByRole('button', { name: 'Coolant' }).tap();
  await row.getByText('After Q8: coolant').waitFor();
  await thumb.getByText('1 to send').first().waitFor();
  expect((await sheetAt(server, pins.jobId)).runEvents).toEqual([]);

  await thumb.context().setOffline(false);
  const events = async () => (await sheetAt(server, pins.jobId)).runEvents;
  await eventually(events).toMatchObject([
    { kind: 'coolant', afterOrdinal: 8, deviceId: expect.any(String) },
  ]);
  await thumb.getByText('to send').first().waitFor({ state: 'detached' });
  await row.getByText('After Q8: coolant').waitFor();
  await eventually(() => events()).toHaveLength(1);

  // It was another machine: without a network again it is struck out, and sent as that.
  await thumb.goto(`${server.url}/jobs/${pins.jobId}/runs`);
  const list = thumb.getByRole('region', { name: 'Events' });
  await list.getByText('Coolant').waitFor();
  await thumb.context().setOffline(true);
  await list.getByRole('button', { name: 'Strike out' }).tap();
  await list.getByRole('button', { name: 'Put back' }).waitFor();
  await list.getByText('to send').waitFor();
  await eventually(events).toMatchObject([{ version: 1, struckAt: null }]);
  await thumb.context().setOffline(false);
  await eventually(events).toMatchObject([{ version: 2, struckAt: expect.any(String) }]);
  await list.getByText('to send').waitFor({ state: 'detached' });
  await list.getByRole('button', { name: 'Put back' }).waitFor();
  await thumb.context().close();
}, 120_000);
