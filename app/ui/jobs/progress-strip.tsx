/** The progress rule of a list: a tick a piece, longer at 5 and 10, a bar up to the pieces made. */
export function ProgressStrip({ made, of }: { made: number; of: number }) {
  const width = 190;
  const xOf = (count: number) => 1 + (of === 0 ? 0 : (count / of) * (width - 2));
  const every = Math.max(1, Math.ceil(of / 60));
  const ticks = Array.from({ length: Math.floor(of / every) + 1 }, (_, index) => index * every);
  return (
    <svg width={width} height={24} viewBox={`0 0 ${width} 24`} aria-hidden>
      {ticks.map((count) => (
        <line
          key={count}
          x1={xOf(count)}
          x2={xOf(count)}
          y1={count % 10 === 0 || count === of ? 3 : count % 5 === 0 ? 6 : 9}
          y2={15}
          stroke="var(--ink)"
          strokeWidth={1}
        />
      ))}
      <line x1={0} x2={width} y1={15} y2={15} stroke="var(--ink)" strokeWidth={1.25} />
      <line x1={1} x2={xOf(made)} y1={19} y2={19} stroke="var(--ink)" strokeWidth={4} />
      <line x1={xOf(made)} x2={xOf(made)} y1={2} y2={22} stroke="var(--ink)" strokeWidth={3} />
    </svg>
  );
}
