import { derivedDimension, type KnownDimension } from '@/lib/maths/derived/derived-dimension';

export const topic = 'Derived dimensions with uncertainty';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const values = inputs.values as Record<string, number>;
  const u = (inputs.u ?? {}) as Record<string, number>;
  const degrees = inputs.degrees_of_freedom as Record<string, number> | undefined;
  const known = Object.fromEntries(
    Object.entries(values).map(([name, value]): [string, KnownDimension] => [
      name,
      {
        value,
        u: u[name] ?? 0,
        ...(degrees?.[name] === undefined ? {} : { degrees: degrees[name] }),
      },
    ]),
  );
  const correlated = (inputs.correlations ?? []) as [string, string, number][];
  const found = derivedDimension(inputs.formula as string, known, correlated);
  return {
    value: found.value,
    u: found.u,
    sensitivities: found.sensitivities,
    contributions_u: found.contributions,
    nu_eff: found.expanded?.degrees,
    U95_with_t: found.expanded?.U95,
  };
}
