import { parseSigned } from '@/lib/rules/parse-signed';
import type { RunEvent } from '@/lib/schema/run';
import { exactFigure } from '@/lib/text/exact-figure';
import { lengthWords } from '@/lib/text/length-words';
import type { Shown } from '@/lib/text/shown-size';
import type { Dial } from './dial-fields';

/** How far an offset was moved, as it stands in its field: on the dial, while it is kept on diameter. */
export const movedField = {
  /** What stands there before anybody types: every digit that is kept, and nothing for none. */
  text(event: Pick<RunEvent, 'offsetPm'> | undefined, dial: Dial, shown: Shown): string {
    if (event === undefined || event.offsetPm === null) return '';
    const onDialPm = Math.round(event.offsetPm / perDial(dial));
    const figure = exactFigure(Math.abs(onDialPm), shown, shown.unit === 'mm' ? 3 : 4);
    return `${onDialPm < 0 ? '\u2212' : '+'}${figure}`;
  },

  /**
   * On diameter, pm; null where nothing stands there, and the reason where it cannot be read. Where nobody changed
   * what stood there, `was` on its dial, it is what was kept, to the picometre.
   */
  read(
    text: string,
    dial: Dial,
    shown: Shown,
    was?: { event: Pick<RunEvent, 'offsetPm'>; dial: Dial },
  ): { pm: number | null } | string {
    if (
      was !== undefined &&
      dial === was.dial &&
      text === movedField.text(was.event, dial, shown)
    ) {
      return { pm: was.event.offsetPm };
    }
    if (text.trim() === '') return { pm: null };
    const read = parseSigned(text, shown);
    return read.kind === 'length' ? { pm: read.pm * perDial(dial) } : lengthWords(read, text);
  },
};

function perDial(dial: Dial): 1 | 2 {
  return dial === 'radius' ? 2 : 1;
}
