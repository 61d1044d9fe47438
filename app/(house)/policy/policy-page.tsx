import type { Policy } from '../../../lib/policy/policy.ts';
import { Section } from '../../_ui/page-head.tsx';
import css from './policy.module.css';
import { asTyped, type PolicyField, policyGroups, valueAt } from './policy-fields.ts';

/** The policy as a page to read: named groups, each figure with its unit. */
export function PolicyPage({ policy }: { policy: Policy }) {
  return (
    <div className={css.groups}>
      {policyGroups.map((group) => (
        <div key={group.title} className={group.fields.some((field) => field.kind === 'words') ? css.wide : undefined}>
          <Section title={group.title}>
            <dl className={css.lines}>
              {group.fields.map((field) => (
                <div key={field.path}>
                  <dt>{field.label}</dt>
                  <dd>{say(field, valueAt(policy, field.path))}</dd>
                </div>
              ))}
            </dl>
          </Section>
        </div>
      ))}
    </div>
  );
}

function say(field: PolicyField, value: unknown): string {
  if (field.kind === 'words') return (value as readonly string[]).join(' · ') || 'none';
  return field.unit === '' ? asTyped(value) : `${asTyped(value)} ${field.unit}`;
}
