import axe, { type AxeResults } from 'axe-core';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { JobSheet } from '@/lib/schema/sheet';
import { openBrowser, type OpenBrowser } from '../setup/open-browser';
import { startServer, type RunningServer } from '../setup/start-server.mjs';
import {
  booked,
  desk,
  entry,
  head,
  inBook,
  loadExample,
  noBounce,
  notice,
  openBench,
  place,
  post,
  pressBounced,
  pressFor,
  pressNext,
  reading,
  ready,
  startRings,
  verdict,
  type Rings,
} from './bench-story';

// One thumb, a keyboard alone, a foot: what each can do, and what a person chooses on this device.

const small: BrowserContextOptions = {
  viewport: { width: 360, height: 740 },
  hasTouch: true,
  isMobile: true,
};

const lowAndTall = [
  { width: 360, height: 640 },
  { width: 390, height: 844 },
];

let server: RunningServer;
let chromium: OpenBrowser;

beforeAll(async () => {
  server = await startServer();
  chromium = await openBrowser();
  await loadExample(server);
});

afterAll(async () => {
  // The browser asks for it by itself where a page is left before its head is read.
  expect(chromium.faults.filter((fault) => !fault.includes('/favicon.ico'))).toEqual([]);
  await chromium.close();
  await server.remove();
});

const eventually = (look: () => Promise<unknown>) => expect.poll(look);

/** A job of rings of its own, the gauge in the hand, and what this device has chosen already. */
async function rings(
  options: BrowserContextOptions,
  chosen: Record<string, string> = {},
  before?: () => void,
  like: { directions?: string[]; prefix?: string } = {},
): Promise<{ page: Page; job: Rings; close: () => Promise<void> }> {
  const job = await startRings(server, like);
  const context = await chromium.newContext(options);
  if (before !== undefined) await context.addInitScript(before);
  const words = { [`gauge:${job.jobId}`]: JSON.stringify({ [job.featureId]: job.gaugeId }) };
  await context.addInitScript(
    (all) => {
      if (location.protocol === 'about:' || sessionStorage.getItem('begun') !== null) return;
      sessionStorage.setItem('begun', 'yes');
      for (const [name, word] of Object.entries(all))
        localStorage.setItem(`fw-bench-${name}`, word);
    },
    { ...words, ...chosen },
  );
  const page = await context.newPage();
  await page.goto(`${server.url}/jobs/${job.jobId}/bench`);
  await ready(page);
  return { page, job, close: () => context.close() };
}

async function log(page: Page, ...texts: string[]): Promise<void> {
  for (const text of texts) {
    await page.keyboard.type(text);
    await page.keyboard.press('Enter');
  }
}
const key = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const list = (page: Page) => page.getByRole('dialog', { name: 'This device' });
const echo = (page: Page) => page.locator('form output');
const question = (page: Page) => page.getByRole('alertdialog');

/** How much of each, from top to foot through its middle, a finger would reach. Runs in the page. */
function highToFingers(all: Element[]): number[] {
  return all.map((one) => {
    const { left, width, top, height } = one.getBoundingClientRect();
    const isThere = (y: number) => {
      const hit = document.elementFromPoint(left + width / 2, y);
      return hit !== null && one.contains(hit);
    };
    let from = top + height / 2;
    let to = from;
    while (isThere(from - 1)) from -= 1;
    while (isThere(to + 1)) to += 1;
    return to - from + 1;
  });
}

describe('the keys under a thumb', () => {
  it('are 64 each way and all on the screen from 360 by 640 on, while measuring and while cutting', async () => {
    for (const [width, height] of [
      [360, 640],
      [360, 740],
      [375, 667],
      [390, 844],
    ] as const) {
      for (const [mark, blind] of [
        ['P6', 'off'],
        ['P7', 'off'],
        ['P7', 'plan'],
      ] as const) {
        const options = { ...small, viewport: { width, height } };
        const { page, close } = await openBench(server, chromium, { mark, balloon: '4' }, options);
        await page.evaluate((word) => {
          localStorage.setItem('fw-bench-blind', word);
          window.dispatchEvent(new Event('storage'));
        }, blind);
        if (blind === 'plan')
          await eventually(() => reading(page).textContent()).toContain(' of 6');
        const keys = page.getByRole('group', { name: 'Keys' }).getByRole('button');
        await eventually(() => keys.count()).toBe(19);
        for (const box of await keys.evaluateAll((all) =>
          all.map((one) => one.getBoundingClientRect().toJSON() as DOMRect),
        )) {
          const where = `${mark}, unseen ${blind}, at ${width} by ${height}`;
          expect(box.width, where).toBeGreaterThanOrEqual(64);
          expect(box.height, where).toBeGreaterThanOrEqual(64);
          expect(box.bottom, where).toBeLessThanOrEqual(height);
          expect(box.left, where).toBeGreaterThanOrEqual(0);
          expect(box.right, where).toBeLessThanOrEqual(width);
        }
        await close();
      }
    }
  }, 120_000);

  it('leave each place of the map, and the way to see an unseen set, 56 to press', async () => {
    for (const viewport of [
      { width: 360, height: 640 },
      { width: 360, height: 740 },
      { width: 375, height: 667 },
      { width: 390, height: 844 },
    ]) {
      for (const [mark, blind] of [
        ['P5', 'off'],
        ['P6', 'off'],
        ['P7', 'off'],
        ['P7', 'plan'],
      ] as const) {
        const options = { ...small, viewport };
        const { page, close } = await openBench(server, chromium, { mark, balloon: '4' }, options);
        await page.evaluate((word) => {
          localStorage.setItem('fw-bench-blind', word);
          window.dispatchEvent(new Event('storage'));
        }, blind);
        const show = key(page, 'Show them now');
        await eventually(() => show.count()).toBe(blind === 'plan' ? 1 : 0);
        await eventually(() => question(page).count()).toBe(mark === 'P5' ? 1 : 0);
        const where = `${mark}, unseen ${blind}, at ${viewport.width} by ${viewport.height}`;
        const high = await page.locator('[data-place]').evaluateAll(highToFingers);
        expect(high, where).toHaveLength(6);
        expect(Math.min(...high), where).toBeGreaterThanOrEqual(56);
        if (blind === 'plan') {
          expect((await show.evaluateAll(highToFingers))[0], where).toBeGreaterThanOrEqual(56);
        }
        await close();
      }
    }
  }, 120_000);

  it('stay on the screen with the entry line under a map of many places, which stands below them', async () => {
    for (const viewport of lowAndTall) {
      const directions = ['A', 'B', 'C'];
      const { page, close } = await rings({ ...small, viewport }, {}, undefined, { directions });
      await log(page, '18.004');
      await eventually(() => reading(page).textContent()).toBe('18.004');
      await page.reload();
      await ready(page);
      const back = page.getByText(/^You were here/);
      for (const one of [reading(page), entry(page), key(page, 'Log'), key(page, '0'), back]) {
        const box = (await one.boundingBox())!;
        expect(box.y).toBeGreaterThanOrEqual(0);
        expect(box.y + box.height).toBeLessThanOrEqual(viewport.height);
      }
      const high = await page
        .locator('[data-place]')
        .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height));
      expect(Math.min(...high)).toBeGreaterThanOrEqual(56);

      await place(page, 2, 2).tap();
      await eventually(() => page.evaluate(() => window.scrollY)).toBe(0);
      await log(page, '18.005');
      await eventually(() => place(page, 2, 2).textContent()).toContain('18.005');
      await close();
    }
  });

  it('leave a long name the lines it needs, and a long mark the width', async () => {
    const prefix = 'Manhm';
    const { page, job, close } = await rings(small, {}, undefined, { prefix });
    await page.setViewportSize({ width: 360, height: 640 });
    await fetch(`${server.url}/api/v1/features/${job.featureId}`, {
      method: 'PATCH',
      headers: { 'content-type': 'application/json', origin: server.url },
      body: JSON.stringify({ version: 1, name: 'Bore between the shoulders of the outer flange' }),
    });
    await page.reload();
    await ready(page);
    const says = (await page.getByText(/^Nothing read of Manhm1/).boundingBox())!;
    const over = (await verdict(page).boundingBox())!;
    expect(says.y).toBeGreaterThanOrEqual(over.y + over.height);

    await page.locator('header button').first().tap();
    const marks = page.getByRole('list', { name: 'Pieces' }).getByRole('button');
    await eventually(() => marks.count()).toBe(4);
    const isWhole = await marks.evaluateAll((all) =>
      all.map((one) => one.scrollWidth <= one.clientWidth),
    );
    expect(isWhole).toEqual([true, true, true, true]);
    await close();
  });

  it('answer no question that has come under the finger by the time it is taken off', async () => {
    for (const viewport of lowAndTall) {
      const { page, close } = await rings({ ...small, viewport });
      await log(page, '18.004', '18.005', '18.004');
      for (const down of [0.1, 0.3, 0.5, 0.7, 0.9]) {
        await page.keyboard.type('81.004');
        await pressFor(page, key(page, 'Log'), 120, down);
        await question(page).waitFor();
        await page.waitForTimeout(500);
        expect(await verdict(page).textContent()).toContain('Held');
        await pressFor(page, key(page, 'It was a slip, strike it out'), 120);
        await eventually(() => verdict(page).textContent()).toContain('Struck out');
      }
      await close();
    }
  });

  it('switch nothing that has come under the finger by the time it is taken off', async () => {
    for (const viewport of lowAndTall) {
      const { page, close } = await rings({ ...small, viewport });
      const chosen = () =>
        page.evaluate(() =>
          ['keys', 'soft-keyboard', 'sound', 'blind'].map((name) =>
            localStorage.getItem(`fw-bench-${name}`),
          ),
        );
      const before = await chosen();
      await pressFor(page, key(page, 'more of this device'), 120);
      await list(page).waitFor();
      await page.waitForTimeout(500);
      expect(await chosen()).toEqual(before);
      await close();
    }
  });

  it('take the last digits, show the whole size before it is logged, and keep what was typed', async () => {
    const { page, job, close } = await rings(small);
    await log(page, '18.011', '18.013');
    await key(page, 'last digits only').tap();
    await eventually(() => key(page, 'last digits only').getAttribute('aria-pressed')).toBe('true');
    await key(page, '1').tap();
    await key(page, '4').tap();
    await eventually(() => echo(page).textContent()).toContain('is 18.014 mm');
    await key(page, 'Log').tap();
    await eventually(() => reading(page).textContent()).toBe('18.014');
    await eventually(() => verdict(page).textContent()).toContain('typed 14');
    await eventually(async () => (await booked(server, job)).at(-1)).toMatchObject({
      text: '14',
      unit: 'mm',
      valuePm: 18_014_000_000,
      resolutionPm: 1_000_000,
      heldAs: null,
    });
    await page.reload();
    await ready(page);
    await key(page, '1').tap();
    await eventually(() => echo(page).textContent()).toContain('is 18.011'); // the device remembers
    await close();
  });

  it('take a size in the other unit, and show that it is not the unit of the gauge', async () => {
    const { page, job, close } = await rings(small);
    const unit = page.getByRole('button', { name: /change to (?:inches|millimetres)/ });
    await unit.tap();
    await eventually(() => unit.textContent()).toBe('in');
    await eventually(() => unit.getAttribute('aria-pressed')).toBe('true');
    for (const name of ['point', '7', '0', '9', '1']) await key(page, name).tap();
    await eventually(() => echo(page).textContent()).toContain('is 18.011');
    await key(page, 'Log').tap();
    await eventually(() => booked(server, job)).toMatchObject([
      { text: '.7091', unit: 'in', valuePm: 18_011_140_000 },
    ]);
    await close();
  });

  it('go on to the next piece with one tap, and say so at the end of the job', async () => {
    const { page, close } = await rings(small);
    await key(page, 'next piece').tap();
    await eventually(() => head(page).textContent()).toContain('R2');
    await key(page, 'next piece').tap();
    await key(page, 'next piece').tap();
    await eventually(() => head(page).textContent()).toContain('R4');
    await eventually(() => key(page, 'no next').getAttribute('aria-disabled')).toBe('true');
    await close();
  });

  it('make room for the keyboard of the phone only when it is asked for', async () => {
    const { page, close } = await rings(small);
    await eventually(() => entry(page).getAttribute('inputmode')).toBe('none');
    await key(page, 'more of this device').tap();
    await list(page)
      .getByRole('button', { name: /Phone keyboard/ })
      .tap();
    await eventually(() => entry(page).getAttribute('inputmode')).toBe('text');
    await eventually(() =>
      page.getByRole('group', { name: 'Keys' }).getByRole('button').count(),
    ).toBe(4);
    await expect
      .poll(() => entry(page).evaluate((line) => line === document.activeElement))
      .toBe(true);
    await key(page, 'more of this device').tap();
    await list(page)
      .getByRole('button', { name: /Keys on the screen/ })
      .tap();
    await eventually(() => entry(page).getAttribute('inputmode')).toBe('none');
    await eventually(() =>
      page.getByRole('group', { name: 'Keys' }).getByRole('button').count(),
    ).toBe(19);
    await close();
  });

  it('skip a place and come back for it, by a tap on the map', async () => {
    const { page, job, close } = await rings(small);
    await place(page, 1, 0).tap();
    await log(page, '18.010');
    await eventually(() => place(page, 1, 1).getAttribute('data-next')).toBe('true');
    await place(page, 1, 0).tap();
    await page.getByRole('button', { name: 'Measure here again' }).tap();
    await log(page, '18.011', '18.012', '18.013', '18.012');
    await eventually(() => place(page, 0, 0).getAttribute('data-next')).toBe('true');
    await eventually(async () =>
      (await booked(server, job)).map(({ station, direction }) => `${station} ${direction}`),
    ).toEqual(['middle A', 'middle A', 'middle B', 'bottom A', 'bottom B']);
    await close();
  });
});

it('shows the last reading of a piece though the key that logs it bounces, and goes on at the next press', async () => {
  const { page, close } = await rings(desk);
  await log(page, '18.004', '18.005', '18.006', '18.005', '18.004');
  await page.keyboard.type('18.003', { delay: 220 });
  await pressBounced(page, 'Enter');
  await eventually(() => reading(page).textContent()).toBe('18.003');
  await page.waitForTimeout(300);
  expect(await reading(page).textContent()).toBe('18.003');
  await pressNext(page);
  await eventually(() => head(page).textContent()).toContain('R2');
  await close();
});

it('loses nothing that is typed after a list was closed by the keyboard with the caret left in it', async () => {
  const { page, job, close } = await rings(desk);
  await page.keyboard.press('d');
  await list(page).getByText('Vibration').click();
  await page.keyboard.press('Escape');
  await ready(page);
  await log(page, '18.004');
  await eventually(() => reading(page).textContent()).toBe('18.004');
  await page.keyboard.press('d');
  await list(page).getByRole('button', { name: 'Close' }).click();
  await ready(page); // the entry has the focus again
  await log(page, '18.005');
  await eventually(async () => (await booked(server, job)).map(({ text }) => text)).toEqual([
    '18.004',
    '18.005',
  ]);
  await close();
});

describe('last digits from a keyboard', () => {
  it('are switched by L or the star, which works in the middle of a figure', async () => {
    const { page, close } = await rings(desk);
    await log(page, '18.011');
    await page.keyboard.press('l');
    await page.keyboard.type('14');
    await eventually(() => echo(page).textContent()).toContain('is 18.014');
    await page.keyboard.press('*');
    await eventually(() => echo(page).textContent()).toContain('mm, 0.55 in');
    await page.keyboard.press('*');
    await eventually(() => echo(page).textContent()).toContain('is 18.014');
    await page.keyboard.press('Enter');
    await eventually(() => reading(page).textContent()).toBe('18.014');
    await close();
  });

  it('are asked about where they could be of two sizes, with one key each', async () => {
    const { page, job, close } = await rings(desk, { 'last-digits': 'on' });
    await log(page, '17.998', '17.999');
    await page.keyboard.type('01');
    await eventually(() => echo(page).textContent()).toBe('18.001 or 17.901?');
    await page.keyboard.press('Enter');
    await eventually(() => notice(page).textContent()).toContain(
      '01: the last figures of which size?',
    );
    await page.keyboard.press('1');
    await eventually(async () => (await booked(server, job)).at(-1)).toMatchObject({
      text: '01',
      valuePm: 18_001_000_000,
    });
    await close();
  });

  it('are offered, and never taken unasked, while whole sizes are typed', async () => {
    const { page, job, close } = await rings(desk);
    await log(page, '18.011', '18.013', '14');
    const asked = notice(page);
    await eventually(() => asked.textContent()).toContain('18.014 mm');
    await eventually(() => asked.textContent()).toContain('14 mm');
    await eventually(() => booked(server, job)).toHaveLength(2);
    await page.keyboard.press('1');
    await eventually(async () => (await booked(server, job)).at(-1)).toMatchObject({
      text: '14',
      valuePm: 18_014_000_000,
    });
    await close();
  });
});

describe('measured unseen', () => {
  const values = ['18.004', '18.006', '18.005', '18.007', '18.005', '18.006'];

  /** Everything on the page that a person, a screen reader or a search could find a figure in. */
  const everything = (page: Page) =>
    page.evaluate(() =>
      `${document.body.outerHTML} ${document.title}`.replace(/<script.*?<\/script>/gs, ''),
    );

  it('hides readings, size, verdict, limits and strip until every place is taken, then shows all', async () => {
    const { page, close } = await rings(small);
    await key(page, 'more of this device').tap();
    await list(page).getByText('every place of a feature').tap();
    await list(page).getByRole('button', { name: 'Close' }).tap();
    await eventually(() => reading(page).textContent()).toBe('0 of 6');
    for (const [n, value] of values.slice(0, 5).entries()) {
      await log(page, value);
      await eventually(() => reading(page).textContent()).toBe(`${n + 1} of 6`);
      for (const told of [/18[.,]0/, /So far/i, /Inside|Near|Unsure|\bOut\b/, /Limits/]) {
        await eventually(() => everything(page)).not.toMatch(told);
      }
    }
    await eventually(() => page.locator('svg[role=img]').count()).toBe(0);
    await eventually(() => place(page, 0, 0).getAttribute('aria-label')).toBe(
      'top, across A: taken',
    );
    await log(page, values[5]!);
    await eventually(() => reading(page).textContent()).toBe('18.006');
    for (const value of values) await eventually(() => everything(page)).toContain(value);
    await eventually(() => page.locator('main').textContent()).toContain('So far');
    await close();
  });

  it('is not seen in the page as the server sends it either', async () => {
    const { page, job, close } = await rings(desk);
    await log(page, '18.004', '18.006');
    await eventually(() => booked(server, job)).toHaveLength(2);
    const address = `${server.url}/jobs/${job.jobId}/bench?piece=${job.pieceIds[0]}&feature=${job.featureId}`;
    const drawn = async (cookie: string) => {
      const answer = await fetch(address, { headers: { cookie } });
      return (await answer.text()).replace(/<script.*?<\/script>/gs, '');
    };
    expect(await drawn('fw-blind=off')).toContain('18.006');
    const unseen = await drawn('fw-blind=plan');
    expect(unseen).not.toMatch(/18\.00[46]/);
    expect(unseen).toContain('2 of 6');
    await close();
  });

  it('asks about a slip without a word of the others, and tells it apart by no sound before', async () => {
    const { page, job, close } = await rings(small, { blind: 'plan', sound: 'on' }, hearTones);
    await log(page, '18.004', '18.009', '18.504');
    await eventually(() => question(page).textContent()).toContain('Is this what the gauge said?');
    await eventually(() => everything(page)).not.toMatch(/18[.,]0|thimble|turn/i);
    await eventually(() => question(page).textContent()).toContain('18.504');
    await question(page).getByRole('button', { name: 'Measure it again' }).tap();
    await log(page, '18.005');
    await eventually(() => page.evaluate(() => tones())).toEqual(['660', '660', '660 440', '660']);
    await eventually(() => booked(server, job)).toMatchObject([
      { text: '18.004' },
      { text: '18.009' },
      { text: '18.504', heldAs: 'thimble turn', station: 'middle', direction: 'A' },
      { text: '18.005', station: 'middle', direction: 'A' },
    ]);
    await close();
  });

  it('takes the last back unseen, shows a set before it is done when asked, and hides the next', async () => {
    const { page, close } = await rings(small, { blind: '3' });
    await log(page, '18.004', '18.006');
    await page.getByRole('button', { name: 'Void this' }).tap();
    await eventually(() => reading(page).textContent()).toBe('1 of 3');
    await eventually(() => everything(page)).not.toMatch(/18\.00[46]/);
    await noBounce(page);
    await page.getByRole('button', { name: 'Put back' }).tap();
    await eventually(() => reading(page).textContent()).toBe('2 of 3');
    await page.getByRole('button', { name: 'Show them now' }).tap();
    await eventually(() => reading(page).textContent()).toBe('18.006');
    await log(page, '18.005');
    await eventually(() => reading(page).textContent()).toBe('18.005');
    await log(page, '18.007');
    await eventually(() => reading(page).textContent()).toBe('1 of 3');
    await close();
  });

  it('goes on at the same place when every place is taken and the set is not done', async () => {
    const { page, job, close } = await rings(small, { blind: '10' });
    for (const n of [1, 2, 3, 4, 5, 6, 7, 8, 9]) await log(page, `18.00${n}`);
    await eventually(() => reading(page).textContent()).toBe('9 of 10');
    await log(page, '18.003');
    await eventually(() => reading(page).textContent()).toBe('18.003');
    await eventually(async () =>
      (await booked(server, job)).slice(5).map((one) => `${one.station} ${one.direction}`),
    ).toEqual(Array.from({ length: 5 }, () => 'bottom B'));
    await close();
  });

  it('offers no last digits, whose leading figures would be those of the others', async () => {
    const { page, close } = await rings(small, { blind: 'plan', 'last-digits': 'on' });
    await log(page, '18.004');
    await eventually(() => key(page, 'last digits only').getAttribute('aria-disabled')).toBe(
      'true',
    );
    await page.keyboard.type('05');
    await eventually(() => echo(page).textContent()).not.toContain('18.0');
    await close();
  });
});

describe('a foot switch', () => {
  const teach = async (page: Page, name: string, pressed: string) => {
    await list(page)
      .getByRole('button', { name: `Teach: ${name}` })
      .click();
    await eventually(() => list(page).getByRole('status').textContent()).toContain(
      'Press the pedal now.',
    );
    await page.keyboard.press(pressed);
  };

  it('is taught by pressing it, does its three acts wherever the focus is, and is forgotten in one tap', async () => {
    const { page, job, close } = await rings(desk);
    await page.keyboard.press('d');
    await teach(page, 'Log, or measure again', '4');
    await eventually(() => list(page).getByRole('status').textContent()).toContain(
      '"4" belongs to a length',
    );
    await page.keyboard.press('F6');
    await teach(page, 'Next', 'F6');
    await eventually(() => list(page).getByRole('status').textContent()).toContain(
      'F6 is taught for another',
    );
    await page.keyboard.press('PageUp');
    await teach(page, 'Take back', 'b');
    await eventually(() => list(page).getByRole('list', { name: 'Pedals' }).textContent()).toMatch(
      /F6.*Page Up.*B/s,
    );
    await page.keyboard.press('Escape');
    await ready(page);

    await page.keyboard.type('18.004');
    await page.getByRole('button', { name: /Choose another piece/ }).focus();
    await pressBounced(page, 'F6'); // the place is not taken up again
    await eventually(() => reading(page).textContent()).toBe('18.004');
    await eventually(() => place(page, 0, 1).getAttribute('data-next')).toBe('true');
    await page.keyboard.press('PageUp');
    await eventually(() => place(page, 1, 0).getAttribute('data-next')).toBe('true');
    await page.evaluate(() => (document.activeElement as HTMLElement).blur());
    await pressBounced(page, 'b');
    await noBounce(page);
    await eventually(() => verdict(page).textContent()).toContain('Struck out');
    await page.keyboard.press('b');
    await eventually(() => verdict(page).textContent()).not.toContain('Struck out');
    await page.keyboard.press('F6');
    await eventually(() => place(page, 0, 0).getAttribute('data-next')).toBe('true'); // again, where it was
    await page.keyboard.type('18.1');
    await page.keyboard.press('b');
    await eventually(() => entry(page).inputValue()).toBe('');
    await eventually(() => verdict(page).textContent()).not.toContain('Struck out');
    await eventually(async () => (await booked(server, job)).map(({ text }) => text)).toEqual([
      '18.004',
    ]);

    await page.keyboard.press('?');
    await page.keyboard.press('PageUp'); // over a list
    await eventually(() => page.getByRole('dialog').count()).toBe(0);
    await page.reload();
    await ready(page);
    await page.keyboard.press('b');
    await eventually(() => verdict(page).textContent()).toContain('Struck out');
    await page.keyboard.press('d');
    await list(page).getByRole('button', { name: 'Forget the pedals' }).click();
    await page.keyboard.press('Escape');
    await ready(page);
    await page.keyboard.press('b');
    await eventually(() => verdict(page).textContent()).toContain('Struck out');
    await close();
  });

  it('acts once however long it is held, also from a keyboard that does not name its places', async () => {
    const pedals = {
      commit: { code: '', key: 'F14', ctrl: false, alt: false, shift: false, meta: false },
    };
    const { page, job, close } = await rings(desk, { pedals: JSON.stringify(pedals) });
    await page.keyboard.type('18.004');
    const down = (code: string, repeat: boolean) =>
      page.evaluate(
        (init) =>
          document.body.dispatchEvent(
            new KeyboardEvent('keydown', { ...init, key: 'F14', bubbles: true, cancelable: true }),
          ),
        { code, repeat },
      );
    await down('', true);
    await eventually(() => entry(page).inputValue()).toBe('18.004');
    await down('F14', false);
    await down('F14', true);
    await eventually(() => reading(page).textContent()).toBe('18.004');
    await eventually(() => booked(server, job)).toHaveLength(1);
    await close();
  });

  it('measures again what is asked about', async () => {
    const pedals = {
      commit: { code: 'F6', key: 'F6', ctrl: false, alt: false, shift: false, meta: false },
    };
    const { page, job, close } = await rings(desk, { pedals: JSON.stringify(pedals) });
    await log(page, '18.004', '18.504');
    await eventually(() => question(page).count()).toBe(1);
    await page.keyboard.press('F6');
    await eventually(() => question(page).count()).toBe(0);
    await eventually(() => place(page, 0, 1).getAttribute('data-next')).toBe('true');
    await eventually(() => corrections(job)).toMatchObject([
      { kind: 'void', reason: 'measured again' },
    ]);
    await close();
  });
});

describe('for the ear, the hand and the light', () => {
  it('reads the number out where it is switched on and the browser has a voice', async () => {
    const { page, close } = await rings(desk, {}, hearWords);
    await log(page, '18.004');
    await eventually(() => page.evaluate(() => said())).toEqual([]);
    await page.keyboard.press('d');
    await list(page)
      .getByRole('group', { name: 'Number read out' })
      .getByText('on', { exact: true })
      .click();
    await page.keyboard.press('Escape');
    await ready(page);
    await log(page, '18.011', '.7091in');
    await expect
      .poll(() => page.evaluate(() => said()))
      .toEqual(['one eight point zero one one millimetres', 'point seven zero nine one inches']);
    await page.evaluate(() => Reflect.deleteProperty(window, 'speechSynthesis'));
    await log(page, '18.012');
    await eventually(() => reading(page).textContent()).toBe('18.012');
    await close();
  });

  it('sounds and shakes differently for each outcome, and not at all until switched on', async () => {
    const { page, close } = await rings(desk, {}, hearTones);
    await log(page, '18.010');
    await eventually(() => page.evaluate(() => [tones(), shakes()])).toEqual([[], []]);
    await page.keyboard.press('d');
    for (const name of ['Sound', 'Vibration']) {
      await list(page)
        .getByRole('group', { name, exact: true })
        .getByText('on', { exact: true })
        .click();
    }
    await page.keyboard.press('Escape');
    await ready(page);
    await log(page, '18.011', '18.511', '18..1');
    await expect
      .poll(() => page.evaluate(() => tones()))
      .toEqual(['880', '660 440', '220 220 220']);
    await expect
      .poll(() => page.evaluate(() => shakes()))
      .toEqual(['60', '60 60 180', '40 60 40 60 40']);
    await close();
  });

  it('keeps the screen awake, and asks again when the page is seen again', async () => {
    const { page, close } = await rings(small, {}, () => {
      let asked = 0;
      Object.assign(window, { asked: () => asked });
      Object.defineProperty(navigator, 'wakeLock', {
        value: {
          request: async () => {
            asked += 1;
            return { release: async () => {} };
          },
        },
      });
    });
    const asked = () => page.evaluate(() => (window as unknown as { asked: () => number }).asked());
    await expect.poll(asked).toBe(1);
    await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
    await expect.poll(asked).toBe(2);
    await close();
  });
});

/** To the Cut screen and back, by the key for it. */
async function toCutAndBack(page: Page): Promise<void> {
  await page.keyboard.press('c');
  await eventually(() => page.title()).toContain('Cut R1');
  await page.keyboard.press('c');
  await eventually(() => page.title()).toContain('R1 bore');
}

it('keeps who measures over every sheet, and tells the notebook when it is back', async () => {
  const { page, job, close } = await rings(desk);
  const ruth = { id: crypto.randomUUID(), name: 'Ruth' };
  expect((await post(server, 'people', ruth)).status).toBe(201);
  await page.reload();
  await ready(page);
  await toCutAndBack(page);
  const another = page.getByRole('button', { name: /Choose another piece/ });
  const choice = page.getByRole('list', { name: 'People' }).getByRole('button', { name: 'Ruth' });
  // Its script is here once it has been open; without a network the worker has it, which is none in this browser.
  await another.click();
  await choice.waitFor();
  await page.keyboard.press('Escape');
  await choice.waitFor({ state: 'detached' });
  await page.context().setOffline(true);
  await another.click();
  await choice.click();
  await log(page, '18.040');
  await eventually(() => reading(page).textContent()).toBe('18.040');
  await toCutAndBack(page);
  await log(page, '18.041');
  await page.context().setOffline(false);
  await expect
    .poll(async () => (await booked(server, job)).map(({ personId }) => personId), {
      timeout: 30_000,
    })
    .toEqual([ruth.id, ruth.id]);
  // Another page of this device has it from the notebook.
  await expect
    .poll(
      async () => {
        await page.goto(`${server.url}/settings`);
        return page.getByRole('radio', { name: 'Ruth' }).isChecked();
      },
      { timeout: 30_000, interval: 2000 },
    )
    .toBe(true);
  chromium.faults.length = 0; // the refused requests, made on purpose
  await close();
});

describe('coming back', () => {
  it('says where it was: piece, feature, reading, and what was next; and is gone at the next key', async () => {
    const { page, job, close } = await rings(small);
    await log(page, '18.004', '18.006');
    await eventually(() => booked(server, job)).toHaveLength(2);
    await page.reload();
    await ready(page);
    const where = page.getByRole('status').filter({ hasText: 'You were here' });
    await eventually(() => where.textContent()).toMatch(
      /You were here at \d\d:\d\d: R1 bore, top, across B, read 18\.006\. Next: middle, across A\./,
    );
    await key(page, '1').tap();
    await eventually(() => where.count()).toBe(0);
    await key(page, 'Rub out').tap();

    await key(page, 'next piece').tap();
    await page.reload();
    await ready(page);
    await eventually(() => where.textContent()).toMatch(/R1 bore.*Next: R2 bore, top, across A\./);
    await page.getByRole('button', { name: 'Go on' }).tap();
    await eventually(() => where.count()).toBe(0);

    await page.goto(server.url);
    const carry = page.getByRole('region', { name: 'Carry on' });
    await eventually(() => carry.textContent()).toContain('You stopped at R1, ring');
    await eventually(() => carry.textContent()).toContain('Bore read 18.006. Next:');
    await carry.getByRole('link', { name: 'Carry on' }).tap();
    await ready(page);
    await eventually(() => head(page).textContent()).toContain('R1');
    await eventually(() => where.count()).toBe(0); // it has just been told

    const hours = String(Date.now() - 3 * 3_600_000);
    await page.evaluate(
      ([id, at]) => localStorage.setItem(`fw-bench-act:${id}`, at!),
      [job.jobId, hours],
    );
    await page.goto(page.url());
    await ready(page);
    await eventually(() => where.textContent()).toContain('R1 bore, top, across B, read 18.006');
    await close();
  });

  it('says it again after the page was left for long', async () => {
    const { page, job, close } = await rings(small, {}, () => {
      let aheadMs = 0;
      const now = Date.now.bind(Date);
      Date.now = () => now() + aheadMs;
      let seen: DocumentVisibilityState = 'visible';
      Object.defineProperty(document, 'visibilityState', { get: () => seen });
      Object.assign(window, {
        leave(minutes: number) {
          seen = 'hidden';
          document.dispatchEvent(new Event('visibilitychange'));
          aheadMs += minutes * 60_000;
          seen = 'visible';
          document.dispatchEvent(new Event('visibilitychange'));
        },
      });
    });
    await log(page, '18.004');
    await eventually(() => booked(server, job)).toHaveLength(1);
    const where = page.getByRole('status').filter({ hasText: 'You were here' });
    const leave = (minutes: number) =>
      page.evaluate((m) => (window as unknown as { leave: (m: number) => void }).leave(m), minutes);
    await leave(2);
    await eventually(() => where.count()).toBe(0);
    await leave(180);
    await eventually(() => where.textContent()).toContain('read 18.004');
    await close();
  });

  it('takes back what was entered here, whatever another device has read since; a slip stays asked about', async () => {
    const { page, job, close } = await rings(desk);
    await log(page, '18.004');
    await eventually(() => head(page).textContent()).toContain('1 of 6 taken');
    await eventually(() => booked(server, job)).toHaveLength(1);
    const other = {
      id: crypto.randomUUID(), deviceTime: '2026-03-14T10:00:00Z', deviceSeq: 1, personId: null,
      text: '18.006', unit: 'mm', valuePm: 18_006_000_000, resolutionPm: 1_000_000,
      pieceId: job.pieceIds[0], featureId: job.featureId, gaugeId: job.gaugeId, station: 'top',
      direction: 'B', temperatureMilliC: null, heldAs: null,
    }; // prettier-ignore
    await post(server, 'readings', { deviceId: crypto.randomUUID(), entries: [other] });
    await eventually(() => reading(page).textContent()).toBe('18.006');
    await page.keyboard.press('v');
    await eventually(() => notice(page).textContent()).toContain(
      '18.004, entered here, is struck out.',
    );
    const [own] = await booked(server, job);
    const struck = async () => {
      const answer = await fetch(`${server.url}/api/v1/jobs/${job.jobId}/sheet`);
      const sheet = (await answer.json()) as JobSheet;
      return sheet.corrections.map(({ kind, readingId }) => [kind, readingId]);
    };
    await eventually(struck).toEqual([['void', own!.id]]);

    await log(page, '18.504');
    await eventually(() => question(page).textContent()).toContain('One turn of the thimble?');
    await page.keyboard.press('v');
    await eventually(() => question(page).count()).toBe(0);
    await noBounce(page);
    await page.keyboard.press('v');
    await eventually(() => question(page).textContent()).toContain('One turn of the thimble?');
    await close();
  });

  it('fetches the last entry where there is nothing here to take back', async () => {
    const { page, job, close } = await rings(desk);
    await log(page, '18.004');
    await page.keyboard.press('Shift+N');
    await eventually(() => head(page).textContent()).toContain('R2');
    await page.keyboard.press('v');
    await eventually(() => head(page).textContent()).toContain('R1');
    await eventually(() => notice(page).textContent()).toContain('The last entry is on R1');
    await eventually(() => corrections(job)).toEqual([]);
    await page.keyboard.press('v');
    await eventually(() => verdict(page).textContent()).toContain('Struck out');
    await close();
  });
});

describe('a held reading', () => {
  it('is kept as it is with a reason, one tap or in own words', async () => {
    const { page, job, close } = await rings(small);
    await log(page, '18.004', '18.504');
    await question(page).getByRole('button', { name: 'Keep it as it is' }).tap();
    await eventually(() => question(page).textContent()).toContain('Why does it count?');
    await question(page).getByRole('button', { name: 'Back' }).tap();
    await question(page).getByRole('button', { name: 'Keep it as it is' }).tap();
    await question(page).getByRole('button', { name: 'the part is so' }).tap();
    await eventually(() => question(page).count()).toBe(0);
    await key(page, 'next piece').tap();
    await log(page, '18.005', '18.505');
    await question(page).getByRole('button', { name: 'Keep it as it is' }).tap();
    await question(page).getByLabel('Another reason').fill('chuck mark there');
    await page.keyboard.press('Enter');
    await eventually(() => corrections(job)).toMatchObject([
      { kind: 'count', reason: 'the part is so' },
      { kind: 'count', reason: 'chuck mark there' },
    ]);
    await close();
  });

  it('is not asked for: what is typed over an open question waits, named, until it is placed or thrown away', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'L1', balloon: '1' });
    const ofL1 = async () => (await inBook(server, 'L1', '1')).map(({ text }) => text);
    const before = await ofL1();
    await log(page, '18.011', '18.012');
    await eventually(() => notice(page).textContent()).toContain(
      '18.011 was not answered, and waits to be placed.',
    );
    await log(page, '18.010');
    await eventually(() => notice(page).textContent()).toContain(
      '18.011 and 18.012 were not answered, and wait to be placed. All 6 taken. Where is 18.010 from?',
    );
    await page.keyboard.press('1');
    await eventually(() => reading(page).textContent()).toBe('18.010');
    await eventually(() => notice(page).count()).toBe(0);

    // They stay over a reload, and are judged anew where they are pressed.
    await page.reload();
    await ready(page);
    const waiting = page.getByRole('group', { name: 'Not placed yet' });
    await waiting.getByRole('button', { name: '18.012' }).click();
    await eventually(() => notice(page).textContent()).toContain('Where is 18.012 from?');
    await page.keyboard.press('1');
    await eventually(() => reading(page).textContent()).toBe('18.012');
    await waiting.getByRole('button', { name: 'Throw away' }).click();
    await waiting.getByRole('button', { name: 'Yes, throw away' }).click();
    await eventually(() => waiting.count()).toBe(0);
    await eventually(ofL1).toEqual([...before, '18.010', '18.012']);
    await close();
  });

  it('loses nothing of who goes on measuring without looking', async () => {
    const { page, job, close } = await rings(desk);
    await log(page, '18.004', '18.504', '18.005', '18.006', '18.007', '18.008');
    await page.keyboard.press('2');
    await eventually(async () =>
      (await booked(server, job)).map((one) => `${one.text} ${one.station} ${one.direction}`),
    ).toEqual([
      '18.004 top A',
      '18.504 top B',
      '18.005 middle A',
      '18.006 middle B',
      '18.007 bottom A',
      '18.008 bottom B',
    ]);
    await eventually(() => question(page).textContent()).toContain('One turn of the thimble?');
    await close();
  });

  it('is answered with the keyboard alone', async () => {
    const { page, job, close } = await rings(desk);
    await log(page, '18.004', '18.504');
    await question(page).waitFor();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await eventually(() => question(page).textContent()).toContain('Why does it count?');
    await page.keyboard.press('Enter');
    await eventually(() => corrections(job)).toMatchObject([
      { kind: 'count', reason: 'measured twice, the same' },
    ]);
    await log(page, '18.005');
    await eventually(() => booked(server, job)).toHaveLength(3);
    await close();
  });

  it('is asked about when it is further off than the gauge ever was from itself', async () => {
    const { page, job, close } = await rings(desk);
    await log(page, '18.004', '18.005', '18.004', '18.005', '18.004');
    await eventually(() => booked(server, job)).toHaveLength(5);
    await log(page, '18.023');
    await eventually(() => question(page).textContent()).toContain(
      'Far from the others. Is it right?',
    );
    await eventually(() => question(page).textContent()).toContain('Bore gauge 1 repeats');
    await close();
  });
});

describe('the choices of this device', () => {
  it('are all kept where several are made at once', async () => {
    const { page, close } = await rings(desk);
    await page.goto(`${server.url}/settings`);
    const marks = page.getByRole('group', { name: 'Decimal mark' });
    const chosen = () =>
      page
        .locator('main :checked')
        .evaluateAll((all) => all.map((one) => one.parentElement!.textContent));
    await marks.getByText('Comma, 18,004').click();
    await page.getByRole('group', { name: 'Light' }).getByText('Dark').click();
    await page.getByRole('group', { name: 'Keypad on the' }).getByText('Left').click();
    await eventually(chosen).toEqual(expect.arrayContaining(['Comma, 18,004', 'Dark', 'Left']));
    await marks.getByText('Point, 18.004').click();
    await eventually(chosen).toEqual(expect.arrayContaining(['Point, 18.004', 'Dark', 'Left']));
    await page.reload();
    await eventually(chosen).toEqual(expect.arrayContaining(['Point, 18.004', 'Dark', 'Left']));
    await close();
  });

  it('stand in Settings too, and letters stay letters where they are switched off', async () => {
    const { page, close } = await rings(desk);
    await page.goto(`${server.url}/settings`);
    await page.getByRole('group', { name: 'Single letters as keys' }).getByText('off').click();
    await page.goBack();
    await ready(page);
    await log(page, '18.004');
    await page.keyboard.press('v');
    await eventually(() => verdict(page).textContent()).not.toContain('Struck out');
    await page.keyboard.press('d');
    await eventually(() => page.getByRole('dialog').count()).toBe(0);
    await close();
  });

  it('go on with this feature on every piece, where that is the order', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'L1', balloon: '1' }, small);
    await eventually(() => key(page, 'next feature').count()).toBe(1);
    await page.getByRole('button', { name: /Choose another piece/ }).tap();
    await page.getByText('this feature on every piece').tap();
    await page.getByRole('dialog').getByRole('button', { name: 'Close' }).tap();
    await key(page, 'next piece').tap();
    await eventually(() => head(page).textContent()).toMatch(/L2.*bore/s);
    await close();
  });
});

it.each(['light', 'dark', 'glare'])(
  'has nothing wrong for anyone, and no sideways scroll at 320, %s',
  async (theme) => {
    const { page, close } = await rings({ ...small, viewport: { width: 320, height: 640 } });
    await page.evaluate((name) => document.documentElement.setAttribute('data-theme', name), theme);
    const look = async (state: string) => {
      await page.evaluate(axe.source);
      const { violations } = await page.evaluate(() =>
        (window as unknown as { axe: { run: () => Promise<AxeResults> } }).axe.run(),
      );
      const bad = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
      expect(bad.map(({ id, nodes }) => `${state}: ${id} ${nodes[0]?.html}`)).toEqual([]);
      const scroll = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(scroll, state).toBe(320);
    };
    await key(page, 'last digits only').tap();
    await look('last digits');
    await key(page, 'last digits only').tap();
    await key(page, 'more of this device').tap();
    await list(page)
      .getByRole('button', { name: /Teach: Next/ })
      .tap();
    await look('this device');
    await list(page).getByText('every place of a feature').tap();
    await list(page).getByRole('button', { name: 'Close' }).tap();
    await log(page, '18.004');
    await look('unseen');
    await log(page, '18.504');
    await question(page).getByRole('button', { name: 'Keep it as it is' }).tap();
    await look('why');
    await page.reload();
    await page.getByRole('status').filter({ hasText: 'You were here' }).waitFor();
    await look('where');
    await close();
  },
);

async function corrections({ jobId }: Rings) {
  const sheet = (await (
    await fetch(`${server.url}/api/v1/jobs/${jobId}/sheet`)
  ).json()) as JobSheet;
  return sheet.corrections.map(({ kind, reason }) => ({ kind, reason }));
}

declare function tones(): string[];
declare function shakes(): string[];
declare function said(): string[];

/** In the page: an AudioContext and a vibrator that only write down. One line for each outcome. */
function hearTones(): void {
  const heard: number[][] = [];
  const shaken: string[] = [];
  let open: number[] | null = null;
  class Context {
    currentTime = 0;
    destination = {};
    resume = async () => {};
    createGain = () => ({
      gain: { setValueAtTime() {}, linearRampToValueAtTime() {} },
      connect: (next: unknown) => next,
    });
    createOscillator = () => {
      const frequency = { value: 0 };
      return {
        frequency,
        connect: (next: unknown) => next,
        stop() {},
        start() {
          if (open === null) {
            open = [];
            heard.push(open);
            queueMicrotask(() => (open = null));
          }
          open.push(frequency.value);
        },
      };
    };
  }
  Object.assign(window, {
    AudioContext: Context,
    tones: () => heard.map((one) => one.join(' ')),
    shakes: () => shaken,
  });
  Object.defineProperty(navigator, 'vibrate', {
    value: (pattern: number[]) => shaken.push([pattern].flat().join(' ')) > 0,
  });
}

/** In the page: a voice that only writes down. */
function hearWords(): void {
  const words: string[] = [];
  class Utterance {
    constructor(public text: string) {}
  }
  Object.defineProperty(window, 'SpeechSynthesisUtterance', { value: Utterance });
  Object.defineProperty(window, 'speechSynthesis', {
    configurable: true,
    value: { cancel() {}, speak: ({ text }: Utterance) => words.push(text) },
  });
  Object.assign(window, { said: () => words });
}
