import type { VerdictState } from '@/lib/text/verdict';
import { recall } from './device-memory';

/** What became of a commit, for ear and hand. */
export type Outcome = 'inside' | 'near' | 'unsure' | 'out' | 'kept' | 'not understood';

type Tone = { hertz: number; ms: number };

const gapMs = 60;

/**
 * One tone inside, two near, falling when unsure or held, long and low out, three short when not understood.
 * Their lengths alone tell them apart too: the hand feels nothing else.
 */
export const tones: Readonly<Record<Outcome, readonly Tone[]>> = {
  inside: [{ hertz: 880, ms: 60 }],
  near: [
    { hertz: 880, ms: 60 },
    { hertz: 880, ms: 60 },
  ],
  unsure: [
    { hertz: 660, ms: 60 },
    { hertz: 440, ms: 180 },
  ],
  out: [{ hertz: 220, ms: 250 }],
  kept: [{ hertz: 660, ms: 30 }],
  'not understood': [1, 2, 3].map(() => ({ hertz: 220, ms: 40 })),
};

/** The outcome a verdict sounds as; a size without limits, or still to cut, is only kept. */
export function outcomeOf(state: VerdictState): Outcome {
  switch (state) {
    case 'inside':
    case 'near':
    case 'unsure':
    case 'out':
      return state;
    case 'held':
      return 'unsure';
    default:
      return 'kept';
  }
}

let audio: AudioContext | null = null;

/** Sounds and shakes as this device has been told to; neither unless it was switched on here. */
export function giveFeedback(outcome: Outcome): void {
  if (recall('sound') === 'on') play(tones[outcome]);
  if (recall('vibration') === 'on') {
    navigator.vibrate?.(
      tones[outcome].flatMap(({ ms }, index) => (index === 0 ? [ms] : [gapMs, ms])),
    );
  }
}

function play(pattern: readonly Tone[]): void {
  try {
    audio ??= new AudioContext();
    void audio.resume();
    let at = audio.currentTime;
    for (const { hertz, ms } of pattern) {
      const tone = audio.createOscillator();
      const level = audio.createGain();
      tone.frequency.value = hertz;
      // A short ramp at both ends: a tone cut off square clicks.
      level.gain.setValueAtTime(0, at);
      level.gain.linearRampToValueAtTime(0.3, at + 0.005);
      level.gain.setValueAtTime(0.3, at + ms / 1000 - 0.005);
      level.gain.linearRampToValueAtTime(0, at + ms / 1000);
      tone.connect(level).connect(audio.destination);
      tone.start(at);
      tone.stop(at + ms / 1000);
      at += (ms + gapMs) / 1000;
    }
  } catch {
    // A browser without audio is silent.
  }
}
