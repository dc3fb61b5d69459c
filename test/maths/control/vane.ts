/**
 * Vane opening, 20 subgroups of 5, coded values: Montgomery and Runger, Applied Statistics and
 * Probability for Engineers, 3rd ed., Table 16-1 (readings from memory; their means, ranges and standard
 * deviations are the published ones).
 */
export const vane = [
  [33, 29, 31, 32, 33],
  [33, 31, 35, 37, 31],
  [35, 37, 33, 34, 36],
  [30, 31, 33, 34, 33],
  [33, 34, 35, 33, 34],
  [38, 37, 39, 40, 38],
  [30, 31, 32, 34, 31],
  [29, 39, 38, 39, 39],
  [28, 33, 35, 36, 43],
  [38, 33, 32, 35, 32],
  [28, 30, 28, 32, 31],
  [31, 35, 35, 35, 34],
  [27, 32, 34, 35, 37],
  [33, 33, 35, 37, 36],
  [35, 37, 32, 35, 39],
  [33, 33, 27, 31, 30],
  [35, 34, 34, 30, 32],
  [32, 33, 30, 30, 33],
  [25, 27, 34, 27, 28],
  [35, 35, 36, 33, 30],
];
