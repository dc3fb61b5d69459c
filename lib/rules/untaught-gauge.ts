import type { GaugeSends } from '@/lib/schema/gauge';

/** A gauge nobody has taught: its messages are read as if a person had typed them. */
export const untaughtGauge: GaugeSends = {
  sendsEnd: null,
  sendsMark: null,
  sendsUnit: null,
  sendsPlaces: null,
  sendsPlus: false,
  sendsPrefix: null,
  sendsPauseMs: null,
  serialBaud: null,
  serialFrame: null,
};
