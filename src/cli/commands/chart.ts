import { problem } from '../../core/base/problem.ts'
import { fail, ok, type Result } from '../../core/base/result.ts'
import {
  CHART_KINDS,
  type ChartKind,
  type Measured,
  measureChart,
  measuredText,
  measureProfiles,
  REGIONS_OF,
} from '../../core/chart/measureChart.ts'
import type { Region } from '../../core/chart/region.ts'
import { PRINT_BASE } from '../../core/film/filmBase.ts'
import { readProfile } from '../../core/formats/profile/readProfile.ts'
import type { AfterglowWish } from '../../core/lineup/afterglow.ts'
import { decodePlanes } from '../../core/picture/decodePlanes.ts'
import { frame } from '../../core/time/frame.ts'
import { openMediaNode } from '../../media/node/openMediaNode.ts'
import { type Arguments, readArguments, textOption, wrongUse } from '../arguments.ts'
import { EXIT, type ExitStatus } from '../exitStatus.ts'
import { ofFile, readText } from '../readBytes.ts'
import type { Terminal } from '../terminal.ts'

export const CHART_USAGE =
  'reelwright chart PICTURE levels|edge|lines|geometry|streak X,Y,W,H [X,Y,W,H …] | PROFILE.csv streak [--correctors T,T…] [--most PERCENT] [--terms N] [--frame N] [--json]'

const regionOf = (text: string): Region | undefined => {
  const parts = /^(\d{1,5}),(\d{1,5}),(\d{1,5}),(\d{1,5})$/u.exec(text)
  if (!parts) return undefined
  const [x = 0, y = 0, width = 0, height = 0] = parts.slice(1).map(Number)
  return { x, y, width, height }
}

const wishOf = (args: Arguments): Result<AfterglowWish> => {
  const correctors = textOption(args, 'correctors')?.split(',').map(Number)
  const most = Number(textOption(args, 'most') ?? '50') / 100
  const named = textOption(args, 'terms')
  const terms = named === undefined ? undefined : Number(named)
  if (correctors && !correctors.every((each) => each > 0))
    return wrongUse('Give --correctors as time constants above 0, as 0.4,3.', CHART_USAGE)
  if (!(most > 0 && most <= 1)) return wrongUse('Give --most from above 0 to 100.', CHART_USAGE)
  if (terms !== undefined && ![1, 2, 3].includes(terms))
    return wrongUse('Give --terms 1, 2 or 3.', CHART_USAGE)
  return ok({ most, ...(correctors && { correctors }), ...(terms !== undefined && { terms }) })
}

const fromProfile = async (
  path: string,
  wish: AfterglowWish,
): Promise<Result<readonly Measured[]>> => {
  const text = await readText(path)
  if (!text.ok) return text
  const profiles = ofFile(readProfile(text.value), path)
  if (!profiles.ok) return profiles
  return ofFile(measureProfiles(profiles.value, wish), path)
}

const fromPicture = async (
  path: string,
  at: number,
  kind: ChartKind,
  regions: readonly Region[],
  wish: AfterglowWish,
): Promise<Result<readonly Measured[]>> => {
  const source = await openMediaNode(path)
  if (!source.ok) return source
  try {
    const { facts } = source.value
    if (at >= facts.frames)
      return fail(problem('out-of-range', `${path} has frames 0 to ${facts.frames - 1}.`))
    const planes = await source.value.read(frame(at))
    const coding = {
      matrix: facts.matrix ?? 'bt709',
      range: facts.range ?? (facts.layout === 'rgb' ? 'full' : 'narrow'),
      base: facts.scanHint ? { ...PRINT_BASE, scan: facts.scanHint } : PRINT_BASE,
    } as const
    return measureChart(decodePlanes(planes, coding), kind, regions, wish)
  } finally {
    source.value.close()
  }
}

/** Measures a picture of a test chart, or a captured line profile. */
export const chartCommand = async (
  argv: readonly string[],
  terminal: Terminal,
): Promise<Result<ExitStatus>> => {
  const text = { type: 'string' } as const
  const options = {
    ...{ correctors: text, most: text, terms: text, frame: text },
    json: { type: 'boolean' },
  } as const
  const args = readArguments(argv, options, CHART_USAGE)
  if (!args.ok) return args
  const [path, what, ...places] = args.value.positionals
  const kind = CHART_KINDS.find((each) => each === what)
  if (path === undefined || !kind)
    return wrongUse(`Give a picture and one of ${CHART_KINDS.join(', ')}.`, CHART_USAGE)
  const wish = wishOf(args.value)
  if (!wish.ok) return wish
  const isProfile = /\.(?:csv|txt|tsv)$/iu.test(path)
  const regions = places.map(regionOf).filter((region) => region !== undefined)
  const at = Number(textOption(args.value, 'frame') ?? '0')
  if (isProfile && (kind !== 'streak' || places.length > 0))
    return wrongUse('Of a profile the streak is measured, without regions.', CHART_USAGE)
  if (!isProfile && (regions.length < places.length || regions.length !== REGIONS_OF[kind]))
    return wrongUse(
      `Give ${REGIONS_OF[kind] === 1 ? 'one region' : `${REGIONS_OF[kind]} regions`} as X,Y,W,H.`,
      CHART_USAGE,
    )
  if (!Number.isInteger(at) || at < 0) return wrongUse('Give --frame from 0.', CHART_USAGE)
  const found = isProfile
    ? await fromProfile(path, wish.value)
    : await fromPicture(path, at, kind, regions, wish.value)
  if (!found.ok) return found
  if (args.value.values.json) terminal.json({ file: path, kind, measured: found.value })
  else for (const each of found.value) terminal.print(`${each.what}: ${measuredText(each)}`)
  return ok(EXIT.fine)
}
