import { MathsInputError } from '../check';

/** A formula that has been read and can be worked out. */
export type Formula = {
  /** What the formula is of, in the order in which the names first stand in it. */
  names: string[];
  /** Its value for the values of `names`, in that order. */
  evaluate: (values: readonly number[]) => number;
};

/**
 * Reads a formula as a person writes it: `(L - w)/2`, `c^2/(8 h) + h/2`,
 * `asin(h/L) in degrees`, `M - d (1 + 1/tan(a/2)), a in degrees`,
 * `c/sin(pi/n), n = 6`.
 *
 * Numbers, names of letters and digits, `pi`, + - * / ^ and round brackets;
 * sin, cos, tan, asin, acos, atan, sqrt and abs before a bracket. Two things side
 * by side are multiplied. ^ goes first and from the right, and before a minus
 * sign: -x^2 is -(x^2). Angles are in radians unless told: `in degrees` at the
 * end of the formula is for its result, `, a in degrees` for a name;
 * `, n = 6` gives a name its value. A name and an equals sign in front are left aside.
 *
 * What can be read in two ways is refused: `1/2 x` with no brackets. Nothing in
 * the text is run as a program. At most 200 characters.
 *
 * @throws {MathsInputError} `formula/text`, `formula/ambiguous`
 *
 * @example
 * parseFormula('(L - w)/2').evaluate([42.016, 5.032]); // 18.492
 */
export function parseFormula(text: string): Formula {
  if (text.length > 200) throw refuse('text', `at most 200 characters, got ${text.length}`);
  const [body = '', ...remarks] = text.split(',').map((part) => part.trim());
  const [, shown = '', resultInDegrees] =
    /^(?:[A-Za-z]\w*\s*=)?(.*?)(\s+in\s+degrees)?$/.exec(body) ?? [];
  const { constants, inDegrees } = readRemarks(remarks);
  const reader = new Reader(tokensOf(shown));
  const root = reader.sum();
  reader.end();
  const names = reader.names.filter((name) => !constants.has(name));
  for (const name of [...constants.keys(), ...inDegrees]) {
    if (!reader.names.includes(name)) throw refuse('text', `remarks on names in it, got ${name}`);
  }
  return {
    names,
    evaluate: (values) => {
      const scope = new Map(constants);
      names.forEach((name, i) => scope.set(name, values[i] ?? NaN));
      for (const name of inDegrees) scope.set(name, (scope.get(name)! * Math.PI) / 180);
      const value = root(scope);
      return resultInDegrees === undefined ? value : (value * 180) / Math.PI;
    },
  };
}

type Node = (scope: ReadonlyMap<string, number>) => number;

const functions: Readonly<Record<string, (x: number) => number>> = {
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  asin: Math.asin,
  acos: Math.acos,
  atan: Math.atan,
  sqrt: Math.sqrt,
  abs: Math.abs,
};

function readRemarks(remarks: readonly string[]) {
  const constants = new Map<string, number>();
  const inDegrees: string[] = [];
  for (const remark of remarks) {
    const [, constant, value] = /^([A-Za-z]\w*)\s*=\s*(-?\d+(?:\.\d+)?)$/.exec(remark) ?? [];
    const [, angle] = /^([A-Za-z]\w*)\s+in\s+degrees$/.exec(remark) ?? [];
    if (constant !== undefined) constants.set(constant, Number(value));
    else if (angle !== undefined) inDegrees.push(angle);
    else throw refuse('text', `remarks such as "n = 6" or "a in degrees", got ${said(remark)}`);
  }
  return { constants, inDegrees };
}

function tokensOf(text: string): string[] {
  const tokens = text.match(/\d+(?:\.\d+)?|\.\d+|[A-Za-z]\w*|\S/g) ?? [];
  const odd = tokens.find((token) => !/^(?:\d*\.?\d+|[A-Za-z]\w*|[-+*/^()])$/.test(token));
  if (odd !== undefined)
    throw refuse('text', `letters, digits and + - * / ^ ( ), got ${said(odd)}`);
  return tokens;
}

/** Reads tokens by the usual order of operations, one method a level. */
class Reader {
  names: string[] = [];
  private at = 0;
  private depth = 0;

  constructor(private readonly tokens: readonly string[]) {}

  end(): void {
    if (this.at < this.tokens.length) throw refuse('text', `an end, got ${said(this.here())}`);
  }

  sum(): Node {
    let left = this.product();
    for (let sign = this.take('+', '-'); sign !== undefined; sign = this.take('+', '-')) {
      const [a, b] = [left, this.product()];
      left = sign === '+' ? (scope) => a(scope) + b(scope) : (scope) => a(scope) - b(scope);
    }
    return left;
  }

  private product(): Node {
    let left = this.signed();
    let lastWasDivision = false;
    for (;;) {
      const sign = this.take('*', '/');
      if (sign === undefined && !this.startsValue()) return left;
      if (sign === undefined && lastWasDivision) {
        throw refuse('ambiguous', `brackets after a division, got ${said(this.here())} beside it`);
      }
      const [a, b] = [left, sign === undefined ? this.power() : this.signed()];
      left = sign === '/' ? (scope) => a(scope) / b(scope) : (scope) => a(scope) * b(scope);
      lastWasDivision = sign === '/';
    }
  }

  private signed(): Node {
    const sign = this.take('-', '+');
    if (sign === undefined) return this.power();
    const of = this.deeper(() => this.signed());
    return sign === '-' ? (scope) => -of(scope) : of;
  }

  private power(): Node {
    const base = this.value();
    if (this.take('^') === undefined) return base;
    const exponent = this.deeper(() => this.signed());
    return (scope) => base(scope) ** exponent(scope);
  }

  private value(): Node {
    if (this.take('(') !== undefined) return this.bracket();
    const token = this.here();
    if (!this.startsValue()) throw refuse('text', `a value, got ${said(token)}`);
    this.at += 1;
    if (/^[\d.]/.test(token!)) {
      const number = Number(token);
      return () => number;
    }
    return this.named(token!);
  }

  private named(name: string): Node {
    const of = Object.hasOwn(functions, name) ? functions[name] : undefined;
    if (of !== undefined) {
      if (this.take('(') === undefined) throw refuse('text', `a bracket after ${name}`);
      const inside = this.bracket();
      return (scope) => of(inside(scope));
    }
    if (name === 'pi') return () => Math.PI;
    if (!this.names.includes(name)) this.names.push(name);
    return (scope) => scope.get(name) ?? NaN;
  }

  private bracket(): Node {
    const inside = this.deeper(() => this.sum());
    if (this.take(')') === undefined) throw refuse('text', 'a closing bracket for each opened');
    return inside;
  }

  private deeper(read: () => Node): Node {
    this.depth += 1;
    if (this.depth > 50) throw refuse('text', 'at most 50 brackets within each other');
    const node = read();
    this.depth -= 1;
    return node;
  }

  private here(): string | undefined {
    return this.tokens[this.at];
  }

  private startsValue(): boolean {
    return /^[\w.(]/.test(this.here() ?? '');
  }

  private take(...signs: string[]): string | undefined {
    const token = this.here();
    if (token === undefined || !signs.includes(token)) return undefined;
    this.at += 1;
    return token;
  }
}

const said = (token: string | undefined) =>
  token === undefined ? 'the end' : JSON.stringify(token);

function refuse(reason: string, what: string): MathsInputError {
  return new MathsInputError(`formula/${reason}`, `parseFormula requires ${what}`);
}
