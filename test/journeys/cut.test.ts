import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser, type OpenBrowser } from '../setup/open-browser';
import { startServer, type RunningServer } from '../setup/start-server.mjs';
import { desk, loadExample, phone } from './bench-story';
import {
  isBench,
  inTheBook,
  isCut,
  left,
  logged,
  onDial,
  sentence,
  startPlungers,
  tapIn,
  type,
  useGauge,
  type Plungers,
} from './cut-story';

// What is expected of each cut follows from FORMULAS section 31 and lib/rules/cuts, worked beside it.

let server: RunningServer;
let chromium: OpenBrowser;
let job: Plungers;

beforeAll(async () => {
  server = await startServer();
  chromium = await openBrowser();
  await loadExample(server); // for its gauges: Mic 2 and Bore gauge 1, 0.001, stated 0.0003
  job = await startPlungers(server);
});

afterAll(async () => {
  // The network was taken away on purpose.
  expect(chromium.faults.filter((fault) => !fault.includes('ERR_INTERNET_DISCONNECTED'))).toEqual(
    [],
  );
  await chromium.close();
  await server.remove();
});

describe('a plunger turned to its liner', () => {
  it('goes from the bore to the target, the cuts, the ratio learned, a spring pass and the last lapping, by keys alone', async () => {
    const context = await chromium.newContext(desk);
    const page = await context.newPage();
    await job.bench(page, 'L1');
    await useGauge(page, /Bore gauge 1/);
    await type(page, '18.010');
    await inTheBook(job, '18.010');
    await job.bench(page, 'P1');
    await useGauge(page, /Mic 2/);
    await type(page, '18.300');
    await expect
      .poll(() => page.getByRole('button', { name: /Next cut/ }).textContent())
      .toContain('Make P1 to L1: 18.000');

    await page.keyboard.press('c');
    await isCut(page);
    await expect.poll(() => sentence(page)).toContain('Say which slide it is cut with');
    // The dial's radius stands already; the form is filled and sent by keys.
    await page.getByLabel('One division').focus();
    await page.keyboard.type('0.01');
    await page.keyboard.press('Tab');
    await page.keyboard.type('0.01');
    await page.keyboard.press('Enter');
    await expect
      .poll(() => sentence(page))
      .toBe('Two cuts alike first; then I can say what the next will take.');
    // A third of 0.300 is 0.100 on diameter: five divisions of the radius.
    await expect
      .poll(async () => [await left(page), await onDial(page)])
      .toEqual(['0.300', '0.05']);
    await expect.poll(() => logged(page)).toEqual(['1 next 0.100']);

    await page.keyboard.press('Enter');
    await isBench(page);
    await type(page, '18.207');
    await page.keyboard.press('c');
    await isCut(page);
    await expect.poll(() => logged(page)).toEqual(['1 0.100 0.093 0.93 18.207', '2 next 0.100']);

    await page.keyboard.press('Enter');
    await isBench(page);
    await type(page, '18.113');
    await page.keyboard.press('c');
    await isCut(page);
    // (0.93 + 0.94)/2 = 0.935. To the stop, 17.9988: 0.1142 / (0.935 + 6.31 x 0.0071 x 1.22) = 0.1154: five.
    await expect.poll(() => sentence(page)).toContain('One cut, short of the target');
    await expect.poll(() => onDial(page)).toBe('0.05');
    const learned = page.getByText(/of what you ask/);
    await expect
      .poll(() => learned.textContent())
      .toContain('It takes 0.94 of what you ask, over two cuts, spread 0.007.');

    // A spring pass instead, counted apart.
    await page.keyboard.press('s');
    await isBench(page);
    await type(page, '18.111');
    await page.keyboard.press('c');
    await isCut(page);
    await expect
      .poll(async () => (await logged(page)).slice(0, 3))
      .toEqual(['1 0.100 0.093 0.93 18.207', '2 0.100 0.094 0.94 18.113', '3 spring 0.002 18.111']);
    await expect.poll(() => learned.textContent()).toContain('over two cuts');
    await expect.poll(() => learned.textContent()).toContain('One spring pass took 0.002.');

    await page.keyboard.press('Enter');
    await isBench(page);
    await type(page, '18.018');
    await page.keyboard.press('c');
    await isCut(page);
    // 0.018 / 0.9333 = 0.0193 is less than the 0.020 of one division.
    await expect
      .poll(() => sentence(page))
      .toContain('Less is left than the dial or the tool can take');

    await page.keyboard.press('Enter');
    await isBench(page);
    await type(page, '18.016');
    await page.keyboard.press('c');
    await isCut(page);
    await expect.poll(() => sentence(page)).toBe('Turned. Lap off the last 0.016.');

    await page.keyboard.press('Enter');
    await isBench(page);
    await type(page, '18.000');
    await page.keyboard.press('c');
    await isCut(page);
    await expect.poll(() => sentence(page)).toBe('P1 is made: 18.000 ± 0.001, inside.');

    await page.keyboard.press('Escape');
    await isBench(page);
    await inTheBook(job, '18.000');
    await expect.poll(async () => (await job.sheet()).cuts.length).toBe(6);
    const { cuts } = await job.sheet();
    expect(
      cuts.map(({ ordinal, spring, askedPm, dial, divisionPm }) => [
        ordinal,
        spring,
        askedPm / 1_000_000,
        dial,
        divisionPm,
      ]),
    ).toEqual([
      [1, false, 100, 'radius', 10_000_000],
      [2, false, 100, 'radius', 10_000_000],
      [3, true, 0, 'radius', 10_000_000],
      [4, false, 100, 'radius', 10_000_000],
      [5, true, 0, 'radius', 10_000_000],
      [6, false, 0, 'radius', 10_000_000],
    ]);
    expect(new Set(cuts.map(({ deviceSeq }) => deviceSeq)).size).toBe(6);

    await page.goto(`${server.url}/jobs/${job.jobId}/board`);
    await page.getByRole('row', { name: /^P1 / }).getByRole('link', { name: /in L1/ }).waitFor();
    await context.close();
  });

  it('is made to an oversize bore as it was really measured, with the metal left on the dial of the slide', async () => {
    const context = await chromium.newContext(desk);
    const page = await context.newPage();
    await job.bench(page, 'L2');
    await useGauge(page, /Bore gauge 1/);
    await type(page, '18.020'); // 0.002 over its upper limit
    await inTheBook(job, '18.020');
    await job.bench(page, 'P2');
    await useGauge(page, /Mic 2/);
    await page.goto(`${server.url}/jobs/${job.jobId}/board`);
    const p2 = page.getByRole('row', { name: /^P2 / });
    await expect.poll(() => p2.textContent()).toContain('18.010');
    await expect.poll(() => p2.textContent()).toContain('in L2, to make');

    await job.bench(page, 'P2');
    await type(page, '18.090');
    await inTheBook(job, '18.090');
    await page.goto(`${server.url}/jobs/${job.jobId}/fits`);
    const card = page.getByRole('region', { name: 'Make P2 to L2' });
    await card.waitFor();
    // The slide is the one the last cut of the job was put on with: 0.080 is four divisions of its radius.
    await expect.poll(() => card.textContent()).toContain('18.010');
    const text = (await card.textContent())!;
    expect(text).toContain('Left to turn, on diameter0.080');
    expect(text).toContain('On the radius dial, 4 divisions0.04');
    await card.getByRole('link', { name: 'Cut P2' }).click();
    await isCut(page);
    await expect.poll(() => left(page)).toBe('0.080');
    await context.close();
  });
});

describe('by thumb on a phone', () => {
  it('is told at once of a plunger cut past its stop, and makes a liner to it', async () => {
    const context = await chromium.newContext(phone);
    const page = await context.newPage();
    await job.bench(page, 'P2');
    await page.getByRole('button', { name: /Next cut/ }).tap();
    await isCut(page);
    // The first cut of P2 is proposed by those of P1: 0.080 / 0.9333 = 0.0857 on diameter is four divisions.
    await expect
      .poll(() => page.getByText(/of what you ask/).textContent())
      .toContain('It takes 0.93 of what you ask, over three cuts on P1, spread 0.006.');
    await expect.poll(() => sentence(page)).toMatch(/One cut.* Expect 18\.015 ± /);
    await expect.poll(() => onDial(page)).toBe('0.04');
    await page.getByRole('button', { name: 'One division more' }).tap();
    await expect.poll(() => onDial(page)).toBe('0.05');
    await page.getByRole('button', { name: 'Cut taken, measure' }).tap();
    await isBench(page);
    await tapIn(page, '17.996');
    const caught = page.getByRole('alert').filter({ hasText: 'Cut no more' });
    await expect
      .poll(() => caught.textContent())
      .toBe('P2 is 0.012 past 18.008, the last that suits L2. Cut no more.');
    await page.getByRole('button', { name: /Decide/ }).tap();
    await isCut(page);
    const choices = page.getByRole('region', { name: 'What becomes of P2' });
    // The free bores: L2 would have 0.024; L3 is not made yet and can be, to 17.996 and 0.010.
    await expect.poll(() => choices.textContent()).toContain('The nearest is L2: 0.024 clear');
    await expect.poll(() => choices.textContent()).toContain('L3 to 18.006');
    await choices.getByRole('button', { name: 'Make L3 to P2' }).tap();
    await page.getByText('L3 is made to P2 now.').waitFor();
    await expect
      .poll(async () => (await job.sheet()).pairs.map(({ state }) => state))
      .toEqual(['locked']);

    await page.getByRole('button', { name: 'Measure L3' }).tap();
    await isBench(page);
    await useGauge(page, /Bore gauge 1/);
    await tapIn(page, '17.940');
    await expect
      .poll(() => page.getByRole('button', { name: /Next cut/ }).textContent())
      .toContain('Make L3 to P2: 18.006');
    await page.getByRole('button', { name: /Next cut/ }).tap();
    await isCut(page);
    await page.getByText('17.940 up to 18.006').waitFor();
    for (const width of [390, 320]) {
      await page.setViewportSize({ width, height: 740 });
      await expect
        .poll(() => page.evaluate(() => document.documentElement.scrollWidth))
        .toBe(width);
    }
    await context.close();
  });

  it('scraps what nothing suits, and makes another in its place', async () => {
    const context = await chromium.newContext(phone);
    const page = await context.newPage();
    // P3 has no liner of its number free any more; it is made to the one that waits, L2.
    await job.bench(page, 'P3');
    await useGauge(page, /Mic 2/);
    await tapIn(page, '18.100');
    await page.getByRole('button', { name: /Next cut/ }).tap();
    await isCut(page);
    await page.getByRole('button', { name: 'Cut taken, measure' }).tap();
    await isBench(page);
    await tapIn(page, '17.980');
    await page.getByRole('button', { name: /Decide/ }).tap();
    await isCut(page);
    await page.getByRole('button', { name: 'Scrap it' }).tap();
    await page.getByText('P3 is scrapped.').waitFor();
    await page.getByRole('button', { name: 'Make another in its place' }).tap();
    await expect
      .poll(async () => (await job.sheet()).pieces.map(({ mark }) => mark))
      .toContain('P5');
    const p3 = (await job.sheet()).pieces.find(({ mark }) => mark === 'P3')!;
    expect(p3).toMatchObject({ fate: 'scrapped', struckAt: null });
    expect(p3.note).toContain('Scrapped at 17.980');
    await page.goto(`${server.url}/jobs/${job.jobId}/board`);
    await page.getByRole('row', { name: /^P3 / }).getByText('scrapped').waitFor();
    await context.close();
  });
});

describe('without a network', () => {
  it('takes cuts and sizes, proposes the next, and sends all of it in order when the network is back', async () => {
    const context = await chromium.newContext(desk);
    const page = await context.newPage();
    await job.bench(page, 'P4');
    await useGauge(page, /Mic 2/);
    await type(page, '18.400');
    await page.keyboard.press('c');
    await isCut(page);
    await page.getByText(/of what you ask, over \w+ cuts on P1, P2 and P3/).waitFor();
    // What they took says nothing of another tool.
    await page.getByRole('button', { name: 'Something changed' }).click();
    await page.getByRole('button', { name: 'the tool' }).click();
    await expect.poll(() => sentence(page)).toContain('Two cuts alike first');
    // Back and forward of the browser go between the two as well.
    await page.goBack();
    await isBench(page);
    await page.goForward();
    await isCut(page);
    await expect.poll(() => sentence(page)).toContain('Two cuts alike first');
    await page.keyboard.press('c');
    await isBench(page);
    const before = (await job.sheet()).cuts.length;

    await context.setOffline(true);
    for (const figure of ['18.280', '18.160']) {
      await page.keyboard.press('c');
      await isCut(page);
      await page.getByRole('button', { name: 'Cut taken, measure' }).waitFor();
      await page.keyboard.press('Enter');
      await isBench(page);
      await type(page, figure);
    }
    await page.keyboard.press('c');
    await isCut(page);
    // Asked 0.120 twice (a third of 0.390 is six divisions), got 0.120 twice.
    await expect
      .poll(async () => (await logged(page)).slice(0, 3))
      .toEqual([
        'Tool changed: learned afresh.',
        '1 0.120 0.120 1.00 18.280',
        '2 0.120 0.120 1.00 18.160',
      ]);
    await page.getByText('4 to send').waitFor();
    expect((await job.sheet()).cuts).toHaveLength(before);

    await context.setOffline(false);
    await expect.poll(async () => (await job.sheet()).cuts.length).toBe(before + 2);
    await page.getByText(/kept \d\d:\d\d/).waitFor();
    const { cuts, readings } = await job.sheet();
    const ours = cuts.slice(-2);
    expect(
      ours.map(({ lastReadingId }) => readings.find(({ id }) => id === lastReadingId)?.text),
    ).toEqual(['18.400', '18.280']);
    // A cut that was not taken after all is struck out by one press, and stays in the book.
    await page.keyboard.press('Enter');
    await isBench(page);
    await page.keyboard.press('c');
    await isCut(page);
    await expect.poll(() => sentence(page)).toContain('Measure P4');
    await page.getByRole('button', { name: 'Cut 3 was not taken' }).click();
    await expect.poll(() => left(page)).not.toBe('?');
    await expect
      .poll(async () => (await job.sheet()).cuts.filter(({ struckAt }) => struckAt !== null).length)
      .toBe(1);
    await context.close();
  });
});

describe('what no reading tells', () => {
  it('is said in one tap: something changed, the piece is warm', async () => {
    const context = await chromium.newContext(desk);
    const page = await context.newPage();
    await job.bench(page, 'P4');
    await page.keyboard.press('c');
    await isCut(page);
    await page.getByText(/of what you ask, over two cuts/).waitFor();
    await page.getByRole('button', { name: 'Something changed' }).click();
    await expect.poll(() => sentence(page)).toContain('Two cuts alike first');
    await expect.poll(() => page.getByText(/of what you ask/).count()).toBe(0);
    await page.getByRole('button', { name: 'the insert' }).click();
    await page.getByRole('button', { name: 'The piece is warm' }).click();
    await page.getByLabel('Piece, °C').fill('60');
    // 18.160 of steel, 11.7e-6 a degree, 40 degrees: 0.0085.
    await page
      .getByText('The piece is warm: at 60 °C about 0.008 larger than at 20 °C. Wait.')
      .waitFor();
    await page.getByRole('button', { name: 'nothing' }).click();
    await page.getByText(/of what you ask, over two cuts/).waitFor();
    // Another slide, with an inch dial: what stood on it is kept with the cut, and said below what was asked.
    await page.getByRole('button', { name: 'The slide' }).click();
    await page.getByRole('textbox', { name: 'One division' }).fill('0.001 in');
    await page.getByRole('textbox', { name: 'Machine or tool, by name' }).fill('Big lathe');
    await page.getByRole('button', { name: 'This is the slide' }).click();
    await page.getByRole('button', { name: 'The slide: Big lathe' }).waitFor();
    await expect.poll(() => logged(page)).toContainEqual(expect.stringMatching(/^3 next .* in$/));
    await page.getByRole('button', { name: 'Cut taken, measure' }).click();
    await isBench(page);
    await type(page, '18.120');
    await inTheBook(job, '18.120');
    await page.keyboard.press('c');
    await isCut(page);
    await expect
      .poll(() => logged(page))
      .toContainEqual(expect.stringMatching(/^3 0\.\d{3} dial 0\.\d{3} in 0\.040/));
    await page.setViewportSize({ width: 320, height: 740 });
    await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBe(320);
    const last = (await job.sheet()).cuts.find(({ dialUnit }) => dialUnit === 'in');
    expect(last).toMatchObject({ divisionPm: 25_400_000, dial: 'radius', tool: 'Big lathe' });
    await context.close();
  });
});
