'use client';

import type { Blind } from '@/lib/rules/entry-blind';
import { blindWords } from '@/lib/text/bench-blind';
import { spindleWords } from '@/lib/text/bench-target';
import styles from './reading-block.module.css';
import type { Bench } from './use-bench';

type Props = {
  bench: Bench;
  blind: Blind;
  onVoid: () => void;
  onCut: (() => void) | null;
  cutBusy: boolean;
};

/** In the place of the reading while a set is measured unseen: how many are taken, and nothing of what they say. */
export function BlindBlock({ bench, blind, onVoid, onCut, cutBusy }: Props) {
  const { last } = bench;
  const { title, says } = blindWords(blind);
  const isStruck = last?.state === 'struck';
  return (
    <section className={styles.block} aria-label="Reading">
      <p className={styles.verdict}>
        <span className={styles.word}>{isStruck ? 'The last is struck out' : 'Unseen'}</span>
      </p>
      <div className={styles.reading} data-state="hidden">
        <span className={styles.figure} style={{ '--ems': 4.4 } as React.CSSProperties}>
          {title}
        </span>
      </div>
      <div className={styles.unseen}>
        <p>
          {says} {onCut === null ? '' : spindleWords}
        </p>
        <button type="button" className={styles.show} onClick={bench.showSet}>
          Show them now
        </button>
      </div>
      <div className={styles.acts}>
        {onCut === null ? null : (
          <button type="button" className={styles.act} onClick={onCut} disabled={cutBusy}>
            Cut since
          </button>
        )}
        {last === null || blind.taken + (isStruck ? 1 : 0) === 0 ? null : (
          <button type="button" className={styles.act} onClick={onVoid}>
            {isStruck ? 'Put back' : 'Void this'}
          </button>
        )}
      </div>
      <output className="unseen">
        {title}. {says}
      </output>
    </section>
  );
}
