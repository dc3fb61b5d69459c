import { useId } from 'react';
import { denseWords, fitRulesSentence } from '@/lib/text/fit-rules-words';
import { roundedShape } from '../strip/rounded-shape';
import type { Shape } from '../strip/shape';
import type { FitRole } from './fit-role';
import type { FitRulesData } from './fit-rules-data';
import { fitRulesLayout, type FitRulesOptions } from './fit-rules-layout';
import styles from './fit-rules.module.css';

export { FitTable } from './fit-table';
export { FittedFitRules } from './fitted-fit-rules';

type Props = FitRulesOptions & {
  data: FitRulesData;
  /** Width in px. */
  width: number;
};

/** The two rules of a fit, to scale, with every measured piece on its zone and the pairs between them. */
export function FitRules({ data, width, ...options }: Props) {
  const id = useId();
  const { shapes, heightPx, timesFullSize, marked } = fitRulesLayout(data, width, options);
  const picture = (
    <svg
      className={styles.rules}
      width={width}
      height={heightPx}
      role="img"
      aria-label={fitRulesSentence(data, timesFullSize)}
    >
      <defs>
        <pattern
          id={`${id}zone`}
          width={8}
          height={8}
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(-45)"
        >
          <rect className={styles.hatchGround} width={8} height={8} />
          <line className={styles.hatch} x1={4} y1={0} x2={4} y2={8} />
        </pattern>
      </defs>
      {shapes.map(roundedShape).map((shape, index) => (
        // oxlint-disable-next-line react/no-array-index-key -- drawn anew as a whole
        <Drawn key={index} shape={shape} zone={`url(#${id}zone)`} />
      ))}
    </svg>
  );
  if (marked === null) return picture;
  return (
    <>
      {picture}
      <p className={styles.note}>{denseWords(densityOf(data, marked), data)}</p>
    </>
  );
}

function densityOf({ internal, external, toMake, resolutionPm }: FitRulesData, marked: number) {
  const pieces = [...internal.pieces, ...external.pieces];
  const doubts = pieces.map(({ expandedPm }) => expandedPm);
  return {
    pieces: pieces.length,
    toMake: toMake.length,
    marked,
    leastPm: Math.min(...doubts),
    mostPm: Math.max(...doubts),
    resolutionPm,
  };
}

function Drawn({ shape, zone }: { shape: Shape<FitRole>; zone: string }) {
  const className = styles[shape.role];
  switch (shape.kind) {
    case 'rect': {
      const { x, y, width, height, role } = shape;
      const fill = role === 'bandExternal' ? { fill: zone } : {};
      return <rect className={className} x={x} y={y} width={width} height={height} {...fill} />;
    }
    case 'line':
      return <line className={className} x1={shape.x1} y1={shape.y1} x2={shape.x2} y2={shape.y2} />;
    case 'path':
      return <path className={className} d={shape.d} />;
    case 'circle':
      return <circle className={className} cx={shape.cx} cy={shape.cy} r={shape.r} />;
    case 'text':
      return (
        <text className={className} x={shape.x} y={shape.y} textAnchor={shape.anchor}>
          {shape.text}
        </text>
      );
  }
}
