import { describe, expect, it } from 'vitest';
import { entryErrorWords, type EntryError } from '@/lib/text/bench-entry-error';
import { cutTroubleWords } from '@/lib/text/bench-target';
import { notKeptWords, troubleWords } from '@/lib/text/bench-trouble';
import { drawnFaultWords } from '@/lib/text/draft-words';
import { gaugeFaultWords } from '@/lib/text/gauge-fault-words';
import { portSpoiltWords } from '@/lib/text/gauge-port-words';
import { lessonFaultWords } from '@/lib/text/gauge-sends-words';
import { lengthWords } from '@/lib/text/length-words';
import { noDivisionWords } from '@/lib/text/offset-words';
import { pedalRefusalWords } from '@/lib/text/bench-pedal';
import { problemWords } from '@/lib/text/problem-words';
import { trayWords } from '@/lib/text/tray-words';

describe('what stands in the way of keeping or sending', () => {
  it.each([
    ['outbox/storage-full', 'This device has no room left. Make room on it.'],
    [
      'outbox/storage-lost',
      'This browser lost hold of its storage. Open this page again if it lasts.',
    ],
    ['outbox/blocked', 'An older page of Fitwright is open here. Close it.'],
    ['outbox/old-tab', 'This page is older than another one open here. Load it again.'],
    ['outbox/sign-in', 'Sign in again. Readings are kept here until then.'],
    ['outbox/not-allowed', 'The notebook does not let this device write. Readings are kept here.'],
    ['outbox/server', 'The notebook could not keep what was sent. It is kept here and sent again.'],
    [
      'outbox/not-understood',
      'The notebook answered strangely. Readings are kept here and sent again.',
    ],
  ])('is said of %s, and what to do', (code, says) => {
    expect(troubleWords(code)).toBe(says);
    expect(notKeptWords(code)).toBe(`Not kept. ${says} It stands here until it is; keep it again.`);
  });

  it.each([
    [null, 'The notebook did not take this, and nothing was changed. Try it again.'],
    [0, 'The notebook does not answer. Nothing was changed; try again when it does.'],
    [
      409,
      'Somebody changed this since you opened it. It now stands as they left it; change it again if you still want to.',
    ],
    [500, 'The notebook could not keep this, and nothing was changed. The reason is in its log.'],
    [503, 'The notebook could not keep this, and nothing was changed. The reason is in its log.'],
  ])('is said of an answer of status %s', (status, says) => {
    const problem = status === null ? null : { status, code: 'x', title: '', errors: [] };
    expect(problemWords(problem)).toBe(says);
  });

  it('is said of a cut, and of an entry nobody could put away', () => {
    expect(cutTroubleWords).toBe(
      'The cut was not noted, and nothing was changed. Try it again before you log the new size.',
    );
    expect(trayWords.trouble).toBe(
      'That could not be done on this device. Nothing is changed; try it again.',
    );
    expect(trayWords).toMatchObject({
      title: 'The notebook would not take these',
      none: 'Nothing waits here any more.',
      again: 'Send it once more',
    });
  });
});

describe('what a gauge sent', () => {
  const set =
    'Nothing was taken. Send it again; if it goes on, the port is set otherwise than the gauge.';

  it.each([
    ['parity', `A reading of Mic 1 came garbled. ${set}`],
    ['characters', `A reading of Mic 1 came garbled. ${set}`],
    ['frame', `The line of Mic 1 was broken while it sent. ${set}`],
    ['break', `The line of Mic 1 was broken while it sent. ${set}`],
    ['overrun', 'Mic 1 sent faster than was taken. Nothing was taken. Send it again.'],
    ['lost', 'The line of Mic 1 is gone. Nothing was taken.'],
    ['in use', 'The line of Mic 1 is gone. Nothing was taken.'],
    ['refused', 'The line of Mic 1 is gone. Nothing was taken.'],
  ] as const)('is no reading where the message was spoilt by %s', (by, says) => {
    expect(portSpoiltWords(by, 'Mic 1')).toBe(says);
  });

  it.each([
    ['no number', 'One of the three is no number. Send three again.'],
    ['ends differ', 'The three do not agree: they do not end alike. Send three again.'],
    [
      'marks differ',
      'The three do not agree: a decimal point in one, a comma in another. Send three again.',
    ],
    [
      'comma twice',
      'A comma stands in the figures and ends them too, so that nobody can tell which is which. Set one of the two at the gauge, then send three again.',
    ],
    [
      'some name a unit',
      'The three do not agree: some say their unit, some do not. Set that at the gauge, then send three again.',
    ],
    [
      'fronts differ',
      'The three do not agree: something else stands in front of each. Send three again.',
    ],
    [
      'not its range',
      'Mic 1 cannot measure one of these, in mm or in inches. Put right what it reads to and its range, or send three again.',
    ],
    [
      'by hand',
      'That came at the pace of a hand, and a gauge that ends with nothing is told by its pace. Press its own button three times.',
    ],
  ] as const)('is no lesson: %s', (code, says) => {
    expect(lessonFaultWords(code, 'Mic 1')).toBe(`${says} Nothing was kept.`);
  });

  it.each([
    [
      'length',
      'b',
      '"b" belongs to a length. Set the pedal to another key, such as F13, and press it again.',
    ],
    [
      'length',
      ' ',
      'Space belongs to a length. Set the pedal to another key, such as F13, and press it again.',
    ],
    [
      'entry',
      'Enter',
      'Enter has its own work in the entry. Set the pedal to another key, such as F13, and press it again.',
    ],
    ['taken', 'F13', 'F13 is taught for another pedal. Press the other one, or forget them all.'],
    [
      'unknown',
      '',
      'This pedal does not say which key it is. Set it to another, such as F13, and press it again.',
    ],
  ] as const)('is no pedal: %s %s', (why, key, says) => {
    expect(pedalRefusalWords(why, key)).toBe(says);
  });
});

describe('what is typed and is no size', () => {
  it.each<[EntryError['code'], string, string]>([
    ['empty', '', 'there is nothing in it'],
    ['alone-sign', '', 'a sign alone'],
    ['no-digits', '', 'there is no figure in it'],
    ['no-number', '', 'there is no figure in it'],
    ['not-a-number', 'x', 'a number does not begin with "x"'],
    ['not-a-number', '', 'a number does not begin with its end'],
    ['two-marks', '.', 'a second "."'],
    ['two-numbers', '1', 'a second number at "1"'],
    ['two-signs', '-', 'a second sign "-"'],
    ['not-a-fraction', '/', 'no fraction of an inch at "/"'],
    ['zero-below', '0', 'nothing is divided by nothing'],
    ['tolerance', '±', '"±" gives a tolerance, not a reading'],
    ['unknown-unit', 'q', 'no unit begins with "q"'],
    ['two-units', 'm', 'a second unit at "m"'],
    ['not-understood', '%', 'what stands at "%" says nothing'],
    ['finer-than-picometre', '', 'it is finer than anything measured'],
    ['not-whole-picometres', '', 'it is finer than anything measured'],
    ['too-long', '', 'it is too long'],
    ['text-too-long', '', 'it is too long'],
    ['no-nominal', '+', '"+" needs a nominal to be measured from'],
    ['not-above-zero', '', 'a size is more than nothing'],
  ])('is said on the Bench: %s %s', (code, character, fault) => {
    expect(entryErrorWords(' 18x ', { code, character })).toBe(
      `"18x" is not a size: ${fault}. Type it again; nothing was kept.`,
    );
  });

  it.each<[Parameters<typeof lengthWords>[0], string]>([
    ['order', 'The most must be more than the least.'],
    ['aim outside', 'The aim must lie between the least and the most.'],
    [
      { kind: 'question', code: 'fraction-unit' },
      '5/8 of what? Add "in" after the fraction, or type it as a decimal.',
    ],
    [
      { kind: 'question', code: 'unit-tenths' },
      'A tenth of a millimetre or of a thou? Type it as a decimal.',
    ],
    [
      { kind: 'question', code: 'unit-mil' },
      'A mil is a millimetre to some and a thou to others. Type mm or thou.',
    ],
    [
      { kind: 'question', code: 'sign-large' },
      'Is 5/8 a size, or so much beside the nominal? Leave the sign out, or type the size.',
    ],
    [
      { kind: 'question', code: 'mark-thousands' },
      '5/8 can be read in two ways. Type it without the mark that groups the figures.',
    ],
    [{ kind: 'error', code: 'empty', character: '' }, 'A size is needed here.'],
    [
      { kind: 'error', code: 'no-nominal', character: '' },
      'A sign needs a nominal to add to. Type the whole size.',
    ],
    [
      { kind: 'error', code: 'finer-than-picometre', character: '' },
      '"5/8" is finer than this notebook keeps. Type fewer figures.',
    ],
    [
      { kind: 'error', code: 'not-whole-picometres', character: '' },
      '"5/8" is finer than this notebook keeps. Type fewer figures.',
    ],
    [
      { kind: 'error', code: 'too-long', character: '' },
      '"5/8" is longer than any part. Look at the point.',
    ],
    [{ kind: 'error', code: 'tolerance', character: '' }, '"5/8" is a tolerance. Type one size.'],
    [
      { kind: 'error', code: 'two-marks', character: '.' },
      '"5/8" is not a size at ".". Type it again.',
    ],
    [{ kind: 'error', code: 'two-marks', character: '' }, '"5/8" is not a size. Type it again.'],
  ])('is said in a form: %j', (problem, says) => {
    expect(lengthWords(problem, '5/8')).toBe(says);
  });

  it.each<[Parameters<typeof drawnFaultWords>[0], string]>([
    [
      { kind: 'class', isoClass: 'H7' },
      'H7 is not defined at that size. Type the deviations instead.',
    ],
    [
      { kind: 'question', code: 'one-deviation' },
      'Is the other deviation nothing? Type both: "18 +0.018 0".',
    ],
    [
      { kind: 'question', code: 'limits-or-deviation' },
      'Two limits, or a size and a deviation? Put "to" between limits.',
    ],
    [
      { kind: 'question', code: 'unit-mil' },
      'A mil is a millimetre to some and a thou to others. Type mm or thou.',
    ],
    [
      { kind: 'error', code: 'fit', character: '' },
      'A fit is given between two parts below; here goes one class, such as 18 H7.',
    ],
    [
      { kind: 'error', code: 'sign-first', character: '' },
      'Begin with the size, then its deviations: 18.000 +0.018 0.',
    ],
    [
      { kind: 'error', code: 'unsigned-deviation', character: '' },
      'A deviation needs its sign: 18.000 +0.018 0.',
    ],
    [
      { kind: 'error', code: 'too-many-numbers', character: '' },
      'One size and at most two deviations.',
    ],
    [
      { kind: 'error', code: 'limits-apart', character: '' },
      'These two limits are too far apart for one size.',
    ],
    [{ kind: 'error', code: 'not-above-zero', character: '' }, 'A size is more than nothing.'],
    [
      { kind: 'error', code: 'two-marks', character: '.' },
      '"18 +0.018" is not a size at ".". Type it again.',
    ],
  ])('is said of a size copied from a drawing: %j', (read, says) => {
    expect(drawnFaultWords(read, '18 +0.018')).toBe(says);
  });

  it.each<[Parameters<typeof gaugeFaultWords>[0], string]>([
    [{ field: 'name', problem: 'missing' }, 'A gauge needs a name.'],
    [{ field: 'resolution', problem: 'missing' }, 'Say the smallest step it shows.'],
    [{ field: 'resolution', problem: 'not above zero' }, 'This must be more than nothing.'],
    [{ field: 'rangeHigh', problem: 'range' }, 'The end must be more than the beginning.'],
    [
      { field: 'rangeHigh', problem: { kind: 'error', code: 'no-digits', character: 'x' } },
      '"x" is not a size at "x". Type it again.',
    ],
  ])('is said of a gauge that is written down: %j', (fault, says) => {
    expect(gaugeFaultWords(fault, 'x')).toBe(says);
  });

  it('is said of one division of a dial', () => {
    expect(noDivisionWords).toBe('One division is more than nothing.');
  });
});
