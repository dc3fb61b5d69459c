import Link from 'next/link';
import type { ComponentProps } from 'react';
import { buttonLook, type Look } from './button-look';

/** A link that looks like a thing that is pressed: it goes to another sheet, and is not on paper. */
export function LinkButton({
  kind = 'plain',
  bench = false,
  className = '',
  ...rest
}: Look & ComponentProps<typeof Link>) {
  return <Link className={`${buttonLook(kind, bench)} not-on-paper ${className}`} {...rest} />;
}
