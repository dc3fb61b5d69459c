/** The Cut screen was asked for what is not there. */
export const nothingToCutWords = 'No such piece and feature in this job.';

/** A piece that another one is made to now. */
export function isMadeToWords(made: string, partner: string): string {
  return `${made} is made to ${partner} now.`;
}

/** Neither a partner nor two limits say where to stop. */
export function noAimWords(mark: string): string {
  return `Nothing says what ${mark} is cut to: measure its partner, or give the feature two limits.`;
}

/** A line of the cut log, after what was changed. */
export function afreshWords(changed: string): string {
  return `${changed}: learned afresh.`;
}

/** What is wrong with the set-up of a slide, by its field. */
export const slideFaultWords = {
  division: 'What one division of the dial stands for.',
  bites: 'A length, or nothing.',
  lap: 'A length, or nothing.',
  dialAt: 'What the dial shows, or nothing.',
  fineFeed: 'How far the dial goes for one of infeed.',
};

/** What is typed for how warm the piece is cannot be so. */
export const warmFaultWords = 'A temperature in degrees C, or nothing.';
