/** The step figures of a run are shown to, pm: a thousandth of a millimetre, a ten-thousandth of an inch. */
export const chartStepPm = { mm: 1_000_000, in: 2_540_000 };
