import { MathsInputError } from '../check';
import type { DiameterLimits } from './iso-external-limits';
import { isoMetricThread } from './iso-metric-thread';
import { pitchRow, threadTolerance } from './thread-tolerance';

/**
 * Limits of the minor and pitch diameter of an ISO metric internal thread, and
 * the least major diameter.
 *
 * Class as typed: `6H`, or `5H6H` where the pitch diameter has a grade of its
 * own and stands first; positions G and H. min = basic + EI,
 * max = min + tolerance, whole micrometres. The major diameter has no maximum.
 *
 * Over 1.4 to 355 mm, pitches 0.35 to 8 mm. Source: [iso-965-1].
 *
 * @throws {MathsInputError} `iso-internal-limits/class`, `iso-internal-limits/pitch`,
 *   `iso-metric-thread/...`, `thread-tolerance/...`
 *
 * @example
 * isoInternalLimits(10, 1.5, '6H'); // minor 8.376 to 8.676, pitch 9.026 to 9.206
 */
export function isoInternalLimits(
  majorMm: number,
  pitchMm: number,
  typed: string,
): { minor: DiameterLimits; pitch: DiameterLimits; majorMinMm: number } {
  const thread = isoMetricThread(majorMm, pitchMm);
  const row = pitchRow('iso-internal-limits', 'isoInternalLimits', pitchMm);
  const [, pitchGrade, first, crestGrade = pitchGrade, second = first] =
    /^([4-8])([GH])(?:([4-8])([GH]))?$/.exec(typed.trim()) ?? [];
  const above = { G: row.gUm, H: 0 }[first ?? ''];
  if (above === undefined || first !== second) {
    throw new MathsInputError(
      'iso-internal-limits/class',
      `isoInternalLimits requires a class such as 6H or 5H6H, got ${JSON.stringify(typed)}`,
    );
  }
  const limits = (basicMm: number, toleranceUm: number): DiameterLimits => {
    const minUm = Math.round(basicMm * 1000) + above;
    return { maxMm: (minUm + toleranceUm) / 1000, minMm: minUm / 1000 };
  };
  return {
    minor: limits(
      thread.minorInternalMm,
      threadTolerance('internal-minor', Number(crestGrade), majorMm, pitchMm),
    ),
    pitch: limits(
      thread.pitchDiameterMm,
      threadTolerance('internal-pitch', Number(pitchGrade), majorMm, pitchMm),
    ),
    majorMinMm: (Math.round(majorMm * 1000) + above) / 1000,
  };
}
