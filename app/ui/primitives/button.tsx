import type { ComponentProps } from 'react';
import { buttonLook, type Look } from './button-look';

/** A thing that is pressed. */
export function Button({
  kind = 'plain',
  bench = false,
  className = '',
  type = 'button',
  ...rest
}: Look & ComponentProps<'button'>) {
  return <button type={type} className={`${buttonLook(kind, bench)} ${className}`} {...rest} />;
}
