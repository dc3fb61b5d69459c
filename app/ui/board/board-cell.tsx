'use client';

import Link from 'next/link';
import type { Feature } from '@/lib/schema/feature';
import type { Piece } from '@/lib/schema/part';
import { verdictWords } from '@/lib/text/verdict';
import { targetFigures } from '@/lib/text/target-figures';
import { figureOf, markStateOf, resolutionOf, stripOf, targetOf } from '../job/cell-shown';
import { useJob } from '../job/job-provider';
import { SizeStrip } from '../strip/size-strip';
import { VerdictMark } from '../verdict/verdict-mark';
import styles from './board.module.css';

type Props = { piece: Piece; feature: Feature; picked: boolean };

/** A size, its verdict mark and its small strip; the whole cell opens the Bench there. */
export function BoardCell({ piece, feature, picked }: Props) {
  const { view, chosen } = useJob();
  const cell = view.cell(piece.id, feature.id);
  const figure = figureOf(view, cell, feature, chosen);
  const state = markStateOf(view, cell, feature);
  const resolutionPm = resolutionOf(view, cell, feature);
  const decide = state === 'out' || state === 'unsure' || state === 'held';
  const live = state === 'to make' && figure !== '';
  const target = targetOf(view, piece.id, feature.id);
  const to = target === null ? '' : targetFigures(target, resolutionPm, chosen).size;
  const word =
    cell.verdict !== null && state !== 'held'
      ? verdictWords(cell.verdict, { ...chosen, resolutionPm })
      : state === 'held'
        ? 'held'
        : state === 'to make'
          ? `to make${to === '' ? '' : ` to ${to}`}`
          : 'not measured';
  const href = `/jobs/${piece.jobId}/bench?piece=${piece.id}&feature=${feature.id}`;
  return (
    <td
      className={`${styles.cell} ${decide ? styles.decide : ''} ${live ? styles.live : ''}`}
      data-picked={picked}
    >
      <Link href={href} className={styles.cellLink} prefetch={false}>
        <span className="unseen">
          {piece.mark} {feature.name}
        </span>
        <span className={styles.figure} data-held={state === 'held'}>
          {figure === '' && to !== '' ? <span className={styles.to}>{to}</span> : figure}
        </span>
        <VerdictMark state={state} side={cell.verdict?.side ?? null} word={word} />
        {(cell.size !== null || cell.limitsFrom !== 'open') && (
          <span className={styles.strip} aria-hidden>
            <SizeStrip
              data={stripOf(view, cell, feature, chosen)}
              size="small"
              width={78}
              name={`${piece.mark} ${feature.name}`}
            />
          </span>
        )}
      </Link>
      {live && to !== '' && (
        <Link
          href={`/jobs/${piece.jobId}/cut?piece=${piece.id}&feature=${feature.id}`}
          className={styles.cutLink}
          prefetch={false}
        >
          to {to}
          <span className="unseen">, cut {piece.mark}</span>
        </Link>
      )}
    </td>
  );
}
