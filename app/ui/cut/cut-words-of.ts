import type { CutView } from '@/lib/rules/cuts/cut-view';
import type { JobView } from '@/lib/rules/job-view';
import { dialFrom, dialUnit, type Slide } from '@/lib/rules/cuts/slide';
import { cutAdviceWords, learnedWords, type CutAdviceFacts } from '@/lib/text/cut-words';
import type { Said } from '@/lib/text/said';
import type { Shown } from '@/lib/text/shown-size';
import type { OnDial } from './use-put-on';

/** What the Cut screen says next, from what the rules worked out. */
export function adviceSaid(
  view: JobView,
  cut: CutView,
  { slide, lapPm, onDial }: { slide: Slide | null; lapPm: number; onDial: OnDial | null },
  shown: Shown,
): Said {
  const { advice, aim, piece, cell } = cut;
  const stopPm = aim.side === 'external' ? aim.limits.lowerPm : aim.limits.upperPm;
  const gaugeId = aim.now?.gaugeId ?? cell.readings.at(-1)?.gaugeId;
  return cutAdviceWords(
    factsOf(cut, onDial),
    {
      mark: piece.mark,
      side: aim.side,
      gauge: view.sheet.gauges.find(({ id }) => id === gaugeId)?.name ?? 'the gauge',
      resolutionPm: cut.resolutionPm,
      stopPm,
      now: aim.now,
      byPm: advice.kind === 'past' ? advice.byPm : 0,
      lapPm,
      leftPm: cut.leftPm,
      bitesDialPm: slide === null ? 0 : dialFrom(slide.bitesPm, slide),
      dialUnit: slide === null ? shown.unit : dialUnit(slide, shown.unit),
      springPm: cut.learnt.springPm,
    },
    shown,
  );
}

/** What the last cuts teach; nothing while there are fewer than two that can be compared. */
export function learnedSaid(
  view: JobView,
  { learnt, piece, resolutionPm }: CutView,
  slide: Slide | null,
  shown: Shown,
): Said {
  const { learned, steps, springs, springPm } = learnt;
  const pieces = new Map(view.sheet.pieces.map(({ id, mark }) => [id, mark]));
  return learnedWords(
    {
      learned: learned.kind === 'spread' ? learned : null,
      elsewhere: steps.flatMap(({ cut: { pieceId } }) =>
        pieceId === piece.id ? [] : (pieces.get(pieceId) ?? []),
      ),
      springs,
      springPm,
      bitesDialPm: slide === null ? 0 : dialFrom(slide.bitesPm, slide),
      dialUnit: slide === null ? shown.unit : dialUnit(slide, shown.unit),
      resolutionPm,
    },
    shown,
  );
}

function factsOf({ advice, held, cell }: CutView, onDial: OnDial | null): CutAdviceFacts {
  if (held) return { kind: 'held' };
  if (advice.kind === 'measure' && cell.readings.some(({ state }) => state === 'counted')) {
    return { kind: 'too few' };
  }
  if (onDial?.isOwn === true) {
    return { kind: 'cut', how: 'own', cautious: false, expected: onDial.expected };
  }
  if (advice.kind !== 'cut') return advice;
  const { how, cautious } = advice;
  return { kind: 'cut', how, cautious, expected: onDial?.expected ?? null };
}
