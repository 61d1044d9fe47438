'use client';
import { useState } from 'react';
import type { Policy } from '../../../lib/policy/policy.ts';
import { ActForm, wordsOf } from '../../_ui/act-form.tsx';
import { LongField } from '../../_ui/field.tsx';
import { Notice } from '../../_ui/notice.tsx';
import { Section } from '../../_ui/page-head.tsx';
import { addVersion } from './actions.ts';
import css from './policy.module.css';
import { policyChanges, policyFrom, policyGroups, valueAt } from './policy-fields.ts';
import { PolicyInput } from './policy-input.tsx';
import { isInThrees } from './policy-words.ts';

/** Every figure of the policy, and before the button what the new version would change. `before` null: there is none yet. */
export function PolicyForm({ start, before }: { start: Policy; before: Policy | null }) {
  const [content, setContent] = useState<unknown>(start);
  const changes = before ? policyChanges(before, content) : [];
  return (
    <div
      className={css.form}
      onChange={(event) => {
        const form = (event.target as HTMLInputElement).form;
        if (form) setContent(policyFrom(wordsOf(new FormData(form))));
      }}
    >
      <ActForm
        act={(words) => addVersion(words as Parameters<typeof addVersion>[0])}
        onDone={() => ({ go: '/policy' })}
        button="Make this the policy"
      >
        {policyGroups.map((group) => (
          <Section key={group.title} title={group.title}>
            <div className={isInThrees(group.title) ? `${css.fields} ${css.threes}` : css.fields}>
              {group.fields.map((field) => (
                <PolicyInput key={field.path} field={field} start={valueAt(start, field.path)} />
              ))}
            </div>
          </Section>
        ))}
        {before && (
          <Notice word="Would change:" kind="advice">
            <ul className={css.changes}>
              {changes.map((change) => (
                <li key={change.path}>
                  {change.label}: {change.says}
                </li>
              ))}
            </ul>
          </Notice>
        )}
        <div className={css.reason}>
          <LongField
            label="Why"
            name="reason"
            required
            hint="Findings that depend on a changed figure open again in every draft."
          />
        </div>
      </ActForm>
    </div>
  );
}
