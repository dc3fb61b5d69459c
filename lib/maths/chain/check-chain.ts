import { MathsInputError } from '../check';

/** A member of a dimension chain: its size counts `coefficient` times towards the closing link. */
export type Link = {
  /** 1 for a link that opens the gap, -1 for one that closes it; two equal pieces are two links. */
  coefficient: number;
  nominal: number;
  /** Deviations from the nominal. */
  upper: number;
  lower: number;
};

/** Refuses an empty chain, coefficients of zero and deviations upside down. */
export function requireLinks(file: string, caller: string, links: readonly Link[]): void {
  if (links.length === 0) {
    throw new MathsInputError(`${file}/no-link`, `${caller} requires at least one link, got none`);
  }
  links.forEach(({ coefficient, nominal, upper, lower }, i) => {
    const finite = [coefficient, nominal, upper, lower].every(Number.isFinite);
    if (finite && coefficient !== 0 && lower <= upper) return;
    throw new MathsInputError(
      `${file}/link`,
      `${caller} requires a coefficient other than zero and lower up to upper, got ${coefficient}, ${lower} and ${upper} at link ${i}`,
    );
  });
}

/** Refuses limits upside down. */
export function requireLimits(
  file: string,
  caller: string,
  { least, most }: { least: number; most: number },
): void {
  if (Number.isFinite(least) && Number.isFinite(most) && least <= most) return;
  throw new MathsInputError(
    `${file}/limits`,
    `${caller} requires least up to most, got ${least} and ${most}`,
  );
}
