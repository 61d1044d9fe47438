import css from './people.module.css';

/** The roles as boxes to tick, each with what it opens. */
export function RoleBoxes({ roles, held }: { roles: readonly string[]; held: readonly string[] }) {
  return (
    <fieldset className={css.roles}>
      <legend>Roles</legend>
      {roles.map((role) => (
        <label key={role}>
          <input type="checkbox" name="roles[]" value={role} defaultChecked={held.includes(role)} />
          <span>
            {role}
            <span className="small">{OPENS[role]}</span>
          </span>
        </label>
      ))}
    </fieldset>
  );
}

const OPENS: Readonly<Record<string, string>> = {
  'technical pilot': 'writes drafts, answers findings, submits, brings in sheets',
  'training captain': 'reads drafts and candidates',
  'standards captain': 'reviews, waives, keeps the policy',
  approver: 'signs',
  'line pilot': 'reads what is in force and confirms it',
  auditor: 'reads everything and asks the record',
  administrator: 'sets up people, fleets, tails and policy',
};
