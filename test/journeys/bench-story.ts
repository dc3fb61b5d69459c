import { expect } from 'vitest';
import type { BrowserContextOptions, Page } from 'playwright-core';
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
  const answer = await fetch(`${server.url}/api/v1/example`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: '{}',
  });
  expect(answer.status).toBe(200);
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

/** The entry takes the focus once the page is alive. */
export async function ready(page: Page): Promise<void> {
  await page.waitForFunction(() => document.activeElement?.getAttribute('name') === 'reading');
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

/** Types as a gauge does: the text at a pace, then its terminator. */
export async function gauge(
  page: Page,
  text: string,
  delay: number,
  end: 'Enter' | 'Tab' = 'Enter',
) {
  await page.keyboard.type(text, { delay });
  if (delay > 0) await page.waitForTimeout(delay);
  await page.keyboard.press(end);
}
