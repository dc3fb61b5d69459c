import { dialFrom, dialUnit, type Slide } from '@/lib/rules/cuts/slide';
import type { KeptSlide, TypedSlide } from '@/lib/rules/cuts/typed-slide';
import { dialFigure } from '@/lib/text/cut-words';
import { exactFigure } from '@/lib/text/exact-figure';
import type { Shown } from '@/lib/text/shown-size';

/** A kept set-up as it would have been typed, each figure whole: what is on the dial in the dial's own unit. */
export function slideTyped(
  { slide, lapPm, dialAtPm }: { slide: Slide | null; lapPm: number; dialAtPm: number | null },
  shown: Shown,
): TypedSlide {
  const unit = slide === null ? shown.unit : dialUnit(slide, shown.unit);
  const onDial = (pm: number) => dialFigure(pm, { ...shown, unit });
  const bitesPm = slide === null ? 0 : dialFrom(slide.bitesPm, slide);
  return {
    dial: slide?.dial ?? 'radius',
    division: slide === null ? '' : onDial(slide.divisionPm),
    fineFeed:
      slide === null || slide.fineFeed === 1
        ? ''
        : String(slide.fineFeed).replace('.', shown.decimal),
    bites: bitesPm === 0 ? '' : onDial(bitesPm),
    lap: lapPm === 0 ? '' : exactFigure(lapPm, shown, shown.unit === 'mm' ? 3 : 4),
    dialAt: dialAtPm === null ? '' : onDial(dialAtPm),
    tool: slide?.tool ?? '',
  };
}

/** The same with what it was filled in from; null while nobody has said a slide. */
export function slideKept(
  said: { slide: Slide | null; lapPm: number; dialAtPm: number | null },
  shown: Shown,
): KeptSlide | null {
  const { slide } = said;
  return slide === null ? null : { ...said, slide, typed: slideTyped(said, shown) };
}
