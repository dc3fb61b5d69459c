import { renderToStaticMarkup } from 'react-dom/server';
import { expect, it, vi } from 'vitest';
import { CutLog } from '@/app/ui/cut/cut-log';
import { JobProvider } from '@/app/ui/job/job-provider';
import { cutView } from '@/lib/rules/cuts/cut-view';
import { aDay, cutTo, type Done } from '@/test/rules/cuts/a-day';
import { readOf } from '@/test/ui/fits/fits-page';

vi.mock('next/navigation', () => ({ useRouter: () => ({ push() {} }) }));

const chosen = { unit: 'mm', decimal: '.', hand: 'right', personId: null } as const;

function log(done: readonly Done[], mark: string): string {
  const view = aDay(done);
  const at = {
    pieceId: view.sheet.pieces.find((piece) => piece.mark === mark)!.id,
    featureId: view.fits[0]!.externalFeature.id,
  };
  const slide = { dial: 'radius', divisionPm: 10_000_000, fineFeed: 1, bitesPm: 0 } as const;
  const said = { slide, lapPm: 0, changed: null, temperatureMilliC: null };
  return readOf(
    renderToStaticMarkup(
      <JobProvider sheet={view.sheet} chosen={chosen}>
        <CutLog cut={cutView(view, at, said)!} slide={slide} onDial={null} shown={chosen} />
      </JobProvider>,
    ),
  );
}

it('says between which cuts a change was noted on another piece', () => {
  const day: Done[] = [
    ...cutTo('P7', [97, 98]),
    ['P8', 'read', 400],
    ['P8', 'cut', 100, { changed: 'insert' }],
    ['P8', 'read', 305],
  ];
  const changed = 'Insert changed, noted on P8: learned afresh.';
  expect(log(day, 'P7')).toMatch(
    /18\.303.*18\.205.*Insert changed, noted on P8: learned afresh\.$/,
  );
  const again: Done[] = [...day, ['P7', 'cut', 100], ['P7', 'read', 109]];
  expect(log(again, 'P7')).toMatch(/18\.205.*noted on P8: learned afresh\..*18\.109/);
  expect(log(again, 'P7').split(changed)).toHaveLength(2);
  expect(log(again, 'P8')).not.toContain('noted on');
});

it('says below what was asked how it stood on an inch dial', () => {
  const inch = { divisionPm: 25_400_000, dialUnit: 'in' } as const;
  const day: Done[] = [
    ['P7', 'read', 400],
    ['P7', 'cut', 101.6, inch],
    ['P7', 'read', 305],
  ];
  expect(log(day, 'P7')).toMatch(/0\.102 ?dial 0\.002 in/);
  expect(log(cutTo('P7', [97]), 'P7')).not.toContain('dial');
});
