import type { PolicyLine } from '../../../lib/server/policies.ts';
import { ScrollBox } from '../../_ui/scroll-box.tsx';
import { When } from '../../_ui/when.tsx';
import css from './policy.module.css';
import { policyChanges } from './policy-fields.ts';

/** Newest first; each version with its reason and what it changed. */
export function PolicyHistory({ lines }: { lines: readonly PolicyLine[] }) {
  return (
    <ScrollBox>
      <table>
        <thead>
          <tr>
            <th>Version</th>
            <th>Made</th>
            <th>Why</th>
            <th>What changed</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line, at) => (
            <tr key={line.version}>
              <td>{line.version}</td>
              <td>
                {line.madeBy}
                <div className="small">
                  <When at={line.madeAt} />
                </div>
              </td>
              <td>{line.reason}</td>
              <td>
                <Changed line={line} before={lines[at + 1]} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  );
}

function Changed({ line, before }: { line: PolicyLine; before: PolicyLine | undefined }) {
  if (!before) return <>the first one</>;
  const changes = policyChanges(before.policy, line.policy);
  if (changes.length === 0) return <>nothing</>;
  return (
    <ul className={css.changes}>
      {changes.map((change) => (
        <li key={change.path}>
          {change.label}: {change.says}
        </li>
      ))}
    </ul>
  );
}
