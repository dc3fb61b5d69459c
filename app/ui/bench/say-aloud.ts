import { recall } from './device-memory';

/** Reads words out where this device has been told to and can; a new reading cuts the one before short. */
export function sayAloud(words: string): void {
  if (recall('aloud') !== 'on' || typeof window.speechSynthesis === 'undefined') return;
  try {
    const saying = new SpeechSynthesisUtterance(words);
    saying.lang = 'en-GB';
    window.speechSynthesis.cancel();
    window.speechSynthesis.speak(saying);
  } catch {
    // A browser without a voice is silent.
  }
}
