/**
 * What a job holds at most. The commands refuse what is past these and the job file is read by
 * them, so that whatever was made can be saved and opened again.
 */

/** Characters of the job's title, and of the names of a reel and its file. */
export const NAME_LIMIT = 1000

/** The size of any number of a grade: no signal comes near it, and its decimals stay plain. */
export const LARGEST_NUMBER = 1e6

/** With gamma from here to `LARGEST_NUMBER`, the power 1/gamma is never 0 in six decimals. */
export const SMALLEST_GAMMA = 1e-6

/** The size of a density or of a number of a dye restoration: film has densities up to about 4. */
export const LARGEST_DENSITY = 10

/** The gamma of a layer of film is not below this. */
export const SMALLEST_FILM_GAMMA = 0.05

/** House profiles of tolerance in a job, and the characters of one's name. */
export const MOST_HOUSE_PROFILES = 20
export const PROFILE_NAME_LIMIT = 100

/** The size of a limit of a house profile, as signal: no signal comes near it. */
export const LARGEST_LEVEL = 10

/** Alternates of a cue, and the characters of a grade's name. */
export const MOST_ALTERNATES = 12
export const GRADE_NAME_LIMIT = 100

/** Characters of a scene mark. */
export const SCENE_LIMIT = 100

/** Line-ups of a reel, passes of a job, and the characters of a line-up, a reason and a finding. */
export const MOST_LINE_UPS = 200
export const MOST_PASSES = 1000
export const WORDS_LIMIT = 4000

/** Marks told of a reel of film, and the fastest it is run, in frames a second. */
export const MOST_FILM_MARKS = 2000
export const LARGEST_SPEED = 1000

/** Answers of a cue, lines drawn with one, places along a line, and letters of a reviewer's name. */
export const MOST_ANSWERS = 500
export const MOST_MARKS = 50
export const MOST_MARK_POINTS = 500
export const REVIEWER_LIMIT = 200

/** Review packs that a job keeps the record of. */
export const MOST_PACKS = 1000

/** Frames of a pass that were held, at most. */
export const MOST_HELD_FRAMES = 100_000

/** Held frames of a job. */
export const MOST_HELD = 500

/** Characters of what another list said of a cue, and of a reel, in one format. */
export const CUE_FOREIGN_LIMIT = 100_000
export const REEL_FOREIGN_LIMIT = 8_000_000

/**
 * The same in all that an import brings a job to: with 60,000 cues the job file is then about two
 * thirds of the largest that is read.
 */
export const JOB_FOREIGN_LIMIT = 32_000_000

/** Steps of a process list, places along a curve, and places along an edge of a cube. */
export const MOST_STEPS = 32
export const MOST_CURVE_POINTS = 65_536
export const MOST_CUBE_POINTS = 65
