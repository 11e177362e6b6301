import { PRINT_BASE } from '../../film/filmBase.ts'
import { NO_PARTICULARS } from '../../film/particulars.ts'
import { IDENTITY_FRAMING } from '../../picture/framing.ts'
import { EBU_R103_V3 } from '../../tolerance/profile.ts'
import { INITIAL_TRANSFER } from '../../transfer/transferSettings.ts'
import {
  type AnyJobFile,
  type AnyRecord,
  isRecord,
  mapRecords,
  withCues,
  withFramings,
  withInfo,
  withPasses,
  withReels,
} from './anyJobFile.ts'
import { answersDownTo6, answersUpTo7, hasLookParts } from './migrateAgreement.ts'

/** How a file of version `to` − 1 becomes one of version `to`, and back. */
export type Migration = {
  readonly to: number
  readonly up: (file: AnyJobFile) => AnyJobFile
  readonly down: (file: AnyJobFile) => AnyJobFile
}

/** The version this program writes. */
export const JOB_VERSION = 8

/** A cue that was agreed in an earlier version was agreed as it stands in the file. */
const cueUpTo4 = (cue: AnyRecord): AnyRecord => ({
  ...cue,
  rampShape: 'linear',
  gradeName: '',
  alternates: [],
  scene: '',
  agreedLook: cue.agreement === 'agreed' ? { grade: cue.grade, framing: cue.framing } : null,
})

/** What was changed since it was agreed is not agreed to a version that cannot tell. */
const cueDownTo3 = ({
  rampShape: _shape,
  gradeName: _name,
  alternates: _alternates,
  scene: _scene,
  agreedLook,
  ...cue
}: AnyRecord): AnyRecord => {
  const now = JSON.stringify({ grade: cue.grade, framing: cue.framing })
  const isAsAgreed = cue.agreement !== 'agreed' || JSON.stringify(agreedLook) === now
  return isAsAgreed ? cue : { ...cue, agreement: 'open' }
}

const reelUpTo6 = ({ media, ...reel }: AnyRecord): AnyRecord => ({
  ...reel,
  media: isRecord(media) ? { ...media, checksum: null } : media,
  lineUps: [],
  transfer: INITIAL_TRANSFER,
  overrides: [],
})

const reelDownTo5 = ({
  media,
  lineUps: _lineUps,
  transfer: _transfer,
  overrides: _overrides,
  ...reel
}: AnyRecord): AnyRecord => {
  if (!isRecord(media)) return { ...reel, media }
  const { checksum: _, ...rest } = media
  return { ...reel, media: rest }
}

const withNoList = (base: unknown): unknown => (isRecord(base) ? { ...base, list: null } : base)

const withoutList = (base: unknown): unknown => {
  if (!isRecord(base)) return base
  const { list: _, ...rest } = base
  return rest
}

/** A reason that does not say what it is about holds for nothing, and is shown as one that was given. */
const overridesUpTo7 = (record: AnyRecord): AnyRecord =>
  Array.isArray(record.overrides)
    ? {
        ...record,
        overrides: mapRecords(record.overrides, (each) => ({ ...each, about: [] })),
      }
    : record

const overridesDownTo6 = (record: AnyRecord): AnyRecord =>
  Array.isArray(record.overrides)
    ? {
        ...record,
        overrides: mapRecords(record.overrides, ({ about: _, ...each }) => each),
      }
    : record

/** Consecutive from version 2 on. */
export const MIGRATIONS: readonly Migration[] = [
  {
    // Version 2 says how a reel's scan becomes video (before, every scan was a print), and holds
    // house profiles of tolerance (before, there was EBU R 103 v3 alone).
    to: 2,
    up: (file) =>
      withInfo(
        withReels(file, (reel) => ({ ...reel, base: withoutList(PRINT_BASE) })),
        (info) => ({ ...info, profiles: [] }),
      ),
    down: (file) =>
      withInfo(
        withReels(file, ({ base: _, ...reel }) => reel),
        ({ profiles: _, ...info }) => ({ ...info, tolerance: EBU_R103_V3.id }),
      ),
  },
  {
    // Version 3 turns, unsqueezes and blanks pictures (before, framing was zoom, pan and tilt).
    to: 3,
    up: (file) => withFramings(file, (framing) => ({ ...IDENTITY_FRAMING, ...framing })),
    down: (file) => withFramings(file, ({ zoom, pan, tilt }) => ({ zoom, pan, tilt })),
  },
  {
    // Version 4 has eased ramps, alternates, scene marks, what was agreed, and held frames.
    to: 4,
    up: (file) => ({ ...withCues(file, cueUpTo4), held: [] }),
    down: ({ held: _, ...file }) => withCues(file, cueDownTo3),
  },
  {
    // Version 5 has a process list in a reel's base, and keeps what other lists said.
    to: 5,
    up: (file) =>
      withCues(
        withReels(file, (reel) => ({ ...reel, base: withNoList(reel.base), foreign: [] })),
        (cue) => ({ ...cue, foreign: [] }),
      ),
    down: (file) =>
      withCues(
        withReels(file, ({ foreign: _, base, ...reel }) => ({ ...reel, base: withoutList(base) })),
        ({ foreign: _, ...cue }) => cue,
      ),
  },
  {
    // Version 6 says how a reel is transferred, what stood in the way, and what passes were made.
    to: 6,
    up: (file) => ({
      ...withInfo(withReels(file, reelUpTo6), (info) => ({ ...info, asksAgreement: false })),
      passes: [],
    }),
    down: ({ passes: _, ...file }) =>
      withInfo(withReels(file, reelDownTo5), ({ asksAgreement: __, ...info }) => info),
  },
  {
    // Version 7 keeps who agreed to what and when, the packs it came by, and what reasons are about.
    to: 7,
    up: (file) => ({
      ...withPasses(withReels(file, overridesUpTo7), overridesUpTo7),
      ...(hasLookParts(file) && { cues: answersUpTo7(file as never) }),
      packs: [],
    }),
    down: ({ packs: _, ...file }) => ({
      ...withPasses(withReels(file, overridesDownTo6), overridesDownTo6),
      cues: answersDownTo6(file as never),
    }),
  },
  {
    // Version 8 says what is in the can, has a guide track, and tells Super 16 from 16 mm.
    to: 8,
    up: (file) =>
      withReels(file, (reel) => ({ ...reel, particulars: NO_PARTICULARS, guide: null })),
    down: (file) =>
      withReels(file, ({ particulars: _, guide: __, ...reel }) => ({
        ...reel,
        gauge: reel.gauge === 'super16' ? '16mm' : reel.gauge,
      })),
  },
]

/** A file brought to the version this program writes, step by step. */
export const migrateUp = (
  file: AnyJobFile,
  migrations: readonly Migration[] = MIGRATIONS,
): AnyJobFile =>
  migrations.reduce(
    (current, { to, up }) =>
      current.version === to - 1 ? { ...up(current), version: to } : current,
    file,
  )

/** A file taken back to an earlier version, for a program that knows no later one. */
export const migrateDown = (
  file: AnyJobFile,
  version: number,
  migrations: readonly Migration[] = MIGRATIONS,
): AnyJobFile =>
  migrations
    .toReversed()
    .reduce(
      (current, { to, down }) =>
        current.version === to && to > version ? { ...down(current), version: to - 1 } : current,
      file,
    )
