/** An entry that is on no disk, for a file a person can read and a program can split. */
export type UnkeptLine = {
  deviceTime: string;
  mark: string;
  feature: string;
  place: string;
  text: string;
  unit: string;
  /** "reading", or what kind of correction. */
  kind: string;
  id: string;
};

const columns: readonly (keyof UnkeptLine)[] = [
  'deviceTime',
  'kind',
  'mark',
  'feature',
  'place',
  'text',
  'unit',
  'id',
];

/** A line for each, columns parted by tabs, under a line of their names. */
export function unkeptFile(lines: readonly UnkeptLine[]): string {
  const rows = lines.map((line) => columns.map((name) => line[name].replace(/[\t\r\n]/g, ' ')));
  return [columns, ...rows].map((cells) => `${cells.join('\t')}\n`).join('');
}
