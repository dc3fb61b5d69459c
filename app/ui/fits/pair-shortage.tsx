'use client';

import { useEffect, useState } from 'react';
import type { FitView } from '@/lib/rules/fit-view';
import { pairRework, pairsShort, type Shortage } from '@/lib/rules/pair-rework';
import { keptApartWords, shortageWords, workWords } from '@/lib/text/pairing-words';
import { useJob } from '../job/job-provider';
import { Choice } from '../primitives/choice';
import styles from './pairs.module.css';

type Side = 'internal' | 'external';

/** Where not every piece finds a partner: how far the pairing goes, and the least work that completes it. */
export function PairShortage({ fit, stepPm }: { fit: FitView; stepPm: number }) {
  const { view, chosen } = useJob();
  const [cut, setCut] = useState<Side>('external');
  const short = pairsShort(fit);
  const found = useRework(fit, cut, short.most < short.of);
  if (short.most >= short.of) return null;
  const markOf = (id: string) => view.sheet.pieces.find((piece) => piece.id === id)?.mark ?? '';
  const partOf = (partId: string) =>
    view.parts.find(({ part }) => part.id === partId)?.part.name ?? 'piece';
  return (
    <div className={styles.shortage}>
      <p className={styles.sentence}>
        <b>{shortageWords(short)}</b>
      </p>
      <Choice
        label="What may be worked on"
        name="rework"
        value={cut}
        onChange={setCut}
        options={[
          { value: 'external', label: partOf(fit.externalFeature.partId) },
          { value: 'internal', label: partOf(fit.internalFeature.partId) },
        ]}
      />
      <ul aria-label="The least work that completes it">
        {found?.works === null && <li>{keptApartWords}</li>}
        {found?.works?.map((work) => (
          <li key={work.externalPieceId}>
            {workWords(
              {
                ...work,
                internal: markOf(work.internalPieceId),
                external: markOf(work.externalPieceId),
              },
              stepPm,
              chosen,
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Worked out after the page is drawn: for hundreds of pieces it takes a tenth of a second. */
function useRework(fit: FitView, cut: Side, isShort: boolean): Shortage | null {
  const [found, setFound] = useState<{ fit: FitView; cut: Side; shortage: Shortage | null }>();
  useEffect(() => {
    if (!isShort) return undefined;
    const timer = setTimeout(() => setFound({ fit, cut, shortage: pairRework(fit, cut) }), 50);
    return () => clearTimeout(timer);
  }, [fit, cut, isShort]);
  return found?.cut === cut ? found.shortage : null;
}
