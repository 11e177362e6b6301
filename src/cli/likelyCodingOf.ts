import type { FilmBase } from '../core/film/filmBase.ts'
import { likelyCoding } from '../core/job/likelyCoding.ts'
import type { Coding } from '../core/picture/planes.ts'
import type { FrameSource } from '../media/frameSource.ts'
import type { Terminal } from './terminal.ts'

/** How a scan without a job is read, told where it does not state all of it. */
export const likelyCodingOf = (
  { facts }: FrameSource,
  base: FilmBase,
  terminal: Terminal,
): Coding => {
  const likely = likelyCoding(facts.height, facts.layout !== 'rgb')
  const coding = { matrix: facts.matrix ?? likely.matrix, range: facts.range ?? likely.range, base }
  if (facts.layout !== 'rgb' && (facts.matrix === undefined || facts.range === undefined))
    terminal.note(
      `${facts.name} does not state all of its coding; read as ${coding.matrix}, ${coding.range} range.`,
    )
  if (facts.scanHint !== undefined && base.scan === facts.scanHint)
    terminal.note(`${facts.name} states printing density; read as that.`)
  return coding
}
