import type { Aerodrome } from '../../../lib/library/library.ts';
import { formatNumber } from '../../../lib/units/format.ts';
import css from './library.module.css';

const feet = (value: number, reference: string) => `${formatNumber(value)} ft ${reference}`;

/** Chart values of a place as they stand on its card. */
export function AerodromeCard({ card }: { card: Aerodrome }) {
  const facts = [
    ['Elevation', feet(card.elevation, 'MSL')],
    ['Runway', `${card.runway.designator}, ${formatNumber(card.runway.length)} m`],
    ['Noise', card.noiseClass],
    ['Climb thrust', feet(card.climbThrustHeight, 'AAL')],
    ['Acceleration', feet(card.accelerationHeight, 'AAL')],
    ['Go-around acceleration', feet(card.goAroundAccelerationHeight, 'AAL')],
    ['Engine-out acceleration', feet(card.engineOutAccelerationHeight, 'AAL')],
    ['Transition altitude', feet(card.transitionAltitude, 'MSL')],
    [card.minima.kind, `${feet(card.minima.altitude, 'MSL')}, ${feet(card.minima.height, 'AAL')}`],
    ['Sector minimum', card.sectorMinimum === null ? '' : feet(card.sectorMinimum, 'MSL')],
    ['Final approach fix', feet(card.finalApproachFix, 'MSL')],
    ['Steps down', card.stepDowns.map((altitude) => feet(altitude, 'MSL')).join(', ')],
    ['Missed approach', `${feet(card.missedApproachAltitude, 'MSL')}, ${card.missedApproachGradient}`],
    ['Obstacle', card.obstacle],
    ['On the route', card.routeLimits.join('; ')],
    ['Remark', card.remark],
  ].filter(([, said]) => said);
  return (
    <>
      <h3>
        {card.code} {card.name}
      </h3>
      <dl className={css.facts}>
        {facts.map(([name, said]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{said}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}
