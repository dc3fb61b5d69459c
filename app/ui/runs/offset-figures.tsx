'use client';

import { shownLength } from '@/lib/text/shown-size';
import { chartStepPm } from '../charts/run-chart-data';
import { useJob } from '../job/job-provider';
import styles from './runs.module.css';

type Props = {
  dial: 'radius' | 'diameter';
  onDiameterPm: number;
  onDialPm: number;
  /** Which piece comes out where after it. */
  then: { mark: string; sizePm: number };
};

/** What to put in: on diameter, on the dial as it counts, and where the next piece then comes out. */
export function OffsetFigures({ dial, onDiameterPm, onDialPm, then }: Props) {
  const { chosen } = useJob();
  const step = chartStepPm[chosen.unit];
  return (
    <>
      <dl className={styles.offset}>
        <div>
          <dt>Offset, on diameter</dt>
          <dd className={styles.offsetMain}>{shownLength(onDiameterPm, step, chosen, 'always')}</dd>
        </div>
        <div>
          <dt>
            {dial === 'radius' ? 'Radius' : 'Diameter'} dial, {onDialPm < 0 ? 'smaller' : 'larger'}
          </dt>
          <dd className={styles.offsetDial}>{shownLength(Math.abs(onDialPm), step, chosen)}</dd>
        </div>
      </dl>
      <p className={styles.remark}>
        Then {then.mark} comes out near {shownLength(Math.round(then.sizePm), step, chosen)}: an
        estimate.
      </p>
    </>
  );
}
