import type { Sheet } from '../../../lib/aircraft/sheet.ts';
import { BandCharts } from './band-charts.tsx';
import { DetentTable } from './detent-table.tsx';
import { FigureTable } from './figure-table.tsx';
import { MoreTables } from './more-tables.tsx';
import css from './sheet.module.css';
import { SpeedTable } from './speed-table.tsx';

/** The sheet from end to end, in the order in which it is asked: bands first, then what they come from. */
export function SheetPages({ sheet, least }: { sheet: Sheet; least: number | null }) {
  return (
    <>
      <BandCharts sheet={sheet} least={least} />
      <DetentTable sheet={sheet} />
      <SpeedTable sheet={sheet} />
      <div className={css.pair}>
        <FigureTable sheet={sheet} part="limits" title="Limits" />
        <FigureTable sheet={sheet} part="weights" title="Weights" />
        <FigureTable sheet={sheet} part="drag" title="Drag" />
        <FigureTable sheet={sheet} part="thrust" title="Thrust" />
        <FigureTable sheet={sheet} part="fuel" title="Fuel" />
        <FigureTable sheet={sheet} part="guidance" title="Guidance" />
        <FigureTable sheet={sheet} part="constants" title="Constants of the formulas" />
      </div>
      <MoreTables sheet={sheet} />
    </>
  );
}
