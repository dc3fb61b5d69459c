'use client';

import { cutView } from '@/lib/rules/cuts/cut-view';
import type { JobView } from '@/lib/rules/job-view';
import { isMadeToWords, noAimWords, nothingToCutWords } from '@/lib/text/cut-screen-words';
import { fateWords } from '@/lib/text/cut-past-words';
import { useAltSheets } from '../bench/use-alt-sheets';
import { usePerson } from '../bench/use-person';
import { useJob } from '../job/job-provider';
import { Button } from '../primitives/button';
import { LinkButton } from '../primitives/link-button';
import { CutOpen } from './cut-open';
import { useCutSwitch, type CellAt } from './cut-switch';
import styles from './cut.module.css';
import { FateActs } from './fate-acts';
import { useCutSaid } from './use-cut-said';

type Props = { asked: { pieceId: string | null; featureId: string | null } };

/** What to cut next on one feature of one piece, what was asked of the last cuts, and what they took. */
export function CutSheet({ asked }: Props) {
  const { view } = useJob();
  const piece = view.sheet.pieces.find(({ id }) => id === asked.pieceId);
  const feature = view.sheet.features.find(({ id }) => id === asked.featureId);
  const at = { pieceId: piece?.id ?? '', featureId: feature?.id ?? '' };
  const jobId = view.sheet.job.id;
  useAltSheets(jobId);
  if (piece === undefined || feature === undefined || piece.partId !== feature.partId) {
    return (
      <main className={styles.nothing}>
        <h1>Cut</h1>
        <p>{nothingToCutWords}</p>
        <LinkButton href={`/jobs/${jobId}/fits`}>To the fits</LinkButton>
      </main>
    );
  }
  return <CutHere key={`${at.pieceId} ${at.featureId}`} {...at} />;
}

function CutHere({ pieceId, featureId }: { pieceId: string; featureId: string }) {
  const { view } = useJob();
  const ways = useCutSwitch();
  const person = usePerson();
  const saying = useCutSaid(view, { pieceId, featureId });
  const piece = view.sheet.pieces.find(({ id }) => id === pieceId)!;
  const fate = piece.fate ?? null;
  const cut = fate === null ? cutView(view, { pieceId, featureId }, saying.said) : null;
  if (cut !== null) return <CutOpen cut={cut} saying={saying} personId={person.id} />;
  const cell = view.cell(pieceId, featureId);
  const made = toMakeTo(view, pieceId);
  if (made !== null && fate === null) {
    return (
      <main className={styles.nothing}>
        <h1>{piece.mark}</h1>
        <p>{isMadeToWords(made.mark, piece.mark)}</p>
        <Button kind="main" bench onClick={() => ways?.toBench(made)}>
          Measure {made.mark}
        </Button>
        <Button bench onClick={() => ways?.toBench({ pieceId, featureId })}>
          Back to {piece.mark}
        </Button>
      </main>
    );
  }
  return (
    <main className={styles.nothing}>
      <h1>{piece.mark}</h1>
      {fate === null ? (
        <p>{noAimWords(piece.mark)}</p>
      ) : (
        <>
          <p>{fateWords(piece.mark, fate)}</p>
          <FateActs piece={piece} cell={cell} personId={person.id} />
        </>
      )}
      <Button onClick={() => ways?.toBench({ pieceId, featureId })}>To the bench</Button>
    </main>
  );
}

/** The piece that is made to this one. */
function toMakeTo(view: JobView, partnerId: string): (CellAt & { mark: string }) | null {
  for (const { toMake, toBore, externalFeature, internalFeature } of view.fits) {
    const target = [...toMake, ...toBore].find((one) => one.partnerId === partnerId);
    if (target === undefined) continue;
    const { pieceId, make } = target;
    const mark = view.sheet.pieces.find(({ id }) => id === pieceId)?.mark ?? '';
    return {
      pieceId,
      mark,
      featureId: (make === 'external' ? externalFeature : internalFeature).id,
    };
  }
  return null;
}
