'use client';
import { type ChangeEvent, useState } from 'react';
import { ActForm } from '../../../_ui/act-form.tsx';
import { Field, LongField } from '../../../_ui/field.tsx';
import { bringIn, create } from '../actions.ts';
import { ChangeFields } from '../change-fields.tsx';

const toDraft = ({ draftId }: { draftId: string }) => ({ go: `/desk/${draftId}` });

export function NewForm() {
  return (
    <ActForm act={(words) => create(words as Parameters<typeof create>[0])} onDone={toDraft} button="Start writing">
      <Field label="Name of the procedure" name="title" required hint="By what the crew sees or decides." />
      <ChangeFields />
    </ActForm>
  );
}

export function FileForm() {
  const [text, setText] = useState('');
  const [name, setName] = useState('pasted text');
  const choose = async (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0];
    if (!file) return;
    setName(file.name);
    setText(await file.text());
  };
  return (
    <ActForm
      act={(words) => bringIn({ ...words, name } as Parameters<typeof bringIn>[0])}
      onDone={toDraft}
      button="Bring it in"
    >
      <Field label="Procedure file" type="file" accept=".yaml,.yml,.json" onChange={choose} />
      <LongField
        label="Its text"
        name="text"
        value={text}
        onChange={(event) => setText(event.target.value)}
        spellCheck={false}
      />
      <ChangeFields />
    </ActForm>
  );
}
