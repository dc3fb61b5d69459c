/** Coefficients n1 to n10 of IAPWS-IF97 region 4 [iapws-if97] table 34, with n[0] unused. */
export const n = [
  0, 0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.1202082470247e5,
  -0.32325550322333e7, 0.1491510861353e2, -0.48232657361591e4, 0.40511340542057e6,
  -0.23855557567849, 0.65017534844798e3,
] as const;

/** Ends of the line: ice point and critical point. */
export const saturationEnds = {
  lowestK: 273.15,
  highestK: 647.096,
  lowestMPa: 611.213e-6,
  highestMPa: 22.064,
} as const;
