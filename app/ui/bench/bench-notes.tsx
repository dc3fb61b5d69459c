'use client';

import { memo } from 'react';
import type { TroubleCode } from '@/lib/outbox/trouble';
import type { Standing } from '@/lib/rules/standing';
import { beforeCutWords, notKeptWords, troubleWords } from '@/lib/text/bench-trouble';
import { shownLength, type Shown } from '@/lib/text/shown-size';
import { trayNotice } from '@/lib/text/tray-words';
import styles from './bench-notes.module.css';
import type { Fresh, FreshList } from './use-fresh';

type Props = {
  fresh: FreshList;
  /** Readings are hidden. */
  blind: boolean;
  shown: Shown;
  trouble: TroubleCode | null;
  clockOff: boolean;
  /** Readings that were taken before the cut they came after. */
  beforeCut: readonly Standing[];
  waiting: number;
  onTray: () => void;
  /** Hands what was not kept to the browser as a file. */
  onSave: (failed: readonly Fresh[]) => void;
};

/** What a person has to know before the next reading: what was not kept, what would not be taken. */
export const BenchNotes = memo(function BenchNotes(props: Props) {
  const { fresh, blind, shown, trouble, clockOff, beforeCut, waiting, onTray, onSave } = props;
  const failed = fresh.list.filter(({ failure }) => failure !== null);
  const words = troubleWords(trouble);
  const early = blind ? [] : beforeCut;
  const isAny = failed.length + waiting + early.length > 0 || words !== '' || clockOff;
  if (!isAny) return null;
  return (
    <div className={styles.notes} role="alert">
      {failed.map(({ draft, failure }) => (
        <p key={draft.id} className={styles.note}>
          <b>
            {draft.kind === 'reading'
              ? blind
                ? 'A reading'
                : shownLength(draft.row.valuePm, draft.row.resolutionPm, shown)
              : `The correction (${draft.row.kind})`}
          </b>{' '}
          {notKeptWords(failure!)}
          <button type="button" className={styles.act} onClick={() => fresh.again(draft.id)}>
            Keep it again
          </button>
        </p>
      ))}
      {failed.length === 0 ? null : (
        <p className={styles.note}>
          <button type="button" className={styles.act} onClick={() => onSave(failed)}>
            Save it as a file
          </button>
        </p>
      )}
      {failed.length > 0 || words === '' ? null : <p className={styles.note}>{words}</p>}
      {waiting === 0 ? null : (
        <p className={styles.note}>
          {trayNotice(waiting)}
          <button type="button" className={styles.act} onClick={onTray}>
            See which
          </button>
        </p>
      )}
      {early.length === 0 ? null : (
        <p className={styles.note}>
          {beforeCutWords(
            early.map(({ valuePm, resolutionPm }) => shownLength(valuePm, resolutionPm, shown)),
          )}
        </p>
      )}
      {clockOff ? (
        <p className={styles.note}>
          The clock of this device is more than two minutes off. Readings keep their order; put it
          right.
        </p>
      ) : null}
    </div>
  );
});
