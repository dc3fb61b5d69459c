import { capital } from './capital';
import { shownLength, type Shown } from './shown-size';

/** What the stations and directions say of the shape. Lengths in pm. */
export type ShapeFacts = {
  roundWithinPm: number | null;
  findings: readonly ShapeFinding[];
  stations: readonly string[];
  directions: readonly string[];
  resolutionPm: number;
};
type ShapeFinding =
  | { kind: 'oval'; amountPm: number; station: number; widestDirection: number }
  | { kind: 'taper'; amountPm: number; wideEnd: 'first' | 'last' }
  | { kind: 'barrel' | 'waist'; amountPm: number; station: number };

/** The shape in short sentences, without full stops: "Round within 0.001", "Bottom 0.001 larger than top". */
export function shapeWords(facts: ShapeFacts, shown: Shown): string[] {
  const figure = (pm: number) => shownLength(pm, facts.resolutionPm, shown);
  const oval = facts.findings.find((finding) => finding.kind === 'oval');
  const round =
    facts.roundWithinPm === null || oval !== undefined
      ? []
      : [`Round within ${figure(Math.max(facts.roundWithinPm, facts.resolutionPm))}`];
  return [...round, ...facts.findings.map((finding) => wordsOf(finding, facts, figure))];
}

function wordsOf(
  finding: ShapeFinding,
  { stations, directions }: ShapeFacts,
  figure: (pm: number) => string,
): string {
  const amount = figure(finding.amountPm);
  switch (finding.kind) {
    case 'oval':
      return `Oval by ${amount}, wide across ${directions[finding.widestDirection] ?? ''}`;
    case 'taper': {
      const [wide, narrow] = finding.wideEnd === 'first' ? [0, -1] : [-1, 0];
      return `${capital(stations.at(wide) ?? '')} ${amount} larger than ${(stations.at(narrow) ?? '').toLowerCase()}`;
    }
    case 'barrel':
      return `${capital(stations[finding.station] ?? '')} ${amount} larger than the ends`;
    case 'waist':
      return `${capital(stations[finding.station] ?? '')} ${amount} smaller than the ends`;
  }
}
