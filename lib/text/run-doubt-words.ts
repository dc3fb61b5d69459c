import { slopeFigure } from './drift-words';
import { shownLength, type Shown } from './shown-size';

/** What a chart cannot be trusted for, as far as words need it. Lengths in pm. */
export type RunDoubtFacts =
  | { kind: 'few sizes'; sizes: number; pieces: number }
  | { kind: 'coarse gauge'; resolutionPm: number; tolerancePm: number }
  | { kind: 'limits differ' }
  | { kind: 'spreads differ'; p: number; spreads: readonly { name: string; scatterPm: number }[] };

/**
 * A doubt about the chart of a run, in a sentence that says what would settle it; `each` is what moves along its axis.
 */
export function runDoubtWords(doubt: RunDoubtFacts, each: 'piece' | 'turn', shown: Shown): string {
  switch (doubt.kind) {
    case 'few sizes':
      return doubt.sizes === 1
        ? `All ${doubt.pieces} ${each}s read the same: the gauge is too coarse to show their scatter.`
        : `Only ${doubt.sizes} different sizes among ${doubt.pieces} ${each}s: the gauge is too coarse to show their scatter.`;
    case 'coarse gauge': {
      const step = shownLength(doubt.resolutionPm, doubt.resolutionPm, shown);
      const tolerance = shownLength(doubt.tolerancePm, doubt.resolutionPm, shown);
      return `One division of the gauge, ${step}, is more than a tenth of the ${tolerance} between the limits: the chart shows the gauge as much as the pieces.`;
    }
    case 'limits differ':
      return 'The features have not the same limits about their nominals: none is drawn.';
    case 'spreads differ': {
      const [most, least] = [doubt.spreads[0]!, doubt.spreads.at(-1)!];
      const figure = (pm: number) => slopeFigure(pm / 1e9, shown);
      const chance =
        doubt.p < 0.001 ? 'less than 1 in 1000' : `about 1 in ${Math.round(1 / doubt.p)}`;
      return `${most.name} scatters ${figure(most.scatterPm)}, ${least.name} ${figure(least.scatterPm)}: not alike (Bartlett's test, ${chance} by chance). Chart them apart.`;
    }
  }
}
