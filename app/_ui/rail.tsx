import css from './rail.module.css';
import { across, marginOf, outline, type RailRow, type Scale, sayRow } from './rail-shape.ts';

/** One row of the band rail. Light: all weights. Dark: the weight chosen. The stroke: the target, with its figure. */
export function Rail(props: {
  row: RailRow;
  before: RailRow | null;
  after: RailRow | null;
  scale: Scale;
  weight: string;
}) {
  const { row, before, after, scale, weight } = props;
  if (!row.all && !row.one) {
    return (
      <span className={css.rail}>
        <span className={css.none}>{row.because}</span>
      </span>
    );
  }
  const low = row.one ? across(scale, row.one.low) : 0;
  const high = row.one ? across(scale, row.one.high) : 100;
  const open = row.one !== null && row.one.high > scale.to;
  const aim = row.target === null ? null : across(scale, row.target);
  const outside = row.one !== null && row.target !== null && marginOf(row.one, row.target) < 0;
  return (
    <span className={css.rail} role="img" aria-label={sayRow(row, weight)}>
      <svg className={css.shape} viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
        {row.all && <path className={css.all} d={outline(scale, row.all, before?.all ?? null, after?.all ?? null)} />}
        {row.one && <path className={css.one} d={outline(scale, row.one, before?.one ?? null, after?.one ?? null)} />}
        {aim !== null && (
          <line className={outside ? `${css.aim} ${css.out}` : css.aim} x1={aim} x2={aim} y1="0" y2="100" />
        )}
      </svg>
      {row.one && (
        <>
          <span className={low < 24 ? `${css.low} ${css.insideLow}` : css.low} style={{ left: `${low}%` }}>
            {Math.round(row.one.low)}
          </span>
          <span className={high > 76 || open ? `${css.high} ${css.inside}` : css.high} style={{ left: `${high}%` }}>
            {Math.round(row.one.high)}
          </span>
        </>
      )}
      {aim !== null && row.target !== null && (
        <span className={aim > 76 ? `${css.target} ${css.targetLeft}` : css.target} style={{ left: `${aim}%` }}>
          {Math.round(row.target)}
        </span>
      )}
    </span>
  );
}
