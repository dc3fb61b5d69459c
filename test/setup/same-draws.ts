import fc from 'fast-check';

/**
 * Property tests draw the same cases at every run, so that a red run names a change and not a draw.
 * `DRAWS=12345` draws others; it is for looking further, and what it finds becomes a case of its own.
 */
const asked = Number(process.env.DRAWS);
fc.configureGlobal({ seed: Number.isSafeInteger(asked) && asked > 0 ? asked : 20_261_125 });
