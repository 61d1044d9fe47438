'use client';
import { useState } from 'react';
import { Button } from '../../_ui/button.tsx';
import { Notice } from '../../_ui/notice.tsx';
import { takeOut, verify } from './actions.ts';

export function VerifyButtons() {
  const [said, setSaid] = useState<{ kind: 'healed' | 'stop'; sentence: string } | null>(null);
  const [busy, setBusy] = useState(false);
  const run = async (deed: () => Promise<{ kind: 'healed' | 'stop'; sentence: string }>) => {
    setBusy(true);
    setSaid(
      await deed().catch(() => ({
        kind: 'stop' as const,
        sentence: 'The server did not answer. Nothing was changed; try again.',
      })),
    );
    setBusy(false);
  };
  const doVerify = () =>
    run(async () => {
      const answer = await verify({});
      if (!answer.ok) return { kind: 'stop', sentence: answer.error.sentence };
      const found = answer.value;
      return found.ok
        ? {
            kind: 'healed',
            sentence: `${found.entries} entries, every hash follows from the one before. Head ${found.head.slice(0, 16)}.`,
          }
        : { kind: 'stop', sentence: `The chain breaks at entry ${found.brokenAt}: ${found.because}` };
    });
  const doExport = () =>
    run(async () => {
      const answer = await takeOut({});
      if (!answer.ok) return { kind: 'stop', sentence: answer.error.sentence };
      const link = document.createElement('a');
      link.href = URL.createObjectURL(new Blob([answer.value.text], { type: 'application/jsonl' }));
      link.download = answer.value.name;
      link.click();
      URL.revokeObjectURL(link.href);
      return { kind: 'healed', sentence: `Saved as ${answer.value.name}.` };
    });
  return (
    <>
      {said && (
        <Notice kind={said.kind} live>
          {said.sentence}
        </Notice>
      )}
      <Button onClick={doExport} disabled={busy}>
        Export
      </Button>
      <Button look="main" onClick={doVerify} disabled={busy}>
        Verify the chain
      </Button>
    </>
  );
}
