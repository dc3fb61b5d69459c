import type { LengthUnit } from '@/lib/units/picometres';

/**
 * What was typed, where the size shown beside it is not just that: "typed +0.02 mm", "typed 34"; empty
 * where it is. A mark, a nought before it and the blanks about it make no difference.
 */
export function typedAside(
  { text, unit }: { text: string; unit: LengthUnit },
  shown: { text: string; unit: LengthUnit },
): string {
  const typed = text.trim();
  const isShown =
    unit === shown.unit && /^[\d.,]+$/.test(typed) && figures(typed) === figures(shown.text);
  if (isShown) return '';
  // Last figures are no millimetres.
  const isWhole = /[a-z"]/i.test(typed) || (unit === shown.unit && /^\d+$/.test(typed));
  return `typed ${typed}${isWhole ? '' : ` ${unit}`}`;
}

function figures(text: string): string {
  return text.replace(/\D/g, '').replace(/^0+/, '');
}
