import Link from 'next/link';
import type { PersonLine } from '../../../lib/server/people.ts';
import { ScrollBox } from '../../_ui/scroll-box.tsx';
import { When } from '../../_ui/when.tsx';
import css from './people.module.css';

export function PeopleTable({ lines }: { lines: readonly PersonLine[] }) {
  return (
    <ScrollBox>
      <table>
        <thead>
          <tr>
            <th>Name</th>
            <th>Signs in as</th>
            <th>Roles</th>
            <th>Open sessions</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <tr key={line.personId}>
              <td>
                <Link href={`/people/${line.personId}`}>{line.name}</Link>
                <div className="small">{line.title}</div>
              </td>
              <td className="gate">{line.signInName}</td>
              <td>
                <Held line={line} />
              </td>
              <td>{line.openSessions === 0 ? 'none' : line.openSessions}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  );
}

function Held({ line }: { line: PersonLine }) {
  if (!line.active) return <>has left</>;
  if (line.roles.length === 0) return <>none: may sign in and sees nothing</>;
  return (
    <ul className={css.list}>
      {line.roles.map(({ role, since }) => (
        <li key={role}>
          {role}{' '}
          <span className="small">
            since <When at={since} />
          </span>
        </li>
      ))}
    </ul>
  );
}
