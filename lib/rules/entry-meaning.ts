import type { FeatureKind } from '@/lib/schema/feature';
import {
  parseLength,
  type LengthError,
  type LengthMeaning,
  type LengthQuestion,
  type LengthSetting,
} from '@/lib/units/parse-length';

export type EntrySetting = LengthSetting & {
  /** Deviations of form and place may be nothing or below it; a size may not. */
  kind: FeatureKind;
};

/** What the text in the entry line means as it stands. */
export type EntryMeaning =
  | { kind: 'empty' }
  /** Nothing wrong yet, and nothing to log: a sign, a mark, the first half of a fraction. */
  | { kind: 'begun'; aloneSign: boolean }
  | { kind: 'length'; meaning: LengthMeaning }
  | { kind: 'question'; code: LengthQuestion; meanings: LengthMeaning[] }
  | { kind: 'error'; code: LengthError | 'not-above-zero'; at: number; character: string };

/**
 * What a text means now, while it is being typed and when it is logged.
 *
 * Control characters that some gauges send before a number are passed over; the text itself is kept as
 * it came. A size of nothing or less is an error, where a departure of form or position may be either.
 */
export function entryMeaning(text: string, setting: EntrySetting): EntryMeaning {
  const { kind, ...lengths } = setting;
  const plain = text.replace(controls, (run) => ' '.repeat(run.length));
  if (plain.trim() === '') return { kind: 'empty' };
  if (begun.test(plain)) return { kind: 'begun', aloneSign: aloneSign.test(plain) };
  const parsed = parseLength(plain, lengths);
  switch (parsed.kind) {
    case 'error':
      return { kind: 'error', code: parsed.code, at: parsed.at, character: parsed.character };
    case 'length': {
      const { kind: _, ...meaning } = parsed;
      return isPossible(meaning, kind)
        ? { kind: 'length', meaning }
        : { kind: 'error', code: 'not-above-zero', at: 0, character: plain.trim()[0]! };
    }
    case 'question': {
      const meanings = parsed.meanings.filter((meaning) => isPossible(meaning, kind));
      if (meanings.length > 1) return { kind: 'question', code: parsed.code, meanings };
      // Both marks against the setting have one meaning, and are asked about all the same.
      if (meanings.length === 1 && parsed.meanings.length === 1) {
        return { kind: 'question', code: parsed.code, meanings };
      }
      return meanings.length === 1
        ? { kind: 'length', meaning: meanings[0]! }
        : { kind: 'error', code: 'not-above-zero', at: 0, character: plain.trim()[0]! };
    }
  }
}

// oxlint-disable-next-line no-control-regex -- some gauges send them
const controls = /[\u0000-\u001f\u007f]+/g;
const begun =
  /^\s*(?:[+\-\u2212\u2013]?\s*[.,]?|(?:\d+(?:\s+|-))?\d+\s*[/\u2044]|[+\-\u2212\u2013]\s*\d+\s*[/\u2044])\s*$/;
const aloneSign = /^\s*[+\-\u2212\u2013]\s*$/;

const formKinds: ReadonlySet<FeatureKind> = new Set([
  'roundness',
  'run-out',
  'straightness',
  'position',
  'step',
]);

/** Whether a feature of this kind is a departure, which may be nothing or less, and no size. */
export function isFormKind(kind: FeatureKind): boolean {
  return formKinds.has(kind);
}

function isPossible({ sizePm }: LengthMeaning, kind: FeatureKind): boolean {
  return sizePm > 0 || isFormKind(kind);
}
