'use client';

import { useState } from 'react';
import type { Slip } from '@/lib/rules/slip';
import type { Standing } from '@/lib/rules/standing';
import type { Gauge } from '@/lib/schema/gauge';
import {
  blindSlipQuestion,
  slipAnswers,
  slipQuestion,
  slipSays,
  type SlipQuestion,
} from '@/lib/text/bench-slip';
import { Question } from '../primitives/question';
import { SlipReasonsLater } from './bench-later';
import styles from './slip-panel.module.css';
import type { Bench } from './use-bench';

type Props = {
  question: SlipQuestion;
  onAgain: () => void;
  /** It counts, and why. */
  onRight: (reason: string) => void;
  onSlip: () => void;
  onMistyped: () => void;
};

/** A held reading is asked about in the place of the keys. It stays until an answer is given. */
export function SlipPanel({ question, onAgain, onRight, onSlip, onMistyped }: Props) {
  const [keeps, setKeeps] = useState(false);
  if (keeps) return <SlipReasonsLater onKeep={onRight} onBack={() => setKeeps(false)} />;
  return (
    <div className={styles.panel}>
      <Question
        title={question.title}
        rows={question.rows}
        says={slipSays}
        answers={[
          { label: slipAnswers.again, onAnswer: onAgain },
          { label: slipAnswers.right, onAnswer: () => setKeeps(true) },
          { label: slipAnswers.slip, onAnswer: onSlip },
        ]}
      />
      <button type="button" className={styles.mistyped} onClick={onMistyped}>
        {slipAnswers.mistyped}
      </button>
    </div>
  );
}

/** The words of the question about a held reading of this bench. */
export function heldQuestion(
  bench: Bench,
  held: Standing,
  found: { slip: Slip; gauge: Gauge; othersPm: readonly number[] },
): SlipQuestion {
  const { valuePm, resolutionPm, text, unit } = held;
  const typed = { text, unit };
  if (bench.blind !== null) {
    return blindSlipQuestion({ valuePm, resolutionPm, typed }, bench.chosen);
  }
  const { slip, gauge, othersPm } = found;
  return slipQuestion(
    {
      kind: slip.kind,
      valuePm,
      typed,
      insteadPm: slip.insteadPm,
      stepPm: slip.stepPm,
      stopsAtPm: slip.stopsAtPm,
      expected: slip.expected,
      others: othersPm.length,
      othersMeanPm: othersPm.length === 0 ? null : meanOf(othersPm),
      elsewhere: slip.elsewhere === null ? null : elsewhereName(bench, slip.elsewhere),
      gauge,
      resolutionPm,
      repeatPm: bench.view.cells.history.get(held.gaugeId)?.sdPm ?? null,
    },
    bench.chosen,
  );
}

function meanOf(values: readonly number[]): number {
  const first = values[0]!;
  return first + values.reduce((sum, value) => sum + (value - first), 0) / values.length;
}

function elsewhereName(bench: Bench, at: { pieceId: string; featureId: string }): string {
  const { pieces, features } = bench.view.sheet;
  const mark = pieces.find(({ id }) => id === at.pieceId)?.mark ?? '';
  const feature = features.find(({ id }) => id === at.featureId)?.name.toLowerCase() ?? '';
  return `${mark} ${feature}`;
}
