'use client';
import { type ReactNode, startTransition, useActionState } from 'react';
import { Button } from './button.tsx';
import { formClass } from './field.tsx';
import { Notice } from './notice.tsx';

/** What an act answers: done, or a sentence that says what happened, what was kept and what to do. */
export type Answer = { done?: string; refused?: string } | null;

/** One form, one act. What was typed stays when the act is refused. */
export function ActForm(props: {
  act: (before: Answer, form: FormData) => Promise<Answer>;
  button: string;
  look?: 'main' | 'quiet' | 'grave';
  children?: ReactNode;
  inline?: boolean;
}) {
  const [answer, act, pending] = useActionState(async (before: Answer, form: FormData): Promise<Answer> => {
    const said = await props.act(before, form);
    return said;
  }, null);
  return (
    <form
      className={props.inline ? undefined : formClass}
      onSubmit={(event) => {
        // React would reset the fields after the act; a refused reason must not be lost.
        event.preventDefault();
        const form = new FormData(event.currentTarget, (event.nativeEvent as SubmitEvent).submitter);
        startTransition(() => act(form));
      }}
    >
      {props.children}
      {answer?.refused && (
        <Notice kind="stop" live>
          {answer.refused}
        </Notice>
      )}
      {answer?.done && (
        <Notice kind="healed" live>
          {answer.done}
        </Notice>
      )}
      <div>
        <Button type="submit" look={props.look ?? 'main'} disabled={pending}>
          {pending ? 'One moment …' : props.button}
        </Button>
      </div>
    </form>
  );
}
