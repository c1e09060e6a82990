/** Events of sun and moon that a plan may name. */
export type SkyEvent =
  | 'sunrise'
  | 'sunset'
  | 'civil-dawn'
  | 'civil-dusk'
  | 'nautical-dawn'
  | 'nautical-dusk'
  | 'astronomical-dawn'
  | 'astronomical-dusk'
  | 'moonrise'
  | 'moonset';
