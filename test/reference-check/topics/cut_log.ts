import type { Cut, CutLog } from '@/lib/maths/fit/cut-ratio';
import { dialSetting } from '@/lib/maths/fit/dial-setting';
import { nextCut } from '@/lib/maths/fit/next-cut';

export const topic = 'Learning from cuts: asked against got, next cut, safe-side rounding';

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  return inputs.kind === 'safe_rounding' ? safeRounding(inputs) : log(inputs);
}

/** The set writes millimetres with at most nine decimals: whole picometres. */
const pm = (mm: unknown) => Math.round((mm as number) * 1e9);
const mm = (lengthPm: number) => lengthPm / 1e9;

function safeRounding(inputs: Record<string, unknown>): Record<string, unknown> {
  const set = dialSetting(pm(inputs.ask_on_dial_mm), {
    reads: 'diameter',
    divisionPm: pm(inputs.division_mm),
  });
  return { divisions: set.divisions, dial_mm: mm(set.dialPm) };
}

function log(inputs: Record<string, unknown>): Record<string, unknown> {
  const cuts = inputs.cuts as [number | 'spring', number][];
  const question: CutLog = {
    side: inputs.feature as CutLog['side'],
    startPm: pm(inputs.start_mm),
    dial: {
      reads: inputs.dial as CutLog['dial']['reads'],
      divisionPm: pm(inputs.division_mm),
    },
    cuts: cuts.map(([dial, size]): Cut =>
      dial === 'spring'
        ? { kind: 'spring', sizeAfterPm: pm(size) }
        : { kind: 'cut', dialPm: pm(dial), sizeAfterPm: pm(size) },
    ),
  };
  const next = nextCut(question, pm(inputs.target_mm));
  const { learned } = next.ratio;
  const answers: Record<string, unknown> = {
    cuts: next.ratio.cuts.map((cut) =>
      cut.kind === 'spring'
        ? { asked_mm: null, got_mm: mm(cut.gotPm), ratio: null }
        : { asked_mm: mm(cut.askedPm), got_mm: mm(cut.gotPm), ratio: cut.ratio },
    ),
    left_mm: mm(next.leftPm),
  };
  if (learned.kind !== 'nothing') {
    answers.ratio_mean = learned.mean;
    answers.ratios_used = learned.used;
  }
  if (learned.kind === 'spread') {
    answers.ratio_sd = learned.sd;
    answers.ratio_upper_95_one_sided = learned.upper;
  }
  if (next.kind !== 'cut') return { ...answers, advice: advice[next.kind] };
  return {
    ...answers,
    ask_on_diameter_mm: mm(next.askOnDiameterPm),
    ask_on_dial_exact_mm: mm(next.askOnDialPm),
    ask_on_dial_rounded_safe_mm: mm(next.dialPm),
    divisions: next.divisions,
    expected_size_mm: mm(next.expectedSizePm),
    ...(next.cautiousDialPm === undefined ? {} : { cautious_dial_mm: mm(next.cautiousDialPm) }),
  };
}

const advice = {
  'past-target': 'at or past the target: do not cut',
  'no-cut-yet': 'no cut to learn from yet',
  'no-ratio': 'the cuts took nothing off: no ratio to go by',
};
