import { patternRules } from '@/lib/maths/control/pattern-rules';

export const topic = 'Run and zone rules';

type Inputs = { x: number[]; center: number; sigma: number };

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const { x, center, sigma } = inputs as Inputs;
  const found = patternRules(x, center, sigma);
  const fromOne = (indices: number[]) => indices.map((index) => index + 1);
  return {
    '1': fromOne(found.beyondThreeSigma),
    '2': fromOne(found.nineOnOneSide),
    '3': fromOne(found.sixRisingOrFalling),
    '4': fromOne(found.fourteenAlternating),
    '5': fromOne(found.twoOfThreeBeyondTwoSigma),
    '6': fromOne(found.fourOfFiveBeyondOneSigma),
    '7': fromOne(found.fifteenWithinOneSigma),
    '8': fromOne(found.eightBeyondOneSigma),
    we8: fromOne(found.eightOnOneSide),
  };
}
