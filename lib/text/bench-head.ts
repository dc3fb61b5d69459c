import { timeOf } from './when';

/** What a feature is made to: "outside, made to L5", "outside, make to L7", or as the drawing gives it. */
export function featureLine(facts: {
  name: string;
  asDrawn: string;
  /** The partner that gives its limits; null where the drawing does. */
  partner: { mark: string; made: boolean } | null;
}): string {
  const name = facts.name.toLowerCase();
  if (facts.partner === null) return facts.asDrawn === '' ? name : `${name}, ${facts.asDrawn}`;
  return `${name}, ${facts.partner.made ? 'made' : 'make'} to ${facts.partner.mark}`;
}

/** How far the station plan has come: "4 of 6 taken". */
export function takenWords(taken: number, of: number): string {
  return `${taken} of ${of} taken`;
}

/** What this machine is called by the person who holds it. */
export type DeviceWord = 'phone' | 'tablet' | 'computer';

export type KeptFacts = {
  /** What the last reading or act is known to have reached; null before the first one. */
  reached: 'being kept' | 'on this device' | 'in the book' | 'not kept' | null;
  /** When it was kept, RFC 3339. */
  at: string | null;
  /** Entries that are on this device only. */
  unsent: number;
  /** Readings of this feature that are held. */
  held: number;
  device: DeviceWord;
};

/**
 * Which of the two a reading has reached: this device's disk, or the book.
 *
 * @example keptWords({ reached: 'on this device', at, unsent: 3, held: 0, device: 'phone' })
 * // 'Kept on this phone. 3 to send.'
 */
export function keptWords(facts: KeptFacts): string {
  const { reached, at, unsent, held, device } = facts;
  const time = at === null ? '' : ` ${timeOf(at)}`;
  if (reached === 'not kept') return 'Not kept.';
  if (reached === 'being kept') return 'being kept';
  if (unsent > 1) return `Kept on this ${device}. ${unsent} to send.`;
  if (reached === 'on this device') return `kept${time}, to send`;
  if (unsent > 0) return `Kept on this ${device}. 1 to send.`;
  if (reached === null) return '';
  return held > 0 ? `${held} held,${time}` : `in the book${time}`;
}
