'use client';

import type { Fit } from '@/lib/schema/fit';
import type { FitRule } from '@/lib/schema/fit-rule';
import { readWanted, type FitSaid, type WantedFault } from '@/lib/rules/ways/read-wanted';
import { governsChoiceWords } from '@/lib/text/shape-effect-words';
import type { Shown } from '@/lib/text/shown-size';
import { tightCareWords } from '@/lib/text/ways-words';
import { Choice } from '../primitives/choice';
import { ClassesFields } from './classes-fields';
import styles from './fit-ways.module.css';
import { LimitsFields } from './limits-fields';
import { RuleFields } from './rule-fields';

export type WayProps = {
  said: FitSaid;
  /** Nominals of the two features; null while they are not known. */
  borePm: number | null;
  shaftPm: number | null;
  shown: Shown;
  /** What a person has tried to keep and could not. */
  wrong: WantedFault | null;
  onChange: (over: Partial<FitSaid>) => void;
};

type Props = WayProps & {
  /** The shop's own rules. */
  rules: readonly FitRule[];
  /** What governs is switched beside this form. */
  governsElsewhere?: boolean;
  /** Keeps a rule in the notebook by name; not offered where there is nowhere to keep it. */
  onKeepRule?:
    | ((rule: Omit<FitRule, 'id' | 'version' | 'createdAt' | 'struckAt'>) => Promise<boolean>)
    | undefined;
};

/** What a fit is, said in one of three ways: by its clearances, by ISO 286 classes, by a rule of practice. */
export function FitWayFields(props: Props) {
  const { said, borePm, shown, onChange } = props;
  const read = readWanted(said, { nominalPm: borePm, ...shown });
  const care = read.kind === 'wanted' ? tightCareWords(read.fields.minPm) : null;
  return (
    <div className={styles.ways}>
      <Choice
        label="Said by"
        value={said.way}
        onChange={(way: Fit['way']) => onChange({ way })}
        options={[
          { value: 'limits', label: 'Clearance' },
          { value: 'classes', label: 'Classes, H7/g6' },
          { value: 'rule', label: 'Rule of practice' },
        ]}
      />
      {said.way === 'limits' && <LimitsFields {...props} />}
      {said.way === 'classes' && <ClassesFields {...props} />}
      {said.way === 'rule' && <RuleFields {...props} />}
      {care !== null && <p className={styles.care}>{care}</p>}
      {!props.governsElsewhere && (
        <>
          <Choice
            label="What governs"
            value={said.governs}
            onChange={(governs: Fit['governs']) => onChange({ governs })}
            options={[
              { value: 'extreme', label: 'Smallest bore, largest shaft' },
              { value: 'mean', label: 'Mean sizes' },
            ]}
          />
          <p className={styles.remark}>{governsChoiceWords(said.governs)}</p>
        </>
      )}
    </div>
  );
}
