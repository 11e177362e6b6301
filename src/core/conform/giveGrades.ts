import { cueIndexAt } from '../job/cueList.ts'
import type { Cue } from '../job/job.ts'
import { frame } from '../time/frame.ts'
import { conflict, type ImportFate, type ImportWish } from './importWishes.ts'
import { longestWithin } from './longestWithin.ts'

type Target = {
  readonly cue: number
  readonly first: number | undefined
  readonly says: string
  /** 0 for a cue that begins just there, 1 for one of its name, 2 for one it mostly lies in. */
  readonly rank: number
}

/**
 * Which cue each decision goes to where no cue is to move or begin: the one that begins on its
 * frame, the one it names, or the one most of its frames lie in. Where several go to one cue, the
 * one that fits best does, the others conflict.
 */
export const giveGrades = (
  wishes: readonly ImportWish[],
  cues: readonly Cue[],
  reelFrames: number,
): readonly ImportFate[] => {
  const mostly = longestWithin(
    cues.map(({ first }) => first),
    reelFrames,
  )
  const targetOf = ({ span, cue, says, refused }: ImportWish): Target | undefined => {
    if (refused) return undefined
    const inside = span && span.from >= 0 && span.from < reelFrames ? span.from : undefined
    const at = inside === undefined ? -1 : cueIndexAt(cues, frame(inside))
    if (at >= 0 && cues[at]?.first === inside) return { cue: at, first: inside, says: '', rank: 0 }
    if (cue !== undefined) return { cue, first: inside ?? cues[cue]?.first, says, rank: 1 }
    const place = span && mostly(span.from, span.to)
    if (span === undefined || place === undefined) return undefined
    const into = span.from - (cues[place]?.first ?? 0)
    const where = `${Math.abs(into)} frame${Math.abs(into) === 1 ? '' : 's'}`
    return {
      cue: place,
      first: inside,
      says: `It begins ${where} ${into < 0 ? 'before' : 'into'} cue ${place + 1}.`,
      rank: 2,
    }
  }
  const targets = wishes.map(targetOf)
  const winners = new Map<number, number>()
  for (const [index, target] of targets.entries()) {
    if (!target) continue
    const rival = winners.get(target.cue)
    if (rival === undefined || target.rank < (targets[rival]?.rank ?? 0))
      winners.set(target.cue, index)
  }
  return wishes.map(({ refused }, index) => {
    if (refused) return refused
    const target = targets[index]
    if (!target) return conflict('Its place is outside the reel.')
    const winner = winners.get(target.cue)
    return winner === index
      ? { outcome: 'matches', cue: target.cue, first: target.first, says: target.says }
      : conflict(
          `Decision ${(winner ?? 0) + 1} goes to cue ${target.cue + 1} already.`,
          target.first,
        )
  })
}
