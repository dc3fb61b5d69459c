'use client';

import type { FitRule } from '@/lib/schema/fit-rule';
import { starterRules } from '@/lib/rules/ways/starter-rules';
import type { Shown } from '@/lib/text/shown-size';
import { practiceWords, ruleWords, slopeRangeWords, tightCareWords } from '@/lib/text/ways-words';
import { OwnTable } from './own-table';
import { RuleForm } from './rule-form';
import styles from './tables.module.css';

type Props = { own: readonly FitRule[]; shown: Shown };

/** Rules of practice: the shop's own, to change and strike out, and those to start from. */
export function RulesPanel({ own, shown }: Props) {
  return (
    <OwnTable
      title="Rules of practice"
      note="clearance = constant + slope × diameter"
      address="fit-rules"
      add="Add a rule of your own"
      own={own}
      lineOf={(row) => ({
        figure: ruleWords(row, shown),
        range: slopeRangeWords(row, shown),
        remark: row.note,
      })}
      starters={starterRules.map((row) => ({
        key: row.key,
        name: row.name,
        figure: ruleWords(row, shown),
        range: slopeRangeWords(row, shown),
        remark: `${row.note}; ${practiceWords}`,
      }))}
      renderForm={(given) => <RuleForm {...given} shown={shown} />}
    >
      <p className={styles.care}>{tightCareWords(-1)}</p>
    </OwnTable>
  );
}
