import type { Policy } from '../../../lib/policy/policy.ts';
import { formatNumber, typeset } from '../../../lib/units/format.ts';
import { Section } from '../../_ui/page-head.tsx';
import css from './policy.module.css';
import { asTyped, type PolicyField, type PolicyGroup, policyGroups, valueAt } from './policy-fields.ts';
import { FLOORS, isInThrees } from './policy-words.ts';

type Floors = Policy['floors'];
type Line = readonly [name: string, says: string];

/** The policy as a page to read: named groups, each figure with its unit. */
export function PolicyPage({ policy }: { policy: Policy }) {
  const wordy = (group: PolicyGroup) => group.fields.some((field) => field.kind === 'words');
  return (
    <>
      <div className={css.groups}>
        {policyGroups
          .filter((group) => !wordy(group))
          .map((group) => (
            <Group key={group.title} title={group.title} lines={linesOf(group, policy)} />
          ))}
      </div>
      <div className={css.wide}>
        {policyGroups.filter(wordy).map((group) => (
          <Group key={group.title} title={group.title} lines={linesOf(group, policy)} />
        ))}
      </div>
    </>
  );
}

function Group({ title, lines }: { title: string; lines: readonly Line[] }) {
  return (
    <div className={css.group}>
      <Section title={title}>
        <dl className={css.lines}>
          {lines.map(([name, says]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{says}</dd>
            </div>
          ))}
        </dl>
      </Section>
    </div>
  );
}

function linesOf(group: PolicyGroup, policy: Policy): readonly Line[] {
  if (!isInThrees(group.title))
    return group.fields.map((field) => [field.label, say(field, valueAt(policy, field.path))]);
  return Object.entries(FLOORS).map(([phase, name]) => [
    name[0]!.toUpperCase() + name.slice(1),
    sayFloor(policy.floors[phase as keyof Floors]),
  ]);
}

/** `V2 + 10 kt, detent held` */
const sayFloor = ({ speed, of, plus }: Floors[keyof Floors]): string =>
  `${plus === 0 ? speed : `${speed} + ${plus} kt`}, detent ${of}`;

function say(field: PolicyField, value: unknown): string {
  if (field.kind === 'words') return (value as readonly string[]).join(' · ') || 'none';
  if (typeof value !== 'number') return asTyped(value);
  const places = asTyped(value).split('.')[1]?.length ?? 0;
  const gap = field.unit === '°' ? '' : ' ';
  return typeset(`${formatNumber(value, places)}${gap}${field.unit}`);
}
