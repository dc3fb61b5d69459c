/** Fixed ids for the example, so that loading it twice is loading it once. */
export type IdGroup = keyof typeof groups;

const groups = {
  job: 1,
  part: 2,
  piece: 3,
  feature: 4,
  gauge: 5,
  person: 6,
  fit: 7,
  pair: 8,
  run: 9,
  event: 10,
  departure: 11,
  reading: 12,
  correction: 13,
  device: 14,
  cut: 15,
  picture: 16,
};

/** The n-th id of a group: shaped as a UUID of version 7, counted instead of drawn. */
export function exampleId(group: IdGroup, n: number): string {
  const hex = (value: number, length: number) => value.toString(16).padStart(length, '0');
  return `0195920c-0000-7000-8${hex(groups[group], 3)}-${hex(n, 12)}`;
}
