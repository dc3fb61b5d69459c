import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { freshDatabase } from '../setup/fresh-database';
import { openBrowser, type OpenBrowser } from '../setup/open-browser';
import { startServer, type RunningServer } from '../setup/start-server.mjs';
import { phone } from './bench-story';
import { isBench, isCut, logged, onDial, sentence, type } from './cut-story';
import {
  benchAt,
  cell,
  fanSheet,
  fitsOf,
  keepSizes,
  pairRow,
  pairs,
  patch,
  startFan,
  typeReadings,
  type Fan,
} from './fits-story';

// From a bore that was measured to a pair that is marked and recorded, and what happens when what it stood on
// changes afterwards. Sizes are invented; every clearance is their difference.

let server: RunningServer;
let chromium: OpenBrowser;
let page: Page;
/** Another tab of the same device: its Bench. */
let bench: Page;
let fan: Fan;

beforeAll(async () => {
  server = await startServer({ databaseUrl: await freshDatabase() });
  chromium = await openBrowser();
  const context = await chromium.newContext({ viewport: { width: 1280, height: 900 } });
  page = await context.newPage();
  bench = await context.newPage();
  fan = await startFan(server, 4);
});

afterAll(async () => {
  await chromium.close();
  await server.remove();
});

it('measures a bore at the Bench, which tells what to make its piston to', async () => {
  await page.goto(`${server.url}/settings`);
  await page.getByLabel('Another name').fill('M. Hale');
  await page.getByRole('button', { name: 'Add' }).click();
  await page.getByRole('radio', { name: 'M. Hale' }).waitFor();
  const texts = ['18.010', '18.010', '18.010', '18.010', '18.010', '18.010'];
  await typeReadings(fan, bench, 'L1', texts);
  await page.goto(fitsOf(fan));
  const card = page.getByRole('region', { name: 'Make P1 to L1' });
  await expect.poll(() => card.innerText()).toContain('18.000');
  await cell(page, 'P1 for L1: to make, to 18.000, aim 0.010 clear').waitFor();
});

it('is cut to that target: each cut is asked, what came off is noted, and the next is proposed', async () => {
  await typeReadings(fan, bench, 'P1', ['18.062']);
  const card = page.getByRole('region', { name: 'Make P1 to L1' });
  await expect.poll(() => card.innerText()).toMatch(/Left to turn, on diameter\s+0\.062/);
  await bench.keyboard.press('c');
  await isCut(bench);
  await bench.getByLabel('One division').fill('0.01');
  await bench.getByRole('button', { name: 'This is the slide' }).click();
  // A third of 0.062 is 0.021 on diameter: one whole division of the radius.
  await expect.poll(() => logged(bench)).toEqual(['1 next 0.020']);
  await measureAfterCut('18.043');
  await expect.poll(() => logged(bench)).toEqual(['1 0.020 0.019 0.95 18.043', '2 next 0.020']);
  await measureAfterCut('18.024');
  await expect
    .poll(async () => (await logged(bench)).slice(0, 2))
    .toEqual(['1 0.020 0.019 0.95 18.043', '2 0.020 0.019 0.95 18.024']);
  // It takes 0.95 of what is asked: of another 0.020 the 0.019 that leaves 18.005.
  await expect.poll(() => sentence(bench)).toContain('Expect 18.005');
  await expect.poll(() => onDial(bench)).toBe('0.01');
  await measureAfterCut('18.005');
  await expect.poll(() => sentence(bench)).toContain('A spring pass, then lap.');
  await measureAfterCut('18.003');
  await expect.poll(() => sentence(bench)).toBe('Turned. Lap off the last 0.003.');
  await measureAfterCut('18.000');
  await expect.poll(() => sentence(bench)).toBe('P1 is made: 18.000 ± 0.001, inside.');
  await expect.poll(async () => (await fanSheet(fan)).cuts.length).toBe(5);
  const [first] = (await fanSheet(fan)).cuts;
  const l1 = (await fanSheet(fan)).pieces.find(({ mark }) => mark === 'L1')!;
  expect(first).toMatchObject({
    askedPm: 20_000_000,
    beforePm: 18_062_000_000,
    partnerPieceId: l1.id,
  });
});

/** The cut that is proposed is taken, and measured; back at the Cut screen. */
async function measureAfterCut(text: string): Promise<void> {
  await bench.keyboard.press('Enter');
  await isBench(bench);
  await type(bench, text);
  await expect
    .poll(async () => (await fanSheet(fan)).readings.at(-1)?.text, { timeout: 20_000 })
    .toBe(text);
  await bench.keyboard.press('c');
  await isCut(bench);
}

it('has the piston in the table and paired as soon as it is measured, on a page that is open', async () => {
  const texts = ['17.999', '18.000', '18.000', '18.001', '18.000'];
  await typeReadings(fan, bench, 'P1', texts, 1);
  await cell(page, /^P1 in L1: 0\.010 clear, inside, .* likely inside, chosen$/).waitFor();
  await pairRow(page, 'P1', 'L1').getByText('inside').waitFor();
});

it('puts the rest together so that the worst pair is best, sorted by size', async () => {
  // L4 4, L3 7, L1 10, L2 13 with P2 -6, P3 -3, P1 0, P4 3: each 10 clear along the diagonal.
  await keepSizes(fan, { L2: 13, L3: 7, L4: 4, P2: -6, P3: -3, P4: 3 });
  await cell(page, /^P4 in L2: 0\.010 clear.*chosen$/).waitFor();
  const heads = page.getByRole('grid').getByRole('rowheader');
  await expect.poll(() => heads.allInnerTexts()).toEqual([
    'L4 18.004',
    'L3 18.007',
    'L1 18.010',
    'L2 18.013',
  ]);
  await expect.poll(() => page.getByRole('grid').getAttribute('aria-rowcount')).toBe('5');
  for (const [external, internal] of [['P2', 'L4'], ['P3', 'L3'], ['P1', 'L1']]) {
    await cell(page, new RegExp(`^${external} in ${internal}: 0.010 clear.*chosen$`)).waitFor();
  } // prettier-ignore
  await cell(page, /^P4 in L4: 0\.001 clear, outside, 0\.007 too tight, under 0\.1 % likely/).waitFor();
}); // prettier-ignore

it('is walked by the arrows, and says how sure the pair under them is', async () => {
  await page.getByRole('grid').getByRole('gridcell').first().focus();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowDown');
  const said = page.getByRole('group', { name: 'Chosen in the table' });
  await said.getByText(/^P3 in L3: 0\.010 clear, inside, over 99\.9 % likely inside/).waitFor();
  await page.keyboard.press('Control+End');
  await said.getByText(/^P4 in L2/).waitFor();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowLeft');
  await said.getByText(/^P1 in L1/).waitFor();
});

it('locks a pair and keeps one apart, and says who moved because of it', async () => {
  const said = page.getByRole('group', { name: 'Chosen in the table' });
  await cell(page, /^P1 in L3/).click();
  await said.getByRole('button', { name: 'Keep together' }).click();
  // 0.007 is too tight, and metal can still come off: P1 is to be made to L3.
  await cell(page, 'P1 for L3: to make, to 17.997, aim 0.010 clear').waitFor();
  // P3 at -3 would have 0.007 in L4 and 0.013 in L1: it is alone.
  await pairs(page)
    .getByText(/^P3 has lost its liner: in L3 it has 0\.010 clear, and P1 has that now/)
    .waitFor();
  await expect.poll(() => pairs(page).getByText('P1 has lost its liner').count()).toBe(0);
  await pairs(page).getByText('No set of pairs puts all 3 inside: 2 is the most.').waitFor();
  // L1 is 10, P3 is -3: metal would have to be put on.
  await pairs(page).getByText('Make P3 again, to 18.000, for L1.').waitFor();
  // The columns have another order now, and the pair that was chosen is still the one.
  await said.getByText(/^P1 for L3: to make/).waitFor();
  await said.getByRole('button', { name: 'Leave it to the pairing' }).click();
  await cell(page, /^P1 in L1.*chosen$/).waitFor();
  await expect.poll(() => pairs(page).getByText('has lost its liner').count()).toBe(0);
  await cell(page, /^P2 in L4/).click();
  await said.getByRole('button', { name: 'Keep apart' }).click();
  await cell(page, /^P2 in L4: 0\.010 clear.*kept apart$/).waitFor();
  await said.getByRole('button', { name: 'Leave it to the pairing' }).click();
  await cell(page, /^P2 in L4.*chosen$/).waitFor();
});

it('leaves a piece out by its head, with a line through its row, and takes it in again', async () => {
  const said = page.getByRole('group', { name: 'Chosen in the table' });
  await page.getByRole('grid').getByRole('rowheader', { name: /^L2/ }).click();
  await said.getByRole('button', { name: 'Leave L2 out' }).click();
  await page.getByRole('grid').getByRole('rowheader', { name: 'L2, 18.013, left out' }).waitFor();
  await pairs(page).getByText('P4', { exact: true }).first().waitFor();
  expect((await fanSheet(fan)).fits[0]!.leftOutPieceIds).toHaveLength(1);
  await said.getByRole('button', { name: 'Take L2 in again' }).click();
  await cell(page, /^P4 in L2.*chosen$/).waitFor();
});

it('keeps what the pairing is to be best at with the fit', async () => {
  await page.getByText('Most likely all inside', { exact: true }).click();
  await pairs(page).getByText(/^Chosen so that all are most likely inside: \d/).waitFor();
  await page.reload();
  await pairs(page).getByText(/^Chosen so that all are most likely inside: \d/).waitFor();
  expect((await fanSheet(fan)).fits[0]!.purpose).toBe('most likely');
  await page.getByText('Worst pair best', { exact: true }).click();
  await pairs(page).getByText('Chosen so the worst pair is best.').waitFor();
}); // prettier-ignore

/** What has the focus, in its own words. */
const focused = (on: Page) =>
  on.evaluate(() => document.activeElement?.textContent?.replaceAll(/\s+/g, ' ').slice(0, 60));

it('makes a pair final, with its mark, its clearance as made, who and when', async () => {
  await pairs(page).getByRole('button', { name: 'Make final P1 in L1' }).click();
  const row = pairRow(page, 'P1', 'L1');
  await row.getByText(/final, mark 1, made with 0\.010 ± 0\.00\d clear, M\. Hale, \d+ /).waitFor();
  await cell(page, /^P1 in L1.*final$/).waitFor();
  // The button is gone; the keyboard goes on from the row, and reaches the next button with Tab.
  await expect.poll(() => focused(page)).toContain('P1 in L1');
  await page.keyboard.press('Tab');
  await expect.poll(() => focused(page)).toBe('Undo the pair P1 in L1');
  await page.keyboard.press('Enter');
  await row.getByRole('button', { name: 'Leave it final' }).press('Enter');
  await expect.poll(() => focused(page)).toContain('P1 in L1');
  const kept = (await fanSheet(fan)).pairs.find(({ state }) => state === 'final')!;
  expect(kept).toMatchObject({ mark: '1', clearancePm: 10_000_000 });
  expect(kept.looks).toHaveLength(1);
  expect(kept.looks![0]!.external!.readings).toHaveLength(6);
});

it('flags it after a reading is taken back at the Bench, and changes nothing by itself', async () => {
  await benchAt(fan, bench, 'P1');
  await bench.keyboard.press('v');
  const row = pairRow(page, 'P1', 'L1');
  await row.getByText('A reading of P1 was taken back: 18.000.').waitFor();
  await row.getByText(/^Recorded with 0\.010 ± 0\.00\d clear/).waitFor();
  await row.getByText('final, mark 1').waitFor();
  await expect.poll(() => cell(page, /^P1 in L1.*final$/).getAttribute('data-flag')).toBe('');
  const board = await page.context().newPage();
  await board.goto(fitsOf(fan).replace(/fits$/, 'board'));
  await board.getByText(/in L1 was recorded with 0\.010 clear/).waitFor();
  await board.close();
});

it('loses the flag when somebody looks at it and lets it stand, which is on its record', async () => {
  const row = pairRow(page, 'P1', 'L1');
  await row.getByRole('button', { name: /^Looked at: let it stand/ }).click();
  await expect.poll(() => row.getByText('was taken back').count()).toBe(0);
  await expect.poll(() => focused(page)).toContain('P1 in L1');
  await row.getByText('Record').click();
  await row.getByText(/made final by M\. Hale, 0\.010 ± /).waitFor();
  await row.getByText(/let stand by M\. Hale, 0\.010 ± /).waitFor();
});

it('is flagged when a piece of it is scrapped, on a sheet that is whole, and no longer when it is taken up again', async () => {
  const piece = (await fanSheet(fan)).pieces.find(({ mark }) => mark === 'P1')!;
  await patch(fan, `pieces/${piece.id}`, { fate: 'scrapped' });
  const row = pairRow(page, 'P1', 'L1');
  await row.getByText('P1 was scrapped.').waitFor();
  await row.getByRole('button', { name: 'Undo the pair P1 in L1' }).waitFor();
  await page.getByRole('heading', { name: 'Hot and cold' }).waitFor();
  await patch(fan, `pieces/${piece.id}`, { fate: null });
  await expect.poll(() => row.getByText('was scrapped').count()).toBe(0);
  await cell(page, /^P1 in L1.*final$/).waitFor();
});

it('is flagged again when its gauge is found to be worse than was said', async () => {
  await patch(fan, `gauges/${fan.gaugeId}`, { uncertaintyPm: 3_000_000 });
  const row = pairRow(page, 'P1', 'L1');
  await row.getByText('Mic 1 is known to 0.003 now; it was 0.0004.').waitFor();
  // Pairs that are not final just stand as they now are.
  await cell(page, /^P4 in L2: 0\.010 clear, unsure/).waitFor();
  await patch(fan, `gauges/${fan.gaugeId}`, { uncertaintyPm: 400_000 });
  await expect.poll(() => row.getByText('is known to').count()).toBe(0);
});

it('is undone only with a reason, and stays to be read', async () => {
  await keepSizes(fan, { P1: 4 });
  const row = pairRow(page, 'P1', 'L1');
  await row.getByText(/^6 readings of P1 were added: 18\.004/).waitFor();
  await row.getByRole('button', { name: 'Undo the pair P1 in L1' }).click();
  await row.getByRole('button', { name: 'Undo it' }).click();
  await row.getByText('Say why: the record keeps it.').waitFor();
  await row.getByLabel('Why it is undone').fill('scored at assembly');
  await row.getByRole('button', { name: 'Undo it' }).click();
  const undone = page.getByRole('region', { name: 'Pairs undone' });
  await undone.getByText(/undone by M\. Hale: scored at assembly\. It was pair 1, 0\.010 clear\./).waitFor();
  const kept = (await fanSheet(fan)).pairs.find(({ reason }) => reason !== null && reason !== undefined)!;
  expect(kept).toMatchObject({ state: 'undone', reason: 'scored at assembly' });
  expect(kept.looks!.map(({ act }) => act)).toEqual(['made final', 'let stand']);
}); // prettier-ignore

it('is locked, made final and undone by the thumb alone, on a phone', async () => {
  const context = await chromium.newContext(phone);
  const small = await context.newPage();
  await small.goto(fitsOf(fan));
  const said = small.getByRole('group', { name: 'Chosen in the table' });
  await cell(small, /^P4 in L2/).tap();
  await said.getByRole('button', { name: 'Keep together' }).tap();
  await cell(small, /^P4 in L2.*locked, kept together$/).waitFor();
  const row = pairRow(small, 'P4', 'L2');
  await row.getByRole('button', { name: /^Make final/ }).tap();
  await row.getByText(/final, mark 2/).waitFor();
  await row.getByRole('button', { name: 'Undo the pair P4 in L2' }).tap();
  await row.getByLabel('Why it is undone').tap();
  await small.keyboard.type('tried by thumb');
  await row.getByRole('button', { name: 'Undo it' }).tap();
  await small.getByRole('region', { name: 'Pairs undone' }).getByText('tried by thumb').waitFor();
  await expect
    .poll(async () => (await fanSheet(fan)).pairs.find(({ mark }) => mark === '2')?.state)
    .toBe('undone');
  await context.close();
});

it('is printed on A4: the pairs with their sizes, what was undone, who measured, and no button', async () => {
  await pairs(page).getByRole('button', { name: 'Make final P4 in L2' }).click();
  await pairRow(page, 'P4', 'L2')
    .getByText(/final, mark \d/)
    .waitFor();
  await page.emulateMedia({ media: 'print' });
  await page.getByRole('heading', { name: 'Pairs and fits' }).waitFor();
  const printed = page.getByRole('row').filter({ hasText: /^\dL2/ });
  await expect
    .poll(() => printed.innerText())
    .toMatch(
      /L2\s+18\.013 ± 0\.001\s+P4\s+18\.003 ± 0\.001\s+0\.010 ± 0\.00\d\s+inside\s+over 99\.9\s%\s+final, M\. Hale/,
    );
  // What the two rules show, in a table under them.
  const twin = page.getByRole('table', { name: /, mm$/ });
  await twin.getByRole('row', { name: /^L2 18\.013 P4 18\.003 0\.010 inside/ }).waitFor();
  await expect.poll(() => twin.evaluate((one) => getComputedStyle(one).color)).toBe('rgb(0, 0, 0)');
  const undone = page.getByRole('region', { name: 'Undone' });
  await undone.getByText(/^P1 in L1: .*undone by M\. Hale: scored at assembly\./).waitFor();
  await expect.poll(() => page.getByRole('button').count()).toBe(0);
  const measured = page.locator('dt', { hasText: 'Measured by' }).locator('..');
  await expect.poll(() => measured.innerText()).toContain('M. Hale');
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  // 210 by 297 mm in points.
  expect(pdf).toMatch(/MediaBox \[0 0 59[45][.\d]* 84[12][.\d]*\]/);
  await page.emulateMedia({ media: 'screen' });
  await pairs(page).waitFor();
});

it('is not struck out while a pair of it is final, is once that is undone, and is put back whole', async () => {
  const strike = async () => {
    await page.getByRole('button', { name: 'Strike this fit out' }).click();
    await page.getByRole('button', { name: 'Strike it out' }).click();
  };
  await strike();
  await page.getByText(/^Final pairs stand on this\. Undo them on the Fits sheet first/).waitFor();
  await page.getByRole('button', { name: 'Leave it as it is' }).click();
  const row = pairRow(page, 'P4', 'L2');
  await row.getByRole('button', { name: 'Undo the pair P4 in L2' }).click();
  await row.getByLabel('Why it is undone').fill('only printed');
  await row.getByRole('button', { name: 'Undo it' }).click();
  await row.getByRole('button', { name: 'Make final P4 in L2' }).waitFor();
  await strike();
  await page.getByText('No fits yet.', { exact: false }).waitFor();
  await page.getByRole('button', { name: 'Put back Piston in liner' }).click();
  await page.getByRole('region', { name: 'Pairs undone' }).getByText('only printed').waitFor();
  await expect.poll(async () => (await fanSheet(fan)).fits[0]!.struckAt).toBeNull();
});

it('has all of it after a power cut', async () => {
  await server.kill();
  await server.restart();
  await page.goto(fitsOf(fan));
  await page.getByRole('region', { name: 'Pairs undone' }).getByText('scored at assembly').waitFor();
  const left = chromium.faults.filter((fault) => !/net::ERR|Failed to load resource/.test(fault));
  expect(left).toEqual([]);
}); // prettier-ignore
