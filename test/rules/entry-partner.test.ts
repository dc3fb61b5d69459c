import { describe, expect, it } from 'vitest';
import { entryPartner } from '@/lib/rules/entry-partner';
import { entrySlipFacts } from '@/lib/rules/entry-slip-facts';
import { jobView } from '@/lib/rules/job-view';
import { exampleSheet } from './example-sheet';
import { mm, um } from './make';

const view = jobView(exampleSheet());
const { pieces, features, gauges } = view.sheet;
const pieceOf = (mark: string) => pieces.find((piece) => piece.mark === mark)!.id;
const featureOf = (balloon: string) => features.find((feature) => feature.balloon === balloon)!;
const partnerOf = (mark: string, balloon: string) =>
  entryPartner(view, pieceOf(mark), featureOf(balloon).id);

describe('entryPartner', () => {
  it('is the liner a piston was made to, with the clearance and the aim', () => {
    expect(partnerOf('P5', '4')).toMatchObject({
      side: 'external',
      piece: { mark: 'L5' },
      feature: { name: 'Bore' },
      state: 'chosen',
      target: null,
      aimPm: 17_998 * um,
    });
    // 18.008 less the mean of the four readings that count, 17.99875
    expect(partnerOf('P5', '4')?.pair?.clearancePm).toBe(9_250_000);
  });

  it('is what a piston is still to be made to', () => {
    expect(partnerOf('P7', '4')).toMatchObject({
      piece: { mark: 'L7' },
      state: 'to make',
      pair: null,
      target: { targetPm: 18 * mm },
    });
  });

  it('is the piston of a liner, which has no aim of its own', () => {
    expect(partnerOf('L5', '1')).toMatchObject({
      side: 'internal',
      piece: { mark: 'P5' },
      feature: { name: 'Outside' },
      target: null,
      aimPm: null,
      pair: { clearancePm: 9_250_000 },
    });
  });

  it('is nobody for a feature that no fit names', () => {
    expect(partnerOf('P5', '5')).toBeNull();
    expect(partnerOf('L5', '3')).toBeNull();
  });
});

describe('entrySlipFacts', () => {
  const feature = featureOf('4');
  const cell = view.cell(pieceOf('P5'), feature.id);
  const mic = gauges.find(({ name }) => name === 'Mic 2')!;
  const given = {
    view,
    cell,
    feature,
    gauge: mic,
    partner: partnerOf('P5', '4'),
    unit: 'mm',
    decimal: '.',
  } as const;

  it('holds a reading against the others that count, not against itself and not against held ones', () => {
    expect(entrySlipFacts(given).othersPm).toHaveLength(4);
    const first = cell.readings[0]!.id;
    expect(entrySlipFacts({ ...given, exceptId: first }).othersPm).toHaveLength(3);
    expect(entrySlipFacts(given)).toMatchObject({
      kind: 'outside',
      nominalPm: 18 * mm,
      limits: cell.limits,
      beforeCutPm: null,
      setting: { decimal: '.', unit: 'mm', nominalPm: 18 * mm },
      repeatPm: view.cells.history.get(mic.id)!.sdPm,
    });
  });

  it('knows the size before the last cut', () => {
    const sheet = exampleSheet();
    const last = cell.readings.at(-1)!;
    const cut = {
      id: 'cut',
      version: 1,
      createdAt: '2026-03-14T10:00:00Z',
      struckAt: null,
      jobId: sheet.job.id,
      pieceId: cell.pieceId,
      featureId: feature.id,
      ordinal: 1,
      lastReadingId: last.id,
      spring: false,
      askedPm: 0,
      beforePm: 18 * mm,
      afterPm: null,
      tool: '',
    };
    const after = jobView({ ...sheet, cuts: [cut] });
    const facts = entrySlipFacts({
      ...given,
      view: after,
      cell: after.cell(cell.pieceId, feature.id),
    });
    expect(facts).toMatchObject({ othersPm: [], beforeCutPm: 17_999 * um });
  });

  it('knows the other features of the piece and the bore of its partner', () => {
    const names = entrySlipFacts(given).elsewhere.map(({ pieceId, featureId }) => [
      pieces.find(({ id }) => id === pieceId)!.mark,
      features.find(({ id }) => id === featureId)!.name,
    ]);
    expect(names).toEqual([
      ['P5', 'Length'],
      ['P5', 'Bush seat'],
      ['L5', 'Bore'],
    ]);
  });
});
