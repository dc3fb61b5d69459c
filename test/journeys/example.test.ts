import axe, { type AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, type OpenBrowser } from '../setup/open-browser';
import { startServer, type RunningServer } from '../setup/start-server.mjs';

// The example, opened from the empty notebook and looked at on every sheet, width and theme.

let server: RunningServer;
let chromium: OpenBrowser;
let job: string;

beforeAll(async () => {
  server = await startServer();
  chromium = await openBrowser();
  const page = await (await chromium.newContext()).newPage();
  await page.goto(server.url);
  await page.getByRole('button', { name: 'Open the example' }).click();
  await page.waitForURL(/\/board$/);
  job = page.url().replace(/\/board$/, '');
  await page.context().close();
});

afterAll(async () => {
  await chromium.close();
  await server.remove();
});

const sheets = () => ({
  Jobs: server.url,
  Board: `${job}/board`,
  Bench: `${job}/bench`,
  Fits: `${job}/fits`,
  Runs: `${job}/runs`,
  'As drawn': `${job}/edit`,
  Gauges: `${server.url}/gauges`,
  Tables: `${server.url}/tables`,
  Settings: `${server.url}/settings`,
  'Start a job': `${server.url}/start`,
  API: `${server.url}/api`,
});

describe.each([320, 360, 768, 1280])('at %i wide', (width) => {
  it.each(['light', 'dark', 'glare'])(
    'is sound on every sheet in %s',
    async (theme) => {
      const context = await chromium.newContext({ viewport: { width, height: 800 } });
      const page = await context.newPage();
      for (const [name, url] of Object.entries(sheets())) {
        await page.goto(url);
        await page.evaluate((t) => document.documentElement.setAttribute('data-theme', t), theme);
        await page.locator('main, [role=main]').first().waitFor();
        expect(await serious(page), `${name} at ${width} in ${theme}`).toEqual([]);
        const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
        expect(over, `${name} scrolls sideways at ${width}`).toBeLessThanOrEqual(0);
      }
      await context.close();
      // Eleven sheets and a browser's own audit of each: on a busy machine that is minutes.
    },
    180_000,
  );
});

/** What axe finds serious or critical. */
async function serious(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() =>
    (globalThis as unknown as { axe: { run: () => Promise<AxeResults> } }).axe.run(),
  );
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`);
}

it('opens the example once, however often the door is used', async () => {
  const post = () =>
    fetch(`${server.url}/api/v1/example`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', origin: server.url },
      body: '{}',
    });
  expect((await post()).status).toBe(200);
  const { rows } = (await (await fetch(`${server.url}/api/v1/jobs`)).json()) as { rows: unknown[] };
  expect(rows).toHaveLength(1);
});

it('shows on the Board and on the run chart, live, what another device has kept', async () => {
  const context = await chromium.newContext({ viewport: { width: 1280, height: 900 } });
  const [board, runs] = [await context.newPage(), await context.newPage()];
  await board.goto(`${job}/board`);
  await runs.goto(`${job}/runs`);
  await runs.getByRole('link', { name: 'Log W12' }).waitFor();
  await board.getByRole('button', { name: 'Crank web' }).click();
  await board.getByRole('rowheader', { name: 'W12' }).waitFor();

  const kept = await runs.evaluate(async (jobId) => {
    const sheet = await (await fetch(`/api/v1/jobs/${jobId}/sheet`)).json();
    const piece = sheet.pieces.find((row: { mark: string }) => row.mark === 'W12');
    const feature = sheet.features.find((row: { balloon: string }) => row.balloon === '9');
    const gauge = sheet.gauges.find((row: { name: string }) => row.name === 'Mic 2');
    const entries = [1, 2].map((n) => ({
      id: crypto.randomUUID(),
      deviceTime: new Date().toISOString(),
      deviceSeq: n,
      personId: null,
      text: '11.992',
      unit: 'mm',
      valuePm: 11_992_000_000,
      resolutionPm: 1_000_000,
      pieceId: piece.id,
      featureId: feature.id,
      gaugeId: gauge.id,
      station: 'middle',
      direction: n === 1 ? 'A' : 'B',
      temperatureMilliC: null,
      heldAs: null,
    }));
    const answer = await fetch('/api/v1/readings', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ deviceId: '0195920c-0000-7000-8000-0000000000d2', entries }),
    });
    return (await answer.json()).outcomes.map((o: { state: string }) => o.state);
  }, job.split('/').at(-1)!);
  expect(kept).toEqual(['kept', 'kept']);
  await runs.getByRole('link', { name: 'Log W13' }).waitFor();
  await board.getByText('44 of 56 pieces').first().waitFor();
  await context.close();
});

it('notes an event from the chart, which starts the line afresh', async () => {
  const page = await (
    await chromium.newContext({ viewport: { width: 1280, height: 900 } })
  ).newPage();
  await page.goto(`${job}/runs`);
  await page.getByRole('button', { name: 'Note an event' }).click();
  await page.getByLabel('Remark').fill('corner 3');
  await page.getByRole('button', { name: 'Keep it' }).click();
  await page.getByRole('heading', { name: 'Too few to draw a line' }).waitFor();
  await page.getByText('The same in a table').click();
  await page.getByRole('cell', { name: /Insert changed, .*corner 3/ }).waitFor();
  await page.context().close();
});

it('shows sizes in the other unit without touching what was typed', async () => {
  const page = await (
    await chromium.newContext({ viewport: { width: 1280, height: 900 } })
  ).newPage();
  await page.goto(`${server.url}/settings`);
  await page.getByText('Inches', { exact: true }).click();
  await page.waitForTimeout(500);
  await page.goto(`${job}/fits`);
  // A band of 0.004 mm would read 0.0003 to 0.0005 in: it is said and counted in tenths of that step.
  await page.getByText('in 0.00001 inch').first().waitFor();
  await page.getByText(/^Wanted 0\.00031 to 0\.00047 clear, aim 0\.00039\./).waitFor();
  await page.getByText('inches', { exact: true }).waitFor();
  const texts = await page.evaluate(async (jobId) => {
    const sheet = await (await fetch(`/api/v1/jobs/${jobId}/sheet`)).json();
    return sheet.readings.map((row: { text: string }) => row.text);
  }, job.split('/').at(-1)!);
  expect(texts).toContain('18.498');
  await page.context().close();
});

it('prints the board: every part by its name, every feature beside the others, nothing that is pressed', async () => {
  const page = await (
    await chromium.newContext({ viewport: { width: 1280, height: 900 } })
  ).newPage();
  await page.goto(`${job}/board`);
  await page.getByRole('heading', { name: 'Power piston' }).waitFor();
  // A4 less its margins, at 96 to the inch.
  await page.setViewportSize({ width: 699, height: 1047 });
  await page.emulateMedia({ media: 'print' });
  for (const name of ['Liner', 'Power piston', 'Displacer rod', 'Base plate']) {
    await page.getByRole('heading', { name }).waitFor();
  }
  const heads = page.getByRole('columnheader').filter({ hasText: 'known to' });
  await expect.poll(async () => (await heads.all()).length).toBe(6);
  for (const head of await heads.all()) {
    const box = (await head.boundingBox())!;
    expect(box.x + box.width).toBeLessThanOrEqual(699);
  }
  for (const words of ['Change the job as drawn', 'Set the balloons']) {
    expect(await page.getByText(words, { exact: true }).isVisible(), words).toBe(false);
  }
  await page.goto(`${server.url}/gauges`);
  await page.getByRole('button', { name: 'Mic 2', exact: true }).waitFor();
  expect(await page.getByText('Teach how it sends').first().isVisible()).toBe(false);
  await page.context().close();
});

it('attaches a picture of the drawing and sets a balloon on it', async () => {
  const page = await (
    await chromium.newContext({ viewport: { width: 1280, height: 900 } })
  ).newPage();
  await page.goto(`${job}/board`);
  const png = await page.screenshot({ clip: { x: 0, y: 0, width: 300, height: 200 } });
  await page
    .getByLabel('Picture of the drawing, PNG or JPEG')
    .setInputFiles({ name: 'haf-3.png', mimeType: 'image/png', buffer: png });
  await page.getByRole('img', { name: 'Drawing: haf-3.png' }).waitFor();
  await page.getByRole('button', { name: '1 Bore', exact: true }).first().click();
  await page.getByRole('button', { name: 'The place of this balloon' }).click();
  await page.getByText('Choose a balloon, then tap its place').waitFor();
  const feature = await page.evaluate(async (jobId) => {
    const sheet = await (await fetch(`/api/v1/jobs/${jobId}/sheet`)).json();
    return sheet.features.find((row: { balloon: string }) => row.balloon === '1');
  }, job.split('/').at(-1)!);
  expect(feature.pictureX).toBeCloseTo(0.5, 1);
  await page.context().close();
});

it('leaves no error in any console', () => {
  expect(chromium.faults).toEqual([]);
});
