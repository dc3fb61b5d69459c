import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it, vi } from 'vitest';
import { PieceRow } from '@/app/ui/board/piece-row';
import { JobProvider } from '@/app/ui/job/job-provider';
import { cellKey } from '@/lib/rules/cells';
import { jobView } from '@/lib/rules/job-view';
import { pairLook } from '@/lib/rules/pair-look';
import type { JobSheet } from '@/lib/schema/sheet';
import { twoFits } from '@/test/rules/two-fits';
import { readOf } from '@/test/ui/fits/fits-page';

vi.mock('next/navigation', () => ({ useRouter: () => ({ push() {} }) }));

const chosen = { unit: 'mm', decimal: '.', hand: 'right', personId: null } as const;

function row(sheet: JobSheet, mark: string) {
  const piece = sheet.pieces.find((one) => one.mark === mark)!;
  const features = sheet.features.filter(({ partId }) => partId === piece.partId);
  return renderToStaticMarkup(
    <JobProvider sheet={sheet} chosen={chosen}>
      <table>
        <tbody>
          <PieceRow piece={piece} features={features} picked={0} />
        </tbody>
      </table>
    </JobProvider>,
  );
}

describe('a row of the board', () => {
  it('names the partner at each fitted feature of a piece', () => {
    const { sheet, view, piece, feature } = twoFits();
    const plate = view.matesByFeature.get(cellKey(piece('L5').id, feature('3').id))!.pieceId;
    const mark = sheet.pieces.find(({ id }) => id === plate)!.mark;
    const text = readOf(row(sheet, 'L5'));
    expect(text).toMatch(/^L5 .*with P5 , bore/);
    expect(text).toContain(`in ${mark} `);
    // With one partner there is nothing to tell apart.
    expect(readOf(row(sheet, 'P5'))).toMatch(/^P5 in L5 (?!,)/);
  });

  it('shows that a pair is final', () => {
    const { sheet, view } = twoFits();
    const fit = view.fits[0]!;
    const pair = fit.pairs[0]!;
    const at = '2026-03-14T11:00:00Z';
    const look = pairLook(view, fit, pair, { act: 'made final', at, personId: null });
    const { internalPieceId, externalPieceId } = pair;
    const final: JobSheet = {
      ...sheet,
      pairs: [
        {
          id: 'pair', version: 1, createdAt: at, struckAt: null, jobId: sheet.job.id,
          fitId: fit.fit.id, internalPieceId, externalPieceId, state: 'final', mark: '1',
          clearancePm: look.clearancePm, uncertaintyPm: look.uncertaintyPm, decidedAt: at,
          personId: null, looks: [look],
        },
      ],
    }; // prettier-ignore
    expect(jobView(final).fits[0]!.pairs[0]!.state).toBe('final');
    const mark = sheet.pieces.find(({ id }) => id === externalPieceId)!.mark;
    const html = row(final, mark);
    expect(readOf(html)).toMatch(/in L\d, final/);
    // The comma stays with the mark where the word goes to the next line.
    expect(html).toMatch(/in L\d(<!-- -->)?,<span class="[^"]*mateState[^"]*"> final/);
  });
});
