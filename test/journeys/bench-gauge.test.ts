import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { openBrowser, type OpenBrowser } from '../setup/open-browser';
import { startServer, type RunningServer } from '../setup/start-server.mjs';
import {
  booked,
  entry,
  gauge,
  loadExample,
  notice,
  openJob,
  post,
  reading,
  startRings,
  type Rings,
} from './bench-story';

// A keyboard-type gauge: what it sends lands in the entry at any pace, wherever the focus is.

let server: RunningServer;
let chromium: OpenBrowser;

beforeAll(async () => {
  server = await startServer();
  chromium = await openBrowser();
  await loadExample(server);
});

afterAll(async () => {
  expect(chromium.faults).toEqual([]);
  await chromium.close();
  await server.remove();
});

const texts = async (rings: Rings) => (await booked(server, rings)).map(({ text }) => text);

/** A job of rings with six places each, on the bench, with its gauge chosen. */
async function bench(): Promise<{ page: Page; rings: Rings; close: () => Promise<void> }> {
  const rings = await startRings(server);
  const opened = await openJob(server, chromium, rings);
  await opened.page
    .getByRole('list', { name: 'Gauges' })
    .getByRole('button', { name: /Bore gauge 1/ })
    .click();
  return { ...opened, rings };
}

describe.each([5, 20, 100])('at %i ms a key', (delay) => {
  it.each(['Enter', 'Tab'] as const)('ended by %s, wherever the focus is', async (end) => {
    const { page, rings, close } = await bench();
    await page.evaluate(() => (document.activeElement as HTMLElement).blur());
    await gauge(page, '18.003', delay, end);
    await page.getByRole('button', { name: 'Void this' }).focus();
    await gauge(page, '18.005', delay, end);
    await page.getByRole('button', { name: /Choose another piece/ }).click();
    expect(await page.getByRole('dialog').isVisible()).toBe(true);
    await gauge(page, '18.006', delay, end);
    expect(await page.getByRole('dialog').count()).toBe(0);
    const others = anotherDevice(rings);
    await gauge(page, '18.004', delay, end);
    await gauge(page, '18.007', delay, end);
    await others;
    await expect
      .poll(() => texts(rings), { timeout: 10_000 })
      .toEqual(['18.003', '18.005', '18.006', '18.004', '18.007']);
    expect(
      (await booked(server, rings)).map(({ station, direction }) => station + direction),
    ).toEqual(['topA', 'topB', 'middleA', 'middleB', 'bottomA']);
    await expect.poll(() => reading(page).textContent(), { timeout: 10_000 }).toBe('18.007');
    await close();
  });
});

it('takes two readings that come back to back', async () => {
  const { page, rings, close } = await bench();
  for (const text of ['18.003', '18.005', '18.004', '18.006']) await gauge(page, text, 0);
  await expect
    .poll(() => texts(rings), { timeout: 10_000 })
    .toEqual(['18.003', '18.005', '18.004', '18.006']);
  await close();
});

it('takes a keyboard whose keys have no names', async () => {
  const { page, rings, close } = await bench();
  for (const character of '18.003') await page.keyboard.insertText(character);
  await page.keyboard.press('Enter');
  await expect.poll(() => texts(rings), { timeout: 10_000 }).toEqual(['18.003']);
  await page.keyboard.insertText('v');
  expect(await page.getByRole('button', { name: 'Put back' }).isVisible()).toBe(true);
  await close();
});

it('shows a bounced repeat and keeps it only when told to', async () => {
  const { page, rings, close } = await bench();
  const startMs = Date.now();
  await gauge(page, '18.003', 0, 'Enter', startMs);
  await gauge(page, '18.003', 0, 'Enter', startMs + 200);
  await expect
    .poll(() => notice(page).textContent(), { timeout: 10_000 })
    .toContain('Repeat ignored');
  await page.getByRole('button', { name: 'Keep it too' }).click();
  await expect.poll(() => texts(rings), { timeout: 10_000 }).toEqual(['18.003', '18.003']);
  await page.waitForTimeout(450);
  await gauge(page, '18.003', 0);
  await expect.poll(() => texts(rings), { timeout: 10_000 }).toHaveLength(3);
  await close();
});

it('ignores the Ctrl+A some gauges send first', async () => {
  const { page, rings, close } = await bench();
  await page.keyboard.press('Control+a');
  await gauge(page, '18.003', 5);
  await expect.poll(() => texts(rings), { timeout: 10_000 }).toEqual(['18.003']);
  await close();
});

it('lets a reading replace a text that was refused', async () => {
  const { page, rings, close } = await bench();
  await gauge(page, '18..2', 5);
  await expect.poll(() => entry(page).inputValue(), { timeout: 10_000 }).toBe('18..2');
  await gauge(page, '18.004', 5);
  await expect.poll(() => texts(rings), { timeout: 10_000 }).toEqual(['18.004']);
  await close();
});

it('says that a question was not answered when a gauge types over it', async () => {
  const { page, rings, close } = await bench();
  await gauge(page, '18,004', 20);
  await expect
    .poll(() => notice(page).textContent(), { timeout: 10_000 })
    .toContain('is that mark for decimals');
  await page.keyboard.type('18.005');
  await expect
    .poll(() => notice(page).textContent(), { timeout: 10_000 })
    .toBe('18,004 was not answered, and not kept.');
  await page.keyboard.press('Enter');
  await expect.poll(() => texts(rings), { timeout: 10_000 }).toEqual(['18.005']);
  await close();
});

it('lets a person leave the line with Tab', async () => {
  const { page, rings, close } = await bench();
  await page.keyboard.type('18.0', { delay: 200 });
  await page.keyboard.press('Tab');
  await expect.poll(() => entry(page).inputValue(), { timeout: 10_000 }).toBe('18.0');
  expect(await page.evaluate(() => document.activeElement?.getAttribute('name'))).not.toBe(
    'reading',
  );
  expect(await texts(rings)).toEqual([]);
  await close();
});

/** Readings of another ring from another device, one after another, so that the page draws all the while. */
async function anotherDevice(rings: Rings): Promise<void> {
  const deviceId = crypto.randomUUID();
  for (let n = 1; n <= 12; n += 1) {
    const entryOf = {
      id: crypto.randomUUID(),
      deviceTime: '2026-03-14T10:00:00Z',
      deviceSeq: n,
      personId: null,
      text: '18.009',
      unit: 'mm',
      valuePm: 18_009_000_000,
      resolutionPm: 1_000_000,
      pieceId: rings.pieceIds[1],
      featureId: rings.featureId,
      gaugeId: rings.gaugeId,
      station: 'top',
      direction: 'A',
      temperatureMilliC: null,
      heldAs: null,
    };
    const answer = await post(server, 'readings', { deviceId, entries: [entryOf] });
    expect(answer.status).toBe(200);
  }
}
