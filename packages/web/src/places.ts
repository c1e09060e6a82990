// Places to try a plan with: towns from the equator to the polar night, rounded to a hundredth of a degree.

export interface SamplePlace {
  readonly name: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly timeZone: string;
}

export const SAMPLE_PLACES: readonly SamplePlace[] = [
  { name: 'Bergen', latitudeDeg: 60.39, longitudeDeg: 5.32, timeZone: 'Europe/Oslo' },
  { name: 'Cape Town', latitudeDeg: -33.92, longitudeDeg: 18.42, timeZone: 'Africa/Johannesburg' },
  { name: 'Hobart', latitudeDeg: -42.88, longitudeDeg: 147.33, timeZone: 'Australia/Hobart' },
  { name: 'Kyoto', latitudeDeg: 35.01, longitudeDeg: 135.77, timeZone: 'Asia/Tokyo' },
  { name: 'La Paz', latitudeDeg: -16.5, longitudeDeg: -68.15, timeZone: 'America/La_Paz' },
  { name: 'Lisbon', latitudeDeg: 38.72, longitudeDeg: -9.14, timeZone: 'Europe/Lisbon' },
  { name: 'Nairobi', latitudeDeg: -1.29, longitudeDeg: 36.82, timeZone: 'Africa/Nairobi' },
  { name: 'Reykjavik', latitudeDeg: 64.15, longitudeDeg: -21.94, timeZone: 'Atlantic/Reykjavik' },
  { name: 'Tromsø', latitudeDeg: 69.65, longitudeDeg: 18.96, timeZone: 'Europe/Oslo' },
  { name: 'Vancouver', latitudeDeg: 49.28, longitudeDeg: -123.12, timeZone: 'America/Vancouver' },
];
