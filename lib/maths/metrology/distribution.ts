/**
 * What is known of an input, as a distribution (JCGM 101 table 1). Amounts in the unit of the input.
 *
 * `curvilinear-trapezoid` is a rectangle whose ends are themselves only known to within `doubt`;
 * `t` is what n repeats give: centre, s/sqrt(n) as scale, n - 1 degrees of freedom.
 */
export type Distribution =
  | { shape: 'normal'; mean: number; sd: number }
  | { shape: 'rectangular'; low: number; high: number }
  | { shape: 'triangular'; low: number; high: number }
  | { shape: 'arcsine'; low: number; high: number }
  | { shape: 'curvilinear-trapezoid'; low: number; high: number; doubt: number }
  | { shape: 't'; degrees: number; centre: number; scale: number };
