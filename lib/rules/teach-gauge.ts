import type { Gauge, GaugeSends, MessageEnd, UnitRule } from '@/lib/schema/gauge';
import { parseLength } from '@/lib/units/parse-length';
import { pmPerUnit, type DecimalMark, type LengthUnit } from '@/lib/units/picometres';
import { serialFrame } from './serial-frame';
import { serialText } from './serial-text';

/** One character a gauge sent and when, ms by a clock that only runs forward; Enter is CR, Tab is HT. */
export type Arrival = { character: string; atMs: number };

/** What three readings of a gauge say of how it sends. */
export type Lesson =
  /** So many of the three have come. */
  | { kind: 'waiting'; came: number }
  | { kind: 'understood'; sends: TaughtSends; readings: TaughtReading[] }
  | { kind: 'fault'; code: LessonFault; texts: string[] };

export type TaughtSends = Omit<GaugeSends, 'serialBaud' | 'serialFrame'>;
export type TaughtReading = { text: string; valuePm: number; unit: LengthUnit };

export type LessonFault =
  | 'no number'
  | 'ends differ'
  | 'marks differ'
  | 'comma twice'
  | 'some name a unit'
  | 'fronts differ'
  | 'not its range'
  | 'by hand';

/** Nothing sent within one message lags so long, and no hand sends two so close together. */
const apartMs = 500;
/** How long after the last character a message without an end is over. */
export const lessonPauseMs = 600;

type Taught = Pick<Gauge, 'unit' | 'resolutionPm' | 'rangeLowPm' | 'rangeHighPm'>;

/**
 * Works out how a gauge sends from three readings of it: the end of its message, its decimal mark, its unit
 * rule, what it writes in front, how many decimals.
 *
 * A mark that stands once is the decimal mark: a gauge writes no thousands (common practice, no source).
 * The unit is the one written; else the one in which every figure is a size this gauge can measure, not finer
 * than it reads; where some are so in millimetres only and others in inches only, it follows a button. Where
 * both are possible it is the gauge's own, and a person sees what it was taken for. What the three do not
 * agree in is a fault, and nothing of them is kept.
 */
export function teachGauge(arrivals: readonly Arrival[], gauge: Taught, nowMs: number): Lesson {
  const messages = messagesOf(arrivals);
  const last = messages.at(-1);
  const isOpen = last !== undefined && last.end === null && nowMs - last.lastAtMs < lessonPauseMs;
  const came = messages.length - (isOpen ? 1 : 0);
  if (came < 3) return { kind: 'waiting', came };
  const three = messages.slice(0, 3);
  const texts = three.map(({ text }) => serialText(text));
  const fault = (code: LessonFault): Lesson => ({ kind: 'fault', code, texts });

  const parts = three.map(({ text }) => partsOf(text));
  if (parts.some((one) => one === null)) return fault('no number');
  const read = parts as Parts[];
  const end = same(three.map((one, n) => one.end ?? read[n]!.end));
  if (end === undefined) return fault('ends differ');
  const longestGapMs = Math.max(...three.map((one) => one.longestGapMs));
  if (end === 'nothing' && longestGapMs > apartMs / 1.5) return fault('by hand');
  const marks = [...new Set(read.map(({ mark }) => mark).filter((mark) => mark !== null))];
  if (marks.length > 1) return fault('marks differ');
  const mark = marks[0] ?? null;
  if (mark === ',' && end === 'comma') return fault('comma twice');
  const front = same(read.map((one) => one.front));
  if (front === undefined) return fault('fronts differ');

  const named = read.filter(({ unit }) => unit !== null).length;
  if (named !== 0 && named !== 3) return fault('some name a unit');
  const units = named === 3 ? read.map((one) => one.unit!) : unitsOf(read, gauge);
  if (units === null) return fault('not its range');
  const unit: UnitRule = named === 3 ? 'says' : (same(units) ?? 'button');
  return {
    kind: 'understood',
    sends: {
      sendsEnd: end,
      sendsMark: mark,
      sendsUnit: unit,
      sendsPlaces: Math.min(...read.map(({ places }) => places)),
      sendsPlus: read.some(({ sign }) => sign === '+'),
      sendsPrefix: front === '' ? null : front,
      sendsPauseMs: end === 'nothing' || end === 'space' ? pauseFor(longestGapMs) : null,
    },
    readings: read.map((one, n) => ({
      text: `${one.sign}${one.figures}${one.unit === null ? '' : ` ${one.unit}`}`,
      valuePm: pmOf(one, units[n]!)!,
      unit: units[n]!,
    })),
  };
}

type Message = { text: string; end: MessageEnd | null; lastAtMs: number; longestGapMs: number };

/** Cut at every CR, LF or Tab, and where so long nothing came. */
function messagesOf(arrivals: readonly Arrival[]): Message[] {
  const messages: Message[] = [];
  let open: Message | null = null;
  for (const { character, atMs } of arrivals) {
    const isEnd = /[\r\n\t]/.test(character);
    if (open !== null && atMs - open.lastAtMs > apartMs) open = null;
    if (isEnd) {
      // The second half of a pair, or a bare end: nothing was sent.
      if (open !== null) open.end = character === '\t' ? 'tab' : 'enter';
      open = null;
      continue;
    }
    if (open === null) {
      open = { text: '', end: null, lastAtMs: atMs, longestGapMs: 0 };
      messages.push(open);
    }
    open.longestGapMs = Math.max(open.longestGapMs, atMs - open.lastAtMs);
    open.text += character;
    open.lastAtMs = atMs;
  }
  return messages.filter(({ text }) => text.trim() !== '');
}

type Parts = {
  front: string;
  sign: '' | '+' | '-';
  figures: string;
  mark: DecimalMark | null;
  places: number;
  unit: LengthUnit | null;
  end: MessageEnd;
};

/** The number in a message and what stands around it; null where there is not exactly one. */
function partsOf(message: string): Parts | null {
  const fixed = serialFrame(message);
  const text = fixed ?? message.replace(controls, '');
  const found = number.exec(text);
  if (found === null) return null;
  const [, front = '', sign = '', figures = '', word = '', end = ''] = found;
  const mark = figures.includes(',') ? ',' : figures.includes('.') ? '.' : null;
  const unit = word === '' ? null : /^mm$/i.test(word) ? 'mm' : 'in';
  return {
    front: front.trim(),
    sign: sign === '' ? '' : sign === '+' ? '+' : '-',
    figures,
    mark,
    places: mark === null ? 0 : figures.length - figures.indexOf(mark) - 1,
    unit,
    end: end === ',' ? 'comma' : end === ' ' ? 'space' : 'nothing',
  };
}

// oxlint-disable-next-line no-control-regex -- some gauges send them
const controls = /[\u0000-\u001f\u007f]+/g;
const number =
  /^([^\d.,+\-\u2212]{0,12})([+\-\u2212]?)\s*(\d+(?:[.,]\d+)?|[.,]\d+)\s*?(mm|in|inch|")?([, ]?)\s*$/i;

/** The unit of each figure, by what the gauge can measure and how finely; null where one fits neither. */
function unitsOf(read: readonly Parts[], gauge: Taught): LengthUnit[] | null {
  const other: LengthUnit = gauge.unit === 'mm' ? 'in' : 'mm';
  const fits = (unit: LengthUnit) => read.map((one) => isPossible(one, unit, gauge));
  const own = fits(gauge.unit);
  if (own.every(Boolean)) return read.map(() => gauge.unit);
  const others = fits(other);
  if (others.every(Boolean)) return read.map(() => other);
  const units = own.map((is, n) => (is ? gauge.unit : others[n] ? other : null));
  return units.every((unit) => unit !== null) ? units : null;
}

function isPossible(one: Parts, unit: LengthUnit, gauge: Taught): boolean {
  const pm = pmOf(one, unit);
  if (pm === null) return false;
  const stepPm = pmPerUnit(unit) / 10 ** one.places;
  // Half of a step is a figure of its own in inches, and an inch step is 2.54 of a metric one.
  if (stepPm < gauge.resolutionPm / 5) return false;
  const { rangeLowPm, rangeHighPm } = gauge;
  // A little beyond its range is still shown by most.
  const slackPm = (rangeHighPm ?? 0) / 50;
  if (rangeHighPm !== null && Math.abs(pm) > rangeHighPm + slackPm) return false;
  return pm <= 0 || rangeLowPm === null || pm >= rangeLowPm - slackPm;
}

function pmOf(one: Parts, unit: LengthUnit): number | null {
  const parsed = parseLength(`${one.figures} ${unit}`, { decimal: one.mark ?? '.', unit });
  if (parsed.kind !== 'length') return null;
  return one.sign === '-' ? -parsed.pm : parsed.pm;
}

/** Half as long again as its slowest key, in steps of 50 ms, and never less than is usual. */
function pauseFor(longestGapMs: number): number {
  return Math.min(500, Math.max(150, 50 * Math.ceil((1.5 * longestGapMs) / 50)));
}

function same<Value>(values: readonly Value[]): Value | undefined {
  return values.every((value) => value === values[0]) ? values[0] : undefined;
}
