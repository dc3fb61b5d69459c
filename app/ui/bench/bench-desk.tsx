'use client';

import { useMemo } from 'react';
import type { SlipQuestion } from '@/lib/text/bench-slip';
import { GaugeListLater } from './bench-later';
import styles from './bench.module.css';
import { EntryLine } from './entry-line';
import { Keypad, type KeypadSide } from './keypad';
import { SlipPanel } from './slip-panel';
import type { Bench } from './use-bench';
import type { EntryState } from './use-entry';
import { useMedia } from './use-media';
import { useMemory } from './use-memory';
import { useSteady } from './use-steady';

type Props = {
  bench: Bench;
  entry: EntryState;
  /** The question about a held reading; null where none is held. */
  question: SlipQuestion | null;
  /** It stands in the place of the keys: nothing is being typed over it. */
  isAsking: boolean;
  low: boolean;
  onChooseGauge: () => void;
  onCorrect: (kind: 'void' | 'count', readingId: string, reason?: string) => void;
  onMistyped: () => void;
};

/** Under the thumb: the entry line, and below it the keys, the gauges to choose from, or a question. */
export function BenchDesk(props: Props) {
  const { bench, entry, question, isAsking, low, onChooseGauge, onCorrect, onMistyped } = props;
  const { held, gauge, chosen } = bench;
  const [soft] = useMemory('soft-keyboard');
  const isTouch = useMedia('(pointer: coarse)');
  const press = useSteady(entry.press);
  const side = useMemo(() => sideOf(bench), [bench]);
  const toEntry = () => entry.input.current?.focus({ preventScroll: true });
  return (
    <div className={styles.desk}>
      <EntryLine
        bench={bench}
        entry={entry}
        softKeyboard={soft === 'on'}
        tucked={question !== null}
        onChooseGauge={onChooseGauge}
      />
      {isAsking && question !== null && held !== null ? (
        <SlipPanel
          key={held.id}
          question={question}
          onAgain={() => {
            onCorrect('void', held.id, 'measured again');
            bench.pick({ station: held.station, direction: held.direction });
            toEntry();
          }}
          onRight={(reason) => {
            onCorrect('count', held.id, reason);
            toEntry();
          }}
          onSlip={() => onCorrect('void', held.id, 'a slip')}
          onMistyped={onMistyped}
        />
      ) : gauge === null ? (
        <div className={styles.gauges}>
          <GaugeListLater bench={bench} onChosen={toEntry} />
        </div>
      ) : (
        <div className={styles.keypad}>
          <Keypad
            decimal={chosen.decimal}
            onKey={press}
            low={low}
            fill
            side={side}
            sideOnly={soft === 'on' && isTouch}
          />
          <p className={styles.hint}>
            A plugged-in gauge types here too. Enter logs, V voids the last, ? lists the keys.
          </p>
        </div>
      )}
    </div>
  );
}

function sideOf({ unit, gauge, lastDigits, blind, where, piece }: Bench): KeypadSide {
  const beside = where.beside(1);
  return {
    unit,
    unitChanged: gauge !== null && unit !== gauge.unit,
    lastDigits: blind === null ? lastDigits : null,
    next: beside === null ? null : beside.pieceId === piece.id ? 'feature' : 'piece',
  };
}
