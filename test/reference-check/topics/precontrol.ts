import { oneSidedLine } from '@/lib/maths/control/one-sided-line';
import { oneSidedZone } from '@/lib/maths/control/one-sided-zone';
import { preControlChances } from '@/lib/maths/control/pre-control-chances';
import { preControlLines } from '@/lib/maths/control/pre-control-lines';
import { preControlSample, type SampleDecision } from '@/lib/maths/control/pre-control-sample';
import { preControlSetUp, type SetUpStep } from '@/lib/maths/control/pre-control-set-up';
import {
  preControlZone,
  type LimitsPm,
  type PreControlZone,
} from '@/lib/maths/control/pre-control-zone';
import { samplingGap } from '@/lib/maths/control/sampling-gap';

export const topic = 'Pre-control for short runs';

type Limited = { lower: number; upper: number };

export function answer(inputs: Record<string, unknown>): Record<string, unknown> {
  switch (inputs.kind) {
    case 'zones':
      return zones(inputs as Limited & { x: number[] });
    case 'set_up':
      return setUp(inputs as Limited & { x: number[] });
    case 'running':
      return running(inputs as Limited & { samples: [number, number][] });
    case 'sampling': {
      const { meanGap, samplePieces } = samplingGap(inputs.stops_at_piece as number[]);
      return { mean_gap: meanGap, sample_every_pieces: samplePieces };
    }
    case 'probabilities':
      return chances(inputs as { Cp: number; mean_off_centre_in_sigma: number });
    default:
      return oneSided(inputs as { best: number; limit: number; x: number[] });
  }
}

function zones({ x, ...drawn }: Limited & { x: number[] }): Record<string, unknown> {
  const limits = limitsPm(drawn);
  return {
    lines: preControlLines(limits).map(mm),
    zones: x.map((size) => zoneWord(preControlZone(limits, pm(size)))),
  };
}

function setUp({ x, ...drawn }: Limited & { x: number[] }): Record<string, unknown> {
  const { steps, approvedAt } = preControlSetUp(limitsPm(drawn), x.map(pm));
  return {
    steps: steps.map(stepWords),
    approved_at_piece: approvedAt === undefined ? null : approvedAt + 1,
  };
}

function stepWords({ zone, greens, action }: SetUpStep): string {
  if (action === 'count') return `green ${greens}`;
  if (action === 'start again') return 'yellow: start again';
  return zoneWord(zone) === 'red'
    ? 'red: adjust, start again'
    : 'second yellow in a row: adjust, start again';
}

function running({
  samples,
  ...drawn
}: Limited & { samples: [number, number][] }): Record<string, unknown> {
  const limits = limitsPm(drawn);
  return {
    decisions: samples.map(([first, second]) => {
      const found = preControlSample(limits, pm(first), pm(second));
      return {
        read: found.read,
        do: decisionWords[found.decision],
        ...(found.decision === 'reset the mean' && { shift: mm(found.shiftPm) }),
      };
    }),
  };
}

const decisionWords: Record<SampleDecision['decision'], string> = {
  'go on': 'go on',
  'measure the second': 'measure the second',
  'reset the mean': 'stop: reset the mean',
  'spread too large': 'stop: spread too large, do not reset the mean',
  'outside the limits': 'stop: outside the limits',
};

function chances(inputs: {
  Cp: number;
  mean_off_centre_in_sigma: number;
}): Record<string, unknown> {
  const found = preControlChances(inputs.Cp, inputs.mean_off_centre_in_sigma);
  return {
    green: found.green,
    yellow_high: found.yellowHigh,
    yellow_low: found.yellowLow,
    red: found.red,
    set_up_passes_first_time: found.setUpPasses,
    sample_stops: found.sampleStops,
  };
}

function oneSided(inputs: { best: number; limit: number; x: number[] }): Record<string, unknown> {
  const limit = { bestPm: pm(inputs.best), limitPm: pm(inputs.limit) };
  return {
    line: mm(oneSidedLine(limit)),
    zones: inputs.x.map((size) => oneSidedZone(limit, pm(size))),
  };
}

function zoneWord(zone: PreControlZone): string {
  return zone === 'red low' || zone === 'red high' ? 'red' : zone;
}

function limitsPm({ lower, upper }: Limited): LimitsPm {
  return { lowerPm: pm(lower), upperPm: pm(upper) };
}

/** The set writes millimetres with few digits; a picometre is a thousand-millionth of one. */
function pm(sizeMm: number): number {
  return Math.round(sizeMm * 1e9);
}

function mm(sizePm: number): number {
  return sizePm / 1e9;
}
