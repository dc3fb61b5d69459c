import {
  requireExpansion,
  requireLength,
  requireTemperature,
  requireUncertainty,
} from './check-thermal';

/** A reading of a warm or cold piece, with the gauge that took it. */
export type WarmReading = {
  readingMm: number;
  uReadingMm?: number;
  pieceExpansionPerC: number;
  uPieceExpansionPerC?: number;
  pieceTemperatureC: number;
  uPieceTemperatureC?: number;
  /** Leave both out for a gauge that reads true: at 20 degrees C, or corrected already. */
  gaugeExpansionPerC?: number;
  gaugeTemperatureC?: number;
};

export type SizeAt20 = {
  size20Mm: number;
  /** What is added to the reading, mm. */
  correctionMm: number;
  uMm: number;
  /** Parts of `uMm`, mm; their squares add up to its square. */
  parts: { readingMm: number; expansionMm: number; temperatureMm: number };
};

/**
 * Size of a piece at 20 degrees C from a reading taken at another temperature
 * with a gauge graduated at 20 degrees C.
 *
 * L20 = R (1 + ag (Tg - 20)) / (1 + ap (Tp - 20)), coefficients per degree C.
 * Uncertainty by first-order propagation with independent inputs: the reading,
 * the piece's coefficient and the piece's temperature, 0 where not given; the
 * gauge's own coefficient and temperature are taken as known.
 *
 * Limits: a piece at one temperature throughout. Source: [iso-1], [jcgm-100] 5.1.2.
 *
 * @throws {MathsInputError} `size-at-20/length`, `size-at-20/expansion`,
 *   `size-at-20/temperature`, `size-at-20/uncertainty`
 *
 * @example
 * sizeAt20({ readingMm: 65, pieceExpansionPerC: 23.1e-6, pieceTemperatureC: 35 }).size20Mm;
 * // 64.977485
 */
export function sizeAt20(reading: WarmReading): SizeAt20 {
  requireReading(reading);
  const { readingMm, pieceExpansionPerC: piece, pieceTemperatureC } = reading;
  const { gaugeExpansionPerC = 0, gaugeTemperatureC = 20 } = reading;
  const warmer = pieceTemperatureC - 20;
  const gaugeGrowth = gaugeExpansionPerC * (gaugeTemperatureC - 20);
  const pieceGrowth = 1 + piece * warmer;
  const correctionMm = (readingMm * (gaugeGrowth - piece * warmer)) / pieceGrowth;
  const size20Mm = readingMm + correctionMm;
  const parts = {
    readingMm: ((1 + gaugeGrowth) / pieceGrowth) * (reading.uReadingMm ?? 0),
    expansionMm: Math.abs((size20Mm * warmer) / pieceGrowth) * (reading.uPieceExpansionPerC ?? 0),
    temperatureMm: Math.abs((size20Mm * piece) / pieceGrowth) * (reading.uPieceTemperatureC ?? 0),
  };
  const uMm = Math.hypot(parts.readingMm, parts.expansionMm, parts.temperatureMm);
  return { size20Mm, correctionMm, uMm, parts };
}

function requireReading(reading: WarmReading): void {
  const name = ['size-at-20', 'sizeAt20'] as const;
  requireLength(...name, reading.readingMm);
  requireExpansion(...name, reading.pieceExpansionPerC);
  requireExpansion(...name, reading.gaugeExpansionPerC ?? 0);
  requireTemperature(...name, reading.pieceTemperatureC);
  requireTemperature(...name, reading.gaugeTemperatureC ?? 20);
  requireUncertainty(...name, reading.uReadingMm ?? 0);
  requireUncertainty(...name, reading.uPieceExpansionPerC ?? 0);
  requireUncertainty(...name, reading.uPieceTemperatureC ?? 0);
}
