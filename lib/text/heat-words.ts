import { decimalsForResolution } from '@/lib/units/decimals-for-resolution';
import { formatLength } from '@/lib/units/format-length';
import type { Shown } from './shown-size';

type Decimal = Pick<Shown, 'decimal'>;
type Material = {
  name: string;
  expansionNanoPerC: number;
  lowNanoPerC: number;
  highNanoPerC: number;
};
type Hot = {
  tightestSoaked: { temperatureC: number; clearancePm: number };
  bad: { outerC: number; innerC: number; clearancePm: number };
  tight: 'soaked' | 'bad';
  badBetween: { lowPm: number; highPm: number };
  tenMore: { bothPm: number; innerPm: number };
  touchesHotterByC: number | null;
  touchesSoakedC: number | null;
};

/** Stands under every hot figure. */
export const hotCareWords =
  "Hot figures are estimates; they give no leave to run hot or under pressure. Local codes, the maker's data sheet and licensed practice decide.";

/** A temperature without its sign of degree: 60, 20.5, −10. */
export function temperatureFigure(degreesC: number, { decimal }: Decimal): string {
  const rounded = Math.round(Math.abs(degreesC) * 10) / 10;
  const text = String(rounded).replace('.', decimal);
  return degreesC < 0 && rounded !== 0 ? `\u2212${text}` : text;
}

/** Millionths a degree, as tables print it: 11.7. */
export function expansionFigure(nanoPerC: number, { decimal }: Decimal): string {
  const millionths = nanoPerC / 1000;
  const text = Number.isInteger(millionths) ? millionths.toFixed(1) : String(millionths);
  return text.replace('.', decimal).replace('-', '\u2212');
}

/** The range of a coefficient, or that there is only one figure. */
export function expansionRangeWords(material: Material, shown: Decimal): string {
  const { lowNanoPerC: low, highNanoPerC: high } = material;
  if (low === high) return 'one figure only';
  return `${expansionFigure(low, shown)} to ${expansionFigure(high, shown)}`;
}

/** A clearance hot or cold, to the step of clearances: "0.004 clear", "0.002 tight", "touching". */
export function hotClearance(pm: number, shown: Shown): string {
  const figure = lengthFigure(Math.abs(pm), shown);
  if (isNothing(figure)) return 'touching';
  return `${figure} ${pm < 0 ? 'tight' : 'clear'}`;
}

/** Where it is tightest, and how sure that is. `outer` and `inner` are the names of the pieces. */
export function tightPointWords(
  hot: Hot,
  { outer, inner }: { outer: string; inner: string },
  shown: Shown,
): string {
  const { tight, tightestSoaked, bad, badBetween } = hot;
  const degrees = (c: number) => `${temperatureFigure(c, shown)} °C`;
  if (tight === 'soaked') {
    return `Estimate: tightest with both at ${degrees(tightestSoaked.temperatureC)}, about ${hotClearance(tightestSoaked.clearancePm, shown)}.`;
  }
  const [low, high] = [
    hotClearance(badBetween.lowPm, shown),
    hotClearance(badBetween.highPm, shown),
  ];
  const doubt = low === high ? '' : `; from ${low} to ${high} as the coefficients may be`;
  return `Estimate: tightest at the bad moment, ${outer} at ${degrees(bad.outerC)} and ${inner} at ${degrees(bad.innerC)}, about ${hotClearance(bad.clearancePm, shown)}${doubt}.`;
}

/** What ten degrees more would do: to the inner piece alone, then to both. */
export function tenMoreWords({ tenMore }: Hot, { inner }: { inner: string }, shown: Shown): string {
  return `Ten degrees more on ${inner} alone ${moves(tenMore.innerPm, shown)}; on both, ${moves(tenMore.bothPm, shown)}.`;
}

/** When the two touch; an empty text where neither way is within reach. */
export function touchWords(
  { bad, tightestSoaked, touchesHotterByC, touchesSoakedC }: Hot,
  { outer, inner }: { outer: string; inner: string },
  shown: Shown,
): string {
  if (bad.clearancePm < 0 || tightestSoaked.clearancePm < 0) {
    return 'They touch: how hard they press is not worked out here.';
  }
  const words: string[] = [];
  if (touchesHotterByC !== null) {
    words.push(
      `They touch when ${inner} is about ${Math.round(touchesHotterByC)} °C hotter than ${outer} at ${temperatureFigure(bad.outerC, shown)} °C.`,
    );
  }
  if (touchesSoakedC !== null) {
    const at = temperatureFigure(Math.round(touchesSoakedC), shown);
    words.push(`Both at one temperature, they touch at about ${at} °C.`);
  }
  return words.join(' ');
}

/** What the sizes are taken to be. `bothPm` is what ten degrees at the bench would have done to the clearance. */
export function assumedWords(bench: { offPm: number }, shown: Shown): string {
  const figure = lengthFigure(Math.abs(bench.offPm), shown);
  const off = isNothing(figure)
    ? 'hardly differ'
    : `be about ${figure} ${bench.offPm < 0 ? 'less' : 'more'}`;
  return `Sizes are as they were read, taken to be at 20 °C; nothing is corrected. Had both been 10 °C warmer at the bench, the clearance at 20 °C would ${off}.`;
}

/** A piece whose readings say how warm it was. */
export function readWarmWords(
  mark: string,
  { temperatureC, offPm }: { temperatureC: number; offPm: number },
  shown: Shown,
): string {
  const size = lengthFigure(Math.abs(offPm), shown);
  return `${mark} was read at ${temperatureFigure(temperatureC, shown)} °C: here it is taken ${size} ${offPm < 0 ? 'smaller' : 'larger'}, as it would be at 20 °C.`;
}

/** How the material of a part was understood. */
export function materialMatchWords(
  text: string,
  match: { material: Material; how: 'own' | 'table' | 'likely' } | null,
  shown: Decimal,
): string {
  if (match === null) {
    return text.trim() === ''
      ? 'No material said. Choose what it is made of.'
      : `Nothing is known of "${text.trim()}". Choose what it is nearest to.`;
  }
  const { name } = match.material;
  const figure = `${expansionFigure(match.material.expansionNanoPerC, shown)} millionths a degree (${expansionRangeWords(match.material, shown)})`;
  if (match.how === 'likely') return `"${text.trim()}" is taken as ${lowered(name)}: ${figure}.`;
  return match.how === 'own' ? `${name}, your own: ${figure}.` : `${name}: ${figure}.`;
}

/** Far from where the coefficients were measured; null while near. */
export function farWords(temperaturesC: readonly number[]): string | null {
  const isFar = temperaturesC.some((c) => c > 100 || c < 0);
  return isFar
    ? 'The coefficients are for room temperature to about 100 °C; further off they drift, and so do these figures.'
    : null;
}

/** The chart in a sentence, for those who cannot see it. */
export function hotChartWords(
  hot: Hot & { soaked: readonly { temperatureC: number; clearancePm: number }[] },
  names: { outer: string; inner: string },
  shown: Shown,
): string {
  const [first, last] = [hot.soaked[0]!, hot.soaked.at(-1)!];
  const at = (point: { temperatureC: number; clearancePm: number }) =>
    `${hotClearance(point.clearancePm, shown)} at ${temperatureFigure(point.temperatureC, shown)} °C`;
  return `Clearance of ${names.inner} in ${names.outer} against temperature: ${at(first)}${first === last ? '' : ` to ${at(last)}`}, both alike. ${tightPointWords(hot, names, shown)}`;
}

function moves(pm: number, shown: Shown): string {
  const figure = lengthFigure(Math.abs(pm), shown);
  if (isNothing(figure)) return 'changes next to nothing';
  return `${pm < 0 ? 'takes off' : 'gives'} about ${figure}`;
}

function lengthFigure(pm: number, { unit, decimal }: Shown): string {
  const decimals = decimalsForResolution(unit === 'mm' ? 1_000_000 : 2_540_000, unit);
  return formatLength(pm, { unit, decimals, decimal });
}

function lowered(name: string): string {
  return /^[A-Z]{2}/.test(name) ? name : name.slice(0, 1).toLowerCase() + name.slice(1);
}

function isNothing(figure: string): boolean {
  return /^0[.,]?0*$/.test(figure);
}

/** Under the picture of the clearance against temperature. */
export const hotChartKeyWords =
  'Full line: both at one temperature. Dashed: the outer piece stays, the inner one alone changes. Ring: the tightest. Grey: inside the fit.';

/** Nobody has said the temperatures of this fit yet. */
export const guessedTemperaturesWords = 'These temperatures are only to begin with. Type your own.';

/** Nothing is worked out yet. */
export const hotNeedsWords =
  'The clearance hot and cold is worked out when both materials and all four temperatures are known.';

/** What is wrong with a temperature that could be read. */
export const temperatureFaultWords = {
  'out of range': 'From \u2212100 to 1000 °C.',
  order: 'The hottest is below the coldest.',
};
