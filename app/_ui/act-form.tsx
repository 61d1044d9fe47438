'use client';
import Link from 'next/link';
import { usePathname, useRouter } from 'next/navigation';
import { type ReactNode, useState } from 'react';
import type { Result } from '../../lib/base/result.ts';
import { Button } from './button.tsx';
import { formClass } from './field.tsx';
import { Notice } from './notice.tsx';

export type Refusal = { readonly code: string; readonly sentence: string; readonly details: readonly string[] };

/** Reads a form as words; a box that is ticked several times gives a list. */
export function wordsOf(form: FormData): Record<string, string | string[]> {
  const words: Record<string, string | string[]> = {};
  for (const key of new Set(form.keys())) {
    const all = form.getAll(key).map(String);
    words[key] = key.endsWith('[]') ? all : all[0]!;
  }
  return words;
}

export function RefusalNotice({ refusal }: { refusal: Refusal }) {
  const path = usePathname();
  return (
    <Notice kind="stop" live>
      {refusal.sentence}
      {refusal.code === 'signed-out' && (
        <>
          {' '}
          <Link href={`/sign-in?next=${encodeURIComponent(path)}`}>Sign in</Link>
        </>
      )}
      {refusal.details.length > 0 && (
        <ul>
          {refusal.details.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
    </Notice>
  );
}

/** One form, one act. What was typed stays when the act is refused. `onDone` says where to go, or a sentence to show. */
export function ActForm<T>(props: {
  act: (words: Record<string, string | string[]>) => Promise<Result<T, Refusal>>;
  onDone: (value: T) => { go: string } | { say: string };
  button: string;
  look?: 'main' | 'quiet' | 'grave';
  children?: ReactNode;
  bare?: boolean;
}) {
  const router = useRouter();
  const [busy, setBusy] = useState(false);
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [said, setSaid] = useState('');
  return (
    <form
      method="post"
      className={props.bare ? undefined : formClass}
      onSubmit={async (event) => {
        event.preventDefault();
        const form = event.currentTarget;
        setBusy(true);
        setRefusal(null);
        setSaid('');
        const answer = await props.act(wordsOf(new FormData(form))).catch(() => null);
        setBusy(false);
        if (!answer) {
          const sentence = 'The server did not answer. What you typed is still here; try again in a moment.';
          setRefusal({ code: 'no-answer', sentence, details: [] });
          return;
        }
        if (!answer.ok) {
          setRefusal(answer.error);
          return;
        }
        const next = props.onDone(answer.value);
        if ('go' in next) router.push(next.go);
        else {
          setSaid(next.say);
          form.reset();
        }
        router.refresh();
      }}
    >
      {props.children}
      {refusal && <RefusalNotice refusal={refusal} />}
      {said && (
        <Notice kind="healed" live>
          {said}
        </Notice>
      )}
      <div>
        <Button type="submit" look={props.look ?? 'main'} disabled={busy}>
          {busy ? 'One moment …' : props.button}
        </Button>
      </div>
    </form>
  );
}
