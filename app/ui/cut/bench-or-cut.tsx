'use client';

import { usePathname, useSearchParams } from 'next/navigation';
import { useMemo, useState } from 'react';
import { BenchSheet } from '../bench/bench-sheet';
import { remember } from '../bench/device-memory';
import { useJob } from '../job/job-provider';
import { CutSheet } from './cut-sheet';
import { CutSwitchContext, type CellAt, type CutSwitch } from './cut-switch';

/**
 * The Bench, or the Cut screen of one piece, by the address. The way between them asks the server for
 * nothing, so that measuring, cutting and measuring again go on without a network.
 */
export function BenchOrCut({ blind = null }: { blind?: string | null }) {
  const { view } = useJob();
  const isCut = usePathname().endsWith('/cut');
  const searched = useSearchParams();
  const jobId = view.sheet.job.id;
  const ways = useMemo((): CutSwitch => {
    const go = (sheet: 'bench' | 'cut') => (cell: CellAt) => {
      remember(`stop:${jobId}`, JSON.stringify(cell));
      const asked = new URLSearchParams({ piece: cell.pieceId, feature: cell.featureId });
      window.history.pushState(null, '', `/jobs/${jobId}/${sheet}?${asked}`);
      window.scrollTo(0, 0);
    };
    return { toCut: go('cut'), toBench: go('bench') };
  }, [jobId]);
  const pieceId = searched.get('piece');
  const featureId = searched.get('feature');
  return (
    <CutSwitchContext value={ways}>
      {isCut ? (
        <CutSheet key={`${pieceId} ${featureId}`} asked={{ pieceId, featureId }} />
      ) : (
        <BenchHere blind={blind} />
      )}
    </CutSwitchContext>
  );
}

/** The Bench as it was asked for when it came up; from then on it keeps its own place in the address. */
function BenchHere({ blind }: { blind: string | null }) {
  const searched = useSearchParams();
  const [asked] = useState({ pieceId: searched.get('piece'), featureId: searched.get('feature') });
  return <BenchSheet asked={asked} blind={blind} />;
}
