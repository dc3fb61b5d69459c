import type { Locator } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { freshDatabase } from '../setup/fresh-database';
import { openBrowser, type OpenBrowser } from '../setup/open-browser';
import { startServer, type RunningServer } from '../setup/start-server.mjs';

// A job in inches with names as long as a drawing gives them: nothing they stand in is refused, and
// nothing is cut off.

const bush = 'Guide bush, phosphor bronze, for the cross-slide nut housing';
const shaft = 'Guide shaft, ground silver steel, of the cross-slide housing';
const gauge = 'Micrometer 0 to 1 inch, tenths vernier, by the window, blue';

let server: RunningServer;
let chromium: OpenBrowser;

beforeAll(async () => {
  server = await startServer({ databaseUrl: await freshDatabase() });
  chromium = await openBrowser();
});

afterAll(async () => {
  await chromium.close();
  await server.remove();
});

it('takes a bush and a shaft with names of sixty characters, and a gauge, and shows them whole', async () => {
  const page = await (
    await chromium.newContext({ viewport: { width: 360, height: 740 } })
  ).newPage();
  await page.goto(`${server.url}/gauges`);
  await page.getByRole('button', { name: 'Add a gauge' }).first().click();
  await page.getByLabel('Name').fill(gauge);
  await page.getByLabel('Reads to').fill('0.001');
  await page.getByRole('button', { name: 'Keep this gauge' }).click();
  await page.getByRole('button', { name: gauge, exact: true }).waitFor();

  await page.goto(`${server.url}/start`);
  await page.getByLabel('Job', { exact: true }).fill('Cross-slide');
  await page.getByText('Inches', { exact: true }).click();
  for (const [part, drawn, name] of [
    ['Part 1', '1/2 H7', bush],
    ['Part 2', '1/2 g6', shaft],
  ] as const) {
    const region = page.getByRole('region', { name: part });
    await region.getByLabel('How many').fill('6');
    await region.getByLabel('As drawn').fill(drawn);
    await region.getByLabel('Part', { exact: true }).fill(name);
  }
  await page.getByLabel('Least clearance').fill('.0002');
  await page.getByLabel('Most clearance').fill('.0014');
  await page.getByRole('button', { name: 'Start the job' }).click();
  await page.waitForURL(/\/jobs\/[0-9a-f-]+\/board/);
  const job = page.url().replace(/\/board$/, '');

  await page.goto(`${job}/bench`);
  const row = page.getByRole('list', { name: 'Gauges' }).getByRole('button');
  for (const [width, height] of [
    [320, 640],
    [360, 740],
    [768, 1024],
    [1280, 800],
  ] as const) {
    await page.setViewportSize({ width, height });
    await row.waitFor();
    const beyond = () => row.evaluate((element) => element.scrollWidth - element.clientWidth);
    await expect.poll(beyond, { message: `${width} wide` }).toBe(0);
    await expect.poll(() => rightOf(row), { message: `${width} wide` }).toBeLessThanOrEqual(width);
  }

  // With it chosen, the entry keeps within the window and says the place as well.
  await row.click();
  const line = page.getByLabel(/^Reading, top, across A/);
  const about = page.getByRole('button', { name: /^Gauge and unit/ });
  for (const width of [320, 768, 1024, 1280]) {
    await page.setViewportSize({ width, height: 800 });
    await line.waitFor();
    for (const part of [line, about, page.getByRole('button', { name: 'Log', exact: true })]) {
      await expect
        .poll(() => rightOf(part), { message: `${width} wide` })
        .toBeLessThanOrEqual(width);
    }
    const place = page.locator('form').getByText('top, across A', { exact: true });
    const placeWidth = () => place.evaluate((element) => element.getBoundingClientRect().width);
    await expect.poll(placeWidth, { message: `${width} wide` }).toBeGreaterThan(80);
  }
  expect(chromium.faults).toEqual([]);
  await page.context().close();
}, 60_000);

/** How far to the right it reaches. */
function rightOf(part: Locator): Promise<number> {
  return part.evaluate((element) => element.getBoundingClientRect().right);
}
