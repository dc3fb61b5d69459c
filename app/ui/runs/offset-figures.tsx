'use client';

import { dialUnit } from '@/lib/rules/cuts/slide';
import type { RunView } from '@/lib/rules/run-view';
import { isOnDiameter } from '@/lib/schema/feature-kinds';
import { offsetFigures, offsetLabels, thenWords } from '@/lib/text/offset-words';
import { shownLength } from '@/lib/text/shown-size';
import { chartStepPm } from '@/lib/text/chart-step';
import { useJob } from '../job/job-provider';
import styles from './runs.module.css';

type Props = {
  run: RunView;
  onDiameterPm: number;
  onDialPm: number;
  /** Which piece comes out where after it. */
  then: { mark: string; sizePm: number };
};

/** What to put in: on diameter, on the dial as it counts, and where the next piece then comes out. */
export function OffsetFigures({ run, onDiameterPm, onDialPm, then }: Props) {
  const { chosen } = useJob();
  const { dial } = run.run;
  const labels = offsetLabels({ onDiameter: isOnDiameter(run.feature.kind), dial, onDialPm });
  const step = chartStepPm[chosen.unit];
  const figures = offsetFigures({ onDiameterPm, onDialPm }, dialUnit(run.run, chosen.unit), chosen);
  return (
    <>
      <dl className={styles.offset}>
        <div>
          <dt>{labels.offset}</dt>
          <dd className={styles.offsetMain}>{figures.offset}</dd>
        </div>
        <div>
          <dt>{labels.dial}</dt>
          <dd className={styles.offsetDial}>{figures.dial}</dd>
        </div>
      </dl>
      <p className={styles.remark}>
        {thenWords(then.mark, shownLength(Math.round(then.sizePm), step, chosen))}
      </p>
    </>
  );
}
