import { requireFinite, requirePositive } from './guards';

export type PatternRules = {
  /** Rule 1: beyond 3 sigma. */
  beyondThreeSigma: number[];
  /** Rule 2: nine in a row on one side of the centre. */
  nineOnOneSide: number[];
  /** Rule 3: six in a row all rising or all falling, that is five steps. */
  sixRisingOrFalling: number[];
  /** Rule 4: fourteen in a row going up and down in turn. */
  fourteenAlternating: number[];
  /** Rule 5: two of three beyond 2 sigma on one side. */
  twoOfThreeBeyondTwoSigma: number[];
  /** Rule 6: four of five beyond 1 sigma on one side. */
  fourOfFiveBeyondOneSigma: number[];
  /** Rule 7: fifteen in a row within 1 sigma, either side. */
  fifteenWithinOneSigma: number[];
  /** Rule 8: eight in a row beyond 1 sigma, either side. */
  eightBeyondOneSigma: number[];
  /** The older rule of eight in a row on one side. */
  eightOnOneSide: number[];
};

/**
 * Points at which the patterns of a control chart are complete, for all rules in one pass.
 *
 * Each list holds the indices (from 0) of the points at which a pattern's window ends. Comparisons
 * are strict: a point on a line is not beyond it, a point on the centre is on neither side and a step
 * of zero neither rises nor falls. In rules 5 and 6 the point itself has to be beyond; they may
 * complete before three or five points exist, since no earlier point could undo them.
 *
 * Limits: every further rule adds false alarms, so choose a few. Sigma is that of the plotted points:
 * sigma / sqrt n for means of n. A drift fills several lists at once and is better seen as a line.
 * Cost: O(n). Sources: [nelson-1984], [iso-7870-2]; eight on one side [western-electric-1956].
 *
 * @throws {MathsInputError} `pattern-rules/not-finite`, `pattern-rules/not-positive`
 *
 * @example
 * patternRules([0, 0.5, 3.5], 0, 1).beyondThreeSigma; // [2]
 */
export function patternRules(
  values: readonly number[],
  centre: number,
  sigma: number,
): PatternRules {
  requireFinite('patternRules', 'values', values);
  requireFinite('patternRules', 'centre', [centre]);
  requirePositive('patternRules', 'sigma', sigma);

  const found = emptyRules();
  const [one, two, three] = [sigma, 2 * sigma, 3 * sigma];
  // Lengths of unbroken runs up to the point before, and what they are runs of.
  let [onSide, steps, turns, within, outside] = [0, 0, 0, 0, 0];
  let [sideBefore, stepBefore, valueBefore] = [0, 0, values[0] ?? 0];
  // The newest points beyond a line as bits, the newest lowest: three for 2 sigma, five for 1 sigma.
  let [aboveTwo, belowTwo, aboveOne, belowOne] = [0, 0, 0, 0];

  for (let i = 0; i < values.length; i += 1) {
    const off = values[i]! - centre;
    const distance = Math.abs(off);
    const side = Math.sign(off);
    const step = Math.sign(values[i]! - valueBefore);

    onSide = runLength(onSide, side !== 0, side === sideBefore);
    steps = runLength(steps, step !== 0, step === stepBefore);
    turns = runLength(turns, step !== 0, step === -stepBefore);
    within = distance < one ? within + 1 : 0;
    outside = distance > one ? outside + 1 : 0;
    aboveTwo = newest(aboveTwo, off > two) & 0b111;
    belowTwo = newest(belowTwo, off < -two) & 0b111;
    aboveOne = newest(aboveOne, off > one) & 0b11111;
    belowOne = newest(belowOne, off < -one) & 0b11111;

    if (distance > three) found.beyondThreeSigma.push(i);
    if (onSide >= 9) found.nineOnOneSide.push(i);
    if (onSide >= 8) found.eightOnOneSide.push(i);
    if (steps >= 5) found.sixRisingOrFalling.push(i);
    if (turns >= 13) found.fourteenAlternating.push(i);
    if (within >= 15) found.fifteenWithinOneSigma.push(i);
    if (outside >= 8) found.eightBeyondOneSigma.push(i);
    if (isLastOf(2, aboveTwo) || isLastOf(2, belowTwo)) found.twoOfThreeBeyondTwoSigma.push(i);
    if (isLastOf(4, aboveOne) || isLastOf(4, belowOne)) found.fourOfFiveBeyondOneSigma.push(i);
    [sideBefore, stepBefore, valueBefore] = [side, step, values[i]!];
  }
  return found;
}

/** Length of a run with one more point: none if it is of no kind, begun anew if it does not go on. */
function runLength(before: number, isOfAKind: boolean, goesOn: boolean): number {
  if (!isOfAKind) return 0;
  return goesOn ? before + 1 : 1;
}

function newest(bits: number, isBeyond: boolean): number {
  return (bits << 1) | (isBeyond ? 1 : 0);
}

/** True when the newest point is beyond and at least `wanted` of the window are. */
function isLastOf(wanted: number, bits: number): boolean {
  return (bits & 1) === 1 && bitCounts[bits]! >= wanted;
}

const bitCounts = Array.from({ length: 32 }, (_, bits) =>
  [1, 2, 4, 8, 16].reduce((count, bit) => count + ((bits & bit) === 0 ? 0 : 1), 0),
);

function emptyRules(): PatternRules {
  return {
    beyondThreeSigma: [],
    nineOnOneSide: [],
    sixRisingOrFalling: [],
    fourteenAlternating: [],
    twoOfThreeBeyondTwoSigma: [],
    fourOfFiveBeyondOneSigma: [],
    fifteenWithinOneSigma: [],
    eightBeyondOneSigma: [],
    eightOnOneSide: [],
  };
}
