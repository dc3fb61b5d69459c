import { shownLength, type Shown } from './shown-size';

type Head = {
  side: 'external' | 'internal';
  partner: { mark: string; feature: string; sizePm: number; resolutionPm: number } | null;
  asDrawn: string;
  /** Cuts taken so far. */
  cuts: number;
};

/** What is being cut to what, and which cut comes next: "turning, to L7 bore 18.010", "cut 4". */
export function cutHeadWords(
  { side, partner, asDrawn, cuts }: Head,
  shown: Shown,
): { line: string; count: string } {
  const what = side === 'external' ? 'turning' : 'boring';
  const to =
    partner === null
      ? `to ${asDrawn}`
      : `to ${partner.mark} ${partner.feature.toLowerCase()} ${shownLength(partner.sizePm, partner.resolutionPm, shown)}`;
  return { line: `${what}, ${to}`, count: `cut ${cuts + 1}` };
}
