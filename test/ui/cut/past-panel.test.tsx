import { renderToStaticMarkup } from 'react-dom/server';
import { expect, it, vi } from 'vitest';
import { PastPanel } from '@/app/ui/cut/past-panel';
import { JobProvider } from '@/app/ui/job/job-provider';
import { cutView } from '@/lib/rules/cuts/cut-view';
import { smallJob, type SmallJob } from '@/test/rules/small-job';
import { readOf } from '@/test/ui/fits/fits-page';

vi.mock('next/navigation', () => ({ useRouter: () => ({ push() {} }) }));

const six = (microns: number) => Array.from({ length: 6 }, () => microns);
const chosen = { unit: 'mm', decimal: '.', hand: 'right', personId: null } as const;

/** P1 at 17.990 with L1 at 18.010: past its stop, and it would suit L2 at 18.000. */
function panel(pairs: NonNullable<SmallJob['pairs']>): string {
  const view = smallJob({ bores: [six(10), six(0)], shafts: [six(-10)], pairs });
  const at = {
    pieceId: view.sheet.pieces.find(({ mark }) => mark === 'P1')!.id,
    featureId: view.fits[0]!.externalFeature.id,
  };
  const said = { slide: null, lapPm: 0, changed: null, temperatureMilliC: null };
  const cut = cutView(view, at, said)!;
  return readOf(
    renderToStaticMarkup(
      <JobProvider sheet={view.sheet} chosen={chosen}>
        <PastPanel cut={cut} choices={cut.choices!} shown={chosen} personId={null} />
      </JobProvider>,
    ),
  );
}

it('offers another partner to a piece that is only locked, and to one in a final pair the way to it', () => {
  const locked = panel([{ bore: 0, shaft: 0, state: 'locked' }]);
  expect(locked).toContain('Pair P1 with L2');
  const final = panel([{ bore: 0, shaft: 0, state: 'final' }]);
  expect(final).toContain('P1 is final with L1. Undo that pair on the Fits sheet first');
  expect(final).not.toContain('Pair P1 with L2');
  expect(final).toContain('Scrap it');
});
