import { shownLength, type Shown } from './shown-size';
import { lengthWords } from './length-words';

type Unread =
  | { kind: 'error'; code: string; character: string }
  | { kind: 'question'; code: string }
  | { kind: 'class'; isoClass: string };

/** What is wrong with a size copied from a drawing, or how to make it plain. */
export function drawnFaultWords(read: Unread, text: string): string {
  if (read.kind === 'class') {
    return `${read.isoClass} is not defined at that size. Type the deviations instead.`;
  }
  if (read.kind === 'question' && read.code === 'one-deviation') {
    return `Is the other deviation nothing? Type both: "${text} 0".`;
  }
  if (read.kind === 'question' && read.code === 'limits-or-deviation') {
    return 'Two limits, or a size and a deviation? Put "to" between limits.';
  }
  if (read.kind === 'error') {
    switch (read.code) {
      case 'fit':
        return 'A fit is given between two parts below; here goes one class, such as 18 H7.';
      case 'sign-first':
        return 'Begin with the size, then its deviations: 18.000 +0.018 0.';
      case 'unsigned-deviation':
        return 'A deviation needs its sign: 18.000 +0.018 0.';
      case 'too-many-numbers':
        return 'One size and at most two deviations.';
      case 'limits-apart':
        return 'These two limits are too far apart for one size.';
      case 'not-above-zero':
        return 'A size is more than nothing.';
    }
  }
  return lengthWords(read, text);
}

/** How a line of the drawing will be read: "18.000 to 18.018 mm", in the unit of the job. */
export function drawnEchoWords(
  read: { nominalPm: number; upperPm: number | null; lowerPm: number | null },
  shown: Shown,
): string {
  const step = shown.unit === 'mm' ? 1_000_000 : 2_540_000;
  const figure = (pm: number) => shownLength(pm, step, shown);
  const unit = shown.unit === 'mm' ? 'mm' : 'inches';
  const { nominalPm, upperPm, lowerPm } = read;
  if (upperPm === null && lowerPm === null) return `${figure(nominalPm)} ${unit}, no tolerance`;
  if (upperPm === null) return `${figure(nominalPm + lowerPm!)} ${unit} or more`;
  if (lowerPm === null) return `${figure(nominalPm + upperPm)} ${unit} or less`;
  return `${figure(nominalPm + lowerPm)} to ${figure(nominalPm + upperPm)} ${unit}`;
}
