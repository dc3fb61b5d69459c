import { preControlZone, type LimitsPm, type PreControlZone } from './pre-control-zone';

export type SetUpStep = {
  zone: PreControlZone;
  /** Greens in a row so far, 0 to 5. */
  greens: number;
  /** `count` a green; `start again` after one yellow; `adjust` after two in a row or a red. */
  action: 'count' | 'start again' | 'adjust';
};

export type SetUp = {
  /** One step a piece, up to and with the one that approves the set-up. */
  steps: SetUpStep[];
  /** Index (from 0) of the piece that made five greens in a row; left out while not approved. */
  approvedAt?: number;
};

const greensWanted = 5;

/**
 * Setting up a short batch by zones: five greens in a row let it run.
 *
 * One yellow starts the count again; a second yellow straight after it, or a red, asks for an
 * adjustment and starts afresh. Pieces after the approving one belong to the running batch and are
 * not judged here.
 *
 * Limits: of use when the spread is about the tolerance or less (Cp about 1 or better). Cost: O(n).
 * Sources: [satterthwaite-1954], [shainin].
 *
 * @throws {MathsInputError} `pre-control-zone/limits`, `pre-control-zone/not-whole`
 *
 * @example
 * preControlSetUp({ lowerPm: 0, upperPm: 40 }, [20, 20, 20, 20, 20]).approvedAt; // 4
 */
export function preControlSetUp(limits: LimitsPm, sizesPm: readonly number[]): SetUp {
  const steps: SetUpStep[] = [];
  let greens = 0;
  let yellowBefore = false;
  for (const [index, sizePm] of sizesPm.entries()) {
    const zone = preControlZone(limits, sizePm);
    if (zone === 'green') {
      greens += 1;
      yellowBefore = false;
      steps.push({ zone, greens, action: 'count' });
      if (greens === greensWanted) return { steps, approvedAt: index };
    } else {
      const isRed = zone === 'red low' || zone === 'red high';
      const action: SetUpStep['action'] = isRed || yellowBefore ? 'adjust' : 'start again';
      greens = 0;
      yellowBefore = action === 'start again';
      steps.push({ zone, greens, action });
    }
  }
  return { steps };
}
