import { expect } from 'vitest';
import type { Page } from 'playwright-core';
import type { JobSheet } from '@/lib/schema/sheet';
import type { RunningServer } from '../setup/start-server.mjs';
import { entry, post, ready } from './bench-story';

export type Plungers = {
  jobId: string;
  sheet: () => Promise<JobSheet>;
  /** Opens the Bench at one feature of one piece. */
  bench: (page: Page, mark: string) => Promise<void>;
};

/** A job of three liners, 18.000 +0.018 0, and four plungers that run in them with 0.008 to 0.012, aim 0.010. */
export async function startPlungers(server: RunningServer): Promise<Plungers> {
  const id = () => crypto.randomUUID();
  const [jobId, liner, plunger, bore, outside] = [id(), id(), id(), id(), id()];
  const feature = {
    position: 1,
    unit: 'mm',
    nominalPm: 18_000_000_000,
    isoClass: null,
    stations: ['middle'],
    directions: ['A'],
    pictureId: null,
    pictureX: null,
    pictureY: null,
  };
  const answer = await post(server, 'jobs/start', {
    job: {
      id: jobId,
      name: 'Plungers',
      note: '',
      drawing: '',
      revision: '',
      unit: 'mm',
      finishedAt: null,
    },
    parts: [
      { id: liner, position: 1, name: 'Liner', material: 'steel', prefix: 'L', quantity: 3 },
      { id: plunger, position: 2, name: 'Plunger', material: 'steel', prefix: 'P', quantity: 4 },
    ],
    features: [
      {
        ...feature,
        id: bore,
        partId: liner,
        balloon: '1',
        name: 'Bore',
        kind: 'bore',
        asDrawn: '18.000 +0.018 0',
        upperPm: 18_000_000,
        lowerPm: 0,
      },
      {
        ...feature,
        id: outside,
        partId: plunger,
        balloon: '2',
        name: 'Outside',
        kind: 'outside',
        asDrawn: '18.000',
        upperPm: null,
        lowerPm: null,
      },
    ],
    fits: [
      {
        id: id(),
        internalFeatureId: bore,
        externalFeatureId: outside,
        name: 'Plunger in liner',
        way: 'limits',
        classes: null,
        minPm: 8_000_000,
        maxPm: 12_000_000,
        aimPm: 10_000_000,
        governs: 'extreme',
      },
    ],
    runs: [],
  });
  expect(answer.status).toBe(201);
  const sheet = async () =>
    (await (await fetch(`${server.url}/api/v1/jobs/${jobId}/sheet`)).json()) as JobSheet;
  return {
    jobId,
    sheet,
    async bench(page, mark) {
      const piece = (await sheet()).pieces.find((one) => one.mark === mark)!;
      const featureId = piece.partId === liner ? bore : outside;
      await page.goto(`${server.url}/jobs/${jobId}/bench?piece=${piece.id}&feature=${featureId}`);
      await ready(page);
    },
  };
}

/** The gauge the feature on the bench is read with. */
export async function useGauge(page: Page, name: RegExp): Promise<void> {
  await page.getByRole('button', { name: /Gauge and unit/ }).click();
  await page.getByRole('dialog').getByRole('button', { name }).click();
}

/** One size by the keyboard. */
export async function type(page: Page, figure: string): Promise<void> {
  await entry(page).waitFor();
  await page.keyboard.type(figure);
  await page.keyboard.press('Enter');
  await expect.poll(() => entry(page).inputValue()).toBe('');
}

/** Waits until the book has a reading: only then may the page be left. */
export async function inTheBook(job: Plungers, figure: string): Promise<void> {
  await expect
    .poll(async () => (await job.sheet()).readings.map(({ text }) => text), { timeout: 20_000 })
    .toContain(figure);
}

/** One size by the thumb. */
export async function tapIn(page: Page, figure: string): Promise<void> {
  await entry(page).waitFor();
  for (const character of figure) {
    const name = character === '.' ? 'point' : character;
    await page.getByRole('button', { name, exact: true }).tap();
  }
  await page.getByRole('button', { name: 'Log', exact: true }).tap();
  await expect.poll(() => entry(page).inputValue()).toBe('');
}

export const sentence = (page: Page) => page.getByRole('status').first().textContent();
export const left = (page: Page) =>
  page.getByRole('region', { name: 'Left' }).locator('p').first().textContent();
export const onDial = (page: Page) =>
  page.getByRole('region', { name: 'Put on the dial' }).locator('p').first().textContent();
/** The lines of the cut log, cells with a space between. */
export const logged = async (page: Page) =>
  (await page.getByRole('region', { name: 'Cuts' }).locator('tbody tr').allInnerTexts()).map(
    (line) => line.replaceAll(/\s+/g, ' ').trim(),
  );
export const isCut = (page: Page) => isAt(page, /\/cut\?piece=/);
export const isBench = (page: Page) => isAt(page, /\/bench\?piece=/);

/** Waits for the address; where it does not come, says what stands on the page instead. */
async function isAt(page: Page, address: RegExp): Promise<void> {
  await page.waitForURL(address).catch(async (error: unknown) => {
    const says = await page.locator('main').innerText();
    throw new Error(`${String(error)}\n${page.url()}\n${says}`, { cause: error });
  });
}
