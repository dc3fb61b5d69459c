import { feature } from './feature';
import { cut, fit, pair } from './fit';
import { fitRule } from './fit-rule';
import { gauge, person } from './gauge';
import { job } from './job';
import { material } from './material';
import { part, piece } from './part';
import { picture } from './picture';
import { departure, run, runEvent } from './run';
import { setting } from './setting';
import type { ThingKind } from './change';

/** The shapes of every editable thing, by kind: the one description that store, API and papers read. */
export const things = {
  job,
  part,
  piece,
  feature,
  gauge,
  person,
  fit,
  pair,
  cut,
  run,
  runEvent,
  departure,
  setting,
  picture,
  material,
  fitRule,
} satisfies Record<ThingKind, unknown>;
