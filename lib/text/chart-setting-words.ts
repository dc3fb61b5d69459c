import { chartSettings, type ChartSetting } from '@/lib/schema/chart-settings';
import type { ControlKind } from '@/lib/schema/run';
import type { Shown } from './shown-size';

type Decimal = Shown['decimal'];

/** What each setting is called where it is set. */
export const chartSettingNames: Record<ChartSetting, string> = {
  averageWeightMilli: 'Weight of the newest',
  averageWidthMilli: 'Limits, in sigma',
  sumReferenceMilli: 'Reference value, in sigma',
  sumDecisionMilli: 'Decision interval, in sigma',
};

/** "0.2" of 200 thousandths: every digit it has and none more. */
export function chartSettingFigure(milli: number, decimal: Decimal): string {
  return String(milli / 1000).replace('.', decimal);
}

/** Beside the box: what it is begun with. */
export function chartSettingHint(setting: ChartSetting, decimal: Decimal): string {
  return `usual ${chartSettingFigure(chartSettings[setting].usual, decimal)}`;
}

/** What was typed cannot be taken. */
export function chartSettingError(setting: ChartSetting, decimal: Decimal): string {
  const { least, most } = chartSettings[setting];
  const figure = (milli: number) => chartSettingFigure(milli, decimal);
  return `A figure from ${figure(least)} to ${figure(most)}, to the thousandth.`;
}

/** What a chart of averages or sums is set to, under it; null for the others. */
export function chartSettingSays(
  control: ControlKind,
  run: Record<ChartSetting, number>,
  decimal: Decimal,
): string | null {
  const figure = (setting: ChartSetting) => chartSettingFigure(run[setting], decimal);
  if (control === 'ewma') {
    return `The newest weighs ${figure('averageWeightMilli')}; limits at ${figure('averageWidthMilli')} sigma of the average.`;
  }
  if (control === 'cusum') {
    return `Reference value ${figure('sumReferenceMilli')} sigma: half the shift to be found. Decision interval ${figure('sumDecisionMilli')} sigma.`;
  }
  return null;
}

/** Over the boxes: what moving them does, and whose the usual values are; null where there is nothing to set. */
export function chartSettingAdvice(control: ControlKind, decimal: Decimal): string | null {
  const figure = (milli: number) => chartSettingFigure(milli, decimal);
  if (control === 'ewma') {
    return `A smaller weight finds smaller shifts, later. Usual: weights of ${figure(50)} to ${figure(250)}, limits at ${figure(2600)} to 3 sigma (Montgomery, Statistical Quality Control).`;
  }
  if (control === 'cusum') {
    return 'Half the shift to be found is the reference value. Usual: half a sigma with a decision interval of four or five (Montgomery, Statistical Quality Control).';
  }
  return null;
}
