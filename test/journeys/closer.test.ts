import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { closeStore } from '@/lib/store/client';
import { farOutAt, fillLongRun } from '../setup/long-run';
import { freshDatabase } from '../setup/fresh-database';
import { openBrowser, type OpenBrowser } from '../setup/open-browser';
import { startServer, type RunningServer } from '../setup/start-server.mjs';
import { desk, goToBench, loadExample, phone } from './bench-story';

// A run of a hundred thousand pieces, looked at closely.

let server: RunningServer;
let chromium: OpenBrowser;
let runId: string;
const pieces = 100_000;
const farOut = farOutAt(pieces);

beforeAll(async () => {
  const databaseUrl = await freshDatabase();
  process.env['DATABASE_URL'] = databaseUrl;
  await closeStore();
  ({ runId } = await fillLongRun(pieces));
  await closeStore();
  server = await startServer({ databaseUrl });
  chromium = await openBrowser();
  await loadExample(server);
}, 120_000);

afterAll(async () => {
  expect(chromium.faults).toEqual([]);
  await chromium.close();
  await server.remove();
});

const words = (page: Page) => page.getByRole('status').textContent();

async function open(options = desk, id = runId): Promise<Page> {
  const page = await (await chromium.newContext(options)).newPage();
  await page.goto(`${server.url}/runs/${id}`);
  await page.locator('[data-drawn] canvas').waitFor();
  return page;
}

describe('a run of a hundred thousand pieces', () => {
  it('opens whole, with its one far-out piece named', async () => {
    const page = await open();
    await expect
      .poll(() => words(page))
      .toContain(`L1 to L${pieces} of ${pieces}, ${pieces} measured.`);
    await expect.poll(() => words(page)).toContain(`Smallest 17.990 at L${farOut}`);
    await page.context().close();
  });

  it('is looked at nearer and moved along by keys alone', async () => {
    const page = await open();
    await page.locator('[data-drawn]').focus();
    await page.keyboard.press('Home');
    for (let i = 0; i < 12; i += 1) await page.keyboard.press('+');
    await page.keyboard.press('Home');
    const first = await words(page);
    expect(first).toMatch(/^L1 to L\d{3} of/);
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => words(page)).not.toBe(first);
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => words(page)).toBe(first);
    await page.keyboard.press('End');
    await expect.poll(() => words(page)).toContain(`to L${pieces} of`);
    await page.keyboard.press('0');
    await expect.poll(() => words(page)).toContain(`L1 to L${pieces} of`);
    await page.context().close();
  });

  it('is moved along by a finger and looked nearer at by two, on a phone', async () => {
    const page = await open(phone);
    const box = (await page.locator('[data-drawn]').boundingBox())!;
    const y = box.y + 150;
    const touch = await page.context().newCDPSession(page);
    const send = (type: string, ...xs: number[]) =>
      touch.send('Input.dispatchTouchEvent', {
        type: type as 'touchStart',
        touchPoints: xs.map((x, id) => ({ x, y, id })),
      });
    const middle = box.x + box.width / 2;
    await send('touchStart', middle - 20, middle + 20);
    for (let by = 30; by <= 100; by += 10) await send('touchMove', middle - by, middle + by);
    await send('touchEnd');
    await expect.poll(() => words(page)).not.toContain(`L1 to L${pieces} of`);
    const near = await words(page);
    await send('touchStart', middle);
    for (let by = 10; by <= 80; by += 10) await send('touchMove', middle - by);
    await send('touchEnd');
    await expect.poll(() => words(page)).not.toBe(near);
    await expect
      .poll(() => page.evaluate(() => document.documentElement.scrollWidth <= innerWidth))
      .toBe(true);
    await page.context().close();
  });

  it('is saved as PNG, SVG and CSV, and has a table', async () => {
    const page = await open({ ...desk, acceptDownloads: true });
    const save = async (name: string) => {
      const download = page.waitForEvent('download');
      await page.getByRole('button', { name: `Save as ${name}` }).click();
      const file = await download;
      expect(file.suggestedFilename()).toMatch(new RegExp(`\\.${name.toLowerCase()}$`));
      return readFileSync(await file.path());
    };
    expect([...(await save('PNG')).subarray(1, 4)]).toEqual([...Buffer.from('PNG')]);
    expect((await save('SVG')).toString()).toContain(`Smallest 17.990 at L${farOut}`);
    const rows = (await save('CSV')).toString().trimEnd().split('\r\n');
    expect(rows).toHaveLength(pieces + 1);
    expect(rows[farOut]).toBe(`${farOut},L${farOut},17.990000,18.000000,18.018000`);
    const row = page.getByRole('row', { name: /^L1 / });
    await expect.poll(() => row.isVisible()).toBe(false);
    await page.emulateMedia({ media: 'print' });
    await expect.poll(() => row.isVisible()).toBe(true);
    await expect
      .poll(() => row.evaluate((one) => getComputedStyle(one).color))
      .toBe('rgb(0, 0, 0)');
    await page.emulateMedia({ media: 'screen' });
    await page.getByText('The same in a table').click();
    await page.getByText('more in this stretch').waitFor();
    await page.context().close();
  });
});

it('shows a reading of the Bench as it comes, and the way back to the run', async () => {
  const sheet = (await (
    await fetch(`${server.url}/api/v1/jobs/0195920c-0000-7000-8001-000000000001/sheet`)
  ).json()) as { runs: { id: string }[] };
  const page = await open(desk, sheet.runs[0]!.id);
  await expect.poll(() => words(page)).toContain('11 measured');
  const bench = await (await chromium.newContext(desk)).newPage();
  await goToBench(server, bench, { mark: 'W12', balloon: '9' });
  await bench.keyboard.type('11.991');
  await bench.keyboard.press('Enter');
  await expect.poll(() => words(page)).toContain('12 measured');
  await page.getByRole('link', { name: 'Back to the run' }).click();
  await page.getByRole('heading', { name: 'Crank web, boss outside' }).waitFor();
  await page.getByRole('link', { name: 'Look closer' }).click();
  await page.getByRole('heading', { name: 'Crank web, boss outside, closer' }).waitFor();
  await bench.context().close();
  await page.context().close();
});
