import { describe, expect, it } from 'vitest';
import { cutAim } from '@/lib/rules/cuts/cut-aim';
import { entryPartner } from '@/lib/rules/entry-partner';
import { jobView } from '@/lib/rules/job-view';
import { cellKey } from '@/lib/rules/cells';
import { um } from './make';
import { twoFits } from './two-fits';

const decidedAt = '2026-03-14T11:00:00Z';

describe('a part in two fits', () => {
  it('has a partner at each of its features', () => {
    const { view, piece, feature } = twoFits();
    const liner = piece('L5').id;
    expect(view.fits).toHaveLength(2);
    const atBore = view.matesByFeature.get(cellKey(liner, feature('1').id))!;
    const atOutside = view.matesByFeature.get(cellKey(liner, feature('3').id))!;
    expect(atBore.pieceId).toBe(piece('P5').id);
    expect(atOutside.fitId).toBe('second fit');
    expect(view.sheet.pieces.find(({ id }) => id === atOutside.pieceId)!.mark).toMatch(/^BP/);
  });

  it('is cut at each feature to the partner decided for that feature', () => {
    const { sheet, view, piece, feature } = twoFits();
    const aim = (from: typeof view, balloon: string) =>
      cutAim(from, piece('L5').id, feature(balloon).id)?.partner?.pieceId;
    const plates = view.fits[1]!.internals.map((one) => one.piece.id);
    const chosen = view.matesByFeature.get(cellKey(piece('L5').id, feature('3').id))!.pieceId;
    expect(aim(view, '3')).toBe(chosen);
    const other = plates.find((id) => id !== chosen)!;
    const locked = jobView({
      ...sheet,
      pairs: [
        {
          id: 'pair', version: 1, createdAt: decidedAt, struckAt: null, jobId: sheet.job.id,
          fitId: 'second fit', internalPieceId: other, externalPieceId: piece('L5').id,
          state: 'locked', mark: '', clearancePm: null, uncertaintyPm: null, decidedAt, personId: null,
        },
      ],
    }); // prettier-ignore
    expect(locked.fits[1]!.internals.find((one) => one.piece.id === other)!.size).not.toBeNull();
    expect(aim(locked, '3')).toBe(other);
  });

  it('takes the limits of an open feature from the partner of that feature', () => {
    const { view, piece, feature } = twoFits();
    const cell = view.cell(piece('L5').id, feature('3').id);
    const mate = view.matesByFeature.get(cellKey(piece('L5').id, feature('3').id))!;
    const plate = view.fits[1]!.internals.find((one) => one.piece.id === mate.pieceId)!;
    expect(cell.limitsFrom).toBe('partner');
    expect(cell.limits.upperPm).toBe(plate.size!.valuePm - 6_000 * um);
    expect(cell.verdict).not.toBeNull();
  });

  it('shows the Bench the partner of the feature that is measured', () => {
    const { view, piece, feature } = twoFits();
    const at = (balloon: string) => entryPartner(view, piece('L5').id, feature(balloon).id);
    expect(at('1')).toMatchObject({ side: 'internal', piece: { mark: 'P5' } });
    expect(at('3')).toMatchObject({ side: 'external', fit: { fit: { id: 'second fit' } } });
  });
});
