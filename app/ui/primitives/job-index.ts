/** One sheet in the row of sheets. */
export type IndexEntry = { number?: number; label: string; href: string };

/** The sheets of a job. Chains keeps number 4 and the record 7. */
export function jobIndex(jobId: string): IndexEntry[] {
  const sheet = (number: number, label: string) => ({
    number,
    label,
    href: `/jobs/${jobId}/${label.toLowerCase()}`,
  });
  return [
    sheet(1, 'Board'),
    sheet(2, 'Bench'),
    sheet(3, 'Fits'),
    sheet(5, 'Runs'),
    { number: 6, label: 'Gauges', href: '/gauges' },
  ];
}
