import axe, { type AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';

/** What axe finds serious or critical on the page as it stands. */
export async function axeFaults(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() =>
    (globalThis as unknown as { axe: { run: () => Promise<AxeResults> } }).axe.run(),
  );
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
}
