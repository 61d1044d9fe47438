'use client';
import { Button } from './_ui/button.tsx';
import { QuietPage } from './_ui/quiet-page.tsx';

export default function ErrorPage({ error, reset }: { error: Error & { digest?: string }; reset: () => void }) {
  return (
    <QuietPage title="Something went wrong on this page">
      <p>
        Nothing was changed by it, and what you typed in a draft is kept. Try again; if it stays, report the number
        below.
      </p>
      {error.digest && <p className="gate">{error.digest}</p>}
      <div>
        <Button look="main" onClick={reset}>
          Try again
        </Button>
      </div>
    </QuietPage>
  );
}
