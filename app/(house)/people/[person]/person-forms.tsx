'use client';
import { ActForm } from '../../../_ui/act-form.tsx';
import { Notice } from '../../../_ui/notice.tsx';
import { Section } from '../../../_ui/page-head.tsx';
import { endAccess, endSessions, giveRoles } from '../actions.ts';
import css from '../people.module.css';
import { RoleBoxes } from '../role-boxes.tsx';

type Ticked = Omit<Parameters<typeof giveRoles>[0], 'personId'>;

export function PersonForms(props: {
  personId: string;
  self: boolean;
  roles: readonly string[];
  held: readonly string[];
  openSessions: number;
}) {
  const { personId, self, roles, held, openSessions } = props;
  return (
    <>
      {self && <Notice kind="caution">This is you. A change of your own roles signs you out everywhere.</Notice>}
      <Section title="Roles from now on">
        <p className="small">Roles taken and given are dated in the record. Open sessions end at once.</p>
        <ActForm
          key={held.join()}
          act={(words) => giveRoles({ ...(words as Ticked), personId })}
          onDone={() => ({ go: '/people' })}
          button="Set these roles"
        >
          <RoleBoxes roles={roles} held={held} />
        </ActForm>
      </Section>
      <Section title="Open sessions">
        {openSessions === 0 ? (
          <p className="small">None.</p>
        ) : (
          <>
            <p>
              {openSessions} open. Ending them signs the person out of every device; what they were writing is kept in
              the draft.
            </p>
            <ActForm
              act={() => endSessions({ personId })}
              onDone={({ ended }) => ({ say: `${ended} ended.` })}
              button="End all sessions"
              look="grave"
            />
          </>
        )}
      </Section>
      <Section title="End access">
        <p className="small">
          All roles and sessions end now. Nothing that this person wrote, reviewed or signed is removed or renamed.
        </p>
        <ActForm
          act={() => endAccess({ personId })}
          onDone={() => ({ go: '/people' })}
          button="End access"
          look="grave"
        >
          <label className={css.sure}>
            <input type="checkbox" required />
            <span>This person has left, or must not sign in any more.</span>
          </label>
        </ActForm>
      </Section>
    </>
  );
}
