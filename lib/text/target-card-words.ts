import type { Feature } from '@/lib/schema/feature';
import { hotClearance, temperatureFigure } from './heat-words';
import { governsWords } from './shape-effect-words';
import { shownLimit } from './shown-limit';
import type { Shown } from './shown-size';

/** Round features are turned or bored, and said on diameter; of a slot and a width metal is taken off. */
const isRound = (kind: Feature['kind']) => kind === 'outside' || kind === 'bore';

/** Beside what a piece measures now. */
export function nowOnWords(kind: Feature['kind']): string {
  return isRound(kind) ? 'On the lathe now' : 'It is now';
}

/** Beside the metal that is still on it, and what is lapped off after. */
export function leftOnWords(kind: Feature['kind'], laps: boolean): string {
  const what = kind === 'outside' ? 'turn' : kind === 'bore' ? 'bore' : 'take off';
  return `Left to ${what}${laps ? ', then lap' : isRound(kind) ? ', on diameter' : ''}`;
}

/** Where the dial would stand, while nobody has said which slide. */
export const noDialWords = {
  label: 'On the dial',
  says: 'no slide said yet',
};

/** The reading of the partner that governs: "L7, bottom, across A", "L7, the mean", "L7" where it has one place. */
export function governedByWords(
  mark: string,
  place: { station: string; direction: string } | null,
  feature: { stations: readonly string[]; directions: readonly string[] },
): string {
  return [mark, governsWords(place, feature)].filter(Boolean).join(', ');
}

/** After the pieces that are named: how many more are to make. */
export function moreToMakeWords(count: number): string {
  return count === 1 ? 'and one other' : `and ${count} others`;
}

/** In the place of the working limits, where the two doubts eat the whole band. */
export function notProvableWords(partner: string): string {
  return `The doubt of the two sizes is wider than the fit: these gauges cannot prove it. Measure ${partner} again, finer, or make it to the target and say so on the record.`;
}

/** Of a target that is not at the aim, where the aim is within the doubt of a limit. */
export function besideAimWords(aimPm: number, resolutionPm: number, shown: Shown): string {
  return `At the aim itself, ${shownLimit(aimPm, resolutionPm, shown)}, these gauges could not prove the fit: this is the nearest size at which they can.`;
}

/** Of a target that goes past what is drawn on one side at least. */
export function pastDrawnWords(
  { lowerPm, upperPm }: { lowerPm: number | null; upperPm: number | null },
  resolutionPm: number,
  shown: Shown,
): string {
  const figure = (pm: number) => shownLimit(pm, resolutionPm, shown);
  const drawn =
    lowerPm === null
      ? `no larger than ${figure(upperPm!)}`
      : upperPm === null
        ? `no smaller than ${figure(lowerPm)}`
        : `${figure(lowerPm)} to ${figure(upperPm)}`;
  return `Drawn ${drawn}: this target is outside it. Made so, it is a departure to note on the Board.`;
}

/** The clearance hot of a piece at its target, each row an estimate. `outer` and `inner` are the parts. */
export function targetHeatRows(
  heat: {
    warm: { temperatureC: number; clearancePm: number };
    starting: { outerC: number; innerC: number; clearancePm: number };
    touchesHotterByC: number | null;
  },
  { outer, inner }: { outer: string; inner: string },
  shown: Shown,
): { label: string; figure: string }[] {
  const degrees = (c: number) => `${temperatureFigure(c, shown)}\u00a0°C`;
  const about = (pm: number) => `about ${hotClearance(pm, shown)}`;
  const { warm, starting, touchesHotterByC } = heat;
  return [
    { label: `Warm: both ${degrees(warm.temperatureC)}`, figure: about(warm.clearancePm) },
    {
      label: `Starting: ${outer} ${degrees(starting.outerC)}, ${inner} ${degrees(starting.innerC)}`,
      figure: about(starting.clearancePm),
    },
    ...(touchesHotterByC === null
      ? []
      : [
          {
            label: `Touches when ${inner} is hotter by`,
            figure: `about ${Math.round(touchesHotterByC)}\u00a0°C`,
          },
        ]),
  ];
}

/** Under those rows. */
export function targetHeatRemark(isGuess: boolean): string {
  return isGuess
    ? 'Estimates, at temperatures that are only to begin with: say your own under Hot and cold.'
    : 'Estimates: free expansion, no load. More under Hot and cold.';
}
