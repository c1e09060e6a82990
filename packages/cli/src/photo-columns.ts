// Columns of a table of frames; the first four must be there.

export const FRAME_COLUMNS = [
  'file',
  'at',
  'shutter',
  'iso',
  'aperture',
  'filters',
  'mean',
  'camera',
] as const;

export type FrameColumn = (typeof FRAME_COLUMNS)[number];
