import type { TypedDecimal } from './exact-pm';

/** The number at the front of a typed length, before its unit. */
export type TypedNumber =
  | {
      kind: 'decimal';
      readings: readonly TypedDecimal[];
      question: MarkQuestion | null;
      end: number;
    }
  | { kind: 'fraction'; whole: string; numerator: string; denominator: string; end: number }
  | { kind: 'error'; code: NumberError; at: number };

export type MarkQuestion = 'mark-thousands' | 'marks-against-setting' | 'space-thousands';

export type NumberError =
  'no-digits' | 'not-a-number' | 'two-marks' | 'two-numbers' | 'not-a-fraction' | 'zero-below';

/**
 * Reads the number that begins at `start`: a decimal with either mark, a fraction, or a whole
 * number and a fraction.
 *
 * The mark that is not the person's own may be a decimal or a thousands mark when it stands once,
 * after one to three digits that do not begin with 0 and before exactly three; both readings are
 * returned. With both marks the last one is the decimal mark. Nothing is guessed.
 *
 * @example
 * typedNumber('24,987', 0, '.').readings; // 24.987 and 24987, question 'mark-thousands'
 */
export function typedNumber(text: string, start: number, decimal: '.' | ','): TypedNumber {
  const end = runEnd(text, start);
  if (end === start) {
    const alone = vulgar.get(text[start] ?? '');
    if (alone === undefined)
      return error(start < text.length ? 'not-a-number' : 'no-digits', start);
    return fraction('0', alone, start + 1, text);
  }
  const run = text.slice(start, end);
  if (!hasDigit(run)) return error('no-digits', start);

  const next = skipSpaces(text, end);
  const after = text[next] ?? '';
  if (isSlash(after)) return slashed('0', text, start, end);
  if (vulgar.has(after)) return withWhole(run, text, start, next);
  if (isDash(after) && startsFraction(text, next + 1)) return withWhole(run, text, start, next + 1);
  if (isDigit(after) && next > end) {
    if (startsFraction(text, next)) return withWhole(run, text, start, next);
    return spaced(text, start, decimal);
  }
  return marked(run, start, end, decimal);
}

/** Whether a fraction, `3/4` or a single character for one, begins here. */
function startsFraction(text: string, at: number): boolean {
  if (vulgar.has(text[at] ?? '')) return true;
  const end = runEnd(text, at);
  return end > at && isSlash(text[skipSpaces(text, end)] ?? '');
}

function withWhole(whole: string, text: string, start: number, at: number): TypedNumber {
  if (!isWhole(whole)) return error('not-a-fraction', start);
  const single = vulgar.get(text[at] ?? '');
  if (single !== undefined) return fraction(whole, single, at + 1, text);
  const part = slashed(whole, text, at, runEnd(text, at));
  if (part.kind !== 'fraction') return part;
  return BigInt(part.numerator) < BigInt(part.denominator) ? part : error('not-a-fraction', at);
}

function slashed(whole: string, text: string, start: number, slashFrom: number): TypedNumber {
  const numerator = text.slice(start, slashFrom);
  const from = skipSpaces(text, skipSpaces(text, slashFrom) + 1);
  const end = runEnd(text, from);
  const denominator = text.slice(from, end);
  if (!isWhole(numerator) || !isWhole(denominator)) return error('not-a-fraction', start);
  if (BigInt(denominator) === 0n) return error('zero-below', from);
  return fraction(whole, [numerator, denominator], end, text);
}

function fraction(
  whole: string,
  [numerator, denominator]: readonly [string, string],
  end: number,
  text: string,
): TypedNumber {
  const next = text[skipSpaces(text, end)] ?? '';
  if (isDigit(next) || isSlash(next) || isMark(next) || vulgar.has(next)) {
    return error('not-a-fraction', end);
  }
  return { kind: 'fraction', whole, numerator, denominator, end };
}

/** Digits in groups of three with spaces between: perhaps thousands, perhaps two numbers. */
function spaced(text: string, start: number, decimal: '.' | ','): TypedNumber {
  let end = runEnd(text, start);
  let joined = text.slice(start, end);
  let isGrouped = isWhole(joined) && joined.length <= 3 && joined[0] !== '0';
  const second = skipSpaces(text, end);
  for (let at = second; isDigit(text[at] ?? ''); at = skipSpaces(text, end)) {
    end = runEnd(text, at);
    const group = text.slice(at, end);
    const whole = group.split(decimal)[0] ?? '';
    const isLast = whole !== group;
    isGrouped &&= whole.length === 3 && isWhole(whole);
    joined += group;
    if (isLast) break;
  }
  if (!isGrouped || isDigit(text[skipSpaces(text, end)] ?? '')) return error('two-numbers', second);
  const number = marked(joined, start, end, decimal);
  return number.kind === 'decimal' ? { ...number, question: 'space-thousands' } : number;
}

function marked(run: string, start: number, end: number, decimal: '.' | ','): TypedNumber {
  const other = decimal === '.' ? ',' : '.';
  const own = run.indexOf(decimal);
  const foreign = run.indexOf(other);
  if (own >= 0 && foreign >= 0) return bothMarks(run, start, end, decimal);
  const at = Math.max(own, foreign);
  if (at >= 0 && run.indexOf(run[at]!, at + 1) >= 0) return error('two-marks', start + at);
  const digits = at < 0 ? run : run.slice(0, at) + run.slice(at + 1);
  const decimals = at < 0 ? 0 : run.length - 1 - at;
  const asDecimal = { digits, decimals };
  const isGroup = foreign >= 1 && foreign <= 3 && decimals === 3 && run[0] !== '0';
  return isGroup
    ? {
        kind: 'decimal',
        readings: [asDecimal, { digits, decimals: 0 }],
        question: 'mark-thousands',
        end,
      }
    : { kind: 'decimal', readings: [asDecimal], question: null, end };
}

function bothMarks(run: string, start: number, end: number, decimal: '.' | ','): TypedNumber {
  const at = Math.max(run.lastIndexOf('.'), run.lastIndexOf(','));
  const mark = run[at]!;
  const groups = run.slice(0, at).split(mark === '.' ? ',' : '.');
  const fits = groups.every((group, i) =>
    i === 0 ? /^[1-9]\d{0,2}$/.test(group) : /^\d{3}$/.test(group),
  );
  if (!fits) return error('two-marks', start + run.indexOf(mark));
  const reading = { digits: groups.join('') + run.slice(at + 1), decimals: run.length - 1 - at };
  const question = mark === decimal ? null : 'marks-against-setting';
  return { kind: 'decimal', readings: [reading], question, end };
}

/** Where the run of digits and marks that begins at `at` ends. */
function runEnd(text: string, at: number): number {
  let end = at;
  while (isDigit(text[end] ?? '') || isMark(text[end] ?? '')) end += 1;
  return end;
}

function skipSpaces(text: string, at: number): number {
  let here = at;
  while (isSpace(text[here] ?? '')) here += 1;
  return here;
}

const isDigit = (character: string) => character >= '0' && character <= '9';
const isMark = (character: string) => character === '.' || character === ',';
const isSlash = (character: string) => character === '/' || character === '\u2044';
const isDash = (character: string) =>
  character === '-' || character === '\u2212' || character === '\u2013';
const isSpace = (character: string) =>
  character === ' ' ||
  character === '\t' ||
  character === '\u00a0' ||
  character === '\u2009' ||
  character === '\u202f';
const hasDigit = (run: string) => /\d/.test(run);
const isWhole = (run: string) => /^\d+$/.test(run);

function error(code: NumberError, at: number): TypedNumber {
  return { kind: 'error', code, at };
}

const vulgar = new Map<string, readonly [string, string]>([
  ['\u00bc', ['1', '4']],
  ['\u00bd', ['1', '2']],
  ['\u00be', ['3', '4']],
  ['\u2153', ['1', '3']],
  ['\u2154', ['2', '3']],
  ['\u2155', ['1', '5']],
  ['\u2156', ['2', '5']],
  ['\u2157', ['3', '5']],
  ['\u2158', ['4', '5']],
  ['\u2159', ['1', '6']],
  ['\u215a', ['5', '6']],
  ['\u215b', ['1', '8']],
  ['\u215c', ['3', '8']],
  ['\u215d', ['5', '8']],
  ['\u215e', ['7', '8']],
]);
