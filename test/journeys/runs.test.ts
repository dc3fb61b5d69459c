import { readFileSync } from 'node:fs';
import axe, { type AxeResults } from 'axe-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { openBrowser, type OpenBrowser } from '../setup/open-browser';
import { startServer, type RunningServer } from '../setup/start-server.mjs';
import { desk, loadExample, phone, ready } from './bench-story';
import { chartSays, log, measure, next, sheetAt, startPins } from './runs-story';

// Growing one thousandth a pin with a scatter of a few tenths: micrometres from 10.000.
const growing = [-12, -11, -10, -10, -8, -7, -6, -6, -4, -3];

let server: RunningServer;
let chromium: OpenBrowser;

beforeAll(async () => {
  server = await startServer();
  chromium = await openBrowser();
  await loadExample(server); // for its gauges
});

afterAll(async () => {
  expect(chromium.faults).toEqual([]);
  await chromium.close();
  await server.remove();
});

async function open(path: string, options: BrowserContextOptions = desk): Promise<Page> {
  const page = await (await chromium.newContext(options)).newPage();
  await page.goto(`${server.url}${path}`);
  return page;
}
const panel = (page: Page, name: string | RegExp) => page.getByRole('region', { name });

it('a run typed at the Bench in one tab drives the chart in another, dots only until five', async () => {
  const pins = await startPins(server);
  const runs = await open(`/jobs/${pins.jobId}/runs`);
  await panel(runs, 'Nothing measured yet').waitFor();
  const bench = await open(`/jobs/${pins.jobId}/bench?feature=${pins.featureId}`);
  await ready(bench);
  await bench.getByRole('button', { name: /Gauge and unit/ }).click();
  await bench.getByRole('dialog').getByRole('button', { name: /Mic 2/ }).click();

  const figures = ['9.988', '9.990', '9.989', '9.991'];
  for (const [i, figure] of figures.entries()) {
    await log(bench, figure);
    await expect
      .poll(() => chartSays(runs))
      .toContain(`Run chart of ${i + 1} ${i === 0 ? 'piece' : 'pieces'}.`);
    await next(bench, `Q${i + 2}`);
  }
  // Four pieces: dots and limits, no line, no figure of any drift, no capability.
  await expect
    .poll(() => chartSays(runs))
    .toBe(
      'Run chart of 4 pieces. Limits 9.980 to 10.020 millimetres. Last piece Q4, 9.991. Too few to draw a line. Four: too few to draw a line through. Here are the dots.',
    );
  await expect.poll(() => runs.getByText('Scatter about the line').count()).toBe(0);
  await runs.getByText('Four pieces are too few to say').waitFor();
  await runs.getByText('Measure Q5 next, and each piece until there is a line.').waitFor();

  for (const [i, figure] of ['9.993', '9.992', '9.994'].entries()) {
    await log(bench, figure);
    await next(bench, `Q${i + 6}`);
  }
  await expect.poll(() => chartSays(runs)).toContain('Run chart of 7 pieces.');
  await runs.getByText('Scatter about the line').waitFor();
  // The band meets 10.020 after the 25th: eighteen more, and six samples up to there are one in three.
  await runs
    .getByText('Measure Q10 next: every third piece, six times before it meets the limit.')
    .waitFor();
  await runs.getByRole('link', { name: 'Log Q10' }).waitFor();
  await bench.context().close();
  await runs.context().close();
});

it('an odd piece is told with its likely slip, set aside with a reason, and the drift shown both ways', async () => {
  const pins = await startPins(server);
  // Q8 reads 10.040 where the line says 9.994: two figures of 10.004 the wrong way round would do it.
  await measure(
    server,
    pins,
    growing.map((um, i) => (i === 7 ? 40 : um)),
  );
  const page = await open(`/jobs/${pins.jobId}/runs`);
  const odd = panel(page, 'Q8 stands off the line');
  await odd.getByText('0.045 above where the others put it.').waitFor();
  await expect.poll(() => chartSays(page)).toContain('Run chart of 10 pieces.');
  const both = panel(page, 'With it and without');
  const without = await both.locator('dd').nth(1).textContent();
  await expect.poll(() => both.locator('dd').first().textContent()).not.toBe(without);

  const again = odd.getByRole('link', { name: 'Measure it again' });
  await expect.poll(() => again.getAttribute('href')).toContain(`piece=${pins.pieceIds[7]}`);
  await odd.getByLabel('Reason').fill('swarf on the anvil');
  await odd.getByRole('button', { name: 'Set it aside' }).click();

  const aside = panel(page, 'Set aside');
  await aside.getByText('swarf on the anvil').waitFor();
  await expect.poll(() => chartSays(page)).toContain('Run chart of 9 pieces.');
  await expect.poll(() => aside.locator('dd').nth(1).textContent()).toBe(without);
  await expect
    .poll(async () => (await sheetAt(server, pins.jobId)).corrections)
    .toMatchObject([{ kind: 'void', reason: 'swarf on the anvil' }]);
  expect((await sheetAt(server, pins.jobId)).readings).toHaveLength(10);
  await page.getByText('The same in a table').first().click();
  await page.getByRole('row', { name: /Q8.*10\.040.*set aside, swarf on the anvil/ }).waitFor();

  await aside.getByRole('button', { name: 'Put back' }).click();
  await panel(page, 'Q8 stands off the line').waitFor();
  await panel(page, 'Q8 stands off the line').getByRole('button', { name: 'It is right' }).click();
  await page.getByText('Said to be right; it counts.').waitFor();
  await expect.poll(() => chartSays(page)).toContain('Run chart of 10 pieces.');
  await page.context().close();
});

it('an event takes one tap from the Bench and one from the chart, is put right, struck and put back', async () => {
  const pins = await startPins(server);
  await measure(server, pins, growing.slice(0, 8));
  const runs = await open(`/jobs/${pins.jobId}/runs`);
  const thumb = await open(`/jobs/${pins.jobId}/bench?feature=${pins.featureId}`, phone);
  await ready(thumb);
  const row = thumb.getByRole('region', { name: 'Note an event' });
  await row.getByText('After Q8').waitFor();
  await row.getByRole('button', { name: 'Insert changed' }).tap();
  await row.getByText('After Q8: insert changed').waitFor();
  await expect.poll(() => chartSays(runs)).toContain('Too few to draw a line.');

  await runs
    .getByRole('region', { name: 'Note an event' })
    .getByRole('button', { name: 'Break' })
    .click();
  const list = panel(runs, 'Events');
  await list.getByText('Break').waitFor();
  await expect
    .poll(async () => (await sheetAt(server, pins.jobId)).runEvents.map(({ kind }) => kind).sort())
    .toEqual(['break', 'insert changed']);

  // It was after Q5, and not Q8.
  const insert = list.getByRole('listitem').filter({ hasText: 'Insert changed' });
  await insert.getByRole('button', { name: 'Put right' }).click();
  const form = runs.getByRole('form', { name: 'Event put right' });
  await form.getByLabel('After piece').fill('Q99');
  await form.getByRole('button', { name: 'Keep it' }).click();
  await form.getByText('No piece is called Q99.').waitFor();
  await form.getByLabel('After piece').fill('q5');
  await form.getByLabel('Remark').fill('chipped');
  await form.getByRole('button', { name: 'Keep it' }).click();
  await list.getByText(/after Q5, .*chipped/).waitFor();

  await insert.getByRole('button', { name: 'Strike out' }).click();
  await expect.poll(() => chartSays(runs)).not.toContain('Too few to draw a line.');
  await insert.getByRole('button', { name: 'Put back' }).click();
  await expect.poll(() => chartSays(runs)).toContain('Too few to draw a line.');
  const kept = async () =>
    (await sheetAt(server, pins.jobId)).runEvents.find(({ kind }) => kind === 'insert changed');
  await expect.poll(kept).toMatchObject({
    afterOrdinal: 5,
    note: 'chipped',
    struckAt: null,
    version: 4,
  });
  await thumb.context().close();
  await runs.context().close();
});

it('an offset is put in on the dial it has, and followed to its effect', async () => {
  const pins = await startPins(server);
  await measure(server, pins, growing);
  const page = await open(`/jobs/${pins.jobId}/runs`);
  const row = page.getByRole('region', { name: 'Note an event' });
  await row.getByRole('button', { name: 'Offset moved' }).click();
  const form = page.getByRole('form', { name: 'New event' });
  await form.getByLabel('Moved by, on that dial').fill('-0.005');
  await form.getByRole('button', { name: 'Keep it' }).click();
  // -0.005 on the radius dial is -0.010 on diameter; the line before says 9.998 for Q11.
  const waiting = panel(page, 'Offset \u22120.010');
  await waiting.getByText('Q11 should come out near 9.988').waitFor();
  await panel(page, 'Events').getByText('\u22120.005 on the radius dial').waitFor();
  await expect
    .poll(async () => (await sheetAt(server, pins.jobId)).runEvents)
    .toMatchObject([
      { kind: 'offset moved', offsetPm: -10_000_000, offsetDial: 'radius', afterOrdinal: 10 },
    ]);

  await measure(server, pins, [-12], { first: 11 });
  await panel(page, 'The offset took').getByText('Q11 came out at 9.988').waitFor();

  // The same offset where the dial counts the radius and was read as the diameter: half of it.
  const other = await startPins(server);
  await measure(server, other, growing);
  await page.goto(`${server.url}/jobs/${other.jobId}/runs`);
  await row.getByRole('button', { name: 'Offset moved' }).click();
  await form.getByLabel('Moved by, on that dial').fill('-0.010');
  await form.getByRole('button', { name: 'Keep it' }).click();
  await measure(server, other, [-12], { first: 11 });
  await panel(page, 'The offset did not come out').getByText('It is half').waitFor();
  await page.context().close();
});

it('a control chart is chosen, with its stretch and its rules, by keyboard alone', async () => {
  const pins = await startPins(server, { quantity: 30 });
  const scatter = [1, -2, 2, 0, -1, 2, -2, 1, 0, -1, 2, -2, 1, 0, 2, -1, 0, 1, -2, 1];
  await measure(server, pins, [...scatter, 1, 9, -1]);
  const page = await open(`/jobs/${pins.jobId}/runs`);
  const section = panel(page, 'Control chart');
  await section.getByText('Choose one').focus();
  await page.keyboard.press('Enter');
  await section.getByLabel('Chart', { exact: true }).focus();
  await page.keyboard.press('s'); // Single pieces
  await section.getByText('Limits from 23 pieces, Q1 to Q23.').waitFor();
  await section.getByText('Q22: above three sigma. Something happened there.').waitFor();

  await section.getByLabel('to piece').focus();
  await page.keyboard.type('Q12');
  await page.keyboard.press('Enter');
  await section
    .getByText('Trial limits, from 12 pieces, Q1 to Q12: eight more settle them')
    .waitFor();
  const image = section.getByRole('img').first();
  await expect
    .poll(() => image.getAttribute('aria-label'))
    .toContain('Control chart, single pieces, 23 points.');
  await expect.poll(() => section.getByRole('img').count()).toBe(2);

  await section.getByLabel('One beyond three sigma').focus();
  await page.keyboard.press('Space');
  await expect.poll(() => section.getByText('above three sigma').count()).toBe(0);
  await expect
    .poll(async () => (await sheetAt(server, pins.jobId)).runs[0])
    .toMatchObject({ control: 'single pieces', baseTo: 12, patterns: ['nine on one side'] });
  await section.getByText('The same in a table').first().click();
  await section.getByRole('row', { name: /^Q22 10\.0090/ }).waitFor();
  await page.getByText('Control chart', { exact: true }).last().click();
  await expect.poll(() => panel(page, 'Run chart').count()).toBe(0);
  await page.context().close();
});

it('the sums are set to a reference value and an interval, kept with the run, and refused out of range', async () => {
  const pins = await startPins(server, { quantity: 30, run: { control: 'cusum' } });
  const scatter = [1, -2, 2, 0, -1, 2, -2, 1, 0, -1, 2, -2, 1, 0, 2, -1, 0, 1, -2, 1];
  await measure(server, pins, scatter);
  const page = await open(`/jobs/${pins.jobId}/runs`, phone);
  const section = panel(page, 'Control chart');
  await section.getByText('Decision interval 5 sigma.').waitFor();
  await section.getByText('Chart, groups, limits, rules').tap();
  const form = section.getByRole('form', { name: 'Settings of the chart' });
  await form.getByLabel('Decision interval, in sigma').fill('40');
  await form.getByRole('button', { name: 'Set these' }).tap();
  await form.getByText('A figure from 1 to 20, to the thousandth.').waitFor();
  expect((await sheetAt(server, pins.jobId)).runs[0]!.sumDecisionMilli).toBe(5000);
  await form.getByLabel('Decision interval, in sigma').fill('4');
  await form.getByLabel('Reference value, in sigma').fill('0,75');
  await form.getByRole('button', { name: 'Set these' }).tap();
  await section.getByText('Reference value 0.75 sigma').waitFor();
  await section.getByText('Decision interval 4 sigma.').waitFor();
  await expect
    .poll(async () => (await sheetAt(server, pins.jobId)).runs[0])
    .toMatchObject({ control: 'cusum', sumReferenceMilli: 750, sumDecisionMilli: 4000 });
  await page.context().close();
});

it('the run chart and the control chart are saved as PNG, SVG and CSV', async () => {
  const pins = await startPins(server, { quantity: 30, run: { control: 'single pieces' } });
  await measure(server, pins, growing);
  const page = await open(`/jobs/${pins.jobId}/runs`, { ...phone, acceptDownloads: true });
  const save = async (chart: string, name: string) => {
    const download = page.waitForEvent('download');
    await panel(page, chart)
      .getByRole('button', { name: `Save as ${name}` })
      .tap();
    const file = await download;
    expect(file.suggestedFilename()).toBe(
      `pins-pin-outside-${chart.toLowerCase().replace(' ', '-')}.${name.toLowerCase()}`,
    );
    return readFileSync(await file.path());
  };
  const high: number[] = [];
  for (const [chart, row] of [
    ['Run chart', /^1,Q1,9\.988000,0\.00\d+,9\.980000,10\.020000,\r$/m],
    [
      'Control chart',
      /^2,Q2,9\.989000,9\.99\d+,9\.98\d+,\d+\.\d+,0\.001000,0\.\d+,0\.000000,0\.\d+,.*\r$/m,
    ],
  ] as const) {
    await panel(page, chart).getByText('Save this chart').tap();
    const png = await save(chart, 'PNG');
    expect([...png.subarray(1, 4)]).toEqual([...Buffer.from('PNG')]);
    high.push(png.readUInt32BE(20) / png.readUInt32BE(16));
    const svg = (await save(chart, 'SVG')).toString();
    expect(svg).toContain(
      `<title>${chart === 'Run chart' ? 'Run chart of 10' : 'Control chart, single'} pieces`,
    );
    expect(svg.match(/<circle /g)!.length).toBeGreaterThanOrEqual(chart === 'Run chart' ? 10 : 9);
    const rows = (await save(chart, 'CSV')).toString();
    expect(rows.trimEnd().split('\r\n')).toHaveLength(11);
    expect(rows).toMatch(row);
  }
  // Both plots of the control chart stand in its picture: 300 and 200 high, where the run chart has 460.
  expect(high[1]! / high[0]!).toBeCloseTo(500 / 460, 1);
  await page.context().close();
});

it('features alike are chosen on Runs, and charted from their own nominals', async () => {
  const pins = await startPins(server, { quantity: 8, also: true });
  const page = await open(`/jobs/${pins.jobId}/runs`);
  await page.getByText('Another run').click();
  await page.getByRole('button', { name: 'Strike out the run shown' }).click();
  await page.getByText('No run yet.').waitFor();
  await page.getByLabel('Pin, seat').check();
  await page.getByRole('button', { name: 'Start the run' }).click();
  await page.getByRole('heading', { name: 'Pin, outside and one alike' }).waitFor();
  await measure(server, pins, [-4, -3, -2]);
  await measure(server, pins, [5, 6], { featureId: pins.alsoId, nominalMm: 8 });
  await expect
    .poll(() => chartSays(page))
    .toContain('Limits \u22120.020 to +0.020 millimetres. Last turn Q3 outside, \u22120.002.');
  await page.getByText('from own nominal, in 0.001 mm').waitFor();
  await page.getByText('The same in a table').first().click();
  const firstMarks = async () => (await page.getByRole('rowheader').allTextContents()).slice(0, 5);
  await expect
    .poll(firstMarks)
    .toEqual(['Q1 outside', 'Q1 seat', 'Q2 outside', 'Q2 seat', 'Q3 outside']);
  // The closer look has the same turns, and follows what is read of either feature.
  await page.getByRole('link', { name: 'Look closer' }).click();
  await page.getByRole('heading', { name: 'Pin, outside and one alike, closer' }).waitFor();
  const says = () => page.getByRole('status').first().textContent();
  await expect
    .poll(says)
    .toBe(
      'Turns 1 to 16 of 16, 5 measured. Smallest \u22120.004 at Q1 outside, largest +0.006 at Q2 seat. Limits: no smaller than \u22120.020, no larger than +0.020. Each from its own nominal.',
    );
  await measure(server, pins, [9], { featureId: pins.alsoId, nominalMm: 8, first: 3 });
  await expect
    .poll(says)
    .toContain('6 measured. Smallest \u22120.004 at Q1 outside, largest +0.009 at Q3 seat.');
  await page.getByText('The same in a table').click();
  await page.getByRole('row', { name: 'Q3 seat +0.009' }).waitFor();
  await page.getByRole('link', { name: 'Back to the run' }).click();
  await page.getByRole('heading', { name: 'Pin, outside and one alike' }).waitFor();
  await page.context().close();
});

it('prints the chart, the words and the events, and nothing that is pressed', async () => {
  const page = await open('/jobs/0195920c-0000-7000-8001-000000000001/runs');
  await expect.poll(() => chartSays(page)).toContain('W11');
  // A4 less its margins, at 96 to the inch.
  await page.setViewportSize({ width: 699, height: 1047 });
  await page.emulateMedia({ media: 'print' });
  await page.getByText('Three more, then act').waitFor();
  await panel(page, 'Events').getByText('Insert changed').waitFor();
  // The table behind the chart stands open, in black, though nobody has opened it.
  const row = page.getByRole('row', { name: /^W11 11\.99/ });
  await expect.poll(() => row.locator('td').first().isVisible()).toBe(true);
  await expect.poll(() => row.evaluate((one) => getComputedStyle(one).color)).toBe('rgb(0, 0, 0)');
  for (const role of ['button', 'radio', 'textbox', 'combobox'] as const) {
    expect(await page.getByRole(role).count(), role).toBe(0);
  }
  for (const words of ['After W11', 'By zones', 'Control chart']) {
    expect(await page.getByText(words, { exact: true }).isVisible(), words).toBe(false);
  }
  const chart = await page.locator('canvas').first().boundingBox();
  expect(chart!.x + chart!.width).toBeLessThanOrEqual(699);
  await expect
    .poll(() => page.evaluate(() => document.documentElement.scrollWidth))
    .toBeLessThanOrEqual(699);
  const paper = await page.pdf({ format: 'A4' });
  expect(paper.length).toBeGreaterThan(20_000);
  await page.emulateMedia({ media: 'screen' });
  await expect.poll(() => row.isVisible()).toBe(false);
  await page.context().close();
});

it.each([
  ['a phone in glare', { viewport: { width: 320, height: 640 }, hasTouch: true }, 'glare'],
  ['a tablet in the dark', { viewport: { width: 768, height: 1024 } }, 'dark'],
  ['a desk', desk, 'light'],
])('every panel there is is sound on %s, and nothing scrolls sideways', async (_, size, theme) => {
  const pins = await startPins(server, {
    quantity: 30,
    run: { control: 'single pieces', patterns: ['beyond three sigma'] },
  });
  await measure(server, pins, [...growing, ...growing.map((um, i) => (i === 6 ? 15 : um))]);
  const page = await open(`/jobs/${pins.jobId}/runs`, size);
  await page.evaluate((t) => document.documentElement.setAttribute('data-theme', t), theme);
  await panel(page, 'Q17 stands off the line').waitFor();
  await panel(page, 'Control chart').getByText('Chart, groups, limits, rules').click();
  await panel(page, 'Control chart').getByLabel('Taken at a time').waitFor();
  await page.getByRole('button', { name: 'Offset moved' }).click();
  await page.getByRole('form', { name: 'New event' }).waitFor();
  const [wide, room] = await page.evaluate(() => [
    document.documentElement.scrollWidth,
    document.documentElement.clientWidth,
  ]);
  expect(wide).toBeLessThanOrEqual(room!);
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() =>
    (globalThis as unknown as { axe: { run: () => Promise<AxeResults> } }).axe.run(),
  );
  const grave = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
  expect(grave.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(' ')}`)).toEqual([]);
  await page.context().close();
});
