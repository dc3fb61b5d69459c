import { expect } from 'vitest';
import type { BrowserContextOptions, Locator, Page } from 'playwright-core';
import type { JobSheet } from '@/lib/schema/sheet';
import type { OpenBrowser } from '../setup/open-browser';
import type { RunningServer } from '../setup/start-server.mjs';

/** The id of the example is fixed. */
const exampleJob = '0195920c-0000-7000-8001-000000000001';

export const phone: BrowserContextOptions = {
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  isMobile: true,
};
export const desk: BrowserContextOptions = { viewport: { width: 1280, height: 800 } };

/** The example in a notebook of its own. */
export async function loadExample(server: RunningServer): Promise<void> {
  expect((await post(server, 'example', {})).status).toBe(200);
}

/** Writes to the API as a page of the same server does. */
export function post(server: RunningServer, path: string, body: unknown): Promise<Response> {
  return fetch(`${server.url}/api/v1/${path}`, {
    method: 'POST',
    headers: {
      'content-type': 'application/json',
      origin: server.url,
      'fitwright-device': crypto.randomUUID(),
    },
    body: JSON.stringify(body),
  });
}

/** The sheet of the example as the server has it now. */
export async function sheetOf(server: RunningServer): Promise<JobSheet> {
  return (await fetch(`${server.url}/api/v1/jobs/${exampleJob}/sheet`)).json() as Promise<JobSheet>;
}

/** Readings the server has of one feature on one piece, with what was said of them since. */
export async function inBook(server: RunningServer, mark: string, balloon: string) {
  const sheet = await sheetOf(server);
  const { pieceId, featureId } = idsOf(sheet, mark, balloon);
  return sheet.readings
    .filter((reading) => reading.pieceId === pieceId && reading.featureId === featureId)
    .map((reading) => ({
      ...reading,
      said: sheet.corrections
        .filter((correction) => correction.readingId === reading.id)
        .map(({ kind }) => kind),
    }));
}

function idsOf(sheet: JobSheet, mark: string, balloon: string) {
  return {
    pieceId: sheet.pieces.find((piece) => piece.mark === mark)!.id,
    featureId: sheet.features.find((feature) => feature.balloon === balloon)!.id,
  };
}

export type BenchPage = { page: Page; close: () => Promise<void> };

/** Opens the Bench at one feature of one piece of the example, ready for the first key. */
export async function openBench(
  server: RunningServer,
  chromium: OpenBrowser,
  at: { mark: string; balloon: string } | null,
  options: BrowserContextOptions = desk,
): Promise<BenchPage> {
  const context = await chromium.newContext(options);
  const page = await context.newPage();
  await goToBench(server, page, at);
  return { page, close: () => context.close() };
}

export async function goToBench(
  server: RunningServer,
  page: Page,
  at: { mark: string; balloon: string } | null,
): Promise<void> {
  const address = new URL(`${server.url}/jobs/${exampleJob}/bench`);
  if (at !== null) {
    const { pieceId, featureId } = idsOf(await sheetOf(server), at.mark, at.balloon);
    address.searchParams.set('piece', pieceId);
    address.searchParams.set('feature', featureId);
  }
  await page.goto(address.href);
  await ready(page);
}

/** Enter on an empty line, as a person presses it: an Enter straight after another belongs to that one. */
export async function pressNext(page: Page): Promise<void> {
  await page.waitForTimeout(400);
  await page.keyboard.press('Enter');
}

/** The entry takes the focus once the page is alive, or the question about a held reading. */
export async function ready(page: Page): Promise<void> {
  await page.waitForFunction(
    () =>
      document.activeElement?.getAttribute('name') === 'reading' ||
      document.activeElement?.closest('[role=alertdialog]') !== null,
  );
}

/** What stands large on the bench. */
export const reading = (page: Page) =>
  page.getByRole('region', { name: 'Reading' }).locator('[data-state] > span').first();
export const verdict = (page: Page) =>
  page.getByRole('region', { name: 'Reading' }).locator('p').first();
export const entry = (page: Page) => page.locator('input[name=reading]');
export const head = (page: Page) => page.locator('header').first();
export const place = (page: Page, station: number, direction: number) =>
  page.locator(`[data-place="${station} ${direction}"]`);
/** What the entry line says back. */
export const notice = (page: Page) => page.locator('form [role=alert]');

/** How a gauge's message may end. */
export type GaugeEnd = 'Enter' | 'CR LF' | 'Tab' | 'comma' | 'space' | 'nothing';

/**
 * Types as a gauge does: the text at its own pace, then its terminator. The keys carry the times a gauge
 * would give them, however busy this machine is. `atOnce` hands all of them over without a wait, where a
 * stall of this machine between two keys would be a silence, and so an end.
 */
export async function gauge(
  page: Page,
  text: string,
  delayMs: number,
  end: GaugeEnd = 'Enter',
  startMs = Date.now(),
  {
    waitMs = delayMs,
    times = 1,
    atOnce = false,
  }: { waitMs?: number; times?: number; atOnce?: boolean } = {},
): Promise<void> {
  const keys = await page.context().newCDPSession(page);
  let timestamp = startMs / 1000;
  const sent: Promise<unknown>[] = [];
  const press = async (key: string, windowsVirtualKeyCode: number, typed: string) => {
    const event = { key, windowsVirtualKeyCode, timestamp };
    sent.push(keys.send('Input.dispatchKeyEvent', { ...event, type: 'keyDown', text: typed }));
    sent.push(keys.send('Input.dispatchKeyEvent', { ...event, type: 'keyUp' }));
    timestamp += delayMs / 1000;
    if (atOnce) return;
    await Promise.all(sent);
    await new Promise((done) => setTimeout(done, waitMs));
  };
  const character = (one: string) => press(one, codes[one] ?? one.charCodeAt(0), one);
  for (let time = 0; time < times; time += 1) {
    for (const one of text) await character(one);
    if (end === 'Enter' || end === 'CR LF') await press('Enter', 13, '\r');
    if (end === 'CR LF') await press('Enter', 13, '\r');
    if (end === 'Tab') await press('Tab', 9, '');
    if (end === 'comma') await character(',');
    if (end === 'space') await character(' ');
  }
  await Promise.all(sent);
  await keys.detach();
}

const codes: Record<string, number> = { '.': 190, ',': 188, '-': 189, '+': 187 };

/** A job of rings whose bore nobody has read: three stations, two directions. */
export type Rings = { jobId: string; featureId: string; pieceIds: string[]; gaugeId: string };

export async function startRings(
  server: RunningServer,
  { directions = ['A', 'B'], prefix = 'R' }: { directions?: string[]; prefix?: string } = {},
): Promise<Rings> {
  const id = () => crypto.randomUUID();
  const [jobId, partId, featureId] = [id(), id(), id()];
  const none = { isoClass: null, pictureId: null, pictureX: null, pictureY: null };
  const answer = await post(server, 'jobs/start', {
    job: {
      id: jobId,
      name: 'Rings',
      note: '',
      drawing: '',
      revision: '',
      unit: 'mm',
      finishedAt: null,
    },
    parts: [{ id: partId, position: 1, name: 'Ring', material: '', prefix, quantity: 4 }],
    features: [
      {
        ...none,
        id: featureId,
        partId,
        position: 1,
        balloon: '1',
        name: 'Bore',
        kind: 'bore',
        asDrawn: '18.000 +0.018 0',
        unit: 'mm',
        nominalPm: 18_000_000_000,
        upperPm: 18_000_000,
        lowerPm: 0,
        stations: ['top', 'middle', 'bottom'],
        directions,
      },
    ],
    fits: [],
    runs: [],
  });
  expect(answer.status).toBe(201);
  const sheet = (await (
    await fetch(`${server.url}/api/v1/jobs/${jobId}/sheet`)
  ).json()) as JobSheet;
  return {
    jobId,
    featureId,
    pieceIds: sheet.pieces.sort((a, b) => a.ordinal - b.ordinal).map((piece) => piece.id),
    gaugeId: sheet.gauges.find(({ name }) => name === 'Bore gauge 1')!.id,
  };
}

/** The Bench of a job of rings, at the first of them. */
export async function openJob(
  server: RunningServer,
  chromium: OpenBrowser,
  { jobId }: Rings,
  options: BrowserContextOptions = desk,
): Promise<BenchPage> {
  const context = await chromium.newContext(options);
  const page = await context.newPage();
  await page.goto(`${server.url}/jobs/${jobId}/bench`);
  await ready(page);
  return { page, close: () => context.close() };
}

/** What the server has of the first ring. */
export async function booked(server: RunningServer, { jobId, pieceIds }: Rings) {
  const sheet = (await (
    await fetch(`${server.url}/api/v1/jobs/${jobId}/sheet`)
  ).json()) as JobSheet;
  return sheet.readings.filter(({ pieceId }) => pieceId === pieceIds[0]);
}

/**
 * A finger that stays on the screen for as long as one does; Playwright's own tap is over at once. `down` is
 * where on the key it lands, 0 at its top and 1 at its foot.
 */
export async function pressFor(
  page: Page,
  what: Locator,
  forMs: number,
  down = 0.5,
): Promise<void> {
  const { x, y, width, height } = (await what.boundingBox())!;
  const finger = await page.context().newCDPSession(page);
  const touchPoints = [{ x: x + width / 2, y: y + height * down }];
  await finger.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints });
  await page.waitForTimeout(forMs);
  await finger.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await finger.detach();
}

/** A key or a switch that bounces: it comes twice, two frames apart, whatever else the machine has to do. */
export async function pressBounced(page: Page, key: string): Promise<void> {
  await page.evaluate(async (pressed) => {
    const press = () =>
      document.activeElement!.dispatchEvent(
        new KeyboardEvent('keydown', {
          key: pressed,
          code: pressed.length > 1 ? pressed : `Key${pressed.toUpperCase()}`,
          bubbles: true,
          cancelable: true,
        }),
      );
    const frame = () => new Promise((done) => requestAnimationFrame(done));
    press();
    await frame();
    await frame();
    press();
  }, key);
}

/** Longer than a key or a switch that bounces: what comes next is meant. */
export const noBounce = (page: Page) => page.waitForTimeout(450);
