import { describe, expect, it } from 'vitest';
import { usualChartSettings } from '@/lib/schema/chart-settings';
import {
  chartSettingAdvice,
  chartSettingError,
  chartSettingFigure,
  chartSettingHint,
  chartSettingNames,
  chartSettingSays,
} from '@/lib/text/chart-setting-words';

describe('the settings of averages and sums in words', () => {
  it('are named with what they are begun with', () => {
    expect(chartSettingNames).toEqual({
      averageWeightMilli: 'Weight of the newest',
      averageWidthMilli: 'Limits, in sigma',
      sumReferenceMilli: 'Reference value, in sigma',
      sumDecisionMilli: 'Decision interval, in sigma',
    });
    expect(chartSettingHint('averageWeightMilli', '.')).toBe('usual 0.2');
    expect(chartSettingHint('averageWidthMilli', '.')).toBe('usual 3');
    expect(chartSettingHint('sumReferenceMilli', ',')).toBe('usual 0,5');
    expect(chartSettingHint('sumDecisionMilli', '.')).toBe('usual 5');
    expect(chartSettingFigure(1234, ',')).toBe('1,234');
    expect(chartSettingFigure(10, '.')).toBe('0.01');
  });

  it('are refused with how far they go', () => {
    expect(chartSettingError('averageWeightMilli', ',')).toBe(
      'A figure from 0,01 to 1, to the thousandth.',
    );
    expect(chartSettingError('sumDecisionMilli', '.')).toBe(
      'A figure from 1 to 20, to the thousandth.',
    );
  });

  it('stand under the chart they are of', () => {
    const run = { ...usualChartSettings, averageWeightMilli: 150, sumDecisionMilli: 4770 };
    expect(chartSettingSays('ewma', run, '.')).toBe(
      'The newest weighs 0.15; limits at 3 sigma of the average.',
    );
    expect(chartSettingSays('cusum', run, ',')).toBe(
      'Reference value 0,5 sigma: half the shift to be found. Decision interval 4,77 sigma.',
    );
    expect(chartSettingSays('single pieces', run, '.')).toBeNull();
  });

  it('are advised on by the book', () => {
    expect(chartSettingAdvice('ewma', ',')).toBe(
      'A smaller weight finds smaller shifts, later. Usual: weights of 0,05 to 0,25, limits at 2,6 to 3 sigma (Montgomery, Statistical Quality Control).',
    );
    expect(chartSettingAdvice('cusum', '.')).toBe(
      'Half the shift to be found is the reference value. Usual: half a sigma with a decision interval of four or five (Montgomery, Statistical Quality Control).',
    );
    expect(chartSettingAdvice('single pieces', '.')).toBeNull();
  });
});
