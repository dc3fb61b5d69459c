import { createServer, request, type Server } from 'node:http';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { openBrowser, type OpenBrowser } from '../setup/open-browser';
import { startServer, type RunningServer } from '../setup/start-server.mjs';
import { desk, entry, goToBench, head, inBook, loadExample, reading } from './bench-story';

// A newer build is put up while a job is on the bench. It waits for a person, and for what is unsent.

let server: RunningServer;
let chromium: OpenBrowser;
let front: Front;

beforeAll(async () => {
  server = await startServer();
  chromium = await openBrowser();
  await loadExample(server);
  front = await openFront(server);
});

afterAll(async () => {
  expect(chromium.faults.filter((fault) => !/503|Failed to fetch/.test(fault))).toEqual([]);
  await chromium.close();
  front.close();
  await server.remove();
});

type Front = RunningServer & {
  /** The name of the build that the worker is said to be of; null is its own. */
  build: string | null;
  /** Entries are answered with "not now". */
  refuses: boolean;
  close: () => void;
};

/** The server behind an address of its own, at which the worker may be that of another build. */
async function openFront(behind: RunningServer): Promise<Front> {
  const target = new URL(behind.url);
  const state = { build: null as string | null, refuses: false };
  const listening: Server = createServer((asked, answer) => {
    if (state.refuses && asked.method === 'POST') return void answer.writeHead(503).end();
    const headers = { ...asked.headers, 'accept-encoding': 'identity' };
    const passed = request(
      { port: target.port, host: target.hostname, path: asked.url, method: asked.method, headers },
      (got) => {
        if (asked.url !== '/sw.js' || state.build === null) {
          answer.writeHead(got.statusCode!, got.headers);
          return void got.pipe(answer);
        }
        let text = '';
        got.setEncoding('utf8').on('data', (more) => (text += more));
        got.on('end', () => {
          const { 'content-length': _, 'transfer-encoding': __, ...rest } = got.headers;
          answer.writeHead(200, rest);
          answer.end(text.replace(/"id":"[^"]*"/, `"id":"${state.build}"`));
        });
      },
    );
    passed.on('error', () => answer.destroy());
    answer.on('close', () => passed.destroy());
    asked.pipe(passed);
  });
  await new Promise<void>((done) => listening.listen(0, '127.0.0.1', done));
  const { port } = listening.address() as { port: number };
  return Object.assign(state, {
    ...behind,
    url: `http://127.0.0.1:${port}`,
    close: () => {
      listening.closeAllConnections();
      listening.close();
    },
  });
}

it('an app update in mid-job waits until all is sent, is loaded by a button, and loses nothing', async () => {
  const context = await chromium.newContext({ ...desk, serviceWorkers: 'allow' });
  const page = await context.newPage();
  await goToBench(front, page, { mark: 'W12', balloon: '9' });
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  // From the next page on the worker is in charge.
  await goToBench(front, page, { mark: 'W12', balloon: '9' });
  await expect
    .poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null))
    .toBe(true);

  front.refuses = true;
  await page.keyboard.type('11.991');
  await page.keyboard.press('Enter');
  await expect.poll(() => head(page).textContent()).toContain('to send');
  front.build = 'the-next-one';
  await page.evaluate(async () => {
    const registration = (await navigator.serviceWorker.getRegistration())!;
    await registration.update();
  });
  const isWaiting = () =>
    page.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      return registration!.waiting !== null;
    });
  await expect.poll(isWaiting, { timeout: 20_000 }).toBe(true);
  const button = page.getByRole('button', { name: 'Load it' });
  await page.keyboard.type('11.990');
  await page.keyboard.press('Enter');
  await expect.poll(() => reading(page).textContent()).toBe('11.990');
  await expect.poll(() => button.count()).toBe(0);

  front.refuses = false;
  await expect.poll(() => head(page).textContent(), { timeout: 90_000 }).toContain('in the book');
  await button.waitFor();
  const reloaded = page.waitForEvent('load');
  await button.click();
  await reloaded;
  await expect.poll(() => reading(page).textContent()).toBe('11.990');
  await expect.poll(() => entry(page).inputValue()).toBe('');
  await expect.poll(() => button.count()).toBe(0);
  // The build before it stays for other pages that are open.
  const names = await page.evaluate(() => caches.keys());
  expect(names).toHaveLength(2);
  expect(names).toContain('fitwright-the-next-one');
  const booked = await inBook(server, 'W12', '9');
  expect(booked.map(({ text }) => text)).toEqual(['11.991', '11.990']);
  await context.close();
}, 180_000);
