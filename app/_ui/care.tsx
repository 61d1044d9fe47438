import css from './shell.module.css';

/** Stays on every screen and every printed page. */
export function Care() {
  return (
    <footer className={css.care}>
      Not for dispatch. Take-off and approach speeds are the approved figures that a pilot enters; bands come from the
      type data sheet. The approved flight manual and the authority prevail. The models here compare orders and margins;
      they are no performance program. Only what the operator’s own sign-off puts in force is to be flown.
    </footer>
  );
}
