// What a review is made from and what it says: frames as their files say they were taken, held against a plan.

import type { FrameLevel } from '../follow/frame-level.js';
import type { FrameCalibration } from '../follow/frame-reading.js';
import type { Control } from '../plan/types.js';
import type { ReviewNote } from './note.js';

/** One frame as its file says that it was taken. */
export interface TakenFrame {
  /** Its name, which may have folders before it. */
  readonly file: string;
  /** When it began, as the camera's clock had it: "2026-10-14T18:07:31.25", with an offset where the file has one. */
  readonly at: string;
  /** Seconds as the file prints them, > 0: 0.3 for a third of a second. */
  readonly shutterS: number;
  /** As the file prints it, > 0. */
  readonly iso: number;
  /** As the file prints it, > 0; absent where the lens does not tell: it is taken to be the plan's. */
  readonly fNumber?: number | undefined;
  /** Names of the filters on the lens, out of the shoot's; absent: as the plan, the log and the levels say. */
  readonly filters?: readonly string[] | undefined;
  /** How bright it came out. */
  readonly level?: FrameLevel | undefined;
  /** Which camera took it, in any words. */
  readonly camera?: string | undefined;
}

/** How frames are reviewed. */
export interface ReviewOptions {
  /** By how much the camera's clock is fast, seconds; slow where negative. Absent: found from the frames. */
  readonly clockFastS?: number | undefined;
  /** What was metered, by the true clock; used where the frames have no levels. */
  readonly readings?:
    | readonly {
        /** UTC epoch milliseconds. */
        readonly atMs: number;
        /** EV at ISO 100. */
        readonly ev100: number;
      }[]
    | undefined;
  /** What was on the lens from when on, by the true clock, where somebody wrote it down. */
  readonly filterLog?:
    | readonly {
        /** UTC epoch milliseconds. */
        readonly atMs: number;
        /** Names from the shoot; none: the bare lens. */
        readonly filters: readonly string[];
      }[]
    | undefined;
  /** Largest correction of one frame, stops, > 0 to 10; default 3. */
  readonly mostEv?: number | undefined;
  /** Whether a spoilt frame is shown as its nearest good neighbour; default not. */
  readonly replaceSpoilt?: boolean | undefined;
  /** Whether small differences of the levels, those of shutter and aperture, are taken out too; default not. */
  readonly evenFlicker?: boolean | undefined;
  /** What a frame exposed as metered looks like. */
  readonly calibration?: FrameCalibration | undefined;
}

/** One exposure of a bracket. */
export interface BracketExposure {
  /** As given. */
  readonly file: string;
  /** Stops by which it is exposed brighter than the middle one; darker where negative. */
  readonly byEv: number;
}

/** One frame that was taken, and what it lacks. Of a bracket it has the setting and the offset of the middle exposure. */
export interface ReviewFrame {
  /** As given. Of a bracket the middle exposure's, or the nearest to it where that is missing. */
  readonly file: string;
  /** Frame of the plan whose place it has, from 0; null before the first and after the last. */
  readonly frame: number | null;
  /** Its start by the true clock, RFC 3339 with the place's offset. */
  readonly at: string;
  /** As the dial says; to three digits where it is no mark. */
  readonly shutter: string;
  /** Seconds, exact. */
  readonly shutterS: number;
  /** As the dial says. */
  readonly iso: number;
  /** Arithmetic speed, exact. */
  readonly isoExact: number;
  /** As the dial says. */
  readonly aperture: string;
  /** Focal ratio, exact. */
  readonly fNumber: number;
  /** On the lens, as far as is known. */
  readonly filters: readonly string[];
  /** Their sum, stops. */
  readonly filterStops: number;
  /** What it renders at metered level, filters counted, EV at ISO 100. */
  readonly settingEv100: number;
  /** What the plan had for this frame; absent where `frame` is null. */
  readonly plannedEv100?: number | undefined;
  /** The light as it was read, EV at ISO 100; the plan's forecast where nothing was read. */
  readonly sceneEv100: number;
  /** What it should have been exposed for, EV at ISO 100. */
  readonly targetEv100: number;
  /** Stops by which it is to be brightened, darkened where negative: settingEv100 - targetEv100, what `flickerEv` and `beyondEv` say apart. */
  readonly offsetEv: number;
  /** Only where small differences are taken out: by how much the frame is brighter than its setting makes it, stops; part of `offsetEv`, with the other sign. */
  readonly flickerEv?: number | undefined;
  /** What is left where the largest correction is not enough, stops. */
  readonly beyondEv?: number | undefined;
  /** How bright it came out, as the light that it shows, EV at ISO 100. */
  readonly readEv100?: number | undefined;
  /** Whether white or black hides what it shows. */
  readonly clipped?: true | undefined;
  /** Whether a filter change spoilt it, or may have. */
  readonly spoilt?: true | undefined;
  /** Whether another frame has its place already. */
  readonly doubled?: true | undefined;
  /** Whether nobody planned its setting. */
  readonly unplanned?: true | undefined;
  /** Whether its exposure did not fit the interval. */
  readonly ranOver?: true | undefined;
  /** The file to show in its place, where it is replaced. */
  readonly shows?: string | undefined;
  /** Where the plan has a bracket: what was taken of it, the brightest first. The offset is for each of them alike. */
  readonly exposures?: readonly BracketExposure[] | undefined;
  /** Exposures of it that nobody took, as stops by which they are brighter than the middle one; absent where none is missing. */
  readonly missingEv?: readonly number[] | undefined;
}

/** One cue of the plan, and what became of it. */
export interface ReviewCue {
  /** From 1, in the plan's order. */
  readonly cue: number;
  /** First frame that should have had the new setting, from 0. */
  readonly frame: number;
  /** Its start, RFC 3339 with the place's offset. */
  readonly at: string;
  /** Which controls it changes. */
  readonly controls: readonly Control[];
  /** Seconds by which it came late, in whole intervals; early where negative; null where it was never done. */
  readonly lateS: number | null;
  /** First frame that has the new setting; absent where it was never done. */
  readonly doneFrame?: number | undefined;
  /** False where no frame was taken that could show it. */
  readonly seen: boolean;
}

/** The forecast held against what was read. */
export interface ForecastCheck {
  /** Readings or frames that it is held against. */
  readonly count: number;
  /** By how much the light was brighter, stops, the median. */
  readonly offsetEv: number;
  /** Standard deviation around the mean, stops. */
  readonly spreadEv: number;
  /** The largest difference, with its sign. */
  readonly worstEv: number;
  /** Share that lay within the plan's likely range, 0 to 1. */
  readonly inRangeShare: number;
}

/** The light as it was at one time. */
export interface LightRead {
  /** RFC 3339 with the place's offset. */
  readonly at: string;
  /** True altitude of the sun's centre then. */
  readonly sunAltitudeDeg: number;
  /** Smoothed, EV at ISO 100. */
  readonly ev100: number;
  /** The plan's forecast, EV at ISO 100. */
  readonly forecastEv100: number;
}

/** A review in numbers. */
export interface ReviewSummary {
  /** Frames of the plan. */
  readonly plannedFrames: number;
  /** Frames taken, those before the first and after the last too. */
  readonly takenFrames: number;
  /** Seconds from one frame to the next, as they were taken; absent with one frame. */
  readonly intervalS?: number | undefined;
  /** By how much the camera's clock was fast, seconds. */
  readonly clockFastS: number;
  /** Root of the mean square of what the frames are off their target, stops. */
  readonly rmsErrorEv: number;
  /** Largest |offsetEv|, stops. */
  readonly largestOffsetEv: number;
  /** Largest correction that was allowed, stops. */
  readonly mostEv: number;
  /** Largest step in exposure from a frame to the next before, beside the target's own, stops. */
  readonly stepBeforeEv: number;
  /** The same after the correction. */
  readonly stepAfterEv: number;
  /** The least step that is seen, stops, on a white of `whiteCdM2`. */
  readonly justNoticeableEv: number;
  /** Luminance for which that holds, cd/m². */
  readonly whiteCdM2: number;
  /** Where the light is from. */
  readonly lightFrom: 'forecast' | 'readings' | 'levels';
}

/** What happened: `evenfall-review/1`. */
export interface Review {
  readonly format: 'evenfall-review/1';
  /** The shoot's title; may be empty. */
  readonly title: string;
  /** The whole in numbers. */
  readonly summary: ReviewSummary;
  /** In the order they were taken, one or more. */
  readonly frames: readonly ReviewFrame[];
  /** Every cue of the plan. */
  readonly cues: readonly ReviewCue[];
  /** Frames of the plan that nobody took, in order. */
  readonly missingFrames: readonly number[];
  /** Where anything was read: the forecast held against it. */
  readonly forecast?: ForecastCheck | undefined;
  /** Where anything was read: the light, every five minutes or so. */
  readonly light: readonly LightRead[];
  /** What a person should know, warnings first. */
  readonly notes: readonly ReviewNote[];
}
