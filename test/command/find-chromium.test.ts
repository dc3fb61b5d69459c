import { afterEach, expect, it, vi } from 'vitest';
import { findChromium } from '../setup/find-chromium.mjs';

afterEach(() => void vi.unstubAllEnvs());

it('takes the browser that CHROMIUM names', () => {
  vi.stubEnv('CHROMIUM', process.execPath);
  expect(findChromium()).toBe(process.execPath);
});

it('says so when CHROMIUM names nothing, and does not look for another', () => {
  vi.stubEnv('CHROMIUM', '/nowhere/chromium');
  expect(() => findChromium()).toThrow('CHROMIUM=/nowhere/chromium is not there');
});
