'use client';

import type { ReactNode } from 'react';
import { unitWords } from '@/lib/text/unit-words';
import { ProgressRule } from '../primitives/progress-rule';
import { jobIndex } from '../primitives/job-index';
import { SheetHead } from '../primitives/sheet-head';
import { TitleBlock, type BlockCell } from '../primitives/title-block';
import { useJob } from './job-provider';
import { Kept } from './kept';
import styles from './sheet-frame.module.css';

type Props = {
  /** The sheet's name in the index: Board, Fits, Runs. */
  current: string;
  number: number;
  left?: BlockCell[];
  right?: BlockCell[];
  children: ReactNode;
};

/** What every desk sheet of a job stands in: head, progress rule, the sheet, title block. */
export function SheetFrame({ current, number, left = [], right = [], children }: Props) {
  const { view, chosen } = useJob();
  const { job } = view.sheet;
  const by = view.sheet.people.find((person) => person.id === chosen.personId);
  return (
    <div className={styles.page}>
      <SheetHead job={{ name: job.name }} index={jobIndex(job.id)} current={current} />
      <ProgressRule made={view.progress.made} of={view.progress.of} />
      <main className={styles.main}>{children}</main>
      <TitleBlock
        left={[
          { label: 'Sheet', value: `${number} ${current}` },
          { label: 'Lengths', value: unitWords(chosen.unit) },
          ...left,
        ]}
        right={[
          ...right,
          ...(by === undefined ? [] : [{ label: 'By', value: by.name }]),
          { label: 'Kept on this machine', value: <Kept /> },
        ]}
      />
    </div>
  );
}
