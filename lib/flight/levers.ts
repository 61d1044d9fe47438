// The two levers that take their time: flap and gear, from the hand to the indication.
import { indicatedDuring } from '../aircraft/limits.ts';
import type { StepId } from '../procedure/procedure.ts';
import { after, type Flight } from './flight.ts';

/** Moves the flap lever: the indication follows stop by stop, unless the law lets it jump. */
export function moveFlap(flight: Flight, to: number, step: StepId | null): void {
  const { now, log, sheet, craft, settings } = flight;
  if (to === now.lever) return;
  const from = now.detent;
  const [left, wanted] = [craft.detents[from]!, craft.detents[to]!];
  if (to < now.lever) {
    if (flight.phase === 'goAround') flight.left = flight.speeds.of('VREF', left);
    else flight.phase = 'elsewhere';
  }
  now.lever = to;
  flight.movement += 1;
  const mine = flight.movement;
  const shown = indicatedDuring(sheet, left, wanted) ?? [];
  const total = shown.at(-1)?.from ?? 0;
  log.note(now, 'flap', `flaps ${left} → ${wanted}, ${total} s`, { step });
  const place = log.begin('flap', left, wanted, now, step);
  const arrive = (detent: number): void => {
    now.detent = detent;
    if (detent === now.lever) {
      log.arrive(place, now);
      if (flight.phase === 'goAround') flight.phase = 'elsewhere';
      else if (sheet.detents[detent]!.use.includes('landing')) flight.phase = 'finalApproach';
    }
    log.note(now, 'flap-there', `flaps ${craft.detents[detent]} indicated`, { step });
  };
  if (settings.flap === 'at once') {
    arrive(to);
    return;
  }
  for (const { from: seconds, detent } of shown.slice(1)) {
    after(flight, seconds, () => {
      if (flight.movement === mine) arrive(craft.detents.indexOf(detent));
    });
  }
}

export function moveGear(flight: Flight, to: 'up' | 'down', step: StepId | null): void {
  const { now, log, sheet, settings } = flight;
  if (to === now.gearSelected) return;
  const { retract, extend } = sheet.limits.gear;
  const seconds = settings.gear === 'at once' ? 0 : to === 'up' ? retract.value : extend.value;
  log.note(now, 'gear', `gear ${to}, ${seconds} s`, { step });
  const place = log.begin('gear', now.gearSelected, to, now, step);
  now.gearSelected = to;
  now.gearIndicated = null;
  const arrive = (): void => {
    if (now.gearSelected !== to) return;
    now.gearIndicated = to;
    log.arrive(place, now);
    log.note(now, 'gear-there', `gear ${to} indicated`, { step });
  };
  if (seconds === 0) arrive();
  else after(flight, seconds, arrive);
}
