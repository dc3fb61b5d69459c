import { useId } from 'react';
import { stripSentence } from '@/lib/text/strip-sentence';
import type { StripData } from './strip-data';
import { stripLayout } from './strip-layout';
import { largeMetrics, type StripSizeName } from './strip-metrics';
import type { StripRole } from './strip-role';
import { roundedShape } from './rounded-shape';
import type { Shape } from './shape';
import styles from './strip.module.css';

type Props = {
  data: StripData;
  size: StripSizeName;
  /** Width in px; at least 296 on the large forms. */
  width: number;
  /** Whose size it is, first in what is read aloud: "P5 outside". */
  name: string;
  /** The same is said in words beside it. */
  decorative?: boolean;
};

/** The size strip: a horizontal scale with the limits, the readings, the size and what it must fit. */
export function SizeStrip({ data, size, width, name, decorative = false }: Props) {
  const id = useId();
  const { shapes, heightPx } = stripLayout(data, size, width);
  const isSmall = size === 'small' || size === 'card';
  const fontSize = isSmall ? undefined : largeMetrics[size].labelPx;
  return (
    <svg
      className={`${styles.strip} ${isSmall ? styles.small : ''}`}
      width={width}
      height={heightPx}
      {...(fontSize === undefined ? {} : { fontSize })}
      {...(decorative
        ? { 'aria-hidden': true }
        : { role: 'img', 'aria-label': stripSentence(name, data) })}
    >
      <Hatches id={id} />
      {keyed(shapes.map(roundedShape)).map(({ key, shape }) => (
        <Drawn key={key} shape={shape} id={id} />
      ))}
    </svg>
  );
}

/** Guard leans right, the partner left, as neighbouring parts do on a drawing. */
function Hatches({ id }: { id: string }) {
  return (
    <defs>
      <pattern
        id={`${id}guard`}
        width={6}
        height={6}
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <line className={styles.hatchGuard} x1={3} y1={0} x2={3} y2={6} />
      </pattern>
      <pattern
        id={`${id}partner`}
        width={7}
        height={7}
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(-45)"
      >
        <line className={styles.hatchPartner} x1={3.5} y1={0} x2={3.5} y2={7} />
      </pattern>
    </defs>
  );
}

function Drawn({ shape, id }: { shape: Shape<StripRole>; id: string }) {
  const className = styles[shape.role];
  switch (shape.kind) {
    case 'rect': {
      const { x, y, width, height, role } = shape;
      if (role === 'guard' || role === 'partner') {
        return (
          <rect
            className={className}
            x={x}
            y={y}
            width={width}
            height={height}
            fill={`url(#${id}${role})`}
          />
        );
      }
      if (moving.has(role)) {
        return (
          <rect
            className={`${className} ${styles.moves}`}
            style={{ transform: `translateX(${x}px)` }}
            y={y}
            width={width}
            height={height}
          />
        );
      }
      return <rect className={className} x={x} y={y} width={width} height={height} />;
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

const moving = new Set<StripRole>(['bar', 'mark', 'barOut', 'markOut', 'barUnsure', 'markUnsure']);

/** Keys by role and running number; the bar and the mark keep theirs whatever the verdict, so that they move. */
function keyed(shapes: readonly Shape<StripRole>[]) {
  const seen = new Map<string, number>();
  return shapes.map((shape) => {
    const name = shape.role.replace(/(Out|Unsure)$/, '');
    const count = seen.get(name) ?? 0;
    seen.set(name, count + 1);
    return { key: `${name}${count}`, shape };
  });
}
