import { grubbsCritical } from '@/lib/maths/statistics/grubbs-critical';
import { grubbsTest } from '@/lib/maths/statistics/grubbs-test';

export const topic = 'Grubbs outlier test';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  if (inputs.x === undefined) {
    const [n, alpha] = [inputs.n, inputs.alpha].map((one) => [one].flat() as number[]) as [
      number[],
      number[],
    ];
    const table = (sides: 'one' | 'two') =>
      Object.fromEntries(
        alpha.map((a) => [String(a), n.map((count) => grubbsCritical(count, a, sides))]),
      );
    return { one_sided: table('one'), two_sided: table('two') };
  }
  const { x, alpha, side } = inputs as { x: number[]; alpha: number; side: string };
  const which = /\b(max|largest|upper)/.test(side)
    ? 'largest'
    : /\b(min|smallest|lower)/.test(side)
      ? 'smallest'
      : 'either';
  const { g, critical, index, isOutlier } = grubbsTest(x, alpha, which);
  return {
    G: g,
    critical,
    outlier_index_1based: index + 1,
    index_1based: index + 1,
    is_outlier: isOutlier,
  };
}
