// A place on Earth, as sun, moon and clocks need it.

/** A place on Earth. Without `timeZone` clock times are the longitude's mean solar time. */
export interface Place {
  /** -90 to 90, north positive. */
  readonly latitudeDeg: number;
  /** -180 to 180, east positive. */
  readonly longitudeDeg: number;
  /** Above the sea, metres. Sunrise and sunset do not go by it, as in published tables: hills hide the sea's horizon. */
  readonly elevationM?: number | undefined;
  /** Above the horizon in view, metres, >= 0: its dip makes sunset later and sunrise earlier. Absent: 0. */
  readonly aboveHorizonM?: number | undefined;
  /** IANA name, "Europe/Oslo". */
  readonly timeZone?: string | undefined;
}
