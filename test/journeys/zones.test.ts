import { plainRunChoices } from '@/lib/rules/run-choices';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { openBrowser, type OpenBrowser } from '../setup/open-browser';
import { startServer, type RunningServer } from '../setup/start-server.mjs';
import { desk, entry, loadExample, phone, post, pressNext, ready } from './bench-story';

// A short batch by zones, from set-up to stop. 10.000 +- 0.020: the middle half is 9.990 to 10.010.

let server: RunningServer;
let chromium: OpenBrowser;
let jobId: string;

beforeAll(async () => {
  server = await startServer();
  chromium = await openBrowser();
  await loadExample(server); // for its gauges
});

afterAll(async () => {
  expect(chromium.faults).toEqual([]);
  await chromium.close();
  await server.remove();
});

async function startPins(): Promise<string> {
  const id = () => crypto.randomUUID();
  const [job, partId, featureId] = [id(), id(), id()];
  const answer = await post(server, 'jobs/start', {
    job: {
      id: job,
      name: 'Pins',
      note: '',
      drawing: '',
      revision: '',
      unit: 'mm',
      finishedAt: null,
    },
    parts: [{ id: partId, position: 1, name: 'Pin', material: '', prefix: 'Q', quantity: 14 }],
    features: [
      {
        id: featureId,
        partId,
        position: 1,
        balloon: '1',
        name: 'Outside',
        kind: 'outside',
        asDrawn: '10 ±0.02',
        unit: 'mm',
        nominalPm: 10_000_000_000,
        upperPm: 20_000_000,
        lowerPm: -20_000_000,
        isoClass: null,
        stations: ['middle'],
        directions: ['A'],
        pictureId: null,
        pictureX: null,
        pictureY: null,
      },
    ],
    fits: [],
    runs: [{ id: id(), featureId, dial: 'radius', divisionPm: 10_000_000, ...plainRunChoices }],
  });
  expect(answer.status).toBe(201);
  return job;
}

const zones = (page: Page) => page.getByRole('region', { name: 'By zones' });
const says = (page: Page) => zones(page).locator('p').first().textContent();

/** One reading a pin, then on to the next pin. */
async function log(page: Page, figure: string): Promise<void> {
  await page.keyboard.type(figure);
  await page.keyboard.press('Enter');
  await expect.poll(() => entry(page).inputValue()).toBe('');
}
async function next(page: Page, mark: string): Promise<void> {
  await pressNext(page);
  await expect.poll(() => page.title()).toContain(`${mark} `);
}

describe('a short batch by zones', () => {
  it('sets up, runs, waits for the second, moves the mean, and sets up again', async () => {
    jobId = await startPins();
    const context = await chromium.newContext(desk);
    const page = await context.newPage();
    await page.goto(`${server.url}/jobs/${jobId}/bench`);
    await ready(page);
    await page.getByRole('button', { name: /Gauge and unit/ }).click();
    await page.getByRole('dialog').getByRole('button', { name: /Mic 2/ }).click();

    await page.getByRole('button', { name: 'Run by zones' }).click();
    await expect.poll(() => says(page)).toContain('Set up: five in a row');

    const figures = ['10.002', '9.997', '10.004', '10.001'];
    for (const [i, figure] of figures.entries()) {
      await log(page, figure);
      await expect.poll(() => says(page)).toContain('of five');
      await next(page, `Q${i + 2}`);
    }
    await expect
      .poll(() => says(page))
      .toBe(
        'Four of five Q4 is in the middle half. One more in a row and the batch may run. Make Q5 and measure it. No longer by zones',
      );
    await log(page, '9.999');
    await expect.poll(() => says(page)).toContain('Run on Q5 is the fifth in a row.');

    await next(page, 'Q6');
    await log(page, '10.013');
    await expect
      .poll(() => says(page))
      .toBe(
        'Measure Q7 too Q6 is in the high quarter. Leave the machine as it is: the very next piece decides. No longer by zones',
      );
    await next(page, 'Q7');
    await log(page, '10.016');
    // 14.5 above the middle: 7.25 on the radius dial, one division of 0.01.
    await expect
      .poll(() => says(page))
      .toBe(
        'Move it 0.020 smaller Q6 and Q7 are both high. On the radius dial that is 0.010. Then five in a row again. ',
      );

    await zones(page).getByRole('button', { name: 'Moved −0.020' }).click();
    await expect.poll(() => says(page)).toContain('Set up: five in a row');
    await ready(page);
    const events = async () => {
      const answer = await fetch(`${server.url}/api/v1/jobs/${jobId}/sheet`);
      return ((await answer.json()) as { runEvents: unknown[] }).runEvents;
    };
    await expect
      .poll(events)
      .toMatchObject([{ kind: 'offset moved', offsetPm: -20_000_000, afterOrdinal: 7 }]);
    await context.close();
  });

  it('stops by thumb on a phone for one outside the limits, and shows the same on Runs', async () => {
    const other = await chromium.newContext(desk);
    const runs = await other.newPage();
    await runs.goto(`${server.url}/jobs/${jobId}/runs`);
    const panel = runs.getByRole('region', { name: 'Set up: five in a row' });
    await panel.waitFor();

    const context = await chromium.newContext(phone);
    const page = await context.newPage();
    await page.goto(`${server.url}/jobs/${jobId}/bench`);
    await ready(page);
    await expect.poll(() => page.title()).toContain('Q8 ');
    for (const key of ['1', '0', 'point', '0', '2', '1', 'Log']) {
      await page.getByRole('button', { name: key, exact: true }).tap();
    }
    await expect.poll(() => says(page)).toContain('Stop Q8 is over the upper limit.');
    await runs.getByRole('region', { name: 'Stop' }).waitFor();

    await zones(page).getByRole('button', { name: 'Insert changed' }).tap();
    await expect.poll(() => says(page)).toContain('Set up: five in a row');
    await runs.getByRole('region', { name: 'Set up: five in a row' }).waitFor();
    await runs.getByRole('group', { name: 'Run by zones' }).getByText('No').click();
    await runs.getByRole('region', { name: 'By zones' }).waitFor();
    await expect.poll(() => zones(page).count()).toBe(0);
    await context.close();
    await other.close();
  });
});
