/** How far one figure may be from what the reference wants. */
export type Rule =
  | { kind: 'near'; abs: number; rel: number; zeroAbs: number }
  | { kind: 'exact' }
  | { kind: 'exact-to'; step: number }
  | { kind: 'half-unit' };

/** Which part of a case a figure stands in. */
export type Part = 'expected' | 'published' | 'monte_carlo_1e6';

/** Keys from the part down to one figure: `['external', 'major', '0']`. */
export type Path = readonly string[];

/**
 * Rules for every figure of one part of a case, as the README of the reference sets words them.
 *
 * The tolerance of a case is an object of any depth. A key is a measure (`abs`, `rel`, `exact`), a
 * selector that names fields (`slope, intercept`), or both (`ratio_rel`, `abs_mm`, `lines_abs`).
 * A rule with a selector beats a rule without. A field that nothing names is held, when it is a
 * whole number, a word or a yes/no, exactly; else to the widest relative tolerance of the case, and
 * when the case states none, to one part in 10^9, or to half a unit of its last digit where it is
 * written with nine digits or more and so was rounded there. A published figure without a rule of its own may
 * be off by half a unit of its last printed digit, or by what the case allows, whichever is more;
 * where `isDrawn` says that a run of draws answers it, the case's tolerance is the one for runs.
 */
export function rulesFor(
  tolerance: unknown,
  part: Part,
  wanted: unknown,
  isDrawn: (path: Path) => boolean = () => false,
): (path: Path) => Rule {
  const paths = leafPaths(wanted);
  const statements = collect(tolerance, wanted);
  const own = statements.filter((statement) => statement.part === part);
  const shared = statements.filter((statement) => statement.part === 'any');
  const chooseOwn = chooser(own, paths);
  const chooseShared = chooser(shared, paths);
  const ofRun = statements.filter((statement) => statement.part === 'monte_carlo_1e6');
  const chooseOfRun = chooser(ofRun, paths);
  const widestRel = Math.max(0, ...statements.map((statement) => statement.rel ?? 0));

  return (path) => {
    const value = valueAt(wanted, path);
    const stated = chooseOwn(path);
    if (stated !== undefined) return stated;
    const choose = isDrawn(path) ? chooseOfRun : chooseShared;
    const general = part === 'monte_carlo_1e6' ? undefined : choose(path);
    if (part === 'published') return looser(general, value);
    if (general !== undefined) return general;
    if (typeof value !== 'number' || Number.isInteger(value)) return { kind: 'exact' };
    if (widestRel > 0) return { kind: 'near', abs: 0, rel: widestRel, zeroAbs: 0 };
    const abs = Math.max(1e-9 * Math.abs(value), digitsOf(value) >= 9 ? halfUnit(value) : 0);
    return { kind: 'near', abs, rel: 0, zeroAbs: 0 };
  };
}

/** Every path of `value` that ends in something other than an object or a list. */
export function leafPaths(value: unknown, at: Path = []): Path[] {
  if (value === null || typeof value !== 'object') return [at];
  return Object.entries(value).flatMap(([key, inner]) => leafPaths(inner, [...at, key]));
}

/** What stands at a path, or undefined. */
export function valueAt(value: unknown, path: Path): unknown {
  let here = value;
  for (const key of path) {
    if (here === null || typeof here !== 'object') return undefined;
    here = (here as Record<string, unknown>)[key];
  }
  return here;
}

/** Half a unit of the last digit of a number as it is written: 0.005 for 1.23, 0.5 for 12. */
export function halfUnit(printed: number): number {
  const [mantissa = '', exponent = '0'] = String(printed).toLowerCase().split('e');
  const decimals = mantissa.split('.')[1]?.length ?? 0;
  return 0.5 * 10 ** (Number(exponent) - decimals);
}

/** Digits of a number as it is written, zeros in front not counted: 9 for 15.1578947. */
function digitsOf(printed: number): number {
  const [mantissa = ''] = String(Math.abs(printed)).split('e');
  return mantissa.replace('.', '').replace(/^0+/, '').length;
}

/** One statement of the tolerance: who it is for and what it allows. */
type Statement = {
  part: Part | 'any';
  /** Words naming fields; undefined means all of them. */
  selector: string | undefined;
  unit: string | undefined;
  abs?: number;
  rel?: number;
  fixed?: Rule;
  zeroAbs: number;
};

const remarks = new Set(['why', 'note', 'exceptions']);

function collect(tolerance: unknown, wanted: unknown): Statement[] {
  if (typeof tolerance === 'string') return fromWords(tolerance, undefined, 'any', wanted);
  if (tolerance === null || typeof tolerance !== 'object') return [];
  const note = (tolerance as Record<string, unknown>).note;
  const zeroAbs = Number(/zero[^;]*absolute ([\d.e-]+)/.exec(String(note ?? ''))?.[1] ?? 0);
  const found: Statement[] = [];
  gather(tolerance as Record<string, unknown>, {
    part: 'any',
    selector: undefined,
    unit: undefined,
  });
  return found.map((statement) => ({ ...statement, zeroAbs }));

  function gather(
    node: Record<string, unknown>,
    under: Pick<Statement, 'part' | 'selector' | 'unit'>,
  ) {
    for (const [key, value] of Object.entries(node)) {
      if (remarks.has(key)) continue;
      const { measure, unit, name } = takeApart(key);
      const here = { ...under, ...placed(name, under, wanted), unit: unit ?? under.unit };
      if (typeof value === 'number') {
        found.push({ ...here, [measure ?? 'abs']: value, zeroAbs: 0 });
      } else if (typeof value === 'string') {
        found.push(...fromWords(value, here.selector, here.part, wanted));
      } else if (value !== null && typeof value === 'object') {
        gather(value as Record<string, unknown>, here);
      }
    }
  }
}

/** `ratio_rel` is the measure rel for fields named ratio; `abs_mm` is abs for lengths in mm. */
function takeApart(key: string) {
  const found = /^(?:(.*)_)?(abs|rel)(?:_([A-Za-z]+\d?))?$/.exec(key);
  if (found === null) return { measure: undefined, unit: undefined, name: key };
  return { measure: found[2] as 'abs' | 'rel', unit: found[3], name: found[1] ?? '' };
}

function placed(name: string, under: Pick<Statement, 'part' | 'selector'>, wanted: unknown) {
  if (name === '' || name === 'all' || name === 'analytic') return {};
  if (name === 'expected' || name === 'published') return { part: name as Part };
  const run = /^(.*)_1e6$/.exec(name)?.[1];
  if (run !== undefined) {
    const fields = Object.keys(wanted ?? {}).map((field) => field.toLowerCase());
    return fields.includes(run) ? { selector: run } : { part: 'monte_carlo_1e6' as Part };
  }
  return { selector: under.selector === undefined ? name : `${under.selector} > ${name}` };
}

function fromWords(
  words: string,
  selector: string | undefined,
  part: Statement['part'],
  wanted: unknown,
): Statement[] {
  const base = { part, selector, unit: undefined, zeroAbs: 0 };
  const named = words.split(/[;,]/).flatMap((clause) => {
    const found = /^\s*(?:except\s+)?([A-Za-z]\w*)\b.*?\babs\s+([\d.e-]+)\s*$/.exec(clause);
    if (found === null) return [];
    const name = selector === undefined ? found[1] : `${selector} > ${found[1]}`;
    return [{ ...base, selector: name, abs: Number(found[2]) }];
  });
  if (words.startsWith('half a unit')) {
    return [{ ...base, fixed: { kind: 'half-unit' } }, ...named];
  }
  const inSd = /^([\d.e-]+) sd$/.exec(words);
  if (inSd) {
    const sd = Number((wanted as Record<string, unknown> | null)?.sd);
    return [{ ...base, abs: Number(inSd[1]) * sd }];
  }
  const step = /^exact to ([\d.]+) mm$/.exec(words);
  if (step) return [{ ...base, fixed: { kind: 'exact-to', step: Number(step[1]) } }];
  return [{ ...base, fixed: { kind: 'exact' } }, ...named];
}

function chooser(statements: readonly Statement[], paths: readonly Path[]) {
  const selectors = [...new Set(statements.map((statement) => statement.selector))];
  const named = selectors.filter((selector) => selector !== undefined);
  const claims = claim(named, paths);
  return (path: Path): Rule | undefined => {
    const selector = claims.get(path.join('/'));
    for (const candidate of selector === undefined ? [undefined] : [selector, undefined]) {
      const rule = merged(
        statements.filter((statement) => statement.selector === candidate),
        path,
      );
      if (rule !== undefined) return rule;
    }
    return undefined;
  };
}

/** The abs and the rel of one selector are added, as in |got - expected| <= abs + rel |expected|. */
function merged(statements: readonly Statement[], path: Path): Rule | undefined {
  const fixed = statements.find((statement) => statement.fixed !== undefined)?.fixed;
  if (fixed !== undefined) return fixed;
  const fits = statements.filter((statement) => suits(statement, path));
  if (fits.length === 0) return undefined;
  return {
    kind: 'near',
    abs: Math.max(0, ...fits.map((statement) => statement.abs ?? 0)),
    rel: Math.max(0, ...fits.map((statement) => statement.rel ?? 0)),
    zeroAbs: Math.max(0, ...fits.map((statement) => statement.zeroAbs)),
  };
}

const units = [
  'mm',
  'um',
  'nm',
  'in',
  'C',
  'K',
  'deg',
  'arcmin',
  'MPa',
  'N',
  'Nm',
  'percent',
  'mm2',
];

/** `abs_mm` is not for a field that names another unit; kelvins and degrees Celsius are one size. */
function suits({ unit }: Statement, path: Path): boolean {
  if (unit === undefined) return true;
  const named = path
    .toReversed()
    .map((key) => key.split('_').at(-1) ?? '')
    .find((word) => units.includes(word));
  return named === undefined || oneSize(named) === oneSize(unit);
}

const oneSize = (unit: string) => (unit === 'K' ? 'C' : unit);

/**
 * Gives every path at most one selector: nested selectors before single ones, then the closest kind
 * of match, then the longer name. Beside `others` a selector means the field of that very name.
 */
function claim(selectors: readonly string[], paths: readonly Path[]): Map<string, string> {
  const claims = new Map<string, string>();
  const rest = selectors.includes('others');
  const levels = rest ? [isKey] : [isKey, hasAllWords, hasWordAndDigits, hasAnyWord];
  const nested = selectors.filter((selector) => selector.includes(' > '));
  const single = selectors.filter((selector) => !selector.includes(' > '));
  for (const group of [nested, single]) {
    for (const level of levels) {
      for (const path of paths) {
        const best = closest(group, path, level);
        if (best !== undefined && !claims.has(path.join('/'))) claims.set(path.join('/'), best);
      }
    }
  }
  for (const path of rest ? paths : []) {
    if (!claims.has(path.join('/'))) claims.set(path.join('/'), 'others');
  }
  return claims;
}

function closest(selectors: readonly string[], path: Path, level: Level): string | undefined {
  const found = selectors
    .map((selector) => ({ selector, place: placeOf(selector, path, level) }))
    .filter(({ place }) => place >= 0)
    .sort((a, b) => b.selector.length - a.selector.length || a.place - b.place);
  return found[0]?.selector;
}

type Level = (name: string, path: Path) => number;

/** Where in the path the selector is found, or -1. `a > b` needs both; `a, b` and `a and b` either. */
function placeOf(selector: string, path: Path, level: Level): number {
  const steps = selector.split(' > ');
  const places = steps.map((step, i) => {
    const names = step.split(/,\s*|\s+and\s+/);
    const found = names.map((name) => (i < steps.length - 1 ? hasAllWords : level)(name, path));
    return Math.min(...found.map((place) => (place < 0 ? Infinity : place)));
  });
  const last = Math.max(...places);
  return Number.isFinite(last) ? last : -1;
}

const isKey: Level = (name, path) => path.indexOf(name);

const hasAllWords: Level = (name, path) => {
  const places = wordsOf(name).map((word) => wordPlace(word, path));
  return places.includes(-1) ? -1 : Math.min(...places);
};

const hasWordAndDigits: Level = (name, path) =>
  pathWords(path).findIndex((word) => new RegExp(`^${escaped(name)}\\d+$`).test(word));

const hasAnyWord: Level = (name, path) => {
  const parts = wordsOf(name).filter((word) => !/^\d/.test(word));
  const places = parts.map((word) => wordPlace(word, path)).filter((place) => place >= 0);
  return places.length === 0 ? -1 : Math.min(...places);
};

const other: Record<string, RegExp> = {
  limit: /^[ul]cl$/,
  endpoint: /^(interval|coverage|shortest|framework|ci)\d*$/,
};

function wordPlace(word: string, path: Path): number {
  return pathWords(path).findIndex(
    (there) => same(there, word) || other[singular(word)]?.test(there) === true,
  );
}

function same(a: string, b: string): boolean {
  if (a.length === 1 || b.length === 1) return a === b;
  if (/^[\d.]+$/.test(a) && /^[\d.]+$/.test(b)) return Number(a) === Number(b);
  return singular(a.toLowerCase()) === singular(b.toLowerCase());
}

function singular(word: string): string {
  return word.length > 3 && word.endsWith('s') ? word.slice(0, -1) : word;
}

const wordsOf = (name: string) => name.split(/[_\s]+/).filter((word) => word !== '');
const pathWords = (path: Path) => path.flatMap(wordsOf);
const escaped = (name: string) => name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

function looser(general: Rule | undefined, value: unknown): Rule {
  if (typeof value !== 'number') return general ?? { kind: 'exact' };
  const half = halfUnit(value);
  if (general?.kind !== 'near') return { kind: 'half-unit' };
  const allowed = general.abs + general.rel * Math.abs(value);
  return allowed > half ? general : { kind: 'half-unit' };
}
