import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import type { GaugeSends } from '@/lib/schema/gauge';
import { openBrowser, type OpenBrowser } from '../setup/open-browser';
import { startServer, type RunningServer } from '../setup/start-server.mjs';
import {
  booked,
  entry,
  gauge,
  head,
  loadExample,
  notice,
  openJob,
  post,
  pressNext,
  reading,
  startRings,
  type GaugeEnd,
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

let gauges = 0;

/** A job of rings with six places each, on the bench, with a gauge of its own that sends so. */
async function bench(
  taught: Partial<GaugeSends> = {},
): Promise<{ page: Page; rings: Rings; close: () => Promise<void> }> {
  const gaugeId = crypto.randomUUID();
  gauges += 1;
  const name = `Bore gauge no. ${gauges}`;
  const { status } = await post(server, 'gauges', { ...boreGauge, id: gaugeId, name, ...taught });
  expect(status).toBe(201);
  const rings = { ...(await startRings(server)), gaugeId };
  const opened = await openJob(server, chromium, rings);
  await opened.page
    .getByRole('list', { name: 'Gauges' })
    .getByRole('button', { name: new RegExp(`^${name} `) })
    .click();
  return { ...opened, rings };
}

const boreGauge = {
  kind: 'bore gauge',
  unit: 'mm',
  resolutionPm: 1_000_000,
  uncertaintyPm: 300_000,
  rangeLowPm: 10_000_000_000,
  rangeHighPm: 18_500_000_000,
  checkedOn: null,
  note: '',
};

type Lone = Exclude<GaugeEnd, 'CR LF'>;

/** What each kind of gauge was taught; the one that ends with Enter never was. */
const sends: Record<Lone, Partial<GaugeSends>> = {
  Enter: {},
  Tab: { sendsEnd: 'tab', sendsMark: '.', sendsUnit: 'mm', sendsPlaces: 3 },
  comma: { sendsEnd: 'comma', sendsMark: '.', sendsUnit: 'mm', sendsPlaces: 3 },
  space: { sendsEnd: 'space', sendsMark: '.', sendsUnit: 'button', sendsPlaces: 3 },
  nothing: { sendsEnd: 'nothing', sendsMark: '.', sendsUnit: 'mm', sendsPlaces: 3 },
};
const ends = Object.keys(sends) as Lone[];

it.each([5, 20, 100])(
  'takes every reading at %i ms a key, whatever ends it and wherever the focus is',
  async (delay) => {
    await Promise.all(ends.map((end) => wherever(delay, end)));
  },
);

async function wherever(delay: number, end: Lone): Promise<void> {
  const { page, rings, close } = await bench(sends[end]);
  await page.evaluate(() => (document.activeElement as HTMLElement).blur());
  await send(page, '18.003', delay, end);
  await page.getByRole('button', { name: 'Void this' }).focus();
  await send(page, '18.005', delay, end);
  await page.getByRole('button', { name: /Choose another piece/ }).click();
  await page.getByRole('dialog').waitFor();
  await send(page, '18.006', delay, end);
  await expect.poll(() => page.getByRole('dialog').count()).toBe(0);
  const others = anotherDevice(rings);
  await send(page, '18.004', delay, end);
  await send(page, '18.007', delay, end);
  await others;
  const placed = async () =>
    (await booked(server, rings)).map((one) => [end, one.text, one.station + one.direction]);
  await expect.poll(placed).toEqual([
    [end, '18.003', 'topA'],
    [end, '18.005', 'topB'],
    [end, '18.006', 'middleA'],
    [end, '18.004', 'middleB'],
    [end, '18.007', 'bottomA'],
  ]);
  await expect.poll(() => reading(page).textContent()).toBe('18.007');
  await expect.poll(() => entry(page).inputValue()).toBe('');
  await close();
}

it('shows a bounced repeat and keeps it only when told to, whatever ends it', async () => {
  const bounced = async (end: Lone) => {
    const { page, rings, close } = await bench(sends[end]);
    await gauge(page, '18.003', 5, end, Date.now(), { times: 2, atOnce: true });
    await expect.poll(() => said(page, end)).toContain('Repeat ignored');
    await expect.poll(() => texts(rings)).toHaveLength(1);
    await page.getByRole('button', { name: 'Keep it too' }).click();
    await expect.poll(() => texts(rings)).toEqual(['18.003', '18.003']);
    await close();
  };
  await Promise.all(ends.map(bounced));
});

it('takes keys that have no names, whatever ends it', async () => {
  const inserted = async (end: Lone) => {
    const { page, rings, close } = await bench(sends[end]);
    for (const text of ['18.003', '18.005']) {
      await nameless(page, text, end);
      await settled(page);
    }
    await expect.poll(() => texts(rings)).toEqual(['18.003', '18.005']);
    await close();
  };
  await Promise.all(ends.map(inserted));
});

/**
 * Types with keys that say only 229, as soft keyboards and some machines do: each character is put in by the
 * browser's own editing, which tells of it before and after. The keys say that 5 ms lie between them, however
 * long this machine takes over each: one holds the page up for longer than any gauge pauses.
 */
async function nameless(page: Page, text: string, end: Lone): Promise<void> {
  const typed = text + { Enter: '', Tab: '', comma: ',', space: ' ', nothing: '' }[end];
  await page.evaluate(
    ([characters, last]) => {
      let atMs = performance.now();
      const key = (init: KeyboardEventInit) => {
        const down = new KeyboardEvent('keydown', { ...init, bubbles: true, cancelable: true });
        Object.defineProperty(down, 'timeStamp', { value: atMs });
        document.activeElement!.dispatchEvent(down);
        atMs += 5;
      };
      for (const character of characters!) {
        key({ key: 'Unidentified', keyCode: 229 });
        const heldUntilMs = performance.now() + (character === '.' ? 300 : 0);
        while (performance.now() < heldUntilMs);
        document.execCommand('insertText', false, character);
      }
      if (last === 'Enter' || last === 'Tab') key({ key: last });
    },
    [typed, end],
  );
}

/** What the line says back, and which gauge it says it to. */
async function said(page: Page, end: Lone): Promise<string> {
  return [end, ...(await notice(page).allTextContents())].join(': ');
}

/** Types as a hand does: the keys say that 400 ms lie between them, and nobody waits for it. */
async function slowly(page: Page, text: string): Promise<void> {
  await gauge(page, text, 400, 'nothing', Date.now(), { waitMs: 0 });
}

/** Sends one reading and lets the gauge rest, as a hand that moves to the next place does. */
async function send(page: Page, text: string, delayMs: number, end: GaugeEnd): Promise<void> {
  await gauge(page, text, delayMs, end);
  if (end === 'nothing' || end === 'space') await settled(page);
}

/** The line is empty again: what was sent has been taken. */
async function settled(page: Page): Promise<void> {
  await expect.poll(() => entry(page).inputValue(), { interval: 20 }).toBe('');
}

it('takes two readings that come back to back', async () => {
  const { page, rings, close } = await bench();
  for (const text of ['18.003', '18.005', '18.004', '18.006']) await gauge(page, text, 0);
  await expect.poll(() => texts(rings)).toEqual(['18.003', '18.005', '18.004', '18.006']);
  await close();
});

it('takes the letters of a keyboard whose keys have no names for shortcuts', async () => {
  const { page, close } = await bench();
  for (const character of '18.003') await page.keyboard.insertText(character);
  await page.keyboard.press('Enter');
  await page.keyboard.insertText('v');
  await expect.poll(() => page.getByRole('button', { name: 'Put back' }).isVisible()).toBe(true);
  await close();
});

it('shows a bounced repeat and keeps it only when told to', async () => {
  const { page, rings, close } = await bench();
  const startMs = Date.now();
  await gauge(page, '18.003', 0, 'Enter', startMs);
  await gauge(page, '18.003', 0, 'Enter', startMs + 200);
  await expect.poll(() => notice(page).textContent()).toContain('Repeat ignored');
  await page.getByRole('button', { name: 'Keep it too' }).click();
  await expect.poll(() => texts(rings)).toEqual(['18.003', '18.003']);
  await page.waitForTimeout(450);
  await gauge(page, '18.003', 0);
  await expect.poll(() => texts(rings)).toHaveLength(3);
  await close();
});

it('takes the Ctrl+A some gauges send first for the line, wherever the focus is', async () => {
  const { page, rings, close } = await bench();
  await page.evaluate(() => (document.activeElement as HTMLElement).blur());
  await page.keyboard.press('Control+a');
  await expect.poll(() => page.evaluate(() => getSelection()!.toString())).toBe('');
  await gauge(page, '18.003', 5);
  await page.keyboard.type('17.9', { delay: 20 });
  await page.getByRole('button', { name: 'Void this' }).focus();
  await page.keyboard.press('Control+a');
  await gauge(page, '18.005', 5);
  await expect.poll(() => texts(rings)).toEqual(['18.003', '18.005']);
  await close();
});

it.each([5, 20, 100])('takes CR and LF, two Enters at %i ms, for one end', async (delay) => {
  const { page, rings, close } = await bench();
  const six = ['18.003', '18.005', '18.004', '18.006', '18.007', '18.002'];
  for (const text of six) await gauge(page, text, delay, 'CR LF');
  await expect.poll(() => texts(rings)).toEqual(six);
  // All are taken, and an Enter of a person, which is no bounce of the last, goes on to the next ring.
  await expect.poll(() => head(page).textContent()).toContain('R1');
  await pressNext(page);
  await expect.poll(() => head(page).textContent()).toContain('R2');
  await close();
});

it('reads signs, leading zeros and the half digit of inches, and no sign alone', async () => {
  const { page, rings, close } = await bench({
    sendsEnd: 'enter',
    sendsMark: '.',
    sendsUnit: 'button',
    sendsPlaces: 3,
    sendsPlus: true,
  });
  await gauge(page, '-', 5);
  await expect.poll(() => notice(page).textContent()).toContain('a sign alone');
  for (const text of ['+18.003', '0018.005', '0.70895']) await gauge(page, text, 5);
  await expect.poll(() => texts(rings)).toHaveLength(3);
  // 0.70895 in is 18.007 33 mm, by 1 in = 25.4 mm; the last figure is a step of its own.
  expect(
    (await booked(server, rings)).map(({ text, unit, valuePm, resolutionPm }) => [
      text,
      unit,
      valuePm,
      resolutionPm,
    ]),
  ).toEqual([
    ['+18.003', 'mm', 18_003_000_000, 1_000_000],
    ['0018.005', 'mm', 18_005_000_000, 1_000_000],
    ['0.70895', 'in', 18_007_330_000, 254_000],
  ]);
  await close();
});

it('never cuts off a person, whatever the gauge ends with', async () => {
  const { page, rings, close } = await bench(sends.nothing);
  // Each key 400 ms after the one before, as its own time says.
  await slowly(page, '18.003');
  await page.waitForTimeout(400);
  await expect.poll(() => entry(page).inputValue()).toBe('18.003');
  await page.keyboard.press('Enter');
  await expect.poll(() => texts(rings)).toEqual(['18.003']);
  await close();
});

it('leaves a comma and a space that a person types where they are', async () => {
  const comma = await bench(sends.comma);
  await slowly(comma.page, '18,0');
  await expect.poll(() => entry(comma.page).inputValue()).toBe('18,0');
  await comma.close();
  const space = await bench(sends.space);
  await slowly(space.page, '18.003 mm');
  await expect.poll(() => entry(space.page).inputValue()).toBe('18.003 mm');
  await space.page.keyboard.press('Enter');
  await expect.poll(() => texts(space.rings)).toEqual(['18.003 mm']);
  await space.close();
});

it('says that two readings of a gauge without an end came as one, and keeps neither', async () => {
  const { page, rings, close } = await bench(sends.nothing);
  await gauge(page, '18.00318.005', 5, 'nothing', Date.now(), { atOnce: true });
  await expect.poll(() => notice(page).textContent()).toContain('"18.00318.005" is not a size');
  await expect.poll(() => texts(rings)).toEqual([]);
  await close();
});

it('lets a reading replace a text that was refused', async () => {
  const { page, rings, close } = await bench();
  await gauge(page, '18..2', 5);
  await expect.poll(() => entry(page).inputValue()).toBe('18..2');
  await gauge(page, '18.004', 5);
  await expect.poll(() => texts(rings)).toEqual(['18.004']);
  await close();
});

it('says that a question was not answered when a gauge types over it', async () => {
  const { page, rings, close } = await bench();
  await gauge(page, '18,004', 20);
  await expect.poll(() => notice(page).textContent()).toContain('is that mark for decimals');
  await page.keyboard.type('18.005');
  await expect
    .poll(() => notice(page).textContent())
    .toBe('18,004 was not answered, and waits to be placed.');
  await page.keyboard.press('Enter');
  await expect.poll(() => texts(rings)).toEqual(['18.005']);
  await close();
});

it('tells a figure that answers a question from a gauge that types over it, however fast', async () => {
  for (const delayMs of [5, 20, 100]) {
    const { page, rings, close } = await bench();
    const waiting = page.getByRole('group', { name: 'Not placed yet' });
    await gauge(page, '18,004', 20);
    await expect.poll(() => notice(page).textContent()).toContain('18.004 mm');
    await typedByItself(page, '18.005', delayMs);
    await expect.poll(() => texts(rings)).toEqual(['18.005']);
    await waiting.getByRole('button', { name: '18,004' }).click();
    await expect.poll(() => notice(page).textContent()).toContain('18.004 mm');
    await page.keyboard.press('1');
    await expect.poll(() => texts(rings)).toEqual(['18.005', '18,004']);
    expect(await waiting.count()).toBe(0);
    await close();
  }
});

it('lets a person leave the line with Tab', async () => {
  const { page, rings, close } = await bench();
  await page.keyboard.type('18.0', { delay: 200 });
  await page.keyboard.press('Tab');
  await expect.poll(() => entry(page).inputValue()).toBe('18.0');
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.getAttribute('name')))
    .not.toBe('reading');
  await expect.poll(() => texts(rings)).toEqual([]);
  await close();
});

/** A text and Enter, each key at its time by the clock of the page itself: no other machine can be late with one. */
async function typedByItself(page: Page, text: string, delayMs: number): Promise<void> {
  await page.evaluate(
    async ({ keys, everyMs }) => {
      const press = (key: string) =>
        (document.activeElement ?? document.body).dispatchEvent(
          new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }),
        );
      await Promise.all(
        keys.map(
          (key, n) =>
            new Promise<void>((done) => {
              setTimeout(() => {
                press(key);
                done();
              }, n * everyMs);
            }),
        ),
      );
    },
    { keys: [...text, 'Enter'], everyMs: delayMs },
  );
}

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
