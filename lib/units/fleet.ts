/** The units a fleet lives in. Everything is kept in kg and hPa; these say how it is shown and what a bare number means. */
export interface FleetUnits {
  readonly mass: 'kg' | 'lb';
  readonly pressure: 'hPa' | 'inHg';
}

export const METRIC_FLEET: FleetUnits = { mass: 'kg', pressure: 'hPa' };
export const IMPERIAL_FLEET: FleetUnits = { mass: 'lb', pressure: 'inHg' };
