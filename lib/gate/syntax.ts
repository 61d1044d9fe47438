// Gate notation: how a pilot writes a condition, made exact. This folder parses, prints, checks and evaluates gates.
// It knows no aircraft: values come in through a function, so the same gate serves every type and every fleet.

/** Half-open range of UTF-16 offsets in the text the gate was parsed from. */
export type Span = { readonly from: number; readonly to: number };

export type Comparison = '<' | '<=' | '=' | '>=' | '>';
export type AltitudeReference = 'AAL' | 'MSL' | 'radio' | 'FL';

/** A speed named by the sheet. `detent` is the name of a flap detent, such as F12; null where the name needs none. */
export type SpeedName =
  | 'V1'
  | 'VR'
  | 'V2'
  | 'VREF'
  | 'VAPP'
  | 'VMM'
  | 'VFE'
  | 'VSR'
  | 'VLO-extend'
  | 'VLO-retract'
  | 'VLE'
  | 'VMO'
  | 'MMO'
  | 'MLE'
  | 'VMCA'
  | 'VMCG'
  | 'clean-speed';

export type NamedAltitude =
  | 'acceleration-altitude'
  | 'climb-thrust-altitude'
  | 'transition-altitude'
  | 'transition-level'
  | 'minima'
  | 'selected-altitude'
  | 'missed-approach-altitude'
  | 'engine-out-acceleration-altitude';

/** What a gate may measure. A `distance` names its point, a `deviation` is from the route. */
export type Measure =
  | 'speed'
  | 'target-speed'
  | 'mach'
  | 'ground-speed'
  | 'height'
  | 'radio-height'
  | 'altitude'
  | 'flight-level'
  | 'vertical-speed'
  | 'thrust'
  | 'weight'
  | 'temperature'
  | 'wind'
  | 'distance'
  | 'deviation'
  | 'bank';

export type GateUnit =
  | 'kt'
  | 'M'
  | 'ft'
  | 'm'
  | 'NM'
  | 'km'
  | 'ft/min'
  | '%'
  | 's'
  | 'min'
  | '°C'
  | '°'
  | 't'
  | 'kg'
  | 'lb';

/** The right (or left) side of a comparison. Numbers carry their unit, altitudes their reference. */
export type Term =
  | {
      readonly kind: 'amount';
      readonly value: number;
      readonly unit: GateUnit;
      readonly reference: AltitudeReference | null;
      readonly span: Span;
    }
  | {
      readonly kind: 'speed';
      readonly name: SpeedName;
      readonly detent: string | null;
      readonly icing: boolean;
      readonly span: Span;
    }
  | { readonly kind: 'altitude'; readonly name: NamedAltitude; readonly span: Span }
  | { readonly kind: 'target'; readonly name: 'target' | 'go-around target' | 'take-off target'; readonly span: Span }
  | { readonly kind: 'measure'; readonly measure: Measure; readonly of: string | null; readonly span: Span }
  | { readonly kind: 'sum'; readonly sign: '+' | '-'; readonly left: Term; readonly right: Term; readonly span: Span }
  | { readonly kind: 'extreme'; readonly which: 'max' | 'min'; readonly of: readonly Term[]; readonly span: Span };

export type Axis = 'thrust' | 'lateral' | 'vertical';

export type Gate =
  | {
      readonly kind: 'compare';
      readonly left: Term;
      readonly op: Comparison;
      readonly right: Term;
      readonly span: Span;
    }
  /** `speed between VMM F18 and VFE F18 - 5 kt`: both ends belong to it. */
  | { readonly kind: 'window'; readonly what: Term; readonly low: Term; readonly high: Term; readonly span: Span }
  | {
      readonly kind: 'trend';
      readonly measure: Measure;
      readonly way: 'increasing' | 'decreasing';
      readonly span: Span;
    }
  | { readonly kind: 'flaps'; readonly detent: string; readonly how: 'indicated' | 'selected'; readonly span: Span }
  | {
      readonly kind: 'gear';
      readonly position: 'up' | 'down';
      readonly how: 'indicated' | 'selected';
      readonly span: Span;
    }
  | { readonly kind: 'mode'; readonly axis: Axis; readonly words: readonly string[]; readonly span: Span }
  | { readonly kind: 'armed'; readonly word: string; readonly span: Span }
  | { readonly kind: 'autopilot'; readonly on: boolean; readonly span: Span }
  | { readonly kind: 'heard'; readonly words: string; readonly span: Span }
  /** Something seen or received that has no measure: `event "clearance read back"`. */
  | { readonly kind: 'event'; readonly text: string; readonly span: Span }
  /** A judgement, marked as one: `judged "clear of weather"`, `when cleared`. */
  | { readonly kind: 'judged'; readonly text: string; readonly span: Span }
  /** `then`: the step before is done. */
  | { readonly kind: 'then'; readonly span: Span }
  /** `after GA-01`, `60 s after DT-09`, `every 10 NM from WD-06`: `step` is a label or a permanent id. */
  | {
      readonly kind: 'after';
      readonly step: string;
      readonly delay: Term | null;
      readonly every: boolean;
      readonly span: Span;
    }
  /** `GATE within 5 s of GA-01`. */
  | {
      readonly kind: 'within';
      readonly of: Gate;
      readonly limit: Term;
      readonly step: string | null;
      readonly span: Span;
    }
  | { readonly kind: 'not'; readonly of: Gate; readonly span: Span }
  | { readonly kind: 'all' | 'any'; readonly of: readonly Gate[]; readonly span: Span };

/** What is wrong, where, what was expected there, and a correction where it is certain. */
export type GateProblem = {
  readonly code:
    | 'empty'
    | 'unknown-word'
    | 'expected'
    | 'unit-missing'
    | 'unit-wrong'
    | 'reference-missing'
    | 'reference-wrong'
    | 'detent-missing'
    | 'unclosed'
    | 'trailing'
    | 'too-long'
    | 'too-deep'
    | 'number';
  readonly span: Span;
  readonly message: string;
  readonly expected: readonly string[];
  readonly fix: { readonly span: Span; readonly text: string; readonly says: string } | null;
};

/** `gate` is what could be understood, also of a half-typed text; null when nothing could. */
export type Parsed = { readonly gate: Gate | null; readonly problems: readonly GateProblem[] };
