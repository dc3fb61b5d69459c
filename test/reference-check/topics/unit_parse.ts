import { parseLength, type ParsedLength } from '@/lib/units/parse-length';
import { pmFromMm, type DecimalMark, type LengthUnit } from '@/lib/units/picometres';

export const topic = 'Typed text to an exact length';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  const parsed = parseLength(inputs.text as string, {
    decimal: inputs.decimal as DecimalMark,
    unit: inputs.unit as LengthUnit,
    ...(inputs.nominal_mm === undefined
      ? {}
      : { nominalPm: pmFromMm(inputs.nominal_mm as number) }),
  });
  if (parsed.kind === 'error') return { error: `${parsed.code} at ${parsed.at}` };
  if (parsed.kind === 'question') return asked(parsed);
  return {
    pm: parsed.pm,
    relative: parsed.isRelative,
    resolution_pm: parsed.resolutionPm,
    ...(parsed.isRelative ? { size_pm: parsed.sizePm } : {}),
  };
}

/** The set offers sizes where the sign is in doubt, and what was typed everywhere else. */
function asked({ code, meanings }: Extract<ParsedLength, { kind: 'question' }>) {
  const offered = meanings.map(({ pm, sizePm }) => (code === 'sign-large' ? sizePm : pm));
  return { ambiguous: code, candidates_pm: offered };
}
