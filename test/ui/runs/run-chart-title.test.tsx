import { renderToStaticMarkup } from 'react-dom/server';
import { expect, it, vi } from 'vitest';
import { JobProvider } from '@/app/ui/job/job-provider';
import { RunsSheet } from '@/app/ui/runs/runs-sheet';
import { um } from '@/test/rules/make';
import { smallRunSheet, wander } from '@/test/rules/small-run';

vi.mock('next/navigation', () => ({ useRouter: () => ({ push() {} }), usePathname: () => '/' }));
// The canvas is drawn in the browser alone; what it is called is known before.
vi.mock('@/app/ui/charts/chart', () => ({
  Chart: ({ title }: { title: string }) => <figure aria-label={title} />,
}));

it('the chart says to those who cannot see it what the sheet says to do', () => {
  const html = renderToStaticMarkup(
    <JobProvider
      sheet={smallRunSheet({ sizes: wander(12, 1, -3), run: { divisionPm: um / 10 } })}
      chosen={{ unit: 'mm', decimal: '.', hand: 'right', personId: null }}
    >
      <RunsSheet />
    </JobProvider>,
  );
  const title = /<figure aria-label="([^"]*)"/.exec(html)![1]!;
  expect(title).toMatch(/^Run chart of 12 pieces\. .* Steady, but too near the top\. .*Move it/);
  expect(title).not.toContain('Leave the machine alone');
});
