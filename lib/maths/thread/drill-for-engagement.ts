import { MathsInputError } from '../check';
import { fullDepth, threadEngagement } from './thread-engagement';

/** A drill of the rack and what it leaves, percent of the full basic depth. */
export type RackDrill = { drillMm: number; percent: number };

/**
 * Tapping drill for a wanted amount of thread, and the nearest drills of a rack
 * with even steps on either side of it.
 *
 * drill = D - e 1.082532 P, e the part of the full basic depth (5H/8). The
 * larger drill leaves less thread and breaks fewer taps. Sizes in mm. Where the
 * exact drill is in the rack both neighbours are that drill.
 *
 * Source: [iso-68-1].
 *
 * @throws {MathsInputError} `drill-for-engagement/wanted`, `thread-engagement/size`
 *
 * @example
 * drillForEngagement({ majorMm: 6, pitchMm: 1, percent: 75, rackStepMm: 0.1 });
 * // exactMm 5.188, up 5.2 (73.9 %), down 5.1 (83.1 %)
 */
export function drillForEngagement(wanted: {
  majorMm: number;
  pitchMm: number;
  percent: number;
  rackStepMm: number;
}): { exactMm: number; up: RackDrill; down: RackDrill } {
  const { majorMm, pitchMm, percent, rackStepMm } = wanted;
  const exactMm = majorMm - (percent / 100) * fullDepth.basic * pitchMm;
  const sensible = percent > 0 && percent <= 100 && rackStepMm > 0 && rackStepMm < exactMm;
  if (!sensible || !(pitchMm > 0 && majorMm < Infinity)) {
    throw new MathsInputError(
      'drill-for-engagement/wanted',
      `drillForEngagement requires sizes above zero and 0 to 100 %, got ${majorMm} x ${pitchMm}, ${percent} % and steps of ${rackStepMm}`,
    );
  }
  // A billionth of a step is let go so that an exact drill of the rack is its own neighbour.
  const steps = exactMm / rackStepMm;
  const rack = (count: number): RackDrill => {
    const drillMm = Number((count * rackStepMm).toPrecision(12));
    const { basicPercent } = threadEngagement({ major: majorMm, pitch: pitchMm, drill: drillMm });
    return { drillMm, percent: basicPercent };
  };
  return { exactMm, up: rack(Math.ceil(steps - 1e-9)), down: rack(Math.floor(steps + 1e-9)) };
}
