/**
 * Dormand and Prince's embedded pair of orders 5 and 4 with its continuous extension (J. Comput. Appl. Math. 6, 1980; the
 * extension as in Hairer, Nørsett, Wanner, Solving Ordinary Differential Equations I, II.5 and II.6). One step at a time, so that
 * the caller can look into a step before it goes on. Local extrapolation: the solution of order 5 is carried.
 */
export type Derivative = (time: number, state: Float64Array, into: Float64Array) => void;

export type Tolerance = {
  readonly relative: number;
  /** For each component, in its own unit. */
  readonly absolute: Float64Array;
  /** Longest and shortest step, s. A step of the shortest length is taken whatever its error. */
  readonly most: number;
  readonly least: number;
};

export type Integrator = {
  /** Where the step ends, and the state there. The array is the integrator's own. */
  time: number;
  readonly state: Float64Array;
  /** Where the step began. */
  from: number;
  /** Begins anew, as after a jump of the law: nothing of the past is used. The state is taken as it stands. */
  restart(time: number): void;
  /** Goes one step, not beyond `until`. */
  step(until: number): void;
  /** The state at a time inside the last step. */
  at(time: number, into: Float64Array): void;
  /** Evaluations of the derivative since it was made. */
  readonly evaluations: () => number;
  /** The first step to try after the next restart, s. */
  first: number;
};

const C2 = 1 / 5;
const C3 = 3 / 10;
const C4 = 4 / 5;
const C5 = 8 / 9;
const A21 = 1 / 5;
const A31 = 3 / 40;
const A32 = 9 / 40;
const A41 = 44 / 45;
const A42 = -56 / 15;
const A43 = 32 / 9;
const A51 = 19_372 / 6561;
const A52 = -25_360 / 2187;
const A53 = 64_448 / 6561;
const A54 = -212 / 729;
const A61 = 9017 / 3168;
const A62 = -355 / 33;
const A63 = 46_732 / 5247;
const A64 = 49 / 176;
const A65 = -5103 / 18_656;
const B1 = 35 / 384;
const B3 = 500 / 1113;
const B4 = 125 / 192;
const B5 = -2187 / 6784;
const B6 = 11 / 84;
const E1 = 71 / 57_600;
const E3 = -71 / 16_695;
const E4 = 71 / 1920;
const E5 = -17_253 / 339_200;
const E6 = 22 / 525;
const E7 = -1 / 40;
const D1 = -12_715_105_075 / 11_282_082_432;
const D3 = 87_487_479_700 / 32_700_410_799;
const D4 = -10_690_763_975 / 1_880_347_072;
const D5 = 701_980_252_875 / 199_316_789_632;
const D6 = -1_453_857_185 / 822_651_844;
const D7 = 69_997_945 / 29_380_423;

/** Bounds of the change of the step length, and what is kept in hand. */
const SHRINK = 0.2;
const GROW = 5;
const SAFETY = 0.9;

export function integrator(size: number, derivative: Derivative, tolerance: Tolerance): Integrator {
  const array = (): Float64Array => new Float64Array(size);
  const [k1, k2, k3, k4, k5, k6, k7] = [array(), array(), array(), array(), array(), array(), array()];
  const [begin, trial, r2, r3, r4, r5] = [array(), array(), array(), array(), array(), array()];
  let fresh = true;
  let length = 0;
  let ready = false;
  let count = 0;
  let taken = 0;

  const ask = (time: number, state: Float64Array, into: Float64Array): void => {
    count += 1;
    derivative(time, state, into);
  };

  /** Fills `trial` and the slopes for a step of h; gives its error, 1 being what is allowed. */
  const attempt = (t: number, y: Float64Array, h: number): number => {
    for (let i = 0; i < size; i++) trial[i] = y[i]! + h * A21 * k1[i]!;
    ask(t + C2 * h, trial, k2);
    for (let i = 0; i < size; i++) trial[i] = y[i]! + h * (A31 * k1[i]! + A32 * k2[i]!);
    ask(t + C3 * h, trial, k3);
    for (let i = 0; i < size; i++) trial[i] = y[i]! + h * (A41 * k1[i]! + A42 * k2[i]! + A43 * k3[i]!);
    ask(t + C4 * h, trial, k4);
    for (let i = 0; i < size; i++) {
      trial[i] = y[i]! + h * (A51 * k1[i]! + A52 * k2[i]! + A53 * k3[i]! + A54 * k4[i]!);
    }
    ask(t + C5 * h, trial, k5);
    for (let i = 0; i < size; i++) {
      trial[i] = y[i]! + h * (A61 * k1[i]! + A62 * k2[i]! + A63 * k3[i]! + A64 * k4[i]! + A65 * k5[i]!);
    }
    ask(t + h, trial, k6);
    for (let i = 0; i < size; i++) {
      trial[i] = y[i]! + h * (B1 * k1[i]! + B3 * k3[i]! + B4 * k4[i]! + B5 * k5[i]! + B6 * k6[i]!);
    }
    ask(t + h, trial, k7);
    let sum = 0;
    for (let i = 0; i < size; i++) {
      const error = h * (E1 * k1[i]! + E3 * k3[i]! + E4 * k4[i]! + E5 * k5[i]! + E6 * k6[i]! + E7 * k7[i]!);
      const size1 = Math.max(Math.abs(y[i]!), Math.abs(trial[i]!));
      const share = error / (tolerance.absolute[i]! + tolerance.relative * size1);
      sum += share * share;
    }
    return Math.sqrt(sum / size);
  };

  const self: Integrator = {
    time: 0,
    from: 0,
    first: 0.1,
    state: array(),
    evaluations: () => count,
    restart(time) {
      self.time = time;
      self.from = time;
      length = self.first;
      fresh = true;
      ready = false;
    },
    step(until) {
      const y = self.state;
      if (fresh) ask(self.time, y, k1);
      else k1.set(k7);
      fresh = false;
      let h = Math.min(length, tolerance.most, until - self.time);
      let refused = false;
      for (;;) {
        const error = attempt(self.time, y, h);
        // A state that is no number is an error without bound.
        const factor = error > 0 ? SAFETY * error ** -0.2 : GROW;
        if (error <= 1 || h <= tolerance.least) {
          length = h * Math.min(refused ? 1 : GROW, Math.max(SHRINK, factor || SHRINK));
          break;
        }
        refused = true;
        h = Math.max(tolerance.least, h * Math.max(SHRINK, factor || SHRINK));
      }
      begin.set(y);
      self.from = self.time;
      taken = h;
      self.time = self.time + h >= until - 1e-12 ? until : self.time + h;
      y.set(trial);
      ready = false;
    },
    at(time, into) {
      if (!ready) {
        ready = true;
        for (let i = 0; i < size; i++) {
          const rise = self.state[i]! - begin[i]!;
          r2[i] = rise;
          r3[i] = taken * k1[i]! - rise;
          r4[i] = rise - taken * k7[i]! - r3[i]!;
          r5[i] = taken * (D1 * k1[i]! + D3 * k3[i]! + D4 * k4[i]! + D5 * k5[i]! + D6 * k6[i]! + D7 * k7[i]!);
        }
      }
      const share = (time - self.from) / taken;
      const rest = 1 - share;
      for (let i = 0; i < size; i++) {
        into[i] = begin[i]! + share * (r2[i]! + rest * (r3[i]! + share * (r4[i]! + rest * r5[i]!)));
      }
    },
  };
  return self;
}
