import { afterAll, beforeAll, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import type { Gauge } from '@/lib/schema/gauge';
import { openBrowser, type OpenBrowser } from '../setup/open-browser';
import { startServer, type RunningServer } from '../setup/start-server.mjs';
import { axeFaults } from './axe-faults';
import {
  booked,
  desk,
  entry,
  gauge,
  loadExample,
  notice,
  phone,
  reading,
  ready,
  startRings,
  type Rings,
} from './bench-story';
import { fakeSerial, sendBytes } from './fake-serial';

// A gauge is taught how it sends by three readings, by keys and by a serial port, and then used at the Bench.

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

const kept = async (rings: Rings): Promise<Gauge> =>
  (await fetch(`${server.url}/api/v1/gauges/${rings.gaugeId}`)).json() as Promise<Gauge>;
const texts = async (rings: Rings) => (await booked(server, rings)).map(({ text }) => text);
const panel = (page: Page) => page.getByRole('region', { name: 'How Bore gauge 1 sends' });

/** The Gauges sheet with the bore gauge about to be taught. */
async function teaching(options = desk, withSerial = false) {
  const rings = await startRings(server);
  const context = await chromium.newContext(options);
  const page = await context.newPage();
  if (withSerial) await fakeSerial(page);
  // A browser without a serial interface, whichever this one is.
  else
    await page.addInitScript(
      () => void delete (Navigator.prototype as { serial?: unknown }).serial,
    );
  await page.goto(`${server.url}/gauges?teach=${rings.gaugeId}`);
  await panel(page).waitFor();
  return { page, rings, close: () => context.close() };
}

it('learns a gauge that types from three readings, says so, and reads with it at the Bench', async () => {
  const { page, rings, close } = await teaching();
  const box = panel(page).getByLabel('Send three readings');
  await expect.poll(() => box.evaluate((at) => at === document.activeElement)).toBe(true);
  await expect.poll(() => panel(page).getByText('by a serial port').count()).toBe(0);
  await gauge(page, '18,003', 20, 'nothing');
  // Apart by the keys' own times, as two presses of a button are.
  await panel(page).getByText('1 of 3 came. Two more.').waitFor();
  await gauge(page, '12,500', 20, 'nothing');
  await panel(page).getByText('2 of 3 came. One more.').waitFor();
  await gauge(page, '18,007', 20, 'nothing');
  await panel(page)
    .getByText(
      'Bore gauge 1 ends a reading with 150 ms of silence, writes a decimal comma and is always in mm.',
    )
    .waitFor();
  await expect
    .poll(() => panel(page).getByRole('listitem').allTextContents())
    .toEqual(['18,003 mm', '12,500 mm', '18,007 mm']);
  expect(await axeFaults(page)).toEqual([]);
  await panel(page).getByLabel('Silence that ends a reading').fill('200');
  await panel(page).getByRole('button', { name: 'Keep this' }).click();
  await panel(page).waitFor({ state: 'detached' });
  await expect
    .poll(() => kept(rings))
    .toMatchObject({
      sendsEnd: 'nothing',
      sendsMark: ',',
      sendsUnit: 'mm',
      sendsPlaces: 3,
      sendsPlus: false,
      sendsPauseMs: 200,
      serialBaud: null,
    });
  await page.goto(`${server.url}/jobs/${rings.jobId}/bench`);
  await ready(page);
  await chooseGauge(page);
  // Nothing is asked about its comma, and nobody pressed Enter.
  await gauge(page, '18,003', 20, 'nothing');
  await expect.poll(() => texts(rings)).toEqual(['18,003']);
  await expect.poll(() => reading(page).textContent()).toBe('18.003');
  await page.getByRole('button', { name: /Choose another piece/ }).click();
  await page.getByRole('link', { name: /Teach how it sends/ }).click();
  await panel(page).getByText('As taught before: Bore gauge 1').waitFor();
  await panel(page).getByRole('button', { name: 'Forget what was taught' }).click();
  await expect.poll(async () => (await kept(rings)).sendsEnd).toBeNull();
  await close();
});

it('says plainly when three readings do not agree, and keeps nothing', async () => {
  const { page, rings, close } = await teaching(phone);
  for (const text of ['18.003', '18,004', '18.005']) await gauge(page, text, 5);
  await panel(page)
    .getByText('The three do not agree: a decimal point in one, a comma in another.')
    .waitFor();
  await expect
    .poll(() => panel(page).getByRole('listitem').allTextContents())
    .toEqual(['18.003', '18,004', '18.005']);
  await expect.poll(() => panel(page).getByRole('button', { name: 'Keep this' }).count()).toBe(0);
  expect(await axeFaults(page)).toEqual([]);
  await panel(page).getByRole('button', { name: 'Send three again' }).click();
  for (const text of ['18.003', '18.004', '0.7088']) await gauge(page, text, 5, 'Tab');
  await panel(page)
    .getByText(/ends a reading with Tab.*follows its own mm and inch button/)
    .waitFor();
  expect((await kept(rings)).sendsEnd).toBeNull();
  await panel(page).getByRole('button', { name: 'Keep this' }).click();
  await expect.poll(async () => (await kept(rings)).sendsUnit).toBe('button');
  await close();
});

it('learns a gauge with a serial port, and takes its readings as if they were typed', async () => {
  const { page, rings, close } = await teaching(desk, true);
  await panel(page).getByText('by a serial port').click();
  await panel(page).getByLabel('The port is set to').selectOption('4800 7E2');
  await panel(page).getByRole('button', { name: 'Choose the port' }).click();
  await panel(page).getByText('Bore gauge 1 is connected.').waitFor();
  await page.waitForTimeout(150);
  await sendBytes(page, '+  18.003 mm\r\n');
  await page.evaluate(() => window.fakePort.fail('ParityError'));
  await panel(page).getByText('A reading of Bore gauge 1 came garbled.').waitFor();
  await panel(page).getByText('Measure three things').waitFor();
  await sendBytes(page, '\r\n');
  for (const text of ['+  18.003 mm', '+  12.500 mm', '+   0.500 mm']) {
    await sendBytes(page, `${text}\r\n`);
  }
  await panel(page)
    .getByText(/says its unit itself.*Its \+ before a size is no departure/)
    .waitFor();
  await panel(page).getByRole('button', { name: 'Keep this' }).click();
  await expect.poll(async () => (await kept(rings)).sendsUnit).toBe('says');
  await expect
    .poll(() => kept(rings))
    .toMatchObject({
      serialBaud: 4800,
      serialFrame: '7E2',
      sendsPlus: true,
    });

  // At the Bench nobody chooses the port again: it is remembered, and opened as it is set.
  await page.goto(`${server.url}/jobs/${rings.jobId}/bench`);
  await ready(page);
  await chooseGauge(page);
  await page.getByText('Bore gauge 1 is connected.').waitFor();
  await expect
    .poll(() => page.evaluate(() => window.fakePort.opened))
    .toEqual([{ baudRate: 4800, dataBits: 7, parity: 'even', stopBits: 2 }]);
  await page.waitForTimeout(150);
  await sendBytes(page, '+  18.003 mm\r\n+  18.005 mm\r\n');
  await expect.poll(() => texts(rings)).toEqual(['+18.003 mm', '+18.005 mm']);
  expect(
    (await booked(server, rings)).map(({ station, direction }) => station + direction),
  ).toEqual(['topA', 'topB']);

  // A message that was garbled on its way is no reading, whatever of it could be read.
  await sendBytes(page, '+  18.0');
  await page.evaluate(() => window.fakePort.fail('ParityError'));
  await page.getByText('A reading of Bore gauge 1 came garbled.').waitFor();
  await sendBytes(page, '07 mm\r\n+  18.006 mm\r\n');
  await expect.poll(() => texts(rings)).toHaveLength(3);

  // A slip is asked about as a typed one is: one turn of a thimble away.
  await sendBytes(page, '+  18.506 mm\r\n');
  await page.getByRole('alertdialog').waitFor();
  await page.getByRole('button', { name: 'It was a slip, strike it out' }).click();

  // What a person had half typed stands there still; an open question is dropped, and said to be.
  await page.keyboard.type('18,004');
  await page.keyboard.press('Enter');
  await notice(page).getByText('is that mark for decimals').waitFor();
  await sendBytes(page, '+  18.004 mm\r\n');
  await notice(page).getByText('18,004 was not answered, and waits to be placed.').waitFor();
  await page.keyboard.type('18.0');
  await sendBytes(page, '+  18.007 mm\r\n');
  await expect.poll(() => texts(rings)).toHaveLength(6);
  await expect.poll(() => entry(page).inputValue()).toBe('18.0');
  await page.keyboard.press('Control+a');
  await page.keyboard.press('Backspace');

  await page.evaluate(() => window.fakePort.unplug());
  await page.getByText('Bore gauge 1 was unplugged.').waitFor();
  expect(await axeFaults(page)).toEqual([]);
  await page.evaluate(() => window.fakePort.plugIn());
  await page.getByText('Bore gauge 1 is connected.').waitFor();
  await page.waitForTimeout(150);
  await sendBytes(page, '+  18.002 mm\r\n');
  await expect.poll(() => texts(rings)).toHaveLength(7);
  expect((await texts(rings)).at(-1)).toBe('+18.002 mm');
  await close();
});

async function chooseGauge(page: Page): Promise<void> {
  await page
    .getByRole('list', { name: 'Gauges' })
    .getByRole('button', { name: /Bore gauge 1/ })
    .click();
}
