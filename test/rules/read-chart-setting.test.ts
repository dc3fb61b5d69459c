import { describe, expect, it } from 'vitest';
import { readChartSetting } from '@/lib/rules/read-chart-setting';
import { plainRunChoices } from '@/lib/rules/run-choices';
import { chartSettings, type ChartSetting } from '@/lib/schema/chart-settings';
import { run } from '@/lib/schema/run';

const settings = Object.keys(chartSettings) as ChartSetting[];

describe('a setting of the averages or the sums', () => {
  it.each<[ChartSetting, string, number | null]>([
    ['averageWeightMilli', '0.2', 200],
    ['averageWeightMilli', ' 0,05 ', 50],
    ['averageWeightMilli', '.3', 300],
    ['averageWeightMilli', '1', 1000],
    ['averageWeightMilli', '1.000', 1000],
    ['averageWeightMilli', '0.01', 10],
    ['averageWeightMilli', '0.2500', 250],
    ['averageWeightMilli', '0.009', null],
    ['averageWeightMilli', '1.001', null],
    ['averageWeightMilli', '0.2005', null],
    ['averageWeightMilli', '', null],
    ['averageWeightMilli', '.', null],
    ['averageWeightMilli', '-0.2', null],
    ['averageWeightMilli', '1e-1', null],
    ['averageWeightMilli', '0.2.1', null],
    ['averageWidthMilli', '2.7', 2700],
    ['averageWidthMilli', '0.9', null],
    ['averageWidthMilli', '6.1', null],
    ['sumReferenceMilli', '0.5', 500],
    ['sumReferenceMilli', '0', null],
    ['sumReferenceMilli', '3.5', null],
    ['sumDecisionMilli', '4', 4000],
    ['sumDecisionMilli', '4.77', 4770],
    ['sumDecisionMilli', '20', 20_000],
    ['sumDecisionMilli', '21', null],
  ])('%s typed as "%s" is %s', (setting, text, milli) => {
    expect(readChartSetting(setting, text)).toBe(milli);
  });

  it.each(settings)('%s is kept from its least to its most and refused beyond', (setting) => {
    const { least, most, usual } = chartSettings[setting];
    const takes = (milli: number) => run.Change.safeParse({ version: 1, [setting]: milli }).success;
    expect([least, usual, most].map(takes)).toEqual([true, true, true]);
    expect([least - 1, most + 1, usual + 0.5].map(takes)).toEqual([false, false, false]);
    expect(plainRunChoices[setting]).toBe(usual);
  });
});
