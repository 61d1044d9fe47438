'use server';
import { cookies } from 'next/headers';

/** A choice of this browser, not of a person: anyone may make it. */
export async function keepTheme(theme: 'day' | 'night'): Promise<void> {
  const chosen = theme === 'night' ? 'night' : 'day';
  (await cookies()).set('theme', chosen, { path: '/', maxAge: 31_536_000, sameSite: 'lax' });
}
