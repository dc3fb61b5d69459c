import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { JobSheet } from '@/lib/schema/sheet';
import { openBrowser, type OpenBrowser } from '../setup/open-browser';
import { startServer, type RunningServer } from '../setup/start-server.mjs';
import { desk, post } from './bench-story';

// What a fit is, said three ways; what governs it; and hot and cold: from the drawing to a second fit on a part.

let server: RunningServer;
let chromium: OpenBrowser;
let page: Page;
let job: string;

beforeAll(async () => {
  server = await startServer();
  chromium = await openBrowser();
  page = await (await chromium.newContext(desk)).newPage();
});

afterAll(async () => {
  expect(chromium.faults).toEqual([]);
  await chromium.close();
  await server.remove();
});

const sheet = async () =>
  (await (await fetch(`${server.url}/api/v1/jobs/${job}/sheet`)).json()) as JobSheet;
const region = (name: string) => page.getByRole('region', { name });

/** Keeps readings of one feature of a piece, in the order of the station plan, in micrometres from 18 mm. */
async function keep(mark: string, balloon: string, microns: readonly number[]): Promise<void> {
  const { pieces, features, gauges } = await sheet();
  const feature = features.find((row) => row.balloon === balloon)!;
  const entries = microns.map((um, index) => ({
    id: crypto.randomUUID(),
    deviceTime: new Date().toISOString(),
    deviceSeq: index + 1,
    personId: null,
    text: ((18_000 + um) / 1000).toFixed(3),
    unit: 'mm',
    valuePm: (18_000 + um) * 1_000_000,
    resolutionPm: 1_000_000,
    pieceId: pieces.find((row) => row.mark === mark)!.id,
    featureId: feature.id,
    gaugeId: gauges[0]!.id,
    station: feature.stations[Math.floor(index / 2)],
    direction: feature.directions[index % 2],
    temperatureMilliC: null,
    heldAs: null,
  }));
  const answer = await post(server, 'readings', { deviceId: crypto.randomUUID(), entries });
  const { outcomes } = (await answer.json()) as { outcomes: { state: string }[] };
  expect(outcomes.map(({ state }) => state)).toEqual(microns.map(() => 'kept'));
}

it('shows the limits of a pair of classes as they are typed, and says what is no class', async () => {
  await post(server, 'gauges', {
    id: crypto.randomUUID(),
    name: 'Mic 1',
    kind: 'micrometer',
    unit: 'mm',
    resolutionPm: 1_000_000,
    uncertaintyPm: 400_000,
    rangeLowPm: null,
    rangeHighPm: null,
    checkedOn: null,
    note: '',
  });
  await page.goto(`${server.url}/start`);
  await page.getByLabel('Job', { exact: true }).fill('Pump');
  const first = region('Part 1');
  await first.getByLabel('How many').fill('2');
  await first.getByLabel('As drawn').fill('18 H7');
  await first.getByLabel('Material').fill('bronze');
  await first.getByText('Bearing bronze, 18.0').waitFor();
  await first.getByLabel('Part', { exact: true }).fill('Barrel');
  const second = region('Part 2');
  await second.getByLabel('How many').fill('2');
  await second.getByLabel('As drawn').fill('Ø18');
  await second.getByLabel('Material').fill('Adamant');
  await second.getByText('its expansion is not known').waitFor();
  await second.getByRole('button', { name: 'Another feature' }).click();
  await second.getByLabel('As drawn').nth(1).fill('6 H7');
  await second.getByLabel('Part', { exact: true }).fill('Ram');
  await page.getByRole('button', { name: 'Another part' }).click();
  const third = region('Part 3');
  await third.getByLabel('As drawn').fill('Ø6');
  await third.getByLabel('Part', { exact: true }).fill('Pin');

  const fit = region('The fit');
  await fit.getByText('Classes, H7/g6').click();
  const classes = fit.getByLabel('Classes', { exact: true });
  await classes.fill('H7/w6');
  await fit.getByText('nominal 18: no w in the standard.').waitFor();
  await page.getByRole('button', { name: 'Start the job' }).click();
  await expect.poll(() => classes.inputValue()).toBe('H7/w6');
  expect(page.url()).toMatch(/\/start$/);
  await classes.fill('g6 H7');
  const echo = fit.getByRole('list', { name: 'Limits and clearances' });
  await expect
    .poll(() => echo.getByRole('listitem').allInnerTexts())
    .toEqual([
      'Hole H7: 18.000 to 18.018 mm',
      'Shaft g6: 17.983 to 17.994 mm',
      'Clearance fit: 0.006 to 0.035 clear',
    ]);
  await page.getByRole('button', { name: 'Start the job' }).click();
  await page.waitForURL(/\/jobs\/[0-9a-f-]+\/board/);
  job = /jobs\/([0-9a-f-]+)/.exec(page.url())![1]!;
  await page.getByRole('link', { name: 'Fits' }).click();
  await page.getByText('Said as H7/g6 on 18 mm.').waitFor();
  expect((await sheet()).fits[0]).toMatchObject({ way: 'classes', classes: 'H7/g6' });
});

it('offers the nearest classes for a clearance, and takes one', async () => {
  await page.getByRole('button', { name: 'Change what is wanted' }).click();
  const form = region('What is wanted');
  await form.getByText('Clearance', { exact: true }).click();
  await form.getByLabel('Least clearance').fill('0.016');
  await form.getByLabel('Most clearance').fill('0.045');
  await form.getByRole('button', { name: /^H7\/f6, 0\.016 to 0\.045 clear$/ }).click();
  await expect.poll(() => form.getByLabel('Classes', { exact: true }).inputValue()).toBe('H7/f6');
  await form.getByText('Shaft f6: 17.973 to 17.984 mm').waitFor();
  await form.getByRole('button', { name: 'Leave it as it is' }).click();
});

it('takes a rule of practice, shows its working, and keeps it by name', async () => {
  await page.getByRole('button', { name: 'Change what is wanted' }).click();
  const form = region('What is wanted');
  await form.getByText('Rule of practice', { exact: true }).click();
  const rules = form.getByRole('list', { name: 'Rules to start from' });
  const starters = rules.getByRole('button');
  await expect.poll(() => starters.count()).toBe(9);
  for (const words of await starters.allInnerTexts()) {
    expect(words).toContain('common practice, yours to overrule');
  }
  await rules.getByRole('button', { name: /^Press/ }).click();
  await form.getByText(/Tight fits store force/).waitFor();
  await form.getByRole('button', { name: 'Start from a rule' }).click();
  await rules.getByRole('button', { name: /^Sliding/ }).click();
  await expect.poll(() => form.getByText(/Tight fits store force/).count()).toBe(0);
  // 0.3 thou + 0.45 thou an inch on 18 mm: 0.00762 + 0.0081.
  await form
    .getByRole('row', { name: /^Aim 0\.00762 \+ 0\.45 µm per mm × 18 = 0\.016$/ })
    .waitFor();
  await form.getByLabel('Constant').fill('0.3 thou');
  await form.getByLabel('Least slope').fill('0.1 thou per inch');
  await form.getByLabel('Most slope').fill('0.05');
  await form.getByLabel('Name of the rule').fill('Our rams');
  await form.getByRole('button', { name: 'Keep the change' }).click();
  await form.getByText('The slopes go least, aim, most, and least and most differ.').waitFor();
  await expect.poll(() => form.getByLabel('Most slope').inputValue()).toBe('0.05');
  await form.getByLabel('Most slope').fill('1 mm/m');
  await form.getByRole('button', { name: 'Keep this rule by name' }).click();
  await form.getByRole('button', { name: 'In the notebook' }).waitFor();
  await form.getByRole('button', { name: 'Keep the change' }).click();
  await page.getByText('By the rule "Our rams" on 18 mm: 0.00762 + 0.45 µm per mm.').waitFor();
  expect((await sheet()).fits[0]).toMatchObject({
    way: 'rule',
    minPm: 9_420_000,
    aimPm: 15_720_000,
    maxPm: 25_620_000,
    classes: null,
  });
});

it("lists the shop's own rules, strikes one out and puts it back", async () => {
  await page.goto(`${server.url}/tables`);
  const rules = page.getByRole('list', { name: 'Rules of practice' });
  const ours = rules.getByRole('listitem').filter({ hasText: 'Our rams' });
  await expect.poll(() => ours.innerText()).toContain('your own');
  await ours.getByRole('button', { name: 'Strike out Our rams' }).click();
  await ours.getByText('struck out').waitFor();
  await ours.getByRole('button', { name: 'Put back Our rams' }).click();
  await ours.getByRole('button', { name: 'Strike out Our rams' }).waitFor();
  await ours.getByRole('button', { name: 'Change Our rams' }).click();
  await page.getByLabel('What it is for').fill('rams');
  await page.getByRole('button', { name: 'Keep this rule' }).click();
  await ours.getByText('your own; rams').waitFor();
});

it('keeps a material of the shop, and says what is wrong with one', async () => {
  await page.getByRole('button', { name: 'Add a material of your own' }).click();
  await page.getByLabel('Material', { exact: true }).fill('Adamant');
  await page.getByLabel('Grows by').fill('lots');
  await page.getByRole('button', { name: 'Keep this material' }).click();
  await page.getByText('"lots" is not a figure').waitFor();
  await page.getByLabel('Grows by').fill('14.5');
  await page.getByLabel('At least').fill('14');
  await page.getByLabel('At most').fill('15.2');
  await page.getByLabel('Who says so').fill('the mill');
  await page.getByRole('button', { name: 'Keep this material' }).click();
  const row = page.getByRole('listitem').filter({ hasText: 'Adamant' });
  await row.getByText('your own; the mill').waitFor();
  await expect.poll(() => row.innerText()).toContain('14.0 to 15.2');
});

it('says the shape of a bore and what it does to the fit, and switches what governs', async () => {
  await page.goto(`${server.url}/jobs/${job}/fits`);
  const panel = region('Which reading governs');
  await panel.getByText('Nothing is measured yet.').waitFor();
  await keep('B1', '1', [10, 62, 10, 62, 10, 62]);
  const shapes = panel.getByRole('list', { name: 'Shapes' });
  await shapes.getByText(/^Oval by 0\.052 at the top, wide across B\./).waitFor();
  // Aim 0.01572 at the smallest place; across B it is 0.052 more.
  await shapes
    .getByText('Across B at the top the clearance will reach 0.068 with a partner at the aim.')
    .waitFor();
  await expect.poll(() => shapes.innerText()).toContain('top, across A');
  const card = region('Make R1 to B1');
  await expect.poll(() => card.innerText()).toContain('17.994'); // 18.010 less the aim
  await panel.getByText('Mean sizes').click();
  await panel.getByText(/Each piece counts by its mean/).waitFor();
  await expect.poll(() => shapes.innerText()).toContain('the mean');
  await shapes.getByText(/it will be 0\.010 tight with a partner at the aim/).waitFor();
  await expect.poll(() => card.innerText()).toContain('18.02'); // 18.036 less the aim
  await panel.getByText('Smallest bore, largest shaft').click();
  await expect.poll(async () => (await sheet()).fits[0]!.governs).toBe('extreme');
  await keep('R1', '2', [-6, -6, -6, -6, -6, -6]);
  await shapes.getByText(/the clearance will reach 0\.068 with R1\./).waitFor();
});

it('works out the clearance hot and cold, with the bad moment, and keeps the temperatures', async () => {
  const panel = region('Hot and cold');
  // The shop's own material is known by the name the part had all along.
  await panel.getByText('Adamant, your own: 14.5 millionths a degree (14.0 to 15.2).').waitFor();
  await panel.getByText('Bearing bronze: 18.0 millionths a degree (17.8 to 18.0).').waitFor();
  await panel.getByText('These temperatures are only to begin with.').waitFor();
  // 0.016 - 17.994 x 14.5e-6 x 40 = 0.0056 clear; from 0.0051 to 0.0059 as 15.2 or 14.
  await panel
    .getByText(
      'Estimate: tightest at the bad moment, B1 at 20 °C and R1 at 60 °C, about 0.006 clear; from 0.005 clear to 0.006 clear as the coefficients may be.',
    )
    .waitFor();
  await panel.getByText(/Ten degrees more on R1 alone takes off about 0\.003/).waitFor();
  await panel.getByText(/They touch when R1 is about 61 °C hotter than B1/).waitFor();
  await panel.getByText(/Sizes are as they were read, taken to be at 20 °C/).waitFor();
  await panel.getByText(/they give no leave to run hot or under pressure/).waitFor();

  await panel.getByLabel('Bad moment, ram').fill('hot');
  await panel.getByText(/"hot" is not a figure/).waitFor();
  await expect.poll(() => panel.getByRole('img').count()).toBe(0);
  await panel.getByLabel('Bad moment, ram').fill('194 F');
  // 0.016 - 17.994 x 14.5e-6 x 70 = -0.0023.
  await panel.getByText(/R1 at 90 °C, about 0\.002 tight/).waitFor();
  await panel.getByText('They touch: how hard they press is not worked out here.').waitFor();
  const title = await panel.getByRole('img').getAttribute('aria-label');
  expect(title).toContain('about 0.002 tight');
  await panel.getByText('The same in a table').click();
  const rows = panel.getByRole('row');
  await expect
    .poll(() => rows.last().innerText())
    .toMatch(/20\s+90\s+0\.002 tight\s+the bad moment, tightest/);
  await panel.getByRole('button', { name: 'Keep these temperatures' }).click();
  await panel.getByRole('button', { name: 'Kept with this fit' }).waitFor();
  await page.reload();
  await expect.poll(() => panel.getByLabel('Bad moment, ram').inputValue()).toBe('90');
  await panel.getByText(/R1 at 90 °C, about 0\.002 tight/).waitFor();
});

it('chooses the material of a part from the list', async () => {
  const panel = region('Hot and cold');
  await panel.getByLabel('Material of ram').selectOption({ label: 'Invar' });
  await panel.getByText(/^Invar: 1\.6 millionths a degree \(one figure only\)/).waitFor();
  await expect
    .poll(async () => (await sheet()).parts.find(({ name }) => name === 'Ram')!.material)
    .toBe('Invar');
  // Bronze shrinks more than invar in the cold: the tightest is now with both at the coldest.
  await panel.getByText(/^Estimate: tightest with both at 0 °C/).waitFor();
});

it('ties the same part into a second fit, and shows the one that is chosen', async () => {
  await page.getByRole('button', { name: 'Another fit' }).click();
  const form = region('What is wanted');
  await expect
    .poll(() => form.getByLabel('Bore or slot').inputValue())
    .toBe((await sheet()).features.find(({ balloon }) => balloon === '3')!.id);
  await form.getByText('Classes, H7/g6').click();
  await form.getByLabel('Classes', { exact: true }).fill('H7/p6');
  await form.getByText('Interference fit: 0.000 to 0.020 tight').waitFor();
  await form.getByText(/Tight fits store force/).waitFor();
  await form.getByRole('button', { name: 'Keep this fit' }).click();
  await page.getByRole('heading', { name: 'Pin in ram', level: 1 }).waitFor();
  await page.getByText('Said as H7/p6 on 6 mm.').waitFor();
  await page.getByText('Ram in barrel', { exact: true }).click();
  await page.getByRole('heading', { name: 'Ram in barrel', level: 1 }).waitFor();
  const { fits } = await sheet();
  expect(fits.map(({ name }) => name)).toEqual(['Ram in barrel', 'Pin in ram']);
});

it('changes only what was touched: a name changed leaves the clearances to the picometre', async () => {
  const before = (await sheet()).fits[0]!;
  await page.getByRole('button', { name: 'Change what is wanted' }).click();
  const form = region('What is wanted');
  await form.getByLabel('Called').fill('Ram in its barrel');
  await form.getByRole('button', { name: 'Keep the change' }).click();
  await page.getByRole('heading', { name: 'Ram in its barrel', level: 1 }).waitFor();
  const after = (await sheet()).fits[0]!;
  expect(after).toEqual({ ...before, name: 'Ram in its barrel', version: before.version + 1 });
});

it('is worked with the keyboard alone, and scrolls nowhere sideways at 320', async () => {
  await page.setViewportSize({ width: 320, height: 640 });
  await page.getByRole('button', { name: 'Change what is wanted' }).focus();
  await page.keyboard.press('Enter');
  const form = region('What is wanted');
  await form.getByLabel('Called').focus();
  await page.keyboard.press('Tab'); // the three ways, one stop
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Tab');
  await page.keyboard.type('H7/h6');
  await form.getByText('Hole H7: 18.000 to 18.018 mm').waitFor();
  const over = () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  await expect.poll(() => over()).toBeLessThanOrEqual(0);
  await page.keyboard.press('Enter');
  await page.getByText('Said as H7/h6 on 18 mm.').waitFor();
  await page.goto(`${server.url}/tables`);
  await expect.poll(() => over()).toBeLessThanOrEqual(0);
});
