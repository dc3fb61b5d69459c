'use client';

import type { CutView } from '@/lib/rules/cuts/cut-view';
import type { PastChoices } from '@/lib/rules/cuts/past-choices';
import { fateNote, finalFirstWords, pastWords } from '@/lib/text/cut-past-words';
import type { Said } from '@/lib/text/said';
import type { Shown } from '@/lib/text/shown-size';
import { tiePair } from '../fits/decide-pair';
import { useJob } from '../job/job-provider';
import { useThings } from '../job/use-things';
import { Button } from '../primitives/button';
import styles from './cut.module.css';
import { SaidLine } from './said-line';

type Props = { cut: CutView; choices: PastChoices; shown: Shown; personId: string | null };

/** What can become of a piece that is past its stop: each choice with its numbers; the one made is kept. */
export function PastPanel({ cut, choices, shown, personId }: Props) {
  const { view } = useJob();
  const { make, change, trouble, busy } = useThings();
  const { aim, piece, advice, resolutionPm } = cut;
  const markOf = (id: string) => view.sheet.pieces.find((one) => one.id === id)?.mark ?? '';
  const partner = aim.partner === null ? null : markOf(aim.partner.pieceId);
  const words = pastWords(
    {
      mark: piece.mark,
      partner,
      side: aim.side,
      resolutionPm,
      other: clearOf(choices.other),
      nearest: clearOf(choices.nearest),
      make: choices.make === null ? null : { ...choices.make, mark: markOf(choices.make.pieceId) },
      sleevePm: choices.sleevePm,
    },
    shown,
  );
  const stopPm = aim.side === 'external' ? aim.limits.lowerPm : aim.limits.upperPm;

  function clearOf(clear: PastChoices['other']) {
    if (clear === null) return null;
    const sides = aim.partner!.fit;
    const others = aim.side === 'external' ? sides.internals : sides.externals;
    const sizePm = others.find((one) => one.piece.id === clear.partnerId)?.size?.valuePm ?? 0;
    return { ...clear, mark: markOf(clear.partnerId), sizePm };
  }

  /** A person ties the piece to a partner, measured or still to make. */
  function tie(partnerId: string): void {
    const { fit } = aim.partner!.fit;
    const who = { decidedAt: new Date().toISOString(), personId };
    void tiePair({ make, change }, view.sheet.pairs, fit, twoOf(partnerId), who);
  }

  function twoOf(partnerId: string) {
    return aim.side === 'external'
      ? { internalPieceId: partnerId, externalPieceId: piece.id }
      : { internalPieceId: piece.id, externalPieceId: partnerId };
  }

  /** The final pair the piece is in, with the mark of its partner there; it has to be undone first. */
  function finalWith(): string | null {
    const pair = aim.partner?.fit.pairs.find(
      (one) =>
        one.state === 'final' &&
        (one.internalPieceId === piece.id || one.externalPieceId === piece.id),
    );
    if (pair === undefined) return null;
    return markOf(aim.side === 'external' ? pair.internalPieceId : pair.externalPieceId);
  }

  function befalls(fate: 'scrapped' | 'sleeve'): void {
    const byPm = advice.kind === 'past' ? advice.byPm : 0;
    const sizePm = aim.now!.valuePm;
    const said = fateNote(fate, { sizePm, byPm, stopPm, partner, resolutionPm }, shown);
    const note = [piece.note, said].filter((part) => part !== '').join('\n');
    void change('piece', piece.id, { version: piece.version, fate, note });
  }

  const options: { act: string; says: Said; onAct: () => void }[] = [];
  const final = finalWith();
  if (words.other !== null && final === null) {
    options.push({ ...words.other, onAct: () => tie(choices.other!.partnerId) });
  }
  if (words.make !== null && final === null) {
    options.push({ ...words.make, onAct: () => tie(choices.make!.pieceId) });
  }
  options.push({ ...words.sleeve, onAct: () => befalls('sleeve') });
  options.push({ ...words.scrap, onAct: () => befalls('scrapped') });
  return (
    <section className={styles.past} aria-label={`What becomes of ${piece.mark}`}>
      {words.none === null ? null : (
        <p>
          <SaidLine said={words.none} />
        </p>
      )}
      {final === null ? null : <p>{finalFirstWords(piece.mark, final)}</p>}
      <ul>
        {options.map(({ act, says, onAct }, index) => (
          <li key={act}>
            <p>
              <SaidLine said={says} />
            </p>
            <Button bench kind={index === 0 ? 'warm' : 'plain'} disabled={busy} onClick={onAct}>
              {act}
            </Button>
          </li>
        ))}
      </ul>
      {trouble === null ? null : <p role="alert">{trouble}</p>}
    </section>
  );
}
