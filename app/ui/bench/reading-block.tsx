'use client';

import { memo, useDeferredValue } from 'react';
import { heardWords } from '@/lib/text/bench-heard';
import { placeWords } from '@/lib/text/bench-place';
import type { SlipQuestion } from '@/lib/text/bench-slip';
import { shownLength } from '@/lib/text/shown-size';
import { typedAside } from '@/lib/text/typed-aside';
import { verdictWords, type VerdictFacts } from '@/lib/text/verdict';
import { emsOf } from '../primitives/ems-of';
import { WorkingFigure } from '../primitives/working-figure';
import { VerdictMark } from '../verdict/verdict-mark';
import styles from './reading-block.module.css';
import { TargetNote } from './target-note';
import type { Bench } from './use-bench';
import { useMedia } from './use-media';

type Props = {
  bench: Bench;
  /** The question about the reading shown, where it is held. */
  slip: SlipQuestion | null;
  onVoid: () => void;
  /** Shown while metal is still to come off; null otherwise. */
  onCut: (() => void) | null;
  cutBusy: boolean;
  /** The words under the reading. */
  children: React.ReactNode;
};

/** The reading just taken, huge, with its verdict over it and the way to take it back beside it. */
export function ReadingBlock({ bench, slip, onVoid, onCut, cutBusy, children }: Props) {
  const { last } = bench;
  const later = useDeferredValue(bench);
  return (
    <section className={styles.block} aria-label="Reading">
      <Shown bench={bench} slip={slip} />
      {children}
      <div className={styles.acts}>
        {onCut === null ? null : (
          <button type="button" className={styles.act} onClick={onCut} disabled={cutBusy}>
            Cut since
          </button>
        )}
        {last === null ? null : (
          <button type="button" className={styles.act} onClick={onVoid}>
            {last.state === 'struck' ? 'Put back' : 'Void this'}
          </button>
        )}
      </div>
      <Said bench={later} />
    </section>
  );
}

/** Verdict and figure. */
const Shown = memo(function Shown({ bench, slip }: Pick<Props, 'bench' | 'slip'>) {
  const { last, chosen } = bench;
  const isWide = useMedia('(min-width: 768px)');
  const verdict = verdictOf(bench);
  const text = last === null ? '' : shownLength(last.valuePm, last.resolutionPm, chosen);
  return (
    <>
      <p className={styles.verdict}>
        <VerdictMark state={verdict.state} side={verdict.side ?? null} scale={isWide ? 1.7 : 1.4} />
        <span className={styles.word}>{verdictSaid(bench)}</span>
        <span className={styles.where}>{whereOf(bench)}</span>
      </p>
      <div className={styles.reading} data-state={last?.state ?? 'none'}>
        {last === null ? (
          <Empty bench={bench} />
        ) : (
          <span className={styles.figure} style={{ '--ems': emsOf(text) } as React.CSSProperties}>
            <WorkingFigure text={text} {...(slip === null ? {} : { suspect: slip.suspect })} />
          </span>
        )}
      </div>
    </>
  );
});

/** The same for those who hear it. */
const Said = memo(function Said({ bench }: { bench: Bench }) {
  const { last, chosen, cell } = bench;
  const words =
    last === null
      ? ''
      : heardWords({
          figure: shownLength(last.valuePm, last.resolutionPm, chosen),
          unit: chosen.unit,
          where: whereOf(bench),
          verdict: verdictSaid(bench),
          read: cell.readings.length,
        });
  return <output className="unseen">{words}</output>;
});

function verdictSaid(bench: Bench): string {
  const { last, chosen, resolutionPm } = bench;
  if (last === null) return 'Nothing read yet';
  return noVerdict(bench) ?? verdictWords(verdictOf(bench), { ...chosen, resolutionPm });
}

function whereOf(bench: Bench): string {
  const { last, feature } = bench;
  if (last === null) return '';
  return [placeWords(last, feature), asTyped(bench)].filter(Boolean).join(', ');
}

function verdictOf({ last, cell }: Bench): VerdictFacts {
  if (last === null) return { state: 'none' };
  if (last.state === 'held') return { state: 'held' };
  if (last.state === 'struck') return { state: 'struck' };
  return cell.verdict ?? { state: 'none' };
}

/** Why there is a reading and no verdict; null where there is one. */
function noVerdict({ last, cell }: Bench): string | null {
  if (last === null || last.state !== 'counted' || cell.verdict !== null) return null;
  return cell.size === null ? 'Too few to say' : 'No limits given';
}

/** What was typed, where the figure shown is not that. */
function asTyped({ last, chosen }: Bench): string {
  if (last === null) return '';
  const first = last.firstText === null ? '' : `first typed ${last.firstText}`;
  const text = shownLength(last.valuePm, last.resolutionPm, chosen);
  return [first, typedAside(last, { text, unit: chosen.unit })].filter(Boolean).join(', ');
}

function Empty({ bench }: { bench: Bench }) {
  const { next, feature, piece, cell, partner } = bench;
  if (partner !== null && partner.target !== null && cell.earlier.length === 0) {
    return <TargetNote bench={bench} trouble={null} />;
  }
  const place = next === null ? '' : placeWords(next, feature);
  return (
    <p className={styles.empty}>
      {cell.earlier.length > 0
        ? `Cut since it was measured. Measure ${piece.mark} again`
        : `Nothing read of ${piece.mark} here yet. Measure the ${feature.name.toLowerCase()}`}
      {place === '' ? '.' : `, ${place} first.`}
    </p>
  );
}
