import { z } from 'zod';
import { feature } from './feature';
import { cut, fit, pair } from './fit';
import { fitRule } from './fit-rule';
import { gauge, person } from './gauge';
import { job } from './job';
import { material } from './material';
import { part, piece } from './part';
import { picture } from './picture';
import { Correction, Reading } from './reading';
import { departure, run, runEvent } from './run';

/** Everything the sheets of one job are drawn from, and the change-log number it is true at. */
export const JobSheet = z.object({
  seq: z.int(),
  job: job.Row,
  parts: z.array(part.Row),
  pieces: z.array(piece.Row),
  features: z.array(feature.Row),
  fits: z.array(fit.Row),
  pairs: z.array(pair.Row),
  cuts: z.array(cut.Row),
  runs: z.array(run.Row),
  runEvents: z.array(runEvent.Row),
  departures: z.array(departure.Row),
  pictures: z.array(picture.Row),
  gauges: z.array(gauge.Row),
  people: z.array(person.Row),
  materials: z.array(material.Row),
  fitRules: z.array(fitRule.Row),
  readings: z.array(Reading),
  corrections: z.array(Correction),
});
export type JobSheet = z.infer<typeof JobSheet>;
