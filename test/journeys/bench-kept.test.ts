import { afterAll, beforeAll, expect, it } from 'vitest';
import axe, { type AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { openBrowser, type OpenBrowser } from '../setup/open-browser';
import { startServer, type RunningServer } from '../setup/start-server.mjs';
import {
  desk,
  goToBench,
  head,
  inBook,
  loadExample,
  notice,
  openBench,
  phone,
  place,
  reading,
  ready,
  startRings,
} from './bench-story';

// What was read is on this device, then in the book, and the page says which. And it is usable by all.

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

it('goes on without a network, says what is to send, and sends it when there is one', async () => {
  const { page, close } = await openBench(server, chromium, { mark: 'W12', balloon: '9' }, phone);
  await page.context().setOffline(true);
  for (const text of ['11.991', '11.990']) {
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
  }
  await expect.poll(() => reading(page).textContent()).toBe('11.990');
  await expect.poll(() => head(page).textContent()).toContain('Kept on this phone. 2 to send.');
  expect(await inBook(server, 'W12', '9')).toEqual([]);
  await page.context().setOffline(false);
  await expect.poll(() => head(page).textContent(), { timeout: 30_000 }).toContain('in the book');
  expect((await inBook(server, 'W12', '9')).map(({ text }) => text)).toEqual(['11.991', '11.990']);
  await close();
});

it('shows a reading of one tab in another, live', async () => {
  const one = await openBench(server, chromium, { mark: 'W13', balloon: '9' }, desk);
  const other = await openBench(server, chromium, { mark: 'W13', balloon: '9' }, phone);
  await one.page.keyboard.type('11.992');
  await one.page.keyboard.press('Enter');
  await expect.poll(() => reading(other.page).textContent()).toBe('11.992');
  await one.close();
  await other.close();
});

it('a full storage is said aloud, and the reading is not lost', async () => {
  const { page, close } = await openBench(server, chromium, { mark: 'W14', balloon: '9' }, phone);
  await page.evaluate(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function refuse(): never {
      throw new DOMException('full', 'QuotaExceededError');
    };
    Object.assign(window, { mend: () => (IDBObjectStore.prototype.put = put) });
  });
  await page.keyboard.type('11.993');
  await page.keyboard.press('Enter');
  const again = page.getByRole('button', { name: 'Keep it again' });
  await again.waitFor();
  await expect.poll(() => reading(page).textContent()).toBe('11.993');
  await expect
    .poll(() => page.locator('main').textContent())
    .toContain('This device has no room left');
  await expect.poll(() => head(page).textContent()).toContain('Not kept.');
  // It is saved as a file where the person wants it, without a network and without room in this browser.
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save it as a file' }).tap();
  const saved = await (await (await saving).createReadStream()).toArray();
  expect(Buffer.concat(saved).toString()).toMatch(/\treading\tW14\t[^\t]*\t[^\t]*\t11\.993\tmm\t/);
  // Another sheet and back: it stands there still, and the browser would ask before the page is left.
  await page.keyboard.press('Alt+1');
  await page.waitForURL(/\/board/);
  const asks = () =>
    page.evaluate(() => !window.dispatchEvent(new Event('beforeunload', { cancelable: true })));
  await expect.poll(() => asks()).toBe(true);
  await page.goBack();
  await again.waitFor();
  await expect.poll(() => reading(page).textContent()).toBe('11.993');
  await page.evaluate(() => (window as unknown as { mend: () => void }).mend());
  await again.tap();
  await expect.poll(() => inBook(server, 'W14', '9')).toMatchObject([{ text: '11.993' }]);
  await expect.poll(() => again.count()).toBe(0);
  await expect.poll(() => asks()).toBe(false);
  await close();
});

it('what the notebook refuses waits in a tray by name, is sent once more or put away with a reason', async () => {
  const { page, close } = await openBench(server, chromium, { mark: 'W15', balloon: '9' }, phone);
  let isRefusing = true;
  await page.route('**/api/v1/readings', async (route) => {
    if (!isRefusing) return route.fallback();
    const { entries } = route.request().postDataJSON() as { entries: { id: string }[] };
    const outcomes = entries.map(({ id }) => ({
      id,
      state: 'refused',
      code: 'reading/no-such-piece',
      at: 'pieceId',
      says: 'There is no piece with this id in this job',
    }));
    return route.fulfill({ status: 200, json: { outcomes } });
  });
  for (const figure of ['11.991', '11.992']) {
    await page.keyboard.type(figure);
    await page.keyboard.press('Enter');
    await expect.poll(() => reading(page).textContent()).toBe(figure);
  }
  await page.getByText('The notebook would not take 2 entries.').waitFor({ timeout: 20_000 });
  await page.getByRole('button', { name: 'See which' }).tap();
  const tray = page.getByRole('dialog', { name: 'The notebook would not take these' });
  const one = (figure: string) =>
    tray.locator('section').filter({ hasText: `Reading ${figure} mm of W15 boss outside` });
  await one('11.991')
    .getByText('There is no piece with this id in this job. It is kept on this device.')
    .waitFor();
  isRefusing = false;
  await one('11.991').getByRole('button', { name: 'Send it once more' }).tap();
  await expect.poll(() => one('11.991').count(), { timeout: 20_000 }).toBe(0);
  await one('11.992').getByLabel('Put it away, because').fill('measured again');
  await one('11.992').getByRole('button', { name: 'Put it away' }).tap();
  await tray.getByText('Nothing waits here any more.').waitFor();
  await tray.getByText(/^Put away .*: measured again\. It is not in the notebook\.$/).waitFor();
  await expect
    .poll(async () => (await inBook(server, 'W15', '9')).map(({ text }) => text), {
      timeout: 20_000,
    })
    .toEqual(['11.991']);

  // It is found again later, and can still be sent.
  await page.getByRole('button', { name: 'Close' }).tap();
  await page.getByRole('button', { name: 'more of this device' }).tap();
  await page.getByRole('button', { name: /^Put away on this device/ }).tap();
  await tray.getByRole('button', { name: 'Send it after all' }).tap();
  await tray.getByText('Put away on this device').waitFor({ state: 'detached' });
  await expect
    .poll(async () => (await inBook(server, 'W15', '9')).map(({ text }) => text))
    .toEqual(['11.991', '11.992']);
  await close();
});

type State = {
  name: string;
  mark: string;
  balloon: string;
  make: (page: Page) => Promise<unknown>;
};
const states: State[] = [
  { name: 'a piece that is done', mark: 'P4', balloon: '4', make: async () => {} },
  { name: 'nothing read', mark: 'P6', balloon: '6', make: async () => {} },
  { name: 'typing', mark: 'P6', balloon: '6', make: (page) => page.keyboard.type('+.01') },
  { name: 'a slip', mark: 'P5', balloon: '4', make: async () => {} },
  { name: 'still to cut', mark: 'P7', balloon: '4', make: async () => {} },
  {
    name: 'a question in the line',
    mark: 'P6',
    balloon: '6',
    async make(page) {
      await page.keyboard.type('7,004');
      await page.keyboard.press('Enter');
      await notice(page).waitFor();
    },
  },
  {
    name: 'an error in the line',
    mark: 'P6',
    balloon: '6',
    async make(page) {
      await page.keyboard.type('7..0');
      await page.keyboard.press('Enter');
      await notice(page).waitFor();
    },
  },
  {
    name: 'the choice of another piece',
    mark: 'P4',
    balloon: '4',
    make: (page) => page.getByRole('button', { name: /Choose another piece/ }).click(),
  },
  {
    name: 'a reading picked',
    mark: 'P4',
    balloon: '4',
    async make(page) {
      await place(page, 0, 0).click();
      await page.getByRole('button', { name: 'It belongs elsewhere' }).click();
    },
  },
  {
    name: 'a reading mistyped',
    mark: 'P4',
    balloon: '4',
    async make(page) {
      await place(page, 0, 0).click();
      await page.getByRole('button', { name: 'I mistyped' }).click();
      await page.getByRole('textbox', { name: /It reads, instead of/ }).fill('18.0');
    },
  },
  { name: 'the list of keys', mark: 'P4', balloon: '4', make: (page) => page.keyboard.press('?') },
];

const touches = (width: number) =>
  width < 768 ? { viewport: { width, height: 640 }, hasTouch: true, isMobile: true } : desk;

it.each([320, 390, 768, 1280])(
  'is sound in every state, in three lights, at %i wide',
  async (width) => {
    const at = { mark: 'P4', balloon: '4' };
    const { page, close } = await openBench(server, chromium, at, {
      ...touches(width),
      viewport: { width, height: width < 768 ? 640 : 800 },
    });
    for (const { name, mark, balloon, make } of states) {
      await goToBench(server, page, { mark, balloon });
      await make(page);
      await expectSound(page, name);
    }
    await close();
  },
  120_000,
);

it.each([320, 1280])(
  'is sound where something is amiss, in three lights, at %i wide',
  async (width) => {
    const rings = await startRings(server);
    const context = await chromium.newContext(touches(width));
    await context.addInitScript(() => {
      const now = Date.now.bind(Date);
      Date.now = () => now() + 3_600_000;
    });
    const page = await context.newPage();
    await page.goto(`${server.url}/jobs/${rings.jobId}/bench`);
    await ready(page);
    const gauges = page.getByRole('list', { name: 'Gauges' });
    await gauges.waitFor();
    await expectSound(page, 'the list of gauges');
    await page.keyboard.type('18.001');
    await page.keyboard.press('Enter');
    await expectSound(page, 'a reading before its gauge');
    await gauges.getByRole('button').first().click();
    await expect.poll(() => reading(page).textContent()).toBe('18.001');
    await page.getByText('The clock of this device is more than two minutes off.').waitFor();
    await expectSound(page, 'a clock that is off');

    await page.evaluate(() => {
      // Both commits come in one moment, whatever else the machine has to do.
      const line = document.querySelector<HTMLInputElement>('input[name=reading]')!;
      for (let n = 0; n < 2; n += 1) {
        line.value = '18.002';
        line.dispatchEvent(new InputEvent('input', { bubbles: true, data: '18.002' }));
        line.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }));
      }
    });
    await page.getByText('Repeat ignored').waitFor();
    await expectSound(page, 'a repeat');
    await page.keyboard.press('Escape');

    await page.route('**/api/v1/readings', (route) => {
      const { entries } = route.request().postDataJSON() as { entries: { id: string }[] };
      const why = { state: 'refused', code: 'reading/no-such-piece', at: 'pieceId', says: 'No' };
      return route.fulfill({ json: { outcomes: entries.map(({ id }) => ({ id, ...why })) } });
    });
    await page.keyboard.type('18.003');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'See which' }).click();
    const tray = page.getByRole('dialog', { name: 'The notebook would not take these' });
    await tray.getByRole('button', { name: 'Send it once more' }).waitFor();
    await expectSound(page, 'the tray');
    await tray.getByLabel('Put it away, because').fill('measured again');
    await tray.getByRole('button', { name: 'Put it away' }).click();
    await tray.getByRole('button', { name: 'Send it after all' }).waitFor();
    await expectSound(page, 'what was put away');
    await tray.getByRole('button', { name: 'Close' }).click();

    await page.evaluate(() => {
      IDBObjectStore.prototype.put = function refuse(): never {
        throw new DOMException('full', 'QuotaExceededError');
      };
    });
    await page.keyboard.type('18.004');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Keep it again' }).waitFor();
    await expectSound(page, 'what could not be kept');
    await context.close();
  },
  120_000,
);

/** Nothing serious to axe in any light, and nothing that scrolls sideways. */
async function expectSound(page: Page, name: string): Promise<void> {
  for (const theme of ['light', 'dark', 'glare']) {
    await page.evaluate((t) => document.documentElement.setAttribute('data-theme', t), theme);
    expect(await serious(page), `${name} in ${theme}`).toEqual([]);
  }
  const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  expect(over, `${name} scrolls sideways`).toBeLessThanOrEqual(0);
}

async function serious(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() =>
    (globalThis as unknown as { axe: { run: () => Promise<AxeResults> } }).axe.run(),
  );
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`);
}
