'use client';
import { signOut } from 'next-auth/react';
import { Button } from './button.tsx';

/** Ends the session and takes the saved issues off this device. */
export function SignOutButton() {
  return (
    <Button
      look="plain"
      onClick={async () => {
        navigator.serviceWorker?.controller?.postMessage({ type: 'CLEAR' });
        await signOut({ callbackUrl: '/sign-in' });
      }}
    >
      Sign out
    </Button>
  );
}
