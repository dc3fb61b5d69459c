'use client';

import { usePathname, useSearchParams } from 'next/navigation';
import { Suspense, useEffect, useMemo, useState } from 'react';
import { flushSync } from 'react-dom';
import { BenchSheet } from '../bench/bench-sheet';
import { comeLater } from '../bench/come-later';
import { remember } from '../bench/device-memory';
import { useJob } from '../job/job-provider';
import { CutSwitchContext, type CellAt, type CutSwitch } from './cut-switch';

/** Past the first reading, well before the first cut. */
const fetchAfterMs = 1500;
const cut = comeLater(() => import('./cut-sheet').then((one) => one.CutSheet));

type Shown = { sheet: 'bench' | 'cut'; pieceId: string | null; featureId: string | null };

/**
 * The Bench, or the Cut screen of one piece, by the address. The way between them asks the server for
 * nothing, so that measuring, cutting and measuring again go on without a network; and it is gone in the
 * moment of the key, so that the next key belongs to the screen that is seen.
 */
export function BenchOrCut({ blind = null }: { blind?: string | null }) {
  const { view } = useJob();
  const jobId = view.sheet.job.id;
  const path = usePathname();
  const searched = useSearchParams();
  const [shown, setShown] = useState(() => shownBy(path, searched));
  const ways = useMemo((): CutSwitch => {
    const go = (sheet: Shown['sheet']) => (cell: CellAt) => {
      const { pieceId, featureId } = cell;
      remember(`stop:${jobId}`, JSON.stringify({ pieceId, featureId }));
      const asked = new URLSearchParams({ piece: pieceId, feature: featureId });
      window.history.pushState(null, '', `/jobs/${jobId}/${sheet}?${asked}`);
      // A cut is kept first, and by then the key is past: without this the next one could still hear the old screen.
      flushSync(() => setShown({ sheet, pieceId, featureId }));
      window.scrollTo(0, 0);
    };
    return { toCut: go('cut'), toBench: go('bench') };
  }, [jobId]);

  // The Bench comes up without the Cut screen, and fetches it while there is a network.
  useEffect(() => {
    const timer = setTimeout(() => void cut.fetchIt(), fetchAfterMs);
    return () => clearTimeout(timer);
  }, []);

  // Back and forward, or a link: the address itself says what is to be seen.
  useEffect(() => {
    const { pathname, search } = window.location;
    // The router may still be on its way to where the address is already.
    if (pathname !== path) return;
    const said = shownBy(pathname, new URLSearchParams(search));
    // oxlint-disable-next-line react/set-state-in-effect -- the router follows the address, not the other way about
    setShown((old) => (old.sheet === said.sheet ? old : said));
  }, [path]);

  const { sheet, pieceId, featureId } = shown;
  const asked = useMemo(() => ({ pieceId, featureId }), [pieceId, featureId]);
  return (
    <CutSwitchContext value={ways}>
      {sheet === 'cut' ? (
        <Suspense fallback={null}>
          <cut.Part asked={asked} />
        </Suspense>
      ) : (
        <BenchSheet asked={asked} blind={blind} />
      )}
    </CutSwitchContext>
  );
}

function shownBy(path: string, searched: { get: (name: string) => string | null }): Shown {
  return {
    sheet: path.endsWith('/cut') ? 'cut' : 'bench',
    pieceId: searched.get('piece'),
    featureId: searched.get('feature'),
  };
}
