/**
 * Pictures of every component, to hold beside the drawings: `npx tsx test/ui/gallery.tsx [section ...]`.
 *
 * Serves `gallery/page.tsx` on this machine, opens it in Chromium (CHROMIUM, or Debian's) at three widths and in
 * three themes, and writes test/.out/gallery/<section>-<width>-<theme>.png.
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { createViteServer } from 'vitest/node';

const root = fileURLToPath(new URL('../..', import.meta.url));
const out = join(root, 'test/.out/gallery');
const widths = [360, 768, 1280];
const themes = ['light', 'dark', 'glare'];
const asked = process.argv.slice(2);

const html = `<!doctype html><meta charset="utf-8"><title>Gallery</title><div id="root"></div>
<script type="module" src="/test/ui/gallery/page.tsx"></script>`;

mkdirSync(out, { recursive: true });
const server = await createViteServer({
  root,
  configFile: false,
  cacheDir: join(root, 'test/.out/vite'),
  logLevel: 'warn',
  appType: 'custom',
  resolve: { alias: { '@': root.replace(/\/$/, '') } },
  define: { 'process.env': '({})' },
  optimizeDeps: { include: ['react', 'react-dom/client', 'react/jsx-dev-runtime', 'next/link'] },
  server: { port: 0, host: '127.0.0.1', hmr: false, watch: null },
  plugins: [
    {
      name: 'gallery-page',
      configureServer(vite) {
        vite.middlewares.use((request, response, next) => {
          if (request.url?.split('?')[0] !== '/') return next();
          response.setHeader('content-type', 'text/html');
          response.end(html);
        });
      },
    },
  ],
});
await server.listen();
const address = server.resolvedUrls?.local[0];
const browser = await chromium.launch({
  executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
  args: [
    '--no-sandbox',
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--disable-dev-shm-usage',
  ],
});
try {
  const page = await browser.newPage();
  page.on('console', (message) => {
    if (message.type() === 'error') console.error(message.text());
  });
  page.on('pageerror', (error) => console.error(error));
  for (const width of widths) {
    for (const theme of themes) {
      await page.setViewportSize({ width, height: 900 });
      await page.goto(`${address}?theme=${theme}`);
      await page.locator('[data-section]').first().waitFor();
      await page.evaluate(() => document.fonts.ready);
      for (const section of await page.locator('[data-section]').all()) {
        const name = await section.getAttribute('data-section');
        if (asked.length > 0 && !asked.includes(name ?? '')) continue;
        await section.screenshot({ path: join(out, `${name}-${width}-${theme}.png`) });
      }
    }
  }
} finally {
  await browser.close();
  await server.close();
}
