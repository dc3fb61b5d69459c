import type { GaugeSends, MessageEnd, UnitRule } from '@/lib/schema/gauge';

/**
 * How a gauge sends, in a sentence; null where it was never taught.
 *
 * @example
 * // Mic 2 ends a reading with Enter, writes a decimal point and is always in mm.
 */
export function sendsWords(name: string, sends: GaugeSends): string | null {
  const { sendsEnd, sendsMark, sendsUnit } = sends;
  if (sendsEnd === null) return null;
  const parts = [
    endWords(sendsEnd, sends.sendsPauseMs),
    sendsMark === null ? 'writes no decimals' : `writes a decimal ${markWords[sendsMark]}`,
    ...(sendsUnit === null ? [] : [unitRuleWords[sendsUnit]]),
  ];
  const further = [
    ...(sends.sendsPlus ? ['Its + before a size is no departure.'] : []),
    ...(sends.sendsPrefix === null ? [] : [`The "${sends.sendsPrefix}" in front is passed over.`]),
    ...(sends.serialBaud === null ? [] : [`Its port: ${sends.serialBaud} ${sends.serialFrame}.`]),
  ];
  const list = `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
  return [`${name} ${list}.`, ...further].join(' ');
}

function endWords(end: MessageEnd, pauseMs: number | null): string {
  switch (end) {
    case 'enter':
      return 'ends a reading with Enter';
    case 'tab':
      return 'ends a reading with Tab';
    case 'comma':
      return 'ends a reading with a comma';
    case 'space':
      return 'ends a reading with a space';
    case 'nothing':
      return `ends a reading with ${pauseMs ?? 150} ms of silence`;
  }
}

const markWords = { '.': 'point', ',': 'comma' } as const;

const unitRuleWords: Record<UnitRule, string> = {
  mm: 'is always in mm',
  in: 'is always in inches',
  says: 'says its unit itself',
  button: 'follows its own mm and inch button, which is checked by size',
};

type LessonFault =
  | 'no number'
  | 'ends differ'
  | 'marks differ'
  | 'comma twice'
  | 'some name a unit'
  | 'fronts differ'
  | 'not its range'
  | 'by hand';

/** Why three readings do not say how a gauge sends, and what to do. The three stand beside it. */
export function lessonFaultWords(code: LessonFault, name: string): string {
  return `${faults[code].replace('NAME', name)} Nothing was kept.`;
}

const faults: Record<LessonFault, string> = {
  'no number': 'One of the three is no number. Send three again.',
  'ends differ': 'The three do not agree: they do not end alike. Send three again.',
  'marks differ':
    'The three do not agree: a decimal point in one, a comma in another. Send three again.',
  'comma twice':
    'A comma stands in the figures and ends them too, so that nobody can tell which is which. Set one of the two at the gauge, then send three again.',
  'some name a unit':
    'The three do not agree: some say their unit, some do not. Set that at the gauge, then send three again.',
  'fronts differ':
    'The three do not agree: something else stands in front of each. Send three again.',
  'not its range':
    'NAME cannot measure one of these, in mm or in inches. Put right what it reads to and its range, or send three again.',
  'by hand':
    'That came at the pace of a hand, and a gauge that ends with nothing is told by its pace. Press its own button three times.',
};

/** How many of the three have come. */
export function lessonCameWords(came: number): string {
  return came === 0
    ? 'Measure three things you know roughly, and send each with the gauge\u2019s own button.'
    : `${came} of 3 came. ${came === 1 ? 'Two more.' : 'One more.'}`;
}
