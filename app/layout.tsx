import type { Metadata, Viewport } from 'next';
import type { ReactNode } from 'react';
import { chosenHere } from './chosen';
import { NewVersion } from './ui/shop/new-version';
import './ui/fonts.css';
import './ui/tokens.css';

export const metadata: Metadata = {
  title: { default: 'Fitwright', template: '%s · Fitwright' },
  description: 'The bench notebook for people who make parts that must fit.',
};

export const viewport: Viewport = { width: 'device-width', initialScale: 1 };

export default async function RootLayout({ children }: { children: ReactNode }) {
  const { theme, hand } = await chosenHere();
  return (
    <html lang="en-GB" {...(theme === null ? {} : { 'data-theme': theme })} data-hand={hand}>
      <body>
        {children}
        <NewVersion />
      </body>
    </html>
  );
}
