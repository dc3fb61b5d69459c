'use client';

import { useState } from 'react';
import type { FitRule } from '@/lib/schema/fit-rule';
import { readRule, ruleClearances } from '@/lib/rules/ways/read-rule';
import { starterRules, type PracticeRule } from '@/lib/rules/ways/starter-rules';
import {
  clearRange,
  practiceWords,
  ruleFaultWords,
  ruleFieldWords,
  ruleWords,
  ruleWorkingWords,
} from '@/lib/text/ways-words';
import { Button } from '../primitives/button';
import { Field } from '../primitives/field';
import type { WayProps } from './fit-way-fields';
import styles from './fit-ways.module.css';
import { ruleText } from './said-of-fit';

type Props = WayProps & {
  rules: readonly FitRule[];
  onKeepRule?:
    | ((rule: Omit<FitRule, 'id' | 'version' | 'createdAt' | 'struckAt'>) => Promise<boolean>)
    | undefined;
};

/** A rule of practice: constant and slopes, where to start from, and how it comes to its figures. */
export function RuleFields({ said, borePm, shown, wrong, rules, onChange, onKeepRule }: Props) {
  const { rule, ruleName } = said;
  const [list, setList] = useState(said.rule.aim === '');
  const [kept, setKept] = useState(false);
  const own = rules.filter(({ struckAt }) => struckAt === null);
  const choices: (PracticeRule & { own: boolean })[] = [
    ...own.map((row) => ({ ...row, key: row.id, own: true })),
    ...starterRules.map((row) => ({ ...row, own: false })),
  ];
  const read = readRule(rule, shown);
  const clearances =
    read.kind === 'rule' && borePm !== null ? ruleClearances(read.rule, borePm) : null;
  const edit = (over: Partial<typeof rule>) => {
    setKept(false);
    onChange({ rule: { ...rule, ...over }, ruleKey: '' });
  };
  const errorOf = (field: keyof typeof rule) => {
    if (wrong?.way !== 'rule' || wrong.field !== field || !('problem' in wrong)) return undefined;
    return ruleFaultWords(wrong.problem, rule[field]);
  };
  return (
    <>
      <Button aria-expanded={list} onClick={() => setList(!list)}>
        {list ? 'Close the table of rules' : 'Start from a rule'}
      </Button>
      {list && (
        <ul className={styles.rules} aria-label="Rules to start from">
          {choices.map((choice) => (
            <li key={choice.key}>
              <button type="button" className={styles.take} onClick={() => take(choice)}>
                <span className={styles.ruleName}>{choice.name}</span>
                <span>{ruleWords(choice, shown)}</span>
                {borePm !== null && <span>{rangeOf(choice)}</span>}
                <span className={styles.practice}>
                  {[choice.note, choice.own ? 'your own' : practiceWords]
                    .filter(Boolean)
                    .join('; ')}
                </span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <p className={styles.remark}>
        Clearance = constant + slope × diameter. A minus is interference. A µm per mm and a thou per
        inch are the same figure.
      </p>
      <div className={styles.four}>
        {ruleFieldWords(shown.unit).map(([key, label, hint]) => (
          <Field
            key={key}
            label={label}
            hint={hint}
            value={rule[key]}
            onChange={(event) => edit({ [key]: event.target.value })}
            error={errorOf(key)}
          />
        ))}
      </div>
      <div aria-live="polite">
        {clearances !== null && read.kind === 'rule' && (
          <table className={styles.working}>
            <caption className="unseen">How the rule comes to its figures</caption>
            <tbody>
              {ruleWorkingWords(read.rule, clearances, borePm!, shown).map((row) => (
                <tr key={row.name}>
                  <th scope="row">{row.name}</th>
                  <td>{row.working}</td>
                  <td className={styles.result}>= {row.figure}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </div>
      {wrong?.way === 'rule' && wrong.field === 'nominal' && (
        <p role="alert" className={styles.trouble}>
          {ruleFaultWords('needs-nominal', '')}
        </p>
      )}
      <div className={styles.name}>
        <Field
          label="Name of the rule"
          value={ruleName}
          maxLength={120}
          onChange={(event) => {
            setKept(false);
            onChange({ ruleName: event.target.value });
          }}
        />
        {onKeepRule !== undefined && (
          <Button
            disabled={read.kind !== 'rule' || ruleName.trim() === '' || kept}
            onClick={() => void keep()}
          >
            {kept ? 'In the notebook' : 'Keep this rule by name'}
          </Button>
        )}
      </div>
    </>
  );

  function rangeOf(choice: PracticeRule): string {
    const { minPm, maxPm } = ruleClearances(choice, borePm!);
    return clearRange(minPm, maxPm, shown);
  }

  function take(choice: PracticeRule & { own: boolean }) {
    setList(false);
    setKept(choice.own);
    onChange({ ruleKey: choice.key, ruleName: choice.name, rule: ruleText(choice, shown) });
  }

  async function keep() {
    if (read.kind !== 'rule' || onKeepRule === undefined) return;
    setKept(await onKeepRule({ ...read.rule, name: ruleName.trim(), note: '' }));
  }
}
