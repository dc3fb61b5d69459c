import { capital } from './capital';

/** A question in the entry line, and what each answer is called. */
type Ask = { title: string; answers: string[] };

/** The next place when each has a reading: "all 6 taken"; of one there is nothing to count. */
export function takenAllWords(of: number): string {
  return of === 1 ? 'taken already' : `all ${of} taken`;
}

/** The same text twice within a moment. */
export function repeatWords(text: string): string {
  return `${text.trim()} came twice at once. Repeat ignored.`;
}

/**
 * Which of two a reading is that comes while another is held: its second measurement, or the next one.
 *
 * @param there where the held one was taken
 * @param held the held one; null where it is hidden
 * @param next where the plan goes on; null where every place is taken, empty where there is only one
 */
export function whoseWords(
  text: string,
  { there, held, next }: { there: string; held: string | null; next: string | null },
): Ask {
  return {
    title: `${text.trim()}: is it for ${there} again?`,
    answers: [
      `it replaces ${held ?? 'the one held'}`,
      next === null || next === '' ? 'one more there' : `it is ${next}`,
    ],
  };
}

/**
 * Where a reading is from when every place has one.
 *
 * @param here the piece, and the place where it was read last; empty where there is only one
 * @param next the piece or feature that comes next; null at the end of the job
 */
export function whereFromWords(
  text: string,
  { of, mark, place, next }: { of: number; mark: string; place: string; next: string | null },
): Ask {
  const taken = capital(takenAllWords(of));
  return {
    title: `${taken}. Where is ${text.trim()} from?`,
    answers: [
      `${mark} again${place === '' ? '' : `, ${place}`}`,
      ...(next === null ? [] : [`the first of ${next}`]),
    ],
  };
}

/** Whether metal has come off: `size` is further on than all the others. */
export function cutSinceWords(size: string): Ask {
  return {
    title: `${size}: was it cut since the others?`,
    answers: ['cut since, this is the new size', 'the same metal'],
  };
}
