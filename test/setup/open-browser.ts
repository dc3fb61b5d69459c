import {
  chromium,
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
} from 'playwright-core';
import { findChromium } from './find-chromium.mjs';

/** Keeps Chromium off the network and within a container's limits. */
export const chromiumArgs = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-dev-shm-usage',
];

export type OpenBrowser = {
  browser: Browser;
  /** A fresh profile. What its pages' consoles report as errors is collected in `faults`. */
  newContext: (options?: BrowserContextOptions) => Promise<BrowserContext>;
  /**
   * Errors of the pages so far: uncaught exceptions and console errors. A journey ends with
   * `expect(faults).toEqual([])`, after taking out what it caused on purpose (a cut network).
   */
  faults: string[];
  close: () => Promise<void>;
};

/** Opens a real headless Chromium for a journey. */
export async function openBrowser(): Promise<OpenBrowser> {
  const browser = await chromium.launch({ executablePath: findChromium(), args: chromiumArgs });
  const faults: string[] = [];
  return {
    browser,
    faults,
    newContext: async (options) => {
      // A worker keeps the whole app in each fresh profile; only journeys about that pay for it.
      const context = await browser.newContext({ serviceWorkers: 'block', ...options });
      context.on('weberror', (error) => faults.push(String(error.error())));
      context.on('console', (message) => {
        if (message.type() === 'error')
          faults.push(`${message.text()} (${message.location().url})`);
      });
      return context;
    },
    close: () => browser.close(),
  };
}
