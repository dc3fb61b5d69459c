/*
 * How fast the Bench is, in a real Chromium whose processor is slowed four times: from Enter to the reading
 * painted and to the reading kept on the device's disk, on an empty job and on one with ten thousand readings;
 * the script it loads, as the server sends it; how soon it is ready from a cold start without a network; and,
 * at full speed, how soon another screen shows what was typed.
 *
 *     npm run measure:bench
 *
 * 500 readings are typed at 20 ms a key, as a gauge types, with a rest between two. "Painted" is the end of the
 * page's own work for the frame in which the reading stands (why so: test/measure/bench-probe.ts), from the time
 * the key event carries. The frames come sixty a second and the key comes when it likes. What misses its aim is
 * printed so; nothing is judged here.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type BrowserContext, type CDPSession, type Page } from 'playwright-core';
import { buildIfBehind } from '@/lib/command/build.mjs';
import { findChromium } from '../setup/find-chromium.mjs';
import { chromiumArgs } from '../setup/open-browser';
import { startServer, type RunningServer } from '../setup/start-server.mjs';
import { makeBenchJob, post, sheetOf, type BenchJob } from './bench-job';
import { installProbe, type Taken } from './bench-probe';
import { quantileOf } from './quantile-of';
import { printTable, type Row } from './table';

const entryCount = Number(process.env['MEASURE_ENTRIES'] ?? 500);
const slowed = 4;
const keyMs = 20;
const restMs = 200;
/** An Enter on an empty line that comes sooner after a reading is taken for a bounce of its key. */
const nextRestMs = 450;
const placesOfPiece = 6;
const aims = { paintedMs: 16.7, keptMs: 50, scriptBytes: 170_000, readyMs: 1500, liveMs: 1000 };
const liveCount = Math.min(entryCount, 60);
const viewport = { width: 390, height: 844 };

/** The least that shows and keeps a reading: text put into the page, and the row to the disk, in the key's event. */
const barePage = `<!doctype html><section aria-label="Reading"><div data-state="counted"><span></span></div></section>
<input name="reading"><script>
const opened = indexedDB.open('bare', 1);
opened.onupgradeneeded = () => opened.result.createObjectStore('entries', { autoIncrement: true });
const line = document.querySelector('input');
const figure = document.querySelector('span');
line.onkeydown = ({ key }) => {
  if (key !== 'Enter') return;
  const text = line.value;
  line.value = '';
  figure.textContent = text;
  const writing = opened.result.transaction('entries', 'readwrite', { durability: 'strict' });
  writing.objectStore('entries').put({ state: 'on this device', row: { text } });
};
opened.onsuccess = () => line.focus();
</script>`;

const rows: Row[] = [];
const folder = mkdtempSync(join(tmpdir(), 'measure-bench-'));
buildIfBehind();
const server = await startServer();
try {
  await post(server.url, 'example', {});
  const empty = await makeBenchJob(server.url, { readings: false });
  const full = await makeBenchJob(server.url, { readings: true });
  const fresh = await measureEntries(server, empty);
  const grown = await measureEntries(server, full);
  const bare = await measureEntries(server, empty, { bare: true });
  entryRows(fresh, grown, bare);
  await measureLive(server, await makeBenchJob(server.url, { readings: false }));
  await measureScript(server, empty);
  await measureColdStart(server, empty);
  printTable(rows);
} finally {
  await server.remove();
  rmSync(folder, { recursive: true, force: true });
}

/**
 * Types readings into a job, and looks at the end that the book has them all, once each. With `bare` it types
 * them into a page that does nothing but show and keep them: what the machine itself takes.
 */
async function measureEntries(
  { url }: RunningServer,
  job: BenchJob,
  { bare = false } = {},
): Promise<Taken[]> {
  const browser = await chromium.launch({ executablePath: findChromium(), args: chromiumArgs });
  try {
    const context = await browser.newContext({ viewport, hasTouch: true, isMobile: true });
    await watch(context);
    const page = await context.newPage();
    const keys = await slowedDown(page);
    const address = `${url}/jobs/${job.jobId}/bench`;
    if (bare) {
      await page.route(address, (route) =>
        route.fulfill({ contentType: 'text/html', body: barePage }),
      );
      await page.goto(address);
    } else await openBench(page, address);
    const before = (await sheetOf(url, job.jobId)).readings.length;
    const taken: (Omit<Taken, 'toldMs'> & { atMs: number })[] = [];
    for (let n = 0; n < entryCount; n += 1) {
      await rest(restMs);
      if (!bare && n > 0 && n % placesOfPiece === 0) {
        await rest(nextRestMs - restMs);
        await press(keys, 'Enter'); // on an empty line: the next ring
        await rest(restMs);
      }
      const text = textOf(n);
      await page.evaluate((shown) => window.probe.watch(shown), text);

      for (const key of text) await press(keys, key);
      await press(keys, 'Enter');
      taken.push(
        await within(
          page.evaluate(() => window.probe.taken()),
          30_000,
          `reading ${n}`,
        ),
      );
    }
    await rest(2000);
    const told: (number | null)[] = await page.evaluate(
      (times) => times.map((atMs) => window.probe.told(atMs)),
      taken.map(({ atMs }) => atMs),
    );
    const after = (await sheetOf(url, job.jobId)).readings.length;
    if (after !== before + (bare ? 0 : entryCount)) {
      throw new Error(`${entryCount} were typed and ${after - before} are in the book`);
    }
    return taken.map((one, index) => ({ ...one, toldMs: told[index]! }));
  } finally {
    await browser.close();
  }
}

function entryRows(fresh: readonly Taken[], grown: readonly Taken[], bare: readonly Taken[]): void {
  const row = (
    what: string,
    key: 'paintedMs' | 'keptMs',
    aimMs: number,
    list: readonly Taken[],
    beside: readonly Taken[] | null,
  ) => {
    const of = (some: readonly Taken[], p: number) =>
      quantileOf(
        some.map((one) => one[key]),
        p,
      );
    const [half, most] = [of(list, 0.5), of(list, 0.99)];
    const against: string[] = [];
    const other = beside ?? bare;
    const otherName = beside === null ? 'a bare page' : 'none on it';
    against.push(`${otherName} ${shownMs(of(other, 0.5))}, ${shownMs(of(other, 0.99))}`);
    if (key === 'paintedMs') {
      const told = list.map(({ toldMs }) => toldMs ?? 16);
      against.push(`Event Timing ≤ ${quantileOf(told, 0.5)}, ≤ ${quantileOf(told, 0.99)} ms`);
    }
    rows.push({
      what,
      own: `p50 ${shownMs(half)}, p99 ${shownMs(most)}`,
      against: against.join('; '),
      aim: `p99 ${aimMs} ms${most <= aimMs ? '' : ', missed'}${
        beside === null ? '' : `; ${(half / of(beside, 0.5)).toFixed(2)} as long, no growth`
      }`,
    });
  };
  const slow = `${slowed} × slowed`;
  row(`Bench, Enter to painted, ${slow}`, 'paintedMs', aims.paintedMs, fresh, null);
  row('the same with 10 000 readings on the job', 'paintedMs', aims.paintedMs, grown, fresh);
  row(`Bench, Enter to kept on the disk, ${slow}`, 'keptMs', aims.keptMs, fresh, null);
  row('the same with 10 000 readings on the job', 'keptMs', aims.keptMs, grown, fresh);
}

/** Types on one Bench and looks at another that shows the same piece, both at full speed. */
async function measureLive({ url }: RunningServer, { jobId }: BenchJob): Promise<void> {
  const browser = await chromium.launch({ executablePath: findChromium(), args: chromiumArgs });
  const taken: number[] = [];
  try {
    const open = async () => {
      const context = await browser.newContext({ viewport });
      await watch(context);
      const page = await context.newPage();
      await openBench(page, `${url}/jobs/${jobId}/bench`);
      return page;
    };
    const [page, other] = [await open(), await open()];
    const keys = await page.context().newCDPSession(page);
    for (let n = 0; n < liveCount; n += 1) {
      await rest(restMs);
      if (n > 0 && n % placesOfPiece === 0) {
        await rest(nextRestMs - restMs);
        for (const session of [keys, await other.context().newCDPSession(other)]) {
          await press(session, 'Enter');
        }
        await rest(restMs);
      }
      const text = textOf(n);
      const shown = other.evaluate((figure) => window.probe.shown(figure), text);
      await page.evaluate((figure) => window.probe.watch(figure), text);
      for (const key of text) await press(keys, key);
      await press(keys, 'Enter');
      const typedAtMs = await page.evaluate(async () => {
        const { atMs } = await window.probe.taken();
        return performance.timeOrigin + atMs;
      });
      taken.push((await within(shown, 30_000, `reading ${n} on the other screen`)) - typedAtMs);
    }
  } finally {
    await browser.close();
  }
  const most = Math.max(...taken);
  rows.push({
    what: 'Enter to painted on another screen, not slowed',
    own: `p50 ${shownMs(quantileOf(taken, 0.5))}, longest of ${taken.length} ${shownMs(most)}`,
    against: '',
    aim: `${aims.liveMs / 1000} s${most <= aims.liveMs ? '' : ', missed'}`,
  });
}

/** The bodies of all scripts the page asks for until it takes a key, and of those it asks for afterwards. */
async function measureScript({ url }: RunningServer, { jobId }: BenchJob): Promise<void> {
  const browser = await chromium.launch({ executablePath: findChromium(), args: chromiumArgs });
  const asked: { address: string; atMs: number }[] = [];
  let readyAtMs: number;
  try {
    const context = await browser.newContext({ viewport, serviceWorkers: 'block' });
    await watch(context);
    const page = await context.newPage();
    page.on('request', (one) => {
      if (one.url().endsWith('.js')) asked.push({ address: one.url(), atMs: performance.now() });
    });
    await page.goto(`${url}/jobs/${jobId}/bench`, { waitUntil: 'commit' });
    await page.waitForFunction(() => window.probe.readyMs !== null);
    readyAtMs = performance.now();
    await rest(5000);
  } finally {
    await browser.close();
  }
  const sums = { before: 0, after: 0 };
  const codings = new Set<string>();
  for (const address of new Set(asked.map((one) => one.address))) {
    const { bytes, coding } = await bodyAsSent(address);
    codings.add(coding);
    const isBefore = asked.some((one) => one.address === address && one.atMs <= readyAtMs);
    sums[isBefore ? 'before' : 'after'] += bytes;
  }
  const sent = [...codings].join(', ');
  rows.push({
    what: `script of the Bench until it takes a key, as sent (${sent})`,
    own: kilobytes(sums.before),
    against: '',
    aim: `${kilobytes(aims.scriptBytes)}${sums.before <= aims.scriptBytes ? '' : ', missed'}`,
  });
  rows.push({
    what: 'fetched after that, while nothing else is to be done',
    own: kilobytes(sums.after),
    against: '',
    aim: '',
  });
}

/** What Chromium would be sent, byte for byte. */
function bodyAsSent(address: string): Promise<{ bytes: number; coding: string }> {
  return new Promise((done, fail) => {
    const headers = { 'accept-encoding': 'gzip, deflate, br, zstd' };
    request(address, { headers }, (response) => {
      let bytes = 0;
      response.on('data', (part: Buffer) => {
        bytes += part.length;
      });
      response.on('end', () =>
        done({ bytes, coding: response.headers['content-encoding'] ?? 'not compressed' }),
      );
    })
      .on('error', fail)
      .end();
  });
}

/**
 * The browser is closed after a visit and opened anew with the server gone: from asking for the page to the
 * entry taking keys. Where no service worker comes to hold the page there is nothing to measure.
 */
async function measureColdStart(running: RunningServer, { jobId }: BenchJob): Promise<void> {
  const address = `${running.url}/jobs/${jobId}/bench`;
  const open = () =>
    chromium.launchPersistentContext(join(folder, 'profile'), {
      executablePath: findChromium(),
      args: chromiumArgs,
      viewport,
    });
  const what = `Bench ready from a cold start without a network, ${slowed} × slowed`;
  const aim = (missed: boolean) => `${aims.readyMs / 1000} s${missed ? ', missed' : ''}`;
  const first = await open();
  const page = first.pages()[0] ?? (await first.newPage());
  await page.goto(address);
  const isHeld = await page.evaluate(async () => {
    const ready = navigator.serviceWorker.ready.then(() => true);
    return Promise.race([ready, new Promise((done) => setTimeout(done, 5000, false))]);
  });
  if (isHeld) {
    await page.reload();
    await rest(5000);
  }
  await first.close();
  if (!isHeld) {
    rows.push({ what, own: 'not measured', against: '', aim: aim(false) });
    return;
  }
  await running.stop();
  const taken: number[] = [];
  for (let round = 0; round < 5; round += 1) {
    const again = await open();
    await watch(again);
    const cold = await again.newPage();
    await slowedDown(cold);
    await cold.goto(address, { waitUntil: 'commit' });
    await cold.waitForFunction(() => window.probe.readyMs !== null, null, { timeout: 30_000 });
    taken.push(await cold.evaluate(() => window.probe.readyMs!));
    await again.close();
  }
  await running.restart();
  const half = quantileOf(taken, 0.5);
  const longest = Math.max(...taken);
  rows.push({
    what,
    own: `${(half / 1000).toFixed(2)} s, longest of ${taken.length} ${(longest / 1000).toFixed(2)} s`,
    against: '',
    aim: aim(half > aims.readyMs),
  });
}

/** A Bench that takes keys, with its gauge in hand. */
async function openBench(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.waitForFunction(() => window.probe.readyMs !== null, null, { timeout: 60_000 });
  const chosen = page.getByRole('list', { name: 'Gauges' });
  if (await chosen.isVisible()) {
    await chosen.getByRole('button', { name: /Bore gauge 1/ }).click();
  }
}

/** What is typed as the n-th reading: never the same twice in a row. */
function textOf(n: number): string {
  return `18.00${3 + ((n * 5) % 7)}`;
}

/** The probe in every page of a context. */
async function watch(context: BrowserContext): Promise<void> {
  // Functions come here with a call in them that keeps their names, which a page does not have.
  await context.addInitScript('globalThis.__name = (named) => named;');
  await context.addInitScript(installProbe);
}

async function slowedDown(page: Page): Promise<CDPSession> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: slowed });
  return session;
}

/** One key, with the time at which the browser gets it. */
async function press(keys: CDPSession, key: string): Promise<void> {
  const isEnter = key === 'Enter';
  const code = isEnter ? 13 : key === '.' ? 190 : key.charCodeAt(0);
  const event = { key, windowsVirtualKeyCode: code };
  // Not waited for one by one: a gauge does not wait until the page has dealt with a key.
  const down = keys.send('Input.dispatchKeyEvent', {
    ...event,
    type: 'keyDown',
    text: isEnter ? '\r' : key,
  });
  const up = keys.send('Input.dispatchKeyEvent', { ...event, type: 'keyUp' });
  await rest(keyMs);
  if (isEnter) await Promise.all([down, up]);
}

async function within<T>(promise: Promise<T>, ms: number, what: string): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, fail) => {
    timer = setTimeout(() => fail(new Error(`${what} did not come in ${ms} ms`)), ms);
  });
  return Promise.race([promise, late]).finally(() => clearTimeout(timer));
}

function rest(ms: number): Promise<void> {
  return new Promise((done) => setTimeout(done, ms));
}

function shownMs(ms: number): string {
  return `${ms.toFixed(1)} ms`;
}

function kilobytes(bytes: number): string {
  return `${(bytes / 1000).toFixed(1)} kB`;
}
