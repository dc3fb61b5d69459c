import { MathsInputError } from '../check';
import { isoMetricThread } from './iso-metric-thread';
import { pitchRow, threadTolerance } from './thread-tolerance';

/** Largest and smallest of a diameter, mm to 0.001. */
export type DiameterLimits = { maxMm: number; minMm: number };

/**
 * Limits of the major and pitch diameter of an ISO metric external thread.
 *
 * Class as typed: `6g`, or `5g6g` where the pitch diameter has a grade of its
 * own and stands first; positions e, f, g, h. max = basic + es,
 * min = max - tolerance, whole micrometres.
 *
 * Over 1.4 to 355 mm, pitches 0.35 to 8 mm; e from a pitch of 0.5 mm.
 * Source: [iso-965-1].
 *
 * @throws {MathsInputError} `iso-external-limits/class`, `iso-external-limits/pitch`,
 *   `iso-metric-thread/...`, `thread-tolerance/...`
 *
 * @example
 * isoExternalLimits(10, 1.5, '6g'); // major 9.968 to 9.732, pitch 8.994 to 8.862
 */
export function isoExternalLimits(
  majorMm: number,
  pitchMm: number,
  typed: string,
): { major: DiameterLimits; pitch: DiameterLimits } {
  const thread = isoMetricThread(majorMm, pitchMm);
  const row = pitchRow('iso-external-limits', 'isoExternalLimits', pitchMm);
  const [, pitchGrade, first, crestGrade = pitchGrade, second = first] =
    /^([3-9])([e-h])(?:([3-9])([e-h]))?$/.exec(typed.trim()) ?? [];
  const below = { e: row.eUm, f: row.fUm, g: row.gUm, h: 0 }[first ?? ''];
  if (below === undefined || first !== second) {
    throw new MathsInputError(
      'iso-external-limits/class',
      `isoExternalLimits requires a class such as 6g or 5g6g, got ${JSON.stringify(typed)}`,
    );
  }
  const limits = (basicMm: number, toleranceUm: number): DiameterLimits => {
    const maxUm = Math.round(basicMm * 1000) - below;
    return { maxMm: maxUm / 1000, minMm: (maxUm - toleranceUm) / 1000 };
  };
  return {
    major: limits(majorMm, threadTolerance('external-major', Number(crestGrade), majorMm, pitchMm)),
    pitch: limits(
      thread.pitchDiameterMm,
      threadTolerance('external-pitch', Number(pitchGrade), majorMm, pitchMm),
    ),
  };
}
