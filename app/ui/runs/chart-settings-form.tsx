'use client';

import { useState } from 'react';
import { readChartSetting } from '@/lib/rules/read-chart-setting';
import type { ChartSetting } from '@/lib/schema/chart-settings';
import type { ControlKind, Run } from '@/lib/schema/run';
import {
  chartSettingAdvice,
  chartSettingError,
  chartSettingFigure,
  chartSettingHint,
  chartSettingNames,
} from '@/lib/text/chart-setting-words';
import { useJob } from '../job/job-provider';
import { Button } from '../primitives/button';
import { Field } from '../primitives/field';
import styles from './runs.module.css';

const settingsOf: Partial<Record<ControlKind, readonly ChartSetting[]>> = {
  ewma: ['averageWeightMilli', 'averageWidthMilli'],
  cusum: ['sumReferenceMilli', 'sumDecisionMilli'],
};

type Props = { run: Run; disabled: boolean; put: (fields: Partial<Run>) => void };

/** The settings of the chosen chart, where it has any: typed, and kept with a button. */
export function ChartSettingsForm({ run, disabled, put }: Props) {
  const { decimal } = useJob().chosen;
  const settings = settingsOf[run.control] ?? [];
  const [typed, setTyped] = useState<Partial<Record<ChartSetting, string>>>({});
  const [wrong, setWrong] = useState<readonly ChartSetting[]>([]);
  if (settings.length === 0) return null;
  const textOf = (setting: ChartSetting) =>
    typed[setting] ?? chartSettingFigure(run[setting], decimal);
  return (
    <form
      className={styles.figures}
      noValidate
      aria-label="Settings of the chart"
      onSubmit={(event) => {
        event.preventDefault();
        const read = settings.map((name) => [name, readChartSetting(name, textOf(name))] as const);
        const refused = read.filter(([, milli]) => milli === null).map(([name]) => name);
        setWrong(refused);
        if (refused.length === 0) put(Object.fromEntries(read));
      }}
    >
      <p className={styles.advice}>{chartSettingAdvice(run.control, decimal)}</p>
      {settings.map((setting) => (
        <Field
          key={setting}
          label={chartSettingNames[setting]}
          hint={chartSettingHint(setting, decimal)}
          inputMode="decimal"
          value={textOf(setting)}
          onChange={(event) => setTyped({ ...typed, [setting]: event.target.value })}
          error={wrong.includes(setting) ? chartSettingError(setting, decimal) : undefined}
        />
      ))}
      <Button type="submit" disabled={disabled}>
        Set these
      </Button>
    </form>
  );
}
