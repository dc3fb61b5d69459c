import { describe, expect, it } from 'vitest';
import { paperRows } from '@/app/ui/fits/paper-rows';
import { paperNotes } from '@/app/ui/fits/paper-notes';
import { jobView } from '@/lib/rules/job-view';
import { pairLook } from '@/lib/rules/pair-look';
import { smallJob, type SmallJob } from '@/test/rules/small-job';

const um = 1_000_000;
const mm = { unit: 'mm', decimal: '.' } as const;
const six = (microns: number) => Array.from({ length: 6 }, () => microns);

function rowsOf(job: SmallJob) {
  const { sheet, fits } = smallJob(job);
  const mark = (id: string) => sheet.pieces.find((piece) => piece.id === id)!.mark;
  const person = (id: string | null) => (id === null ? null : 'M. Hale');
  return paperRows(fits[0]!, um, mm, { mark, person }, (at) => at.slice(0, 10));
}

describe('the rows of the printed sheet', () => {
  it('have room to write the size of a shaft to make, and of a bore to make', () => {
    const [shaft] = rowsOf({ bores: [six(10)] });
    expect(shaft).toMatchObject({
      internal: 'L1', internalSize: '18.010 ± 0.001', external: 'P1', externalSize: '',
      mark: { state: 'to make' }, remark: 'make P1 to 18.000',
    }); // prettier-ignore
    const [bore] = rowsOf({ shafts: [six(0)] });
    expect(bore).toMatchObject({
      internal: 'L1', internalSize: '', external: 'P1', externalSize: '18.000 ± 0.001',
      mark: { state: 'to make' }, remark: 'make L1 to 18.010',
    }); // prettier-ignore
  });
});

describe('a row of a pair', () => {
  const sizes = { bores: [six(10)], shafts: [six(0)] };

  it('has both sizes, the clearance, the verdict and how likely it is inside', () => {
    expect(rowsOf(sizes)[0]).toEqual({
      set: '', internal: 'L1', internalSize: '18.010 ± 0.001', external: 'P1',
      externalSize: '18.000 ± 0.001', clear: '0.010 ± 0.001', mark: { state: 'inside', side: null },
      verdict: 'inside', chance: 'over 99.9\u00a0%', remark: '',
    }); // prettier-ignore
  });

  it.each<[string, SmallJob, string, string]>([
    [
      'locked',
      { ...sizes, pairs: [{ bore: 0, shaft: 0, state: 'locked' }] },
      '0.010 ± 0.001',
      'kept together',
    ],
    [
      'final',
      {
        ...sizes,
        pairs: [
          {
            bore: 0,
            shaft: 0,
            state: 'final',
            mark: '7',
            clearancePm: 10 * um,
            uncertaintyPm: um,
            decidedAt: '2026-03-14T11:00:00Z',
            personId: 'hale',
          },
        ],
      },
      '0.010 ± 0.001',
      'final, M. Hale, 2026-03-14',
    ],
    [
      'final, and changed since',
      {
        ...sizes,
        pairs: [{ bore: 0, shaft: 0, state: 'final', clearancePm: 12 * um, uncertaintyPm: um }],
      },
      '0.010 ± 0.001',
      'final, changed since: made with 0.012 clear',
    ],
    [
      'tight',
      { bores: [six(0)], shafts: [six(5)], fit: { minPm: -8 * um, maxPm: 0, aimPm: -5 * um } },
      '0.005 ± 0.001 tight',
      '',
    ],
  ])('%s', (_, job, clear, remark) => {
    expect(rowsOf(job)[0]).toMatchObject({ clear, remark });
  });

  it('ends with pieces that have no partner, are left out, or are not measured', () => {
    const view = smallJob({ ...sizes, bores: [six(10), six(40)] });
    const l2 = view.sheet.pieces.find(({ mark }) => mark === 'L2')!.id;
    const remarks = rowsOf({ ...sizes, bores: [six(10), six(40)], fit: { leftOutPieceIds: [l2] } })
      .filter(({ internal, external }) => internal === '' || external === '')
      .map(({ internal, external, remark }) => `${internal}${external} ${remark}`);
    expect(remarks.slice(0, 2)).toEqual(['L2 left out', 'L3 not measured']);
    const alone = rowsOf({ ...sizes, bores: [six(10), six(11)], shafts: [six(0), six(-40)] });
    expect(alone.map(({ external, remark }) => `${external} ${remark}`)).toContain('P2 no partner');
  });
});

describe('the notes under the printed table', () => {
  it('say why a pair is flagged, and which were undone, by whom and why', () => {
    const at = '2026-03-14T11:00:00Z';
    const start = smallJob({ bores: [six(10), six(20)], shafts: [six(0), six(10)] });
    const fit = start.fits[0]!;
    const look = pairLook(start, fit, fit.pairs[0]!, { act: 'made final', at, personId: 'hale' });
    const final = {
      bore: 0, shaft: 0, state: 'final' as const, mark: '1', clearancePm: look.clearancePm,
      uncertaintyPm: look.uncertaintyPm, decidedAt: at, personId: 'hale', looks: [look],
    }; // prettier-ignore
    const undone = {
      ...final, bore: 1, shaft: 1, state: 'undone' as const, mark: '2', reason: 'scored',
    }; // prettier-ignore
    const { sheet } = smallJob({
      bores: [six(10), six(20)],
      shafts: [six(0), six(10)],
      pairs: [final, undone],
    });
    const pieces = sheet.pieces.map((piece) =>
      piece.mark === 'P1' ? { ...piece, fate: 'scrapped' as const } : piece,
    );
    const view = jobView({ ...sheet, pieces });
    const names = {
      mark: (id: string) => sheet.pieces.find((piece) => piece.id === id)!.mark,
      person: (id: string | null) => (id === null ? null : 'M. Hale'),
      gauge: () => 'Mic 1',
    };
    const day = (instant: string) => instant.slice(0, 10);
    expect(paperNotes(view.fits[0]!, view.sheet.pairs, um, mm, names, day)).toEqual({
      flagged: [
        'P1 in L1: Recorded with 0.010 ± 0.001 clear; it still is, but what it stood on has changed. P1 was scrapped.',
      ],
      undone: ['P2 in L2: 2026-03-14, undone by M. Hale: scored. It was pair 2, 0.010 clear.'],
    });
  });
});
