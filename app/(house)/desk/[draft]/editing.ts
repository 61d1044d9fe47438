'use client';
import { createContext, use } from 'react';
import type { Sheet } from '../../../../lib/aircraft/sheet.ts';
import type { Policy } from '../../../../lib/policy/policy.ts';

/** What the parts of the editor share beside the draft itself. */
export type Editing = {
  readonly may: {
    readonly write: boolean;
    readonly answer: boolean;
    readonly waive: boolean;
    readonly submit: boolean;
  };
  readonly sheet: Sheet | null;
  readonly policy: Policy | null;
  /** The step at hand, drawn as fields. */
  readonly current: string | null;
  /** Opens a step with the caret in a field, or closes. */
  readonly open: (id: string | null, field?: string) => void;
  /** Something was not taken over; the sentence says what and why. */
  readonly refuse: (sentence: string) => void;
  /** Labels given before, by step id. */
  readonly labels: Readonly<Record<string, string>>;
};

export const EditingContext = createContext<Editing | null>(null);

export function useEditing(): Editing {
  const editing = use(EditingContext);
  if (!editing) throw new Error('useEditing is called below an EditingContext');
  return editing;
}

/** What a step is called before it has a label: by its place. */
export const nameOfStep = (label: string, at: number): string => label || `new ${at + 1}`;
