import { normalQuantile } from '@/lib/maths/distributions/normal-quantile';
import { acceptanceLimitRelative } from '@/lib/maths/metrology/acceptance-limit-relative';
import { conformanceProbability } from '@/lib/maths/metrology/conformance-probability';
import { conformityZones } from '@/lib/maths/metrology/conformity-zones';
import { decideConformity } from '@/lib/maths/metrology/decide-conformity';
import { falseAcceptanceAtLimit } from '@/lib/maths/metrology/false-acceptance-at-limit';
import { globalRisks } from '@/lib/maths/metrology/global-risks';
import { guardBand, guardFactorDefault } from '@/lib/maths/metrology/guard-band';

export const topic = 'Conformance probability, guard bands, risks';

/** The words of the set for a verdict. */
const words = {
  inside: 'conforms',
  outside: 'does not conform',
  unsure: 'not known well enough to say',
};

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const given = inputs as Record<string, number>;
  if (Array.isArray(inputs.pc))
    return { z: (inputs.pc as number[]).map((pc) => normalQuantile(pc)) };
  if (given.w_over_u !== undefined) {
    const ratios = inputs.w_over_u as number | number[];
    return {
      max_false_acceptance: Array.isArray(ratios)
        ? ratios.map(falseAcceptanceAtLimit)
        : falseAcceptanceAtLimit(ratios),
    };
  }
  if (given.relative_u !== undefined) {
    const { limit, relative_u: part, confidence } = given;
    return { acceptance_limit: acceptanceLimitRelative(limit!, part, confidence!) };
  }
  if (given.um !== undefined) return risks(given);
  return oneReading(inputs as Record<string, number | null>);
}

function risks(given: Record<string, number>) {
  const { conforming, consumer, producer } = globalRisks({
    lower: given.lower!,
    upper: given.upper!,
    acceptLower: given.accept_lower!,
    acceptUpper: given.accept_upper!,
    processMean: given.y0!,
    processSd: given.u0!,
    u: given.um!,
  });
  return { pc_process: conforming, consumer_risk: consumer, producer_risk: producer };
}

function oneReading(given: Record<string, number | null>) {
  const [y, u] = [given.y!, given.u ?? given.U! / (given.k ?? 2)];
  const [lower, upper] = [given.lower ?? undefined, given.upper ?? undefined];
  const limits = { ...(lower !== undefined && { lower }), ...(upper !== undefined && { upper }) };
  const guard = guardFactorDefault * u;
  const { accept, reject } = conformityZones(limits, guard);
  return {
    ...(lower === undefined ? { z: (upper! - y) / u } : {}),
    ...(upper === undefined ? { z: (y - lower!) / u } : {}),
    pc: conformanceProbability(y, u, limits),
    'guard_1.65': guard,
    accept: [accept.lower ?? null, accept.upper ?? null],
    reject_beyond: [reject.lower ?? null, reject.upper ?? null],
    'guard_exact_0.95': guardBand(u, 0.95),
    decision: words[decideConformity(y, limits, guard)],
  };
}
