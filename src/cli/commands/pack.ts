import { agreementOf } from '../../core/agreement/agreementOf.ts'
import { makeSigningKey } from '../../core/agreement/signing.ts'
import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import { fileNameOf } from '../../core/formats/listNames.ts'
import { applyChange } from '../../core/job/change.ts'
import { addPack } from '../../core/job/commands/addPack.ts'
import { cueEnd, cuesOfReel } from '../../core/job/cueList.ts'
import type { Cue, Job, Reel } from '../../core/job/job.ts'
import { REVIEWER_LIMIT } from '../../core/job/limits.ts'
import { newPackId } from '../../core/job/recordIds.ts'
import { MediaError } from '../../media/mediaError.ts'
import { encodeClip } from '../../media/node/encodeClip.ts'
import { jpegAddressNode } from '../../media/node/jpegAddressNode.ts'
import { openMediaNode } from '../../media/node/openMediaNode.ts'
import { createPaceKeeper } from '../../work/pace.ts'
import { makeClip } from '../../work/review/makeClip.ts'
import {
  gatherPack,
  type PackSources,
  packContents,
  packEstimate,
} from '../../work/review/makePack.ts'
import { packPage, packZip } from '../../work/review/packFile.ts'
import { reviewPictures } from '../../work/review/reviewPictures.ts'
import { type Arguments, readArguments, textOption, wrongUse } from '../arguments.ts'
import { chooseReel } from '../chooseReel.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import { kernelHere } from '../kernelHere.ts'
import { readJobFile } from '../readJobFile.ts'
import { REVIEW_PAGE } from '../reviewPageText.ts'
import type { Terminal } from '../terminal.ts'
import { mediaBeside } from '../transfer/transferTask.ts'
import { notOver, writeWhole } from '../writeFiles.ts'
import { writeJobFile } from '../writeJobFile.ts'

export const PACK_USAGE =
  'reelwright pack JOB --out FILE.html|.zip [--reel ID] [--media FILE] [--cues 1,4-9 | --scene MARK | --open] [--for NAME] [--clips SECONDS] [--size PIXELS] [--unsigned] [--dry-run] [--json]'

const SIZE = 960
const SMALLEST = 64
const LARGEST = 8192

/** Cues that a size is reckoned from. */
const SAMPLE = 2

/** Numbers and ranges of numbers, from 1: `1,4-9`. */
const numbersOf = (text: string, count: number): ReadonlySet<number> | undefined => {
  const wanted = new Set<number>()
  for (const part of text.split(',')) {
    const [, from, to = from] = /^(\d{1,6})(?:-(\d{1,6}))?$/u.exec(part.trim()) ?? []
    const [low, high] = [Number(from), Number(to)]
    if (from === undefined || low < 1 || high < low || high > count) return undefined
    for (let number = low; number <= high; number++) wanted.add(number)
  }
  return wanted
}

/** The cues that are meant: by number, by scene, those not agreed, or all. */
const chosenCues = (job: Job, reel: Reel, args: Arguments): Result<readonly Cue[]> => {
  const cues = cuesOfReel(job, reel.id)
  const numbers = textOption(args, 'cues')
  const scene = textOption(args, 'scene')
  const isOpen = Boolean(args.values.open)
  if ([numbers !== undefined, scene !== undefined, isOpen].filter(Boolean).length > 1)
    return wrongUse('Give one of --cues, --scene and --open.', PACK_USAGE)
  const wanted = numbers === undefined ? undefined : numbersOf(numbers, cues.length)
  if (numbers !== undefined && !wanted)
    return wrongUse(`Give --cues numbers from 1 to ${cues.length}, as 1,4-9.`, PACK_USAGE)
  const chosen = cues.filter(
    (cue, index) =>
      (wanted?.has(index + 1) ?? true) &&
      (scene === undefined || cue.scene === scene) &&
      (!isOpen || agreementOf(job, cue) !== 'agreed'),
  )
  if (chosen.length > 0) return ok(chosen)
  return fail(
    problem(
      'not-found',
      scene === undefined
        ? 'Every cue is agreed as it is: there is nothing to ask for.'
        : `No cue has the scene mark “${scene}”.`,
    ),
  )
}

const sizeOf = (args: Arguments): number | undefined => {
  const text = textOption(args, 'size') ?? String(SIZE)
  const size = /^\d{1,5}$/u.test(text) ? Number(text) : 0
  return size >= SMALLEST && size <= LARGEST ? size : undefined
}

const LONGEST_CLIP = 60

/** Seconds of each cue in motion; 0 where none are asked for. */
const clipsOf = (args: Arguments): number | undefined => {
  const text = textOption(args, 'clips') ?? '0'
  const seconds = /^\d{1,2}(?:\.\d+)?$/u.test(text) ? Number(text) : -1
  return seconds >= 0 && seconds <= LONGEST_CLIP ? seconds : undefined
}

const megabytes = (bytes: number): string =>
  bytes >= 1e6 ? `${(bytes / 1e6).toFixed(1)} MB` : `${Math.ceil(bytes / 1000)} kB`

/** Makes a review pack, and keeps its record in the job, by which its answers are known again. */
export const packCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const text = { type: 'string' } as const
  const flag = { type: 'boolean' } as const
  const options = {
    ...{ out: text, reel: text, media: text, cues: text, scene: text, open: flag, for: text },
    ...{ clips: text, size: text, unsigned: flag, 'dry-run': flag, json: flag },
  } as const
  const args = readArguments(argv, options, PACK_USAGE)
  if (!args.ok) return args
  const [path, another] = args.value.positionals
  const out = textOption(args.value, 'out')
  const size = sizeOf(args.value)
  const madeFor = textOption(args.value, 'for') ?? ''
  if (path === undefined || another !== undefined) return wrongUse('Give one job.', PACK_USAGE)
  if (out === undefined || !/\.(?:html|zip)$/u.test(out))
    return wrongUse('Say where to write with --out FILE.html or FILE.zip.', PACK_USAGE)
  if (size === undefined)
    return wrongUse(`Give --size from ${SMALLEST} to ${LARGEST} pixels.`, PACK_USAGE)
  const clipSeconds = clipsOf(args.value)
  if (clipSeconds === undefined)
    return wrongUse(`Give --clips from 0 to ${LONGEST_CLIP} seconds.`, PACK_USAGE)
  if (madeFor.length > REVIEWER_LIMIT)
    return wrongUse(`A name has at most ${REVIEWER_LIMIT} characters.`, PACK_USAGE)
  const read = await readJobFile(path)
  if (!read.ok) return read
  const job = read.value
  const found = chooseReel(job, textOption(args.value, 'reel'), PACK_USAGE)
  if (!found.ok) return found
  const reel = found.value
  const chosen = chosenCues(job, reel, args.value)
  if (!chosen.ok) return chosen
  const media = textOption(args.value, 'media') ?? mediaBeside(path, reel.media.name)
  const kernel = await kernelHere()
  if (!kernel.ok) return kernel
  const opened = await openMediaNode(media)
  if (!opened.ok) return opened
  const source = opened.value
  const sources: PackSources = {
    pictures: async (request) => {
      try {
        const planes = await source.read(request.frame)
        return await reviewPictures(planes, kernel.value, request, jpegAddressNode)
      } catch (error) {
        if (error instanceof MediaError) return undefined
        throw error
      }
    },
    ...(clipSeconds > 0 && {
      clip: (cue: Cue, index: number) => {
        const end = cueEnd(cuesOfReel(job, reel.id), index, reel.frames)
        const request = { job, reel, first: cue.first, end, seconds: clipSeconds }
        return makeClip(request, { source, kernel: kernel.value }, encodeClip)
      },
    }),
  }
  const ids = chosen.value.map(({ id }) => id)
  try {
    if (args.value.values['dry-run']) {
      const sample = await gatherPack(job, reel, { cues: ids.slice(0, SAMPLE), size }, sources)
      const bytes = Math.round(packEstimate(chosen.value, sample.cues))
      if (args.value.values.json) terminal.json({ cues: ids.length, bytes, written: false })
      else
        terminal.print(
          `${ids.length} cues, about ${megabytes(bytes)}. Nothing was written: a dry run.`,
        )
      return ok(EXIT.fine)
    }
    const pace = createPaceKeeper(ids.length, () => performance.now())
    const gathered = await gatherPack(job, reel, { cues: ids, size }, sources, (done) =>
      terminal.pace('Pictures', pace(done)),
    )
    const key = args.value.values.unsigned ? undefined : await makeSigningKey()
    const particulars = { id: newPackId(), madeAt: new Date().toISOString(), madeFor }
    const contents = packContents(job, reel, gathered.cues, {
      ...particulars,
      key: key ? { algorithm: key.algorithm, privateKey: key.privateKey } : null,
    })
    if (gathered.cues.length === 0) {
      const [first, ...rest] = gathered.left
      return fail(first ?? problem('missing', 'There is nothing to show.'), ...rest)
    }
    const stills = out.endsWith('.zip')
      ? await gatherPack(
          job,
          reel,
          { cues: ids, size: Number.POSITIVE_INFINITY },
          {
            pictures: sources.pictures,
          },
        )
      : undefined
    const bytes = stills
      ? packZip(
          contents,
          REVIEW_PAGE,
          fileNameOf(reel),
          stills.cues.flatMap(({ number, before, after }) => [
            { number, kind: 'before', address: before },
            { number, kind: 'after', address: after },
          ]),
        )
      : packPage(contents, REVIEW_PAGE)
    terminal.clearPace()
    const record = {
      ...particulars,
      cues: gathered.cues.length,
      key: key ? { algorithm: key.algorithm, publicKey: key.publicKey } : null,
    }
    const change = addPack(job, record)
    if (!change.ok) return change
    const free = await notOver([out], [path, media])
    if (!free.ok) return free
    // The record is kept first: a pack that nobody knows of could be answered in vain.
    const kept = await writeJobFile(path, applyChange(job, change.value.change), [media])
    if (!kept.ok) return kept
    const written = await writeWhole(out, bytes)
    if (!written.ok) return written
    if (gathered.left.length > 0) terminal.problems(gathered.left)
    if (args.value.values.json)
      terminal.json({
        ...{ written: out, cues: record.cues, bytes: bytes.length, pack: record.id },
        left: gathered.left,
      })
    else
      terminal.print(
        `Wrote ${out}: ${record.cues} cues, ${megabytes(bytes.length)}. ${path} knows it as ${record.id}.`,
      )
    return ok(gathered.left.length > 0 ? EXIT.outside : EXIT.fine)
  } finally {
    source.close()
  }
}
