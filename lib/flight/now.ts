// What a gate, a rule of the guidance or a sample may ask of one moment. One object is written over again and again, because a
// flight looks at thousands of moments.
import type { ModeLine } from './trace.ts';

/** kt, ft, ft/min, %, °, NM, s. Detents are places in the order from clean to full. */
export type Now = {
  time: number;
  height: number;
  altitude: number;
  speed: number;
  trueSpeed: number;
  groundSpeed: number;
  mach: number;
  verticalSpeed: number;
  thrust: number;
  bank: number;
  distance: number;
  /** To the runway end; NaN where there is none ahead. */
  toGo: number;
  /** Head wind here, and °C. */
  wind: number;
  temperature: number;
  /** Pressure over that of the sea. */
  delta: number;
  // What hands and the guidance have set: changes at events alone.
  target: number;
  detent: number;
  lever: number;
  gearSelected: 'up' | 'down';
  /** null while it moves. */
  gearIndicated: 'up' | 'down' | null;
  autopilot: boolean;
  selectedAltitude: number;
  line: ModeLine;
  /** When and where each step was done, by id and by label; when the last one was. */
  readonly done: Map<string, { readonly time: number; readonly distance: number }>;
  /** Every word said so far, in small letters. */
  said: string;
};

export const newNow = (line: ModeLine): Now => ({
  time: 0,
  height: 0,
  altitude: 0,
  speed: 0,
  trueSpeed: 0,
  groundSpeed: 0,
  mach: 0,
  verticalSpeed: 0,
  thrust: 0,
  bank: 0,
  distance: 0,
  toGo: Number.NaN,
  wind: 0,
  temperature: 0,
  delta: 1,
  target: 0,
  detent: 0,
  lever: 0,
  gearSelected: 'up',
  gearIndicated: 'up',
  autopilot: false,
  selectedAltitude: 0,
  line,
  done: new Map(),
  said: '',
});
