import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, type OpenBrowser } from '../setup/open-browser';
import { startServer, type RunningServer } from '../setup/start-server.mjs';
import {
  desk,
  entry,
  gauge,
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
  sheetOf,
  verdict,
} from './bench-story';

// Readings go in by thumb, by keyboard and by gauge; nothing is guessed, nothing is lost.

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

/** Looks again until the server has what is awaited. */
const eventually = (look: () => Promise<unknown>) => expect.poll(look, { timeout: 10_000 });

describe('with a thumb on a phone', () => {
  it('logs by the keypad, shows the reading, moves on, and takes it back', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'W12', balloon: '9' }, phone);
    expect(await place(page, 0, 0).getAttribute('data-next')).toBe('true');
    for (const key of ['1', '1', 'point', '9', '9', '1']) {
      await page.getByRole('button', { name: key, exact: true }).tap();
    }
    await page.getByRole('button', { name: 'Log', exact: true }).tap();
    expect(await reading(page).textContent()).toBe('11.991');
    expect(await entry(page).inputValue()).toBe('');
    expect(await place(page, 0, 1).getAttribute('data-next')).toBe('true');
    expect(await head(page).textContent()).toContain('1 of 2 taken');
    await eventually(() => inBook(server, 'W12', '9')).toMatchObject([
      { text: '11.991', unit: 'mm', valuePm: 11_991_000_000, direction: 'A', said: [] },
    ]);

    await page.getByRole('button', { name: 'Void this' }).tap();
    expect(await verdict(page).textContent()).toContain('Struck out');
    expect(await place(page, 0, 0).getAttribute('data-next')).toBe('true');
    await page.getByRole('button', { name: 'Put back' }).tap();
    expect(await head(page).textContent()).toContain('1 of 2 taken');
    await eventually(() => inBook(server, 'W12', '9')).toMatchObject([
      { text: '11.991', said: ['void', 'restore'] },
    ]);
    await close();
  });

  it('asks which gauge before the first reading of a feature nobody has read', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'P7', balloon: '6' }, phone);
    // The small-hole gauge read this feature on other pieces: it is taken up again.
    expect(await page.getByRole('button', { name: /Gauge and unit/ }).textContent()).toContain(
      'Small-hole gauge',
    );
    await close();

    const job = await startTwoParts(server);
    const context = await chromium.newContext(phone);
    const other = await context.newPage();
    await other.goto(`${server.url}/jobs/${job}/bench`);
    await ready(other);
    expect(await entry(other).getAttribute('placeholder')).toBe('Which gauge?');
    const offers = other.getByRole('list', { name: 'Gauges' }).getByRole('button');
    expect(await offers.first().textContent()).toContain('Bore gauge 1');
    await other.keyboard.type('18.004');
    await other.keyboard.press('Enter');
    expect(await notice(other).textContent()).toContain('Which gauge');
    expect(await entry(other).inputValue()).toBe('18.004');
    await offers.first().tap();
    await other.keyboard.press('Enter');
    expect(await reading(other).textContent()).toBe('18.004');
    await context.close();
  });
});

describe('with the keyboard alone', () => {
  it('logs, voids, puts back, and walks over stations, pieces and features', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'W13', balloon: '9' });
    await page.keyboard.type('11.990');
    expect(await page.locator('form output').textContent()).toBe('mm, 0.47205 in');
    await page.keyboard.press('Enter');
    expect(await reading(page).textContent()).toBe('11.990');
    await page.keyboard.press('v');
    expect(await verdict(page).textContent()).toContain('Struck out');
    await page.keyboard.press('v');
    expect(await verdict(page).textContent()).not.toContain('Struck out');
    await page.keyboard.type('11.991');
    await page.keyboard.press('Enter');
    expect(await head(page).textContent()).toContain('2 of 2 taken');

    await page.keyboard.press('ArrowUp');
    expect(await place(page, 0, 0).getAttribute('data-next')).toBe('true');
    await page.keyboard.press('n');
    expect(await place(page, 0, 1).getAttribute('data-next')).toBe('true');
    await page.keyboard.press('n');
    expect(await head(page).textContent()).toContain('W14');
    await page.keyboard.press('Shift+P');
    expect(await head(page).textContent()).toContain('W13');
    await page.keyboard.press('PageDown');
    expect(await head(page).textContent()).toContain('W14');
    expect(new URL(page.url()).searchParams.get('piece')).toBe(
      (await sheetOf(server)).pieces.find(({ mark }) => mark === 'W14')!.id,
    );
    await close();
  });

  it('goes on with Enter when all are taken', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'B1', balloon: '8' });
    await page.keyboard.press('Enter');
    expect(await head(page).textContent()).toContain('B3');
    await close();
  });

  it('lists the keys, and leaves letters alone where they are switched off', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'L1', balloon: '1' });
    await page.keyboard.press('?');
    expect(await page.getByRole('dialog', { name: 'Keys' }).isVisible()).toBe(true);
    await page.keyboard.press('Escape');
    await ready(page);
    await page.evaluate(() => localStorage.setItem('fw-bench-keys', 'off'));
    await page.reload();
    await ready(page);
    await page.keyboard.press('v');
    expect(await verdict(page).textContent()).not.toContain('Struck out');
    expect(await entry(page).inputValue()).toBe('v');
    await close();
  });

  it('shows how a departure will be read, and takes two units and two gauges', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'L2', balloon: '3' });
    await page.keyboard.type('-.031');
    expect(await page.locator('form output').textContent()).toBe('is 23.969 mm, 0.94366 in');
    await page.keyboard.press('Escape');
    for (let n = 0; n < 5; n += 1) await page.keyboard.press('Backspace');
    await goToBench(server, page, { mark: 'B3', balloon: '8' });
    await page.keyboard.type('.7047in');
    await page.keyboard.press('Enter');
    await eventually(() => inBook(server, 'B3', '8')).toMatchObject([
      { text: '.7047in', unit: 'in', valuePm: 17_899_380_000, resolutionPm: 2_540_000 },
    ]);
    expect(await verdict(page).textContent()).toContain('typed .7047in');
    await close();
  });

  it('comes back to where it stopped', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'W3', balloon: '9' });
    await goToBench(server, page, null);
    expect(await head(page).textContent()).toContain('W3');
    expect(await page.title()).toContain('W3 boss outside');
    await close();
  });
});

describe('with a gauge that types', () => {
  it.each([
    [5, 'Enter'],
    [20, 'Enter'],
    [100, 'Enter'],
    [5, 'Tab'],
    [20, 'Tab'],
    [100, 'Tab'],
  ] as const)('takes it at %i ms a key, ended by %s, wherever the focus is', async (delay, end) => {
    const { page, close } = await openBench(server, chromium, { mark: 'L3', balloon: '1' });
    const start = (await inBook(server, 'L3', '1')).length;
    await page.evaluate(() => (document.activeElement as HTMLElement).blur());
    await gauge(page, '18.004', delay, end);
    await page.keyboard.press('2');
    expect(await notice(page).count()).toBe(0);
    await close();
    void start;
  });
});

/** A job of two parts whose features nobody has read. */
async function startTwoParts(at: RunningServer): Promise<string> {
  const id = () => crypto.randomUUID();
  const jobId = id();
  const partId = id();
  const answer = await fetch(`${at.url}/api/v1/jobs/start`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', 'fitwright-device': id() },
    body: JSON.stringify({
      job: {
        id: jobId,
        name: 'Two parts',
        note: '',
        drawing: '',
        revision: '',
        unit: 'mm',
        finishedAt: null,
      },
      parts: [{ id: partId, position: 1, name: 'Ring', material: '', prefix: 'R', quantity: 4 }],
      features: [
        {
          id: id(),
          partId,
          position: 1,
          balloon: '1',
          name: 'Bore',
          kind: 'bore',
          asDrawn: '18 H7',
          unit: 'mm',
          nominalPm: 18_000_000_000,
          upperPm: 18_000_000,
          lowerPm: 0,
          isoClass: 'H7',
          stations: ['middle'],
          directions: ['A'],
          pictureId: null,
          pictureX: null,
          pictureY: null,
        },
      ],
      fits: [],
      runs: [],
    }),
  });
  expect(answer.status).toBe(201);
  return jobId;
}

void desk;
