import '@fontsource-variable/atkinson-hyperlegible-next';
import '@fontsource-variable/atkinson-hyperlegible-mono';
import './look.css';
import type { Metadata, Viewport } from 'next';
import { cookies } from 'next/headers';
import type { ReactNode } from 'react';

export const metadata: Metadata = {
  title: { default: 'Cuewright', template: '%s · Cuewright' },
  description: 'Operating procedures as structured steps, checked, signed and in force.',
  icons: { icon: '/mark.svg' },
  manifest: '/manifest.webmanifest',
};
export const viewport: Viewport = { width: 'device-width', initialScale: 1, themeColor: '#0f5c63' };

export default async function Layout({ children }: { children: ReactNode }) {
  const theme = (await cookies()).get('theme')?.value;
  return (
    <html lang="en" data-theme={theme === 'night' || theme === 'day' ? theme : undefined} suppressHydrationWarning>
      <body>{children}</body>
    </html>
  );
}
