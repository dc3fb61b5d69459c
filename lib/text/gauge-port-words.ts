type PortState = 'opening' | 'open' | 'lost' | 'not here' | 'alike' | 'in use' | 'refused';
type SpoiltBy =
  'parity' | 'frame' | 'break' | 'overrun' | 'characters' | 'lost' | 'in use' | 'refused';

/** Where the line of a gauge stands, and what to do where it is not open. */
export function portStateWords(state: PortState, name: string): string {
  switch (state) {
    case 'opening':
      return `The port of ${name} is being opened.`;
    case 'open':
      return `${name} is connected.`;
    case 'lost':
      return `${name} was unplugged. Plug it in again; readings go on by themselves.`;
    case 'not here':
      return `The port of ${name} is not here. Plug it in, or choose it.`;
    case 'alike':
      return `Two ports look alike. Choose the one of ${name}.`;
    case 'in use':
      return `The port of ${name} is in use by another page or program. Close that, then choose it again.`;
    case 'refused':
      return `The port of ${name} cannot be opened as it is set. Teach it again on the Gauges sheet.`;
  }
}

/** What became of a message that was not readable: it is no reading. */
export function portSpoiltWords(by: SpoiltBy, name: string): string {
  const set =
    'Nothing was taken. Send it again; if it goes on, the port is set otherwise than the gauge.';
  switch (by) {
    case 'parity':
    case 'characters':
      return `A reading of ${name} came garbled. ${set}`;
    case 'frame':
    case 'break':
      return `The line of ${name} was broken while it sent. ${set}`;
    case 'overrun':
      return `${name} sent faster than was taken. Nothing was taken. Send it again.`;
    case 'lost':
    case 'in use':
    case 'refused':
      return `The line of ${name} is gone. Nothing was taken.`;
  }
}
