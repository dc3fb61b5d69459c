'use client';

import type { FitRule } from '@/lib/schema/fit-rule';
import type { Material } from '@/lib/schema/material';
import type { Shown } from '@/lib/text/shown-size';
import { MaterialsPanel } from './materials-panel';
import { RulesPanel } from './rules-panel';
import styles from './tables.module.css';

type Props = { materials: readonly Material[]; rules: readonly FitRule[] } & Shown;

/** What the shop looks things up in: materials with their expansion, and rules of practice. */
export function TablesSheet({ materials, rules, unit, decimal }: Props) {
  return (
    <>
      <h1>Tables</h1>
      <div className={styles.panels}>
        <RulesPanel own={rules} shown={{ unit, decimal }} />
        <MaterialsPanel own={materials} decimal={decimal} />
      </div>
    </>
  );
}
