import { parseLength, type LengthSetting } from '@/lib/units/parse-length';

/** One way a text may have been meant, and the length it would then be, pm. */
export type TypedVariant = { text: string; valuePm: number };

/** Every text with two neighbouring, different figures exchanged; a mark between them is passed over. */
export function swappedVariants(text: string, setting: LengthSetting): TypedVariant[] {
  const at = figures(text);
  return at.slice(1).flatMap((right, i) => {
    const left = at[i]!;
    const apart = text.slice(left + 1, right);
    if (text[left] === text[right] || !/^[.,]?$/.test(apart)) return [];
    const swapped = text.slice(0, left) + text[right] + apart + text[left] + text.slice(right + 1);
    return read(swapped, setting);
  });
}

/** Every text with one figure replaced by another, or left out. */
export function oneFigureVariants(text: string, setting: LengthSetting): TypedVariant[] {
  return figures(text).flatMap((at) =>
    ['', '0', '1', '2', '3', '4', '5', '6', '7', '8', '9']
      .filter((figure) => figure !== text[at])
      .flatMap((figure) => read(text.slice(0, at) + figure + text.slice(at + 1), setting)),
  );
}

function figures(text: string): number[] {
  return [...text].flatMap((character, at) => (/\d/.test(character) ? [at] : []));
}

/** Every length a text may mean; none where it is no length. */
function read(text: string, setting: LengthSetting): TypedVariant[] {
  const parsed = parseLength(text, setting);
  if (parsed.kind === 'error') return [];
  const meanings = parsed.kind === 'length' ? [parsed] : parsed.meanings;
  return meanings.map(({ sizePm }) => ({ text, valuePm: sizePm }));
}
