import type { Fit } from '@/lib/schema/fit';
import { starterRules } from '@/lib/rules/ways/starter-rules';
import { nothingSaid, type FitSaid } from '@/lib/rules/ways/read-wanted';
import { exactFigure } from '@/lib/text/exact-figure';
import type { Shown } from '@/lib/text/shown-size';
import { slopeFigure } from '@/lib/text/ways-words';

type Rule = { fixedPm: number; minNmPerMm: number; aimNmPerMm: number; maxNmPerMm: number };

/** A kept fit as it would have been typed; the ways it was not said in are filled in where that is sure. */
export function saidOfFit(fit: Fit | null, shown: Shown): FitSaid {
  if (fit === null) return nothingSaid();
  const { minPm, maxPm, aimPm, way, governs } = fit;
  const figure = (pm: number) => wholeFigure(pm, shown);
  const isMiddle = aimPm === Math.round((minPm + maxPm) / 2);
  const said: FitSaid = {
    ...nothingSaid(),
    way,
    governs,
    limits: { min: figure(minPm), max: figure(maxPm), aim: figure(aimPm) },
    classes: fit.classes ?? '',
    classesAim: isMiddle ? '' : figure(aimPm),
  };
  if (way !== 'rule') return said;
  const rule = {
    fixedPm: fit.ruleFixedPm ?? 0,
    minNmPerMm: fit.ruleMinNmPerMm ?? 0,
    aimNmPerMm: fit.ruleAimNmPerMm ?? 0,
    maxNmPerMm: fit.ruleMaxNmPerMm ?? 0,
  };
  const name = fit.ruleName ?? '';
  const key = starterRules.find((one) => one.name === name)?.key ?? '';
  return { ...said, ruleKey: key, ruleName: name, rule: ruleText(rule, shown) };
}

/** A rule's figures as they would be typed. */
export function ruleText(rule: Rule, shown: Shown): FitSaid['rule'] {
  const slope = (nmPerMm: number) => slopeFigure(nmPerMm, shown.decimal);
  return {
    fixed: rule.fixedPm === 0 ? '' : exactFigure(rule.fixedPm, shown),
    min: slope(rule.minNmPerMm),
    aim: slope(rule.aimNmPerMm),
    max: slope(rule.maxNmPerMm),
  };
}

/** Every digit a clearance has, and no fewer places than clearances are said to. */
function wholeFigure(pm: number, shown: Shown): string {
  return exactFigure(pm, shown, shown.unit === 'mm' ? 3 : 4);
}
