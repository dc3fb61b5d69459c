import { chartSettings, type ChartSetting } from '@/lib/schema/chart-settings';

/**
 * A setting of the weighted average or the sums as it was typed, in thousandths; null where it is no figure, is
 * finer than a thousandth, or lies beyond what it may be set to. Point and comma both are the decimal mark.
 */
export function readChartSetting(setting: ChartSetting, text: string): number | null {
  const found = /^(\d*)[.,]?(\d*)$/.exec(text.trim());
  if (found === null) return null;
  const [whole, after] = [found[1]!, found[2]!];
  const decimals = after.replace(/0+$/, '');
  if (`${whole}${after}` === '' || decimals.length > 3) return null;
  const milli = Number(whole) * 1000 + Number(decimals.padEnd(3, '0'));
  const { least, most } = chartSettings[setting];
  return milli >= least && milli <= most ? milli : null;
}
