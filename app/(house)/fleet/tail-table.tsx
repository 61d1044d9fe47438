import type { FleetLine } from '../../../lib/server/aircraft.ts';
import { Empty } from '../../_ui/notice.tsx';
import { ScrollBox } from '../../_ui/scroll-box.tsx';
import { When } from '../../_ui/when.tsx';
import css from './fleet.module.css';

/** `now`: the standard that each tail holds at this moment. */
export function TailTable({ fleet, now }: { fleet: FleetLine; now: ReadonlyMap<string, string> }) {
  if (fleet.tails.length === 0) {
    return (
      <Empty title="No tail yet">
        <p>Nothing can be in force before a tail is in the fleet. Add the first one below.</p>
      </Empty>
    );
  }
  return (
    <ScrollBox>
      <table>
        <thead>
          <tr>
            <th>Tail</th>
            <th>Now</th>
            <th>Every option and its date</th>
          </tr>
        </thead>
        <tbody>
          {fleet.tails.map((tail) => (
            <tr key={tail.registration}>
              <td>{tail.registration}</td>
              <td>{now.get(tail.registration) ? `standard ${now.get(tail.registration)}` : 'none yet'}</td>
              <td>
                <ul className={css.history}>
                  {tail.options.map((one) => (
                    <li key={`${one.option} ${one.from}`}>
                      {one.option} {one.value}{' '}
                      <span className="small">
                        from <When at={one.from} />
                      </span>
                    </li>
                  ))}
                </ul>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollBox>
  );
}
