import { MathsInputError } from '../check';
import { byPitch, pitchDiameter, type PitchRow } from './iso965-tables';

/** Which diameter of which thread a tolerance is for. */
export type ToleratedDiameter =
  'external-major' | 'external-pitch' | 'internal-minor' | 'internal-pitch';

/** Grades that the standard gives for each diameter. */
const grades: Record<ToleratedDiameter, readonly number[]> = {
  'external-major': [4, 6, 8],
  'external-pitch': [3, 4, 5, 6, 7, 8, 9],
  'internal-minor': [4, 5, 6, 7, 8],
  'internal-pitch': [4, 5, 6, 7, 8],
};

/**
 * Tolerance of one diameter of an ISO metric thread, micrometres.
 *
 * Grade 6 as tabulated; each grade up or down is four steps of the R 40 series
 * of preferred numbers, a factor of 1.25, to the whole micrometre. Crest
 * tolerances go by pitch, pitch-diameter tolerances by range of major diameter
 * and pitch: over 1.4 to 355 mm, pitches 0.35 to 8 mm, where the standard has a
 * cell. Grades 8 and 9 are for pitches from 0.8 mm, grade 7 of internal threads
 * from 0.5 mm.
 *
 * Source: [iso-965-1]; grade 6 partly from memory, each cell against the
 * formulas of the standard and against published limits in the tests.
 *
 * @throws {MathsInputError} `thread-tolerance/grade`, `thread-tolerance/pitch`, `thread-tolerance/size`
 *
 * @example
 * threadTolerance('external-pitch', 6, 10, 1.5); // 132
 */
export function threadTolerance(
  diameter: ToleratedDiameter,
  grade: number,
  majorMm: number,
  pitchMm: number,
): number {
  const row = pitchRow('thread-tolerance', 'threadTolerance', pitchMm);
  const isUsed =
    grade <= 6 ||
    pitchMm >= 0.8 ||
    (grade === 7 && (diameter.startsWith('external') || pitchMm >= 0.5));
  if (!grades[diameter].includes(grade) || !isUsed) {
    throw new MathsInputError(
      'thread-tolerance/grade',
      `threadTolerance requires a grade of the standard, got ${grade} for ${diameter} at pitch ${pitchMm}`,
    );
  }
  return shifted(grade6(diameter, row, majorMm), 4 * (grade - 6));
}

/** Row of a pitch, or a refusal in the caller's name. */
export function pitchRow(file: string, caller: string, pitchMm: number): PitchRow {
  const row = byPitch.find((one) => one.pitchMm === pitchMm);
  if (row !== undefined) return row;
  throw new MathsInputError(
    `${file}/pitch`,
    `${caller} requires a pitch of the standard from 0.35 to 8 mm, got ${pitchMm}`,
  );
}

function grade6(diameter: ToleratedDiameter, row: PitchRow, majorMm: number): number {
  if (diameter === 'external-major') return row.majorUm;
  if (diameter === 'internal-minor') return row.minorUm;
  const cell = pitchDiameter.find(
    (one) => one.pitchMm === row.pitchMm && majorMm > one.overMm && majorMm <= one.upToMm,
  );
  if (cell === undefined) {
    throw new MathsInputError(
      'thread-tolerance/size',
      `threadTolerance requires a size and pitch of the standard, got ${majorMm} x ${row.pitchMm}`,
    );
  }
  return diameter === 'external-pitch' ? cell.externalUm : cell.internalUm;
}

/** One decade of the R 40 series of preferred numbers [iso-3]. */
const r40 = [
  100, 106, 112, 118, 125, 132, 140, 150, 160, 170, 180, 190, 200, 212, 224, 236, 250, 265, 280,
  300, 315, 335, 355, 375, 400, 425, 450, 475, 500, 530, 560, 600, 630, 670, 710, 750, 800, 850,
  900, 950,
];

/** A whole micrometre of the series moved by steps of it. */
function shifted(um: number, steps: number): number {
  const series = [0.1, 1, 10].flatMap((decade) => r40.map((value) => value * decade));
  const at = series.findIndex((value) => toEven(value) === um);
  return toEven(series[at + steps]!);
}

/** Nearest whole number, halves to the even one, as the standard rounds the small cells. */
function toEven(value: number): number {
  const down = Math.floor(value + 1e-9);
  const part = value - down;
  if (Math.abs(part - 0.5) < 1e-6) return down % 2 === 0 ? down : down + 1;
  return part < 0.5 ? down : down + 1;
}
