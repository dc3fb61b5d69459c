/**
 * Mean of 256 of many values, evenly picked, and their mean distance from it: a centre to take
 * differences from before the mean is known.
 *
 * Any centre gives the right mean and squares, but for rounding; that stays as small as with the true
 * mean while the true one is no further off than `spread`. A value that is no finite number may go
 * unseen. Source: [chan-1983], shifted data.
 */
export function sampledCentre(values: ArrayLike<number>): { centre: number; spread: number } {
  const step = values.length / picks;
  let sum = 0;
  for (let k = 0; k < picks; k += 1) sum += values[Math.floor((k + 0.5) * step)]!;
  const centre = sum / picks;
  let distances = 0;
  for (let k = 0; k < picks; k += 1) {
    distances += Math.abs(values[Math.floor((k + 0.5) * step)]! - centre);
  }
  return { centre, spread: distances / picks };
}

const picks = 256;
