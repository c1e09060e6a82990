// A place on Earth, as sun, moon and clocks need it.

/** A place on Earth. Without `timeZone` clock times are the longitude's mean solar time. */
export interface Place {
  /** -90 to 90, north positive. */
  readonly latitudeDeg: number;
  /** -180 to 180, east positive. */
  readonly longitudeDeg: number;
  /** Of the eye above its horizon, metres; moves sunrise and sunset. Absent: 0. */
  readonly elevationM?: number;
  /** IANA name, "Europe/Oslo". */
  readonly timeZone?: string;
}
