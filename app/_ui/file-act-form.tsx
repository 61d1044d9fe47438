'use client';
import { type ChangeEvent, useState } from 'react';
import type { Result } from '../../lib/base/result.ts';
import { ActForm, type Refusal } from './act-form.tsx';
import { Field, LongField } from './field.tsx';

/** Brings a text file in: chosen or pasted, its text in sight, so that the lines that are refused can be put right here. */
export function FileActForm<T>(props: {
  act: (file: { text: string; name: string }) => Promise<Result<T, Refusal>>;
  onDone: (value: T) => { go: string } | { say: string };
  label: string;
  button: string;
}) {
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
      act={() => props.act({ text, name })}
      onDone={(value) => {
        setText('');
        return props.onDone(value);
      }}
      button={props.button}
    >
      <Field label={props.label} type="file" accept=".yaml,.yml,.json" onChange={choose} />
      <LongField
        label="Its text"
        value={text}
        onChange={(event) => setText(event.target.value)}
        required
        spellCheck={false}
      />
    </ActForm>
  );
}
