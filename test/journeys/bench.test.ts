import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, type OpenBrowser } from '../setup/open-browser';
import { startServer, type RunningServer } from '../setup/start-server.mjs';
import {
  desk,
  entry,
  goToBench,
  head,
  inBook,
  loadExample,
  noBounce,
  notice,
  openBench,
  openJob,
  phone,
  place,
  pressBounced,
  reading,
  ready,
  sheetOf,
  startRings,
  verdict,
} from './bench-story';

// Readings go in by thumb and by keyboard; nothing is guessed, nothing is lost.

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

/** Looks again until the server has what is awaited. */
const eventually = (look: () => Promise<unknown>) => expect.poll(look);

describe('with a thumb on a phone', () => {
  it('logs by the keypad, shows the reading, moves on, and takes it back', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'W12', balloon: '9' }, phone);
    await eventually(() => place(page, 0, 0).getAttribute('data-next')).toBe('true');
    for (const key of ['1', '1', 'point', '9', '9', '1']) {
      await page.getByRole('button', { name: key, exact: true }).tap();
    }
    await page.getByRole('button', { name: 'Log', exact: true }).tap();
    await eventually(() => reading(page).textContent()).toBe('11.991');
    await eventually(() => entry(page).inputValue()).toBe('');
    await eventually(() => place(page, 0, 1).getAttribute('data-next')).toBe('true');
    await eventually(() => head(page).textContent()).toContain('1 of 2 taken');
    await eventually(() => inBook(server, 'W12', '9')).toMatchObject([
      { text: '11.991', unit: 'mm', valuePm: 11_991_000_000, direction: 'A', said: [] },
    ]);

    await page.getByRole('button', { name: 'Void this' }).tap();
    await eventually(() => verdict(page).textContent()).toContain('Struck out');
    await eventually(() => place(page, 0, 0).getAttribute('data-next')).toBe('true');
    await noBounce(page);
    await page.getByRole('button', { name: 'Put back' }).tap();
    await eventually(() => head(page).textContent()).toContain('1 of 2 taken');
    await eventually(() => inBook(server, 'W12', '9')).toMatchObject([
      { text: '11.991', said: ['void', 'restore'] },
    ]);
    await close();
  });

  it('takes up the gauge a feature was read with last', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'P7', balloon: '6' }, phone);
    const about = page.getByRole('button', { name: /Gauge and unit/ });
    await eventually(() => about.textContent()).toContain('Small-hole gauge');
    await close();
  });

  it('asks which gauge before the first reading of a feature, and keeps what was typed meanwhile', async () => {
    const { page, close } = await openJob(server, chromium, await startRings(server), phone);
    await eventually(() => entry(page).getAttribute('placeholder')).toBe('Which gauge?');
    const offers = page.getByRole('list', { name: 'Gauges' }).getByRole('button');
    await eventually(() => offers.first().textContent()).toContain('Bore gauge 1');
    for (const figure of ['18.004', '18.005']) {
      await page.keyboard.type(figure);
      await page.keyboard.press('Enter');
      await eventually(() => notice(page).textContent()).toContain(
        `Which gauge is ${figure} from?`,
      );
    }
    const waiting = page.getByRole('group', { name: 'Not placed yet' });
    await eventually(() => waiting.textContent()).toContain('Not kept yet: choose the gauge.');
    await page.reload();
    await ready(page);
    await eventually(() => waiting.textContent()).toContain('18.00418.005');
    await offers.first().tap();
    await eventually(() => reading(page).textContent()).toBe('18.005');
    await eventually(() => head(page).textContent()).toContain('2 of 6 taken');
    await eventually(() => waiting.count()).toBe(0);
    // And one more at once: nothing that stands there is in its way.
    await page.keyboard.type('18.006');
    await page.keyboard.press('Enter');
    await eventually(() => head(page).textContent()).toContain('3 of 6 taken');
    await close();
  });

  it('reaches another piece, feature or gauge with one tap each', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'L1', balloon: '2' }, phone);
    const choose = page.getByRole('button', { name: /Choose another piece/ });
    await choose.tap();
    await page.getByRole('list', { name: 'Pieces' }).getByRole('button', { name: 'L4' }).tap();
    await eventually(() => head(page).textContent()).toContain('L4');
    await choose.tap();
    await page
      .getByRole('list', { name: 'Features' })
      .getByRole('button', { name: '1 Bore' })
      .tap();
    await eventually(() => head(page).textContent()).toContain('bore');
    await choose.tap();
    await page.getByRole('button', { name: /Crank web/ }).tap();
    await page.getByRole('button', { name: 'W5', exact: true }).tap();
    await eventually(() => head(page).textContent()).toContain('boss outside');
    await close();
  });
});

describe('with the keyboard alone', () => {
  it('goes to the next feature or the next piece with one key each, and back', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'P4', balloon: '4' });
    for (const [key, title] of [
      ['f', 'P4 length'],
      ['w', 'P5 length'],
      ['Shift+F', 'P5 outside'],
      ['Shift+W', 'P4 outside'],
      ['Shift+F', 'P4 outside'],
    ] as const) {
      await page.keyboard.press(key);
      await eventually(() => page.title()).toContain(title);
    }
    await close();
  });

  it('logs, voids, puts back, and walks over stations and pieces', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'W13', balloon: '9' });
    await page.keyboard.type('11.990');
    await eventually(() => page.locator('form output').textContent()).toBe('mm, 0.47205 in');
    await page.keyboard.press('Enter');
    await eventually(() => reading(page).textContent()).toBe('11.990');
    await pressBounced(page, 'v');
    await noBounce(page);
    await eventually(() => verdict(page).textContent()).toContain('Struck out');
    await page.keyboard.press('v');
    await eventually(() => verdict(page).textContent()).not.toContain('Struck out');
    await page.keyboard.type('11.991');
    await page.keyboard.press('Enter');
    await eventually(() => head(page).textContent()).toContain('2 of 2 taken');

    await page.keyboard.press('ArrowUp');
    await eventually(() => place(page, 0, 0).getAttribute('data-next')).toBe('true');
    await page.keyboard.press('n');
    await eventually(() => place(page, 0, 1).getAttribute('data-next')).toBe('true');
    await page.keyboard.press('n');
    await eventually(() => head(page).textContent()).toContain('W14');
    await page.keyboard.press('Shift+P');
    await eventually(() => head(page).textContent()).toContain('W13');
    await page.keyboard.press('PageDown');
    await eventually(() => head(page).textContent()).toContain('W14');
    const w14 = (await sheetOf(server)).pieces.find(({ mark }) => mark === 'W14')!;
    expect(new URL(page.url()).searchParams.get('piece')).toBe(w14.id);
    await close();
  });

  it('goes on with Enter when all are taken', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'B1', balloon: '8' });
    await page.keyboard.press('Enter');
    await eventually(() => head(page).textContent()).toContain('B3');
    await close();
  });

  it('asks where a reading belongs when all are taken', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'B2', balloon: '8' });
    await page.keyboard.type('17.90');
    await page.keyboard.press('Enter');
    await eventually(() => notice(page).textContent()).toContain(
      'Taken already. Where is 17.90 from?',
    );
    await page.keyboard.press('2');
    await page.waitForFunction(() => document.querySelector('header')?.textContent?.includes('B3'));
    await eventually(() => reading(page).textContent()).toBe('17.90');
    await eventually(() => inBook(server, 'B3', '8')).toMatchObject([{ text: '17.90' }]);
    await eventually(() => inBook(server, 'B2', '8')).toHaveLength(1);
    await close();
  });

  it('lists the keys, and leaves letters alone where they are switched off', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'L1', balloon: '1' });
    await page.keyboard.press('?');
    await eventually(() => page.getByRole('dialog', { name: 'Keys' }).isVisible()).toBe(true);
    await page.keyboard.press('Escape');
    await ready(page);
    await page.evaluate(() => localStorage.setItem('fw-bench-keys', 'off'));
    await page.reload();
    await ready(page);
    await page.keyboard.press('v');
    await eventually(() => verdict(page).textContent()).not.toContain('Struck out');
    await eventually(() => entry(page).inputValue()).toBe('v');
    await close();
  });

  it('shows how a departure will be read, and takes another unit than the gauge has', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'L2', balloon: '3' });
    await page.keyboard.type('-.031');
    await eventually(() => page.locator('form output').textContent()).toBe(
      'is 23.969 mm, 0.94366 in',
    );
    await goToBench(server, page, { mark: 'B4', balloon: '8' });
    await page.keyboard.type('.7047in');
    await page.keyboard.press('Enter');
    await eventually(() => verdict(page).textContent()).toContain('typed .7047in');
    await eventually(() => inBook(server, 'B4', '8')).toMatchObject([
      { text: '.7047in', unit: 'in', valuePm: 17_899_380_000, resolutionPm: 2_540_000 },
    ]);
    await close();
  });

  it('comes back to where it stopped, and says so in the title', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'W3', balloon: '9' });
    await goToBench(server, page, null);
    await eventually(() => head(page).textContent()).toContain('W3');
    await eventually(() => page.title()).toBe('W3 boss outside · Fitwright');
    await close();
  });

  it('is come back to by the way back of the browser, from another sheet and from a link', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'W3', balloon: '9' });
    await page.keyboard.press('PageDown');
    await eventually(() => head(page).textContent()).toContain('W4');
    await page.keyboard.press('Alt+1');
    await page.getByRole('row', { name: /^L1 / }).first().waitFor();
    await page.goBack();
    await ready(page);
    await eventually(() => head(page).textContent()).toContain('W4');
    await page.goForward();
    await page.getByRole('row', { name: /^L1 / }).first().waitFor();
    await close();
  });

  it('keeps the address of the piece somebody has gone on to as soon as the page took keys', async () => {
    const context = await chromium.newContext(desk);
    // What the page puts off to a moment later comes late, as on a machine that has much to do.
    await context.addInitScript(() => {
      const later = window.setTimeout.bind(window);
      Object.assign(window, {
        setTimeout: (act: () => void, ms?: number) => later(act, ms === 0 ? 1000 : ms),
      });
    });
    const page = await context.newPage();
    await goToBench(server, page, { mark: 'W3', balloon: '9' });
    const asked = page.url();
    await page.keyboard.press('PageDown');
    await eventually(() => head(page).textContent()).toContain('W4');
    await expect.poll(() => page.url()).not.toBe(asked);
    const put = page.url();
    await page.waitForTimeout(1500);
    expect(page.url()).toBe(put);
    await context.close();
  });

  it('goes to the other sheets with Alt and a figure, and types nothing by it', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'W3', balloon: '9' });
    await page.keyboard.press('Control+a');
    await eventually(() => entry(page).inputValue()).toBe('');
    await page.keyboard.press('Alt+1');
    await page.waitForURL(/\/board$/);
    await close();
  });
});

describe('what a person has to decide', () => {
  it('holds a missed turn of the thimble, asks, and measures it again at the same station', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'P5', balloon: '4' }, phone);
    const question = page.getByRole('alertdialog', { name: 'One turn of the thimble?' });
    await eventually(() => question.textContent()).toContain('17.998');
    await eventually(() => head(page).textContent()).toContain('1 held');
    await question.getByRole('button', { name: 'Measure it again' }).tap();
    await eventually(() => question.count()).toBe(0);
    await eventually(() => place(page, 2, 0).getAttribute('data-next')).toBe('true');
    await page.keyboard.type('17.998');
    await page.keyboard.press('Enter');
    await eventually(async () => (await inBook(server, 'P5', '4')).slice(-2)).toMatchObject([
      { text: '18.498', heldAs: 'thimble turn', said: ['void'] },
      { text: '17.998', station: 'skirt', direction: 'A', heldAs: null, said: [] },
    ]);
    await close();
  });

  it('counts it when it is said to be right, strikes it out when it was a slip', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'P6', balloon: '4' }, phone);
    for (const [text, answer, said] of [
      ['18.494', 'Keep it as it is', 'count'],
      ['17.494', 'It was a slip, strike it out', 'void'],
    ] as const) {
      await place(page, 0, 0).tap();
      await page.getByRole('button', { name: 'Measure here again' }).tap();
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
      await eventually(() => verdict(page).textContent()).toContain('Held');
      await page.getByRole('button', { name: answer }).tap();
      if (said === 'count') await page.getByRole('button', { name: 'the part is so' }).tap();
      await eventually(() => verdict(page).textContent()).not.toContain('Held');
      await eventually(async () => (await inBook(server, 'P6', '4')).at(-1)).toMatchObject({
        text,
        heldAs: 'thimble turn',
        said: [said],
      });
      if (said === 'count') await page.keyboard.press('v');
    }
    await close();
  });

  it('keeps both texts when it was mistyped', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'P4', balloon: '5' }, phone);
    await place(page, 0, 0).tap();
    await page.getByRole('button', { name: 'I mistyped' }).tap();
    const field = page.getByRole('textbox', { name: /It reads, instead of 20.03/ });
    const keys = page.getByRole('dialog').getByRole('group', { name: 'Keys' });
    const press = async (...names: string[]) => {
      for (const name of names) await keys.getByRole('button', { name, exact: true }).tap();
    };
    await eventually(() => field.getAttribute('inputmode')).toBe('none');
    await press('2', '0', 'point', 'point', '1', 'Log');
    await eventually(() => page.getByRole('dialog').textContent()).toContain('a second "."');
    await press('Rub out', 'Rub out', '0', '2', 'Log');
    await eventually(() => reading(page).textContent()).toBe('20.02');
    await eventually(() => verdict(page).textContent()).toContain('first typed 20.03');
    await eventually(() => inBook(server, 'P4', '5')).toMatchObject([
      { text: '20.03', said: ['mistyped'] },
    ]);
    await close();
  });

  it('moves a reading to the piece it belongs to', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'B5', balloon: '8' }, phone);
    await page.keyboard.type('17.88');
    await page.keyboard.press('Enter');
    await place(page, 0, 0).tap();
    await page.getByRole('button', { name: 'It belongs elsewhere' }).tap();
    await page.getByLabel('Piece', { exact: true }).selectOption({ label: 'B6, rod bush' });
    await page.getByRole('button', { name: 'Move it there' }).tap();
    await eventually(() => head(page).textContent()).toContain('0 of 1 taken');
    await goToBench(server, page, { mark: 'B6', balloon: '8' });
    await eventually(() => reading(page).textContent()).toBe('17.88');
    await close();
  });

  it('asks what an ambiguous text means, in the line', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'B7', balloon: '8' });
    await page.keyboard.type('17,905');
    await page.keyboard.press('Enter');
    await eventually(() => notice(page).textContent()).toContain(
      '17,905: is that mark for decimals',
    );
    await eventually(() => entry(page).inputValue()).toBe('17,905');
    await page.keyboard.press('1');
    await eventually(() => inBook(server, 'B7', '8')).toMatchObject([
      { text: '17,905', valuePm: 17_905_000_000 },
    ]);
    await close();
  });

  it('names what is wrong with a text that is no size, and keeps nothing', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'B8', balloon: '8' });
    await page.keyboard.type('18..2');
    await page.keyboard.press('Enter');
    await eventually(() => notice(page).textContent()).toBe(
      '"18..2" is not a size: a second ".". Type it again; nothing was kept.',
    );
    await eventually(() => entry(page).inputValue()).toBe('18..2');
    await page.keyboard.press('Backspace');
    await eventually(() => entry(page).inputValue()).toBe('18..');
    await page.keyboard.press('Escape');
    for (let n = 0; n < 4; n += 1) await page.keyboard.press('Backspace');
    await page.keyboard.type('-');
    await page.keyboard.press('Enter');
    await eventually(() => notice(page).textContent()).toContain('a sign alone');
    await page.keyboard.type('17.91');
    await page.keyboard.press('Enter');
    await eventually(() => inBook(server, 'B8', '8')).toMatchObject([{ text: '17.91' }]);
    await close();
  });

  it('is mended with the keys of a keyboard, a part of it or all of it', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'B8', balloon: '7' });
    const refused = async () => {
      await page.keyboard.type('18..2');
      await page.keyboard.press('Enter');
      await eventually(() => notice(page).textContent()).toContain('a second "."');
    };
    await refused();
    await page.keyboard.press('Control+a');
    await page.keyboard.press('Backspace');
    await eventually(() => entry(page).inputValue()).toBe('');
    await refused();
    await page.keyboard.press('Home');
    await page.keyboard.press('Delete');
    await page.keyboard.type('9');
    await eventually(() => entry(page).inputValue()).toBe('98..2');
    await close();
  });
});

describe('while metal is still to come off', () => {
  it('says what to make it to, and takes the readings before a cut for the old size', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'P7', balloon: '4' }, phone);
    const cuts = async () =>
      (await sheetOf(server)).cuts.map(({ ordinal, beforePm }) => [ordinal, beforePm]);
    const had = await cuts();
    const main = page.locator('main');
    await eventually(() => main.textContent()).toContain('Make P7 to L7: 18.000');
    await eventually(() => main.textContent()).toContain('0.086 left to turn');
    await eventually(() => main.textContent()).toContain('Spindle stopped before you measure.');
    await page.getByRole('button', { name: 'Cut since' }).tap();
    await page.waitForFunction(() =>
      document.querySelector('header')?.textContent?.includes('0 of 6'),
    );
    await eventually(cuts).toEqual([...had, [4, 18_086_333_333]]);

    await page.keyboard.type('18.040');
    await page.keyboard.press('Enter');
    await eventually(() => reading(page).textContent()).toBe('18.040');
    await page.keyboard.type('18.010');
    await page.keyboard.press('Enter');
    await eventually(() => notice(page).textContent()).toContain(
      '18.010: was it cut since the others?',
    );
    await page.getByRole('button', { name: /cut since, this is the new size/ }).tap();
    await page.waitForFunction(
      () => document.querySelector('[data-state] > span')?.textContent === '18.010',
    );
    await eventually(cuts).toHaveLength(had.length + 2);
    await eventually(() => head(page).textContent()).toContain('1 of 6');
    await close();
  });

  it('keeps a cut on this device when the notebook does not answer, and sends it when it does; V takes it back, in the book or not', async () => {
    const { page, close } = await openBench(server, chromium, { mark: 'P8', balloon: '4' }, phone);
    const before = (await sheetOf(server)).cuts.length;
    await page.keyboard.type('18.300');
    await page.keyboard.press('Enter');
    await eventually(() => head(page).textContent()).toContain('in the book');
    await page.context().setOffline(true);
    await page.getByRole('button', { name: 'Cut since' }).tap();
    await eventually(() => head(page).textContent()).toContain('0 of 6');
    expect((await sheetOf(server)).cuts).toHaveLength(before);
    // It was pressed by mistake: the reading before it counts again, though nothing has been sent.
    await page.keyboard.press('v');
    await eventually(() => reading(page).textContent()).toBe('18.300');
    await eventually(() => head(page).textContent()).toContain('1 of 6');
    await eventually(() => head(page).textContent()).toContain('2 to send');
    expect((await sheetOf(server)).cuts).toHaveLength(before);
    await page.context().setOffline(false);
    const cuts = async () =>
      (await sheetOf(server)).cuts
        .slice(before)
        .map(({ version, struckAt }) => [version, !struckAt]);
    await expect.poll(cuts, { timeout: 30_000 }).toEqual([[2, false]]);
    await eventually(() => head(page).textContent()).not.toContain('to send');
    await eventually(() => reading(page).textContent()).toBe('18.300');

    // With the notebook at hand it is the same.
    await page.getByRole('button', { name: 'Cut since' }).tap();
    await eventually(() => head(page).textContent()).toContain('0 of 6');
    await noBounce(page);
    await pressBounced(page, 'v'); // the reading before it is not struck out with it
    await eventually(() => head(page).textContent()).toContain('1 of 6');
    await eventually(cuts).toEqual([
      [2, false],
      [2, false],
    ]);
    expect((await inBook(server, 'P8', '4')).map(({ said }) => said)).toEqual([[]]);
    chromium.faults.length = 0; // the refused requests, made on purpose
    await close();
  });
});
