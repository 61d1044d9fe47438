import type { ModeSet } from '../../../lib/aircraft/mode-set.ts';
import { Section } from '../../_ui/page-head.tsx';
import { ScrollBox } from '../../_ui/scroll-box.tsx';
import { guardsOf } from './mode-grid.ts';
import css from './modes.module.css';

const WHO: Readonly<Record<string, string>> = { crew: 'crew', auto: 'by itself', environment: 'from outside' };

/** Every event in full. `only`: those of one axis; null: all. */
export function EventTable({ modes, only }: { modes: ModeSet; only: readonly string[] | null }) {
  const events = modes.rules.filter((one) => only === null || only.includes(one.id));
  return (
    <Section title={only === null ? `Every event, ${events.length}` : `Events of it, ${events.length}`}>
      <ScrollBox>
        <table className={css.events}>
          <thead>
            <tr>
              <th>Event</th>
              <th>Who</th>
              <th>Only when</th>
              <th>What it does</th>
            </tr>
          </thead>
          <tbody>
            {events.map((one) => (
              <tr key={one.id} id={one.id}>
                <td>
                  <b>{one.id}</b> {one.event}
                </td>
                <td>{WHO[one.who]}</td>
                <td className={css.guard}>
                  {guardsOf(one).map((guard) => (
                    <div key={guard}>{guard}</div>
                  ))}
                </td>
                <td>{one.effect.replaceAll('<->', ' ⇄ ').replaceAll('->', ' → ')}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
    </Section>
  );
}
