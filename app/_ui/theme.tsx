'use client';
import { Moon, Sun } from 'lucide-react';
import { useEffect, useState } from 'react';
import { Button } from './button.tsx';
import { keepTheme } from './theme-action.ts';

/** Day or night. Kept in a cookie, so that the first paint in a dark cockpit is already dark. */
export function ThemeButton() {
  const [night, setNight] = useState<boolean | null>(null);
  useEffect(() => {
    const chosen = document.documentElement.dataset.theme;
    setNight(chosen ? chosen === 'night' : matchMedia('(prefers-color-scheme: dark)').matches);
  }, []);
  const turn = () => {
    const theme = night ? 'day' : 'night';
    document.documentElement.dataset.theme = theme;
    void keepTheme(theme);
    setNight(!night);
  };
  return (
    <Button look="plain" onClick={turn} aria-label={night ? 'Day colours' : 'Night colours'}>
      {night ? <Sun size={18} aria-hidden="true" /> : <Moon size={18} aria-hidden="true" />}
    </Button>
  );
}
