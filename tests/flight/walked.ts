// The same deviation walked in steps of a tenth of a second from its headings and turning points alone, on purpose without
// any of the code that found it.
import type { Deviated, Plan } from '../../lib/flight/deviation.ts';

const RAD = Math.PI / 180;
const STEP = 0.1 / 3_600;

/** Nearest to the box, and where the track is reached again; `later` NM behind the latest point. */
export function walked(plan: Plan, found: Deviated, later = 0) {
  const { tas, bank, wind, course, cell } = plan;
  const home = found.headings.along;
  const rate = ((9.80665 * Math.tan(bank * RAD)) / (tas * (1_852 / 3_600)) / RAD) * 3_600;
  const sign = plan.side === 'right' ? 1 : -1;
  const turnBack = found.points.find((point) => point.name === 'turn back')!;
  const blow = {
    along: -wind.speed * Math.cos((wind.from - course) * RAD),
    right: -wind.speed * Math.sin((wind.from - course) * RAD),
  };
  const box = {
    along: cell.speed * Math.cos((cell.toward - course) * RAD),
    right: cell.speed * Math.sin((cell.toward - course) * RAD),
  };
  let [along, right, heading] = [found.points[0]!.along + later, 0, home];
  let hours = found.points[0]!.minutes / 60;
  if (later > 0) hours += later / speedAlong();
  let [nearest, goal, stage] = [Number.POSITIVE_INFINITY, found.headings.leave, 0];
  // Where a turn has to begin so that it ends on its line: what the turn itself moves sideways.
  const sideways = (from: number, to: number): number => {
    let [moved, at] = [0, from];
    while (Math.abs(wrapped(to - at)) > rate * STEP) {
      at += Math.sign(wrapped(to - at)) * rate * STEP;
      moved += (tas * Math.sin((at - course) * RAD) + blow.right) * STEP;
    }
    return moved;
  };
  const takes = {
    along: sign * sideways(found.headings.leave, home),
    home: sign * sideways(found.headings.rejoin, home),
  };
  for (let step = 0; step < 180_000; step += 1) {
    const beside = sign * right;
    if (stage === 0 && beside + takes.along >= found.offset) [goal, stage] = [home, 1];
    if (stage === 1 && along >= turnBack.along + later) [goal, stage] = [found.headings.rejoin, 2];
    if (stage === 2 && Math.abs(wrapped(heading - goal)) < 0.1 && beside + takes.home <= 0) [goal, stage] = [home, 3];
    const left = wrapped(goal - heading);
    heading += Math.sign(left) * Math.min(Math.abs(left), rate * STEP);
    along += (tas * Math.cos((heading - course) * RAD) + blow.along) * STEP;
    right += (tas * Math.sin((heading - course) * RAD) + blow.right) * STEP;
    hours += STEP;
    const [x, y] = [along - box.along * hours, right - box.right * hours];
    const [dx, dy] = [
      Math.max(cell.ahead - x, x - cell.ahead - cell.depth, 0),
      Math.max(cell.left - y, y - cell.right, 0),
    ];
    nearest = Math.min(nearest, Math.hypot(dx, dy));
    if (stage === 3 && Math.abs(wrapped(heading - home)) < 1e-6) break;
  }
  return { nearest, back: { along, right } };

  function speedAlong(): number {
    return tas * Math.cos((home - course) * RAD) + blow.along;
  }
}

const wrapped = (angle: number): number => ((((angle + 180) % 360) + 360) % 360) - 180;
