/** A formula of the bench, with what each name means. */
export type CommonFormula = {
  key: string;
  formula: string;
  names: Readonly<Record<string, string>>;
};

/**
 * Formulas for dimensions that are worked out more often than measured, ready
 * for parseFormula. Lengths in one unit, angles in degrees.
 *
 * Source: geometry; each is checked against a constructed figure in the tests.
 */
export const commonFormulas: readonly CommonFormula[] = [
  {
    key: 'centred-groove',
    formula: '(L - w)/2',
    names: { L: 'length over all', w: 'width of the groove' },
  },
  { key: 'wall', formula: '(D - d)/2', names: { D: 'outside diameter', d: 'bore' } },
  {
    key: 'centres-over-pins',
    formula: 's - (d1 + d2)/2',
    names: { s: 'size over both pins', d1: 'first pin', d2: 'second pin' },
  },
  {
    key: 'radius-from-chord',
    formula: 'c^2/(8 h) + h/2',
    names: { c: 'chord', h: 'height of the arc' },
  },
  {
    key: 'sine-bar-angle',
    formula: 'asin(h/L) in degrees',
    names: { h: 'height of the gauge blocks', L: 'length of the sine bar' },
  },
  {
    key: 'included-taper',
    formula: '2 atan((D - d)/(2 L)) in degrees',
    names: { D: 'large diameter', d: 'small diameter', L: 'length between them' },
  },
  {
    key: 'taper-over-rollers',
    formula: '2 atan((M2 - M1)/(2 h)) in degrees',
    names: { M1: 'size over rollers below', M2: 'size over rollers above', h: 'height between' },
  },
  {
    key: 'male-dovetail',
    formula: 'M - d (1 + 1/tan(a/2)), a in degrees',
    names: { M: 'size over rollers', d: 'roller', a: 'dovetail angle' },
  },
  {
    key: 'pitch-circle',
    formula: 'c/sin(pi/n)',
    names: { c: 'chord of neighbouring holes', n: 'number of holes' },
  },
  {
    key: 'bore-from-two-balls',
    formula: 'd + sqrt(d^2 - (h - d)^2)',
    names: { d: 'ball', h: 'height over both balls' },
  },
  {
    key: 'from-unfinished-face',
    formula: 'p + s',
    names: { p: 'position from the face as it is', s: 'stock still on the face' },
  },
];
