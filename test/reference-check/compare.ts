import {
  halfUnit,
  leafPaths,
  rulesFor,
  valueAt,
  type Part,
  type Path,
  type Rule,
} from './tolerance';

/** One figure of a case, judged. */
export type Figure = {
  /** Keys from the part down, with the part in front: `published.ci.0`. */
  at: string;
  state: 'passed' | 'failed' | 'not covered';
  wanted: unknown;
  got: unknown;
  tolerance: string;
};

/** The parts of a case that the comparison reads. */
export type Case = { expected?: unknown; published?: unknown; tolerance?: unknown };

/** A word that may be put freely, but whose presence may not change. */
const freelyWorded = new Set(['error', 'warning', 'reason', 'advice', 'ambiguous']);

/**
 * Judges every figure of a case: each one of `expected`, each number of `published`, and each one
 * of a Monte Carlo run where the tolerance speaks of one.
 *
 * A figure the answer lacks is `not covered`. A list passes item by item, and only when it has the
 * wanted length. A refusal, warning or question that nobody wanted is a failure.
 */
export function compareCase(wantedCase: Case, answer: Record<string, unknown>): Figure[] {
  const { expected, published, tolerance } = wantedCase;
  const run = answer.monte_carlo_1e6;
  const plain = judge(expected, answer, tolerance, 'expected');
  const drawn = run === undefined ? [] : judge(expected, run, tolerance, 'monte_carlo_1e6');
  const isDrawn = (path: Path) => valueAt(answer, path) === undefined && run !== undefined;
  const drawnAt = new Set(drawn.filter(isCovered).map(fieldOf));
  return [
    ...plain.filter((figure) => isCovered(figure) || !drawnAt.has(fieldOf(figure))),
    ...drawn.filter(isCovered),
    ...judge(published, { ...asRecord(run), ...answer }, tolerance, 'published', isDrawn),
    ...unwanted(expected, answer),
  ];
}

const isCovered = (figure: Figure) => figure.state !== 'not covered';
const fieldOf = (figure: Figure) => figure.at.slice(figure.at.indexOf('.'));

function judge(
  wanted: unknown,
  got: unknown,
  tolerance: unknown,
  part: Part,
  isDrawn?: (path: Path) => boolean,
): Figure[] {
  if (wanted === undefined || wanted === null) return [];
  const ruleAt = rulesFor(tolerance, part, wanted, isDrawn);
  const figures = leafPaths(wanted)
    .filter((path) => part !== 'published' || typeof valueAt(wanted, path) !== 'string')
    .map((path) => judgeFigure(path, wanted, got, ruleAt(path), part));
  return [...figures, ...listLengths(wanted, got, part)];
}

function judgeFigure(path: Path, wanted: unknown, got: unknown, rule: Rule, part: Part): Figure {
  const want = valueAt(wanted, path);
  const have = valueAt(got, path);
  const base = { at: [part, ...path].join('.'), wanted: want, got: have };
  const isEmptyList = Array.isArray(want) || (want !== null && typeof want === 'object');
  const tolerance = freelyWorded.has(path.at(-1) ?? '') ? 'worded freely' : inWords(rule);
  if (have === undefined && !isEmptyList) return { ...base, tolerance, state: 'not covered' };
  const passed = tolerance === 'worded freely' ? isSaid(have) : passes(want, have, rule);
  return { ...base, tolerance, state: passed ? 'passed' : 'failed' };
}

/** True when `got` is as near to `wanted` as the rule asks. */
export function passes(wanted: unknown, got: unknown, rule: Rule): boolean {
  if (typeof wanted !== 'number') return wanted === got;
  if (typeof got !== 'number' || !Number.isFinite(got)) return false;
  if (rule.kind === 'exact') return isExact(wanted, got);
  if (rule.kind === 'exact-to') {
    return Math.round(got / rule.step) === Math.round(wanted / rule.step);
  }
  if (rule.kind === 'half-unit') {
    return Math.abs(got - wanted) <= halfUnit(wanted) * (1 + 1e-9);
  }
  const allowed = wanted === 0 ? Math.max(rule.abs, rule.zeroAbs) : rule.abs;
  return Math.abs(got - wanted) <= allowed + rule.rel * Math.abs(wanted);
}

/** Whole numbers must be equal, to the noise of double arithmetic; others to the printed digits. */
function isExact(wanted: number, got: number): boolean {
  if (Number.isInteger(wanted)) {
    return (
      Math.abs(got - wanted) <= 1e-12 * Math.max(1, Math.abs(wanted)) && !isInexactPm(wanted, got)
    );
  }
  const step = 2 * halfUnit(wanted);
  return Math.round(got / step) === Math.round(wanted / step);
}

/** Beyond 10^6 a whole number is a count or an exact length: the very same number is asked for. */
function isInexactPm(wanted: number, got: number): boolean {
  return Math.abs(wanted) > 1e6 && got !== wanted;
}

function isSaid(words: unknown): boolean {
  return typeof words === 'string' && words.trim() !== '';
}

/** Lists of the wrong length, and lists wanted empty that are not. */
function listLengths(wanted: unknown, got: unknown, part: Part, at: Path = []): Figure[] {
  if (wanted === null || typeof wanted !== 'object') return [];
  const inner = Object.entries(wanted).flatMap(([key, value]) =>
    listLengths(value, valueAt(got, [key]), part, [...at, key]),
  );
  if (!Array.isArray(wanted)) return inner;
  const length = Array.isArray(got) ? got.length : undefined;
  if (wanted.length > 0 && (length === undefined || length === wanted.length)) return inner;
  if (length === undefined) return [lengthFigure('not covered')];
  return [lengthFigure(length === wanted.length ? 'passed' : 'failed'), ...inner];

  function lengthFigure(state: Figure['state']): Figure {
    const name = [part, ...at, 'length'].join('.');
    return {
      at: name,
      wanted: (wanted as unknown[]).length,
      got: length,
      tolerance: 'exact',
      state,
    };
  }
}

function unwanted(expected: unknown, answer: Record<string, unknown>): Figure[] {
  return Object.keys(answer)
    .filter((key) => freelyWorded.has(key) && answer[key] !== undefined)
    .filter((key) => expected !== null && typeof expected === 'object' && !(key in expected))
    .map((key) => ({
      at: `expected.${key}`,
      wanted: undefined,
      got: answer[key],
      tolerance: 'not wanted',
      state: 'failed',
    }));
}

function inWords(rule: Rule): string {
  if (rule.kind === 'exact') return 'exact';
  if (rule.kind === 'exact-to') return `exact to ${rule.step}`;
  if (rule.kind === 'half-unit') return 'half a unit of the last printed digit';
  const parts = [rule.abs > 0 ? `abs ${rule.abs}` : '', rule.rel > 0 ? `rel ${rule.rel}` : ''];
  return parts.filter((text) => text !== '').join(' + ') || 'equal';
}

function asRecord(value: unknown): Record<string, unknown> {
  return value !== null && typeof value === 'object' ? (value as Record<string, unknown>) : {};
}
